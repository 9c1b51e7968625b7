/** The one way from what the wearer decided to what follows from it. */
import type { Ease, Pattern } from "../decisions/pattern";
import type { PlanFailure } from "./failure";
import type { SizeRow } from "../chart/sizeChart";
import { giveBackPlaces } from "../alterations/redraw/giveBack";
import { piecesOf } from "../pattern/pieceSet";
import { levelSizes } from "../blend/blendPiece";
import { runChecks } from "../checks/index";
import { dartCap } from "../dart/dartCap";
import { usualStop } from "../dart/dartEnd";
import { measureDart } from "../dart/measureDart";
import { easeOfRow } from "../draft/draftMeasures";
import { levelWidth } from "../girth/levelWidth";
import { type DartRef, type LevelName, type Nest, type Piece } from "../pattern/piece";
import { isBasque } from "../pattern/pieceGroups";
import { differenceOf, draftBlocks, printNest, type Blocks, type PrintedNest } from "../nest/printedNest";
import { bodyOf, measuresOf } from "../measures/tape";
import { fail, must, ok, type Result } from "../result";
import { rankAlternatives } from "../sizing/alternatives";
import { differenceTaken, pickBust, pickCup, pickFrame } from "../sizing/pickFrame";
import { normalBelow } from "../statistics/normal";
import { girthAt, solveLevel } from "../sizing/solveLevel";
import type { Sizing } from "../sizing/sizing";
import { styleOf } from "../style/index";
import type { FullBustFailure } from "../surgery/fullBust";
import { BORDERLINE, EXTRAPOLATION_STEPS, FULLNESS_NOTICED, FULLNESS_RADIUS } from "../tolerance";
import { type Mm } from "../units";
import { buildPieces, finishedHips, finishedWaists, type Built } from "./buildPieces";
import { applySlips, applyToHalves, keyOf, type SlipsApplied } from "./applySlips";
import { chartFaults } from "../chart/chartFaults";
import { drawCutLines, lineAt, lines } from "./cutLines";
import { listWork } from "./checklist";
import { checksOfHalves, slipsOfHalves, workOfHalves } from "./halves";
import type { CutLine, Plan, PlanHalf, PlannedDart, PlannedLevel } from "./plan";
import { type Work } from "../decisions/work";

/** The printed pieces in all sizes, in the cup version picked (or the drafted one): shown even before there is a plan. */
export function derivePrintedNest(work: Work): Result<Nest, PlanFailure> {
  const faults = chartFaults(work.pattern.chart);
  if (faults > 0) return fail({ code: "plan/chart-unusable", faults });
  const { bustGirth, upperChestGirth } = bodyOf(work.tapes);
  const difference = bustGirth === undefined ? null : differenceTaken(bustGirth, upperChestGirth);
  const cup = pickCup(work.pattern.chart, difference, work.picks);
  return cup.ok ? ok(printedFor(work.pattern, cup.value.label).nest) : cup;
}

interface Picked {
  readonly sizing: Sizing;
  readonly nest: Nest;
  readonly built: Built;
  readonly cutLines: readonly CutLine[];
  readonly row: SizeRow;
  readonly drafted: Ease;
  readonly ease: Ease;
  readonly body: { readonly bust: Mm; readonly waist: Mm; readonly hip: Mm | undefined };
  /** One standard deviation of each girth that a line stands on; 0 where it was not taken. */
  readonly spread: { readonly waist: Mm; readonly hip: Mm };
  /** Finished girth of each size with the frame's darts; hips null where the pattern ends at the waist. */
  readonly waists: readonly Mm[];
  readonly waist: number;
  readonly hips: readonly Mm[] | null;
  readonly hip: number | null;
}

/** The picks and the pieces cut by them: all that comes before the wearer's own slips. */
function derivePicked(work: Work): Result<Picked, PlanFailure> {
  const { pattern, picks } = work;
  const measures = measuresOf(work.tapes);
  const taken = bodyOf(work.tapes);
  const { chart } = pattern;
  const faults = chartFaults(chart);
  if (faults > 0) return fail({ code: "plan/chart-unusable", faults });
  const { bustGirth, waistGirth, hipGirth, upperChestGirth } = measures;
  const toHip = pattern.length === "hip";
  if (bustGirth === undefined || waistGirth === undefined || (toHip && hipGirth === undefined)) {
    const missing = (["bustGirth", "waistGirth", ...(toHip ? (["hipGirth"] as const) : [])] as const).filter(
      (name) => measures[name] === undefined,
    );
    return fail({ code: "plan/measure-missing", measures: missing });
  }

  const bustTaken = must(taken.bustGirth, "bust");
  const frame = pickFrame(chart, bustTaken, taken.upperChestGirth, picks);
  if (!frame.ok) return frame;
  const cup = pickCup(chart, differenceTaken(bustTaken, taken.upperChestGirth), picks);
  if (!cup.ok) return cup;
  const bust = pickBust(chart, bustGirth, cup.value, frame.value, picks);

  const blocks = blocksOf(pattern);
  const { nest, refused } = printedFor(pattern, cup.value.label);
  // Another size that cannot be made in this cup is no matter: its front is just not printed.
  const cannot = refused.get(frame.value.index);
  if (cannot !== undefined) return undraftable(cup.value.label, cannot);
  const f = frame.value.index;
  const row = must(chart.sizes[f], "frame row");
  const drafted = easeOfRow(row, pattern.ease);
  const ease: Ease = { ...drafted, ...work.easeWanted };

  const waists = finishedWaists(blocks, f);
  const waist = pickLevel("waist", waists, waistGirth + ease.waist, f, picks.waist);
  if (!waist.ok) return waist;
  const hips = finishedHips(blocks);
  const hip =
    hips === null || hipGirth === undefined ? null : pickLevel("hip", hips, hipGirth + ease.hip, f, picks.hip);
  if (hip !== null && !hip.ok) return hip;

  const at = levelSizes(f, waist.value, hip === null ? waist.value : hip.value);
  const built = buildPieces({
    blocks,
    style: styleOf(pattern.style),
    options: { strap: pattern.strap },
    at,
    cupDifference: cup.value.drafted,
    alteration: bust.alteration,
    residual: bust.residual,
    body: taken,
    age: work.age,
  });
  if (!built.ok) return undraftable(cup.value.label, built.failure);

  const sizing = {
    frame: frame.value,
    cup: cup.value,
    bust,
    alternatives: rankAlternatives({
      chart,
      bust: bustGirth,
      upperChest: upperChestGirth ?? null,
      finished: { waist: printedWaists(blocks), hip: hips },
      waistTarget: waistGirth + ease.waist,
      hipTarget: hips === null || hipGirth === undefined ? null : hipGirth + ease.hip,
      picked: { frame: frame.value, cup: cup.value.label },
    }),
  };
  return ok({
    sizing,
    nest,
    built: built.value,
    cutLines: drawCutLines(nest, built.value, at),
    row,
    drafted,
    ease,
    body: { bust: bustGirth, waist: waistGirth, hip: hipGirth },
    spread: { waist: taken.waistGirth?.spread ?? 0, hip: taken.hipGirth?.spread ?? 0 },
    waists,
    waist: waist.value,
    hips,
    hip: hip === null ? null : hip.value,
  });
}

/** The whole plan that follows from a work. Pure: the same work gives the same plan. */
export function derivePlan(work: Work): Result<Plan, PlanFailure> {
  const picked = pickedOf(work);
  if (!picked.ok) return picked;
  const { sizing, nest, built, cutLines, row, drafted, ease, body, spread, waists, waist, hips, hip } = picked.value;
  const { pattern, picks } = work;
  const { chart } = pattern;
  const { frame, cup, bust } = sizing;
  const f = frame.index;
  const uneven = work.alterations.some((a) => a.kind === "fit" && a.half !== undefined);
  const both = uneven ? applyToHalves(work, built, cutLines, bust.alteration) : null;
  const applied = both === null ? applySlips(work, built, cutLines, bust.alteration, null) : both.left;
  const other = both === null ? null : both.right;
  const halves = [applied, other ?? applied];
  const movedBy = ({ pieces: after }: SlipsApplied): CutLine[] =>
    cutLines.map((line) => ({ ...line, slipMove: lineAt(after, line).x - lineAt(built.blended, line).x }));
  const moved = movedBy(applied);
  // Each half brings half of what its slips change a whole girth by.
  const changeAt = (level: "bust" | "waist" | "hip"): Mm => sum(halves.map(({ girths }) => (girths[level] ?? 0) / 2));
  const made = built.bust !== null && built.bust.ok ? bust.alteration : 0;
  const finishedAt = (level: LevelName): Mm =>
    sum(
      halves.flatMap(({ pieces }) =>
        piecesOf(pieces).map((piece) =>
          level === "waist" && isBasque(piece.name) ? 0 : (levelWidth(piece, level) ?? 0),
        ),
      ),
    );
  const patternBust = row.bust - chart.draftedDifference + cup.drafted + drafted.bust;
  const levels: PlannedLevel[] = [
    {
      level: "bust",
      ...lines(nest, f),
      size: f,
      extrapolated: false,
      body: body.bust,
      ease: ease.bust,
      target: body.bust + ease.bust,
      claim: patternBust + made + changeAt("bust"),
      finished: finishedAt("bust"),
      spread: frame.spread,
      margin: frame.margin,
      probability: frame.probability,
      borderline: frame.borderline,
    },
    {
      level: "waist",
      ...lines(nest, waist),
      size: waist,
      extrapolated: isOutside(waist, waists.length),
      body: body.waist,
      ease: ease.waist,
      target: body.waist + ease.waist,
      claim: (picks.waist === undefined ? body.waist + ease.waist : girthAt(waists, waist)) + changeAt("waist"),
      finished: finishedAt("waist"),
      ...lineMargin(waists, body.waist + ease.waist, spread.waist),
    },
  ];
  if (hip !== null && hips !== null && body.hip !== undefined) {
    levels.push({
      level: "hip",
      ...lines(nest, hip),
      size: hip,
      extrapolated: isOutside(hip, hips.length),
      body: body.hip,
      ease: ease.hip,
      target: body.hip + ease.hip,
      claim: (picks.hip === undefined ? body.hip + ease.hip : girthAt(hips, hip)) + changeAt("hip"),
      finished: finishedAt("hip"),
      ...lineMargin(hips, body.hip + ease.hip, spread.hip),
    });
  }

  const darts = readDarts(work, must(nest.sizes[f], "frame"), built, applied);
  const pieces = piecesOf(applied.pieces);
  const right = other === null ? null : halfOf(work, must(nest.sizes[f], "frame"), built, other, movedBy(other));
  const slips = other === null ? applied.slips : slipsOfHalves(work, applied, other);
  const checked = (half: SlipsApplied, own: readonly PlannedDart[], at: readonly PlannedLevel[]) =>
    runChecks({
      pieces: half.pieces,
      levels: at,
      darts: own,
      slips: half.slips,
      closure: pattern.closure,
      body: { bust: body.bust, hip: body.hip ?? null },
    });
  const worked = (half: SlipsApplied, own: readonly PlannedDart[], at: readonly CutLine[]) =>
    listWork({
      traced: built.cut,
      pieces: half.pieces,
      sizing,
      cutLines: at,
      darts: own,
      slips: half.slips,
      truing: half.changes,
    });
  return ok({
    sizing,
    levels,
    nest,
    printed: must(nest.sizes[f], "frame"),
    blended: piecesOf(built.blended),
    pieces,
    wanted: built.wanted === null ? null : piecesOf(built.wanted),
    right,
    truing: applied.changes,
    bustPiece: styleOf(pattern.style).bustPiece,
    bustPoint: built.bustPoint,
    darts,
    cutLines: moved,
    slips,
    checks:
      other === null || right === null
        ? checked(applied, darts, levels)
        : checksOfHalves(checked(applied, darts, levels), checked(other, right.darts, [])),
    checklist:
      other === null || right === null
        ? worked(applied, darts, moved)
        : workOfHalves(worked(applied, darts, moved), worked(other, right.darts, right.cutLines)),
  });
}

const halfOf = (
  work: Work,
  printed: readonly Piece[],
  built: Built,
  applied: SlipsApplied,
  cutLines: readonly CutLine[],
): PlanHalf => ({
  pieces: piecesOf(applied.pieces),
  darts: readDarts(work, printed, built, applied),
  slips: applied.slips,
  truing: applied.changes,
  cutLines,
});

/** Drafts are kept with the very pattern they were made from, so that a drag does not draft the nest again. */
const drafts = new WeakMap<Pattern, { readonly blocks: Blocks; readonly nests: Map<string, PrintedNest> }>();

function draftsOf(pattern: Pattern) {
  const known = drafts.get(pattern);
  if (known !== undefined) return known;
  const made = { blocks: draftBlocks(pattern), nests: new Map<string, PrintedNest>() };
  drafts.set(pattern, made);
  return made;
}

/** The last picks of each pattern, so that a drag, which changes slips alone, picks and cuts nothing again. */
const lastPicked = new WeakMap<
  Pattern,
  Pick<Work, "tapes" | "age" | "picks" | "easeWanted"> & { readonly result: ReturnType<typeof derivePicked> }
>();

function pickedOf(work: Work): ReturnType<typeof derivePicked> {
  const { pattern, tapes, age, picks, easeWanted } = work;
  const known = lastPicked.get(pattern);
  if (
    known !== undefined &&
    known.tapes === tapes &&
    known.age === age &&
    known.picks === picks &&
    known.easeWanted === easeWanted
  ) {
    return known.result;
  }
  const result = derivePicked(work);
  lastPicked.set(pattern, { tapes, ...(age === undefined ? {} : { age }), picks, easeWanted, result });
  return result;
}

/** Finished waists and hips of the printed sizes on the planner's own frame: what the lines at those levels run between. */
export const printedGirths = (
  pattern: Pattern,
  frame: number,
): { readonly waist: readonly Mm[]; readonly hip: readonly Mm[] | null } => ({
  waist: finishedWaists(blocksOf(pattern), frame),
  hip: finishedHips(blocksOf(pattern)),
});

const blocksOf = (pattern: Pattern): Blocks => draftsOf(pattern).blocks;

function printedFor(pattern: Pattern, cup: string | null): PrintedNest {
  const { blocks, nests } = draftsOf(pattern);
  const key = cup ?? "";
  const known = nests.get(key);
  if (known !== undefined) return known;
  const printed = printNest(pattern, blocks, differenceOf(pattern, cup));
  nests.set(key, printed);
  return printed;
}

function undraftable(cup: string | null, { most }: FullBustFailure): Result<never, PlanFailure> {
  return fail({ code: "plan/cup-undraftable", label: cup ?? "", least: 2 * most });
}

function pickLevel(
  level: "waist" | "hip",
  finished: readonly Mm[],
  target: Mm,
  frame: number,
  own: number | undefined,
): Result<number, PlanFailure> {
  if (own !== undefined)
    return isReached(own, finished.length)
      ? ok(own)
      : fail({ code: "plan/outside-chart", level, ...girthsAbout(finished, own) });
  const solved = solveLevel(finished, target, frame);
  return solved.ok ? solved : fail({ code: "plan/outside-chart", level, wanted: target, ...solved.failure });
}

const isReached = (size: number, count: number): boolean =>
  size >= -EXTRAPOLATION_STEPS && size <= count - 1 + EXTRAPOLATION_STEPS;

/** What a pick out of reach would give, and what can be reached. */
function girthsAbout(finished: readonly Mm[], size: number) {
  const reach = [girthAt(finished, -EXTRAPOLATION_STEPS), girthAt(finished, finished.length - 1 + EXTRAPOLATION_STEPS)];
  return { wanted: girthAt(finished, size), least: Math.min(...reach), most: Math.max(...reach) };
}

const isOutside = (size: number, count: number): boolean => size < 0 || size > count - 1;

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

/** How near a target is to the next printed line, and how likely a tape would have put it on that line's other side. */
function lineMargin(finished: readonly Mm[], target: Mm, spread: Mm) {
  const margin = Math.min(...finished.map((girth) => Math.abs(girth - target)));
  const probability = normalBelow(-margin / spread);
  return { spread, margin, probability, borderline: probability > BORDERLINE };
}

const printedWaists = (blocks: Blocks): readonly Mm[] =>
  blocks.front.map(
    (front, size) =>
      2 *
      (must(levelWidth(front, "waist"), "waist") + must(levelWidth(must(blocks.back[size], "size"), "waist"), "waist")),
  );

function readDarts(work: Work, printed: readonly Piece[], built: Built, applied: SlipsApplied): PlannedDart[] {
  const { bustRadius = FULLNESS_RADIUS } = work;
  // A file can hold a radius that is none.
  const radius = bustRadius > 0 ? bustRadius : FULLNESS_RADIUS;
  const judged = built.bustPoint.own ?? built.bustPoint.printed;
  return piecesOf(applied.pieces).flatMap((piece) =>
    piece.darts.map((dart): PlannedDart => {
      const bustPoint = dart.aimsAt === null ? null : judged;
      const has = (of: Piece | undefined): of is Piece =>
        of !== undefined && of.darts.some((d) => d.name === dart.name);
      const source = printed.find((p) => p.name === piece.name);
      const asked = built.wanted?.[piece.name];
      const drawn = measureDart(piece, dart.name, bustPoint, radius);
      const asPrinted = has(source) ? measureDart(source, dart.name, bustPoint, radius) : null;
      const wanted = dart.aimsAt === null || !has(asked) ? null : measureDart(asked, dart.name, bustPoint, radius);
      const fuller = drawn.fullness - (wanted ?? asPrinted ?? drawn).fullness;
      const ref: DartRef = { piece: piece.name, dart: dart.name };
      return {
        ref,
        printed: asPrinted,
        wanted,
        drawn,
        verdict:
          wanted === null || Math.abs(fuller) <= FULLNESS_NOTICED ? "asWanted" : fuller > 0 ? "tooSharp" : "tooFlat",
        beyondBustPoint: drawn.apexToBustPoint !== null && drawn.apexToBustPoint < 0,
        usualStop: dart.aimsAt === null ? null : usualStop(dart.name),
        truing: applied.truing.get(keyOf(ref)) ?? { inner: 0, outer: 0 },
        cap: dartCap(piece, dart.name),
        giveBackPlaces: giveBackPlaces(applied.pieces, ref),
      };
    }),
  );
}
