/** What the gapes at a front's edge have in common: a wedge closed into a dart or into the princess seam. */
import type { Piece } from "../../core/pattern/piece";
import type { Steps } from "./fitWords";

interface Wedge {
  /** "neckline". */
  readonly edge: string;
  /** Where on the edge it begins, and the line drawn from there. */
  readonly mark: string;
  /** What else to mind when the edge is drawn again. */
  readonly mind?: string;
}

/** Whether a wedge goes into the princess seam: else it goes into a dart. */
export const hasPrincess = ({ points }: Piece): boolean => points.princessBust !== undefined;

const drawn = ({ edge, mind = "" }: Wedge): string =>
  `Draw the ${edge} again in one smooth curve, {amount} shorter than it was${mind}.`;

export const intoDart = (wedge: Wedge): Steps => [
  `${wedge.mark} Draw a line from there to the bust point, and draw both legs of the bust dart on to the bust point.`,
  `Cut along the leg that lies nearer the ${wedge.edge}, as far as the bust point, and along the line from the ${wedge.edge} to within a thread of it.`,
  `Turn the part between the two cuts about the bust point until it laps {amount} over at the ${wedge.edge}; tape it. The dart opens: its mouth grows by {wider}.`,
  "Stick paper behind the dart. End it again as far short of the bust point as before, on the line from the bust point to the middle of its mouth.",
  "Fold the dart shut, draw the seam smooth across it and make its legs equally long.",
  drawn(wedge),
];

export const intoPrincess = (wedge: Wedge & { readonly swingsFrom: string }): Steps => [
  wedge.mark,
  `Cut along the line to within a thread of the seam line there. Turn the upper part about that point until it laps {amount} over at the ${wedge.edge}; tape it.`,
  `The upper end of the princess seam swings {wider} away from the ${wedge.swingsFrom}; this is right: it is the fullness that the seam now takes in. The seam keeps its length: draw it smooth at the bust line, and walk it.`,
  drawn(wedge),
];
