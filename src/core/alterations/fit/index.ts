/** All fit alterations by name. To add one: a file beside this, and a line here. */
import { necklineGape } from "./necklineGape";
import { edgeGape } from "./edgeGape";
import { armholeGape } from "./armholeGape";
import { backNeckGape } from "./backNeckGape";
import { shoulderSlope } from "./shoulderSlope";
import { forwardShoulder } from "./forwardShoulder";
import { shoulderWidth } from "./shoulderWidth";
import { armholeDepth } from "./armholeDepth";
import { sideSeamBust } from "./sideSeamBust";
import { sideSeamUnderBust } from "./sideSeamUnderBust";
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
import type { FitName } from "../../decisions/fitNames";
import type { FitDefinition } from "../outcome/definition";
import { lengthBelowBust } from "./lengthBelowBust";

const FITS = {
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
  sideSeamUnderBust,
  sideSeamWaist,
  sideSeamHip,
} as const satisfies Readonly<Record<FitName, FitDefinition>>;

export const fitOf = (name: FitName): FitDefinition => FITS[name];
