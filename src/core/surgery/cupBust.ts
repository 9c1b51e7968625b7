/**
 * Full and small bust adjustment of a cup with one dart from below: cut from the dart up to the bust point and on to the
 * upper edge. The side part turns about its hinge there until the cut stands open by the spread at the bust point. The
 * dart grows by that turn; every seam keeps its length.
 */
import { halve } from "../geometry/iterate";
import { distance, directionOf, midpoint, turnBetween } from "../geometry/point";
import { rigidMotion } from "../geometry/rigid";
import { dartOf, pointOf, type Piece } from "../pattern/piece";
import { fail, ok, type Result } from "../result";
import { NARROWEST_DART, SOLVER_ACCURACY } from "../tolerance";
import { radians, radiansFromDegrees, type Mm, type Radians } from "../units";
import { cutAndMove, type SurgeryTrace } from "./cutAndMove";
import type { FullBustFailure } from "./fullBust";
import { mouthMiddle } from "../pattern/ring";

/** A wider dart could not be sewn smooth, and would be split or gathered (our own choice). */
const WIDEST_DART = radiansFromDegrees(75);

/** The corner of the upper edge that the side part turns about. */
const HINGE = "strapInner";

export interface CupBust {
  readonly piece: Piece;
  /** Turn of the side part about the hinge; positive turns +x towards +y. */
  readonly turn: Radians;
  readonly trace: SurgeryTrace;
}

/**
 * Adjusts a cup for a fuller (positive) or smaller (negative) bust.
 *
 * @param cup    a cup whose dart `underBustDart` still reaches the bust point
 * @param spread half of the whole bust change, mm: what this half gains along its bust line
 * @returns the cup, its dart reaching the middle of the gap; or why not, with the largest spread of that sign that works
 * @source the bust point moves on a circle of radius R about the hinge; a chord g takes the turn 2 asin(g / 2R)
 */
export function adjustCup(cup: Piece, spread: Mm): Result<CupBust, FullBustFailure> {
  const done = turned(cup, spread);
  return done.ok ? done : fail({ code: done.failure, most: largestSpread(cup, spread) });
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
  const turn = hingeTurnFor(distance(hinge, inner), signedGap(cup), spread);
  if (turn === null) return fail("fullBust/out-of-reach");
  const { piece, trace } = cutAndMove(
    cup,
    [{ from: HINGE, to: dart.outer, inside: [outer], carries: ["bustLineOuter"], motion: rigidMotion(hinge, turn) }],
    { cuts: [[mouthMiddle(cup, dart.inner, dart.outer), outer, hinge]], hinges: [hinge] },
  );
  const bustPoint = { at: midpoint(inner, pointOf(piece, "bustLineOuter")), level: "bust" } as const;
  const adjusted: Piece = { ...piece, points: { ...piece.points, bustPoint, [dart.apex]: bustPoint } };
  const refused = refusalOf(adjusted);
  return refused === null ? ok({ piece: adjusted, turn, trace }) : fail(refused);
}

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
  const opening = turnBetween(
    directionOf(pointOf(cup, "bustLineOuter"), b),
    directionOf(pointOf(cup, "bustLineInner"), a),
  );
  return opening > WIDEST_DART ? "fullBust/out-of-reach" : null;
}
