/**
 * The order of work: piece by piece, the blend first, since it is marked from printed lines that can no longer be laid
 * under a piece once it is cut and swung; then length, bust, darts, widths, shoulders and edges, truing, and last of all
 * walking the seams.
 */
import type { TruingChange } from "../truing/changes";
import { isBasque, isFrontPiece } from "../pattern/pieceGroups";
import { PIECE_ORDER, piecesOf, type PieceSet } from "../pattern/pieceSet";
import { seamPairsOf } from "../pattern/sewnTogether";
import { distance } from "../geometry/point";
import { rankOf } from "../decisions/tradeOrder";
import type { DartRef, PieceName } from "../pattern/piece";
import { must } from "../result";
import { SEWN_AGREEMENT } from "../tolerance";
import type { ChecklistItem, CutLine, PlannedDart, Slip } from "./plan";
import type { Sizing } from "../sizing/sizing";

export interface ChecklistInputs {
  /** The pieces traced from the pattern: a seam made of darts parts one of them in two later on. */
  readonly traced: PieceSet;
  readonly pieces: PieceSet;
  readonly sizing: Sizing;
  readonly cutLines: readonly CutLine[];
  readonly darts: readonly PlannedDart[];
  readonly slips: readonly Slip[];
  readonly truing: readonly TruingChange[];
}

/** All jobs in the order they are done. */
export function listWork(inputs: ChecklistInputs): readonly ChecklistItem[] {
  const final = piecesOf(inputs.pieces).map((piece) => piece.name);
  const names = PIECE_ORDER.filter((name) => inputs.traced[name] !== undefined || final.includes(name));
  return [
    ...names.flatMap((piece) => jobsOn(piece, inputs)),
    ...seamPairsOf(inputs.pieces).map(({ seam, first, second, ease }): ChecklistItem => ({
      piece: must(first[0], "piece"),
      step: { kind: "walk", seam, first, second, ease },
      amount: ease,
    })),
  ];
}

function jobsOn(
  piece: PieceName,
  { traced, pieces, sizing, cutLines, darts: all, slips, truing }: ChecklistInputs,
): ChecklistItem[] {
  const jobs: ChecklistItem[] = [];
  // Gathers have no legs to draw and nothing to fold.
  const darts = all.filter(
    ({ ref }) => pieces[ref.piece]?.darts.find(({ name }) => name === ref.dart)?.gathered !== true,
  );
  if (traced[piece] !== undefined) {
    const cup = isFrontPiece(piece) ? sizing.cup.label : null;
    jobs.push({ piece, step: { kind: "trace", size: sizing.frame.label, cup }, amount: 0 });
  }
  for (const cutLine of cutLines) {
    if (cutLine.piece !== piece || cutLine.level === "bust") continue;
    const from = cutLine.level === "waist" ? (isBasque(piece) ? "hip" : "bust") : "waist";
    jobs.push({ piece, step: { kind: "blend", cutLine, from }, amount: cutLine.offset });
  }
  for (const slip of slips) {
    if (!slip.outcome.ok || !isDoneOn(slip, piece)) continue;
    const { what } = slip;
    if (what.kind === "bust") {
      jobs.push({
        piece,
        step: { kind: "bust", spread: what.spread, whole: what.amount, drop: what.drop },
        amount: what.spread,
      });
    }
    if (what.kind === "alteration") jobs.push({ piece, step: { kind: "slip", slip }, amount: amountOf(slip) });
  }
  for (const change of truing)
    if (change.piece === piece) jobs.push({ piece, step: { kind: "trued", change }, amount: 0 });
  for (const dart of darts) {
    if (dart.ref.piece !== piece || !isRedrawn(dart)) continue;
    const late = slips.some((slip) => rankOf(slip.phase) > rankOf("darts") && changesDart(slip, dart.ref));
    jobs.push({ piece, step: { kind: "dart", dart: dart.ref, figures: dart.drawn, late }, amount: dart.drawn.intake });
  }
  for (const dart of darts) {
    // A side seam that was moved is trued over its dart as well, though the dart stays as printed.
    const crossed = dart.ref.dart === "sideDart" && cutLines.some((line) => line.piece === piece && line.offset !== 0);
    if (dart.ref.piece !== piece || (!crossed && !isRedrawn(dart))) continue;
    const amount = Math.max(Math.abs(dart.truing.inner), Math.abs(dart.truing.outer));
    jobs.push({ piece, step: { kind: "trueDart", dart: dart.ref, amount }, amount });
  }
  return jobs;
}

/** Whether a slip is something to do on a piece: where it was redrawn, or on every piece that it cuts. */
function isDoneOn({ piece: own, what, outcome }: Slip, piece: PieceName): boolean {
  if (what.kind === "alteration" && what.alteration.kind !== "fit") return own === piece;
  return own === piece || (outcome.ok && what.kind !== "blend" && outcome.value.after[piece] !== undefined);
}

/** Whether a slip moves the end or the mouth of a dart. */
function changesDart({ outcome }: Slip, { piece, dart }: DartRef): boolean {
  if (!outcome.ok) return false;
  const [before, after] = [outcome.value.before[piece], outcome.value.after[piece]];
  if (before === undefined || after === undefined) return false;
  return ([`${dart}Apex`, `${dart}Inner`, `${dart}Outer`] as const).some((name) => {
    const [from, to] = [before.points[name]?.at, after.points[name]?.at];
    return from !== undefined && to !== undefined && distance(from, to) > SEWN_AGREEMENT;
  });
}

/** The dart is other than printed, so its legs must be drawn anew. Legs that only reach on to a moved seam need not. */
function isRedrawn({ printed, drawn }: PlannedDart): boolean {
  if (printed === null) return true;
  return (
    Math.abs(printed.intake - drawn.intake) > SEWN_AGREEMENT || distance(printed.apex, drawn.apex) > SEWN_AGREEMENT
  );
}

function amountOf(slip: Slip): number {
  if (slip.what.kind !== "alteration") return 0;
  const { alteration } = slip.what;
  switch (alteration.kind) {
    case "dartEnd":
      return alteration.shorten === 0 ? alteration.across : alteration.shorten;
    case "dartMouth":
      return alteration.inner + alteration.outer;
    case "dartPlace":
      return alteration.by;
    case "fit":
      return alteration.amount;
    case "dartLegs":
      return alteration.bow;
    default:
      return 0;
  }
}
