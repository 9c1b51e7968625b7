/** What is said of every fit alteration, by its name in the core. To add one: a file beside this, and a line here. */
import type { FitName } from "../../core/decisions/fitNames";
import { armholeDepth } from "./armholeDepth";
import { armholeGape } from "./armholeGape";
import { backNeckGape } from "./backNeckGape";
import { backWidth } from "./backWidth";
import { bandDepth } from "./bandDepth";
import { bustPointLevel } from "./bustPointLevel";
import { chestWidth } from "./chestWidth";
import { edgeGape } from "./edgeGape";
import { forwardShoulder } from "./forwardShoulder";
import { lengthAboveBust } from "./lengthAboveBust";
import { lengthBasque } from "./lengthBasque";
import { lengthBelowBust } from "./lengthBelowBust";
import { necklineGape } from "./necklineGape";
import { roundBack } from "./roundBack";
import { shoulderSlope } from "./shoulderSlope";
import { shoulderWidth } from "./shoulderWidth";
import { sideSeamBust } from "./sideSeamBust";
import { sideSeamHip } from "./sideSeamHip";
import { sideSeamUnderBust } from "./sideSeamUnderBust";
import { sideSeamWaist } from "./sideSeamWaist";
import { strapLength } from "./strapLength";
import { strapPlace } from "./strapPlace";
import { strapWidth } from "./strapWidth";
import { swayBack } from "./swayBack";
import { waistDropBack } from "./waistDropBack";
import { waistDropFront } from "./waistDropFront";
import type { FitWords } from "./fitWords";

export const FIT_WORDS: Readonly<Record<FitName, FitWords>> = {
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
};
