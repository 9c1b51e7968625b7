/** Follows the sheet of a plan on the pieces of a house that is not ours. */
import type { LengthUnit } from "../../src/core/decisions/work";
import type { ForeignFront } from "../support/foreign/foreignTypes";
import { planOfForeign, type ForeignWork } from "../support/foreign/foreignWork";
import { arrivalOf, type Arrival } from "./arrival";

export const FOREIGN_FRONTS: readonly ForeignFront[] = [
  "side",
  "french",
  "waist",
  "none",
  "princessArmhole",
  "princessShoulder",
];

export const arrivalOnForeign = ({ foreign, work }: ForeignWork, unit: LengthUnit): Arrival | null =>
  arrivalOf({ ...work, unit }, undefined, (one) => planOfForeign({ foreign, work: one }));
