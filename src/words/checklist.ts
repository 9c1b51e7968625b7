/**
 * The order of work in words: each job as a sentence that can be followed on the tissue itself, with no screen at hand.
 * Shared by the printed sheet and the command line.
 */
import { isRedraw } from "../core/decisions/alteration";
import type { ChecklistItem, ChecklistStep, Plan, PlannedAlteration } from "../core/plan/plan";
import { phaseOfStep, type WorkPhase } from "../core/plan/workPhases";
import { type LengthUnit } from "../core/decisions/work";
import type { Piece, PieceName } from "../core/pattern/piece";
import { bustSaid } from "./alterations/bustAdjustment";
import { redrawSaid } from "./alterations/dartRedraw";
import { dartSurgerySteps } from "./alterations/dartSurgery/index";
import { refusedSentence } from "./doubts";
import { fitSteps, halfWords } from "./fits";
import { blendSaid, dartSaid, traceSaid, trueDartSaid, truedSaid, walkSaid } from "./jobs";
import type { Context, Said } from "./terms/jobText";
import { plannedAmount } from "./ledger";
import { capital, pieceWords } from "./terms/names";
import { alterationTitle } from "./planned";

const PHASE_WORDS: Readonly<Record<WorkPhase, string>> = {
  trace: "Trace",
  bust: "Bust",
  darts: "Darts",
  widthsTraced: "Blend",
  length: "Length",
  widths: "Widths",
  edges: "Shoulders and edges",
  truing: "True and check",
};

export const phaseWords = (phase: WorkPhase): string => PHASE_WORDS[phase];

export interface ChecklistLine {
  readonly phase: WorkPhase;
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

function plannedSaid(planned: PlannedAlteration, context: Context): Said {
  const { what, outcome } = planned;
  if (!outcome.ok) return { text: refusedSentence(planned, context.unit) ?? "" };
  if (what.kind === "alteration") {
    const { alteration } = what;
    if (isRedraw(alteration)) return redrawSaid(outcome.value, alteration, context);
    const moves =
      alteration.kind === "fit"
        ? fitSteps(alteration, context.pieceName, outcome.value, context.unit)
        : dartSurgerySteps(alteration, outcome.value, context.unit);
    return {
      text: `${alterationTitle(alteration, context.unit)}.`,
      moves,
      amount: plannedAmount(planned, context.unit),
    };
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
    case "alteration":
      return plannedSaid(step.planned, context);
    case "dart":
      return dartSaid(step, context);
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
  const half = item.half === undefined || saysItsHalf(item.step) ? "" : `On the ${halfWords(item.half)}: `;
  return { phase: phaseOfStep(item.step), text: `${half}${text}`, moves, amount };
}

/** A fit for one half alone does so in its title. */
const saysItsHalf = (step: ChecklistStep): boolean =>
  step.kind === "alteration" &&
  step.planned.what.kind === "alteration" &&
  step.planned.what.alteration.kind === "fit" &&
  step.planned.what.alteration.half !== undefined;

/** The same as running text. */
export const checklistSentence = (line: ChecklistLine): string => [line.text, ...line.moves].join(" ");

/** Every job, gathered by piece; last the seams, walked when all pieces are done. */
export function checklistByPiece(plan: Pick<Plan, "checklist" | "left">, unit: LengthUnit): readonly PieceChecklist[] {
  const gather = (piece: PieceName | null, items: readonly ChecklistItem[]): PieceChecklist => ({
    piece,
    lines: saidOnce(items, plan.left.pieces, unit),
  });
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
    if (item.half === undefined) return [line];
    const other = items.findIndex(
      ({ half }, at) => half !== undefined && half !== item.half && keys[at] === keys[index],
    );
    if (other === -1) return [checklistLine(item, pieces, unit, traced)];
    return other < index ? [] : [line];
  });
}

export const groupTitle = ({ piece }: PieceChecklist): string =>
  piece === null ? "All pieces together" : capital(pieceWords(piece));
