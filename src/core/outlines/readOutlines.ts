/** The lines of a file made into closed outlines by size. */
import type { OwnPattern } from "../decisions/ownPattern";
import { isWithinBounds } from "../geometry/bounds";
import { edgeNearest, type EdgeCurve } from "../geometry/edgeCurve";
import { distance, midpoint, type SheetPoint } from "../geometry/point";
import { JOINED_WITHIN, NEARLY_CLOSED, OUTLINE_LOOKED_AT } from "../tolerance";
import type { Mm } from "../units";
import { framesOf } from "./sheetFrame";
import { groupOutlines, shapeOf, type Shape } from "./groupOutlines";
import { byTheClock, joinLines, withoutDoubles, type Chain, type Joined, type Loop } from "./joinLines";
import { crossesOf, isSmallCircle } from "./lineMarks";
import type { ClosedOutline, Mark, OpenLine, OutlineReading, SortedLines, TestSquare } from "./outlineReading";
import { readScale } from "./scale";
import { sortLines, TURN_LAYERS, type LineRole, type Sorting } from "./sortLines";
import { thinned } from "./thinned";
import { onSheet, pointsAlong, strokesOf, type Stroke } from "./strokes";

/**
 * All that the lines of her file come to before any of it is named. Pure; the caller remembers it.
 *
 * Where the scale has to be asked for (`scale.mm` null) a unit of the file stands for 1 mm, so that something can be shown;
 * no length of it is to be used then.
 *
 * @param own    the file and what she said of it
 * @param labels of the chart's sizes, smallest first; none: every kind of line that may be a size is one by its own value
 */
export function readOutlines({
  own,
  labels,
}: {
  readonly own: OwnPattern;
  readonly labels: readonly string[];
}): OutlineReading {
  const { drawing } = own;
  const joinWithin = own.joinWithin ?? JOINED_WITHIN;
  const { scale, mm, squares } = readScale(own);
  const inSquares = new Set(squares.flatMap(({ keys }) => keys));
  const everything = withoutDoubles(strokesOf(drawing, mm));
  const frames = framesOf(everything);
  const strokes = everything.filter((stroke) => !inSquares.has(stroke.key) && !frames.has(stroke));
  const sorting = sortLines(own, strokes, labels);

  const parted = partStrokes(strokes, sorting);
  const shared = parted.get(null)?.outline ?? [];
  const joinedBySize = new Map<string | null, Readonly<Record<LineRole, Joined>>>();
  const usedShared = new Set<Stroke>();
  for (const [size, byRole] of parted) {
    if (size === null) continue;
    const joined = {
      outline: joinLines(
        byRole.outline,
        shared.filter(({ closed }) => !closed),
        joinWithin,
      ),
      sew: joinLines(byRole.sew, parted.get(null)?.sew ?? [], joinWithin),
      inner: joinLines(byRole.inner, [], joinWithin),
    };
    for (const { strokes: used } of [...joined.outline.loops, ...joined.sew.loops])
      for (const stroke of used) usedShared.add(stroke);
    joinedBySize.set(size, joined);
  }
  const sharedLeft = (role: LineRole): Joined => {
    const all = joinLines(parted.get(null)?.[role] ?? [], [], joinWithin);
    return {
      loops: all.loops.filter(({ strokes: used }) => used.some((stroke) => stroke.closed || !usedShared.has(stroke))),
      chains: all.chains.filter(({ strokes: used }) => !used.every((stroke) => usedShared.has(stroke))),
    };
  };
  joinedBySize.set(null, { outline: sharedLeft("outline"), sew: sharedLeft("sew"), inner: sharedLeft("inner") });

  const renamed = inOrder(joinedBySize, sorting.lines, labels);
  const nameOf = (size: string | null): string | null => (size === null ? null : (renamed.get(size) ?? size));

  const shapes: Shape[] = [];
  const marks: Mark[] = [];
  const chains: { readonly chain: Chain; readonly line: OpenLine; readonly role: LineRole }[] = [];
  for (const [sortedAs, byRole] of joinedBySize) {
    const size = nameOf(sortedAs);
    for (const role of ["outline", "sew", "inner"] as const) {
      for (const loop of byRole[role].loops) {
        const [only, more] = loop.strokes;
        if (only !== undefined && more === undefined && isSmallCircle(only))
          marks.push({ at: midpoint(only.box.min, only.box.max), size, layer: only.look.layer, form: "circle" });
        else shapes.push(shapeOf(outlineOf(loop, size), role, loop.strokes, false));
      }
      for (const chain of byRole[role].chains) {
        const layer = chain.strokes[0]?.look.layer ?? "";
        chains.push({ chain, role, line: { id: idOf(chain.strokes, size), size, edges: chain.edges, layer } });
      }
    }
  }
  const crossed = crossesOf(chains.flatMap(({ chain }) => (chain.strokes.length === 1 ? chain.strokes : [])));
  const inCrosses = new Set(crossed.flatMap(({ pair }) => pair));
  const lines = chains.filter(({ chain }) => !chain.strokes.every((stroke) => inCrosses.has(stroke)));
  for (const { at, pair } of crossed) {
    const size = chains.find(({ chain }) => chain.strokes.includes(pair[0]))?.line.size ?? null;
    marks.push({ at, size, layer: pair[0].look.layer, form: "cross" });
  }
  const place = onSheet(mm);
  const sizeAt = (one: { readonly layer: string; readonly group: string }): string | null => {
    const { sortedBy } = sorting;
    const meaning = sortedBy === "layer" || sortedBy === "group" ? lineOf(sorting, one[sortedBy]) : undefined;
    return meaning?.of === "size" ? nameOf(meaning.size) : null;
  };
  for (const point of drawing.points) {
    if (sorting.isStandard && TURN_LAYERS.has(point.layer)) continue;
    marks.push({ at: place(point), size: sizeAt(point), layer: point.layer, form: "point" });
  }
  for (const writing of drawing.writings)
    if (BUST_POINT.test(writing.text))
      marks.push({ at: place(writing), size: sizeAt(writing), layer: writing.layer, form: "writing" });

  const squareShapes = squares.flatMap(({ keys }) => {
    const joined = joinLines(
      everything.filter(({ key }) => keys.includes(key)),
      [],
      joinWithin,
    ).loops[0];
    return joined === undefined ? [] : [shapeOf(outlineOf(joined, null), "outline", joined.strokes, true)];
  });
  const sizes = [...new Set([...labels, ...shapes.map(({ outline }) => outline.size)])].filter((size) => size !== null);
  const isBroken = brokenAmong(
    lines.filter(({ role }) => role !== "inner"),
    shapes,
    joinWithin + OUTLINE_LOOKED_AT,
    parted.size > (parted.has(null) ? 1 : 0),
  );
  const inner = lines.filter((line) => !isBroken.has(line.line.id));
  const all = [...shapes, ...squareShapes];
  const plain = all.filter(({ outline }) => outline.edges.length <= MOST_EDGES);
  const grouped = groupOutlines({
    shapes: plain,
    inner: inner.map(({ line }) => ({ line, points: pointsAlong(line.edges) })),
    marks,
    writings: drawing.writings.map((writing) => ({ at: place(writing), text: writing.text })),
    drawing,
    sizes,
  });
  return {
    scale: { ...scale, squares: squareShapes.map((shape, at) => testSquare(shape, squares[at], mm)) },
    sortedBy: sorting.sortedBy,
    features: sorting.features,
    lines: sorting.lines.map((line) =>
      line.meaning.of === "size" && line.saidBy === "order"
        ? {
            ...line,
            meaning: { of: "size", size: nameOf(line.meaning.size) ?? line.meaning.size },
            saidBy: renamed.has(line.meaning.size) ? "order" : "form",
          }
        : line,
    ),
    joinWithin,
    outlines: all.map(({ outline }) => outline),
    unclosed: lines.flatMap(({ line }) => {
      const gap = isBroken.get(line.id);
      return gap === undefined ? [] : [{ line, gap }];
    }),
    groups: grouped.groups,
    ...(grouped.isCut || plain.length < all.length ? { isCut: true as const } : {}),
  };
}

/** An outline that turns oftener than this is of no piece: dense ones are thinned first (our own choice; seams have a dozen). */
const MOST_EDGES = 1500;

/** What is written at a bust point. */
const BUST_POINT = /^\W*(?:(?:bust|breast)[\s-]*(?:point|apex)|apex|b\.?\s?p\.?)\W*$/iu;

const lineOf = ({ lines }: Sorting, value: string): SortedLines["meaning"] | undefined =>
  lines.find((line) => line.value === value)?.meaning;

type ByRole = Readonly<Record<LineRole, Stroke[]>>;

/** Strokes by size (null for what all share) and by what they do; those of nothing left out. */
function partStrokes(strokes: readonly Stroke[], sorting: Sorting): ReadonlyMap<string | null, ByRole> {
  const parted = new Map<string | null, ByRole>();
  const of = (size: string | null): ByRole => {
    const known = parted.get(size);
    if (known !== undefined) return known;
    const fresh: ByRole = { outline: [], sew: [], inner: [] };
    parted.set(size, fresh);
    return fresh;
  };
  for (const stroke of strokes) {
    const meaning = sorting.meaningOf(stroke);
    if (meaning.of === "nothing") continue;
    const role = meaning.of === "inner" ? "inner" : sorting.roleOf(stroke);
    of(meaning.of === "size" ? meaning.size : null)[role].push(stroke);
  }
  return parted;
}

/** Kinds that were only told to be sizes, in the order of what they enclose, by the labels of the chart where they are as many. */
function inOrder(
  joined: ReadonlyMap<string | null, Readonly<Record<LineRole, Joined>>>,
  lines: readonly SortedLines[],
  labels: readonly string[],
): ReadonlyMap<string, string> {
  const kinds = lines.flatMap(({ meaning, saidBy }) =>
    meaning.of === "size" && saidBy === "order" ? [meaning.size] : [],
  );
  if (kinds.length !== labels.length || kinds.length === 0) return new Map();
  const sizeOf = (kind: string): number => {
    const loops = joined.get(kind)?.outline.loops ?? [];
    const chains = joined.get(kind)?.outline.chains ?? [];
    return [...loops, ...chains].map(({ edges }) => extent(edges)).reduce((sum, size) => sum + size, 0);
  };
  const ordered = kinds
    .map((kind) => ({ kind, size: sizeOf(kind) }))
    .toSorted((p, q) => p.size - q.size)
    .map(({ kind }) => kind);
  return new Map(ordered.map((kind, at) => [kind, labels[at] ?? kind]));
}

const across = (values: readonly number[]): number =>
  values.reduce((most, value) => Math.max(most, value), -Infinity) -
  values.reduce((least, value) => Math.min(least, value), Infinity);

function extent(edges: readonly EdgeCurve<"sheet">[]): Mm {
  const points = edges.flatMap(({ a, b }) => [a, b]);
  return across(points.map(({ x }) => x)) + across(points.map(({ y }) => y));
}

const firstOf = (strokes: readonly Stroke[]): string =>
  strokes.reduce((first, stroke) => (stroke.order < first.order ? stroke : first), strokes[0] ?? { key: "", order: 0 })
    .key;

const idOf = (strokes: readonly Stroke[], size: string | null): string =>
  size === null ? firstOf(strokes) : `${firstOf(strokes)} ${size}`;

function outlineOf({ edges, strokes, widestGap }: Loop, size: string | null): ClosedOutline {
  return { id: idOf(strokes, size), size, edges: thinned(byTheClock(edges)), widestGap };
}

function testSquare(
  { outline }: Shape,
  square:
    | {
        readonly middle: TestSquare["at"];
        readonly width: number;
        readonly height: number;
        readonly usual: TestSquare["usual"];
      }
    | undefined,
  mm: Mm,
): TestSquare {
  return {
    outline: outline.id,
    at: square?.middle ?? { x: 0, y: 0 },
    width: (square?.width ?? 0) * mm,
    height: (square?.height ?? 0) * mm,
    usual: square?.usual ?? null,
  };
}

/** Lines shorter than this are marks. */
const SHORT: Mm = 40;

const lengthOfChain = ({ strokes }: Chain): Mm => strokes.reduce((sum, { length }) => sum + length, 0);

/** Lines that ought to close and do not, with the gap that is left: to the nearest other loose end, or its own. */
function brokenAmong(
  lines: readonly { readonly chain: Chain; readonly line: OpenLine }[],
  shapes: readonly Shape[],
  within: Mm,
  hasSizes: boolean,
): ReadonlyMap<string, Mm> {
  const ends = lines.map(({ chain, line }) => ({
    chain,
    line,
    a: chain.edges[0]?.a,
    b: chain.edges.at(-1)?.b,
    length: lengthOfChain(chain),
  }));
  const long = ends.filter(({ chain, length }) => !chain.isHeld && length >= SHORT).slice(0, 600);
  const broken = new Map<string, Mm>();
  for (const one of long) {
    const { a, b } = one;
    if (a === undefined || b === undefined || (one.line.size === null && hasSizes)) continue;
    const others = long.filter(({ line }) => line !== one.line && line.size === one.line.size);
    const off = (p: SheetPoint, own: SheetPoint): Mm =>
      Math.min(
        distance(p, own),
        ...others.flatMap((other) =>
          [other.a, other.b].map((end) => (end === undefined ? Infinity : distance(p, end))),
        ),
      );
    const gap = Math.max(off(a, b), off(b, a));
    const own = shapes.filter(({ outline }) => outline.size === one.line.size);
    const isOn = (p: SheetPoint, { box, ring }: Shape): boolean =>
      isWithinBounds(p, box, within) && ring.some((edge) => edgeNearest(edge, p).distance <= within);
    // From outline to outline, as a dart's legs.
    if (own.some((shape) => isOn(a, shape)) && own.some((shape) => isOn(b, shape))) continue;
    const isInside = own.some(({ box }) => isWithinBounds(a, box, within) && isWithinBounds(b, box, within));
    if (isInside && gap > NEARLY_CLOSED * one.length) continue;
    broken.set(one.line.id, gap);
  }
  return broken;
}
