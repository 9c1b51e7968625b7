/**
 * Full and small bust adjustment of a princess-line front: the side front takes the spread, the centre front only the
 * length, and then the two seams are walked.
 *
 * On the side front a mark is made beside the bust point, the spread further on along the bust line. The piece is cut
 * along its bust line from the seam, and from there to both ends of the seam. The strip beside the upper seam turns
 * about the seam's upper end, the strip beside the lower seam about its lower end, each until its seam aims at the mark;
 * the seam is drawn on to the mark. So the bust line grows by the spread and stays level, no seam but the princess seam
 * changes, no spread is out of a strip's reach, and taking the same spread back gives the old piece. The centre front is
 * cut across at its bust line and opened until its seam is as long.
 */
import { halve } from "../geometry/iterate";
import { lineEdge } from "../geometry/edgeCurve";
import { between, directionOf, distance, shift, turnBetween, type PiecePoint } from "../geometry/point";
import { rigidMotion } from "../geometry/rigid";
import { signedArea, validateOutline } from "../geometry/outline";
import { fail, ok, type Result } from "../result";
import { pointOf, type Piece } from "../pattern/piece";
import { NARROWEST_DART, SOLVER_ACCURACY } from "../tolerance";
import { radians, radiansFromDegrees, type Mm, type Radians } from "../units";
import { cutAndMove, partAt, type SurgeryTrace } from "./cutAndMove";
import { tooMuchSpread, type FullBustFailure } from "./fullBust";
import { cornersOf, walkPrincess, withPointsAt, withoutBridge, type Corners } from "./princessSeam";
import { outlineOf } from "../pattern/ring";
import type { PrincessPieces } from "./splitAtBustPoint";

export interface PrincessBust {
  readonly pieces: PrincessPieces;
  /** Turn of the upper strip about the upper end of the seam, signed: positive turns +x towards +y. */
  readonly turn: Radians;
  /** How much longer the centre of the front became; negative: shorter. */
  readonly drop: Mm;
  /** Side front, centre front. */
  readonly traces: readonly SurgeryTrace[];
}

/** How far in from the seam the strips' inner corner lies on the bust line, at the most and as a share of the line. */
const STRIP_WIDTH: Mm = 40;
const STRIP_SHARE = 0.5;

/** A side front whose seam bends more sharply over the bust than a square corner cannot be sewn smooth (our own choice). */
const SHARPEST_BEND = radiansFromDegrees(90);

/**
 * Adjusts a princess-line front for a fuller (positive) or smaller (negative) bust.
 *
 * @param pieces a centre front and a side front with a seam `princess` through `princessBust`
 * @param spread half of the whole bust change, mm: what the side front gains at the bust line
 * @returns both pieces; or why not, with the largest spread of that sign that can be reached, leaves both outlines
 *          whole and leaves the seam as much shape over the bust as the narrowest dart would give
 */
export function adjustPrincessBust(pieces: PrincessPieces, spread: Mm): Result<PrincessBust, FullBustFailure> {
  const done = spreadApart(pieces, spread);
  return done.ok ? done : tooMuchSpread(done.failure, () => largestSpread(pieces, spread));
}

/** The largest spread between 0 and one that cannot be made; mm. */
function largestSpread(pieces: PrincessPieces, refused: Mm): Mm {
  return halve(0, refused, SOLVER_ACCURACY, (tried) => spreadApart(pieces, tried).ok).holding;
}

function spreadApart(pieces: PrincessPieces, spread: Mm): Result<PrincessBust, FullBustFailure["code"]> {
  const { sideFront } = pieces;
  const { top, bust, waist } = cornersOf(sideFront);
  const mark = shift(bust, -spread, 0);
  const upper = aimTurn(top, bust, mark);
  const lower = aimTurn(waist, bust, mark);
  const inside = [stripCorner(bust, pointOf(sideFront, "sideBust"))];
  const parted = partAt(sideFront, "princessBust", "cut1", null);
  const moved = cutAndMove(
    parted,
    [
      { from: "princessWaist", to: "princessBust", inside, carries: [], motion: rigidMotion(waist, lower) },
      { from: "cut1", to: "princessTop", inside, carries: [], motion: rigidMotion(top, upper) },
    ],
    {
      cuts: [
        [bust, ...inside],
        [top, ...inside],
        [waist, ...inside],
      ],
      hinges: [top, waist],
    },
  );
  const onLevel = withPointsAt(withoutBridge(moved.piece, "princessBust", "cut1"), { princessBust: mark });
  // Walking leaves the corners of the side front where they are.
  if (bendOf(cornersOf(onLevel)) > SHARPEST_BEND) return fail("fullBust/out-of-reach");
  const walked = walkPrincess({ centreFront: pieces.centreFront, sideFront: onLevel });
  if (walked === null) return fail("fullBust/out-of-reach");
  const adjusted: PrincessPieces = { centreFront: walked.centreFront.piece, sideFront: walked.sideFront };
  if (!isShaped(adjusted)) return fail("fullBust/dart-vanishes");
  const isWhole = [adjusted.centreFront, adjusted.sideFront].every(
    (piece) => validateOutline(outlineOf(piece)).length === 0,
  );
  if (!isWhole) return fail(spread > 0 ? "fullBust/out-of-reach" : "fullBust/dart-vanishes");
  return ok({
    pieces: adjusted,
    turn: upper,
    drop: walked.drop,
    get traces() {
      const { trace } = moved;
      return [{ ...trace, area: trace.area + areaAtMark(moved.piece, mark) }, walked.centreFront.trace];
    },
  });
}

/** mm². What drawing the seam on to the mark adds to the straight line from the end of one strip to that of the other. */
function areaAtMark(moved: Piece, mark: PiecePoint): number {
  const [lower, upper] = [pointOf(moved, "princessBust"), pointOf(moved, "cut1")];
  return signedArea([lineEdge(lower, mark), lineEdge(mark, upper), lineEdge(upper, lower)]);
}

/** The turn about a hinge that makes the line to one point aim at another; signed: positive turns +x towards +y. */
const aimTurn = (hinge: PiecePoint, from: PiecePoint, at: PiecePoint): Radians =>
  turnBetween(directionOf(hinge, from), directionOf(hinge, at));

const stripCorner = (bust: PiecePoint, side: PiecePoint): PiecePoint =>
  between(bust, side, Math.min(STRIP_SHARE, STRIP_WIDTH / distance(bust, side)));

/** Whether the seam still takes in at the bust point what the narrowest dart does at the mouth of the shorter stretch. */
function isShaped(pieces: PrincessPieces): boolean {
  const { top, bust, waist } = cornersOf(pieces.sideFront);
  const leg = Math.min(distance(top, bust), distance(bust, waist));
  return takenAtBust(pieces) >= 2 * Math.asin(NARROWEST_DART / 2 / leg);
}

/** The angle that the two pieces leave open between them at the bust point, above and below together. */
export const takenAtBust = ({ centreFront, sideFront }: PrincessPieces): Radians =>
  radians(bendOf(cornersOf(sideFront)) - bendOf(cornersOf(centreFront)));

/** How far the straight lines of a seam turn outward at the bust point, going down. */
const bendOf = ({ top, bust, waist }: Corners): number =>
  -turnBetween(directionOf(top, bust), directionOf(bust, waist));
