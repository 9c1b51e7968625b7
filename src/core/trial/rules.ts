/**
 * The table of signs: what each cause shows on a trial garment, by how much, and what is altered for it. One row a cause.
 * Amounts are cloth on one half of the body, mm. Of a fold pinched inside a piece twice its depth comes out of it, of one pinched
 * at a seam its depth comes out of each of the two pieces; a slit inside a piece puts its width in, a seam opened half its width
 * into each piece.
 *
 * @source common practice, no single source, unless a row names one; how likely each sign is is our own judgement.
 */
import type { FitName } from "../decisions/fitNames";
import type { TrialPlace, TrialSign, TrialWay } from "../decisions/trial";
import type { Mm } from "../units";

/** A sign that a cause shows. */
export interface Shown {
  readonly place: TrialPlace;
  readonly sign: TrialSign;
  /** How likely it is seen where the cause is there by more than can be missed: 0 to 1. */
  readonly likely: number;
  /** What the cause's amount is by what was measured here, for each mm; absent: it says nothing of the amount. */
  readonly tells?: Readonly<Partial<Record<TrialWay, number>>>;
  /** Of a mark: which way it lies from what was sewn or drawn, by the cause's amount. */
  readonly marked?: "down" | "up";
}

/** What is altered for a cause: `by` for each mm of its amount on one half; of several fits the first that the garment can have. */
export type Change =
  | { readonly of: "fit"; readonly fits: readonly FitName[]; readonly by: 1 | -1 }
  /** The bust adjusted, on the whole. */
  | { readonly of: "bust"; readonly by: 1 | -1 }
  /** The mouth of a bust dart made wider or narrower, half at each end. */
  | { readonly of: "dartMouth"; readonly by: 1 | -1 }
  /** The end of a bust dart to the mark, its fullness held; the bust darts to the mark of the bust point. */
  | { readonly of: "dartEnd" | "bustPoint" }
  /** The waist dart of the front nearer the centre, off the centre front's seam. */
  | { readonly of: "offCentre" };

export interface Rule {
  readonly name: RuleName;
  readonly shows: readonly Shown[];
  readonly changes: readonly Change[];
  /** The trade knows it, but no alteration of the pieces mends it: she is told what to do by hand, and nothing is altered for its signs. */
  readonly isByHand?: true;
  /** It is of one half: where both show the same it is something else. */
  readonly isOfOneHalf?: true;
  /** It reaches the centre line, so it is for both halves always: else they could not be sewn to each other. */
  readonly isCentre?: true;
  /** A first try where she could not say how much. */
  readonly usual: Mm;
}

/** In the trade's order: shoulders, balance and length, bust, darts, widths, edges. */
export const RULE_NAMES = [
  "slopingShoulder",
  "squareShoulder",
  "forwardShoulder",
  "backwardShoulder",
  "swayBack",
  "flatBack",
  "roundBack",
  "erectBack",
  "longAboveBust",
  "shortAboveBust",
  "longBelowBust",
  "shortBelowBust",
  "waistDipsInFront",
  "waistRisesInFront",
  "waistDipsBehind",
  "waistRisesBehind",
  "longBelowWaist",
  "shortBelowWaist",
  "fullBust",
  "smallBust",
  "underBustTooHigh",
  "underBustTooLow",
  "bustPointElsewhere",
  "dartEndElsewhere",
  "dartTooFull",
  "dartTooFlat",
  "slackBetweenBusts",
  "narrowChest",
  "broadChest",
  "narrowBack",
  "broadBack",
  "looseBust",
  "tightBust",
  "looseWaist",
  "tightWaist",
  "looseHip",
  "tightHip",
  "narrowShoulder",
  "broadShoulder",
  "highArmhole",
  "lowArmhole",
  "neckGapes",
  "armholeGapes",
  "backNeckGapes",
  "strapTooFarOut",
  "strapTooFarIn",
  "strapTooLong",
  "strapTooShort",
  "neckStretched",
  "seamPuckered",
  "clothOffGrain",
  "sideSeamsForward",
  "sideSeamsBack",
  "unevenHips",
  "prominentBlade",
  "roundAbdomen",
  "flatSeat",
  "flaringRibs",
  "armsForward",
  "curvedSpine",
] as const;
export type RuleName = (typeof RULE_NAMES)[number];

const sign = (
  place: TrialPlace,
  what: TrialSign,
  likely: number,
  tells?: Readonly<Partial<Record<TrialWay, number>>>,
): Shown => ({ place, sign: what, likely, ...(tells === undefined ? {} : { tells }) });

const mark = (place: TrialPlace, what: TrialSign, likely: number, marked?: "down" | "up"): Shown => ({
  place,
  sign: what,
  likely,
  ...(marked === undefined ? {} : { marked }),
});

/** A fold inside a piece: twice its depth. */
const FOLD = { pinched: 2 } as const;
/** A fold pinched at a seam: its depth out of each piece. */
const AT_SEAM = { pinched: 1 } as const;
/** A slit inside a piece: its width. */
const SLIT = { letOut: 1 } as const;
/** Both pieces of a side seam are on one half: what a fold there takes, and what opening it gives, is all of that half's. */
const SIDE_FOLD = { pinched: 2 } as const;
const OFF = { off: 1 } as const;
/** A closure that does not meet is out by as much on both halves together. */
const GAP = { off: 0.5 } as const;

const fit = (name: FitName, by: 1 | -1, ...or: readonly FitName[]): Change => ({ of: "fit", fits: [name, ...or], by });

type Row = Omit<Rule, "name">;

/** A row that is mended by hand: of whatever amount, all its signs can be seen. */
const byHand = (shows: readonly Shown[], of: "oneHalf" | "either" = "either"): Row => ({
  shows,
  changes: [],
  isByHand: true,
  ...(of === "oneHalf" ? { isOfOneHalf: true } : {}),
  usual: 20,
});

const ROWS: Readonly<Record<RuleName, Row>> = {
  slopingShoulder: {
    shows: [
      sign("neckPoint", "dragLines", 0.7, AT_SEAM),
      sign("shoulder", "foldAlong", 0.3, AT_SEAM),
      sign("shoulder", "foldAcross", 0.3, AT_SEAM),
      sign("shoulder", "dragLines", 0.3, AT_SEAM),
      sign("frontArmhole", "dragLines", 0.3, AT_SEAM),
      sign("backArmhole", "dragLines", 0.3, AT_SEAM),
      sign("frontArmhole", "foldAcross", 0.2, AT_SEAM),
      sign("backArmhole", "foldAcross", 0.2, AT_SEAM),
      sign("chest", "dragLines", 0.2),
      sign("underarm", "dragLines", 0.2),
    ],
    changes: [fit("shoulderSlope", -1)],
    usual: 8,
  },
  squareShoulder: {
    shows: [
      sign("neckPoint", "foldAcross", 0.55, AT_SEAM),
      sign("backNeck", "foldAcross", 0.4, AT_SEAM),
      sign("frontNeck", "foldAcross", 0.25, AT_SEAM),
      sign("shoulder", "tight", 0.65, { letOut: 0.5 }),
      sign("shoulder", "dragLines", 0.3, { letOut: 0.5 }),
      sign("frontArmhole", "tight", 0.25),
      sign("backArmhole", "tight", 0.15),
      sign("frontArmhole", "cutsIn", 0.15),
    ],
    changes: [fit("shoulderSlope", 1)],
    usual: 8,
  },
  forwardShoulder: {
    shows: [
      sign("shoulder", "leansBack", 0.8, OFF),
      sign("frontArmhole", "tight", 0.25),
      sign("frontArmhole", "foldAlong", 0.15),
      sign("backNeck", "dragLines", 0.15),
      sign("blades", "dragLines", 0.15),
      sign("neckPoint", "leansBack", 0.1),
    ],
    changes: [fit("forwardShoulder", 1)],
    usual: 10,
  },
  backwardShoulder: {
    shows: [sign("shoulder", "leansForward", 0.8, OFF), sign("backArmhole", "tight", 0.15)],
    changes: [fit("forwardShoulder", -1)],
    usual: 10,
  },
  swayBack: {
    shows: [
      sign("backAboveWaist", "foldAcross", 0.9, FOLD),
      sign("backWaist", "drops", 0.4, OFF),
      sign("backHem", "drops", 0.4, OFF),
      sign("backWaist", "foldAcross", 0.25, FOLD),
      sign("sideSeam", "leansBack", 0.1),
      sign("sideSeam", "leansForward", 0.1),
    ],
    changes: [fit("swayBack", 1)],
    isCentre: true,
    usual: 12,
  },
  flatBack: {
    shows: [
      sign("backAboveWaist", "tight", 0.6, SLIT),
      sign("backAboveWaist", "dragLines", 0.25),
      sign("backWaist", "ridesUp", 0.6, OFF),
      sign("backHem", "ridesUp", 0.45, OFF),
    ],
    changes: [fit("swayBack", -1)],
    isCentre: true,
    usual: 10,
  },
  roundBack: {
    shows: [
      sign("backWaist", "ridesUp", 0.55, OFF),
      sign("backHem", "ridesUp", 0.45, OFF),
      sign("blades", "tight", 0.45, SLIT),
      sign("blades", "dragLines", 0.4, SLIT),
      sign("backNeck", "gapes", 0.35),
      sign("backNeck", "drops", 0.25, OFF),
      sign("backArmhole", "dragLines", 0.25),
      sign("backArmhole", "gapes", 0.25),
      sign("frontNeck", "ridesUp", 0.15),
    ],
    changes: [fit("roundBack", 1)],
    isCentre: true,
    usual: 12,
  },
  erectBack: {
    shows: [
      sign("blades", "foldAcross", 0.8, FOLD),
      sign("backNeck", "ridesUp", 0.25, OFF),
      sign("backNeck", "foldAcross", 0.2, FOLD),
      sign("backWaist", "drops", 0.3, OFF),
      sign("backHem", "drops", 0.25, OFF),
    ],
    changes: [fit("roundBack", -1)],
    isCentre: true,
    usual: 10,
  },
  longAboveBust: {
    shows: [
      sign("frontHem", "drops", 0.25, OFF),
      sign("backHem", "drops", 0.25, OFF),
      mark("bust", "bustPoint", 0.6, "up"),
      mark("dartEnd", "dartEnds", 0.4, "up"),

      sign("chest", "foldAcross", 0.65, FOLD),
      sign("blades", "foldAcross", 0.5, FOLD),
      sign("underarm", "drops", 0.3, OFF),
      sign("frontWaist", "drops", 0.3, OFF),
      sign("backWaist", "drops", 0.3, OFF),
      sign("frontNeck", "gapes", 0.15),
      sign("bust", "drops", 0.4, OFF),
      sign("underBust", "drops", 0.3, OFF),
    ],
    changes: [fit("lengthAboveBust", -1)],
    isCentre: true,
    usual: 10,
  },
  shortAboveBust: {
    shows: [
      sign("frontHem", "ridesUp", 0.25, OFF),
      sign("backHem", "ridesUp", 0.25, OFF),
      mark("bust", "bustPoint", 0.6, "down"),
      mark("dartEnd", "dartEnds", 0.4, "down"),

      sign("bust", "ridesUp", 0.5, OFF),
      sign("underarm", "cutsIn", 0.45, OFF),
      sign("chest", "tight", 0.3, SLIT),
      sign("shoulder", "tight", 0.25, SLIT),
      sign("frontWaist", "ridesUp", 0.45, OFF),
      sign("backWaist", "ridesUp", 0.45, OFF),
      sign("underBust", "ridesUp", 0.35, OFF),
      sign("frontNeck", "cutsIn", 0.15),
    ],
    changes: [fit("lengthAboveBust", 1)],
    isCentre: true,
    usual: 10,
  },
  longBelowBust: {
    shows: [
      sign("frontHem", "drops", 0.4, OFF),
      sign("backHem", "drops", 0.4, OFF),

      sign("frontAboveWaist", "foldAcross", 0.75, FOLD),
      sign("backAboveWaist", "foldAcross", 0.7, FOLD),
      sign("sideSeam", "foldAcross", 0.4, FOLD),
      sign("frontWaist", "drops", 0.5, OFF),
      sign("backWaist", "drops", 0.5, OFF),
    ],
    changes: [fit("lengthBelowBust", -1, "bandDepth")],
    isCentre: true,
    usual: 12,
  },
  shortBelowBust: {
    shows: [
      sign("frontHem", "ridesUp", 0.4, OFF),
      sign("backHem", "ridesUp", 0.4, OFF),

      sign("frontWaist", "ridesUp", 0.7, OFF),
      sign("backWaist", "ridesUp", 0.7, OFF),
      sign("frontAboveWaist", "tight", 0.2, SLIT),
      sign("backAboveWaist", "tight", 0.15, SLIT),
    ],
    changes: [fit("lengthBelowBust", 1, "bandDepth")],
    isCentre: true,
    usual: 12,
  },
  waistDipsInFront: {
    shows: [
      sign("frontWaist", "drops", 0.8, OFF),
      sign("frontHem", "drops", 0.3, OFF),
      sign("frontAboveWaist", "foldAcross", 0.3, FOLD),
    ],
    changes: [fit("waistDropFront", -1)],
    isCentre: true,
    usual: 10,
  },
  waistRisesInFront: {
    shows: [
      sign("frontWaist", "ridesUp", 0.8, OFF),
      sign("frontHem", "ridesUp", 0.3, OFF),
      sign("frontAboveWaist", "tight", 0.15, SLIT),
    ],
    changes: [fit("waistDropFront", 1)],
    isCentre: true,
    usual: 10,
  },
  waistDipsBehind: {
    shows: [sign("backWaist", "drops", 0.8, OFF), sign("backHem", "drops", 0.25, OFF)],
    changes: [fit("waistDropBack", -1)],
    isCentre: true,
    usual: 10,
  },
  waistRisesBehind: {
    shows: [sign("backWaist", "ridesUp", 0.8, OFF), sign("backHem", "ridesUp", 0.25, OFF)],
    changes: [fit("waistDropBack", 1)],
    isCentre: true,
    usual: 10,
  },
  longBelowWaist: {
    shows: [
      sign("frontHem", "drops", 0.7, OFF),
      sign("backHem", "drops", 0.7, OFF),
      sign("frontHip", "foldAcross", 0.3, FOLD),
      sign("backHip", "foldAcross", 0.3, FOLD),
    ],
    changes: [fit("lengthBasque", -1)],
    isCentre: true,
    usual: 15,
  },
  shortBelowWaist: {
    shows: [sign("frontHem", "ridesUp", 0.7, OFF), sign("backHem", "ridesUp", 0.7, OFF)],
    changes: [fit("lengthBasque", 1)],
    isCentre: true,
    usual: 15,
  },
  fullBust: {
    shows: [
      mark("bust", "bustPoint", 0.3),
      mark("dartEnd", "dartEnds", 0.25),
      sign("chest", "tight", 0.3, SLIT),
      sign("frontArmhole", "cutsIn", 0.2),

      sign("bust", "tight", 0.7, SLIT),
      sign("bust", "dragLines", 0.5, SLIT),
      sign("bust", "flat", 0.4, SLIT),
      sign("frontWaist", "ridesUp", 0.4),
      sign("frontHem", "ridesUp", 0.25),
      sign("frontArmhole", "gapes", 0.3),
      sign("frontArmhole", "dragLines", 0.2),
      sign("underBust", "ridesUp", 0.3),
      sign("betweenBusts", "gapes", 0.15),
      sign("betweenBusts", "tight", 0.15),
      sign("closureBust", "doesNotMeet", 0.3, GAP),
      sign("dartEnd", "flat", 0.2),
    ],
    changes: [{ of: "bust", by: 1 }],
    usual: 10,
  },
  smallBust: {
    shows: [
      sign("closureBust", "overlaps", 0.35, GAP),
      sign("frontWaist", "drops", 0.3),
      sign("frontHem", "drops", 0.25),
      sign("frontAboveWaist", "foldAcross", 0.2),

      mark("bust", "bustPoint", 0.25),
      mark("dartEnd", "dartEnds", 0.2),

      sign("bust", "foldAlong", 0.75, FOLD),
      sign("bust", "foldAcross", 0.25, FOLD),
      sign("bust", "pointed", 0.2),
      sign("dartEnd", "pointed", 0.25),
      sign("chest", "foldAlong", 0.12),
    ],
    changes: [{ of: "bust", by: -1 }],
    usual: 10,
  },
  // The seam under the bust lies above the crease: cup and back above it are lengthened and the band made shallower, the bust point
  // stays. Where all hangs by straps, they are lengthened, and the upper edge comes down with the seam.
  underBustTooHigh: {
    shows: [sign("underBust", "ridesUp", 0.8, OFF)],
    changes: [fit("lengthAboveBust", 1, "strapLength"), fit("bustPointLevel", -1), fit("bandDepth", -1)],
    isCentre: true,
    usual: 10,
  },
  underBustTooLow: {
    shows: [sign("underBust", "drops", 0.8, OFF)],
    changes: [fit("lengthAboveBust", -1, "strapLength"), fit("bustPointLevel", 1), fit("bandDepth", 1)],
    isCentre: true,
    usual: 10,
  },
  bustPointElsewhere: {
    shows: [
      mark("dartEnd", "dartEnds", 0.6),
      mark("bust", "bustPoint", 0.8),
      sign("dartEnd", "pointed", 0.2),
      sign("dartEnd", "foldAcross", 0.1),
    ],
    changes: [{ of: "bustPoint" }],
    usual: 0,
  },
  dartEndElsewhere: {
    shows: [mark("dartEnd", "dartEnds", 0.8), sign("dartEnd", "pointed", 0.3)],
    changes: [{ of: "dartEnd" }],
    usual: 0,
  },
  dartTooFull: {
    shows: [
      sign("dartEnd", "pointed", 0.75, FOLD),
      sign("bust", "pointed", 0.35, FOLD),
      sign("dartEnd", "foldAlong", 0.15, FOLD),
    ],
    changes: [{ of: "dartMouth", by: -1 }],
    usual: 8,
  },
  dartTooFlat: {
    shows: [sign("dartEnd", "flat", 0.75, SLIT), sign("bust", "flat", 0.3, SLIT), sign("dartEnd", "dragLines", 0.15)],
    changes: [{ of: "dartMouth", by: 1 }],
    usual: 8,
  },
  slackBetweenBusts: {
    shows: [sign("betweenBusts", "foldAlong", 0.8, AT_SEAM), sign("betweenBusts", "gapes", 0.3, AT_SEAM)],
    changes: [{ of: "offCentre" }],
    isCentre: true,
    usual: 6,
  },
  narrowChest: {
    shows: [
      sign("chest", "foldAlong", 0.75, FOLD),
      sign("frontArmhole", "foldAlong", 0.4, FOLD),
      sign("shoulder", "endsOutside", 0.15),
    ],
    changes: [fit("chestWidth", -1)],
    usual: 8,
  },
  broadChest: {
    shows: [
      sign("chest", "tight", 0.7, SLIT),
      sign("chest", "dragLines", 0.35, SLIT),
      sign("frontArmhole", "cutsIn", 0.25),
      sign("frontArmhole", "tight", 0.35, SLIT),
    ],
    changes: [fit("chestWidth", 1)],
    usual: 8,
  },
  narrowBack: {
    shows: [
      sign("blades", "foldAlong", 0.75, FOLD),
      sign("backArmhole", "foldAlong", 0.4, FOLD),
      sign("shoulder", "endsOutside", 0.15),
    ],
    changes: [fit("backWidth", -1)],
    usual: 8,
  },
  broadBack: {
    shows: [
      sign("blades", "tight", 0.65, SLIT),
      sign("blades", "dragLines", 0.35, SLIT),
      sign("backArmhole", "tight", 0.35, SLIT),
      sign("backArmhole", "dragLines", 0.25, SLIT),
      sign("backArmhole", "cutsIn", 0.2),
    ],
    changes: [fit("backWidth", 1)],
    usual: 8,
  },
  looseBust: {
    shows: [
      sign("underarm", "foldAlong", 0.7, SIDE_FOLD),
      sign("closureBust", "overlaps", 0.35, GAP),
      sign("sideSeam", "foldAlong", 0.2, SIDE_FOLD),
      sign("bust", "foldAlong", 0.15),
    ],
    changes: [fit("sideSeamBust", -1)],
    usual: 8,
  },
  tightBust: {
    shows: [
      sign("underarm", "tight", 0.55, SLIT),
      sign("underarm", "dragLines", 0.3, SLIT),
      sign("closureBust", "doesNotMeet", 0.45, GAP),
      sign("bust", "tight", 0.35, SLIT),
      sign("blades", "tight", 0.2),
    ],
    changes: [fit("sideSeamBust", 1)],
    usual: 8,
  },
  looseWaist: {
    shows: [
      sign("sideSeam", "foldAlong", 0.75, SIDE_FOLD),
      sign("frontWaist", "foldAlong", 0.25, FOLD),
      sign("backWaist", "foldAlong", 0.25, FOLD),
      sign("closureWaist", "overlaps", 0.25, GAP),
      sign("frontAboveWaist", "foldAlong", 0.12, FOLD),
      sign("backAboveWaist", "foldAlong", 0.15, FOLD),
    ],
    changes: [fit("sideSeamWaist", -1)],
    usual: 10,
  },
  tightWaist: {
    shows: [
      sign("frontWaist", "tight", 0.45, SLIT),
      sign("backWaist", "tight", 0.35, SLIT),
      sign("sideSeam", "tight", 0.45, SLIT),
      sign("sideSeam", "dragLines", 0.2, SLIT),
      sign("frontWaist", "dragLines", 0.25, SLIT),
      sign("closureWaist", "doesNotMeet", 0.5, GAP),
      sign("frontWaist", "ridesUp", 0.15),
      sign("backWaist", "ridesUp", 0.15),
      sign("frontAboveWaist", "tight", 0.15, SLIT),
    ],
    changes: [fit("sideSeamWaist", 1)],
    usual: 10,
  },
  looseHip: {
    shows: [
      sign("sideHip", "foldAlong", 0.75, SIDE_FOLD),
      sign("frontHip", "foldAlong", 0.25, FOLD),
      sign("backHip", "foldAlong", 0.25, FOLD),
      sign("closureHip", "overlaps", 0.3, GAP),
    ],
    changes: [fit("sideSeamHip", -1)],
    usual: 10,
  },
  tightHip: {
    shows: [
      sign("sideHip", "tight", 0.5, SLIT),
      sign("frontHip", "tight", 0.4, SLIT),
      sign("backHip", "tight", 0.4, SLIT),
      sign("frontHip", "dragLines", 0.3, SLIT),
      sign("backHip", "dragLines", 0.3, SLIT),
      sign("sideHip", "dragLines", 0.25, SLIT),
      sign("closureHip", "doesNotMeet", 0.5, GAP),
      sign("frontHem", "ridesUp", 0.25),
      sign("backHem", "ridesUp", 0.25),
      sign("frontHip", "foldAcross", 0.25),
      sign("backHip", "foldAcross", 0.25),
      sign("backWaist", "foldAcross", 0.15),
    ],
    changes: [fit("sideSeamHip", 1)],
    usual: 10,
  },
  narrowShoulder: {
    shows: [sign("shoulder", "endsOutside", 0.85, OFF), sign("shoulder", "drops", 0.15)],
    changes: [fit("shoulderWidth", -1)],
    usual: 8,
  },
  broadShoulder: {
    shows: [sign("shoulder", "endsInside", 0.85, OFF), sign("frontArmhole", "cutsIn", 0.15)],
    changes: [fit("shoulderWidth", 1)],
    usual: 8,
  },
  highArmhole: {
    shows: [
      sign("underarm", "cutsIn", 0.8, { off: 1, letOut: 1 }),
      sign("underarm", "tight", 0.35, { off: 1, letOut: 1 }),
      sign("frontArmhole", "cutsIn", 0.25),
      sign("backArmhole", "cutsIn", 0.15),
    ],
    changes: [fit("armholeDepth", 1)],
    usual: 8,
  },
  lowArmhole: {
    shows: [sign("underarm", "drops", 0.8, OFF), sign("underarm", "gapes", 0.4, FOLD)],
    changes: [fit("armholeDepth", -1)],
    usual: 8,
  },
  neckGapes: {
    shows: [
      sign("frontNeck", "gapes", 0.85, FOLD),
      sign("chest", "flat", 0.15),
      sign("frontNeck", "foldAlong", 0.25, FOLD),
    ],
    changes: [fit("necklineGape", 1, "edgeGape")],
    usual: 8,
  },
  armholeGapes: {
    shows: [
      sign("frontArmhole", "gapes", 0.85, FOLD),
      sign("dartEnd", "flat", 0.15),
      sign("frontArmhole", "foldAcross", 0.2, FOLD),
    ],
    changes: [fit("armholeGape", 1)],
    usual: 8,
  },
  backNeckGapes: {
    shows: [sign("backNeck", "gapes", 0.85, FOLD), sign("backNeck", "foldAlong", 0.25, FOLD)],
    changes: [fit("backNeckGape", 1)],
    usual: 8,
  },
  strapTooFarOut: {
    shows: [sign("strap", "slips", 0.75, OFF), sign("strap", "endsOutside", 0.6, OFF)],
    changes: [fit("strapPlace", 1)],
    usual: 10,
  },
  strapTooFarIn: {
    shows: [sign("strap", "endsInside", 0.8, OFF)],
    changes: [fit("strapPlace", -1)],
    usual: 10,
  },
  strapTooLong: {
    shows: [
      sign("underBust", "drops", 0.5, OFF),
      sign("frontWaist", "drops", 0.35, OFF),
      sign("backWaist", "drops", 0.35, OFF),
      sign("frontHem", "drops", 0.25, OFF),
      sign("backHem", "drops", 0.25, OFF),
      mark("bust", "bustPoint", 0.5, "up"),
      mark("dartEnd", "dartEnds", 0.3, "up"),

      sign("strap", "gapes", 0.7, FOLD),
      sign("strap", "foldAcross", 0.5, FOLD),
      sign("strap", "slips", 0.25),
      sign("bust", "drops", 0.15),
    ],
    changes: [fit("strapLength", -1)],
    usual: 10,
  },
  strapTooShort: {
    shows: [
      sign("underBust", "ridesUp", 0.5, OFF),
      sign("frontWaist", "ridesUp", 0.35, OFF),
      sign("backWaist", "ridesUp", 0.35, OFF),
      sign("frontHem", "ridesUp", 0.25, OFF),
      sign("backHem", "ridesUp", 0.25, OFF),
      mark("bust", "bustPoint", 0.5, "down"),
      mark("dartEnd", "dartEnds", 0.3, "down"),
      sign("strap", "cutsIn", 0.7, SLIT),
      sign("strap", "tight", 0.6, SLIT),
      sign("bust", "ridesUp", 0.15),
    ],
    changes: [fit("strapLength", 1)],
    usual: 10,
  },
  // By hand (common practice, no source). An edge that grew stands off all round, where a gaping one stands off at one place.
  neckStretched: byHand([
    sign("frontNeck", "gapes", 0.7),
    sign("neckPoint", "gapes", 0.6),
    sign("backNeck", "gapes", 0.6),
    sign("strap", "gapes", 0.15),
  ]),
  // Short folds across the seam and lines out of it, and nothing amiss beside.
  seamPuckered: byHand([sign("sideSeam", "foldAcross", 0.6), sign("sideSeam", "dragLines", 0.6)]),
  // Cloth cut askew twists: the seam swings, and slanting lines lie on one half.
  clothOffGrain: byHand(
    [
      sign("sideSeam", "leansForward", 0.4),
      sign("sideSeam", "leansBack", 0.4),
      sign("frontAboveWaist", "dragLines", 0.3),
      sign("backAboveWaist", "dragLines", 0.3),
      sign("frontHem", "drops", 0.25),
    ],
    "oneHalf",
  ),
  sideSeamsForward: byHand([
    sign("sideSeam", "leansForward", 0.8),
    sign("underarm", "leansForward", 0.5),
    sign("sideHip", "leansForward", 0.5),
  ]),
  sideSeamsBack: byHand([
    sign("sideSeam", "leansBack", 0.8),
    sign("underarm", "leansBack", 0.5),
    sign("sideHip", "leansBack", 0.5),
  ]),
  // The higher hip carries the hem of its side up, and lines rise to it.
  unevenHips: byHand(
    [
      sign("frontHem", "ridesUp", 0.65),
      sign("backHem", "ridesUp", 0.65),
      sign("sideHip", "dragLines", 0.5),
      sign("sideHip", "tight", 0.3),
    ],
    "oneHalf",
  ),
  prominentBlade: byHand(
    [
      sign("blades", "pointed", 0.7),
      sign("backArmhole", "dragLines", 0.5),
      sign("backArmhole", "gapes", 0.3),
      sign("blades", "dragLines", 0.3),
    ],
    "oneHalf",
  ),
  // Tight over the abdomen alone: the hem rises in front and the side seams are drawn forward, where a tight hip is tight all round.
  roundAbdomen: byHand([
    sign("frontHip", "tight", 0.7),
    sign("frontHem", "ridesUp", 0.6),
    sign("sideHip", "leansForward", 0.5),
    sign("frontHip", "dragLines", 0.35),
    sign("sideSeam", "leansForward", 0.2),
  ]),
  // The seat does not fill the back: it hangs in folds, and the hem drops behind.
  flatSeat: byHand([
    sign("backHip", "foldAlong", 0.5),
    sign("backHip", "foldAcross", 0.5),
    sign("backHem", "drops", 0.55),
    sign("sideHip", "leansBack", 0.25),
  ]),
  // Ribs that stand out below the bust: tight there in front alone, the waist itself easy.
  flaringRibs: byHand([
    sign("frontAboveWaist", "tight", 0.75),
    sign("frontAboveWaist", "dragLines", 0.6),
    sign("underBust", "tight", 0.2),
  ]),
  // Arms carried forward crowd the armhole in front and leave it standing off behind.
  armsForward: byHand([
    sign("frontArmhole", "cutsIn", 0.7),
    sign("backArmhole", "gapes", 0.6),
    sign("frontArmhole", "tight", 0.25),
    sign("backArmhole", "dragLines", 0.2),
    sign("blades", "dragLines", 0.2),
  ]),
  curvedSpine: byHand(
    [
      sign("backAboveWaist", "dragLines", 0.6),
      sign("backWaist", "ridesUp", 0.5),
      sign("backHip", "foldAcross", 0.5),
      sign("backAboveWaist", "foldAcross", 0.2),
    ],
    "oneHalf",
  ),
};

/** All rows, in the trade's order. */
export const RULES: readonly Rule[] = RULE_NAMES.map((name) => ({ name, ...ROWS[name] }));

export const ruleOf = (name: RuleName): Rule => ({ name, ...ROWS[name] });

export const isRuleName = (name: string): name is RuleName => Object.hasOwn(ROWS, name);
