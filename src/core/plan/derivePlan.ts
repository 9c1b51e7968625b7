/** The one way from what the wearer decided to what follows from it. */
import type { CheckResult } from "../checks/check";
import { runChecks } from "../checks/index";
import type { Half } from "../decisions/alteration";
import type { Decided } from "../decisions/decided";
import type { PatternPieces } from "../nest/patternPieces";
import type { PieceName } from "../pattern/piece";
import { isSamePiece, piecesOf, setOf, type PieceSet } from "../pattern/pieceSet";
import { remember } from "../remember";
import { invariant, ok, type Result } from "../result";
import { styleOf } from "../style/index";
import { makeOnHalves, type AlterationsMade } from "./makeAlterations";
import { bustRadiusOf } from "./bustRadius";
import { listWork } from "./checklist";
import { alterationMoves } from "./cutLines";
import type { PlanFailure } from "./planFailure";
import { checksOfHalves, ledgerOfHalves, namedApart, workOfHalves } from "./halves";
import { pickSizes, type Picked, type PickedHalf } from "./pickSizes";
import { soundPieces } from "./printed";
import type { Plan, PlanGarment, PlanHalf } from "./plan";
import { planLevels } from "./planLevels";
import { readDarts } from "./readDarts";
import { onNeckline, withNecklines } from "./withNecklines";

/**
 * The whole plan that follows from a work. Pure: the same work gives the same plan.
 *
 * Sizes are picked and pieces cut by them; the wearer's alterations are made on both halves; what came of it is measured;
 * each half is told for itself; and both are held against the checks and put in the order of work, when that is asked.
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
  const { made, necklines } = withNecklines(work, makeOnHalves(work, picked));
  const garment = planGarment(work, picked, made.left, made.right);
  const halfOf = (half: Half): PlanHalf =>
    onNeckline(planHalf(work, picked, garment, made[half], half), necklines[half]);
  const ownLeft = halfOf("left");
  const [left, right] = namedApart(ownLeft, made.right === made.left ? ownLeft : halfOf("right"));
  const told: Told = { work, picked, left, right };
  return ok({
    ...garment,
    left,
    right,
    ledger: ledgerOfHalves(work, left, right),
    // Nobody reads them in the middle of a drag, nor of a plan that is only tried: made when they are read.
    get checks() {
      return checksOf({ told });
    },
    get checklist() {
      return checklistOf({ told });
    },
  });
}

/** What is told of a plan is told of its halves as they were made for a work. */
interface Told {
  readonly work: Decided;
  readonly picked: Picked;
  readonly left: PlanHalf;
  readonly right: PlanHalf;
}

const checksOf = remember(["told"], ({ told: { work, picked, left, right } }: { readonly told: Told }) => {
  const ofLeft = setOf(left.pieces);
  const halves = [ofLeft, right === left ? ofLeft : setOf(right.pieces)] as const;
  const of = (half: PlanHalf): readonly CheckResult[] => checksOn(work, picked, halves, half);
  return checksOfHalves(of(left), right === left ? null : of(right));
});

const checklistOf = remember(["told"], ({ told: { picked, left, right } }: { readonly told: Told }) => {
  const twice = unlike(left, right);
  return workOfHalves(
    jobsOn(picked.halves.left, left, twice),
    right === left ? null : jobsOn(picked.halves.right, right, twice),
  );
});

function planGarment(work: Decided, picked: Picked, left: AlterationsMade, right: AlterationsMade): PlanGarment {
  return {
    ...inCup(picked),
    levels: planLevels(picked, work.picks, work.pattern.chart.draftedDifference, [left, right]),
    isEaseMeasured: picked.isEaseMeasured,
    bustPiece: styleOf(work.pattern.style).bustPiece,
  };
}

/** What goes by the cup version: that of the garment, or of one half. */
function inCup({ sizing, drafted, nest, built }: PickedHalf) {
  const printed = invariant(nest.sizes[sizing.baseSize.index], "base size");
  return {
    sizing,
    drafted,
    nest,
    printed,
    blended: piecesOf(built.blended),
    wanted: built.wanted === null ? null : piecesOf(built.wanted),
    bustPoint: built.bustPoint,
  };
}

function planHalf(work: Decided, picked: Picked, garment: PlanGarment, made: AlterationsMade, half: Half): PlanHalf {
  const own = picked.halves[half];
  const { built, cutLines, levelled } = own;
  const { cup, bust } = own.sizing;
  const pieces = piecesOf(made.pieces);
  const inOwn = isOneCup(picked) ? garment : { ...garment, ...inCup(own) };
  return {
    ...inOwn,
    levelled,
    pieces,
    fitted: pieces,
    neckline: null,
    darts: readDarts(inOwn.printed, built, made, {
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

const isOneCup = ({ halves }: Picked): boolean => halves.left === halves.right;

const checksOn = (
  { pattern, dress }: Decided,
  { bust, bodyHip }: Picked,
  halves: readonly [PieceSet, PieceSet],
  half: PlanHalf,
) =>
  runChecks(
    {
      pieces: setOf(half.pieces),
      halves,
      levels: half.levels,
      darts: half.darts,
      alterations: half.alterations,
      closure: pattern.closure,
      body: { bust, hip: bodyHip ?? null },
    },
    // What hangs below the waist is then not the plan's: the checks of the dress read the opening with it.
    dress === undefined ? null : "openingPasses",
  );

const jobsOn = ({ built }: PickedHalf, half: PlanHalf, twice: ReadonlySet<PieceName>) =>
  listWork({ ...half, traced: built.cut, pieces: setOf(half.fitted), drawn: setOf(half.pieces), twice });

/** Pieces that are not the same on both halves, or on one alone. */
function unlike(left: PlanHalf, right: PlanHalf): ReadonlySet<PieceName> {
  if (left === right) return new Set();
  const sets = [setOf(left.pieces), setOf(right.pieces)] as const;
  const names = [...left.pieces, ...right.pieces].map(({ name }) => name);
  return new Set(names.filter((name) => !isSamePiece(sets[0][name], sets[1][name])));
}
