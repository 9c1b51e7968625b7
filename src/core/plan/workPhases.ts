/**
 * The order of work: piece by piece, on each in the order of the phases. The blend comes right after tracing: widths are
 * read off the printed lines, which lie true to the tissue only until it is cut and swung, and a side seam marked anew
 * later would undo what was taken off at it. The seams are walked last of all, when every piece is done.
 */
import { PHASE_ORDER } from "../decisions/tradeOrder";
import { PIECE_ORDER } from "../pattern/pieceSet";
import type { ChecklistItem, ChecklistStep } from "./plan";

const WORK_PHASES = ["trace", ...PHASE_ORDER, "truing", "neckline"] as const;
export type WorkPhase = (typeof WORK_PHASES)[number];

export function phaseOfStep(step: ChecklistStep): WorkPhase {
  switch (step.kind) {
    case "trace":
      return "trace";
    case "bust":
    case "level":
      return "bust";
    case "blend":
      return "widthsTraced";
    case "dart":
      return step.late ? "edges" : "darts";
    case "places":
    case "trueDart":
    case "trued":
    case "walk":
      return "truing";
    case "neckline":
      return "neckline";
    case "alteration":
      return step.planned.phase;
  }
}

/** What stands alike in the order of work keeps the order it is in. */
export const inOrderOfWork = (items: readonly ChecklistItem[]): readonly ChecklistItem[] =>
  items.toSorted((a, b) => placeOf(a) - placeOf(b));

/** Points are put before anything is trued between them. */
const AFTER_PLACES = 0.5;

const placeOf = ({ piece, step }: ChecklistItem): number =>
  (step.kind === "walk" ? PIECE_ORDER.length : PIECE_ORDER.indexOf(piece)) * WORK_PHASES.length +
  WORK_PHASES.indexOf(phaseOfStep(step)) +
  (step.kind === "places" ? 0 : AFTER_PLACES);
