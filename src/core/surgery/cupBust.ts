/**
 * Full and small bust adjustment of a cup with one dart from below: cut from the dart up to the bust point and on to the
 * upper edge. The side part turns about its hinge there until the cut stands open by the spread at the bust point, and the
 * dart grows by that turn. A fuller bust needs length over it too: cut from the bust point to both ends of the under-bust
 * seam, the two parts below turn about those ends until the seam lies lower at the dart by the drop that the same spread
 * takes in a front with a side dart. Nothing moves at the centre front and at the side; every seam keeps its length.
 */
import { halve } from "../geometry/iterate";
import { distance, directionOf, midpoint, turnBetween, type PiecePoint } from "../geometry/point";
import { composeRigid, moveRigidly, rigidMotion } from "../geometry/rigid";
import { dartOf, pointOf, type Edge, type Piece, type PointName } from "../pattern/piece";
import { fail, invariant, ok, type Result } from "../result";
import { DART_STOP_LEAST, NARROWEST_DART, SHORTEST_DART, SOLVER_ACCURACY } from "../tolerance";
import { radians, radiansFromDegrees, type Mm, type Radians } from "../units";
import { cutAndMove, type SurgeryTrace } from "./cutAndMove";
import { hingeTurn, tooMuchSpread, type FullBustFailure } from "./fullBust";
import { edgeFrom, edgeTo, mouthMiddle } from "../pattern/ring";
import { stretchAt } from "../pattern/seamStretch";
import { edgeTurned } from "./straightThrough";

/** A wider dart could not be sewn smooth, and would be split or gathered (our own choice). */
const WIDEST_DART = radiansFromDegrees(75);

/** The corner of the upper edge that the side part turns about. */
const HINGE = "strapInner";

export interface CupBust {
  readonly piece: Piece;
  /** Turn of the side part about the hinge; positive turns +x towards +y. */
  readonly turn: Radians;
  /** How much lower the under-bust seam lies at the dart. */
  readonly drop: Mm;
  readonly trace: SurgeryTrace;
}

/**
 * Adjusts a cup for a fuller (positive) or smaller (negative) bust.
 *
 * @param cup    a cup whose dart `underBustDart` still reaches the bust point, with the point `armholeHinge` of the front it
 *               was cut from
 * @param spread half of the whole bust change, mm: what this half gains along its bust line
 * @returns the cup, its dart reaching the middle of the gap; or why not, with the largest spread of that sign that works
 * @source the bust point moves on a circle of radius R about the hinge; a chord g takes the turn 2 asin(g / 2R)
 */
export function adjustCup(cup: Piece, spread: Mm): Result<CupBust, FullBustFailure> {
  const done = turned(cup, spread);
  return done.ok ? done : tooMuchSpread(done.failure, () => largestSpread(cup, spread));
}

/** The largest spread between 0 and one that cannot be made; mm. */
function largestSpread(cup: Piece, refused: Mm): Mm {
  return halve(0, refused, SOLVER_ACCURACY, (tried) => turned(cup, tried).ok).holding;
}

function turned(cup: Piece, spread: Mm): Result<CupBust, FullBustFailure["code"]> {
  const hinge = pointOf(cup, HINGE);
  const inner = pointOf(cup, "bustLineInner");
  const outer = pointOf(cup, "bustLineOuter");
  const dart = dartOf(cup, "underBustDart");
  const gap = signedGap(cup);
  const turn = hingeTurnFor(distance(hinge, inner), gap, spread);
  const [before, after] = [lengthened(cup, gap), lengthened(cup, gap + spread)];
  if (turn === null || before === null || after === null) return fail("fullBust/out-of-reach");
  const sidePart = rigidMotion(hinge, turn);
  const centreEnd = pointOf(cup, "underBustCentre");
  const sideEnd = moveRigidly(sidePart, pointOf(cup, "sideUnderBust"));
  const operated = cutAndMove(
    cup,
    [
      { from: HINGE, to: "sideUnderBust", inside: [outer], carries: ["bustLineOuter"], motion: sidePart },
      {
        from: "sideUnderBust",
        to: dart.outer,
        inside: [outer],
        carries: [],
        motion: composeRigid(sidePart, rigidMotion(sideEnd, radians(before.outer - after.outer))),
      },
      {
        from: dart.inner,
        to: "underBustCentre",
        inside: [inner],
        carries: [],
        motion: rigidMotion(centreEnd, radians(after.inner - before.inner)),
      },
    ],
    {
      cuts: [
        [mouthMiddle(cup, dart.inner, dart.outer), outer, hinge],
        [inner, centreEnd],
        [outer, pointOf(cup, "sideUnderBust")],
      ],
      hinges: [hinge, centreEnd, pointOf(cup, "sideUnderBust")],
    },
  );
  const { piece } = operated;
  const bustPoint = { at: midpoint(inner, pointOf(piece, "bustLineOuter")), level: "bust" } as const;
  const adjusted: Piece = { ...piece, points: { ...piece.points, bustPoint, [dart.apex]: bustPoint } };
  const refused = refusalOf(adjusted);
  if (refused !== null) return fail(refused);
  return ok({
    piece: adjusted,
    turn,
    drop: after.drop - before.drop,
    get trace() {
      return operated.trace;
    },
  });
}

/** What a gap at the bust point has let in below it: how far the seam lies lower at the dart, and the turns that make it so. */
interface Lengthened {
  readonly drop: Mm;
  readonly inner: Radians;
  readonly outer: Radians;
}

/** null where no turn does it. The hinge is the one that a front with a side dart turns about (`hingeTurn`). */
function lengthened(cup: Piece, gap: Mm): Lengthened | null {
  const { inner, outer } = dartOf(cup, "underBustDart");
  const swung = hingeTurn(pointOf(cup, "bustLineInner"), pointOf(cup, "armholeHinge"), gap);
  if (!swung.ok) return null;
  const { drop } = swung.value;
  const turns = (
    [
      ["underBustCentre", inner],
      ["sideUnderBust", outer],
    ] as const
  ).map(([end, mouth]) => Math.asin(drop / 2 / distance(pointOf(cup, end), pointOf(cup, mouth))));
  const [one, other] = [invariant(turns[0], "turn"), invariant(turns[1], "turn")];
  return Number.isFinite(one) && Number.isFinite(other)
    ? { drop, inner: radians(2 * one), outer: radians(2 * other) }
    : null;
}

/**
 * The under-bust seam drawn smooth into its two ends again, in the direction that it had there before it was let down: so the
 * corners with centre front and side seam stay what they were.
 */
export function smoothSeamEnds(cup: Piece): Piece {
  const turns = lengthened(cup, signedGap(cup));
  if (turns === null) return cup;
  const [sideEnd, centreEnd] = [edgeFrom(cup, "sideUnderBust"), edgeTo(cup, "underBustCentre")];
  if ([sideEnd, centreEnd].some((index) => stretchAt(cup, index).length > 1))
    return edgeTurned(edgeTurned(cup, sideEnd, "start", turns.outer), centreEnd, "end", radians(-turns.inner));
  const edges = cup.edges.map((edge, index): Edge => {
    if (edge.curve === null) return edge;
    const { c1, c2 } = edge.curve;
    if (index === sideEnd) return { ...edge, curve: { c1: about(cup, "sideUnderBust", turns.outer, c1), c2 } };
    return index === centreEnd
      ? { ...edge, curve: { c1, c2: about(cup, "underBustCentre", radians(-turns.inner), c2) } }
      : edge;
  });
  return { ...cup, edges };
}

const about = (cup: Piece, corner: PointName, turn: Radians, at: PiecePoint): PiecePoint =>
  moveRigidly(rigidMotion(pointOf(cup, corner), turn), at);

/** The turn that makes the gap at the bust point wider by a spread; null where no turn does. Outward is negative. */
function hingeTurnFor(radius: Mm, gap: Mm, spread: Mm): Radians | null {
  const after = (gap + spread) / (2 * radius);
  if (!(Math.abs(after) <= 1)) return null;
  return radians(2 * Math.asin(gap / (2 * radius)) - 2 * Math.asin(after));
}

/** The gap that earlier adjustments left at the bust point; negative where they lapped it. */
function signedGap(cup: Piece): Mm {
  const inner = pointOf(cup, "bustLineInner");
  const outer = pointOf(cup, "bustLineOuter");
  return Math.sign(outer.x - inner.x) * distance(inner, outer);
}

function refusalOf(cup: Piece): FullBustFailure["code"] | null {
  const { inner, outer } = dartOf(cup, "underBustDart");
  const [a, b] = [pointOf(cup, inner), pointOf(cup, outer)];
  if (Math.sign(b.x - a.x) * distance(a, b) < NARROWEST_DART) return "fullBust/dart-vanishes";
  if (distance(pointOf(cup, "bustPoint"), midpoint(a, b)) < SHORTEST_DART + DART_STOP_LEAST)
    return "fullBust/dart-vanishes";
  const opening = turnBetween(
    directionOf(pointOf(cup, "bustLineOuter"), b),
    directionOf(pointOf(cup, "bustLineInner"), a),
  );
  return opening > WIDEST_DART ? "fullBust/out-of-reach" : null;
}
