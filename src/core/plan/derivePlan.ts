/** The one way from what the wearer decided to what follows from it. */
import type { SizeRow } from "../chart/sizeChart";
import { applyAlteration } from "../alterations/applyAlteration";
import { giveBackPlaces } from "../alterations/giveBack";
import { piecesOf, type PieceSet } from "../alterations/pieceSet";
import { levelSizes, neighbours } from "../blend/blendPiece";
import { runChecks } from "../checks/index";
import { dartCap } from "../dart/dartCap";
import { usualStop } from "../dart/dartEnd";
import { measureDart } from "../dart/measureDart";
import { BLOCK_DIFFERENCE, easeOfRow } from "../draft/draftMeasures";
import { levelWidth } from "../girth/levelWidth";
import { pointOf, type DartRef, type LevelName, type Nest, type Piece } from "../pattern/piece";
import { differenceOf, draftBlocks, printNest, type Blocks, type PrintedNest } from "../pattern/printedNest";
import { fail, must, ok, type Result } from "../result";
import { rankAlternatives } from "../sizing/alternatives";
import { pickBust, pickCup, pickFrame } from "../sizing/pickFrame";
import { normalBelow } from "../sizing/normal";
import { girthAt, solveLevel } from "../sizing/solveLevel";
import type { Sizing } from "../sizing/sizing";
import type { FullBustFailure } from "../surgery/fullBust";
import { BORDERLINE, EXTRAPOLATION_STEPS, FULLNESS_NOTICED, FULLNESS_RADIUS, TAPE_REPEATABILITY } from "../tolerance";
import { radians, type Mm } from "../units";
import { buildPieces, finishedHips, finishedWaists, type Built } from "./buildPieces";
import { chartFaults } from "./chartFaults";
import { listWork } from "./checklist";
import type { CutLine, Plan, PlanFailure, PlannedDart, PlannedLevel, Slip, SlipFailure } from "./plan";
import type { Ease, Pattern, Work } from "./work";

/** The printed pieces in all sizes, in the cup version picked (or the drafted one): shown even before there is a plan. */
export function derivePrintedNest(work: Work): Result<Nest, PlanFailure> {
  const faults = chartFaults(work.pattern.chart);
  if (faults > 0) return fail({ code: "plan/chart-unusable", faults });
  const { bustGirth, upperChestGirth } = work.measures;
  const difference = bustGirth === undefined || upperChestGirth === undefined ? null : bustGirth - upperChestGirth;
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
  /** Finished girth of each size with the frame's darts; hips null where the pattern ends at the waist. */
  readonly waists: readonly Mm[];
  readonly waist: number;
  readonly hips: readonly Mm[] | null;
  readonly hip: number | null;
}

/** The picks and the pieces cut by them: all that comes before the wearer's own slips. */
function derivePicked(work: Work): Result<Picked, PlanFailure> {
  const { pattern, picks, measures } = work;
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

  const difference = upperChestGirth === undefined ? null : bustGirth - upperChestGirth;
  const frame = pickFrame(chart, bustGirth, upperChestGirth, picks);
  if (!frame.ok) return frame;
  const cup = pickCup(chart, difference, picks);
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
  const hip = hips === null || hipGirth === undefined ? null : pickLevel("hip", hips, hipGirth + ease.hip, f, picks.hip);
  if (hip !== null && !hip.ok) return hip;

  const at = levelSizes(f, waist.value, hip === null ? waist.value : hip.value);
  const built = buildPieces({
    blocks,
    at,
    cupDifference: cup.value.drafted,
    alteration: bust.alteration,
    residual: bust.residual,
    measures,
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
    cutLines: drawCutLines(nest, blocks, cup.value.drafted, built.value, at),
    row,
    drafted,
    ease,
    body: { bust: bustGirth, waist: waistGirth, hip: hipGirth },
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
  const { sizing, nest, built, cutLines, row, drafted, ease, body, waists, waist, hips, hip } = picked.value;
  const { pattern, picks } = work;
  const { chart } = pattern;
  const { frame, cup, bust } = sizing;
  const f = frame.index;
  const applied = applySlips(work, built, cutLines, bust.alteration);
  const moved = cutLines.map((line) => ({
    ...line,
    slipMove: lineAt(applied.pieces, line).x - lineAt(built.blended, line).x,
  }));
  const bustLoss = sum(
    applied.slips.map(({ what, outcome }) =>
      outcome.ok && what.kind === "alteration" && what.alteration.kind === "dartPlace" && what.alteration.how === "offCentreSeam"
        ? 2 * what.alteration.by
        : 0,
    ),
  );
  const made = built.bust !== null && built.bust.ok ? bust.alteration : 0;
  const finishedAt = (level: LevelName): Mm =>
    2 * sum(piecesOf(applied.pieces).map((piece) => (level === "waist" && isBasque(piece) ? 0 : (levelWidth(piece, level) ?? 0))));
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
      claim: patternBust + made - bustLoss,
      finished: finishedAt("bust"),
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
      claim: picks.waist === undefined ? body.waist + ease.waist : girthAt(waists, waist),
      finished: finishedAt("waist"),
      ...lineMargin(waists, body.waist + ease.waist),
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
      claim: picks.hip === undefined ? body.hip + ease.hip : girthAt(hips, hip),
      finished: finishedAt("hip"),
      ...lineMargin(hips, body.hip + ease.hip),
    });
  }

  const darts = readDarts(work, must(nest.sizes[f], "frame"), built, applied);
  const pieces = piecesOf(applied.pieces);
  return ok({
    sizing,
    levels,
    nest,
    printed: must(nest.sizes[f], "frame"),
    blended: piecesOf(built.blended),
    pieces,
    bustPoint: built.bustPoint,
    darts,
    cutLines: moved,
    slips: applied.slips,
    checks: runChecks({
      pieces: applied.pieces,
      levels,
      darts,
      slips: applied.slips,
      closure: pattern.closure,
      body: { bust: body.bust, hip: body.hip ?? null },
    }),
    checklist: listWork({ pieces, sizing, cutLines: moved, darts, slips: applied.slips }),
  });
}

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
const lastPicked = new WeakMap<Pattern, Pick<Work, "measures" | "picks" | "easeWanted"> & { readonly result: ReturnType<typeof derivePicked> }>();

function pickedOf(work: Work): ReturnType<typeof derivePicked> {
  const { pattern, measures, picks, easeWanted } = work;
  const known = lastPicked.get(pattern);
  if (known !== undefined && known.measures === measures && known.picks === picks && known.easeWanted === easeWanted) {
    return known.result;
  }
  const result = derivePicked(work);
  lastPicked.set(pattern, { measures, picks, easeWanted, result });
  return result;
}

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
  if (own !== undefined) return isReached(own, finished.length) ? ok(own) : fail({ code: "plan/outside-chart", level, ...girthsAbout(finished, own) });
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

const isBasque = (piece: Piece): boolean => piece.name === "frontBasque" || piece.name === "backBasque";

const isOutside = (size: number, count: number): boolean => size < 0 || size > count - 1;

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

/** How near a target is to the next printed line, and how likely a tape would have put it on that line's other side. */
function lineMargin(finished: readonly Mm[], target: Mm) {
  const margin = Math.min(...finished.map((girth) => Math.abs(girth - target)));
  const probability = normalBelow(-margin / TAPE_REPEATABILITY);
  return { margin, probability, borderline: probability > BORDERLINE };
}

const printedWaists = (blocks: Blocks): readonly Mm[] =>
  blocks.front.map(
    (front, size) =>
      2 * (must(levelWidth(front, "waist"), "waist") + must(levelWidth(must(blocks.back[size], "size"), "waist"), "waist")),
  );

function lines(nest: Nest, size: number): { between: readonly [string, string]; share: number } {
  const { lower, share } = neighbours(size, nest.labels.length);
  return { between: [must(nest.labels[lower], "size"), must(nest.labels[lower + 1], "size")], share };
}

const CUT_LINES: readonly Pick<CutLine, "piece" | "level">[] = [
  { piece: "front", level: "waist" },
  { piece: "back", level: "waist" },
  { piece: "frontBasque", level: "waist" },
  { piece: "frontBasque", level: "hip" },
  { piece: "backBasque", level: "waist" },
  { piece: "backBasque", level: "hip" },
];

const lineAt = (pieces: PieceSet, { piece, level }: Pick<CutLine, "piece" | "level">) =>
  pointOf(must(pieces[piece], piece), level === "hip" ? "sideHip" : "sideWaist");

function drawCutLines(
  nest: Nest,
  blocks: Blocks,
  cupDifference: Mm,
  { cut, blended }: Built,
  at: ReturnType<typeof levelSizes>,
): CutLine[] {
  return CUT_LINES.filter(({ piece }) => cut[piece] !== undefined).map((line) => {
    const { between, share } = lines(nest, at[line.level]);
    const { lower } = neighbours(at[line.level], nest.labels.length);
    // A cup version slides the whole lower side of the front out by its spread, in every size alike.
    const cupSpread = line.piece === "front" ? (cupDifference - BLOCK_DIFFERENCE) / 2 : 0;
    const printed = lineAt({ [line.piece]: must(blocks[line.piece][lower], line.piece) }, line).x + cupSpread;
    return {
      ...line,
      between,
      share,
      offset: lineAt(cut, line).x - printed,
      slipMove: 0,
      at: lineAt(blended, line),
    };
  });
}

interface SlipsApplied {
  readonly pieces: PieceSet;
  readonly slips: readonly Slip[];
  /** What truing moved, by dart. */
  readonly truing: ReadonlyMap<string, { readonly inner: Mm; readonly outer: Mm }>;
}

const keyOf = ({ piece, dart }: DartRef): string => `${piece}.${dart}`;

function applySlips(work: Work, built: Built, cutLines: readonly CutLine[], alteration: Mm): SlipsApplied {
  const slips: Slip[] = [];
  if (built.bust !== null) slips.push(bustSlip(built, alteration));
  let pieces = built.blended;
  const truing = new Map<string, { inner: Mm; outer: Mm }>();
  for (const wish of work.alterations) {
    const done = applyAlteration(pieces, wish);
    slips.push({
      id: wish.id,
      source: "wearer",
      piece: wish.dart.piece,
      what: { kind: "alteration", alteration: wish },
      outcome: done.ok ? ok(done.value.trace) : done,
    });
    if (!done.ok) continue;
    pieces = done.value.pieces;
    const before = truing.get(keyOf(wish.dart)) ?? { inner: 0, outer: 0 };
    truing.set(keyOf(wish.dart), {
      inner: before.inner + done.value.truing.inner,
      outer: before.outer + done.value.truing.outer,
    });
  }
  return { pieces, truing, slips: [...slips, ...cutLines.map((line) => blendSlip(line, built))] };
}

function blendSlip(cutLine: CutLine, built: Built): Slip {
  const to = lineAt(built.cut, cutLine);
  return {
    id: `blend-${cutLine.piece}-${cutLine.level}`,
    source: "blend",
    piece: cutLine.piece,
    what: { kind: "blend", level: cutLine.level === "hip" ? "hip" : "waist", cutLine },
    outcome: ok({ ...NOTHING_MOVED, piece: cutLine.piece, moved: [{ piece: cutLine.piece, from: to, to: cutLine.at }] }),
  };
}

const NOTHING_MOVED = { moved: [], seam: null, seamBefore: 0, seamUngiven: 0, seamAfter: 0, given: [], notes: [] };

function bustSlip({ bust, cut, blended }: Built, amount: Mm): Slip {
  const outcome = must(bust, "bust alteration");
  const base = { id: "bust", source: "bust", piece: "front" } as const;
  if (!outcome.ok) {
    const failure: SlipFailure = { code: "slip/bust-reduction-too-large", most: 2 * outcome.failure.most };
    return {
      ...base,
      what: { kind: "bust", amount, spread: amount / 2, drop: 0, turn: radians(0) },
      outcome: fail(failure),
    };
  }
  const { turn, drop, smoothed } = outcome.value;
  const from = pointOf(must(cut.front, "front"), "bustPoint");
  const to = pointOf(must(blended.front, "front"), "bustPoint");
  return {
    ...base,
    what: { kind: "bust", amount, spread: amount / 2, drop, turn },
    outcome: ok({
      ...NOTHING_MOVED,
      piece: "front",
      moved: [{ piece: "front", from, to }],
      notes: [
        { code: "centreLengthened", amount: drop },
        { code: "armholeSmoothed", turned: smoothed },
      ],
    }),
  };
}

function readDarts(work: Work, printed: readonly Piece[], built: Built, applied: SlipsApplied): PlannedDart[] {
  const { bustRadius = FULLNESS_RADIUS } = work;
  // A file can hold a radius that is none.
  const radius = bustRadius > 0 ? bustRadius : FULLNESS_RADIUS;
  const judged = built.bustPoint.own ?? built.bustPoint.printed;
  return piecesOf(applied.pieces).flatMap((piece) =>
    piece.darts.map((dart): PlannedDart => {
      const bustPoint = dart.aimsAt === null ? null : judged;
      const source = must(
        printed.find((p) => p.name === piece.name),
        piece.name,
      );
      const drawn = measureDart(piece, dart.name, bustPoint, radius);
      const asPrinted = measureDart(source, dart.name, bustPoint, radius);
      const wanted =
        dart.aimsAt === null || built.wanted === null ? null : measureDart(built.wanted, dart.name, bustPoint, radius);
      const fuller = drawn.fullness - (wanted ?? asPrinted).fullness;
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

