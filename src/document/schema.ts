/** The saved work as a schema: what comes from a file or from the browser's storage is parsed by it once, then trusted. */
import { STYLE_NAMES } from "../core/decisions/pattern";
import {
  EDGE_FINISHES,
  NECKLINE_SHAPES,
  OPACITIES,
  SKIRT_KINDS,
  STRAP_KINDS,
  TIER_CUTS,
  UNDER_NAMES,
} from "../core/decisions/dress";
import { SHEET_FORMATS } from "../core/decisions/paperChoice";
import { FIT_NAMES } from "../core/decisions/fitNames";
import { LINE_FEATURES, OWN_CORNERS } from "../core/decisions/ownPattern";
import { LEVEL_NAMES } from "../core/pattern/piece";
import { TISSUE_LENGTHS } from "../core/decisions/tissue";
import { pathSteps } from "../core/geometry/pathData";
import * as z from "zod/mini";
import { PATTERN_PIECES } from "../core/pattern/pieceSet";
import { DART_HOMES, DART_NAMES } from "../core/pattern/dartNames";
import { LIMITS } from "../core/decisions/limits";
import { DART_ANSWER_KEYS, isSeenOf } from "../core/decisions/seenAtDart";
import {
  TOILE_LENGTHS,
  TRIAL_CHECKS,
  TRIAL_PLACES,
  TRIAL_SIGNS,
  TRIAL_VERDICTS,
  TRIAL_WAYS,
} from "../core/decisions/trial";
import type { Work } from "../core/decisions/work";

// The built page's policy forbids code made of text, and even the probe whether it may be made.
z.config({ jitless: true });

const text = z.string().check(z.maxLength(LIMITS.text));
const unreadText = z.string().check(z.maxLength(LIMITS.unreadText));
const length = z.number().check(z.gte(-LIMITS.length), z.lte(LIMITS.length));
/** A day of the calendar, yyyy-mm-dd. */
const day = z.iso.date();
const share = z.number().check(z.gte(0), z.lte(1));

const sizeRow = z.strictObject({
  label: text,
  bust: length,
  waist: length,
  hip: length,
  finishedBust: z.exactOptional(length),
  finishedWaist: z.exactOptional(length),
  finishedHip: z.exactOptional(length),
});

const ease = z.strictObject({ bust: length, waist: length, hip: length });

const buttons = z.int().check(z.gte(LIMITS.buttons.least), z.lte(LIMITS.buttons.most));

const printed = z.exactOptional(
  z.strictObject({
    all: z.exactOptional(length),
    bySize: z.exactOptional(
      z.record(text, length).check(z.refine((record) => Object.keys(record).length <= LIMITS.rows)),
    ),
  }),
);

const printedLengths = z.strictObject({
  backWaistLength: printed,
  frontWaistLength: printed,
  shoulderLength: printed,
  acrossBack: printed,
  acrossFront: printed,
  neckBaseGirth: printed,
  bustPointWidth: printed,
  sideNeckToBustPoint: printed,
  underBustGirth: printed,
  height: printed,
});

const isPath = (path: string): boolean => pathSteps(path) !== null;

/** How much a whole file holds; each part by itself is held to its own limit. */
function isWithinFile({ lines }: { readonly lines: readonly { readonly paths: readonly string[] }[] }): boolean {
  const paths = lines.flatMap((look) => look.paths);
  return paths.length <= LIMITS.fileLines && paths.reduce((sum, path) => sum + path.length, 0) <= LIMITS.fileText;
}

const tissueLength = z.number().check(z.gte(0), z.lte(LIMITS.length));

const tissue = z.strictObject({
  size: text,
  pieces: z.partialRecord(z.enum(PATTERN_PIECES), z.partialRecord(z.enum(TISSUE_LENGTHS), tissueLength)),
});

const coordinate = z.number().check(z.gte(-LIMITS.fileCoordinate), z.lte(LIMITS.fileCoordinate));
const filePlace = z.strictObject({ x: coordinate, y: coordinate });
const filePath = z.string().check(z.maxLength(LIMITS.fileText), z.refine(isPath));

const drawing = z
  .strictObject({
    format: z.enum(["svg", "dxf"]),
    unit: z.nullable(
      z.strictObject({
        mm: z.number().check(z.gt(0), z.lte(LIMITS.length)),
        saidBy: z.enum(["size", "header", "text"]),
      }),
    ),
    lines: z
      .array(
        z.strictObject({
          look: z.strictObject({
            layer: text,
            group: unreadText,
            colour: text,
            dash: text,
            width: z.number().check(z.gte(0), z.lte(LIMITS.fileCoordinate)),
          }),
          paths: z.array(filePath).check(z.maxLength(LIMITS.fileLines)),
        }),
      )
      .check(z.maxLength(LIMITS.fileLooks)),
    points: z
      .array(z.strictObject({ ...filePlace.shape, layer: text, group: unreadText }))
      .check(z.maxLength(LIMITS.fileMarks)),
    writings: z
      .array(z.strictObject({ ...filePlace.shape, text: unreadText, layer: text, group: unreadText }))
      .check(z.maxLength(LIMITS.fileMarks)),
    hiddenLayers: z.array(text).check(z.maxLength(LIMITS.fileLooks)),
  })
  .check(z.refine(isWithinFile));

const ownPiece = z.strictObject({
  id: text,
  name: z.nullable(z.enum(PATTERN_PIECES)),
  label: z.exactOptional(text),
  leftOut: z.exactOptional(z.literal(true)),
  extent: z.exactOptional(z.enum(["half", "whole"])),
  turns: z.exactOptional(z.union([z.literal(0), z.literal(1), z.literal(2), z.literal(3)])),
  turnedOver: z.exactOptional(z.boolean()),
  line: z.exactOptional(z.enum(["stitch", "cutting"])),
  allowances: z.exactOptional(z.lazy(() => allowances)),
  centreOnFold: z.exactOptional(z.boolean()),
  corners: z.exactOptional(
    z
      .array(z.strictObject({ name: z.enum(OWN_CORNERS), size: text, at: z.nullable(filePlace) }))
      .check(z.maxLength(LIMITS.fileCorners)),
  ),
  darts: z.exactOptional(
    z
      .array(
        z.strictObject({ name: z.enum(DART_NAMES), size: text, inner: filePlace, outer: filePlace, apex: filePlace }),
      )
      .check(z.maxLength(LIMITS.fileCorners)),
  ),
  notDarts: z.exactOptional(z.array(z.enum(DART_NAMES)).check(z.maxLength(LIMITS.fileCorners))),
  bustPoint: z.exactOptional(z.strictObject({ size: text, at: filePlace })),
  levels: z.exactOptional(z.strictObject({ top: z.enum(LEVEL_NAMES), bottom: z.enum(LEVEL_NAMES) })),
});

const lineMeaning = z.discriminatedUnion("of", [
  z.strictObject({ of: z.literal("size"), size: text }),
  z.strictObject({ of: z.literal("all") }),
  z.strictObject({ of: z.literal("inner") }),
  z.strictObject({ of: z.literal("nothing") }),
]);

const own = z.strictObject({
  file: text,
  drawing,
  known: z.exactOptional(
    z.strictObject({ from: filePlace, to: filePlace, length: z.number().check(z.gt(0), z.lte(LIMITS.length)) }),
  ),
  joinWithin: z.exactOptional(z.number().check(z.gte(0), z.lte(LIMITS.length))),
  sortBy: z.exactOptional(z.enum(LINE_FEATURES)),
  lines: z.exactOptional(
    z.record(unreadText, lineMeaning).check(z.refine((record) => Object.keys(record).length <= LIMITS.fileLooks)),
  ),
  cup: z.exactOptional(text),
  pieces: z.array(ownPiece).check(z.maxLength(LIMITS.filePieces)),
  inUse: z.exactOptional(z.literal(true)),
});

const pattern = z.strictObject({
  name: text,
  chart: z.strictObject({
    sizes: z.array(sizeRow).check(z.maxLength(LIMITS.rows)),
    draftedDifference: length,
    cups: z.array(z.strictObject({ label: text, difference: length })).check(z.maxLength(LIMITS.rows)),
  }),
  ease,
  length: z.enum(["waist", "hip"]),
  closure: z.strictObject({
    place: z.enum(["centreBack", "side"]),
    belowWaist: length,
    buttons: z.exactOptional(buttons),
  }),
  style: z.enum(STYLE_NAMES),
  strap: z.enum(["thin", "wide"]),
  lengths: z.exactOptional(printedLengths),
  tissue: z.exactOptional(tissue),
  own: z.exactOptional(own),
});

const dart = z.strictObject({
  piece: z.enum(PATTERN_PIECES),
  dart: z.enum(DART_NAMES),
});

const half = z.enum(["left", "right"]);

const giveBack = z.strictObject({
  centreSeam: z.exactOptional(share),
  sideSeam: z.exactOptional(share),
  otherDart: z.exactOptional(share),
  underarm: z.exactOptional(share),
  waistEnd: z.exactOptional(share),
  armholeEnd: z.exactOptional(share),
  neckEnd: z.exactOptional(share),
  centreEnd: z.exactOptional(share),
});

const onHalf = { half: z.exactOptional(half) };

const redraws = [
  z.strictObject({
    kind: z.literal("dartEnd"),
    id: text,
    ...onHalf,
    dart,
    shorten: length,
    across: length,
    hold: z.enum(["mouth", "fullness"]),
    giveBack,
  }),
  z.strictObject({ kind: z.literal("dartMouth"), id: text, ...onHalf, dart, inner: length, outer: length, giveBack }),
  z.strictObject({
    kind: z.literal("dartPlace"),
    id: text,
    ...onHalf,
    dart,
    by: length,
    how: z.enum(["redraw", "offCentreSeam"]),
    giveBack,
  }),
] as const;
const redraw = z.discriminatedUnion("kind", redraws);

const alteration = z.discriminatedUnion("kind", [
  ...redraws,
  z.strictObject({ kind: z.literal("dartPivot"), id: text, ...onHalf, dart, to: z.enum(DART_HOMES), share }),
  z.strictObject({
    kind: z.literal("dartSplit"),
    id: text,
    ...onHalf,
    dart,
    into: z.union([z.literal(2), z.literal(3)]),
  }),
  z.strictObject({ kind: z.literal("dartGather"), id: text, ...onHalf, dart }),
  z.strictObject({ kind: z.literal("dartLegs"), id: text, ...onHalf, dart, bow: length }),
  z.strictObject({ kind: z.literal("dartSeam"), id: text, ...onHalf, dart }),
  z.strictObject({
    kind: z.literal("fit"),
    id: text,
    ...onHalf,
    fit: z.enum(FIT_NAMES),
    amount: length,
  }),
]);

const sewnWith = z.array(redraw).check(z.maxLength(LIMITS.alterations));

/** What is seen of one dart. */
export const seenOfDartSchema = z.strictObject({
  ...dart.shape,
  half,
  pastBustPoint: length,
  tooFarToSide: length,
  pointed: z.enum(["pointed", "right", "flat"]),
  sewn: z.exactOptional(sewnWith),
  taken: z.exactOptional(z.strictObject({ answer: z.enum(DART_ANSWER_KEYS), redraws: sewnWith })),
});

/** One dart of one half is seen but one way. */
const seen = z.array(seenOfDartSchema).check(
  z.maxLength(LIMITS.seen),
  z.refine((list) => list.every((one, at) => list.findIndex((other) => isSeenOf(other, one, one.half)) === at)),
);

const read = z.exactOptional(z.array(length).check(z.minLength(1), z.maxLength(LIMITS.readings)));

const measureSet = z.strictObject({
  taken: z.exactOptional(day),
  readings: z.strictObject({
    bustGirth: read,
    upperChestGirth: read,
    underBustGirth: read,
    waistGirth: read,
    hipGirth: read,
    height: read,
    bustPointWidth: read,
    sideNeckToBustPoint: read,
    backWaistLength: read,
    frontWaistLength: read,
    neckBaseGirth: read,
    shoulderLength: read,
    acrossBack: read,
    acrossFront: read,
  }),
});

/** One length for each measure, or none. */
const trusted = z.strictObject({
  bustGirth: z.exactOptional(length),
  upperChestGirth: z.exactOptional(length),
  underBustGirth: z.exactOptional(length),
  waistGirth: z.exactOptional(length),
  hipGirth: z.exactOptional(length),
  height: z.exactOptional(length),
  bustPointWidth: z.exactOptional(length),
  sideNeckToBustPoint: z.exactOptional(length),
  backWaistLength: z.exactOptional(length),
  frontWaistLength: z.exactOptional(length),
  neckBaseGirth: z.exactOptional(length),
  shoulderLength: z.exactOptional(length),
  acrossBack: z.exactOptional(length),
  acrossFront: z.exactOptional(length),
});

const allowance = z.exactOptional(z.number().check(z.gte(0), z.lte(LIMITS.allowance)));

const allowances = z.strictObject({
  centre: allowance,
  neck: allowance,
  shoulder: allowance,
  armhole: allowance,
  side: allowance,
  waist: allowance,
  hem: allowance,
  princess: allowance,
  underBust: allowance,
  strap: allowance,
  panel: allowance,
  edge: allowance,
});

/** Of the rest of the dress. What a number may be is told beside its field, by what is made of it. */
const some = z.exactOptional(length);
const yes = z.exactOptional(z.boolean());

const cloth = z.exactOptional(z.strictObject({ width: some, length: some, oneWay: yes, fold: yes, shrinkage: some }));

const dress = z.strictObject({
  measures: z.exactOptional(
    z.strictObject({
      waistToHip: some,
      waistToFloorFront: some,
      waistToFloorSide: some,
      waistToFloorBack: some,
      shoulderGirth: some,
    }),
  ),
  skirt: z.exactOptional(
    z.strictObject({
      kind: z.enum(SKIRT_KINDS),
      length: some,
      peplumLength: some,
      ratio: some,
      tiers: z.exactOptional(
        z
          .array(z.strictObject({ depth: some, ratio: some, widths: some }))
          .check(z.minLength(LIMITS.tiers.least), z.maxLength(LIMITS.tiers.most)),
      ),
      growing: yes,
      tierCut: z.exactOptional(z.enum(TIER_CUTS)),
      share: some,
      peplumShare: some,
      panels: z.exactOptional(z.union([z.literal(2), z.literal(4), z.literal(6)])),
      hipEase: some,
      flare: some,
      darts: yes,
      vent: some,
      hem: some,
      pockets: yes,
    }),
  ),
  lining: z.exactOptional(
    z.strictObject({
      bodice: yes,
      skirt: yes,
      bodiceEase: some,
      hipEase: some,
      hemGirth: some,
      shorter: some,
      freeBelow: some,
      freeBeside: some,
      shaping: z.exactOptional(z.enum(["darts", "pleats"])),
    }),
  ),
  neckline: z.exactOptional(
    z.strictObject({
      shape: z.enum(NECKLINE_SHAPES),
      deeper: some,
      wider: some,
      backDeeper: some,
      pinched: yes,
    }),
  ),
  straps: z.exactOptional(
    z.strictObject({ kind: z.enum(STRAP_KINDS), width: some, braStrap: some, ease: some, elastic: yes }),
  ),
  edges: z.exactOptional(
    z.strictObject({
      neck: z.exactOptional(z.enum(EDGE_FINISHES)),
      armhole: z.exactOptional(z.enum(EDGE_FINISHES)),
      facingDepth: some,
      bindingWidth: some,
    }),
  ),
  zip: z.exactOptional(z.enum(["invisible", "lapped"])),
  opacity: z.exactOptional(z.enum(OPACITIES)),
  under: z.exactOptional(z.enum(UNDER_NAMES)),
  cloths: z.exactOptional(z.strictObject({ main: cloth, lining: cloth, underlining: cloth, interfacing: cloth })),
});

/** All that a plan follows from. */
const decided = {
  tapes: z.array(measureSet).check(z.minLength(1), z.maxLength(LIMITS.tapes)),
  trusted: z.exactOptional(trusted),
  age: z.exactOptional(z.number().check(z.gte(0), z.lte(LIMITS.age))),
  pattern,
  easeWanted: z.strictObject({
    bust: z.exactOptional(length),
    waist: z.exactOptional(length),
    hip: z.exactOptional(length),
  }),
  bustRadius: z.exactOptional(length),
  picks: z.strictObject({
    baseSize: z.exactOptional(text),
    cup: z.exactOptional(text),
    halfCups: z.exactOptional(z.strictObject({ left: z.exactOptional(text), right: z.exactOptional(text) })),
    waist: z.exactOptional(length),
    hip: z.exactOptional(length),
    bustAlteration: z.exactOptional(length),
  }),
  alterations: z.array(alteration).check(z.maxLength(LIMITS.alterations)),
  seen: z.exactOptional(seen),
  allowances: z.exactOptional(allowances),
  dress: z.exactOptional(dress),
};

const seenAmount = z.number().check(z.gte(0), z.lte(LIMITS.seenAmount));
const markPlace = z.number().check(z.gte(-LIMITS.seenAmount), z.lte(LIMITS.seenAmount));

/** One line of a trial's record. */
export const observationSchema = z.strictObject({
  id: text,
  place: z.exactOptional(z.enum(TRIAL_PLACES)),
  sign: z.exactOptional(z.enum(TRIAL_SIGNS)),
  towards: z.exactOptional(z.enum(TRIAL_PLACES)),
  dart: z.exactOptional(dart),
  way: z.exactOptional(z.enum(TRIAL_WAYS)),
  amount: z.exactOptional(seenAmount),
  mark: z.exactOptional(z.strictObject({ out: markPlace, down: markPlace })),
  half: z.exactOptional(half),
  changed: z.exactOptional(text),
});

const takenAnswer = z.strictObject({
  causes: z.array(text).check(z.maxLength(LIMITS.observations)),
  half: z.exactOptional(half),
  because: z.array(text).check(z.maxLength(LIMITS.observations)),
  alterations: z.array(text).check(z.maxLength(LIMITS.alterations)),
});

export const trialSchema = z.strictObject({
  id: text,
  day: z.exactOptional(day),
  sewn: z.strictObject(decided),
  cloth: z.exactOptional(text),
  pinnedBy: z.exactOptional(text),
  bra: z.exactOptional(text),
  shoes: z.exactOptional(text),
  measured: z.exactOptional(z.partialRecord(z.enum(TOILE_LENGTHS), z.number().check(z.gte(0), z.lte(LIMITS.length)))),
  observations: z.array(observationSchema).check(z.maxLength(LIMITS.observations), z.refine(areIdsOwn)),
  checks: z.exactOptional(z.partialRecord(z.enum(TRIAL_CHECKS), z.boolean())),
  taken: z.exactOptional(z.array(takenAnswer).check(z.maxLength(LIMITS.observations))),
  verdict: z.exactOptional(z.enum(TRIAL_VERDICTS)),
  because: z.exactOptional(text),
  base: z.exactOptional(z.literal(true)),
});

/** A whole work. Its type is held against the core's `Work` below. */
export const workSchema = z.strictObject({
  name: text,
  wearer: z.exactOptional(text),
  invented: z.boolean(),
  begunFrom: z.exactOptional(z.strictObject({ name: text, day: z.exactOptional(day) })),
  unit: z.enum(["cm", "in"]),
  paper: z.enum(["A4", "Letter"]),
  ...decided,
  trials: z.exactOptional(z.array(trialSchema).check(z.maxLength(LIMITS.trials), z.refine(areIdsOwn))),
  standingLeft: z.exactOptional(z.array(text).check(z.maxLength(LIMITS.alterations))),
  sheetFormat: z.exactOptional(z.enum(SHEET_FORMATS)),
  printerMargin: z.exactOptional(z.number().check(z.gte(LIMITS.printerMargin.least), z.lte(LIMITS.printerMargin.most))),
  unread: z.record(text, unreadText).check(z.refine((record) => Object.keys(record).length <= LIMITS.unread)),
});

function areIdsOwn(list: readonly { readonly id: string }[]): boolean {
  return new Set(list.map(({ id }) => id)).size === list.length;
}

/**
 * Fails to compile where the schema and the core's type differ in anything but `readonly`. What may be absent is marked,
 * since a field that one of them lacks altogether would otherwise pass.
 */
type Marked<T> = T extends readonly (infer U)[]
  ? readonly Marked<U>[]
  : T extends object
    ? { readonly [K in keyof T]-?: object extends Pick<T, K> ? { readonly absent: Marked<T[K]> } : Marked<T[K]> }
    : T;
type Same<A, B> = [A] extends [B] ? ([B] extends [A] ? true : never) : never;
/** @public It is for the compiler alone. */
export const schemaIsTheType: Same<Marked<z.infer<typeof workSchema>>, Marked<Work>> = true;
