/** Places and signs of a trial's record in words: short enough to be ringed on paper. */
import type { TrialPlace, TrialSign } from "../core/decisions/trial";

const PLACES: Readonly<Record<TrialPlace, string>> = {
  neckPoint: "neck point",
  frontNeck: "front neck or top edge",
  shoulder: "shoulder seam",
  strap: "strap",
  frontArmhole: "front armhole",
  chest: "upper chest",
  bust: "bust",
  dartEnd: "dart’s end",
  betweenBusts: "between the busts",
  underBust: "under the bust",
  frontAboveWaist: "front above the waist",
  frontWaist: "front waist",
  frontHip: "front hip",
  frontHem: "front hem",
  underarm: "underarm",
  sideSeam: "side seam",
  sideHip: "side at the hip",
  backNeck: "back neck or top edge",
  backArmhole: "back armhole",
  blades: "shoulder blades",
  backAboveWaist: "back above the waist",
  backWaist: "back waist",
  backHip: "back hip",
  backHem: "back hem",
  closureBust: "closure at the bust",
  closureWaist: "closure at the waist",
  closureHip: "closure at the hip",
};

const SIGNS: Readonly<Record<TrialSign, string>> = {
  foldAcross: "fold across",
  foldAlong: "fold along",
  dragLines: "drag lines",
  gapes: "gapes",
  tight: "tight",
  pointed: "stands off in a point",
  flat: "too flat",
  leansForward: "leans forward",
  leansBack: "leans back",
  ridesUp: "rides up",
  drops: "drops",
  endsOutside: "too far out",
  endsInside: "too far in",
  ["slips"]: "slips",
  cutsIn: "cuts in",
  dartEnds: "dart ends here",
  bustPoint: "bust point here",
  doesNotMeet: "does not meet",
  overlaps: "overlaps",
};

export const placeWords = (place: TrialPlace): string => PLACES[place];
export const signWords = (sign: TrialSign): string => SIGNS[sign];
