/**
 * The names of all fit alterations, in the order they are offered, whole lengths before wedges, and the phase of the trade's
 * order that each belongs to. It is all that a document and its commands need to know of them, so it stands apart from the
 * mathematics: a page that only takes measures loads none.
 */
import type { SlipPhase } from "../../plan/plan";

export const FIT_PHASES = {
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
  sideSeamWaist: "widths",
  sideSeamHip: "widths",
} as const satisfies Readonly<Record<string, SlipPhase>>;

export type FitName = keyof typeof FIT_PHASES;

/** The names. The record is only ever built here, so its keys are the names. */
export const FIT_NAMES = Object.keys(FIT_PHASES) as readonly FitName[] as readonly [FitName, ...FitName[]];
