/** The order of sewing: steps, and which has to come before which. */
import type { Mm } from "../units";

/** What each step is; its words are in src/words/sewing.ts. In an order that is valid for a dress that has them all. */
export const SEWING_STEPS = [
  "washCloth",
  "cutOut",
  "markDarts",
  "tackUnderlining",
  "fuseInterfacing",
  "stayStitch",
  "sewDarts",
  "princessSeams",
  "cupSeams",
  "bandToCups",
  "centreFrontSeam",
  "makeStraps",
  "bodiceSides",
  "shoulderSeams",
  "liningDarts",
  "liningSeams",
  "basteStraps",
  "faceNeck",
  "faceArmholes",
  "bindNeck",
  "bindArmholes",
  "liningTopEdge",
  "underStitch",
  "fitBeforeWaist",
  "skirtDarts",
  "pockets",
  "panelSeams",
  "skirtSides",
  "vent",
  "joinTierPanels",
  "gatherTiers",
  "tierToTier",
  "gatherSkirt",
  "skirtToBodice",
  "zipMarks",
  "seamBelowZip",
  "putInZip",
  "liningSkirtSeams",
  "liningSkirtToWaist",
  "slipStitchLining",
  "buttonholes",
  "buttons",
  "elasticInStraps",
  "hang",
  "hemShell",
  "hemLining",
  "press",
] as const;
export type SewingStepName = (typeof SEWING_STEPS)[number];

export type SewingCaution = "pins" | "iron" | "blade" | "zip" | "needle";

export interface SewingStep {
  readonly name: SewingStepName;
  /** Of steps done several times: which tier, which edge. */
  readonly at?: number;
  /** Of its seam, sewn, and its allowance, where there is one. */
  readonly length: Mm | null;
  readonly allowance: Mm | null;
  readonly press: boolean;
  readonly cautions: readonly SewingCaution[];
  /** Indexes of steps in the list that have to be done before. */
  readonly after: readonly number[];
}

export interface Notion {
  readonly what: "zip" | "interfacing" | "elastic" | "buttons" | "thread" | "bias" | "washAwayTape" | "hookAndEye";
  readonly count: number;
  readonly length: Mm | null;
  readonly width: Mm | null;
}
