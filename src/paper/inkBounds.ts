/** Whether ink can be seen through a window, and how it looks: shared by the files that are written. */
import { edgeHullBounds, type EdgeCurve } from "../core/geometry/edgeCurve";
import { invariant } from "../core/result";
import type { Mm } from "../core/units";
import type { Ink, InkGroup, InkLine, InkText } from "../drawing/ink";
import { INK_LOOK, SIZE_DASHES } from "../drawing/inkLook";

interface Box {
  readonly left: Mm;
  readonly top: Mm;
  readonly right: Mm;
  readonly bottom: Mm;
}

/** The lengths drawn and left out by turns; a printed size has the dash of its place. */
export function dashOf({ role, size }: InkLine<"sheet">): readonly Mm[] {
  if (role !== "printed" || size === undefined) return INK_LOOK[role].dash;
  return invariant(SIZE_DASHES[size % SIZE_DASHES.length], "a dash for a size");
}

/** Width of a text set at `size`, mm; where it is not known, no letter is wider than the em. */
type WidthOf = (text: InkText<"sheet">) => Mm;
const widest: WidthOf = ({ text, size }) => text.length * size;

/** The ink of a group, less what lies wholly outside its window. */
export function inkInView(group: InkGroup, widthOf: WidthOf = widest): readonly Ink<"sheet">[] {
  const { clip, dx, dy } = group;
  if (clip === null) return group.ink;
  const view: Box = {
    left: clip.x - dx,
    top: clip.y - dy,
    right: clip.x + clip.width - dx,
    bottom: clip.y + clip.height - dy,
  };
  return group.ink.filter((ink) =>
    ink.kind === "text" ? meets(textBox(ink, widthOf(ink)), view) : lineMeets(ink, view),
  );
}

/** Where along its own direction writing starts, from the point it is anchored at. */
export const startOf = ({ anchor }: InkText<"sheet">, width: Mm): Mm =>
  -{ start: 0, middle: 0.5, end: 1 }[anchor] * width;

const meets = (p: Box, q: Box): boolean =>
  p.left <= q.right && q.left <= p.right && p.top <= q.bottom && q.top <= p.bottom;

/** A line may pass round the window: some edge of it must come near, unless it is filled. */
function lineMeets(ink: InkLine<"sheet">, view: Box): boolean {
  const slack = INK_LOOK[ink.role].width;
  const boxes = ringOf(ink).map((edge) => boxAbout(edge, slack));
  return ink.filled === true ? meets(boxes.reduce(joined, NOWHERE), view) : boxes.some((box) => meets(box, view));
}

/** The edges, and the straight one by which a closed line ends where it began. */
function ringOf({ edges, closed }: InkLine<"sheet">): InkLine<"sheet">["edges"] {
  const [first, last] = [edges[0], edges.at(-1)];
  if (!closed || first === undefined || last === undefined) return edges;
  return [...edges, { a: last.b, b: first.a, curve: null }];
}

function boxAbout(edge: EdgeCurve<"sheet">, slack: Mm): Box {
  const { min, max } = edgeHullBounds(edge);
  return { left: min.x - slack, top: min.y - slack, right: max.x + slack, bottom: max.y + slack };
}

const NOWHERE: Box = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };

const joined = (p: Box, q: Box): Box => ({
  left: Math.min(p.left, q.left),
  top: Math.min(p.top, q.top),
  right: Math.max(p.right, q.right),
  bottom: Math.max(p.bottom, q.bottom),
});

/** Along its foot as wide as it is, and about that one em either way, for what letters have above and below. */
function textBox(ink: InkText<"sheet">, width: Mm): Box {
  const { at, turn, size } = ink;
  const from = startOf(ink, width);
  const xs = [from, from + width].map((along) => at.x + along * Math.cos(turn));
  const ys = [from, from + width].map((along) => at.y + along * Math.sin(turn));
  return {
    left: Math.min(...xs) - size,
    top: Math.min(...ys) - size,
    right: Math.max(...xs) + size,
    bottom: Math.max(...ys) + size,
  };
}
