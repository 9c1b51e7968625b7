import { OWN_CORNERS, type OwnCorner } from "../../core/decisions/ownPattern";
import type { PointName } from "../../core/pattern/piece";

/** Of a point that can be put right by hand; none for the ends of darts and the like. */
export const ownCorner = (name: PointName): OwnCorner | undefined => OWN_CORNERS.find((corner) => corner === name);
