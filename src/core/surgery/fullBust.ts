/**
 * Full and small bust adjustment of a front with a side dart and a waist dart: cut from the waist up through the waist
 * dart to the bust point and on to the armhole, and through the side dart. The upper side part turns about its hinge on
 * the armhole seam until the cut stands open by the spread at the bust point; the lower side part slides to follow it;
 * the centre part is lengthened by the same drop. Both darts grow (or shrink); no seam but the armhole's curve bends.
 */
import { halve } from "../geometry/iterate";
import { edgeTangentAt } from "../geometry/edgeCurve";
import { distance, midpoint, polar, shift, type PiecePoint } from "../geometry/point";
import { rigidMotion } from "../geometry/rigid";
import { fail, invariant, ok, type Result } from "../result";
import { dartOf, pointOf, type Edge, type Piece, type PointName } from "../pattern/piece";
import { NARROWEST_DART, SOLVER_ACCURACY } from "../tolerance";
import { radians, type Mm, type Radians } from "../units";
import { cutAndMove, type SurgeryTrace } from "./cutAndMove";
import { curveOf, edgeFrom, edgeTo, insertPoint, mouthMiddle } from "../pattern/ring";
import { placeAt, stretchAt, stretchFrom } from "../pattern/stretch";
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

/** The front with its hinge marked on the armhole. */
export function withArmholeHinge(front: Piece): Piece {
  if (front.points.armholeHinge !== undefined) return front;
  const { index, t } = placeAt(front, stretchFrom(front, "armholeTouch"), HINGE_ON_LOWER_ARMHOLE);
  return insertPoint(front, index, t, "armholeHinge", "shoulder");
}

/**
 * Adjusts the front for a fuller (positive) or smaller (negative) bust.
 *
 * @param front  a front with darts `sideDart` and `waistDart`
 * @param spread half of the whole bust change, mm: what this half front gains at the bust line
 * @returns the front, with both dart ends still where they were relative to the old bust point: place them anew; or
 *          why not, with the largest spread of that sign that can be reached and leaves both darts sewable
 */
export function adjustFullBust(front: Piece, spread: Mm): Result<FullBust, FullBustFailure> {
  const done = spreadApart(front, spread);
  return done.ok ? done : fail({ code: done.failure, most: largestSpread(front, spread) });
}

/** The largest spread between 0 and one that cannot be made; mm. */
function largestSpread(front: Piece, refused: Mm): Mm {
  return halve(0, refused, SOLVER_ACCURACY, (tried) => spreadApart(front, tried).ok).holding;
}

function spreadApart(front: Piece, spread: Mm): Result<FullBust, FullBustFailure["code"]> {
  const hinged = withArmholeHinge(front);
  const hinge = pointOf(hinged, "armholeHinge");
  const apex = pointOf(hinged, "bustLineOuter");
  const turned = hingeTurn(apex, hinge, spread);
  if (!turned.ok) return fail(turned.failure.code);
  const { turn, drop } = turned.value;
  const side = dartOf(hinged, "sideDart");
  const waist = dartOf(hinged, "waistDart");

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
  if (!areDartsSewable(atHinge)) return fail("fullBust/dart-vanishes");
  const old = pointOf(front, "bustPoint");
  const smooth = smoothArmhole(atHinge);
  return ok({
    piece: {
      ...smooth.piece,
      points: {
        ...smooth.piece.points,
        // Half-way across the gap and half-way down it: the middle of the paper let in.
        bustPoint: { at: midpoint(old, shift(old, spread, drop)), level: "bust" },
      },
    },
    turn,
    drop,
    smoothed: smooth.turned,
    trace: operated.trace,
  });
}

const areDartsSewable = (piece: Piece): boolean =>
  (["sideDart", "waistDart"] as const).every((name) => {
    const { inner, outer } = dartOf(piece, name);
    return signedIntake(piece, inner, outer, name) >= NARROWEST_DART;
  });

/** Negative where the mouth ends have passed each other. */
function signedIntake(piece: Piece, inner: PointName, outer: PointName, dart: "sideDart" | "waistDart"): Mm {
  const a = pointOf(piece, inner);
  const b = pointOf(piece, outer);
  const along = dart === "waistDart" ? b.x - a.x : b.y - a.y;
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
  if (stretchAt(piece, into).length > 1 || stretchAt(piece, out).length > 1) {
    const done = edgeTurned(piece, into, "end", radians(turned / 2));
    return { piece: edgeTurned(done, out, "start", radians(-turned / 2)), turned: radians(turned) };
  }
  const mean = radians(arriving + turned / 2);
  const hinge = pointOf(piece, "armholeHinge");
  const edges: Edge[] = [...piece.edges];
  edges[into] = {
    ...before,
    curve: { ...before.curve, c2: polar(hinge, radians(mean + Math.PI), distance(hinge, before.curve.c2)) },
  };
  edges[out] = {
    ...after,
    curve: { ...after.curve, c1: polar(hinge, mean, distance(hinge, after.curve.c1)) },
  };
  return { piece: { ...piece, edges }, turned: radians(turned) };
}
