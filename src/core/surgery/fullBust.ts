/**
 * Full and small bust adjustment of a front with a side dart and a waist dart: cut from the waist up through the waist
 * dart to the bust point and on to the armhole, and through the side dart. The upper side part turns about its hinge on
 * the armhole seam until the cut stands open by the spread at the bust point; the lower side part slides to follow it;
 * the centre part is lengthened by the same drop. Both darts grow (or shrink); no seam but the armhole's curve bends.
 */
import { halve } from "../geometry/iterate";
import { edgeCrossingsAtX, edgeLength, edgeParameterAtLength, edgeTangentAt } from "../geometry/edgeCurve";
import { distance, midpoint, polar, shift, type PiecePoint } from "../geometry/point";
import { rigidMotion } from "../geometry/rigid";
import { fail, invariant, ok, type Result } from "../result";
import { seamLength } from "../girth/seamLength";
import { homeOf } from "../pattern/dartNames";
import { dartOf, pointOf, type Dart, type DartHome, type Edge, type Piece, type PointName } from "../pattern/piece";
import { NARROWEST_DART, SOLVER_ACCURACY } from "../tolerance";
import { radians, type Mm, type Radians } from "../units";
import { cutAndMove, partAt, type SurgeryTrace } from "./cutAndMove";
import { curveOf, edgeFrom, edgeTo, insertPoint, mouthMiddle } from "../pattern/ring";
import {
  endsOf,
  placeAlong,
  placeAt,
  smoothStretchAt,
  stretchAt,
  stretchFrom,
  stretchLength,
} from "../pattern/seamStretch";
import { redrawn, withCurve, withPoint } from "../pattern/redraw";
import { edgeTurned } from "./straightThrough";

export interface HingeTurn {
  /** Turn of the upper side part about the hinge, signed: positive turns +x towards +y. */
  readonly turn: Radians;
  /** How far the bust point of the side parts comes down (up where negative). */
  readonly drop: Mm;
}

export type FullBustFailure =
  | { readonly code: "fullBust/out-of-reach"; readonly most: Mm }
  | { readonly code: "fullBust/dart-vanishes"; readonly most: Mm };

/** A spread that cannot be made. The largest that can is sought when it is read: nearly always only whether is asked. */
export function tooMuchSpread(code: FullBustFailure["code"], largest: () => Mm): Result<never, FullBustFailure> {
  let most: Mm | null = null;
  return fail({
    code,
    get most() {
      most ??= largest();
      return most;
    },
  });
}

/**
 * The turn about a hinge that moves a point across by a spread.
 *
 * @param apex   the bust point; piece frame, mm
 * @param hinge  the hinge on the armhole seam; piece frame, mm
 * @param spread how far the apex moves in +x; negative for a small bust; mm
 * @returns the root with the smaller turn of cos(α + φ) = cos α + spread / R, or `fullBust/out-of-reach`
 * @source the apex moves on the circle of radius R about the hinge, which starts at polar angle α
 */
export function hingeTurn(apex: PiecePoint, hinge: PiecePoint, spread: Mm): Result<HingeTurn, FullBustFailure> {
  const radius = distance(apex, hinge);
  const start = Math.atan2(apex.y - hinge.y, apex.x - hinge.x);
  const across = Math.cos(start) + spread / radius;
  if (!(Math.abs(across) <= 1)) {
    const most = radius * ((spread > 0 ? 1 : -1) - Math.cos(start));
    return fail({ code: "fullBust/out-of-reach", most });
  }
  const end = Math.acos(across);
  const turns = [end - start, -end - start].map((turn) => Math.atan2(Math.sin(turn), Math.cos(turn)));
  const [one, other] = [invariant(turns[0], "root"), invariant(turns[1], "root")];
  const turn = Math.abs(one) <= Math.abs(other) ? one : other;
  return ok({ turn: radians(turn), drop: radius * (Math.sin(start + turn) - Math.sin(start)) });
}

export interface FullBust {
  readonly piece: Piece;
  readonly turn: Radians;
  readonly drop: Mm;
  /** Turn of the armhole at the hinge that was smoothed away. */
  readonly smoothed: Radians;
  readonly trace: SurgeryTrace;
}

const NO_TURN = radians(0);

/** Where on the lower armhole edge the hinge lies: about the lower third of the whole armhole (common practice). */
const HINGE_ON_LOWER_ARMHOLE = 0.2;

/** The same from the underarm up, as a share of the whole armhole, where that is not drawn as one edge from its touch down. */
const HINGE_FROM_UNDERARM = 1 / 3;

/** The front with its hinge marked on the armhole. */
export function withArmholeHinge(front: Piece): Piece {
  if (front.points.armholeHinge !== undefined) return front;
  const lower = front.edges.some(({ from }) => from === "armholeTouch") ? stretchFrom(front, "armholeTouch") : [];
  if (lower.length > 0 && endsOf(front, lower).to === "underarm") {
    const { index, t } = placeAt(front, lower, HINGE_ON_LOWER_ARMHOLE);
    return insertPoint(front, index, t, "armholeHinge", "shoulder");
  }
  let rest = HINGE_FROM_UNDERARM * seamLength(front, "armhole");
  for (let index = edgeTo(front, "underarm"); index >= 0; index -= 1) {
    const edge = invariant(front.edges[index], "edge");
    if (edge.seam !== "armhole") break;
    const curve = curveOf(front, edge);
    const length = edge.mouthOf === null ? edgeLength(curve) : 0;
    if (rest < length)
      return insertPoint(front, index, edgeParameterAtLength(curve, length - rest), "armholeHinge", "shoulder");
    rest -= length;
  }
  return front;
}

/** Where a new dart is opened in the side seam: below the bust line, along it (common practice, no source); mm. */
const NEW_DART_BELOW_BUST: Mm = 35;

/** The darts that a front is spread at: one that comes from the side seam, and one from the waist. */
interface BustDarts {
  readonly front: Piece;
  readonly side: Dart;
  readonly waist: Dart;
}

/**
 * The front with both darts that it is spread at: a dart from the side, high or low, and one from the waist. Where it has only
 * one of them, or only darts from above, the other is opened, as yet without width.
 *
 * @returns null where there is no seam to open it in
 */
function withBustDarts(front: Piece): BustDarts | null {
  const has = (homes: readonly DartHome[]): Dart | undefined =>
    front.darts.find(
      ({ name, aimsAt, gathered }) => aimsAt === "bustPoint" && gathered !== true && homes.includes(homeOf(name)),
    );
  const [side, waist] = [has(["side", "french"]), has(["waist"])];
  if (side !== undefined && waist !== undefined) return { front, side, waist };
  const lying = side === undefined ? newSideDart(front) : front;
  const both = lying === null || waist !== undefined ? lying : newWaistDart(lying);
  if (both === null) return null;
  return { front: both, side: side ?? dartOf(both, "sideDart"), waist: waist ?? dartOf(both, "waistDart") };
}

function newSideDart(front: Piece): Piece | null {
  const from = front.points.sideBust === undefined ? "underarm" : "sideBust";
  const index = front.edges.findIndex((edge) => edge.from === from && edge.seam === "side" && edge.mouthOf === null);
  if (index < 0) return null;
  const stretch = stretchAt(front, index);
  const along = Math.min(NEW_DART_BELOW_BUST, stretchLength(front, stretch) / 3);
  const place = placeAlong(front, stretch, along);
  return opened(front, place.index, place.t, ["sideDartInner", "sideDartOuter"], "sideDart");
}

/** Straight below the bust point. */
function newWaistDart(front: Piece): Piece | null {
  const { x } = pointOf(front, "bustPoint");
  for (const [index, edge] of front.edges.entries()) {
    if (edge.seam !== "waist" || edge.mouthOf !== null) continue;
    const [t] = edgeCrossingsAtX(curveOf(front, edge), x);
    // Going round, the waist comes from the side.
    if (t !== undefined && t > 0 && t < 1)
      return opened(front, index, t, ["waistDartOuter", "waistDartInner"], "waistDart");
  }
  return null;
}

function opened(
  front: Piece,
  index: number,
  t: number,
  [first, second]: readonly [PointName, PointName],
  name: "sideDart" | "waistDart",
): Piece {
  const seam = invariant(front.edges[index], "edge").seam;
  const cut = partAt(insertPoint(front, index, t, first, "bust"), first, second, name);
  const apex: PointName = `${name}Apex`;
  return redrawn(cut, withPoint(cut.points, apex, { at: pointOf(front, "bustPoint"), level: "bust" }), cut.edges, [
    ...cut.darts,
    { name, seam, inner: `${name}Inner`, outer: `${name}Outer`, apex, aimsAt: "bustPoint" },
  ]);
}

/**
 * Adjusts the front for a fuller (positive) or smaller (negative) bust.
 *
 * @param front  a front; darts are opened where it has none from the side, or none from the waist
 * @param spread half of the whole bust change, mm: what this half front gains at the bust line
 * @returns the front, with both dart ends still where they were relative to the old bust point: place them anew; or
 *          why not, with the largest spread of that sign that can be reached and leaves both darts sewable
 */
export function adjustFullBust(front: Piece, spread: Mm): Result<FullBust, FullBustFailure> {
  const done = spreadApart(front, spread);
  return done.ok ? done : tooMuchSpread(done.failure, () => largestSpread(front, spread));
}

/** The largest spread between 0 and one that cannot be made; mm. */
function largestSpread(front: Piece, refused: Mm): Mm {
  return halve(0, refused, SOLVER_ACCURACY, (tried) => spreadApart(front, tried).ok).holding;
}

function spreadApart(front: Piece, spread: Mm): Result<FullBust, FullBustFailure["code"]> {
  const darts = withBustDarts(withArmholeHinge(front));
  if (darts === null || darts.front.points.armholeHinge === undefined) return fail("fullBust/out-of-reach");
  const { front: hinged, side, waist } = darts;
  const hinge = pointOf(hinged, "armholeHinge");
  const apex = pointOf(hinged, "bustLineOuter");
  const turned = hingeTurn(apex, hinge, spread);
  if (!turned.ok) return fail(turned.failure.code);
  const { turn, drop } = turned.value;
  const lowerCorner = pointOf(hinged, side.outer);
  const onTo = (...names: PointName[]): PiecePoint[] => names.map((name) => pointOf(hinged, name));
  const operated = cutAndMove(
    hinged,
    [
      {
        from: "armholeHinge",
        to: side.inner,
        inside: [apex],
        carries: [],
        motion: rigidMotion(hinge, turn),
      },
      {
        from: side.outer,
        to: waist.outer,
        inside: [apex],
        carries: ["bustLineOuter"],
        motion: rigidMotion(lowerCorner, NO_TURN, spread, drop),
      },
      {
        from: waist.inner,
        to: "centreBust",
        inside: onTo("bustLineInner"),
        carries: ["bustLineInner", "underBustCentre"],
        motion: rigidMotion(lowerCorner, NO_TURN, 0, drop),
      },
    ],
    {
      cuts: [
        [mouthMiddle(hinged, waist.inner, waist.outer), apex, hinge],
        [mouthMiddle(hinged, side.inner, side.outer), apex],
        onTo("bustLineInner", "centreBust"),
      ],
      hinges: [hinge],
    },
  );
  const atHinge = operated.piece;
  if (!areDartsSewable(atHinge, [side, waist])) return fail("fullBust/dart-vanishes");
  const old = pointOf(front, "bustPoint");
  const smooth = smoothArmhole(atHinge);
  return ok({
    piece: redrawn(
      smooth.piece,
      // Half-way across the gap and half-way down it: the middle of the paper let in.
      withPoint(smooth.piece.points, "bustPoint", { at: midpoint(old, shift(old, spread, drop)), level: "bust" }),
      smooth.piece.edges,
    ),
    turn,
    drop,
    smoothed: smooth.turned,
    get trace() {
      return operated.trace;
    },
  });
}

const areDartsSewable = (piece: Piece, darts: readonly Dart[]): boolean =>
  darts.every((dart) => signedIntake(piece, dart) >= NARROWEST_DART);

/** Negative where the mouth ends have passed each other. */
function signedIntake(piece: Piece, { inner, outer, seam }: Dart): Mm {
  const a = pointOf(piece, inner);
  const b = pointOf(piece, outer);
  const along = seam === "waist" ? b.x - a.x : b.y - a.y;
  return Math.sign(along) * distance(a, b);
}

/** Draws the armhole smooth through the hinge: both controls beside it take the mean of the two directions. */
function smoothArmhole(piece: Piece): { piece: Piece; turned: Radians } {
  const into = edgeTo(piece, "armholeHinge");
  const out = edgeFrom(piece, "armholeHinge");
  const before = invariant(piece.edges[into], "edge");
  const after = invariant(piece.edges[out], "edge");
  const arriving = edgeTangentAt(curveOf(piece, before), 1);
  const leaving = edgeTangentAt(curveOf(piece, after), 0);
  const turned = Math.atan2(Math.sin(leaving - arriving), Math.cos(leaving - arriving));
  if (before.curve === null || after.curve === null) return { piece, turned: radians(turned) };
  if (smoothStretchAt(piece, into).length > 1 || smoothStretchAt(piece, out).length > 1) {
    const done = edgeTurned(piece, into, "end", radians(turned / 2));
    return { piece: edgeTurned(done, out, "start", radians(-turned / 2)), turned: radians(turned) };
  }
  const mean = radians(arriving + turned / 2);
  const hinge = pointOf(piece, "armholeHinge");
  const edges: Edge[] = [...piece.edges];
  edges[into] = withCurve(before, {
    c1: before.curve.c1,
    c2: polar(hinge, radians(mean + Math.PI), distance(hinge, before.curve.c2)),
  });
  edges[out] = withCurve(after, {
    c1: polar(hinge, mean, distance(hinge, after.curve.c1)),
    c2: after.curve.c2,
  });
  return { piece: redrawn(piece, piece.points, edges), turned: radians(turned) };
}
