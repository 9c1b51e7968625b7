/**
 * The princess seam of a centre front and a side front: drawn smooth over the bust point on both, and walked.
 *
 * Rounding the corner that two darts leave makes the side front's seam a little longer than the legs were. The centre
 * front takes that up as a dressmaker does when walking: it is lengthened at its bust line, above and below the bust
 * point, until both stretches of its seam are as long as the side front's. So neither seam carries ease, no curve is
 * strained to make up a length, and widths, waist, shoulder and armhole stay untouched.
 */
import { edgeLength, edgeReverse, edgeTangentAt, type EdgeCurve } from "../geometry/edgeCurve";
import { directionOf, distance, shift, turnBetween, type PiecePoint } from "../geometry/point";
import { moveRigidly, shiftMotion, type Rigid } from "../geometry/rigid";
import { invariant } from "../result";
import { isBend, pointNames, pointOf, type Edge, type NamedPoint, type Piece, type PointName } from "../pattern/piece";
import { controls, DOWN } from "../pattern/namedEdges";
import { placedAt, redrawn, withCurve, withEnds, withoutPoint } from "../pattern/redraw";
import { turnAtDegrees, turnWithin } from "../girth/cornerAngle";
import {
  bendStretch,
  endsOf,
  stretchFrom,
  stretchLength,
  stretchTo,
  withEndMoved,
  type Stretch,
} from "../pattern/seamStretch";
import { DRAWN_ALIKE_DEGREES, SOLVER_ACCURACY } from "../tolerance";
import { radians, radiansFromDegrees, type Mm, type Radians } from "../units";
import { cutAndMove, drawnFurther, partAt, type Operated } from "./cutAndMove";
import { curveOf, edgeFrom, edgeTo } from "../pattern/ring";
import type { PrincessPieces } from "./splitAtBustPoint";
import { edgeTurned, smoothedAt } from "./straightThrough";

/** How the seam is drawn (common practice, no source): lengths of the handles as shares of the stretch they lie on. */
const HANDLE_AT_BUST = 0.3;
const HANDLE_AT_END = 0.35;
/** Where the two ends do not meet straight, the centre front takes this share of the turn; the rest the side front. */
const CENTRE_SHARE = 0.35;
/** The side front is fullest at the bust line, not below it: there its seam is turned this share of the way to square. */
const SIDE_SQUARE = 0.6;

const ROUNDS = 60;

/** The two stretches of one piece's seam, both drawn from above to below. */
interface Seam {
  readonly upper: EdgeCurve<"piece">;
  readonly lower: EdgeCurve<"piece">;
}

export interface Corners {
  readonly top: PiecePoint;
  readonly bust: PiecePoint;
  readonly waist: PiecePoint;
}

interface Walked {
  readonly centreFront: Operated;
  readonly sideFront: Piece;
  /** How much longer the centre front became. */
  readonly drop: Mm;
}

/**
 * Draws the seam smooth on both pieces and lengthens or shortens the centre front at its bust line until they walk.
 * What was drawn before does not matter: only the ends, the bust points and what the seam meets at its ends do.
 *
 * @param pieces a seam that rises well above the bust point, as one from the armhole, shoulder or neck does
 * @returns both pieces; the two stretches, above and below the bust, are of equal length within SOLVER_ACCURACY, or as nearly
 *          as they come where a stretch is too short: the seam is then told not to walk
 */
export function drawPrincess(pieces: PrincessPieces): PrincessPieces {
  const { centreFront, sideFront } = walkedNearest(pieces).nearest();
  return { centreFront: centreFront.piece, sideFront };
}

/**
 * The same, with the trace of what the centre front was lengthened by.
 *
 * @returns null where a stretch of the side front's seam is so short that the centre front's cannot be made to match it
 */
export function walkPrincess(pieces: PrincessPieces): Walked | null {
  const { nearest, isWalked } = walkedNearest(pieces);
  return isWalked ? nearest() : null;
}

/** As nearly walked as can be. Where that is not near enough the pieces are drawn only for who takes them even so. */
interface Nearest {
  readonly isWalked: boolean;
  readonly nearest: () => Walked;
}

function walkedNearest({ centreFront, sideFront }: PrincessPieces): Nearest {
  if (isOwnShape(centreFront) || isOwnShape(sideFront)) return ownWalked({ centreFront, sideFront });
  const side = cornersOf(sideFront);
  const start = cornersOf(centreFront);
  const seamsAt = seamsBetween(centreFront, sideFront);
  let above: Mm = 0;
  let below: Mm = 0;
  let best = { miss: Infinity, above, below, seams: seamsAt(start, side) };
  for (let round = 0; round < ROUNDS && best.miss >= SOLVER_ACCURACY; round += 1) {
    const [bust, waist] = [shift(start.bust, 0, above), shift(start.waist, 0, above + below)];
    const seams = round === 0 ? best.seams : seamsAt({ top: start.top, bust, waist }, side);
    const [one, other] = seams;
    const shortAbove = edgeLength(other.upper) - edgeLength(one.upper);
    const shortBelow = edgeLength(other.lower) - edgeLength(one.lower);
    const miss = Math.max(Math.abs(shortAbove), Math.abs(shortBelow));
    if (miss < best.miss) best = { miss, above, below, seams };
    above += shortAbove / steepness(start.top, bust);
    below += shortBelow / steepness(bust, waist);
  }
  const [one, other] = best.seams;
  return {
    nearest: () => {
      const longer = lengthenedAtBust(centreFront, best.above, best.below);
      return {
        centreFront: drawnFurther(longer, withSeam(longer.piece, one)),
        sideFront: withSeam(sideFront, other),
        drop: best.above + best.below,
      };
    },
    isWalked: best.miss < SOLVER_ACCURACY,
  };
}

/** Whether a seam has a shape that the pattern itself gave it, or one that two cubics cannot have. */
const isOwnShape = (piece: Piece): boolean =>
  piece.drawnTurns !== undefined || piece.edges.some(({ seam, from }) => seam === "princess" && isBend(from));

/**
 * The same for a seam of the pattern's own: it keeps its shape. What was bent at the bust point is drawn smooth there on the side
 * front, and the centre front is lengthened at its bust line, its seam going with it, until both walk with the ease they have.
 */
function ownWalked({ centreFront, sideFront }: PrincessPieces): Nearest {
  const smooth = (["princessTop", "princessWaist"] as const).reduce(metAsDrawn, smoothAtBust(sideFront));
  const wanted = ownLengths(smooth);
  const ease = sideFront.seamEase?.princess ?? 0;
  const whole = wanted.upper + wanted.lower;
  let [above, below]: [Mm, Mm] = [0, 0];
  let best = { miss: Infinity, above, below };
  for (let round = 0; round < ROUNDS && best.miss >= SOLVER_ACCURACY; round += 1) {
    const own = ownLengths(withOwnSeam(centreFront, above, below));
    // The ease lies along the whole seam.
    const shortAbove = wanted.upper - (ease * wanted.upper) / whole - own.upper;
    const shortBelow = wanted.lower - (ease * wanted.lower) / whole - own.lower;
    const miss = Math.max(Math.abs(shortAbove), Math.abs(shortBelow));
    if (miss < best.miss) best = { miss, above, below };
    const { top, bust, waist } = cornersOf(centreFront);
    above += shortAbove / steepness(top, shift(bust, 0, above));
    below += shortBelow / steepness(bust, shift(waist, 0, below));
  }
  return {
    nearest: () => ({
      centreFront: ownLengthened(centreFront, best.above, best.below),
      sideFront: smooth,
      drop: best.above + best.below,
    }),
    isWalked: best.miss < SOLVER_ACCURACY,
  };
}

/** The stretches of the seam above and below the bust point. */
function ownStretches(piece: Piece): { readonly upper: Stretch; readonly lower: Stretch } {
  const [before, after] = [stretchTo(piece, "princessBust"), stretchFrom(piece, "princessBust")];
  return endsOf(piece, before).from === "princessTop"
    ? { upper: before, lower: after }
    : { upper: after, lower: before };
}

function ownLengths(piece: Piece): { readonly upper: Mm; readonly lower: Mm } {
  const { upper, lower } = ownStretches(piece);
  return { upper: stretchLength(piece, upper), lower: stretchLength(piece, lower) };
}

/** A corner at the bust point that the pattern does not have itself drawn smooth. */
const smoothAtBust = (piece: Piece): Piece =>
  Math.abs(turnAtDegrees(piece, "princessBust") - turnWithin(piece, "princessBust")) > DRAWN_ALIKE_DEGREES
    ? smoothedAt(piece, "princessBust")
    : piece;

/** An end of the seam turned until it meets what it met as the pattern was drawn. */
function metAsDrawn(piece: Piece, corner: PointName): Piece {
  const own = piece.drawnTurns?.[corner];
  const off = own === undefined ? 0 : turnAtDegrees(piece, corner) - own;
  if (Math.abs(off) <= DRAWN_ALIKE_DEGREES) return piece;
  const into = edgeTo(piece, corner);
  return invariant(piece.edges[into], "edge").seam === "princess"
    ? edgeTurned(piece, into, "end", radiansFromDegrees(off))
    : edgeTurned(piece, edgeFrom(piece, corner), "start", radiansFromDegrees(-off));
}

/** The centre front lengthened at its bust line, each stretch of its seam drawn on to where its ends come to lie. */
function ownLengthened(piece: Piece, above: Mm, below: Mm): Operated {
  const longer = lengthenedAtBust(piece, above, below);
  if (above === 0 && below === 0) return longer;
  const { upper, lower } = ownStretches(piece);
  const seam = withOwnSeam(piece, above, below);
  const points = { ...longer.piece.points };
  const edges = longer.piece.edges.map((edge): Edge => {
    const index = piece.edges.findIndex(({ from, to }) => from === edge.from && to === edge.to);
    if (!upper.includes(index) && !lower.includes(index)) return edge;
    const own = invariant(seam.edges[index], "edge");
    for (const name of [own.from, own.to]) if (isBend(name)) points[name] = invariant(seam.points[name], name);
    return own;
  });
  return drawnFurther(longer, { ...longer.piece, points, edges });
}

/** The same of its seam alone, which is all that is measured in rounds: what lies beside it stays where it was. */
function withOwnSeam(piece: Piece, above: Mm, below: Mm): Piece {
  if (above === 0 && below === 0) return piece;
  const { upper, lower } = ownStretches(piece);
  const bust = shift(pointOf(piece, "princessBust"), 0, above);
  const { from, to } = endsOf(piece, lower);
  const lowered = bendStretch(piece, lower, (point, share) => {
    const by = from === "princessBust" ? share : 1 - share;
    return shift(point, 0, above + below * by * by * (3 - 2 * by));
  });
  const raised = withEndMoved(piece, upper, endsOf(piece, upper).to === "princessBust" ? "end" : "start", bust);
  const points = { ...piece.points };
  const edges = [...piece.edges];
  for (const [bent, stretch] of [
    [raised, upper],
    [lowered, lower],
  ] as const)
    for (const index of stretch) {
      const own = invariant(bent.edges[index], "edge");
      edges[index] = own;
      for (const name of [own.from, own.to]) if (isBend(name)) points[name] = invariant(bent.points[name], name);
    }
  const end = from === "princessBust" ? to : from;
  const endAt = moveRigidly(downBy(piece, above + below), pointOf(piece, end));
  points.princessBust = placedAt(invariant(piece.points.princessBust, "princessBust"), bust);
  points[end] = placedAt(invariant(piece.points[end], end), endAt);
  return redrawn(piece, points, edges);
}

/** By how much a straight stretch grows where its lower end goes down by 1; not so little that a step would run away. */
const steepness = (from: PiecePoint, to: PiecePoint): number => Math.max((to.y - from.y) / distance(from, to), 1 / 4);

export const cornersOf = (piece: Piece): Corners => ({
  top: pointOf(piece, "princessTop"),
  bust: pointOf(piece, "princessBust"),
  waist: pointOf(piece, "princessWaist"),
});

/**
 * The centre front cut straight across at its bust line, and all that lies below slid down; the new bust line lies in
 * the gap.
 */
function lengthenedAtBust(piece: Piece, above: Mm, below: Mm): Operated {
  const [centre, bust] = [pointOf(piece, "centreBust"), pointOf(piece, "princessBust")];
  const marked = (longer: Piece): Piece =>
    withPointsAt(longer, {
      princessBust: shift(bust, 0, above),
      bustPoint: shift(bust, 0, above),
      centreBust: shift(centre, 0, above),
    });
  // A seam that walks already is only drawn anew.
  if (above === 0 && below === 0)
    return {
      piece: marked(piece),
      get trace() {
        return slidDown(piece, 0).trace;
      },
    };
  const moved = slidDown(piece, above + below);
  const healed = withoutBridge(withoutBridge(moved.piece, "princessBust", "cut1"), "centreBust", "cut2");
  return drawnFurther(moved, marked(healed));
}

function slidDown(piece: Piece, by: Mm): Operated {
  const parted = partAt(partAt(piece, "princessBust", "cut1", null), "centreBust", "cut2", null);
  const [centre, bust] = [pointOf(piece, "centreBust"), pointOf(piece, "princessBust")];
  return cutAndMove(
    parted,
    [{ from: "cut1", to: "centreBust", inside: [], carries: ["underBustCentre"], motion: downBy(piece, by) }],
    { cuts: [[centre, bust]], hinges: [] },
  );
}

/** What slides down below the bust line. */
function downBy(piece: Piece, by: Mm): Rigid<"piece"> {
  const bust = pointOf(piece, "princessBust");
  return shiftMotion(bust, shift(bust, 0, by));
}

/** The outline joined up across a cut: the edge that bridges it goes, and one corner stands for both its ends. */
export function withoutBridge(piece: Piece, corner: PointName, second: PointName): Piece {
  const bridge = edgeFrom(piece, corner);
  const edges: Edge[] = [];
  for (const [index, edge] of piece.edges.entries())
    if (index !== bridge) edges.push(edge.from === second ? withEnds(edge, corner, edge.to, edge.curve) : edge);
  return redrawn(piece, withoutPoint(piece.points, [second]), edges);
}

export function withPointsAt(piece: Piece, places: Readonly<Partial<Record<PointName, PiecePoint>>>): Piece {
  const points: Partial<Record<PointName, NamedPoint>> = { ...piece.points };
  for (const name of pointNames(piece)) {
    const at = places[name];
    if (at !== undefined) points[name] = placedAt(invariant(points[name], name), at);
  }
  return redrawn(piece, points, piece.edges);
}

/**
 * Both seams for where their corners are; at their ends they meet as one straight line of what they are sewn to. What they are
 * sewn to stays where it is while the seams are drawn in rounds.
 */
function seamsBetween(centreFront: Piece, sideFront: Piece) {
  const [centreTop, centreWaist] = [turnAtTop(centreFront), turnAtWaist(centreFront)];
  const [sideTop, sideWaist] = [turnAtTop(sideFront), turnAtWaist(sideFront)];
  const rest = 1 - CENTRE_SHARE;
  return (centre: Corners, side: Corners): readonly [Seam, Seam] => {
    const top = turnBetween(radians(Math.PI), radians(centreTop(centre) + sideTop(side)));
    const waist = turnBetween(radians(Math.PI), radians(centreWaist(centre) + sideWaist(side)));
    return [
      drawn(centre, -top * CENTRE_SHARE, waist * CENTRE_SHARE, 0),
      drawn(side, top * rest, -waist * rest, SIDE_SQUARE),
    ];
  };
}

/** Turn of the outline at an end of the seam, were the seam straight. */
type TurnAt = (corners: Corners) => Radians;

/** At its upper end. */
function turnAtTop(piece: Piece): TurnAt {
  const { before, after, isDown } = neighbours(piece, "princessTop");
  if (isDown) {
    const into = edgeTangentAt(curveOf(piece, before), 1);
    return ({ top, bust }) => turnBetween(into, directionOf(top, bust));
  }
  const outOf = edgeTangentAt(curveOf(piece, after), 0);
  return ({ top, bust }) => turnBetween(directionOf(bust, top), outOf);
}

/** The same at its lower end. */
function turnAtWaist(piece: Piece): TurnAt {
  const { before, after, isDown } = neighbours(piece, "princessWaist");
  if (isDown) {
    const outOf = edgeTangentAt(curveOf(piece, after), 0);
    return ({ bust, waist }) => turnBetween(directionOf(bust, waist), outOf);
  }
  const into = edgeTangentAt(curveOf(piece, before), 1);
  return ({ bust, waist }) => turnBetween(into, directionOf(waist, bust));
}

/** The edges at an end of the seam, and whether the outline goes down the seam (centre front) or up it. */
function neighbours(piece: Piece, corner: PointName): { before: Edge; after: Edge; isDown: boolean } {
  const before = invariant(piece.edges[edgeTo(piece, corner)], "edge");
  const after = invariant(piece.edges[edgeFrom(piece, corner)], "edge");
  return { before, after, isDown: (corner === "princessTop" ? after : before).seam === "princess" };
}

/**
 * One seam from above to below, at its ends turned off the straight by the amounts given. Through the bust point it goes
 * in the direction of the circle through the three corners, turned towards square to the bust line by a share.
 */
function drawn({ top, bust, waist }: Corners, turnTop: number, turnWaist: number, square: number): Seam {
  const [down, on] = [directionOf(top, bust), directionOf(bust, waist)];
  const share = distance(top, bust) / (distance(top, bust) + distance(bust, waist));
  const round = radians(down + turnBetween(down, on) * share);
  const through = radians(round + turnBetween(round, DOWN) * square);
  const [u1, u2] = controls(top, radians(down + turnTop), bust, through, HANDLE_AT_END, HANDLE_AT_BUST);
  const [l1, l2] = controls(bust, through, waist, radians(on + turnWaist), HANDLE_AT_BUST, HANDLE_AT_END);
  return {
    upper: { a: top, b: bust, curve: { c1: u1, c2: u2 } },
    lower: { a: bust, b: waist, curve: { c1: l1, c2: l2 } },
  };
}

function withSeam(piece: Piece, { upper, lower }: Seam): Piece {
  const edges = piece.edges.map((edge): Edge => {
    if (edge.seam !== "princess") return edge;
    const stretch = edge.from === "princessTop" || edge.to === "princessTop" ? upper : lower;
    const isDown = edge.from === "princessTop" || edge.to === "princessWaist";
    return withCurve(edge, (isDown ? stretch : edgeReverse(stretch)).curve);
  });
  return redrawn(piece, piece.points, edges);
}
