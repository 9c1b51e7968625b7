/**
 * A wedge closed at an edge of a piece: folded out from an amount at the edge to nothing at the bust point, its angle
 * goes into a dart or a seam that comes to the bust point. The part between the two turns rigidly; then the edge is drawn
 * smooth again.
 */
import {
  edgeLength,
  edgeLengthBetween,
  edgeNearest,
  edgePointAt,
  lineEdge,
  type EdgeCurve,
} from "../geometry/edgeCurve";
import { halve, zeroBetween, type Looked } from "../geometry/iterate";
import { isInOutline } from "../geometry/outline";
import { directionOf, distance, midpoint, polar, turnBetween, type PiecePoint } from "../geometry/point";
import { rigidMotion, type Rigid } from "../geometry/rigid";
import { moveMouthEnd } from "../dart/mouthEnd";
import { trueLegs } from "../dart/trueLegs";
import { trueSeamAtDart } from "../dart/trueSeam";
import { trueSeamEvenly } from "../dart/trueSeamEvenly";
import { seamLength } from "../girth/seamLength";
import {
  dartOf,
  isBend,
  pointNames,
  pointOf,
  type DartName,
  type Edge,
  type Piece,
  type PointName,
  type SeamName,
} from "../pattern/piece";
import { fail, invariant, ok, type Result } from "../result";
import { PARAMETER_ACCURACY, SAME_POINT, SOLVER_ACCURACY, TRUING_ACCURACY, WALKED_AGREEMENT } from "../tolerance";
import { radians, radiansFromDegrees, type Mm, type Radians } from "../units";
import { cutAndMove, partAt, type Operated, type Part, type SurgeryTrace } from "./cutAndMove";
import { controlsOf, fitHandles } from "./fitHandles";
import { curveOf, edgeFrom, edgeTo, insertPoint, mouthMiddle, pointsBetween } from "../pattern/ring";
import {
  placeAlong,
  smoothStretchAt,
  stretchLength,
  withEndCarried,
  type RingPlace,
  type Stretch,
} from "../pattern/seamStretch";
import { smoothedAt } from "./straightThrough";
import { withSeamEnd } from "./walkAgain";

/** A wider dart could not be sewn smooth (our own choice, as at the cup). */
const WIDEST_DART = radiansFromDegrees(75);

interface Wedge {
  /** The edge run it is closed at, and how wide it is there. */
  readonly seam: SeamName;
  readonly amount: Mm;
  /** What it comes to nothing at, and what is turned about. */
  readonly point: PiecePoint;
}

export interface WedgeClosed {
  readonly piece: Piece;
  readonly trace: SurgeryTrace;
  /** By how much the part turned: what the dart or the seam opens by; never negative. */
  readonly turn: Radians;
}

interface WedgeInDart extends WedgeClosed {
  readonly dart: DartName;
}

/** `no-dart`: nothing comes to the bust point that could take the wedge. `most`: the nearest amount that works. */
export type WedgeFailure = { readonly code: "wedge/no-dart" } | { readonly code: "wedge/too-much"; readonly most: Mm };

/**
 * The angle of a wedge.
 *
 * @source the two legs of a wedge are radii R; the chord between their ends is 2 R sin(angle / 2)
 */
const wedgeAngle = (amount: Mm, radius: Mm): Radians =>
  radians(2 * Math.asin(Math.min(1, Math.abs(amount) / (2 * radius))));

/** Where the wedge is folded: a corner put into the edge there. */
interface Fold {
  readonly piece: Piece;
  readonly corner: PointName;
}

/** An edge is folded no nearer its ends than this share of it; and only one of some length, and so many folds long. */
const FROM_ENDS = 0.15;
const SHORTEST_FOLDED: Mm = 40;
const FOLDS_LONG = 3;

/**
 * Folded where the seam comes nearest the point: there the wedge's legs are equally long and square to the edge, so that
 * just its width goes out of the edge and no step is left in it.
 */
function foldAt(piece: Piece, { seam, amount, point }: Wedge): Fold | null {
  const places = piece.edges.flatMap((edge, index) => {
    const stretch = smoothStretchAt(piece, index);
    if (
      edge.seam !== seam ||
      edge.mouthOf !== null ||
      stretch[0] !== index ||
      stretchLength(piece, stretch) < Math.max(SHORTEST_FOLDED, FOLDS_LONG * amount)
    )
      return [];
    const place = nearestOn(piece, stretch, point);
    const curve = curveOf(piece, invariant(piece.edges[place.index], "edge"));
    return [{ ...place, away: distance(edgePointAt(curve, place.t), point) }];
  });
  const nearest = places.toSorted((p, q) => p.away - q.away)[0];
  return nearest === undefined
    ? null
    : { piece: insertPoint(piece, nearest.index, nearest.t, "cut1", "bust"), corner: "cut1" };
}

/** The place of a stretch nearest to a point, not too near its ends. */
function nearestOn(piece: Piece, stretch: Stretch, point: PiecePoint): RingPlace {
  const [only] = stretch;
  if (stretch.length === 1 && only !== undefined) {
    const { t } = edgeNearest(curveOf(piece, invariant(piece.edges[only], "edge")), point);
    return { index: only, t: Math.min(1 - FROM_ENDS, Math.max(FROM_ENDS, t)) };
  }
  let best = { away: Infinity, along: 0 };
  let gone = 0;
  for (const index of stretch) {
    const curve = curveOf(piece, invariant(piece.edges[index], "edge"));
    const { t, distance: away } = edgeNearest(curve, point);
    if (away < best.away) best = { away, along: gone + edgeLengthBetween(curve, 0, t) };
    gone += edgeLength(curve);
  }
  return placeAlong(piece, stretch, Math.min((1 - FROM_ENDS) * gone, Math.max(FROM_ENDS * gone, best.along)));
}

const lengthOf = (piece: Piece, index: number): Mm => edgeLength(curveOf(piece, invariant(piece.edges[index], "edge")));

/** Where the part that turns ends: at a dart's mouth, met going on round the outline from the fold or going back. */
interface Way {
  readonly dart: DartName;
  readonly end: PointName;
  readonly onward: boolean;
  readonly length: Mm;
}

/** The ways to a bust dart that leave the centre line where it is; else those that do not. */
function waysFrom(piece: Piece, fold: PointName): Way[] {
  return [true, false].flatMap((onward): Way[] => {
    const found: Way[] = [];
    const count = piece.edges.length;
    let index = onward ? edgeFrom(piece, fold) : edgeTo(piece, fold);
    let length = 0;
    for (let step = 0; step < count; step += 1) {
      const edge = invariant(piece.edges[index], "edge");
      if (edge.seam === "centre" && edge.mouthOf === null) return found;
      const dart = piece.darts.find(({ name }) => name === edge.mouthOf);
      if (dart !== undefined && dart.aimsAt !== null) {
        found.push({ dart: dart.name, end: onward ? edge.from : edge.to, onward, length });
        return found;
      }
      length += lengthOf(piece, index);
      index = (index + (onward ? 1 : count - 1)) % count;
    }
    return found;
  });
}

/**
 * Closes a wedge into the nearest dart that serves the bust point.
 *
 * @param piece any piece with a run of edges of the wedge's seam
 * @returns the piece: the edge shorter by the amount, the dart wider by the wedge's angle and ended as far short of the
 *          point as before, its seam as long as before; or why not
 */
export function closeWedgeIntoDart(piece: Piece, wedge: Wedge): Result<WedgeInDart, WedgeFailure> {
  return orMost(wedge, (tried) => intoDart(piece, tried));
}

/**
 * A refused amount: the most that is not, by halving. Where not even the least is taken, as by a dart that is as wide as can
 * be, there is nothing to seek.
 *
 * @param close what finishes the piece, so that a trial need not; null where the wedge is too wide
 */
function orMost<T extends WedgeClosed>(
  wedge: Wedge,
  close: (wedge: Wedge) => (() => T) | "no-dart" | null,
): Result<T, WedgeFailure> {
  const done = close(wedge);
  if (done === "no-dart") return fail({ code: "wedge/no-dart" });
  if (done !== null) return ok(done());
  if (close({ ...wedge, amount: WALKED_AGREEMENT }) === null) return fail({ code: "wedge/too-much", most: 0 });
  const { holding } = halve(0, wedge.amount, WALKED_AGREEMENT, (tried) => close({ ...wedge, amount: tried }) !== null);
  return fail({ code: "wedge/too-much", most: holding });
}

/** null where the wedge is too wide for the edge or for the dart. */
function intoDart(piece: Piece, wedge: Wedge): (() => WedgeInDart) | "no-dart" | null {
  const fold = foldAt(piece, wedge);
  if (fold === null) return null;
  const way = waysFrom(fold.piece, fold.corner).toSorted((a, b) => a.length - b.length)[0];
  if (way === undefined) return "no-dart";
  const radius = distance(wedge.point, pointOf(fold.piece, fold.corner));
  const turn = wedgeAngle(wedge.amount, radius);
  if (openingAt(piece, way.dart, wedge.point) + turn > WIDEST_DART) return null;
  const turned = turnedAbout(fold, { end: way.end, onward: way.onward }, wedge, turn);
  const smooth = smoothFold(turned, piece, fold, wedge, way.onward);
  if (!isAsWanted(smooth, piece, wedge)) return null;
  return () => ({
    piece: endedAgain(smooth, piece, way.dart, wedge),
    trace: turned.operated.trace,
    turn,
    dart: way.dart,
  });
}

/**
 * Closes a wedge into the princess seam: the part between the edge and the seam above the bust turns about the bust
 * corner of the seam, and the seam is drawn smooth there again at the length that it had.
 */
export function closeWedgeIntoPrincess(piece: Piece, seam: SeamName, amount: Mm): Result<WedgeClosed, WedgeFailure> {
  return orMost({ seam, amount, point: pointOf(piece, "princessBust") }, (tried) => intoPrincess(piece, tried));
}

function intoPrincess(piece: Piece, wedge: Wedge): (() => WedgeClosed) | null {
  const fold = foldAt(piece, wedge);
  if (fold === null) return null;
  const turn = wedgeAngle(wedge.amount, distance(wedge.point, pointOf(fold.piece, fold.corner)));
  // Down the seam from its top on a centre front, up to it on a side front.
  const onward = piece.edges.some((edge) => edge.from === "princessTop" && edge.seam === "princess");
  const turned = turnedAbout(fold, { end: "princessBust", onward }, wedge, turn);
  const smooth = smoothFold(turned, piece, fold, wedge, onward);
  if (!isAsWanted(smooth, piece, wedge)) return null;
  // What curves that look right cannot take up, some hundredths of a millimetre, is taken up at the top.
  const drawn = smoothedAt(smooth, "princessBust");
  const length = seamLength(piece, "princess");
  const isWalked = Math.abs(seamLength(drawn, "princess") - length) < TRUING_ACCURACY;
  const walked = isWalked ? drawn : withSeamEnd(drawn, "princess", "princessTop", length);
  return () => ({ piece: walked, trace: turned.operated.trace, turn });
}

/** The angle a dart has when its legs are drawn on to a point. */
const openingAt = (piece: Piece, name: DartName, point: PiecePoint): Radians => {
  const { inner, outer } = dartOf(piece, name);
  return radians(
    Math.abs(turnBetween(directionOf(point, pointOf(piece, inner)), directionOf(point, pointOf(piece, outer)))),
  );
};

/** Whether a piece has the seam, and a dart or a princess seam that can take a wedge from it. */
export function takesWedge(piece: Piece, seam: SeamName): boolean {
  if (!piece.edges.some((edge) => edge.seam === seam && edge.mouthOf === null)) return false;
  if (piece.points.princessBust !== undefined) return true;
  const fold = piece.edges.find((edge) => edge.seam === seam && edge.mouthOf === null);
  return fold !== undefined && waysFrom(piece, fold.from).length > 0;
}

/** Whether the edge came out shorter by the wedge's width: a curve that is nearly straight cannot. */
const isAsWanted = (smooth: Piece, before: Piece, { seam, amount }: Wedge): boolean =>
  Math.abs(seamLength(before, seam) - amount - seamLength(smooth, seam)) <= WALKED_AGREEMENT;

interface Turned {
  readonly operated: Operated;
  readonly motion: Rigid<"piece">;
}

/** The part between the fold and the way's end turned about the point so that the fold closes; all edges as before. */
function turnedAbout(fold: Fold, way: Pick<Way, "end" | "onward">, { point }: Wedge, turn: Radians): Turned {
  const { piece, corner } = fold;
  const parted = partAt(piece, corner, "cut2", null);
  const stretch = way.onward ? ({ from: "cut2", to: way.end } as const) : ({ from: way.end, to: corner } as const);
  // The outlines run clockwise: what lies onward from the fold closes it by turning anticlockwise.
  const motion = rigidMotion(point, radians(way.onward ? -turn : turn));
  const part: Part = { ...stretch, inside: isSame(pointOf(piece, way.end), point) ? [] : [point], carries: [], motion };
  const carries = pointNames(parted).filter((name) => isCarried(parted, part, name));
  const drawn = { cuts: [[pointOf(piece, corner), point]], hinges: [point] };
  return { operated: cutAndMove(parted, [{ ...part, carries }], drawn), motion };
}

const isSame = (a: PiecePoint, b: PiecePoint): boolean => distance(a, b) < SAME_POINT;

/** Where a point belongs that may lie off the cloth: the bust line with its side end, the aim of a strap with its seam. */
const GOES_WITH: Readonly<Partial<Record<PointName, PointName>>> = {
  bustLineOuter: "sideBust",
  bustLineInner: "centreBust",
  strapAim: "strapInner",
};

/** Points off the outline that lie on the part. */
function isCarried(piece: Piece, part: Part, name: PointName): boolean {
  if (piece.edges.some((edge) => edge.from === name)) return false;
  const owner = GOES_WITH[name];
  if (owner !== undefined) return pointsBetween(piece, part.from, part.to).has(owner);
  return isInOutline(partOutline(piece, part), pointOf(piece, name));
}

function partOutline(piece: Piece, part: Part): EdgeCurve<"piece">[] {
  const start = edgeFrom(piece, part.from);
  const count = ((edgeTo(piece, part.to) - start + piece.edges.length) % piece.edges.length) + 1;
  const ring = Array.from({ length: count }, (_, step) =>
    curveOf(piece, invariant(piece.edges[(start + step) % piece.edges.length], "edge")),
  );
  const corners = [pointOf(piece, part.to), ...part.inside, pointOf(piece, part.from)];
  return [...ring, ...corners.slice(1).map((corner, i) => lineEdge(invariant(corners[i], "corner"), corner))];
}

/** The edge that was folded drawn in one again, smooth, and shorter than before by the wedge's width. */
function smoothFold(
  { operated: { piece: turned }, motion }: Turned,
  before: Piece,
  { corner }: Fold,
  { amount }: Wedge,
  onward: boolean,
): Piece {
  const bridge = edgeFrom(turned, corner);
  const count = turned.edges.length;
  const into = invariant(turned.edges[(bridge + count - 1) % count], "edge");
  const out = invariant(turned.edges[(bridge + 1) % count], "edge");
  const { cut1: _1, cut2: _2, ...points } = turned.points;
  const folded = foldedStretch(turned, before, bridge);
  if (folded.length > 1) {
    const bent = withEndCarried(before, folded, onward ? "end" : "start", motion);
    return drawnAgain({ ...turned, points }, bent, before, folded, amount);
  }
  // One edge before: each of its controls has gone with its own end.
  const whole = invariant(before.edges[edgeFrom(before, into.from)], "edge");
  const handles = controlsOf(before, whole);
  const curve = {
    c1: alongHandle(
      pointOf(turned, into.from),
      controlsOf(turned, into).c1,
      distance(pointOf(before, whole.from), handles.c1),
    ),
    c2: alongHandle(
      pointOf(turned, out.to),
      controlsOf(turned, out).c2,
      distance(pointOf(before, whole.to), handles.c2),
    ),
  };
  const edges = turned.edges.flatMap((edge, index): Edge[] =>
    index === bridge || edge === out ? [] : edge === into ? [{ ...into, to: out.to, curve }] : [edge],
  );
  const joined: Piece = { ...turned, points, edges };
  const drawn = fitHandles(joined, [edgeFrom(joined, into.from)], edgeLength(curveOf(before, whole)) - amount);
  return withHollowFilled(drawn, whole.seam, seamLength(before, whole.seam) - amount);
}

/** The stretch of the piece before that the bridge was put into. */
function foldedStretch(turned: Piece, before: Piece, bridge: number): Stretch {
  const into = invariant(turned.edges.at(bridge - 1), "edge");
  return smoothStretchAt(before, edgeFrom(before, into.from));
}

/** The same where it has bends: it follows the part that turned, and is drawn flatter until it is as short as wanted. */
function drawnAgain(turned: Piece, bent: Piece, before: Piece, stretch: Stretch, amount: Mm): Piece {
  const ring = before.edges.map((edge, index): Edge => {
    if (stretch.includes(index)) return invariant(bent.edges[index], "edge");
    return invariant(
      turned.edges.find(({ from }) => from === edge.from),
      edge.from,
    );
  });
  const points = { ...turned.points };
  for (const index of stretch) {
    const { from, to } = invariant(before.edges[index], "edge");
    for (const name of [from, to]) points[name] = invariant(bent.points[name], name);
  }
  const seam = invariant(before.edges[stretch[0] ?? 0], "edge").seam;
  const drawn = fitHandles(
    { ...turned, points, edges: ring },
    stretch.slice(0, 1),
    stretchLength(before, stretch) - amount,
  );
  return withHollowFilled(drawn, seam, seamLength(before, seam) - amount);
}

/** The hollow of an armhole is drawn this much less deep at the most. */
const DEEPEST_FILLED: Mm = 10;

/**
 * Where the folded edge alone would have to be drawn straight, the corners within the seam are moved out towards the line
 * between its ends: the hollow becomes less deep, and the seam shorter.
 */
function withHollowFilled(piece: Piece, seam: SeamName, length: Mm): Piece {
  const corners = cornersWithin(piece, seam);
  const middle = corners[Math.floor(corners.length / 2)];
  if (middle === undefined || seamLength(piece, seam) - length < SOLVER_ACCURACY) return piece;
  const run = piece.edges.filter((edge) => edge.seam === seam && edge.mouthOf === null);
  const [first, last] = [invariant(run[0], seam).from, invariant(run.at(-1), seam).to];
  const out = directionOf(pointOf(piece, middle), midpoint(pointOf(piece, first), pointOf(piece, last)));
  const filled = (by: Mm): Piece =>
    corners.reduce((done, corner) => moveMouthEnd(done, corner, polar(pointOf(piece, corner), out, by)), piece);
  const look = (by: Mm): Looked => ({ at: by, off: seamLength(filled(by), seam) - length });
  const deepest = look(DEEPEST_FILLED);
  // Where the deepest is not enough there is nothing to seek.
  if (deepest.off > 0) return filled(DEEPEST_FILLED);
  const drawn = { at: 0, off: seamLength(piece, seam) - length };
  const by = zeroBetween([drawn, deepest], (tried) => look(tried).off, {
    accuracy: SOLVER_ACCURACY,
    apart: PARAMETER_ACCURACY,
  });
  return filled(by);
}

const cornersWithin = (piece: Piece, seam: SeamName): PointName[] =>
  piece.edges.flatMap((edge, index): PointName[] => {
    const before = piece.edges[(index + piece.edges.length - 1) % piece.edges.length];
    const isWithin = before?.seam === seam && edge.seam === seam && before.mouthOf === null && edge.mouthOf === null;
    return isWithin && !isBend(edge.from) ? [edge.from] : [];
  });

const alongHandle = (end: PiecePoint, control: PiecePoint, length: Mm): PiecePoint =>
  polar(end, directionOf(end, control), length);

/** The dart's end as far from the point, and as far off the line to its mouth, as before; legs and seam trued. */
function endedAgain(turned: Piece, before: Piece, name: DartName, { point, seam, amount }: Wedge): Piece {
  const dart = dartOf(turned, name);
  const apex = pointOf(before, dart.apex);
  const axis = (piece: Piece): Radians => directionOf(point, mouthMiddle(piece, dart.inner, dart.outer));
  const aside = isSame(point, apex) ? 0 : turnBetween(axis(before), directionOf(point, apex));
  const at = polar(point, radians(axis(turned) + aside), distance(point, apex));
  const ended: Piece = {
    ...turned,
    points: { ...turned.points, [dart.apex]: { ...invariant(turned.points[dart.apex], dart.apex), at } },
  };
  if (dart.gathered === true) return ended;
  const length = seamLength(before, dart.seam) - (dart.seam === seam ? amount : 0);
  return smoothOverDart(trueLegs(ended, name).piece, name, length);
}

/** The seam smooth over the shut dart: its curves make up the length, so that the mouth keeps the width that the turn gave. */
function smoothOverDart(piece: Piece, name: DartName, length: Mm): Piece {
  const mouth = invariant(
    piece.edges.find(({ mouthOf }) => mouthOf === name),
    name,
  );
  const smooth = trueSeamAtDart(piece, name);
  const beside = [edgeTo(piece, mouth.from), edgeFrom(piece, mouth.to)];
  const drawn = beside.reduce(
    (done, index) => fitHandles(done, [index], stretchLength(piece, smoothStretchAt(piece, index))),
    smooth,
  );
  return Math.abs(seamLength(drawn, mouth.seam) - length) < TRUING_ACCURACY
    ? drawn
    : trueSeamEvenly(drawn, name, length);
}
