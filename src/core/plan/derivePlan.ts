/** The one way from what the wearer decided to what follows from it. */
import type { CheckResult } from "../checks/check";
import { runChecks } from "../checks/index";
import type { Half } from "../decisions/alteration";
import type { Decided } from "../decisions/work";
import type { PatternPieces } from "../nest/patternPieces";
import type { PieceName } from "../pattern/piece";
import { isSamePiece, piecesOf, setOf, type PieceSet } from "../pattern/pieceSet";
import { invariant, ok, type Result } from "../result";
import { styleOf } from "../style/index";
import { makeOnHalves, type AlterationsMade } from "./makeAlterations";
import { bustRadiusOf } from "./bustRadius";
import { listWork } from "./checklist";
import { alterationMoves } from "./cutLines";
import type { PlanFailure } from "./planFailure";
import { checksOfHalves, ledgerOfHalves, workOfHalves } from "./halves";
import { pickSizes, type Picked } from "./pickSizes";
import { soundPieces } from "./printed";
import type { Plan, PlanGarment, PlanHalf } from "./plan";
import { planLevels } from "./planLevels";
import { readDarts } from "./readDarts";

/**
 * The whole plan that follows from a work. Pure: the same work gives the same plan.
 *
 * Sizes are picked and pieces cut by them; the wearer's alterations are made on both halves; what came of it is measured;
 * each half is told for itself; and both are held against the checks and put in the order of work.
 */
export function derivePlan(work: Decided): Result<Plan, PlanFailure> {
  const pieces = soundPieces(work.pattern);
  return pieces.ok ? planOn(pieces.value, work) : pieces;
}

/** The plan of a work on given pieces of its pattern. */
export function planOn(pieces: PatternPieces, work: Decided): Result<Plan, PlanFailure> {
  const picks = pickSizes({ ...work, pieces });
  if (!picks.ok) return picks;
  const picked = picks.value;
  const made = makeOnHalves(work, picked);
  const garment = planGarment(work, picked, made.left, made.right);
  const left = planHalf(work, picked, garment, made.left, "left");
  const right = made.right === made.left ? left : planHalf(work, picked, garment, made.right, "right");
  const ofLeft = setOf(left.pieces);
  const halves = [ofLeft, right === left ? ofLeft : setOf(right.pieces)] as const;
  const checksOf = (half: PlanHalf): readonly CheckResult[] => checksOn(work, picked, halves, half);
  return ok({
    ...garment,
    left,
    right,
    ledger: ledgerOfHalves(work, left, right),
    checks: checksOfHalves(checksOf(left), right === left ? null : checksOf(right)),
    checklist: workOfHalves(jobsOn(picked, left, right), right === left ? null : jobsOn(picked, right, left)),
  });
}

function planGarment(work: Decided, picked: Picked, left: AlterationsMade, right: AlterationsMade): PlanGarment {
  const { sizing, nest, built, drafted, isEaseMeasured } = picked;
  return {
    sizing,
    levels: planLevels(picked, work.picks, work.pattern.chart.draftedDifference, [left, right]),
    drafted,
    isEaseMeasured,
    nest,
    printed: invariant(nest.sizes[sizing.baseSize.index], "base size"),
    blended: piecesOf(built.blended),
    wanted: built.wanted === null ? null : piecesOf(built.wanted),
    bustPiece: styleOf(work.pattern.style).bustPiece,
    bustPoint: built.bustPoint,
  };
}

function planHalf(
  work: Decided,
  { built, cutLines }: Picked,
  garment: PlanGarment,
  made: AlterationsMade,
  half: Half,
): PlanHalf {
  const { cup, bust } = garment.sizing;
  return {
    ...garment,
    pieces: piecesOf(made.pieces),
    darts: readDarts(garment.printed, built, made, {
      radius: bustRadiusOf(work),
      half,
      decided: work,
      cupDifference: cup.drafted + bust.alteration,
    }),
    cutLines: alterationMoves(cutLines, built.blended, made.pieces),
    alterations: made.alterations,
    truing: made.changes,
  };
}

const checksOn = (
  { pattern }: Decided,
  { bust, bodyHip }: Picked,
  halves: readonly [PieceSet, PieceSet],
  half: PlanHalf,
) =>
  runChecks({
    pieces: setOf(half.pieces),
    halves,
    levels: half.levels,
    darts: half.darts,
    alterations: half.alterations,
    closure: pattern.closure,
    body: { bust, hip: bodyHip ?? null },
  });

const jobsOn = ({ built }: Picked, half: PlanHalf, other: PlanHalf) =>
  listWork({ ...half, traced: built.cut, pieces: setOf(half.pieces), twice: unlike(half, other) });

/** Pieces that are not the same on both halves. */
const unlike = (half: PlanHalf, other: PlanHalf): ReadonlySet<PieceName> =>
  new Set(
    half === other
      ? []
      : half.pieces.flatMap((piece) => (isSamePiece(piece, setOf(other.pieces)[piece.name]) ? [] : [piece.name])),
  );
