/**
 * What the mirror shows: signs in the planner's vocabulary that follow from what is left between body and garment, and nothing else.
 * Written row by row, from memory, as a teacher of dressmaking would say what cloth does (common practice, no source).
 *
 * A garment hangs from the shoulder: whatever lies below shows all that is too long or too short above it, added up. Cloth that is
 * too much lies in a fold, pinched to half of it; cloth that is too little pulls, and a slit opens by it.
 */
import type { Half } from "../../../src/core/decisions/alteration";
import type {
  Observation,
  Trial,
  TrialCheck,
  TrialPlace,
  TrialSign,
  TrialWay,
} from "../../../src/core/decisions/trial";
import { TRIAL_CHECKS } from "../../../src/core/decisions/trial";
import type { Decided } from "../../../src/core/decisions/decided";
import type { Work } from "../../../src/core/decisions/work";
import type { DartRef } from "../../../src/core/pattern/piece";
import { setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import type { Plan } from "../../../src/core/plan/plan";
import { HALVES, type OnHalves } from "./body";
import type { Chances } from "./chances";
import { mainDarts, waistDartOf, type Dimension, type Dimensions } from "./dimensions";
import type { Seen } from "./seen";
import { kindOf, type Truth } from "./truths";

/** mm of cloth. Less is not seen; what goes along with something else is seen later; how level a waist or hem is, later too. */
const SEEN = 4.5;
const SEEN_BESIDE = 8;
const SEEN_LEVEL = 6;
/** Of a closure, both halves together. */
const SEEN_CLOSURE = 10;
/** mm of cloth: halves that differ by less are said to be alike. */
const ALIKE = 5;

type Residual = (name: Dimension) => number;

/** The signs of one half, without any error. */
function seenOn(residuals: Dimensions, pieces: PieceSet): readonly Seen[] {
  const r: Residual = (name) => residuals[name] ?? 0;
  return [
    ...shoulders(r),
    ...edges(r),
    ...lengths(r, pieces),
    ...widths(r),
    ...bust(r, pieces),
    ...straps(r),
    ...levels(r, pieces),
  ];
}

const fold = (place: TrialPlace, sign: "foldAcross" | "foldAlong" | "gapes", loose: number, from = SEEN): Seen[] =>
  loose > from ? [{ place, sign, way: "pinched", cloth: loose }] : [];

const slit = (place: TrialPlace, sign: "tight" | "flat" | "cutsIn", short: number, from = SEEN): Seen[] =>
  short > from ? [{ place, sign, way: "letOut", cloth: short }] : [];

const off = (place: TrialPlace, sign: TrialSign, by: number, from = SEEN): Seen[] =>
  by > from ? [{ place, sign, way: "off", cloth: by }] : [];

const drag = (place: TrialPlace, towards: TrialPlace, by: number): Seen[] =>
  by > SEEN_BESIDE ? [{ place, sign: "dragLines", towards }] : [];

function shoulders(r: Residual): Seen[] {
  const [slope, forward, width] = [r("slope"), r("forward"), r("shoulderWidth")];
  return [
    // The shoulder falls more: its end stands empty on front and back, and cloth hangs from the neck to the underarm.
    ...fold("shoulder", "foldAcross", 2 * slope, 2 * SEEN),
    ...drag("frontArmhole", "neckPoint", slope),
    ...drag("backArmhole", "neckPoint", slope),
    // It falls less: its end carries all, and cloth is pushed up under the neck. The opened seam lets out front and back.
    ...slit("shoulder", "tight", -2 * slope, 2 * SEEN),
    ...fold("frontNeck", "foldAcross", -slope, SEEN_BESIDE),
    ...fold("backNeck", "foldAcross", -slope, SEEN_BESIDE),
    ...drag("chest", "shoulder", -slope),
    ...off("shoulder", "leansBack", forward),
    ...drag("chest", "frontArmhole", forward),
    ...off("shoulder", "leansForward", -forward),
    ...off("shoulder", "endsInside", width),
    ...off("shoulder", "endsOutside", -width),
  ];
}

function edges(r: Residual): Seen[] {
  // A garment short above the bust brings the underarm up with it.
  const underarm = r("armhole") + r("lengthAbove");
  return [
    ...fold("frontArmhole", "gapes", -r("armholeFront")),
    ...slit("frontArmhole", "tight", r("armholeFront")),
    ...fold("frontNeck", "gapes", -r("neckFront")),
    ...slit("frontNeck", "cutsIn", r("neckFront")),
    // Pinned where it is nearest to hand, at the centre back: one fold for both halves.
    ...fold("backNeck", "gapes", -2 * r("neckBack"), 2 * SEEN),
    ...slit("backNeck", "cutsIn", r("neckBack")),
    ...off("underarm", "cutsIn", underarm),
    ...off("underarm", "drops", -underarm),
  ];
}

function lengths(r: Residual, { frontBasque }: PieceSet): Seen[] {
  const [above, below] = [r("lengthAbove"), r("lengthBelow")];
  return [
    ...fold("chest", "foldAcross", -above),
    ...slit("chest", "tight", above, SEEN_LEVEL),
    ...fold("blades", "foldAcross", -(above + r("roundBack"))),
    ...slit("blades", "tight", r("roundBack")),
    ...drag("backArmhole", "blades", r("roundBack")),
    ...off("backNeck", "drops", r("roundBack"), SEEN_BESIDE),
    ...fold("frontAboveWaist", "foldAcross", -(below + r("frontCentre"))),
    ...fold("backAboveWaist", "foldAcross", -(below + r("backCentre"))),
    ...(frontBasque === undefined
      ? []
      : [
          ...fold("frontHip", "foldAcross", -(r("lengthBasque") + r("basqueFront"))),
          ...fold("backHip", "foldAcross", -(r("lengthBasque") + r("basqueBack"))),
        ]),
  ];
}

/** Where waist and hem come to lie, all that hangs above them added up. */
function levels(r: Residual, { frontBasque }: PieceSet): Seen[] {
  const above = r("lengthAbove") + r("strapLength") + r("lengthBelow");
  const [front, back] = [above + r("frontCentre"), above + r("roundBack") + r("backCentre")];
  const level = (place: TrialPlace, short: number): Seen[] => [
    ...off(place, "ridesUp", short, SEEN_LEVEL),
    ...off(place, "drops", -short, SEEN_LEVEL),
  ];
  return [
    ...level("frontWaist", front),
    ...level("backWaist", back),
    ...(frontBasque === undefined
      ? []
      : [
          ...level("frontHem", front + r("lengthBasque") + r("basqueFront")),
          ...level("backHem", back + r("lengthBasque") + r("basqueBack")),
        ]),
  ];
}

function widths(r: Residual): Seen[] {
  const [chest, back, ribs, waist, hip, under] = [
    r("chest"),
    r("backWidth"),
    r("bustSides"),
    r("waist"),
    r("hip"),
    r("underBust"),
  ];
  return [
    ...slit("chest", "tight", chest),
    ...off("frontArmhole", "cutsIn", chest, SEEN_BESIDE),
    ...fold("chest", "foldAlong", -chest),
    ...slit("backArmhole", "tight", back),
    ...drag("blades", "backArmhole", back),
    ...fold("blades", "foldAlong", -back),
    ...slit("underarm", "tight", ribs),
    ...fold("underarm", "foldAlong", -ribs),
    ...slit("underBust", "tight", under),
    ...fold("underBust", "foldAlong", -under),
    ...slit("sideSeam", "tight", waist),
    // What is too tight to go down is pushed up above the waist.
    ...(waist > 2 * SEEN_BESIDE ? [{ place: "backAboveWaist", sign: "foldAcross" } as const] : []),
    ...fold("sideSeam", "foldAlong", -waist),
    ...slit("sideHip", "tight", hip),
    ...drag("frontHip", "sideHip", hip),
    ...fold("sideHip", "foldAlong", -hip),
  ];
}

function bust(r: Residual, pieces: PieceSet): Seen[] {
  const cup = r("cup");
  // All that is too short above it brings the aim of the darts up.
  const down = r("bustLevel") + r("lengthAbove") + r("strapLength");
  const out = r("bustOut");
  const [main] = mainDarts(pieces);
  const waist = waistDartOf(pieces);
  const refOf = ([piece, dart]: NonNullable<typeof main>): DartRef => ({ piece: piece.name, dart: dart.name });
  const mark = (place: TrialPlace, sign: TrialSign, o: number, d: number, dart?: DartRef): Seen[] =>
    Math.hypot(o, d) > SEEN
      ? [{ place, sign, mark: { out: o, down: d }, ...(dart === undefined ? {} : { dart }) }]
      : [];
  const sharp = r("sharp");
  // How a dart comes out is judged where it ends on the bust; and while an edge stands off, nobody asks what is left at the dart.
  const isAtEnd = Math.hypot(out, down) < SEEN_BESIDE && r("neckFront") > -SEEN && r("armholeFront") > -SEEN;
  const isJudged = main !== undefined && (isAtEnd || Math.abs(cup) > SEEN);
  return [
    ...slit("bust", "flat", cup),
    ...drag("frontArmhole", "bust", cup),
    ...off("sideSeam", "leansForward", cup / 2, SEEN_BESIDE),
    ...fold("bust", "foldAlong", -cup),
    ...mark("bust", "bustPoint", waist === undefined || Math.abs(r("sideDartOut")) > SEEN ? out : 0, down),
    ...(main === undefined || waist === undefined
      ? []
      : mark("dartEnd", "dartEnds", r("sideDartOut"), down, refOf(main))),
    ...(waist === undefined
      ? []
      : mark("dartEnd", "dartEnds", out, r("waistDartLevel") + r("lengthAbove"), refOf(waist))),
    // Of these there is nothing to measure.
    ...(isJudged && sharp < -SEEN ? [{ place: "dartEnd", sign: "pointed", dart: refOf(main) } as const] : []),
    ...(isJudged && sharp > SEEN_BESIDE ? [{ place: "dartEnd", sign: "flat", dart: refOf(main) } as const] : []),
  ];
}

function straps(r: Residual): Seen[] {
  const [length, place] = [r("strapLength"), r("strapPlace")];
  return [
    ...fold("strap", "foldAcross", -length),
    ...slit("strap", "cutsIn", length),
    ...off("underBust", "drops", -length, SEEN_LEVEL),
    ...off("underBust", "ridesUp", length, SEEN_LEVEL),
    ...off("strap", "endsOutside", place),
    ...off("strap", "endsInside", -place),
    ...(place > SEEN_BESIDE ? [{ place: "strap", sign: "slips" } as const] : []),
  ];
}

/** The closure, both halves together. */
function closures(residuals: OnHalves, { frontBasque }: PieceSet): readonly Seen[] {
  const whole = (name: Dimension): number => HALVES.reduce((sum, half) => sum + (residuals[half][name] ?? 0), 0);
  const of = (place: TrialPlace, tight: number): Seen[] => [
    ...off(place, "doesNotMeet", tight, SEEN_CLOSURE),
    ...off(place, "overlaps", -tight, SEEN_CLOSURE),
  ];
  return [
    ...of("closureBust", whole("cup") + whole("bustSides")),
    ...of("closureWaist", whole("waist")),
    ...(frontBasque === undefined ? [] : of("closureHip", whole("hip"))),
  ];
}

/** Something seen, and on which half; absent: on both. */
interface SeenOn extends Seen {
  readonly half?: Half;
}

const keyOf = ({ place, sign, towards, dart }: Seen): string =>
  [place, sign, towards ?? "", dart?.piece ?? "", dart?.dart ?? ""].join(" ");

const differ = (a: Seen, b: Seen): number =>
  Math.max(
    Math.abs((a.cloth ?? 0) - (b.cloth ?? 0)),
    Math.abs((a.mark?.out ?? 0) - (b.mark?.out ?? 0)),
    Math.abs((a.mark?.down ?? 0) - (b.mark?.down ?? 0)),
  );

/** Both halves as they are put down: what is alike once, for both. */
function onBoth(left: readonly Seen[], right: readonly Seen[]): readonly SeenOn[] {
  const others = new Map(right.map((seen) => [keyOf(seen), seen]));
  const ofLeft = left.flatMap((seen): readonly SeenOn[] => {
    const other = others.get(keyOf(seen));
    if (other === undefined) return [{ ...seen, half: "left" }];
    others.delete(keyOf(seen));
    return differ(seen, other) > ALIKE
      ? [
          { ...seen, half: "left" },
          { ...other, half: "right" },
        ]
      : [seen];
  });
  return [...ofLeft, ...[...others.values()].map((seen): SeenOn => ({ ...seen, half: "right" }))];
}

/** All that is to be seen of a garment on a body, without any error. */
export function trulySeen(residuals: OnHalves, plan: Plan, truths: readonly Truth[]): readonly SeenOn[] {
  const of = (half: Half): readonly Seen[] => [
    ...seenOn(residuals[half], setOf(plan[half].pieces)),
    ...truths.flatMap((truth) =>
      truth.half === undefined || truth.half === half ? (kindOf(truth.name).seen?.(truth.amount, half) ?? []) : [],
    ),
  ];
  return merged([...onBoth(of("left"), of("right")), ...closures(residuals, setOf(plan.left.pieces))]);
}

/** One line for one thing at one place on one half: the larger. */
function merged(all: readonly SeenOn[]): readonly SeenOn[] {
  const kept = new Map<string, SeenOn>();
  for (const seen of all) {
    const key = `${keyOf(seen)} ${seen.half ?? ""}`;
    const before = kept.get(key);
    if (before === undefined || (seen.cloth ?? 0) > (before.cloth ?? 0)) kept.set(key, seen);
  }
  return [...kept.values()];
}

export interface Noise {
  /** Of what is to be seen, how much is not. */
  readonly missed: number;
  /** Of what is put down, how much is not so. */
  readonly wrong: number;
  /** mm of cloth, one standard deviation; of each way of a mark. */
  readonly error: number;
  readonly ofMark: number;
  /** How often the same cloth is put down at a place near by, or by another word, where there is one. */
  readonly otherwise: number;
  /** How often no amount is said. */
  readonly unsaid: number;
  /** How often a check is looked at, and answered wrongly. */
  readonly looked: number;
  readonly misjudged: number;
}

export const USUAL_NOISE: Noise = {
  missed: 0.2,
  wrong: 0.1,
  error: 5,
  ofMark: 3.5,
  otherwise: 0.1,
  unsaid: 0.15,
  looked: 0.7,
  misjudged: 0.1,
};

export const NO_NOISE: Noise = {
  missed: 0,
  wrong: 0,
  error: 0,
  ofMark: 0,
  otherwise: 0,
  unsaid: 0,
  looked: 1,
  misjudged: 0,
};

/** The same cloth, as others put it down: one fold has no single place (from memory; common practice, no source). */
const OTHERWISE: Readonly<Record<string, readonly (readonly [TrialPlace, TrialSign])[]>> = {
  "sideSeam tight": [
    ["frontWaist", "tight"],
    ["backWaist", "tight"],
  ],
  "sideSeam foldAlong": [
    ["frontWaist", "foldAlong"],
    ["backWaist", "foldAlong"],
  ],
  "sideHip tight": [
    ["frontHip", "tight"],
    ["backHip", "tight"],
  ],
  "sideHip foldAlong": [["backHip", "foldAlong"]],
  "chest tight": [["frontArmhole", "tight"]],
  "blades tight": [["blades", "flat"]],
  "blades foldAlong": [["backArmhole", "foldAlong"]],
  "backArmhole tight": [["backArmhole", "cutsIn"]],
  "backAboveWaist foldAcross": [["backWaist", "foldAcross"]],
  "frontAboveWaist foldAcross": [["frontWaist", "foldAcross"]],
  "shoulder foldAcross": [["frontArmhole", "foldAcross"]],
  "shoulder tight": [["shoulder", "dragLines"]],
  "underarm cutsIn": [["frontArmhole", "cutsIn"]],
  "underarm drops": [["underarm", "gapes"]],
  "bust flat": [["bust", "tight"]],
  "bust foldAlong": [["bust", "foldAcross"]],
  "dartEnd pointed": [["bust", "pointed"]],
  "strap foldAcross": [["strap", "slips"]],
  "underBust foldAlong": [["underBust", "gapes"]],
};

function asPutDown(seen: SeenOn, chances: Chances, noise: Noise): SeenOn {
  const others = OTHERWISE[`${seen.place} ${seen.sign}`];
  if (others === undefined || !chances.is(noise.otherwise)) return seen;
  const [place, sign] = chances.one(others);
  return { ...seen, place, sign };
}

/** What can be seen wrongly, on any garment: a fold of sitting badly, a light, a wrong pin. */
const PLAUSIBLE: readonly Seen[] = [
  { place: "chest", sign: "foldAcross", way: "pinched" },
  { place: "chest", sign: "foldAlong", way: "pinched" },
  { place: "frontNeck", sign: "gapes", way: "pinched" },
  { place: "backNeck", sign: "gapes", way: "pinched" },
  { place: "frontArmhole", sign: "gapes", way: "pinched" },
  { place: "underarm", sign: "cutsIn", way: "off" },
  { place: "underarm", sign: "foldAlong", way: "pinched" },
  { place: "bust", sign: "foldAlong", way: "pinched" },
  { place: "frontAboveWaist", sign: "foldAcross", way: "pinched" },
  { place: "frontWaist", sign: "ridesUp", way: "off" },
  { place: "frontWaist", sign: "drops", way: "off" },
  { place: "sideSeam", sign: "foldAlong", way: "pinched" },
  { place: "sideSeam", sign: "leansForward", way: "off" },
  { place: "sideSeam", sign: "leansBack", way: "off" },
  { place: "blades", sign: "tight", way: "letOut" },
  { place: "blades", sign: "foldAlong", way: "pinched" },
  { place: "backAboveWaist", sign: "foldAcross", way: "pinched" },
  { place: "backAboveWaist", sign: "dragLines", towards: "sideSeam" },
  { place: "backWaist", sign: "ridesUp", way: "off" },
  { place: "closureWaist", sign: "overlaps", way: "off" },
];
const OF_SHOULDERS: readonly Seen[] = [
  { place: "shoulder", sign: "endsOutside", way: "off" },
  { place: "shoulder", sign: "leansBack", way: "off" },
  { place: "shoulder", sign: "foldAcross", way: "pinched" },
];
const OF_STRAPS: readonly Seen[] = [
  { place: "strap", sign: "slips" },
  { place: "underBust", sign: "drops", way: "off" },
];
const OF_HIPS: readonly Seen[] = [
  { place: "sideHip", sign: "tight", way: "letOut" },
  { place: "backHem", sign: "ridesUp", way: "off" },
  { place: "frontHem", sign: "drops", way: "off" },
];
/** mm of cloth in what is not there, and how often it is seen on one half alone. */
const WRONG_CLOTH = [5, 14] as const;
const WRONG_ONE_SIDED = 0.25;

/** Half of the cloth in a fold is pinched; all else is as it is. */
const amountOf = (way: TrialWay, cloth: number): number => (way === "pinched" ? cloth / 2 : cloth);

function putDown({ cloth, mark, way, ...rest }: SeenOn, id: string, chances: Chances, noise: Noise): Observation {
  if (mark !== undefined) {
    const [out, down] = [mark.out, mark.down].map((value) => Math.round(value + noise.ofMark * chances.normal()));
    return { ...rest, id, mark: { out: out ?? 0, down: down ?? 0 } };
  }
  if (cloth === undefined || way === undefined || chances.is(noise.unsaid)) return { ...rest, id };
  const read = amountOf(way, Math.max(2, cloth + noise.error * chances.normal()));
  return { ...rest, id, way, amount: Math.max(1, Math.round(read)) };
}

const decided = (work: Work): Decided => {
  const { tapes, trusted, age, pattern, easeWanted, bustRadius, picks, alterations, seen, allowances } = work;
  return {
    tapes,
    pattern,
    easeWanted,
    picks,
    alterations,
    ...(trusted === undefined ? {} : { trusted }),
    ...(age === undefined ? {} : { age }),
    ...(bustRadius === undefined ? {} : { bustRadius }),
    ...(seen === undefined ? {} : { seen }),
    ...(allowances === undefined ? {} : { allowances }),
  };
};

interface Looked {
  readonly work: Work;
  readonly plan: Plan;
  readonly residuals: OnHalves;
  readonly truths: readonly Truth[];
  readonly id: string;
  readonly chances: Chances;
  readonly noise?: Noise;
}

/** A fitting: the record that is made of a garment on a body. */
export function lookInMirror({ work, plan, residuals, truths, id, chances, noise = USUAL_NOISE }: Looked): Trial {
  const all = trulySeen(residuals, plan, truths);
  const seen = all.filter(() => !chances.is(noise.missed));
  const pieces = setOf(plan.left.pieces);
  const plausible = [
    ...PLAUSIBLE,
    ...(pieces.strap === undefined ? OF_SHOULDERS : OF_STRAPS),
    ...(pieces.frontBasque === undefined ? [] : OF_HIPS),
  ];
  const known = new Set(all.map(keyOf));
  // So many for each that is true that they come to their share of all.
  const wrong = Array.from({ length: Math.max(1, seen.length) }).flatMap((): readonly SeenOn[] => {
    if (!chances.is(noise.wrong / (1 - noise.wrong))) return [];
    const one = chances.one(plausible);
    if (known.has(keyOf(one))) return [];
    known.add(keyOf(one));
    const cloth = one.way === undefined ? {} : { cloth: chances.from(...WRONG_CLOTH) };
    return [{ ...one, ...cloth, ...(chances.is(WRONG_ONE_SIDED) ? { half: chances.one(HALVES) } : {}) }];
  });
  const lines = chances.shuffled([...merged(seen.map((one) => asPutDown(one, chances, noise))), ...wrong]);
  return {
    id,
    sewn: decided(work),
    observations: lines.map((line, at) => putDown(line, `${id}-${at + 1}`, chances, noise)),
    checks: checksOf(residuals, truths, chances, noise),
  };
}

/** mm: how far off a check is still ticked. */
const TICKED = 8;
const TWISTING: ReadonlySet<string> = new Set(["offGrain", "bentSpine"]);
const HANGING_ASLANT: ReadonlySet<string> = new Set(["unevenHips", "roundBelly", "flatSeat", "bentSpine"]);
const SIDES_ASLANT: ReadonlySet<string> = new Set(["sideSeamsForward", "sideSeamsBack", "offGrain", "roundBelly"]);

function checksOf(
  residuals: OnHalves,
  truths: readonly Truth[],
  chances: Chances,
  noise: Noise,
): Readonly<Partial<Record<TrialCheck, boolean>>> {
  const isAny = (names: ReadonlySet<string>): boolean => truths.some(({ name }) => names.has(name));
  const within = (holds: (r: Residual) => boolean): boolean =>
    HALVES.every((half) => holds((name) => residuals[half][name] ?? 0));
  const above = (r: Residual): number => r("lengthAbove") + r("strapLength") + r("lengthBelow");
  const front = (r: Residual): number => above(r) + r("frontCentre");
  const back = (r: Residual): number => above(r) + r("roundBack") + r("backCentre");
  const is: Readonly<Record<TrialCheck, boolean>> = {
    centresUpright: !isAny(TWISTING),
    sideSeamsUpright: !isAny(SIDES_ASLANT) && within((r) => r("cup") < 2 * TICKED),
    hemLevel:
      !isAny(HANGING_ASLANT) &&
      within((r) => Math.abs(front(r) + r("basqueFront") - back(r) - r("basqueBack")) < TICKED),
    waistOnWaist: within((r) => Math.abs(front(r)) < TICKED && Math.abs(back(r)) < TICKED),
    shouldersStay: within((r) => r("slope") < TICKED && r("shoulderWidth") > -TICKED && r("strapPlace") < TICKED),
    canSit: within((r) => r("hip") < TICKED),
    canReach: within((r) => r("backWidth") < TICKED && r("armhole") > -2 * TICKED),
    canBreathe: within((r) => r("cup") + r("bustSides") < 2 * TICKED && r("waist") < 2 * TICKED),
  };
  return Object.fromEntries(
    TRIAL_CHECKS.flatMap((check) =>
      chances.is(noise.looked) ? [[check, chances.is(noise.misjudged) ? !is[check] : is[check]]] : [],
    ),
  );
}
