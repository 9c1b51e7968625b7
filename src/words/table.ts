/** The table of pattern pieces: what lies on it in words, what can be done there, and what is told while something is moved. */
import { seamLength } from "../core/girth/seamLength";
import type { Piece, PieceName, SeamName } from "../core/pattern/piece";
import type { PlannedDart, PlanHalf } from "../core/plan/plan";
import type { Half } from "../core/decisions/alteration";
import type { LengthUnit } from "../core/decisions/work";
import { degreesFrom } from "../core/units";
import { shortShareWords } from "./blend";
import { halfWords } from "./fits";
import { ledgerGroup, plannedTitle } from "./ledger";
import { differenceTold, formatAlong, formatAmount, formatSigned } from "./terms/length";
import { capital, dartRefWords, dartWords, levelWords, namedPieceWords, seamWords } from "./terms/names";
import { figuresWords, formatAngle } from "./terms/darts";
import { listWords, counted, fixedDecimals, percentWords } from "./terms/language";

export const SHEET_LABEL =
  "Pattern pieces. Arrow keys move the table, plus and minus zoom, zero shows everything, Shift and F10 offer what can be done.";
export const HANDLE_HELP =
  "Drag, or move with the arrow keys; with Shift ten times as far. Escape puts it back. Page Down goes to the dart’s other ends, Shift and F10 offer what can be done with it.";
export const HANDLE_ROLE = "dart handle";
export const IN_WORDS = "The pieces in words";

export const MENU_WORDS = {
  name: "The menu of the table",
  choose: "Work on this dart",
  all: "Show everything",
  table: "The table",
} as const;

export const TOOL_WORDS = {
  toolbar: "Table",
  nearer: "Zoom in",
  farther: "Zoom out",
  all: "All",
  pieceMenu: "Show one piece",
  onePiece: "One piece…",
  lines: "Lines",
  printed: "Printed lines",
  printedAll: "all sizes",
  printedNear: "those in use",
  printedNone: "none",
  amounts: "amounts",
  before: "before your slips",
} as const;

export const NO_PIECES = "The pattern pieces appear here once there is a size chart on Envelope.";
export const ONLY_PRINTED = "These are the printed pieces. Your own line appears once the plan has what it needs.";

export const HALF_WORDS = {
  workedOn: "The half you work on",
  left: "your left",
  right: "your right",
  shown: "The table shows",
  away: "one half",
  beside: "side by side",
  under: "one over the other",
} as const;

export const SLIDE_WORDS = { before: "before", toAfter: " to after", after: "after", done: "Done" } as const;

/** How far between the piece before a slip and the piece after it: "before", "40 % of the way", "after". */
export function slideValue(share: number): string {
  const percent = Math.round(share * 100);
  if (percent === 0) return SLIDE_WORDS.before;
  return percent === 100 ? SLIDE_WORDS.after : `${percentWords(share)} of the way`;
}

export const onlyWords = (piece: PieceName, others: PlanHalf["nest"]["otherNames"]): string =>
  `Show only the ${namedPieceWords(piece, others)}`;

export const openAlterationWords = (title: string): string => `Open its slip: ${title}`;

export const printedWords = (piece: string, size: string): string => `${piece}, printed line of size ${size}`;

export const halfNote = (half: Half | null): string => (half === null ? "" : `, your ${halfWords(half)}`);

const countOf = (darts: number): string => (darts === 0 ? "no dart" : counted(darts, { one: "dart", other: "darts" }));

/** "Front, frame size 12, waist 55 % from 14 to 16, 2 darts". */
export function pieceGroupLabel(plan: PlanHalf, piece: PieceName): string {
  const lines = plan.cutLines.filter((line) => line.piece === piece);
  const darts = plan.darts.filter(({ ref }) => ref.piece === piece);
  return [
    capital(namedPieceWords(piece, plan.nest.otherNames)),
    `frame size ${plan.sizing.baseSize.label}`,
    ...lines.map(({ level, between, share }) => `${levelWords(level)} ${shortShareWords(between, share)}`),
    countOf(darts.length),
  ].join(", ");
}

/** The slips that changed a piece. */
export const alterationsOnPiece = (plan: PlanHalf, piece: PieceName) =>
  plan.alterations.filter(({ outcome }) => outcome.ok && outcome.value.after[piece] !== undefined);

/** A piece for who cannot see it: its edges with their sewn lengths, its darts, what was altered. */
export function pieceInWords(plan: PlanHalf, piece: Piece, unit: LengthUnit): readonly string[] {
  const seams = [...new Set(piece.edges.map(({ seam }) => seam))].filter((seam) => seam !== "edge");
  const edgeWords = (seam: SeamName): string =>
    `${seamWords(seam, piece.name)} ${formatAlong(seamLength(piece, seam), unit)}`;
  const altered = [
    ...new Map(alterationsOnPiece(plan, piece.name).map((one) => [ledgerGroup(one), plannedTitle(one, unit)])).values(),
  ];
  return [
    ...(seams.length === 0 ? [] : [`Sewn, darts shut: ${listWords(seams.map(edgeWords))}.`]),
    ...plan.darts
      .filter(({ ref }) => ref.piece === piece.name)
      .map(({ ref, drawn }) => `${capital(dartWords(ref.dart))}: ${figuresWords(drawn, unit).toLowerCase()}.`),
    altered.length === 0 ? "Nothing altered." : `Altered: ${altered.join("; ")}.`,
  ];
}

export interface ReadoutFigure {
  readonly name: string;
  readonly now: string;
  /** Since it was taken hold of; empty: as it was. */
  readonly since: string;
}

/** The dart in her hand: mouth, angle, fullness, and what each has changed by since she took hold of it. */
export function readout(
  { ref, drawn }: PlannedDart,
  start: PlannedDart["drawn"],
  unit: LengthUnit,
): { readonly title: string; readonly figures: readonly ReadoutFigure[] } {
  const figure = (name: string, now: number, was: number): ReadoutFigure => {
    const by = differenceTold(now, was, unit);
    const isSame = formatAmount(Math.abs(by), unit) === formatAmount(0, unit);
    return { name, now: formatAmount(now, unit), since: isSame ? "" : formatSigned(by, unit) };
  };
  const turn = Math.round(degreesFrom(drawn.angle) * 10) / 10 - Math.round(degreesFrom(start.angle) * 10) / 10;
  const by = fixedDecimals(Math.abs(turn), 1);
  return {
    title: capital(dartRefWords(ref)),
    figures: [
      figure("mouth", drawn.intake, start.intake),
      {
        name: "angle",
        now: formatAngle(drawn.angle),
        since: by === "0.0" ? "" : `${turn < 0 ? "−" : "+"}${by}°`,
      },
      figure("fullness", drawn.fullness, start.fullness),
    ],
  };
}
