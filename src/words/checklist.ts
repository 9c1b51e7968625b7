/**
 * The order of work in words: each job as a sentence that can be followed on the tissue itself, with no screen at hand.
 * Shared by the printed sheet and the command line.
 */
import { isRedraw } from "../core/decisions/alteration";
import type { ChecklistItem, ChecklistStep, Plan, Slip } from "../core/plan/plan";
import { type LengthUnit } from "../core/decisions/work";
import type { Piece, PieceName } from "../core/pattern/piece";
import { bustSaid } from "./alterations/bustAdjustment";
import { redrawSaid } from "./alterations/dartRedraw";
import { dartSurgerySteps } from "./alterations/dartSurgery/index";
import { refusedSentence } from "./doubts";
import { fitSteps, halfWords } from "./fits";
import { blendSaid, dartSaid, traceSaid, trueDartSaid, truedSaid, walkSaid } from "./jobs";
import type { Context, Said } from "./terms/jobText";
import { slipAmount } from "./ledger";
import { capital, pieceWords } from "./terms/names";
import { alterationTitle } from "./slips";

/**
 * The order on one piece. The widths come right after tracing: they are read off the printed lines, which lie true to
 * the tissue only until it is cut and swung, and a side seam marked anew later would undo what was taken off at it.
 */
const PHASES = ["trace", "widthsTraced", "length", "bust", "darts", "widths", "edges", "truing"] as const;
export type Phase = (typeof PHASES)[number];

const PHASE_WORDS: Readonly<Record<Phase, string>> = {
  trace: "Trace",
  bust: "Bust",
  darts: "Darts",
  widthsTraced: "Blend",
  length: "Length",
  widths: "Widths",
  edges: "Shoulders and edges",
  truing: "True and check",
};

export const phaseWords = (phase: Phase): string => PHASE_WORDS[phase];

export interface ChecklistLine {
  readonly phase: Phase;
  readonly text: string;
  /** The single moves of a longer job, in order. */
  readonly moves: readonly string[];
  /** Set out beside the text; null where the job has no amount. */
  readonly amount: string | null;
}

export interface PieceChecklist {
  /** null: on the pieces together, when each is done. */
  readonly piece: PieceName | null;
  readonly lines: readonly ChecklistLine[];
}

function phaseOf(step: ChecklistStep): Phase {
  switch (step.kind) {
    case "trace":
      return "trace";
    case "bust":
      return "bust";
    case "blend":
      return "widthsTraced";
    case "dart":
      return step.late ? "edges" : "darts";
    case "trueDart":
    case "trued":
    case "walk":
      return "truing";
    case "slip":
      return step.slip.phase;
  }
}

function slipSaid(slip: Slip, context: Context): Said {
  const { what, outcome } = slip;
  if (!outcome.ok) return { text: refusedSentence(slip, context.unit) ?? "" };
  if (what.kind === "alteration") {
    const { alteration } = what;
    if (isRedraw(alteration)) return redrawSaid(outcome.value, alteration, context);
    const moves =
      alteration.kind === "fit"
        ? fitSteps(alteration, context.pieceName, outcome.value, context.unit)
        : dartSurgerySteps(alteration, outcome.value, context.unit);
    return { text: `${alterationTitle(alteration, context.unit)}.`, moves, amount: slipAmount(slip, context.unit) };
  }
  return what.kind === "bust"
    ? bustSaid(what.spread, what.amount, what.drop, context)
    : blendSaid(what.cutLine, what.level === "hip" ? "waist" : "bust", context);
}

function said(step: ChecklistStep, context: Context): Said {
  switch (step.kind) {
    case "trace":
      return traceSaid(step.size, step.cup, context);
    case "bust":
      return bustSaid(step.spread, step.whole, step.drop, context);
    case "blend":
      return blendSaid(step.cutLine, step.from, context);
    case "slip":
      return slipSaid(step.slip, context);
    case "dart":
      return dartSaid(step.dart, step.figures, context);
    case "trueDart":
      return trueDartSaid(step.dart, step.amount, context);
    case "walk":
      return walkSaid(step, context);
    case "trued":
      return truedSaid(step.change, context);
  }
}

/** One job in words. `pieces` are the plan's final pieces: positions are measured on them; `traced`: the size traced, if told. */
export function checklistLine(
  item: ChecklistItem,
  pieces: readonly Piece[],
  unit: LengthUnit,
  traced?: string,
): ChecklistLine {
  const piece = pieces.find((one) => one.name === item.piece);
  const { text, moves = [], amount = null } = said(item.step, { unit, piece, pieceName: item.piece, traced });
  // A fit for one half says so itself.
  const half = item.half === undefined || item.step.kind === "slip" ? "" : `On the ${halfWords(item.half)}: `;
  return { phase: phaseOf(item.step), text: `${half}${text}`, moves, amount };
}

/** The same as running text. */
export const checklistSentence = (line: ChecklistLine): string => [line.text, ...line.moves].join(" ");

/** Every job, gathered by piece, in the order of the phases on each; last the seams, walked when all pieces are done. */
export function checklistByPiece(plan: Pick<Plan, "checklist" | "left">, unit: LengthUnit): readonly PieceChecklist[] {
  const gather = (piece: PieceName | null, items: readonly ChecklistItem[]): PieceChecklist => {
    const lines = saidOnce(items, plan.left.pieces, unit);
    return { piece, lines: PHASES.flatMap((phase) => lines.filter((line) => line.phase === phase)) };
  };
  const walks = plan.checklist.filter((item) => item.step.kind === "walk");
  const jobs = plan.checklist.filter((item) => item.step.kind !== "walk");
  const names = [...new Set(jobs.map((item) => item.piece))];
  return [
    ...names.map((piece) =>
      gather(
        piece,
        jobs.filter((item) => item.piece === piece),
      ),
    ),
    ...(walks.length === 0 ? [] : [gather(null, walks)]),
  ];
}

/** A job on each half that comes out word for word alike, as its numbers differ by less than is said, stands once for both. */
function saidOnce(
  items: readonly ChecklistItem[],
  pieces: readonly Piece[],
  unit: LengthUnit,
): readonly ChecklistLine[] {
  const traced = items
    .map(({ step }) => (step.kind === "trace" ? step.size : undefined))
    .find((size) => size !== undefined);
  const onBoth = items.map(({ piece, step, amount }) => checklistLine({ piece, step, amount }, pieces, unit, traced));
  const keys = onBoth.map((line) => JSON.stringify(line));
  return items.flatMap((item, index): readonly ChecklistLine[] => {
    const line = onBoth[index];
    if (line === undefined) return [];
    if (item.half === undefined || item.step.kind === "slip") return [line];
    const other = items.findIndex(
      ({ half }, at) => half !== undefined && half !== item.half && keys[at] === keys[index],
    );
    if (other === -1) return [checklistLine(item, pieces, unit, traced)];
    return other < index ? [] : [line];
  });
}

export const groupTitle = ({ piece }: PieceChecklist): string =>
  piece === null ? "All pieces together" : capital(pieceWords(piece));
