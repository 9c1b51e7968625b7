/**
 * Her measures against the garment: what the pattern is drafted for, and what its pieces have changed by since. Body is held
 * against body, so the ease that was drafted in stays as it is, and what was altered already is not asked for again.
 */
import { PRINTED_LENGTHS, type PrintedLength } from "../decisions/pattern";
import type { Work } from "../decisions/work";
import { bodyOf } from "../measures/tape";
import { liesAlongBust } from "../pattern/dartNames";
import { isSameDart, type DartRef } from "../pattern/piece";
import { setOf, type PieceSet } from "../pattern/pieceSet";
import { halvesOf, type Plan, type PlanHalf } from "../plan/plan";
import { AGREE_WITHIN } from "../tolerance";
import type { Mm } from "../units";
import { bustPieceIn, garmentLength, type DartsMoved } from "./garmentLengths";
import { patternFigure } from "./patternFigure";

/** One measure of hers held against the garment; mm. */
export interface Compared {
  readonly measure: PrintedLength;
  readonly body: Mm;
  /** What the pattern is drafted for. */
  readonly figure: Mm;
  readonly from: "printed" | "draft";
  /** What the pieces have changed by since: through the cup version, the bust adjustment, and her own alterations. */
  readonly changed: { readonly cup: Mm; readonly bust: Mm; readonly own: Mm };
  /** The figure with those changes. */
  readonly garment: Mm;
  /** Her measure less the garment's. */
  readonly off: Mm;
  /** What tape and pattern together are good to, nineteen times in twenty. */
  readonly doubt: Mm;
  readonly agrees: boolean;
}

export interface Comparison {
  readonly compared: readonly Compared[];
  /** Taken, and these pieces have nothing of it. */
  readonly notOnPieces: readonly PrintedLength[];
}

export function compareMeasures(work: Work, plan: Plan): Comparison {
  const body = bodyOf(work.tapes);
  const compared: Compared[] = [];
  const notOnPieces: PrintedLength[] = [];
  for (const measure of PRINTED_LENGTHS) {
    const taken = body[measure];
    if (taken === undefined) continue;
    const figure = patternFigure(work.pattern, measure, plan.sizing.baseSize.index, plan.sizing.cup.label);
    const changed = figure === null ? null : measure === "height" ? UNCHANGED : changesOf(measure, figure.pieces, plan);
    if (figure === null || changed === null) {
      notOnPieces.push(measure);
      continue;
    }
    const garment = figure.value + changed.cup + changed.bust + changed.own;
    const doubt = Math.hypot(AGREE_WITHIN * taken.spread, figure.doubt);
    const off = taken.value - garment;
    compared.push({
      measure,
      body: taken.value,
      figure: figure.value,
      from: figure.from,
      changed,
      garment,
      off,
      doubt,
      agrees: Math.abs(off) <= doubt,
    });
  }
  return { compared, notOnPieces };
}

const UNCHANGED = { cup: 0, bust: 0, own: 0 };

/** null where the pieces have nothing of the measure. */
function changesOf(measure: PrintedLength, drafted: PieceSet, plan: Plan): Compared["changed"] | null {
  const before = garmentLength(measure, drafted);
  const printed = garmentLength(measure, setOf(plan.printed));
  const blended = garmentLength(measure, setOf(plan.blended));
  const finished = finishedLength(measure, plan);
  if (before === null || printed === null || blended === null || finished === null) return null;
  return { cup: printed - before, bust: blended - printed, own: finished - blended };
}

/** On the pieces as they come out: where the halves differ, their mean. */
function finishedLength(measure: PrintedLength, plan: Plan): Mm | null {
  const lengths = halvesOf(plan).map((half) => garmentLength(measure, setOf(half.fitted), dartsMoved(half)));
  return lengths.some((length) => length === null)
    ? null
    : lengths.reduce<Mm>((sum, length) => sum + (length ?? 0), 0) / lengths.length;
}

/** The bust darts that tell how far out, and how far down, a garment aims: one that stands upright and one that lies. */
export interface BustDarts {
  readonly upright: DartRef | null;
  readonly lying: DartRef | null;
}

export function bustDartsOf(pieces: PieceSet): BustDarts {
  const piece = bustPieceIn(pieces);
  const darts = piece?.darts.filter(({ aimsAt, gathered }) => aimsAt === "bustPoint" && gathered !== true) ?? [];
  const refOf = (found: (typeof darts)[number] | undefined): DartRef | null =>
    piece === undefined || found === undefined ? null : { piece: piece.name, dart: found.name };
  const upright = darts.filter(({ name }) => !liesAlongBust(name));
  return {
    // One from below says it before one from above.
    upright: refOf(upright.find(({ seam }) => seam === "waist" || seam === "underBust") ?? upright[0]),
    lying: refOf(darts.find(({ name }) => liesAlongBust(name))),
  };
}

/** What her redraws of those two darts ask for: sideways of the upright one, up and down of the one that lies. */
function dartsMoved(half: PlanHalf): DartsMoved {
  const { upright, lying } = bustDartsOf(setOf(half.fitted));
  const inwards = upright === null ? 0 : movedAcross(half, upright);
  const up = lying === null ? 0 : movedAcross(half, lying);
  return { out: 0 - inwards, down: 0 - up };
}

/** Across a dart's own axis, towards the centre or upwards, by the redraws that were made. */
function movedAcross({ alterations }: PlanHalf, ref: DartRef): Mm {
  let sum = 0;
  for (const { what, outcome } of alterations) {
    if (what.kind !== "alteration" || !outcome.ok) continue;
    const { alteration } = what;
    if (alteration.kind === "dartEnd" && isSameDart(alteration.dart, ref)) sum += alteration.across;
    if (alteration.kind === "dartPlace" && alteration.how === "redraw" && isSameDart(alteration.dart, ref))
      sum += alteration.by;
  }
  return sum;
}
