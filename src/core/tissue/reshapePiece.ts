/**
 * A piece with its points moved, and its curves taken along: each control keeps its angle to what it meets at its point, and
 * its share of the edge's length. So corners stay as square, smooth points as smooth and darts as trued as they were.
 */
import { directionOf, distance, piecePoint, polar, turnBetween, type PiecePoint } from "../geometry/point";
import { pointNames, pointOf, type Edge, type NamedPoint, type Piece, type PointName } from "../pattern/piece";
import { radians, type Radians } from "../units";

type Shifts = ReadonlyMap<PointName, readonly [number, number]>;

/** @param shifts by how much each point goes, mm; points that are not named stay */
export function reshapePiece(piece: Piece, shifts: Shifts): Piece {
  const points: Partial<Record<PointName, NamedPoint>> = {};
  for (const name of pointNames(piece)) {
    const point = piece.points[name];
    if (point === undefined) continue;
    const by = shifts.get(name);
    points[name] = by === undefined ? point : { ...point, at: piecePoint(point.at.x + by[0], point.at.y + by[1]) };
  }
  const moved: Piece = { ...piece, points };
  const turns = new Map<PointName, Radians>();
  const turnAt = (name: PointName): Radians => {
    const known = turns.get(name);
    if (known !== undefined) return known;
    const turn = turnOf(piece, moved, name);
    turns.set(name, turn);
    return turn;
  };
  return { ...moved, edges: piece.edges.map((edge) => withControls(piece, moved, edge, turnAt)) };
}

function withControls(piece: Piece, moved: Piece, edge: Edge, turnAt: (name: PointName) => Radians): Edge {
  if (edge.curve === null) return edge;
  const [a, b] = [pointOf(piece, edge.from), pointOf(piece, edge.to)];
  const [toA, toB] = [pointOf(moved, edge.from), pointOf(moved, edge.to)];
  const span = distance(a, b);
  const longer = span === 0 ? 1 : distance(toA, toB) / span;
  const carried = (from: PiecePoint, to: PiecePoint, control: PiecePoint, turn: Radians): PiecePoint =>
    polar(to, radians(directionOf(from, control) + turn), distance(from, control) * longer);
  return {
    ...edge,
    curve: {
      c1: carried(a, toA, edge.curve.c1, turnAt(edge.from)),
      c2: carried(b, toB, edge.curve.c2, turnAt(edge.to)),
    },
  };
}

const turned = (from: PiecePoint, to: PiecePoint, newFrom: PiecePoint, newTo: PiecePoint): Radians =>
  turnBetween(directionOf(from, to), directionOf(newFrom, newTo));

/**
 * By how much what meets at a point is turned: as the dart's leg at a mouth, as the straight edge where one of two is straight,
 * else as both edges' chords do on the whole.
 */
function turnOf(piece: Piece, moved: Piece, name: PointName): Radians {
  const dart = piece.darts.find(({ inner, outer }) => inner === name || outer === name);
  if (dart !== undefined)
    return turned(pointOf(piece, dart.apex), pointOf(piece, name), pointOf(moved, dart.apex), pointOf(moved, name));
  const met = piece.edges.filter(({ from, to }) => from === name || to === name);
  const straight = met.filter(({ curve }) => curve === null);
  const counted = straight.length > 0 ? straight : met;
  let sum = 0;
  for (const { from, to } of counted)
    sum += turned(pointOf(piece, from), pointOf(piece, to), pointOf(moved, from), pointOf(moved, to));
  return radians(counted.length === 0 ? 0 : sum / counted.length);
}
