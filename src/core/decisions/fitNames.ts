/** The fit alterations, in the order they are offered: whole lengths before wedges. */
export const FIT_NAMES = [
  "lengthAboveBust",
  "lengthBelowBust",
  "lengthBasque",
  "bandDepth",
  "roundBack",
  "swayBack",
  "waistDropFront",
  "waistDropBack",
  "bustPointLevel",
  "chestWidth",
  "backWidth",
  "strapLength",
  "strapWidth",
  "strapPlace",
  "necklineGape",
  "edgeGape",
  "armholeGape",
  "backNeckGape",
  "shoulderSlope",
  "forwardShoulder",
  "shoulderWidth",
  "armholeDepth",
  "sideSeamBust",
  "sideSeamUnderBust",
  "sideSeamWaist",
  "sideSeamHip",
] as const;

export type FitName = (typeof FIT_NAMES)[number];

/** Fits whose amount is all round the body, or right across: on one half alone it is what that half gets, half of it otherwise. */
export const WHOLE_FITS: ReadonlySet<FitName> = new Set([
  "chestWidth",
  "backWidth",
  "backNeckGape",
  "sideSeamBust",
  "sideSeamUnderBust",
  "sideSeamWaist",
  "sideSeamHip",
]);
