/** Works of every shape the document allows, for property tests. */
import type { Alteration, DartRedraw, GiveBackPlace } from "../../src/core/decisions/alteration";
import { PRINTED_LENGTHS, STYLE_NAMES, type Pattern } from "../../src/core/decisions/pattern";
import { SHEET_FORMATS } from "../../src/core/decisions/paperChoice";
import { USUAL_ALLOWANCES } from "../../src/core/cutting/usualAllowances";
import { FIT_NAMES } from "../../src/core/decisions/fitNames";
import * as fc from "fast-check";
import { MEASURE_NAMES } from "../../src/core/measures/measure";
import {
  TOILE_LENGTHS,
  TRIAL_CHECKS,
  TRIAL_PLACES,
  TRIAL_SIGNS,
  TRIAL_WAYS,
  type Observation,
  type Trial,
} from "../../src/core/decisions/trial";
import { LIMITS } from "../../src/core/decisions/limits";
import { compareSeen, type SeenAtDart, type SeenOfDart } from "../../src/core/decisions/seenAtDart";
import { DART_HOMES } from "../../src/core/pattern/dartNames";
import type { SeamName } from "../../src/core/pattern/piece";
import type { DartRef } from "../../src/core/pattern/piece";
import type { Work } from "../../src/core/decisions/work";

const noMinusZero = (value: number): number => value + 0;

/** Any number that a length may be. Minus nothing is nothing in a file. */
const anyLength = fc.double({ min: -LIMITS.length, max: LIMITS.length, noNaN: true }).map(noMinusZero);
export const anyText = fc.string({ unit: "grapheme", maxLength: 20 });

const share = fc.double({ min: 0, max: 1, noNaN: true }).map(noMinusZero);
const NONE_REQUIRED = { requiredKeys: [] };

const PLACES: readonly GiveBackPlace[] = [
  "centreSeam",
  "sideSeam",
  "otherDart",
  "underarm",
  "waistEnd",
  "armholeEnd",
  "neckEnd",
  "centreEnd",
];
export const anyGiveBack = fc.dictionary(fc.constantFrom(...PLACES), share, { noNullPrototype: true });

export const anyDart = fc.record({
  piece: fc.constantFrom("front", "back", "frontBasque", "backBasque"),
  dart: fc.constantFrom("sideDart", "waistDart", "shoulderDart"),
});

const anyRedraw: fc.Arbitrary<DartRedraw> = fc.oneof(
  fc.record({
    kind: fc.constant("dartEnd" as const),
    id: anyText,
    dart: anyDart,
    shorten: anyLength,
    across: anyLength,
    hold: fc.constantFrom("mouth", "fullness"),
    giveBack: anyGiveBack,
  }),
  fc.record({
    kind: fc.constant("dartMouth" as const),
    id: anyText,
    dart: anyDart,
    inner: anyLength,
    outer: anyLength,
    giveBack: anyGiveBack,
  }),
  fc.record({
    kind: fc.constant("dartPlace" as const),
    id: anyText,
    dart: anyDart,
    by: anyLength,
    how: fc.constantFrom("redraw", "offCentreSeam"),
    giveBack: anyGiveBack,
  }),
);

const anyOnBoth: fc.Arbitrary<Alteration> = fc.oneof(
  fc.record(
    {
      kind: fc.constant("fit" as const),
      id: anyText,
      fit: fc.constantFrom(...FIT_NAMES),
      amount: anyLength,
      half: fc.constantFrom("left" as const, "right" as const),
    },
    { requiredKeys: ["kind", "id", "fit", "amount"] },
  ),
  fc.record({
    kind: fc.constant("dartPivot" as const),
    id: anyText,
    dart: anyDart,
    to: fc.constantFrom(...DART_HOMES),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
  }),
  fc.record({
    kind: fc.constant("dartSplit" as const),
    id: anyText,
    dart: anyDart,
    into: fc.constantFrom(2 as const, 3 as const),
  }),
  fc.record({ kind: fc.constantFrom("dartGather" as const, "dartSeam" as const), id: anyText, dart: anyDart }),
  fc.record({ kind: fc.constant("dartLegs" as const), id: anyText, dart: anyDart, bow: anyLength }),
  anyRedraw,
);

export const anyHalf = fc.constantFrom("left" as const, "right" as const);

/** For both halves, or for one. */
export const anyAlteration: fc.Arbitrary<Alteration> = fc
  .tuple(anyOnBoth, fc.option(anyHalf))
  .map(([alteration, half]) => (half === null || alteration.kind === "fit" ? alteration : { ...alteration, half }));

export const anySeenAtDart = fc.record({
  pastBustPoint: anyLength,
  tooFarToSide: anyLength,
  pointed: fc.constantFrom("pointed" as const, "right" as const, "flat" as const),
});

const anySeenAmount = fc.double({ min: 0, max: LIMITS.seenAmount, noNaN: true }).map(noMinusZero);

export const anyObservation: fc.Arbitrary<Observation> = fc.record(
  {
    id: fc.constantFrom("seen-1", "seen-2", "seen-3"),
    place: fc.constantFrom(...TRIAL_PLACES),
    sign: fc.constantFrom(...TRIAL_SIGNS),
    towards: fc.constantFrom(...TRIAL_PLACES),
    dart: anyDart,
    way: fc.constantFrom(...TRIAL_WAYS),
    amount: anySeenAmount,
    mark: fc.record({ out: anySeenAmount, down: anySeenAmount }),
    half: anyHalf,
    changed: anyText,
  },
  { requiredKeys: ["id"] },
);

/** What the toile was sewn with, and the answer taken, by turns: none, the first, both. */
function answeredAt(at: number, dart: DartRef, { tooFarToSide }: SeenAtDart): Partial<SeenOfDart> {
  const redraw = (shorten: number): DartRedraw => ({
    kind: "dartEnd",
    id: `end-${at}`,
    dart,
    shorten,
    across: tooFarToSide,
    hold: "mouth",
    giveBack: {},
  });
  const sewn = [redraw(at)];
  if (at % 3 === 0) return {};
  return at % 3 === 1 ? { sewn } : { sewn, taken: { answer: "sideSeam", redraws: [redraw(20), redraw(30)] } };
}

/** In the order in which commands keep them. */
const anySeen: fc.Arbitrary<readonly SeenOfDart[]> = fc
  .uniqueArray(fc.tuple(anyDart, anyHalf, anySeenAtDart), {
    minLength: 1,
    maxLength: 5,
    selector: ([{ piece, dart }, half]) => `${piece} ${dart} ${half}`,
  })
  .map((list) =>
    list
      .map(([dart, half, seen], at) => ({ ...dart, half, ...seen, ...answeredAt(at, dart, seen) }))
      .toSorted(compareSeen),
  );

export const anySize = fc.record(
  {
    label: anyText,
    bust: anyLength,
    waist: anyLength,
    hip: anyLength,
    finishedBust: anyLength,
    finishedWaist: anyLength,
    finishedHip: anyLength,
  },
  { requiredKeys: ["label", "bust", "waist", "hip"] },
);
export const anyCup = fc.record({ label: anyText, difference: anyLength });
export const anyEase = fc.record({ bust: anyLength, waist: anyLength, hip: anyLength });
export const anyClosure = fc.record(
  {
    place: fc.constantFrom("centreBack", "side"),
    belowWaist: anyLength,
    buttons: fc.integer({ min: LIMITS.buttons.least, max: LIMITS.buttons.most }),
  },
  { requiredKeys: ["place", "belowWaist"] },
);
export const anyPicks = fc.record(
  {
    baseSize: anyText,
    cup: anyText,
    halfCups: fc.oneof(
      fc.record({ left: anyText }),
      fc.record({ right: anyText }),
      fc.record({ left: anyText, right: anyText }),
    ),
    waist: anyLength,
    hip: anyLength,
    bustAlteration: anyLength,
  },
  NONE_REQUIRED,
);

const anyPrinted = fc
  .record(
    { all: anyLength, bySize: fc.dictionary(anyText, anyLength, { minKeys: 1, maxKeys: 3, noNullPrototype: true }) },
    NONE_REQUIRED,
  )
  .filter((figure) => Object.keys(figure).length > 0);

const anyPrintedLengths = fc.dictionary(fc.constantFrom(...PRINTED_LENGTHS), anyPrinted, {
  minKeys: 1,
  maxKeys: 3,
  noNullPrototype: true,
});

const PATTERN_PARTS = {
  name: anyText,
  chart: fc.record({
    sizes: fc.array(anySize, { maxLength: 5 }),
    draftedDifference: anyLength,
    cups: fc.array(anyCup, { maxLength: 4 }),
  }),
  ease: anyEase,
  length: fc.constantFrom("waist", "hip"),
  closure: anyClosure,
  style: fc.constantFrom(...STYLE_NAMES),
  strap: fc.constantFrom("thin", "wide"),
  lengths: anyPrintedLengths,
} as const;

export const anyPattern: fc.Arbitrary<Pattern> = fc.record(PATTERN_PARTS, {
  requiredKeys: ["name", "chart", "ease", "length", "closure", "style", "strap"],
});

const isSeam = (name: string): name is SeamName => Object.hasOwn(USUAL_ALLOWANCES, name);
export const anySeam = fc.constantFrom(...Object.keys(USUAL_ALLOWANCES).filter(isSeam));

const anyDay = fc
  .date({ min: new Date("1990-01-01"), max: new Date("2090-12-31"), noInvalidDate: true })
  .map((day) => day.toISOString().slice(0, 10));

/** All that a plan follows from. */
const DECIDED_PARTS = {
  tapes: fc.array(
    fc.record(
      {
        taken: anyDay,
        readings: fc.dictionary(
          fc.constantFrom(...MEASURE_NAMES),
          fc.array(anyLength, { minLength: 1, maxLength: LIMITS.readings }),
          { noNullPrototype: true },
        ),
      },
      { requiredKeys: ["readings"] },
    ),
    { minLength: 1, maxLength: 3 },
  ),
  trusted: fc.dictionary(fc.constantFrom(...MEASURE_NAMES), anyLength, { noNullPrototype: true }),
  age: fc.integer({ min: 0, max: LIMITS.age }),
  pattern: anyPattern,
  easeWanted: fc.record({ bust: anyLength, waist: anyLength, hip: anyLength }, NONE_REQUIRED),
  bustRadius: anyLength,
  picks: anyPicks,
  alterations: fc.array(anyAlteration, { maxLength: 4 }),
  seen: anySeen,
  allowances: fc.dictionary(anySeam, fc.double({ min: 0, max: LIMITS.allowance, noNaN: true }).map(noMinusZero), {
    noNullPrototype: true,
  }),
} as const;

const DECIDED_REQUIRED = ["tapes", "pattern", "easeWanted", "picks", "alterations"] as const;

const anyTrial: fc.Arbitrary<Trial> = fc
  .record(
    {
      id: fc.constantFrom("trial-a", "trial-b", "trial-c"),
      day: anyDay,
      sewn: fc.record(DECIDED_PARTS, { requiredKeys: [...DECIDED_REQUIRED] }),
      cloth: anyText,
      pinnedBy: anyText,
      bra: anyText,
      shoes: anyText,
      measured: fc.dictionary(fc.constantFrom(...TOILE_LENGTHS), fc.integer({ min: 1, max: 2000 }), {
        minKeys: 1,
        noNullPrototype: true,
      }),
      observations: fc.uniqueArray(anyObservation, { maxLength: 3, selector: ({ id }) => id }),
      checks: fc.dictionary(fc.constantFrom(...TRIAL_CHECKS), fc.boolean(), { minKeys: 1, noNullPrototype: true }),
      taken: fc.array(
        fc.record(
          {
            causes: fc.array(anyText, { maxLength: 2 }),
            half: anyHalf,
            because: fc.array(anyText, { maxLength: 2 }),
            alterations: fc.array(anyText, { maxLength: 2 }),
          },
          { requiredKeys: ["causes", "because", "alterations"] },
        ),
        { minLength: 1, maxLength: 2 },
      ),
      verdict: fc.constantFrom("keep" as const, "again" as const),
      because: anyText,
    },
    { requiredKeys: ["id", "sewn", "observations"] },
  )
  .chain((trial) =>
    trial.verdict === "keep"
      ? fc.boolean().map((isBase): Trial => (isBase ? { ...trial, base: true } : trial))
      : fc.constant(trial),
  );

const anyTrials = fc.uniqueArray(anyTrial, { minLength: 1, maxLength: 2, selector: ({ id }) => id });

export const anyWork: fc.Arbitrary<Work> = fc.record(
  {
    name: anyText,
    wearer: anyText,
    invented: fc.boolean(),
    begunFrom: fc.record({ name: anyText, day: anyDay }, { requiredKeys: ["name"] }),
    unit: fc.constantFrom("cm", "in"),
    paper: fc.constantFrom("A4", "Letter"),
    ...DECIDED_PARTS,
    trials: anyTrials,
    standingLeft: fc.uniqueArray(anyText, { minLength: 1, maxLength: 3 }).map((keys) => keys.toSorted()),
    sheetFormat: fc.constantFrom(...SHEET_FORMATS),
    printerMargin: fc.double({ min: LIMITS.printerMargin.least, max: LIMITS.printerMargin.most, noNaN: true }),
    // The engine keeps this one name for itself; no field of the page is called so.
    unread: fc.dictionary(
      anyText.filter((text) => text !== "[object Object]"),
      anyText,
      { maxKeys: 4, noNullPrototype: true },
    ),
  },
  {
    requiredKeys: [
      "name",
      "invented",
      "unit",
      "paper",
      "tapes",
      "pattern",
      "easeWanted",
      "picks",
      "alterations",
      "unread",
    ],
  },
);
