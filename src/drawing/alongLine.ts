/** Writing along a line, beside it, where it crosses nothing. */
import { isFreeWithin, type Lines } from "../core/cutting/room";
import { edgeFlatten, type EdgeCurve } from "../core/geometry/edgeCurve";
import { between, directionOf, distance, midpoint, polar, type PiecePoint } from "../core/geometry/point";
import { lineDistance } from "../core/geometry/segment";
import { invariant } from "../core/result";
import { NEARLY_UPRIGHT, WORDS_ACCURACY } from "../core/tolerance";
import { radians, type Mm, type Radians } from "../core/units";
import { textWidth } from "./fitLines";
import type { Ink, InkText } from "./ink";

/** Read from the left or from below, as a page is turned; never upside down. */
export const readable = (way: Radians): Radians =>
  radians(
    way > Math.PI / 2 - NEARLY_UPRIGHT ? way - Math.PI : way < -Math.PI / 2 - NEARLY_UPRIGHT ? way + Math.PI : way,
  );

/** Shares of the line at which the middle of the words is tried, best first. */
const TRIED = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.2, 0.8, 0.15, 0.85, 0.12, 0.88];
/** From the line to the words, and how far a line may bend away under them, mm. */
const BESIDE: Mm = 1.1;
const MOST_BENT: Mm = 4;
/** The words stay so far from the ends of the line, mm. */
const FROM_END: Mm = 3;

export interface Room {
  /** What the words must lie in. */
  readonly ring: readonly PiecePoint[];
  /** What they must not cross. */
  readonly lines: Lines;
}

/** Where words are set, on the side to which +x turns towards +y from the way of the line; null where there is no room. */
export function alongLine(
  edges: readonly EdgeCurve<"piece">[],
  text: string,
  size: Mm,
  { ring, lines }: Room,
): Pick<InkText<"piece">, "at" | "turn"> | null {
  const points = edges.flatMap((edge, index) => edgeFlatten(edge, WORDS_ACCURACY).slice(index === 0 ? 0 : 1));
  const lengths = points.map((p, index) => (index === 0 ? 0 : distance(invariant(points[index - 1], "point"), p)));
  const total = lengths.reduce((sum, length) => sum + length, 0);
  const width = textWidth(text, size);
  for (const share of TRIED) {
    const [from, to] = [share * total - width / 2, share * total + width / 2];
    if (from < FROM_END || to > total - FROM_END) continue;
    const under = stretchOf(points, lengths, from, to);
    const [a, b] = [invariant(under[0], "point"), invariant(under.at(-1), "point")];
    const bent = Math.max(0, ...under.map((p) => lineDistance(p, a, b)));
    const way = directionOf(a, b);
    const beside = radians(way + Math.PI / 2);
    if (bent > MOST_BENT) continue;
    const off = bent + BESIDE;
    const corners = [
      polar(a, beside, off),
      polar(b, beside, off),
      polar(b, beside, off + size),
      polar(a, beside, off + size),
    ];
    if (!isFreeWithin(corners, ring, lines)) continue;
    const turn = readable(way);
    // The foot of the writing is on its far side, unless it is read the other way round.
    const foot = Math.cos(turn - way) > 0 ? off + 0.8 * size : off + 0.2 * size;
    return { at: polar(midpoint(a, b), beside, foot), turn };
  }
  return null;
}

/** Points of a line between two lengths from its start. */
function stretchOf(points: readonly PiecePoint[], lengths: readonly Mm[], from: Mm, to: Mm): readonly PiecePoint[] {
  const found: PiecePoint[] = [];
  let start = 0;
  points.slice(1).forEach((b, index) => {
    const a = invariant(points[index], "point");
    const length = lengths[index + 1] ?? 0;
    const end = start + length;
    if (length > 0 && start <= from && end > from) found.push(between(a, b, (from - start) / length));
    if (end > from && end < to) found.push(b);
    if (length > 0 && start < to && end >= to) found.push(between(a, b, (to - start) / length));
    start = end;
  });
  return found;
}

/** What is drawn, as lines that words must not cross: writing as the box that it takes. */
export const obstaclesOf = (ink: readonly Ink<"piece">[]): Lines =>
  ink.map((one) =>
    one.kind === "text"
      ? boxOf(one)
      : one.edges.flatMap((edge, index) => edgeFlatten(edge, WORDS_ACCURACY).slice(index === 0 ? 0 : 1)),
  );

function boxOf({ at, text, size, anchor, turn, bold }: InkText<"piece">): readonly PiecePoint[] {
  const width = textWidth(text, size, bold);
  const from = -{ start: 0, middle: 0.5, end: 1 }[anchor] * width;
  const corner = (along: Mm, up: Mm): PiecePoint => polar(polar(at, turn, along), radians(turn - Math.PI / 2), up);
  const [low, high] = [-0.25 * size, 0.8 * size];
  return [
    corner(from, low),
    corner(from + width, low),
    corner(from + width, high),
    corner(from, high),
    corner(from, low),
  ];
}
