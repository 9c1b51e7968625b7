/** The corners that the centre line makes with neck, waist and hem: square on a sewn garment. */
import type { PointName } from "./piece";

export const CENTRE_CORNERS: readonly PointName[] = ["centreNeck", "centreWaist", "centreHem"];
