/** The trade's order of alterations: length first, since all else is measured on it; edges last, since they only finish. */
import { isSameDart } from "../pattern/piece";
import { isRedraw, type Alteration, type DartRedraw } from "./alteration";
import { FIT_NAMES, type FitName } from "./fitNames";

/** The phases in their order. */
export const PHASE_ORDER = ["widthsTraced", "length", "bust", "darts", "widths", "edges"] as const;
export type Phase = (typeof PHASE_ORDER)[number];

const FIT_PHASES: Readonly<Record<FitName, Phase>> = {
  lengthAboveBust: "length",
  lengthBelowBust: "length",
  lengthBasque: "length",
  bandDepth: "length",
  roundBack: "length",
  swayBack: "length",
  waistDropFront: "length",
  waistDropBack: "length",
  bustPointLevel: "bust",
  chestWidth: "widths",
  backWidth: "widths",
  strapLength: "edges",
  strapWidth: "edges",
  strapPlace: "edges",
  necklineGape: "edges",
  edgeGape: "edges",
  armholeGape: "edges",
  backNeckGape: "edges",
  shoulderSlope: "edges",
  forwardShoulder: "edges",
  shoulderWidth: "edges",
  armholeDepth: "edges",
  sideSeamBust: "widths",
  sideSeamUnderBust: "widths",
  sideSeamWaist: "widths",
  sideSeamHip: "widths",
};

export const phaseOfFit = (fit: FitName): Phase => FIT_PHASES[fit];

export const phaseOf = (alteration: Alteration): Phase =>
  alteration.kind === "fit" ? phaseOfFit(alteration.fit) : "darts";

/**
 * Where an alteration stands in the trade's order, finer than its phase: among fits of one phase as they are offered, whole
 * lengths before wedges.
 */
export const placeInOrder = (alteration: Alteration): number =>
  rankOf(phaseOf(alteration)) * FIT_NAMES.length + (alteration.kind === "fit" ? FIT_NAMES.indexOf(alteration.fit) : 0);

export const rankOf = (phase: Phase): number => PHASE_ORDER.indexOf(phase);

/** The trade's order on one dart: where it sits, how wide it is, where it ends. */
const REDRAW_ORDER: Readonly<Record<DartRedraw["kind"], number>> = { dartPlace: 0, dartMouth: 1, dartEnd: 2 };

/** Whether one comes before another in the trade's order, where the order between them matters. */
export function isBefore(a: Alteration, b: Alteration): boolean {
  if (placeInOrder(a) < placeInOrder(b)) return true;
  return isRedraw(a) && isRedraw(b) && isSameDart(a.dart, b.dart) && REDRAW_ORDER[a.kind] < REDRAW_ORDER[b.kind];
}
