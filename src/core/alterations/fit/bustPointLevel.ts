/**
 * The bust darts brought down or up to the wearer's bust point, as in a window cut round their ends: a dart from the side
 * seam goes bodily, with its mouth; the end of any other moves, its mouth stays. A princess seam takes its bend along.
 */
import { edgeLength, edgeTangentAt } from "../../geometry/edgeCurve";
import {
  between,
  directionOf,
  distance,
  midpoint,
  piecePoint,
  polar,
  shift,
  type PiecePoint,
} from "../../geometry/point";
import { lineDistance } from "../../geometry/segment";
import { seamLength } from "../../girth/seamLength";
import { moveMouthEnd } from "../../dart/mouthEnd";
import { dartOf, isBend, pointOf, type Dart, type Edge, type Piece, type PointName } from "../../pattern/piece";
import { fail, invariant, ok } from "../../result";
import { trueDartAgain } from "../../surgery/beyondCut";
import { drawPrincess, withPointsAt } from "../../surgery/princessSeam";
import { curveOf, edgeFrom, edgeTo } from "../../pattern/ring";
import { stretchAt, stretchLength } from "../../pattern/seamStretch";
import { SHORTEST_DART } from "../../tolerance";
import type { Mm } from "../../units";
import { withPiece, type PieceSet } from "../../pattern/pieceSet";
import type { FitDefinition } from "../outcome/definition";
import { bustGained, walkedBy } from "./whatChanged";

/** What must be left of a seam above and below a mouth, to be drawn smooth. */
const LEFT_OF_SEAM: Mm = 22;

/** What must be left of the length of a dart whose mouth stays (our own choice: shorter, it bends its seam). */
const LEFT_OF_DART = 0.75;

const aimsAtBust = ({ aimsAt }: Dart): boolean => aimsAt === "bustPoint";

const dartPiece = ({ front, cup }: PieceSet): Piece | undefined =>
  [front, cup].find((piece) => piece?.points.bustPoint !== undefined && piece.darts.some(aimsAtBust));

/** Whether a corner ends a stretch of several edges. */
const isBesideBends = (piece: Piece, corner: PointName): boolean =>
  piece.edges.some(({ from, to }, index) => (from === corner || to === corner) && stretchAt(piece, index).length > 1);

/** Points moved, and the controls of the edges beside them with them, each as near its end as the edge is now long. */
function moveCorners(piece: Piece, names: readonly PointName[], by: Mm, across: Mm = 0): Piece {
  const places: Partial<Record<PointName, PiecePoint>> = {};
  for (const name of names) places[name] = shift(pointOf(piece, name), across, by);
  if (names.some((name) => isBesideBends(piece, name)))
    return names.reduce((done, name) => moveMouthEnd(done, name, shift(pointOf(done, name), across, by)), piece);
  const moved = withPointsAt(piece, places);
  const edges = piece.edges.map((edge): Edge => {
    if (edge.curve === null || !(names.includes(edge.from) || names.includes(edge.to))) return edge;
    const [a, b] = [pointOf(piece, edge.from), pointOf(piece, edge.to)];
    const [start, end] = [pointOf(moved, edge.from), pointOf(moved, edge.to)];
    const scale = distance(start, end) / distance(a, b);
    const { c1, c2 } = edge.curve;
    return {
      ...edge,
      curve: {
        c1: shift(start, (c1.x - a.x) * scale, (c1.y - a.y) * scale),
        c2: shift(end, (c2.x - b.x) * scale, (c2.y - b.y) * scale),
      },
    };
  });
  return { ...moved, edges };
}

/**
 * One bust dart moved, legs and seam trued; the seam as long as it was. The mouth of a side dart slides square to the
 * dart's middle line, which is nearest to the run of the seam on both sides of it; its end goes straight down.
 */
function moveDart(piece: Piece, dart: Dart, by: Mm): Piece {
  const { apex, inner, outer, seam } = dart;
  const ended = moveCorners(piece, [apex], by);
  const moved =
    seam === "side"
      ? easeSeamAbove(moveCorners(ended, [inner, outer], by, by * squareSlope(piece, dart)), piece, inner)
      : ended;
  return trueDartAgain(moved, piece, dart, seamLength(piece, seam));
}

/**
 * The side seam above a mouth that came off its line, bent gently over all its length from the underarm: a share
 * 3f² - 2f³ of the way off at a share f of the length, so that it leaves the underarm and reaches the mouth as it did.
 */
function easeSeamAbove(moved: Piece, before: Piece, inner: PointName): Piece {
  const index = edgeTo(before, inner);
  const last = invariant(before.edges[index], "edge");
  // A stretch with bends was moved as a whole.
  if (stretchAt(before, index).length > 1 || isBend(last.from)) return moved;
  const upperIndex = edgeTo(before, last.from);
  const upper = invariant(before.edges[upperIndex], "edge");
  if (upper.seam !== "side" || upper.mouthOf !== null) return moved;
  const [top, middle, end, endNow] = [
    pointOf(before, upper.from),
    pointOf(before, last.from),
    pointOf(before, inner),
    pointOf(moved, inner),
  ];
  const off = acrossLine(end, polar(end, edgeTangentAt(curveOf(before, last), 1), 1), endNow);
  const [above, below] = [edgeLength(curveOf(before, upper)), edgeLength(curveOf(before, last))];
  const share = above / (above + below);
  const bend = share * share * (3 - 2 * share);
  const steeper = (6 * share * (1 - share)) / (above + below);
  const middleNow = shift(middle, off.x * bend, off.y * bend);
  const through = edgeTangentAt(curveOf(before, last), 0);
  const onward = directionOf(
    middle,
    shift(middle, Math.cos(through) + off.x * steeper, Math.sin(through) + off.y * steeper),
  );
  const c1 = upper.curve?.c1 ?? between(top, middle, 1 / 3);
  const edges = moved.edges
    .with(upperIndex, { ...upper, curve: { c1, c2: polar(middleNow, onward, -above / 3) } })
    .with(index, {
      ...last,
      curve: {
        c1: polar(middleNow, onward, distance(middleNow, endNow) / 3),
        c2: moved.edges[index]?.curve?.c2 ?? between(endNow, middleNow, 1 / 3),
      },
    });
  return withPointsAt({ ...moved, edges }, { [last.from]: middleNow });
}

/** From a line to a point beside it, square to the line: how far across and down. */
function acrossLine(a: PiecePoint, b: PiecePoint, p: PiecePoint): PiecePoint {
  const length = distance(a, b);
  const off = lineDistance(p, a, b);
  return piecePoint((-(b.y - a.y) * off) / length, ((b.x - a.x) * off) / length);
}

/** How far across goes what slides square to a dart's middle line, for each mm down. */
function squareSlope(piece: Piece, { apex, inner, outer }: Dart): number {
  const [end, mouth] = [pointOf(piece, apex), midpoint(pointOf(piece, inner), pointOf(piece, outer))];
  return -(mouth.y - end.y) / (mouth.x - end.x);
}

/** The most that the darts of a piece can go down (positive) or up: seams must be left beside mouths, and darts long enough. */
function roomOf(piece: Piece, amount: Mm): Mm {
  const left = (index: number): Mm => Math.max(0, stretchLength(piece, stretchAt(piece, index)) - LEFT_OF_SEAM);
  const rooms = piece.darts.filter(aimsAtBust).map((dart) => {
    if (dart.seam === "side") return amount > 0 ? left(edgeFrom(piece, dart.outer)) : left(edgeTo(piece, dart.inner));
    const mouth = (pointOf(piece, dart.inner).y + pointOf(piece, dart.outer).y) / 2 - pointOf(piece, dart.apex).y;
    if (Math.sign(mouth) !== Math.sign(amount)) return Infinity;
    return Math.max(0, Math.min(Math.abs(mouth) - SHORTEST_DART, Math.abs(mouth) * (1 - LEFT_OF_DART)));
  });
  return Math.min(...rooms);
}

function moveDarts(piece: Piece, amount: Mm): Piece {
  const names = piece.darts.filter(aimsAtBust).map(({ name }) => name);
  const moved = names.reduce((done, name) => moveDart(done, dartOf(done, name), amount), piece);
  return moveCorners(moved, ["bustPoint"], amount);
}

function movePrincess(pieces: PieceSet, amount: Mm): PieceSet {
  const centreFront = moveCorners(
    invariant(pieces.centreFront, "centreFront"),
    ["princessBust", "bustPoint", "centreBust"],
    amount,
  );
  const sideFront = moveCorners(invariant(pieces.sideFront, "sideFront"), ["princessBust"], amount);
  const drawn = drawPrincess({ centreFront, sideFront });
  return withPiece(withPiece(pieces, drawn.centreFront), drawn.sideFront);
}

export const bustPointLevel: FitDefinition = {
  range: { least: -30, most: 30 },
  madeOn: ["front", "centreFront", "sideFront", "cup"],
  applies: (pieces) =>
    dartPiece(pieces) !== undefined ||
    (pieces.centreFront?.points.princessBust !== undefined && pieces.sideFront !== undefined),
  apply: (pieces, amount) => {
    const piece = dartPiece(pieces);
    const room = piece === undefined ? Infinity : roomOf(piece, amount);
    if (Math.abs(amount) > room) return fail({ code: "alteration/too-much", most: amount < 0 ? 0 - room : room });
    const moved = piece === undefined ? movePrincess(pieces, amount) : withPiece(pieces, moveDarts(piece, amount));
    // Its side end, or the bend of the princess seam, has moved a little.
    const girth = bustGained(pieces, moved);
    return ok({
      pieces: moved,
      traces: [],
      values: { girth: Math.abs(girth), walked: Math.abs(walkedBy(pieces, moved, 0)) },
      girths: { bust: girth },
    });
  },
};
