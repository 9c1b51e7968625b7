/** Marks drawn with lines: small circles and crosses. */
import { distance, midpoint, sheetPoint, type SheetPoint } from "../geometry/point";
import { CROSS_ARMS, CROSS_MIDDLES, ROUND } from "../tolerance";
import type { Mm } from "../units";
import { groupedBy } from "./groupedBy";
import type { Stroke } from "./strokes";

/** A small circle. */
export function isSmallCircle({ closed, box, edges, length }: Stroke): boolean {
  const [width, height] = [box.max.x - box.min.x, box.max.y - box.min.y];
  const size = Math.max(width, height);
  if (!closed || size > MOST_MARK || Math.min(width, height) < (1 - ROUND) * size || edges.length < 2) return false;
  return (
    Math.abs(length / (Math.PI * size) - 1) <= ROUND && (edges.length > 5 || edges.some(({ curve }) => curve !== null))
  );
}

/** How large a mark is at the most. */
const MOST_MARK: Mm = 12;

/** Two short lines that cross near their middles. */
export function crossesOf(
  strokes: readonly Stroke[],
): readonly { readonly pair: readonly [Stroke, Stroke]; readonly at: SheetPoint }[] {
  const short = strokes.filter(({ edges, closed, length }) => !closed && edges.length === 1 && length <= 2 * MOST_MARK);
  const cells = groupedBy(short, ({ a, b }) => cellOf(midpoint(a, b)));
  const used = new Set<Stroke>();
  return short.flatMap((stroke) => {
    if (used.has(stroke)) return [];
    const at = midpoint(stroke.a, stroke.b);
    const near = [-1, 0, 1].flatMap((dx) =>
      [-1, 0, 1].flatMap((dy) => (cells.get(cellOf(sheetPoint(at.x + dx * 2, at.y + dy * 2))) ?? []).slice(0, 32)),
    );
    const other = near.find((one) => {
      if (one === stroke || used.has(one)) return false;
      const [p, q] = [stroke, one].map(({ a, b }) => ({ x: b.x - a.x, y: b.y - a.y }));
      const square =
        Math.abs((p?.x ?? 0) * (q?.x ?? 0) + (p?.y ?? 0) * (q?.y ?? 0)) <= ROUND * stroke.length * one.length;
      return (
        square &&
        distance(at, midpoint(one.a, one.b)) <= CROSS_MIDDLES &&
        Math.abs(Math.log(one.length / stroke.length)) <= CROSS_ARMS
      );
    });
    if (other === undefined) return [];
    used.add(stroke);
    used.add(other);
    return [{ pair: [stroke, other] as const, at }];
  });
}

const cellOf = ({ x, y }: SheetPoint): string => `${Math.floor(x / 2)} ${Math.floor(y / 2)}`;
