/** What can be seen at each place of a toile, and how its amount is told. */
import type { TrialPlace, TrialSign, TrialWay } from "../decisions/trial";

const FOLDS = ["foldAcross", "foldAlong", "dragLines", "tight"] as const;
const ARMHOLE = ["gapes", "cutsIn", "tight", "foldAcross", "foldAlong", "dragLines"] as const;
const NECK = ["gapes", "cutsIn", "tight", "ridesUp", "drops", "foldAcross", "foldAlong", "dragLines"] as const;
const WAIST = ["ridesUp", "drops", "tight", "foldAcross", "foldAlong", "dragLines"] as const;
const HEM = ["ridesUp", "drops", "gapes", "tight"] as const;
const CLOSURE = ["doesNotMeet", "overlaps", "dragLines", "gapes", "ridesUp", "drops"] as const;
const SIDE = ["leansForward", "leansBack", ...FOLDS] as const;

/** Only what makes sense there, in the order it is looked for. */
export const SIGNS_AT: Readonly<Record<TrialPlace, readonly TrialSign[]>> = {
  neckPoint: ["dragLines", "foldAcross", "foldAlong", "gapes", "tight", "cutsIn", "leansForward", "leansBack"],
  frontNeck: NECK,
  shoulder: [
    "endsOutside",
    "endsInside",
    "leansForward",
    "leansBack",
    "dragLines",
    "tight",
    "foldAcross",
    "foldAlong",
    "ridesUp",
    "drops",
  ],
  strap: ["slips", "cutsIn", "gapes", "tight", "endsOutside", "endsInside", "foldAcross"],
  frontArmhole: ARMHOLE,
  chest: [...FOLDS, "flat"],
  bust: ["flat", "tight", "foldAlong", "foldAcross", "dragLines", "pointed", "ridesUp", "drops", "bustPoint"],
  dartEnd: ["pointed", "flat", "dartEnds", "foldAcross", "foldAlong", "dragLines"],
  betweenBusts: ["foldAlong", "foldAcross", "gapes", "tight", "dragLines"],
  underBust: ["ridesUp", "drops", "tight", "foldAcross", "foldAlong", "gapes", "dragLines"],
  frontAboveWaist: FOLDS,
  frontWaist: WAIST,
  frontHip: FOLDS,
  frontHem: HEM,
  underarm: ["cutsIn", "drops", "ridesUp", "gapes", "leansForward", "leansBack", ...FOLDS],
  sideSeam: SIDE,
  sideHip: SIDE,
  backNeck: NECK,
  backArmhole: ARMHOLE,
  blades: [...FOLDS, "pointed"],
  backAboveWaist: FOLDS,
  backWaist: WAIST,
  backHip: FOLDS,
  backHem: HEM,
  closureBust: CLOSURE,
  closureWaist: CLOSURE,
  closureHip: CLOSURE,
};

/** Ways in which the amount of a sign can be told, the usual one first; of marks how far out and down, so none. */
const WAYS_OF: Readonly<Record<TrialSign, readonly TrialWay[]>> = {
  foldAcross: ["pinched"],
  foldAlong: ["pinched"],
  dragLines: ["letOut", "pinched"],
  gapes: ["pinched"],
  tight: ["letOut"],
  pointed: ["pinched"],
  flat: ["letOut"],
  leansForward: ["off"],
  leansBack: ["off"],
  ridesUp: ["off"],
  drops: ["off"],
  endsOutside: ["off"],
  endsInside: ["off"],
  ["slips"]: ["off"],
  cutsIn: ["off", "letOut"],
  dartEnds: [],
  bustPoint: [],
  doesNotMeet: ["off"],
  overlaps: ["off"],
};

/** Where drag lines hang from something too long: they go when it is pinned up. */
const PINNED_UP: readonly TrialPlace[] = ["neckPoint", "frontArmhole"];

/** The ways of a sign at a place, the usual one first. */
export function waysAt(sign: TrialSign, place: TrialPlace | undefined): readonly TrialWay[] {
  if (sign === "cutsIn" && place === "strap") return ["letOut"];
  if (sign === "dragLines" && place !== undefined && PINNED_UP.includes(place)) return ["pinched", "letOut"];
  return WAYS_OF[sign];
}

/** Whether a sign is a mark made on the toile: told by how far it lies from what was sewn or drawn. */
export const isMark = (sign: TrialSign | undefined): boolean => sign === "dartEnds" || sign === "bustPoint";
