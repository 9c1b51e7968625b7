/** Outlines of several sizes that are one piece, and what lies on them. */
import type { FileDrawing } from "../decisions/fileDrawing";
import { LIMITS } from "../decisions/limits";
import { areBoundsNear, boundsOfPoints, isWithinBounds, type Bounds } from "../geometry/bounds";
import { edgeFlatten, lineEdge, type EdgeCurve } from "../geometry/edgeCurve";
import { isInOutline, signedArea } from "../geometry/outline";
import { distance, midpoint, type SheetPoint } from "../geometry/point";
import { OUTLINE_LOOKED_AT } from "../tolerance";
import type { Mm } from "../units";
import type { ClosedOutline, Mark, OpenLine, OutlineGroup, SheetWriting } from "./outlineReading";
import { groupedBy } from "./groupedBy";
import { pieceSaid, sizeNamed } from "./sizeNames";
import type { LineRole } from "./sortLines";
import type { Stroke } from "./strokes";

/** An outline with what is asked of its form. */
export interface Shape {
  readonly outline: ClosedOutline;
  readonly role: LineRole;
  readonly strokes: readonly Stroke[];
  readonly box: Bounds<"sheet">;
  readonly area: number;
  readonly points: readonly SheetPoint[];
  readonly ring: readonly EdgeCurve<"sheet">[];
  readonly isSquare: boolean;
}

export function shapeOf(outline: ClosedOutline, role: LineRole, strokes: readonly Stroke[], isSquare: boolean): Shape {
  const points = outline.edges.flatMap((edge) => edgeFlatten(edge, OUTLINE_LOOKED_AT * 2).slice(0, -1));
  return {
    outline,
    role,
    strokes,
    box: boundsOfPoints(points),
    area: Math.abs(signedArea(outline.edges)),
    points,
    ring: points.map((point, at) => lineEdge(point, points[(at + 1) % points.length] ?? point)),
    isSquare,
  };
}

const boxArea = ({ min, max }: Bounds<"sheet">): number => (max.x - min.x) * (max.y - min.y);
const centre = ({ min, max }: Bounds<"sheet">): SheetPoint => midpoint(min, max);

/** What two boxes have in common of what they cover together, 0 to 1. */
function overlap(p: Bounds<"sheet">, q: Bounds<"sheet">): number {
  const width = Math.min(p.max.x, q.max.x) - Math.max(p.min.x, q.min.x);
  const height = Math.min(p.max.y, q.max.y) - Math.max(p.min.y, q.min.y);
  const both = Math.max(0, width) * Math.max(0, height);
  return both / (boxArea(p) + boxArea(q) - both);
}

/** The ends of a dart's legs lie on the outline itself, neither in it nor outside. */
const middlesOf = (points: readonly SheetPoint[]): readonly SheetPoint[] =>
  points.length < 2 ? points : points.slice(1).map((point, at) => midpoint(points[at] ?? point, point));

/** A stitch line that its cutting line goes along. */
const liesOn = (sew: Shape, main: Shape): boolean =>
  sew.role === "sew" && main.role !== "sew" && overlap(sew.box, main.box) >= SEW_SHARE;

const isIn = (shape: Shape, point: SheetPoint): boolean =>
  isWithinBounds(point, shape.box, 0) && isInOutline(shape.ring, point);

/** Whether most of some points lie in a shape. */
function liesIn(points: readonly SheetPoint[], shape: Shape): boolean {
  const step = Math.max(1, Math.floor(points.length / 9));
  const some = points.filter((_, at) => at % step === 0);
  return some.filter((point) => isIn(shape, point)).length * 2 > some.length;
}

/** Shares of the area of what it lies in: smaller is a mark inside; of a sewing line, larger. */
const INNER_SHARE = 0.1;
const SHARED_INNER_SHARE = 0.5;
const SEW_SHARE = 0.6;
/** How much the boxes of two sizes of a piece have in common, and their areas differ at the most. */
const NESTED = 0.35;
const LIKE_AREA = 0.4;
/** So many are compared with one another; more is no pattern. */
const MOST_COMPARED = 900;

interface Building {
  readonly members: Map<string, Shape>;
  readonly name: string;
}

export interface GroupsIn {
  readonly shapes: readonly Shape[];
  readonly inner: readonly { readonly line: OpenLine; readonly points: readonly SheetPoint[] }[];
  readonly marks: readonly Mark[];
  readonly writings: readonly SheetWriting[];
  readonly drawing: FileDrawing;
  /** In the order of the chart, or as they were found. */
  readonly sizes: readonly string[];
}

/** Groups of outlines, and lines that lie in none. */
export interface Grouped {
  readonly groups: readonly OutlineGroup[];
  /** There are more, left out for being the smallest. */
  readonly isCut: boolean;
  readonly outside: readonly OpenLine[];
}

export function groupOutlines({ shapes, inner, marks, writings, drawing, sizes }: GroupsIn): Grouped {
  // Stitch lines last: where nothing is allowed they are as large as what they lie in.
  const byArea = shapes
    .toSorted((p, q) => Number(p.role === "sew") - Number(q.role === "sew") || q.area - p.area)
    .slice(0, MOST_COMPARED);
  const isFew = byArea.length === shapes.length;
  const frames = new Set(byArea.filter((shape) => isFrame(shape, byArea)));
  const mains: Shape[] = [];
  const within = new Map<Shape, Shape>();
  const sewing = new Map<Shape, Shape>();
  for (const shape of byArea) {
    if (shape.isSquare || frames.has(shape)) {
      mains.push(shape);
      continue;
    }
    const holders = mains.filter(
      (main) =>
        !main.isSquare &&
        !frames.has(main) &&
        (main.outline.size === shape.outline.size || main.outline.size === null || shape.outline.size === null) &&
        areBoundsNear(main.box, shape.box, 0) &&
        (liesIn(shape.points, main) || liesOn(shape, main)),
    );
    const holder = holders.at(-1);
    const share = holder === undefined ? 1 : shape.area / holder.area;
    const isOfAll = shape.outline.size === null && holder !== undefined && holder.outline.size !== null;
    if (holder === undefined) {
      if (shape.role !== "inner") mains.push(shape);
    } else if (shape.role === "inner" || share < (isOfAll ? SHARED_INNER_SHARE : INNER_SHARE))
      within.set(shape, holder);
    else if (share >= SEW_SHARE && !sewing.has(holder) && holder.outline.size === shape.outline.size)
      sewing.set(holder, shape);
    else mains.push(shape);
  }

  const names = namesOf(mains, drawing, sizes);
  const building: Building[] = [];
  const order = [...sizes, ...new Set(mains.map(({ outline }) => outline.size ?? ""))].filter(
    (size, at, all) => all.indexOf(size) === at,
  );
  for (const size of order) {
    const now = mains.filter(({ outline }) => (outline.size ?? "") === size);
    const pairs =
      size === ""
        ? []
        : now.flatMap((shape) =>
            building.flatMap((group) => {
              const best = [...group.members.values()].reduce((most, one) => Math.max(most, likeness(one, shape)), 0);
              return best >= NESTED && !group.members.has("") ? [{ shape, group, best }] : [];
            }),
          );
    const placed = new Set<Shape>();
    for (const { shape, group } of pairs.toSorted((p, q) => q.best - p.best)) {
      if (placed.has(shape) || group.members.has(size)) continue;
      group.members.set(size, shape);
      placed.add(shape);
    }
    for (const shape of now)
      if (!placed.has(shape)) building.push({ members: new Map([[size, shape]]), name: names.get(shape) ?? "" });
  }
  const merged = sideBySide(building, order);

  const used = merged.toSorted((p, q) => largestOf(q) - largestOf(p)).slice(0, LIMITS.filePieces);
  const groups = merged
    .filter((one) => used.includes(one))
    .map(({ members, name }) => {
      const all = [...members.values()];
      const largest = all.reduce((one, other) => (other.area > one.area ? other : one));
      const home = centre(largest.box);
      return {
        members,
        largest,
        group: {
          id: largest.outline.id,
          outlines: Object.fromEntries([...members].map(([size, { outline }]) => [size, outline.id])),
          shift: Object.fromEntries(
            [...members].map(([size, { box }]) => {
              const at = centre(box);
              const isLaidIn = overlap(box, largest.box) >= NESTED;
              return [size, isLaidIn ? { x: 0, y: 0 } : { x: home.x - at.x, y: home.y - at.y }];
            }),
          ),
          sewing: Object.fromEntries(
            [...members].flatMap(([size, shape]) => {
              const line = sewing.get(shape);
              return line === undefined ? [] : [[size, line.outline.id]];
            }),
          ),
          nameInFile: name,
          isSquare: largest.isSquare,
          isFrame: frames.has(largest),
        },
      };
    });

  // A thing belongs to the group whose outline of its own size holds it, else to the smallest that does.
  const open = groups.filter(({ group }) => !group.isSquare && !group.isFrame);
  const homeOf = (points: readonly SheetPoint[], size: string | null): string | null => {
    const holders = open.filter(({ members }) => {
      const own = size === null ? undefined : members.get(size);
      return own === undefined ? [...members.values()].some((shape) => liesIn(points, shape)) : liesIn(points, own);
    });
    return holders.toSorted((p, q) => p.largest.area - q.largest.area)[0]?.group.id ?? null;
  };
  const innerBy = groupedBy(inner, ({ line, points }) => homeOf(middlesOf(points), line.size));
  const marksBy = groupedBy(marks, ({ at, size }) => homeOf([at], size));
  const writingsBy = groupedBy(writings, ({ at }) => homeOf([at], null));
  const closedBy = groupedBy([...within.keys()], (shape) => {
    const holder = within.get(shape);
    return (
      groups.find(({ members }) => holder !== undefined && [...members.values()].includes(holder))?.group.id ?? null
    );
  });
  return {
    groups: groups.map(({ group: { sewing: sewn, isFrame: framed, ...group } }) => ({
      ...group,
      inner: (innerBy.get(group.id) ?? []).map(({ line }) => line),
      innerClosed: (closedBy.get(group.id) ?? []).map(({ outline }) => outline.id),
      marks: marksBy.get(group.id) ?? [],
      writings: writingsBy.get(group.id) ?? [],
      ...(Object.keys(sewn).length > 0 ? { sewing: sewn } : {}),
      ...(framed ? { isFrame: true as const } : {}),
    })),
    isCut: !isFew || used.length < merged.length,
    outside: (innerBy.get(null) ?? []).map(({ line }) => line),
  };
}

const largestOf = ({ members }: Building): number =>
  [...members.values()].reduce((most, { area }) => Math.max(most, area), 0);

const likeness = (one: Shape, other: Shape): number => {
  const ratio = Math.min(one.area, other.area) / Math.max(one.area, other.area);
  return ratio < LIKE_AREA || one.isSquare || other.isSquare ? 0 : overlap(one.box, other.box);
};

/** A rectangle round nearly all there is. */
function isFrame(shape: Shape, all: readonly Shape[]): boolean {
  if (shape.outline.edges.length > 8 || shape.area < 0.98 * boxArea(shape.box)) return false;
  const inside = all.filter(
    (other) =>
      other !== shape &&
      !other.isSquare &&
      other.area < shape.area * 0.8 &&
      isWithinBounds(other.box.min, shape.box, 0) &&
      isWithinBounds(other.box.max, shape.box, 0),
  );
  const large = inside.filter((other) => other.area > 0.02 * shape.area);
  // Two that lie apart are no sizes of one piece and no marks in it.
  return large.some((one) => large.some((other) => !areBoundsNear(one.box, other.box, 0)));
}

/** What the file itself calls a piece: what is written in its block, else its block or group without the size. */
function namesOf(mains: readonly Shape[], drawing: FileDrawing, sizes: readonly string[]): ReadonlyMap<Shape, string> {
  const said = new Map<string, string>();
  for (const { group, text } of drawing.writings) {
    const name = pieceSaid(text);
    if (name !== null && group !== "") said.set(group, name);
  }
  const names = new Map<Shape, string>();
  for (const shape of mains) {
    const group = shape.strokes[0]?.look.group ?? "";
    const written = [...said].find(([block]) => group === block || group.startsWith(`${block} / `))?.[1];
    const parts = group.split(" / ").filter((part) => /\p{L}{2}/u.test(withoutSize(part, sizes)));
    names.set(shape, written ?? withoutSize(parts[0] ?? "", sizes));
  }
  // A name that all the pieces of a size share is the sheet's, not theirs.
  const real = mains.filter(({ isSquare }) => !isSquare);
  for (const [, some] of groupedBy(real, ({ outline }) => outline.size ?? "")) {
    const alike = new Set(some.map((shape) => names.get(shape)));
    if (some.length > 2 && alike.size === 1) for (const shape of some) names.set(shape, "");
  }
  return names;
}

function withoutSize(name: string, sizes: readonly string[]): string {
  const size = sizeNamed(name, sizes);
  if (size === null) return name.trim();
  const escaped = size.replaceAll(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`);
  return name
    .replace(
      new RegExp(String.raw`(?:(?<!\p{L})(?:size|sz|gr\.?|t)[\s_:-]*|(?<![\p{L}\d]))${escaped}(?![\p{L}\d])`, "iu"),
      "",
    )
    .replaceAll(/^[\s_:,-]+|[\s_:,-]+$/g, "")
    .trim();
}

/** Pieces of which each size lies by itself: by their name, else by their form, size after size. */
function sideBySide(building: readonly Building[], order: readonly string[]): readonly Building[] {
  const isOpen = ({ members }: Building): boolean =>
    !members.has("") && ![...members.values()].some(({ isSquare }) => isSquare);
  const merged: Building[] = building
    .filter((group) => !isOpen(group))
    .map(({ members, name }) => ({ members: new Map(members), name }));
  const fixed = merged.length;
  const firstOf = ({ members }: Building): number =>
    Math.min(...[...members.keys()].map((size) => order.indexOf(size)));
  const bySize = groupedBy(
    building.filter((group) => isOpen(group)).toSorted((p, q) => firstOf(p) - firstOf(q)),
    firstOf,
  );
  // In whatever order pieces are laid, each size is likely to be laid in it.
  const ranks = new Map<Building, number>();
  for (const groups of bySize.values()) {
    const laid = groups.toSorted((p, q) => laidAt(p) - laidAt(q));
    for (const [rank, group] of laid.entries()) ranks.set(group, rank);
    const pairs = merged.slice(fixed).flatMap((one) =>
      groups.map((group) => ({
        one,
        group,
        cost: unlikeness(one, group) + OUT_OF_ORDER * Math.abs((ranks.get(one) ?? 0) - (ranks.get(group) ?? 0)),
      })),
    );
    const placed = new Set<Building>();
    for (const { one, group, cost } of pairs.toSorted((p, q) => p.cost - q.cost)) {
      if (cost >= 1 || placed.has(group)) continue;
      if ([...group.members.keys()].some((size) => one.members.has(size))) continue;
      for (const [size, shape] of group.members) one.members.set(size, shape);
      placed.add(group);
    }
    for (const group of groups) {
      if (placed.has(group)) continue;
      const fresh = { members: new Map(group.members), name: group.name };
      ranks.set(fresh, ranks.get(group) ?? 0);
      merged.push(fresh);
    }
  }
  return merged;
}

/** What each place out of order counts for, beside logarithms of lengths. */
const OUT_OF_ORDER = 0.05;

/** From left to right, and of what stands in one column from above. */
const laidAt = ({ members }: Building): number =>
  Math.min(...[...members.values()].map(({ box }) => centre(box).x + centre(box).y / 1000));

/** How unlike in form two sizes of one piece may be, as a logarithm of lengths; with the same name in the file, more. */
const UNLIKE = 0.25;
const UNLIKE_OF_NAME = 0.6;

/** How unlike two pieces are: 1 and more are no sizes of one. */
function unlikeness(one: Building, other: Building): number {
  const isNamed = one.name !== "" && other.name !== "";
  if (isNamed && one.name.toLowerCase() !== other.name.toLowerCase()) return 1;
  const [p, q] = [[...one.members.values()].at(-1), [...other.members.values()][0]];
  if (p === undefined || q === undefined) return 1;
  const [of, to] = [formOf(p), formOf(q)];
  const worst = Math.max(...of.lengths.map((length, at) => Math.abs(Math.log(length / (to.lengths[at] ?? length)))));
  const leaning = Math.max(...of.leans.map((lean, at) => Math.abs(lean - (to.leans[at] ?? lean))));
  return Math.max(worst, leaning) > (isNamed ? UNLIKE_OF_NAME : UNLIKE) ? 1 : (worst + leaning) / 2;
}

/** Its lengths, and to which side it lies in its box. */
function formOf({ box, area, points }: Shape): { readonly lengths: readonly Mm[]; readonly leans: readonly number[] } {
  const [width, height] = [box.max.x - box.min.x, box.max.y - box.min.y];
  let [length, x, y] = [0, 0, 0];
  for (const [at, point] of points.entries()) {
    const next = points[(at + 1) % points.length] ?? point;
    const step = distance(point, next);
    length += step;
    x += (step * (point.x + next.x)) / 2;
    y += (step * (point.y + next.y)) / 2;
  }
  return {
    lengths: [width, height, Math.sqrt(area), length],
    leans: [(x / length - box.min.x) / width, (y / length - box.min.y) / height],
  };
}
