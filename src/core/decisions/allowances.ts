/** Seam and hem allowances: how far outside the stitch line the cloth is cut. */
import type { SeamName } from "../pattern/piece";
import type { Mm } from "../units";

/** The wearer's own, by seam; one that is absent is the usual. All pieces alike, so that what is sewn together matches. */
export type Allowances = Readonly<Partial<Record<SeamName, Mm>>>;
