/** The order of sewing: steps, what is sewn in each, and which has to come before which. */
import type { Half } from "../decisions/alteration";
import type { StrapKind } from "../decisions/dress";
import type { DartName, PieceName, SeamName } from "../pattern/piece";
import type { ClosureReading } from "../opening/gettingIn";
import type { Mm } from "../units";

/** What each step is; its words are in src/words/sewing.ts. In the order that reads well wherever nothing else is asked. */
export const SEWING_STEPS = [
  "washCloth",
  "cutOut",
  "markDarts",
  "fuseInterfacing",
  "tackUnderlining",
  "stayStitch",
  "sewDarts",
  "drawUpGathers",
  "princessSeams",
  "bandToCups",
  "centreFrontSeam",
  "centreBackSeam",
  "shoulderSeams",
  "otherPieces",
  "makeStraps",
  "elasticInStraps",
  "basteStraps",
  "fitBeforeTopEdge",
  "bodiceSides",
  "liningDarts",
  "liningSeams",
  "liningShoulders",
  "liningSides",
  "facingSeams",
  "liningTopEdge",
  "faceTopEdge",
  "faceNeck",
  "faceArmholes",
  "bindNeck",
  "bindArmholes",
  "underStitch",
  "basqueSeams",
  "liningBasque",
  "skirtDarts",
  "pockets",
  "panelSeams",
  "skirtCentreSeams",
  "skirtSides",
  "stayWaist",
  "joinSectors",
  "joinTierPanels",
  "gatherTiers",
  "tierToTier",
  "shapeTop",
  "gatherSkirt",
  "fitBeforeWaist",
  "basqueToBodice",
  "skirtToBodice",
  "zipMarks",
  "tackZip",
  "putInZip",
  "seamBelowOpening",
  "fuseStands",
  "buttonStands",
  "vent",
  "finishWaist",
  "liningSkirtDarts",
  "liningSkirtSeams",
  "liningSkirtToWaist",
  "closeLiningWaist",
  "handSewFacing",
  "handSewLining",
  "hookAndEye",
  "buttonholes",
  "buttons",
  "hang",
  "levelHem",
  "hemShell",
  "hemLining",
  "press",
] as const;
export type SewingStepName = (typeof SEWING_STEPS)[number];

/** What can hurt, or spoil, in a step. */
export type SewingCaution = "pins" | "iron" | "blade" | "zip" | "needle";

/** In which of its ways a step is done, where there are several. */
export type SewingWay =
  | StrapKind
  | "invisible"
  | "lapped"
  | "buttons"
  | "pleats"
  | "peplum"
  /** Side seams sewn in one with those of the lining, or of the facing. */
  | "withLining"
  | "withFacing"
  /** The join at the opening is left; of an edge: the opening ends it. */
  | "opens"
  /** Shell and what lies inside it, closed at neck and armholes: turned by drawing the backs through the shoulders. */
  | "throughShoulders"
  /** The same where the back does not open: the neck first, then each armhole round the rolled bodice. */
  | "rolled"
  /** The ends lie at the straps. */
  | "atStraps"
  /** A hem on the bias. */
  | "round";

/** One seam of a step, or several that are alike. */
export interface SewnSeam {
  readonly seam: SeamName | null;
  readonly dart?: DartName;
  /** Along both of its sides; none of rectangles and rings, which have no piece. */
  readonly pieces: readonly PieceName[];
  /** Set where the halves of the body differ. */
  readonly half: Half | null;
  /** Of one, as it is sewn. */
  readonly length: Mm;
  readonly count: number;
  /** What it is drawn up to, where it is gathered. */
  readonly gatheredTo?: Mm;
}

/** What of the sewing can show through a cloth. */
export type Showing = "side" | "princess" | "waist" | "darts" | "hem" | "edges";

/** How it is finished so that it may be seen. `narrow`: stitched twice close together, and trimmed beside it. */
export type SeenFinish = "frenchSeam" | "narrow" | "bound" | "narrowHem" | "binding";

export interface Finished {
  readonly of: Showing;
  readonly by: SeenFinish;
}

export interface SewingStep {
  readonly name: SewingStepName;
  /** Of steps done several times: which tier, from 1 at the waist. */
  readonly at?: number;
  readonly way?: SewingWay;
  /** Keys of the parts that it is done on. */
  readonly parts: readonly string[];
  readonly seams: readonly SewnSeam[];
  /** Where both tapes of a zip are marked level, from its upper end. */
  readonly marks?: ClosureReading["levelMarks"];
  /** By how much the upper edge of a rectangle is cut lower, in one even curve. */
  readonly lower?: { readonly front: Mm; readonly side: Mm; readonly back: Mm };
  /** Of all its seams together, sewn, and their allowance; null where nothing is sewn. */
  readonly length: Mm | null;
  readonly allowance: Mm | null;
  readonly press: boolean;
  /** How its raw edges are finished; null: they are covered, or there are none. */
  readonly finish: SeenFinish | "neatened" | null;
  readonly cautions: readonly SewingCaution[];
  /** Indexes of steps in the list that have to be done before. */
  readonly after: readonly number[];
}

/** What is bought beside the cloth. */
export interface Notion {
  readonly what: "zip" | "interfacing" | "elastic" | "buttons" | "thread" | "bias" | "washAwayTape" | "hookAndEye";
  /** Pieces; of thread reels. */
  readonly count: number;
  /** Of each piece; of thread all that is used. Of a zip the opening that it closes; null: none of this seam lets her in. */
  readonly length: Mm | null;
  readonly width: Mm | null;
  /** mm²: of interfacing, all pieces as cut; how long a cloth they need is told by their lay. */
  readonly area?: number;
  /** Of a zip: it comes apart at its lower end, since the garment does. */
  readonly comesApart?: boolean;
  /** Of a zip: the next longer that is sold, null where none is. */
  readonly sold?: ClosureReading["zip"];
  /** Of a zip: where the opening has to end for it, if not where it does; from its upper end. */
  readonly endsAt?: ClosureReading["endsAt"];
}
