/** All fit alterations, in the order they are offered: whole lengths before wedges. To add one: a file beside this, and a line here. */
import { necklineGape } from "./necklineGape";
import { edgeGape } from "./edgeGape";
import { armholeGape } from "./armholeGape";
import { backNeckGape } from "./backNeckGape";
import { shoulderSlope } from "./shoulderSlope";
import { forwardShoulder } from "./forwardShoulder";
import { shoulderWidth } from "./shoulderWidth";
import { armholeDepth } from "./armholeDepth";
import { sideSeamBust } from "./sideSeamBust";
import { sideSeamWaist } from "./sideSeamWaist";
import { sideSeamHip } from "./sideSeamHip";
import { lengthAboveBust } from "./lengthAboveBust";
import { lengthBasque } from "./lengthBasque";
import { bandDepth } from "./bandDepth";
import { swayBack } from "./swayBack";
import { roundBack } from "./roundBack";
import { waistDropFront } from "./waistDropFront";
import { waistDropBack } from "./waistDropBack";
import { bustPointLevel } from "./bustPointLevel";
import { chestWidth } from "./chestWidth";
import { backWidth } from "./backWidth";
import { strapLength } from "./strapLength";
import { strapWidth } from "./strapWidth";
import { strapPlace } from "./strapPlace";
import type { FitDefinition } from "./definition";
import { lengthBelowBust } from "./lengthBelowBust";

export const FITS = {
  lengthAboveBust,
  lengthBelowBust,
  lengthBasque,
  bandDepth,
  roundBack,
  swayBack,
  waistDropFront,
  waistDropBack,
  bustPointLevel,
  chestWidth,
  backWidth,
  strapLength,
  strapWidth,
  strapPlace,
  necklineGape,
  edgeGape,
  armholeGape,
  backNeckGape,
  shoulderSlope,
  forwardShoulder,
  shoulderWidth,
  armholeDepth,
  sideSeamBust,
  sideSeamWaist,
  sideSeamHip,
} as const satisfies Readonly<Record<string, FitDefinition>>;

export type FitName = keyof typeof FITS;

/** The names. The record is only ever built here, so its keys are the names. */
export const FIT_NAMES = Object.keys(FITS) as readonly FitName[] as readonly [FitName, ...FitName[]];

export const fitOf = (name: FitName): FitDefinition => FITS[name];
