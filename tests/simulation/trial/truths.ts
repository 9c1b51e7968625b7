/**
 * Hidden truths: what a body is otherwise than its first garment, in mm of cloth on the half. Written apart from the planner's own
 * table of signs, from memory of what handbooks of pattern fitting teach; every rule here is common practice, no source.
 *
 * A truth is one of two sorts. Of the first sort an alteration is known: it says which dimensions of the garment the body needs
 * otherwise, and which alteration a handbook would make (`ideal`), so that it can be proven that the dimensions measure what the
 * alterations do. Of the second sort no usual table has a row, or nothing in the planner answers it: it says what is seen of it, which
 * stays whatever is altered.
 */
import { fitOf } from "../../../src/core/alterations/fit/index";
import type { Alteration, Half } from "../../../src/core/decisions/alteration";
import type { FitName } from "../../../src/core/decisions/fitNames";
import type { Picks } from "../../../src/core/decisions/decided";
import type { Work } from "../../../src/core/decisions/work";
import type { DartRef } from "../../../src/core/pattern/piece";
import { setOf } from "../../../src/core/pattern/pieceSet";
import type { Plan } from "../../../src/core/plan/plan";
import { legOf, mainDarts, SHARP_AT, waistDartOf, type Dimension } from "./dimensions";
import type { Seen } from "./seen";

/** One body's own: on one half alone, or on both. */
export interface Truth {
  readonly name: TruthName;
  /** mm of cloth on the half, above 0: its name says which way. */
  readonly amount: number;
  readonly half?: Half;
}

/** What a handbook would do. */
interface Ideal {
  readonly alterations: readonly Alteration[];
  readonly picks?: Picks;
}

interface TruthKind {
  /** mm of cloth on the half, from the least to the most that is drawn. */
  readonly amounts: readonly [number, number];
  /** How many of those who have it have it on one half alone. */
  readonly oneSided?: number;
  /** What the body needs more of each dimension, for each mm of the amount. */
  readonly needs: Readonly<Partial<Record<Dimension, number>>>;
  /** The right alteration changes other dimensions too, and rightly: the body needs them so, on both halves. */
  readonly follows?: true;
  /** Absent: none is known. null: not on these pieces. */
  readonly ideal?: (truth: Truth, plan: Plan, work: Work) => Ideal | null;
  /** What is seen of it that no dimension says, on the half that has it, or on both. */
  readonly seen?: (amount: number, half: Half) => readonly Seen[];
  /** Not where the garment has not these: the hip, or a seam over the bust. */
  readonly only?: "basque" | "princess";
}

/** A fit alteration for a truth: an amount for the whole body is twice the half's. */
const byFit =
  (fit: FitName, times: number) =>
  ({ amount, half }: Truth): Ideal => ({ alterations: [fitted(fit, times * amount, half)] });

const fitted = (fit: FitName, amount: number, half: Half | undefined): Alteration => ({
  kind: "fit",
  id: `ideal-${fit}-${half ?? "both"}`,
  fit,
  amount: amount * (half === undefined && fitOf(fit).isWhole === true ? 2 : 1),
  ...(half === undefined ? {} : { half }),
});

/** The whole of a bust alteration, what the planner makes already with it; sizes stay as they are picked. */
const byBust =
  (times: number) =>
  ({ amount }: Truth, { sizing }: Plan): Ideal => ({
    alterations: [],
    picks: {
      baseSize: sizing.baseSize.label,
      ...(sizing.cup.label === null ? {} : { cup: sizing.cup.label }),
      bustAlteration: sizing.bust.alteration + 2 * times * amount,
    },
  });

/** The cup version of one half that comes nearest to what is more, or less, of it; null where the chart prints none beside. */
const byHalfCup =
  (times: number) =>
  ({ amount, half }: Truth, { sizing: { baseSize, cup, bust } }: Plan, { pattern }: Work): Ideal | null => {
    const now = pattern.chart.cups.find(({ label }) => label === cup.label);
    if (now === undefined || half === undefined) return null;
    // A cup's difference is of the whole girth: half of it is on each half.
    const wanted = now.difference + 2 * times * amount;
    const [nearest] = pattern.chart.cups.toSorted(
      (a, b) => Math.abs(a.difference - wanted) - Math.abs(b.difference - wanted),
    );
    if (nearest === undefined || nearest === now) return null;
    return {
      alterations: [],
      picks: {
        baseSize: baseSize.label,
        cup: now.label,
        halfCups: { [half]: nearest.label },
        bustAlteration: bust.alteration,
      },
    };
  };

const piecesOn = (plan: Plan, half: Half | undefined) => setOf((half === "right" ? plan.right : plan.left).pieces);

/** The ends of bust darts moved: out along the way from the centre, and down. */
function endMoved(dart: DartRef, isSide: boolean, out: number, down: number, half: Half | undefined): Alteration {
  return {
    kind: "dartEnd",
    id: `ideal-dartEnd-${dart.dart}-${half ?? "both"}`,
    dart,
    shorten: isSide ? out : down,
    across: isSide ? -down : -out,
    hold: "mouth",
    giveBack: {},
    ...(half === undefined ? {} : { half }),
  };
}

/** Both darts of a front, or the one of a cup, aimed further out; null of a princess seam, which has no alteration for it. */
const byAim =
  (times: number) =>
  ({ amount, half }: Truth, plan: Plan): Ideal | null => {
    const pieces = piecesOn(plan, half);
    const [main] = mainDarts(pieces);
    if (main === undefined) return null;
    const waist = waistDartOf(pieces);
    const alterations = [
      endMoved(refOf(main), main[1].seam === "side", times * amount, 0, half),
      ...(waist === undefined ? [] : [endMoved(refOf(waist), false, times * amount, 0, half)]),
    ];
    return { alterations };
  };

const refOf = ([piece, dart]: ReturnType<typeof mainDarts>[number]): DartRef => ({
  piece: piece.name,
  dart: dart.name,
});

/** The side dart of a front ended further out. */
const bySideEnd = ({ amount, half }: Truth, plan: Plan): Ideal | null => {
  const pieces = piecesOn(plan, half);
  const [main] = mainDarts(pieces);
  if (main === undefined || waistDartOf(pieces) === undefined) return null;
  return { alterations: [endMoved(refOf(main), true, amount, 0, half)] };
};

const byWaistEnd = ({ amount, half }: Truth, plan: Plan): Ideal | null => {
  const waist = waistDartOf(piecesOn(plan, half));
  return waist === undefined ? null : { alterations: [endMoved(refOf(waist), false, 0, amount, half)] };
};

/** The dart narrower at its mouth. */
const byMouth = ({ amount, half }: Truth, plan: Plan): Ideal | null => {
  const [main] = mainDarts(piecesOn(plan, half));
  if (main === undefined) return null;
  const each = -(amount * legOf(...main)) / SHARP_AT / 2;
  return {
    alterations: [
      {
        kind: "dartMouth",
        id: `ideal-dartMouth-${half ?? "both"}`,
        dart: refOf(main),
        inner: each,
        outer: each,
        giveBack: {},
        ...(half === undefined ? {} : { half }),
      },
    ],
  };
};

/** A cup raised on its straps, the band deeper by as much. */
const byStrapAndBand = ({ amount, half }: Truth): Ideal => ({
  alterations: [fitted("bandDepth", amount, half), fitted("strapLength", -amount, half)],
});

const other = (half: Half): Half => (half === "left" ? "right" : "left");

/** Of which an alteration is known. */
const WITH_ROW = {
  swayBack: { amounts: [9, 22], needs: { backCentre: -1 }, ideal: byFit("swayBack", 1) },
  lowWaistAtFront: {
    amounts: [9, 20],
    needs: { frontCentre: 1, basqueFront: -1 },
    ideal: byFit("waistDropFront", 1),
  },
  highWaistAtFront: {
    amounts: [9, 20],
    needs: { frontCentre: -1, basqueFront: 1 },
    ideal: byFit("waistDropFront", -1),
  },
  lowWaistAtBack: { amounts: [9, 18], needs: { backCentre: 1, basqueBack: -1 }, ideal: byFit("waistDropBack", 1) },
  roundBack: { amounts: [9, 20], needs: { roundBack: 1 }, ideal: byFit("roundBack", 1) },
  flatBack: { amounts: [9, 14], needs: { roundBack: -1 }, ideal: byFit("roundBack", -1) },
  slopingShoulders: { amounts: [9, 18], oneSided: 0.4, needs: { slope: 1 }, ideal: byFit("shoulderSlope", -1) },
  squareShoulders: { amounts: [9, 18], oneSided: 0.3, needs: { slope: -1 }, ideal: byFit("shoulderSlope", 1) },
  forwardShoulders: { amounts: [9, 16], oneSided: 0.2, needs: { forward: 1 }, ideal: byFit("forwardShoulder", 1) },
  narrowShoulders: { amounts: [9, 20], oneSided: 0.1, needs: { shoulderWidth: -1 }, ideal: byFit("shoulderWidth", -1) },
  broadShoulders: { amounts: [9, 20], oneSided: 0.1, needs: { shoulderWidth: 1 }, ideal: byFit("shoulderWidth", 1) },
  lowBustPoint: {
    amounts: [9, 22],
    oneSided: 0.15,
    needs: { bustLevel: 1, waistDartLevel: 1 },
    follows: true,
    ideal: byFit("bustPointLevel", 1),
  },
  highBustPoint: {
    amounts: [9, 18],
    oneSided: 0.15,
    needs: { bustLevel: -1, waistDartLevel: -1 },
    follows: true,
    ideal: byFit("bustPointLevel", -1),
  },
  bustPointOut: {
    amounts: [9, 15],
    needs: { bustOut: 1, sideDartOut: 1 },
    follows: true,
    ideal: byAim(1),
  },
  bustPointIn: {
    amounts: [9, 15],
    needs: { bustOut: -1, sideDartOut: -1 },
    follows: true,
    ideal: byAim(-1),
  },
  fullerCup: { amounts: [9, 25], needs: { cup: 1 }, follows: true, ideal: byBust(1) },
  smallerCup: { amounts: [9, 18], needs: { cup: -1 }, follows: true, ideal: byBust(-1) },
  /** Breasts are seldom alike: as much as a cup version, on one half. */
  oneBreastFuller: { amounts: [9, 16], oneSided: 1, needs: { cup: 1 }, follows: true, ideal: byHalfCup(1) },
  oneBreastSmaller: { amounts: [9, 16], oneSided: 1, needs: { cup: -1 }, follows: true, ideal: byHalfCup(-1) },
  longAboveBust: { amounts: [9, 25], needs: { lengthAbove: 1 }, ideal: byFit("lengthAboveBust", 1) },
  shortAboveBust: { amounts: [9, 25], needs: { lengthAbove: -1 }, ideal: byFit("lengthAboveBust", -1) },
  longBelowBust: { amounts: [9, 28], needs: { lengthBelow: 1 }, follows: true, ideal: longBelow(1) },
  shortBelowBust: { amounts: [9, 28], needs: { lengthBelow: -1 }, follows: true, ideal: longBelow(-1) },
  longToHip: { amounts: [10, 30], needs: { lengthBasque: 1 }, ideal: byFit("lengthBasque", 1) },
  shortToHip: { amounts: [10, 30], needs: { lengthBasque: -1 }, ideal: byFit("lengthBasque", -1) },
  broadBack: { amounts: [9, 14], needs: { backWidth: 1 }, ideal: byFit("backWidth", 1) },
  narrowBack: { amounts: [9, 14], needs: { backWidth: -1 }, ideal: byFit("backWidth", -1) },
  broadChest: { amounts: [9, 14], needs: { chest: 1 }, ideal: byFit("chestWidth", 1) },
  narrowChest: { amounts: [9, 14], needs: { chest: -1 }, ideal: byFit("chestWidth", -1) },
  /** The ribs, all round: what the tape took for bust. */
  broadRibs: { amounts: [9, 20], needs: { bustSides: 1 }, ideal: byFit("sideSeamBust", 1) },
  narrowRibs: { amounts: [9, 20], needs: { bustSides: -1 }, ideal: byFit("sideSeamBust", -1) },
  largerWaist: { amounts: [9, 24], needs: { waist: 1 }, ideal: byFit("sideSeamWaist", 1) },
  smallerWaist: { amounts: [9, 24], needs: { waist: -1 }, ideal: byFit("sideSeamWaist", -1) },
  largerHip: { amounts: [9, 26], needs: { hip: 1 }, ideal: byFit("sideSeamHip", 1) },
  smallerHip: { amounts: [9, 26], needs: { hip: -1 }, ideal: byFit("sideSeamHip", -1) },
  hollowChest: { amounts: [9, 15], oneSided: 0.1, needs: { neckFront: -1 }, follows: true, ideal: necklineClosed },
  armholeGape: {
    amounts: [9, 15],
    oneSided: 0.1,
    needs: { armholeFront: -1 },
    follows: true,
    ideal: byFit("armholeGape", 1),
  },
  backNeckGape: { amounts: [9, 13], needs: { neckBack: -1 }, ideal: byFit("backNeckGape", 1) },
  dartTooFull: { amounts: [9, 16], oneSided: 0.1, needs: { sharp: -1 }, follows: true, ideal: byMouth },
  sideDartPastPoint: { amounts: [9, 22], oneSided: 0.1, needs: { sideDartOut: 1 }, follows: true, ideal: bySideEnd },
  waistDartPastPoint: {
    amounts: [9, 20],
    oneSided: 0.1,
    needs: { waistDartLevel: 1 },
    follows: true,
    ideal: byWaistEnd,
  },
  armholeTooHigh: { amounts: [9, 20], needs: { armhole: 1 }, ideal: byFit("armholeDepth", 1) },
  armholeTooLow: { amounts: [9, 20], needs: { armhole: -1 }, ideal: byFit("armholeDepth", -1) },
  strapTooLong: { amounts: [9, 30], oneSided: 0.3, needs: { strapLength: -1 }, ideal: byFit("strapLength", -1) },
  strapTooShort: { amounts: [9, 25], oneSided: 0.2, needs: { strapLength: 1 }, ideal: byFit("strapLength", 1) },
  strapTooFarOut: { amounts: [9, 20], needs: { strapPlace: 1 }, ideal: byFit("strapPlace", 1) },
  broadUnderBust: { amounts: [9, 20], needs: { underBust: 1 }, ideal: byFit("sideSeamUnderBust", 1) },
  narrowUnderBust: { amounts: [9, 20], needs: { underBust: -1 }, ideal: byFit("sideSeamUnderBust", -1) },
  underBustBelowCrease: { amounts: [9, 18], needs: { strapLength: -1, lengthBelow: 1 }, ideal: byStrapAndBand },
} as const satisfies Readonly<Record<string, TruthKind>>;

/** A band is deepened where there is one. */
function longBelow(times: number) {
  return (truth: Truth, plan: Plan): Ideal =>
    byFit(piecesOn(plan, truth.half).backBand === undefined ? "lengthBelowBust" : "bandDepth", times)(truth);
}

function necklineClosed(truth: Truth, plan: Plan): Ideal {
  return byFit(piecesOn(plan, truth.half).cup === undefined ? "necklineGape" : "edgeGape", 1)(truth);
}

/** Of which no usual table has a row, or which nothing here can answer: what is seen of them stays. */
const WITHOUT_ROW = {
  /** One hip bone higher: the hem hangs aslant and folds gather over the lower hip. */
  unevenHips: {
    amounts: [9, 20],
    oneSided: 1,
    needs: {},
    only: "basque",
    seen: (amount) => [
      { place: "frontHem", sign: "ridesUp", way: "off", cloth: amount },
      { place: "backHem", sign: "ridesUp", way: "off", cloth: amount },
      { place: "sideHip", sign: "dragLines", towards: "backWaist" },
    ],
  },
  /** A spine bent as an S: low at one shoulder, folds at the other side of the waist. */
  bentSpine: {
    amounts: [9, 18],
    oneSided: 1,
    needs: {},
    seen: (amount) => [
      { place: "backAboveWaist", sign: "dragLines", towards: "underarm" },
      { place: "backWaist", sign: "ridesUp", way: "off", cloth: amount },
      { place: "backHip", sign: "foldAcross", way: "pinched", cloth: amount },
    ],
  },
  oneBladeProminent: {
    amounts: [9, 16],
    oneSided: 1,
    needs: {},
    seen: (amount) => [
      { place: "blades", sign: "pointed" },
      { place: "backArmhole", sign: "dragLines", towards: "blades" },
      { place: "backArmhole", sign: "gapes", way: "pinched", cloth: amount },
    ],
  },
  /** Ribs that stand out below the bust: tight there, and loose at the waist below them. */
  ribFlare: {
    amounts: [9, 18],
    needs: {},
    seen: (amount) => [
      { place: "frontAboveWaist", sign: "tight", way: "letOut", cloth: amount },
      { place: "frontAboveWaist", sign: "dragLines", towards: "sideSeam" },
    ],
  },
  /** The cloth cut off its grain: one half twists round the body. */
  offGrain: {
    amounts: [9, 20],
    oneSided: 1,
    needs: {},
    seen: (amount, half) => [
      { place: "sideSeam", sign: half === "left" ? "leansForward" : "leansBack", way: "off", cloth: amount },
      { place: "frontAboveWaist", sign: "dragLines", towards: "sideSeam" },
      { place: "backAboveWaist", sign: "dragLines", towards: "sideSeam" },
    ],
  },
  /** The toile pulled out of shape round the neck when it was sewn: it stands off before and behind alike. */
  neckStretched: {
    amounts: [9, 16],
    needs: {},
    seen: (amount) => [
      { place: "neckPoint", sign: "gapes", way: "pinched", cloth: amount },
      { place: "frontNeck", sign: "gapes", way: "pinched", cloth: amount / 2 },
      { place: "backNeck", sign: "gapes", way: "pinched", cloth: amount / 2 },
    ],
  },
  /** A belly round below the waist: the front hem rides up and the side seams are pulled forward. */
  roundBelly: {
    amounts: [9, 24],
    needs: {},
    only: "basque",
    seen: (amount) => [
      { place: "frontHip", sign: "tight", way: "letOut", cloth: amount },
      { place: "frontHem", sign: "ridesUp", way: "off", cloth: amount },
      { place: "sideHip", sign: "leansForward", way: "off", cloth: amount / 2 },
    ],
  },
  /** A flat seat: loose cloth below the waist behind, the hem drops there. */
  flatSeat: {
    amounts: [9, 20],
    needs: {},
    only: "basque",
    seen: (amount) => [
      { place: "backHip", sign: "foldAcross", way: "pinched", cloth: amount },
      { place: "backHip", sign: "foldAlong", way: "pinched", cloth: amount / 2 },
      { place: "backHem", sign: "drops", way: "off", cloth: amount },
    ],
  },
  /** More room in front and less behind, or the other way round, of a girth that is right. */
  sideSeamsForward: {
    amounts: [9, 18],
    needs: {},
    seen: (amount) => [
      { place: "sideSeam", sign: "leansForward", way: "off", cloth: amount },
      { place: "underarm", sign: "leansForward", way: "off", cloth: amount },
    ],
  },
  sideSeamsBack: {
    amounts: [9, 18],
    needs: {},
    seen: (amount) => [
      { place: "sideSeam", sign: "leansBack", way: "off", cloth: amount },
      { place: "underarm", sign: "leansBack", way: "off", cloth: amount },
    ],
  },
  /** A seam over the bust that should pass further out: nothing here moves it across. */
  princessTooFarIn: {
    amounts: [9, 16],
    needs: { bustOut: 1 },
    only: "princess",
  },
  /** Upper arms carried far forward: the front edge cuts in, the back one stands off. */
  armsForward: {
    amounts: [9, 16],
    needs: {},
    seen: (amount) => [
      { place: "frontArmhole", sign: "cutsIn", way: "off", cloth: amount },
      { place: "backArmhole", sign: "gapes", way: "pinched", cloth: amount },
    ],
  },
  /** One side sewn longer than the other: the seam is puckered. */
  seamPuckered: {
    amounts: [9, 14],
    oneSided: 1,
    needs: {},
    seen: (_, half) => [
      { place: "sideSeam", sign: "dragLines", towards: half === other("left") ? "underarm" : "sideHip" },
      { place: "sideSeam", sign: "foldAcross" },
    ],
  },
} as const satisfies Readonly<Record<string, TruthKind>>;

type RowName = keyof typeof WITH_ROW;
type LooseName = keyof typeof WITHOUT_ROW;
export type TruthName = RowName | LooseName;

const namesOf = <T extends object>(record: T): readonly (keyof T)[] => Object.keys(record) as (keyof T)[];

export const ROW_NAMES = namesOf(WITH_ROW);
export const LOOSE_NAMES = namesOf(WITHOUT_ROW);

const KINDS: Readonly<Record<TruthName, TruthKind>> = { ...WITH_ROW, ...WITHOUT_ROW };

export const kindOf = (name: TruthName): TruthKind => KINDS[name];
export const hasRow = (name: TruthName): boolean => name in WITH_ROW;
