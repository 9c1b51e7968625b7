/**
 * The bust line laid anew after a dart was moved. Turning a part changes nothing that is sewn, so neither does the girth at
 * the bust change; but the line it is measured along runs over the parts that were turned against each other.
 */
import { distance, polar, type PiecePoint } from "../../geometry/point";
import { segmentNearest } from "../../geometry/segment";
import { levelWidth } from "../../girth/levelWidth";
import { pointOf, type Piece, type PointName } from "../../pattern/piece";
import { SAME_GIRTH, SOLVER_ACCURACY } from "../../tolerance";
import { radians, type Mm } from "../../units";

const CHAIN: readonly PointName[] = ["centreBust", "bustLineInner", "bustLineOuter", "sideBust"];

/** mm. As far from the bust point as the line is ever led to have its length. */
const FAR: Mm = 200;
const ROUNDS = 50;
/** Ways from the bust point that are looked at for a place that the line can be led by. */
const WAYS = 24;

/** The bust line as it is measured, without darts; mm. null where a piece has none over the bust point. */
function lengthOf(piece: Piece): Mm | null {
  const line = piece.levelLines.find(({ level }) => level === "bust");
  const isOver =
    line !== undefined &&
    "points" in line.along &&
    CHAIN.every((name, i) => "points" in line.along && line.along.points[i] === name);
  if (!isOver || CHAIN.some((name) => piece.points[name] === undefined)) return null;
  let sum = 0;
  for (const [i, to] of CHAIN.entries()) {
    const from = CHAIN[i - 1];
    if (from === undefined) continue;
    const [a, b] = [pointOf(piece, from), pointOf(piece, to)];
    sum += Math.sign(b.x - a.x) * distance(a, b);
  }
  return sum;
}

/**
 * The piece with its bust line led by one place beside the bust point, so that it is as long as before; just as it was
 * where nothing changed it.
 */
export function bustLineKept(after: Piece, before: Piece): Piece {
  const [wanted, is] = [lengthOf(before), lengthOf(after)];
  if (wanted === null || is === null || Math.abs(wanted - is) < SOLVER_ACCURACY) return after;
  const girth = levelWidth(before, "bust") ?? 0;
  const bust = pointOf(after, "bustPoint");
  // Of the places that make the line as long, the nearest from where it crosses no dart.
  const led = placesFor(after, wanted).map((place) => {
    const piece = withLineBy(after, place);
    const off = Math.abs((levelWidth(piece, "bust") ?? 0) - girth);
    return { piece, rank: (off < SAME_GIRTH ? 0 : FAR * off) + distance(place, bust) };
  });
  return led.toSorted((a, b) => a.rank - b.rank)[0]?.piece ?? after;
}

const withLineBy = (piece: Piece, at: PiecePoint): Piece => ({
  ...piece,
  points: { ...piece.points, bustLineInner: { at, level: "bust" }, bustLineOuter: { at, level: "bust" } },
});

/** Places around the bust point by which the line from the centre to the side is as long as wanted. */
function placesFor(piece: Piece, wanted: Mm): readonly PiecePoint[] {
  const [bust, centre, side] = [pointOf(piece, "bustPoint"), pointOf(piece, "centreBust"), pointOf(piece, "sideBust")];
  const lengthBy = (place: PiecePoint): Mm => distance(centre, place) + distance(place, side);
  const from = lengthBy(bust) <= wanted ? bust : segmentNearest(centre, side, bust).point;
  // After a small bust adjustment the line runs back over a lap; what was shorter than straight can only become straight.
  if (lengthBy(from) > wanted) return [from];
  // Along any way from there the line only grows.
  return Array.from({ length: WAYS }, (_, i): PiecePoint => {
    const way = radians((2 * Math.PI * i) / WAYS);
    let [near, far] = [0, FAR];
    for (let round = 0; round < ROUNDS; round += 1) {
      const middle = (near + far) / 2;
      if (lengthBy(polar(from, way, middle)) > wanted) far = middle;
      else near = middle;
    }
    return polar(from, way, near);
  });
}
