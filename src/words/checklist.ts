/**
 * The order of work in words: each job as a sentence that can be followed on the tissue itself, with no screen at hand.
 * Shared by the printed sheet and the command line.
 */
import { isRedraw, type FitAlteration, type Half } from "../core/decisions/alteration";
import type { HalfLevelled } from "../core/plan/levelHalves";
import type { ChecklistItem, ChecklistStep, Plan, PlannedAlteration } from "../core/plan/plan";
import { phaseOfStep, type WorkPhase } from "../core/plan/workPhases";
import { type LengthUnit } from "../core/decisions/work";
import { isSameDart, type DartRef, type Piece, type PieceName } from "../core/pattern/piece";
import { bustSaid } from "./alterations/bustAdjustment";
import { redrawSaid, redrawsSaid, type RedrawMade } from "./alterations/dartRedraw";
import { dartSurgerySteps, dartSurgeryTitle } from "./alterations/dartSurgery/index";
import { refusedSentence } from "./doubts";
import { fitSteps, halfWords } from "./fits";
import { blendSaid, dartSaid, placesSaid, traceSaid, trueDartSaid, truedSaid, walkSaid } from "./jobs";
import { necklineSaid } from "./neckline";
import type { Context, Said } from "./terms/jobText";
import { plannedAmount } from "./ledger";
import { formatAmount } from "./terms/length";
import { capital, namedPieceWords, pieceWords, type OtherNames } from "./terms/names";
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
  neckline: "Neckline",
};

export const phaseWords = (phase: WorkPhase): string => PHASE_WORDS[phase];

export interface ChecklistLine {
  readonly phase: WorkPhase;
  readonly text: string;
  /** The single moves of a longer job, in order. */
  readonly moves: readonly string[];
  /** Set out beside the text; null where the job has no amount. */
  readonly amount: string | null;
  /** The alteration it is the work of, by its id, where it cuts or moves the piece. */
  readonly alteration?: string;
}

export interface PieceChecklist {
  /** null: on the pieces together, when each is done. */
  readonly piece: PieceName | null;
  /** How it is called. */
  readonly label?: string;
  readonly lines: readonly ChecklistLine[];
}

function plannedSaid(planned: PlannedAlteration, context: Context): Said {
  const { what, outcome } = planned;
  if (!outcome.ok || what.kind !== "alteration") return { text: refusedSentence(planned, context.unit) ?? "" };
  const { alteration } = what;
  if (isRedraw(alteration)) return redrawSaid({ alteration, trace: outcome.value }, context);
  const moves =
    alteration.kind === "fit"
      ? fitSteps(alteration, context.pieceName, outcome.value, context.unit)
      : dartSurgerySteps(alteration, outcome.value, context.unit);
  // A job of one half begins with it; only a fit says it in its title.
  const title =
    alteration.kind === "fit" ? alterationTitle(alteration, context.unit) : dartSurgeryTitle(alteration, context.unit);
  return {
    text: `${title}.`,
    moves,
    amount: plannedAmount(planned, context.unit),
  };
}

/** The shorter centre of a half with the smaller cup. */
function levelSaid({ amount, trace }: HalfLevelled, { unit, pieceName }: Context): Said {
  const lowered: FitAlteration = { kind: "fit", id: "level", fit: "waistDropFront", amount };
  return {
    text: `Let ${formatAmount(amount, unit)} in at the centre front: the other half’s fuller cup is longer there, and they are sewn to each other.`,
    moves: fitSteps(lowered, pieceName, trace, unit),
    amount: formatAmount(amount, unit),
  };
}

function said(step: ChecklistStep, context: Context): Said {
  switch (step.kind) {
    case "trace":
      return traceSaid(step, context);
    case "bust":
      return bustSaid(step, context);
    case "level":
      return levelSaid(step.level, context);
    case "blend":
      return blendSaid(step.cutLine, step.from, step.taken, context);
    case "alteration":
      return plannedSaid(step.planned, context);
    case "dart":
      return dartSaid(step, context);
    case "trueDart":
      return trueDartSaid(step.dart);
    case "walk":
      return walkSaid(step, context);
    case "places":
      return placesSaid(step, context);
    case "trued":
      return truedSaid(step.change, context);
    case "neckline":
      return necklineSaid(step, context);
  }
}

/**
 * One job in words. `pieces` are the plan's final pieces: positions are measured on them; `traced`: the size traced, if told;
 * `others`: her own words for pieces without a name; `isFromOld`: told from the piece as it was sewn before.
 */
export function checklistLine(
  item: ChecklistItem,
  pieces: readonly Piece[],
  unit: LengthUnit,
  traced?: string,
  others?: OtherNames,
  isFromOld?: true,
): ChecklistLine {
  const line = lineSaid(item, pieces, unit, traced, others, isFromOld);
  return { ...line, text: `${halfOf(item)}${line.text}` };
}

/** The same without the words that say which half it is for. */
function lineSaid(
  item: ChecklistItem,
  pieces: readonly Piece[],
  unit: LengthUnit,
  traced?: string,
  others?: OtherNames,
  isFromOld?: true,
): ChecklistLine {
  const piece = pieces.find((one) => one.name === item.piece);
  const {
    text,
    moves = [],
    amount = null,
  } = said(item.step, {
    unit,
    piece,
    pieceName: item.piece,
    label: namedPieceWords(item.piece, others),
    traced,
    ...(item.half === undefined ? {} : { half: item.half }),
    ...(isFromOld === undefined ? {} : { isFromOld }),
  });
  const alteration = alterationOf(item.step);
  return {
    phase: phaseOfStep(item.step),
    text,
    moves,
    amount,
    ...(alteration === null ? {} : { alteration }),
  };
}

/** Redraws of a dart cut nothing: the dart is drawn on its piece. */
function alterationOf(step: ChecklistStep): string | null {
  if (step.kind !== "alteration" || step.planned.what.kind !== "alteration") return null;
  return isRedraw(step.planned.what.alteration) ? null : step.planned.id;
}

/** "On the left half: ", before a job that is told of one half; nothing before others. */
const halfOf = ({ half, step }: ChecklistItem): string =>
  half === undefined || saysItsHalf(step) ? "" : `On the ${halfWords(half)}: `;

/** A fit for one half alone does so in its title. */
const saysItsHalf = (step: ChecklistStep): boolean =>
  step.kind === "alteration" &&
  step.planned.what.kind === "alteration" &&
  step.planned.what.alteration.kind === "fit" &&
  step.planned.what.alteration.half !== undefined;

/** The same as running text. */
export const checklistSentence = (line: ChecklistLine): string => [line.text, ...line.moves].join(" ");

/** The dart that a job draws anew, or that one of the wearer's redraws asks for; null of all other jobs. */
function dartOfJob({ step }: ChecklistItem): DartRef | null {
  if (step.kind === "dart") return step.dart;
  if (step.kind !== "alteration" || step.planned.what.kind !== "alteration") return null;
  const { alteration } = step.planned.what;
  return isRedraw(alteration) ? alteration.dart : null;
}

const isOfHalf = (item: ChecklistItem, half: ChecklistItem["half"]): boolean =>
  item.half === undefined || half === undefined || item.half === half;

/** The redraws that are told with the drawing of their dart: all that was asked for in one line, and once what comes of it. */
function redrawsOf(item: ChecklistItem, items: readonly ChecklistItem[]): readonly ChecklistItem[] {
  const dart = item.step.kind === "dart" ? item.step.dart : null;
  if (dart === null) return [];
  return items.filter((one) => {
    const other = one.step.kind === "alteration" ? dartOfJob(one) : null;
    return other !== null && isSameDart(other, dart) && isOfHalf(one, item.half);
  });
}

/** Every job, gathered by piece; last the seams, walked when all pieces are done. */
export function checklistByPiece(
  plan: Pick<Plan, "checklist" | "left" | "right">,
  unit: LengthUnit,
): readonly PieceChecklist[] {
  const gather = (piece: PieceName | null, items: readonly ChecklistItem[]): PieceChecklist => ({
    piece,
    ...(piece === null ? {} : { label: namedPieceWords(piece, plan.left.nest.otherNames) }),
    lines: saidOnce(items, plan, unit),
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
  halves: Pick<Plan, Half>,
  unit: LengthUnit,
): readonly ChecklistLine[] {
  const { otherNames } = halves.left.nest;
  // Positions are measured on the pieces of the half that a job is for.
  const piecesFor = ({ half = "left" }: ChecklistItem): readonly Piece[] => halves[half].pieces;
  const traced = items
    .map(({ step }) => (step.kind === "trace" ? step.size : undefined))
    .find((size) => size !== undefined);
  const drawnDarts = items.filter(({ step }) => step.kind === "dart");
  const jobs = items.filter((item) => {
    const dart = item.step.kind === "alteration" ? dartOfJob(item) : null;
    const isToldWithDart =
      dart !== null &&
      drawnDarts.some(({ step, half }) => step.kind === "dart" && isSameDart(step.dart, dart) && isOfHalf(item, half));
    return !isToldWithDart && !isNothing(item, unit);
  });
  const lineOf = (item: ChecklistItem): ChecklistLine => {
    const line = withRedraws(
      lineSaid(item, piecesFor(item), unit, traced, otherNames),
      redrawsOf(item, items),
      piecesFor(item),
      unit,
    );
    return { ...line, text: `${halfOf(item)}${line.text}` };
  };
  // Each with the redraws of its own half: what they give may differ.
  const onBoth = jobs.map((item) =>
    withRedraws(
      lineSaid({ piece: item.piece, step: item.step, amount: item.amount }, piecesFor(item), unit, traced, otherNames),
      redrawsOf(item, items),
      piecesFor(item),
      unit,
    ),
  );
  const keys = onBoth.map((line) => JSON.stringify(line));
  return jobs.flatMap((item, index): readonly ChecklistLine[] => {
    const line = onBoth[index];
    if (line === undefined) return [];
    if (item.half === undefined) return [line];
    const other = jobs.findIndex(
      ({ half }, at) => half !== undefined && half !== item.half && keys[at] === keys[index],
    );
    if (other === -1) return [lineOf(item)];
    return other < index ? [] : [line];
  });
}

/** The drawing of a dart with what was asked of it before, and what goes with that after. */
function withRedraws(
  line: ChecklistLine,
  redraws: readonly ChecklistItem[],
  pieces: readonly Piece[],
  unit: LengthUnit,
): ChecklistLine {
  const asked = madeOnce(redraws);
  const [first] = redraws;
  if (first === undefined) return line;
  const piece = pieces.find(({ name }) => name === first.piece);
  const { text, moves } = redrawsSaid(asked, { unit, piece, pieceName: first.piece, traced: undefined });
  return { ...line, text: `${text} ${line.text}`, moves: [...line.moves, ...moves] };
}

/** The redraws of jobs: one that is made on both halves counts once. */
function madeOnce(jobs: readonly ChecklistItem[]): readonly RedrawMade[] {
  const made = new Map<string, RedrawMade>();
  for (const { step } of jobs) {
    if (step.kind !== "alteration" || step.planned.what.kind !== "alteration" || !step.planned.outcome.ok) continue;
    const { id, what, outcome } = step.planned;
    if (isRedraw(what.alteration) && !made.has(id)) made.set(id, { alteration: what.alteration, trace: outcome.value });
  }
  return [...made.values()];
}

/** Points that lie where they are printed to within what a ruler marks in her unit. */
const isNothing = ({ piece, step }: ChecklistItem, unit: LengthUnit): boolean =>
  step.kind === "places" &&
  placesSaid(step, { unit, piece: undefined, pieceName: piece, traced: undefined }).moves?.length === 0;

export const groupTitle = ({ piece, label }: PieceChecklist): string =>
  piece === null ? "All pieces together" : capital(label ?? pieceWords(piece));
