/** The printed points that a strip is laid on by, and how large the strip must be to hold enough of them. */
import { distance, type PiecePoint } from "../geometry/point";
import { pointNames, pointOf, type Piece, type PointName } from "../pattern/piece";
import { TWINS } from "../tolerance";
import type { Mm, Radians } from "../units";
import type { LayOnPoint } from "./overlay";
import { isInStrip, stripAbout, stripArea, stripReach, stripWith, widened, type Strip } from "./strip";

/** mm. Two points this far apart hold a strip from turning: half a millimetre out at one of them shows as half a degree. */
const LAY_ON_APART: Mm = 60;

/** How near the edge of the strip a printed point may lie, so that its cross is whole, mm. */
export const CROSS_ROOM: Mm = 6;

/** Printed points that can be told on the tissue: corners, ends of darts and of their mouths, of the bust, waist and hip lines. */
export function printedPoints(piece: Piece): readonly LayOnPoint[] {
  const levelEnds = new Set(piece.levelLines.flatMap(({ along }) => ("points" in along ? along.points : [])));
  const shown = new Set<PointName>();
  piece.edges.forEach((edge, index) => {
    const before = piece.edges.at(index - 1);
    const isCorner = before === undefined || before.seam !== edge.seam || before.mouthOf !== edge.mouthOf;
    if (isCorner || levelEnds.has(edge.from)) shown.add(edge.from);
  });
  for (const { apex, gathered } of piece.darts) if (gathered !== true) shown.add(apex);
  const named = pointNames(piece).filter(
    (name) => (shown.has(name) || name === "bustPoint" || name === "princessBust") && !name.startsWith("cut"),
  );
  return named
    .map((name) => ({ name, at: pointOf(piece, name) }))
    .filter(({ at }, index, all) => all.slice(0, index).every((other) => distance(other.at, at) >= TWINS));
}

interface Room {
  readonly longest: Mm;
  readonly margin: Mm;
}

export interface Held {
  readonly strip: Strip;
  readonly layOn: readonly LayOnPoint[];
}

/**
 * The smallest strip that holds the lines and two printed points far enough apart; upright where that costs little.
 *
 * @param lines points along all that must be on it
 * @param turns the slants to try
 * @param room what the strip may reach at the most, and the paper about its lines: at least `CROSS_ROOM`
 * @returns null where no two points can be had
 */
export function holdBy(
  lines: readonly PiecePoint[],
  points: readonly LayOnPoint[],
  turns: readonly Radians[],
  room: Room,
): Held | null {
  let best: Held | null = null;
  for (const turn of turns) {
    const held = heldAt(lines, points, turn, room);
    // The upright one comes first; another must be clearly smaller.
    if (held !== null && (best === null || stripArea(held.strip) < CLEARLY_SMALLER * stripArea(best.strip)))
      best = held;
  }
  return best;
}

const CLEARLY_SMALLER = 0.65;

function heldAt(
  lines: readonly PiecePoint[],
  points: readonly LayOnPoint[],
  turn: Radians,
  { longest, margin }: Room,
): Held | null {
  const bare = stripAbout(lines, turn);
  const withPoints = (added: readonly LayOnPoint[]): Held | null => {
    const about = stripWith(
      bare,
      added.map(({ at }) => at),
      turn,
    );
    const within = widened(about, margin - CROSS_ROOM);
    const layOn = points.filter(({ at }) => isInStrip(within, at));
    const strip = widened(about, margin);
    return stripReach(strip) <= longest && furthest(layOn) >= LAY_ON_APART ? { strip, layOn } : null;
  };
  const asItIs = withPoints([]);
  if (asItIs !== null) return asItIs;
  const singles = points.flatMap((p) => withPoints([p]) ?? []);
  const grown =
    singles.length > 0
      ? singles
      : points.flatMap((p, index) => points.slice(index + 1).flatMap((q) => withPoints([p, q]) ?? []));
  return grown.toSorted((a, b) => stripArea(a.strip) - stripArea(b.strip))[0] ?? null;
}

/** The greatest distance between two of the points; 0 for fewer than two. */
const furthest = (points: readonly LayOnPoint[]): Mm =>
  points.reduce((most, p) => points.reduce((far, q) => Math.max(far, distance(p.at, q.at)), most), 0);
