/** The bust radius at which fullness is stated. */
import type { Work } from "../decisions/work";
import { FULLNESS_RADIUS } from "../tolerance";
import type { Mm } from "../units";

/** The wearer's own where she gave one, else the usual; mm. A file can hold a radius that is none. */
export const bustRadiusOf = ({ bustRadius = 0 }: Pick<Work, "bustRadius">): Mm =>
  bustRadius > 0 ? bustRadius : FULLNESS_RADIUS;
