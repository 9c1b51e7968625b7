/**
 * The outlines of one group made into rings of a piece, size by size, in its frame: which way it stands, where its corners and
 * darts are, the allowance taken off.
 */
import { takenInside, type CutRun } from "../allowance/takenInside";
import type { FilePlace } from "../decisions/fileDrawing";
import type { OwnPieceSaid } from "../decisions/ownPattern";
import type { StyleName } from "../decisions/pattern";
import { extentOf } from "../geometry/bounds";
import { edgeFlatten, edgeMap, lineEdge, type EdgeCurve } from "../geometry/edgeCurve";
import { distance, midpoint, piecePoint, sheetPoint, shift, type PiecePoint } from "../geometry/point";
import { lineDistance } from "../geometry/segment";
import type { ClosedOutline, OpenLine, OutlineGroup } from "../outlines/outlineReading";
import { dartName, type DartNumber } from "../pattern/dartNames";
import type { DartHome, DartName, PieceName, PointName, SeamName } from "../pattern/piece";
import { invariant } from "../result";
import { CENTRE_STRAIGHT, CORNER_POINTED_AT, SOLVER_ACCURACY } from "../tolerance";
import type { Mm } from "../units";
import { curvesMeant } from "./curvesMeant";
import {
  boxPoints,
  candidatesOf,
  findCorners,
  shapeAsFound,
  SIZE_SLACK,
  soughtAmong,
  USUAL_SLACK,
  type Candidate,
  type FoundCorner,
} from "./findCorners";
import { cutDarts, drawnDarts, withMouths, withoutDoubles, type TracedDart } from "./findDarts";
import type { PieceProblem, ReadCorner } from "./ownReading";
import { shapeOf, type ShapeCorner } from "./pieceShapes";
import {
  chainInto,
  halfOf,
  intoPiece,
  mirrorAxis,
  ontoHalf,
  ontoSheet,
  placedBy,
  sideOf,
  tiltBy,
  TURNS,
  type Axis,
  type Placement,
  type Turns,
} from "./placement";
import {
  isSmooth,
  nearestOn,
  partOn,
  pointOn,
  tracedRing,
  turnAt,
  wayFrom,
  type Chain,
  type TracedRing,
} from "./tracedRing";

/** An allowance where none was said (common practice, no source: 15 mm, 5/8 in). */
export const USUAL_ALLOWANCE: Mm = 15;

interface PlacedCorner extends FoundCorner {
  readonly by: ReadCorner["by"];
}

interface PlacedDart {
  readonly name: DartName;
  readonly seam: SeamName;
  /** Where its mouth begins and ends, the way of the ring; mm round it. */
  readonly first: Mm;
  readonly second: Mm;
  readonly apex: PiecePoint;
  readonly by: TracedDart["by"];
  /** Whether the first end of the mouth is the inner one. */
  readonly innerFirst: boolean;
}

/** One size, on its stitch line in the piece frame, mouths of darts straight. */
export interface TracedSize {
  readonly label: string;
  readonly place: Placement;
  /** Where it was drawn whole, the line it is mirrored in, on the sheet. */
  readonly mirror: Axis | null;
  readonly ring: TracedRing;
  /** In the order of the ring, beginning with the first of the shape. */
  readonly corners: readonly PlacedCorner[];
  readonly darts: readonly PlacedDart[];
}

export interface TracedPiece {
  readonly corners: readonly ShapeCorner[];
  readonly extent: "half" | "whole";
  readonly turns: Turns;
  readonly turnedOver: boolean;
  readonly line: "stitch" | "cutting";
  readonly centreOnFold: boolean;
  readonly cost: number;
  readonly sizes: readonly TracedSize[];
  readonly problems: readonly PieceProblem[];
}

export interface TraceInput {
  readonly group: OutlineGroup;
  readonly outlines: ReadonlyMap<string, ClosedOutline>;
  /** Lines that close nothing and were taken for broken outlines: legs of darts may be among them. */
  readonly loose: readonly OpenLine[];
  readonly said: OwnPieceSaid | undefined;
  readonly name: PieceName;
  readonly style: StyleName;
  /** Labels of the chart, smallest first. */
  readonly labels: readonly string[];
  /** mm in a unit of the file. */
  readonly scale: Mm;
}

/** One size as it lies on the sheet: its line, halved where it was drawn whole, and what is drawn inside. */
interface Laid {
  readonly label: string;
  readonly shift: { readonly x: Mm; readonly y: Mm };
  /** Where it was drawn whole, the line it is mirrored in. */
  readonly mirror: Axis | null;
  readonly ring: TracedRing;
  readonly darts: readonly TracedDart[];
  /** Angles that set its long straight lines upright or level: grain, fold, straight seams. The first is none. */
  readonly leans: readonly number[];
}

/** Which way a size is laid into the piece frame. */
interface Way {
  readonly turns: Turns;
  readonly turnedOver: boolean;
  /** Turned by so much besides, before it is turned over; radians. */
  readonly lean: number;
}

const placeBy = ({ turns, turnedOver, lean }: Way): Placement => ({
  ...UNTURNED,
  turns,
  turnedOver,
  tilt: turnedOver ? -lean : lean,
});

const UNTURNED: Placement = { turns: 0, turnedOver: false, tilt: 0, dx: 0, dy: 0 };
const isOther = (name: PieceName): boolean => name.startsWith("other");

/** The labels of the sizes that a group has outlines of, as the chart has them. */
export const sizesOf = (group: OutlineGroup, labels: readonly string[]): readonly string[] =>
  labels.filter((label) => group.outlines[label] !== undefined);

export const lineOf = (group: OutlineGroup, said: OwnPieceSaid | undefined): "stitch" | "cutting" =>
  said?.line ?? "stitch";

/** The ring with curves in the place of the short stretches that stand for them. */
function asMeant(ring: TracedRing): TracedRing {
  const { edges, off } = curvesMeant(ring.edges);
  return tracedRing(edges, off);
}

/** Where she pointed, on the sheet, moved with its size. */
const onSheet = ({ x, y }: FilePlace, scale: Mm): PiecePoint => piecePoint(x * scale, y * scale);

function layOut(
  { group, outlines, loose, said, name, labels, scale }: TraceInput,
  which: "all" | "middle",
): {
  readonly laid: readonly Laid[];
  readonly extent: "half" | "whole";
} {
  const line = lineOf(group, said);
  const canBeWhole = name !== "strap" && !isOther(name);
  const rings = sizesOf(group, labels).flatMap((label) => {
    const id = (line === "stitch" ? group.sewing?.[label] : undefined) ?? group.outlines[label];
    const outline = id === undefined ? undefined : outlines.get(id);
    if (outline === undefined || outline.edges.length < 2) return [];
    const by = group.shift[label] ?? { x: 0, y: 0 };
    const ring = asMeant(tracedRing(chainInto({ ...UNTURNED, dx: by.x, dy: by.y }, outline.edges)));
    return ring.edges.length < 3 ? [] : [{ label, shift: by, ring }];
  });
  const [first] = rings;
  const extent =
    said?.extent ?? (first !== undefined && canBeWhole && mirrorAxis(first.ring) !== null ? "whole" : "half");
  const wanted = which === "all" ? rings : rings.filter((_, index) => index === Math.floor(rings.length / 2));
  const laid = wanted.map(({ label, shift: by, ring }): Laid => {
    const inner = [...group.inner, ...loose]
      .filter(({ size }) => size === null || size === label)
      .map(({ size, edges }) => chainInto(size === null ? UNTURNED : { ...UNTURNED, dx: by.x, dy: by.y }, edges));
    const found = extent === "whole" && canBeWhole ? mirrorAxis(ring) : null;
    // Of both halves the one that more is drawn on: darts and marks are often drawn but once.
    const drawn = [...inner.flat().map(({ a }) => a), ...group.marks.map(({ at }) => at)];
    const isTurned = found !== null && drawn.reduce((sum, { x, y }) => sum + Math.sign(sideOf(found, x, y)), 0) < 0;
    const axis = found !== null && isTurned ? { ...found, way: found.way + Math.PI } : found;
    const half = axis === null ? null : halfOf(ring, axis);
    const used = half ?? ring;
    const mirror = half === null ? null : axis;
    const reach = line === "cutting" ? Math.max(USUAL_ALLOWANCE, ...Object.values(said?.allowances ?? {})) : 0;
    const hers = (said?.darts ?? []).flatMap((dart): TracedDart[] => {
      if (dart.size !== label) return [];
      const [a, b, apex] = [dart.inner, dart.outer, dart.apex].map((at) => {
        const on = shift(onSheet(at, scale), by.x, by.y);
        return piecePoint(...ontoHalf(mirror, on.x, on.y));
      });
      if (a === undefined || b === undefined || apex === undefined) return [];
      const [one, other] = [nearJoint(used, a), nearJoint(used, b)];
      // Both ends meant the same corner: that opens nothing.
      if (one === other) return [];
      const isAhead = wayFrom(used, one, other) < used.length / 2;
      return [{ first: isAhead ? one : other, second: isAhead ? other : one, apex, by: "her" }];
    });
    const darts = isOther(name) ? [] : [...hers, ...drawnDarts(used, inner, reach), ...cutDarts(used)];
    return { label, shift: by, mirror, ring: used, darts: withoutDoubles(used, darts), leans: leansOf(used, inner) };
  });
  return { laid, extent };
}

/** The place of a ring nearest to where she pointed: a corner of it, where one is near. */
function nearJoint(ring: TracedRing, p: PiecePoint): Mm {
  const near = nearestOn(ring, p);
  let best = { s: near.s, off: CORNER_POINTED_AT };
  for (const [index, edge] of ring.edges.entries()) {
    const off = distance(edge.a, p);
    const before = invariant(ring.edges.at(index - 1), "edge");
    if (off < best.off && !isSmooth(before, edge, turnAt(before, edge)))
      best = { s: invariant(ring.starts[index], "start"), off };
  }
  return best.s;
}

/** A line this long says which way a piece stands; leans nearer to each other than this are one. */
const LONG: Mm = 70;
const SAME_LEAN = 0.06;
const MOST_LEANS = 2;

function leansOf(ring: TracedRing, inner: readonly Chain[]): readonly number[] {
  const weights: { lean: number; length: Mm }[] = [];
  for (const { a, b, curve } of [...inner.filter((chain) => chain.length === 1).flat(), ...straightRuns(ring)]) {
    const length = distance(a, b);
    if (curve !== null || length < LONG) continue;
    // To the nearest upright or level way.
    const way = Math.atan2(b.y - a.y, b.x - a.x);
    const lean = Math.round(way / (Math.PI / 2)) * (Math.PI / 2) - way;
    const same = weights.find((one) => Math.abs(one.lean - lean) < SAME_LEAN);
    if (same === undefined) weights.push({ lean, length });
    else same.length += length;
  }
  const most = weights.toSorted((p, q) => q.length - p.length).map(({ lean }) => lean);
  return [0, ...most.filter((lean) => Math.abs(lean) > SAME_LEAN)].slice(0, MOST_LEANS + 1);
}

/** The straight edges of a ring; stretches that go on straight are one. */
function straightRuns(ring: TracedRing): readonly EdgeCurve<"piece">[] {
  const runs: EdgeCurve<"piece">[] = [];
  for (const edge of ring.edges) {
    const last = runs.at(-1);
    if (edge.curve !== null) continue;
    if (
      last !== undefined &&
      distance(last.b, edge.a) < SOLVER_ACCURACY &&
      Math.abs(turnAt(last, edge)) < STILL_STRAIGHT
    )
      runs[runs.length - 1] = lineEdge(last.a, edge.b);
    else runs.push(edge);
  }
  return runs;
}
/** Degrees. */
const STILL_STRAIGHT = 0.2;

interface Turned {
  readonly plain: TracedRing;
  readonly ring: TracedRing;
  readonly mouths: readonly { readonly first: Mm; readonly second: Mm; readonly dart: TracedDart }[];
  readonly places: readonly Candidate[];
}

/** A size turned one way, with straight mouths and all places that may be corners. */
function turnedBy({ ring, darts }: Laid, way: Way): Turned {
  const { turns, turnedOver, lean } = way;
  const place = placeBy(way);
  const to = (p: PiecePoint): PiecePoint => intoPiece(place, sheetPoint(p.x, p.y));
  const plain =
    turns === 0 && !turnedOver && lean === 0
      ? ring
      : tracedRing(
          ring.edges.map((edge) => edgeMap(edge, to)),
          ring.off,
        );
  const along = (s: Mm): Mm => (turnedOver ? ring.length - s : s);
  const moved = darts.map(({ first, second, apex, by }): TracedDart => ({
    first: along(turnedOver ? second : first) % plain.length,
    second: along(turnedOver ? first : second) % plain.length,
    apex: to(apex),
    by,
  }));
  return mouthed(plain, moved);
}

function mouthed(plain: TracedRing, darts: readonly TracedDart[]): Turned {
  const sorted = darts.toSorted((p, q) => p.first - q.first);
  const { ring, mouths } = withMouths(plain, sorted);
  return {
    plain,
    ring,
    mouths: mouths.map(({ first, second }, index) => ({ first, second, dart: invariant(sorted[index], "dart") })),
    places: candidatesOf(
      ring,
      mouths.flatMap(({ first, second }) => [first, second]),
    ),
  };
}

/** One side up: whatever way it is turned besides, the places that may be corners are the same. */
interface Side {
  readonly places: readonly Candidate[];
  /** Points of its ring, for its box. */
  readonly points: readonly PiecePoint[];
  /** Back to how it lies on the sheet. */
  readonly back: Placement;
}

function sideUp(laid: Laid, turnedOver: boolean): Side {
  const { ring, places } = turnedBy(laid, { turns: 0, turnedOver, lean: 0 });
  return { places, points: boxPoints(ring), back: { ...UNTURNED, turnedOver } };
}

/** Which way it stands: of all ways the one whose corners come nearest to the shape. A sheet that lies askew is set upright. */
function bestWay(
  laid: Laid,
  wanted: readonly ShapeCorner[],
  said: OwnPieceSaid | undefined,
): Way & { readonly cost: number } {
  const none = { turns: said?.turns ?? 0, turnedOver: said?.turnedOver ?? false, lean: 0, cost: Infinity };
  if (wanted.length === 0) return none;
  const isStrap = said?.turns === undefined && wanted.some(({ name }) => name === "strapBackInner");
  const sides = (said?.turnedOver === undefined ? [false, true] : [said.turnedOver]).map((turnedOver) => ({
    turnedOver,
    side: sideUp(laid, turnedOver),
  }));
  const ways = laid.leans.flatMap((lean) =>
    (said?.turns === undefined ? TURNS : [said.turns]).flatMap((turns) =>
      sides.flatMap(({ turnedOver, side }) => {
        const place = placeBy({ turns, turnedOver, lean });
        const to = (p: PiecePoint): PiecePoint => intoPiece(place, ontoSheet(side.back, p));
        const box = extentOf(side.points.map(to));
        // Round a strap all ways look alike; its long way is the upright one.
        if (isStrap && box.width > box.height) return [];
        const places = side.places.map((one) => ({ ...one, at: to(one.at) }));
        const sought = soughtAmong(places, box, wanted, USUAL_SLACK);
        return sought === null ? [] : [{ turns, turnedOver, lean, sought }];
      }),
    ),
  );
  // The likeliest first, so that little is looked for among the others; of ways that cost the same the first is taken.
  let best = { ...none, index: ways.length };
  const likely = [...ways.entries()].toSorted(([, p], [, q]) => p.sought.costAtLeast - q.sought.costAtLeast);
  for (const [index, { turns, turnedOver, lean, sought }] of likely) {
    if (sought.costAtLeast > best.cost) break;
    const found = sought.find(best.cost);
    if (found === null || (found.cost === best.cost && index > best.index)) continue;
    best = { turns, turnedOver, lean, cost: found.cost, index };
  }
  return best;
}

/** How well a group would do as a piece, about 1 where each corner is as far off as it may be; Infinity where not at all. */
export function likeness(input: TraceInput): number {
  const shape = shapeOf(input.name, input.style);
  const { laid } = layOut(input, "middle");
  const [middle] = laid;
  return shape === null || middle === undefined ? Infinity : bestWay(middle, shape.corners, input.said).cost;
}

interface Located extends Turned {
  readonly laid: Laid;
  readonly corners: readonly PlacedCorner[];
}

/** A group of outlines as a piece of that name. */
export function tracePiece(input: TraceInput): TracedPiece {
  const { group, said, name, style } = input;
  const shape = shapeOf(name, style);
  const { laid, extent } = layOut(input, "all");
  const problems: PieceProblem[] = [];
  const saidCorners = said?.corners ?? [];
  const without = new Set(saidCorners.filter(({ at }) => at === null).map((one): PointName => one.name));
  const chosen = referenceOf(
    laid,
    saidCorners.map(({ size }) => size),
  );
  const middle = laid[chosen];
  const usual = (shape?.corners ?? []).filter((corner) => !without.has(corner.name));
  const way =
    middle === undefined || isOther(name)
      ? { turns: said?.turns ?? 0, turnedOver: said?.turnedOver ?? false, lean: 0, cost: Infinity }
      : bestWay(middle, usual, said);
  const line = lineOf(group, said);
  const onFold = said?.centreOnFold ?? shape?.onFold ?? false;
  const nothing: TracedPiece = {
    turns: way.turns,
    turnedOver: way.turnedOver,
    cost: way.cost,
    corners: usual,
    extent,
    line,
    centreOnFold: onFold,
    sizes: [],
    problems,
  };
  if (middle === undefined) return nothing;
  const turned = laid.map((one) => turnedBy(one, way));
  const fixedIn = (index: number): ReadonlyMap<PointName, Mm> => {
    const { ring } = invariant(turned[index], "size");
    const one = invariant(laid[index], "size");
    return new Map(
      saidCorners.flatMap((corner): [PointName, Mm][] => {
        if (corner.at === null || corner.size !== one.label) return [];
        const on = shift(onSheet(corner.at, input.scale), one.shift.x, one.shift.y);
        const at = intoPiece(placeBy(way), sheetPoint(...ontoHalf(one.mirror, on.x, on.y)));
        return [[corner.name, nearJoint(ring, at)]];
      }),
    );
  };
  const reference = invariant(turned[chosen], "size");
  const wanted = isOther(name) ? cornersAsDrawn(reference, said) : usual;
  const first = isOther(name)
    ? { corners: otherCorners(reference, wanted), cost: 0 }
    : findCorners(reference.ring, reference.places, wanted, USUAL_SLACK, onlyOf(fixedIn(chosen), wanted));
  if (first === null || wanted.length < 3) {
    for (const { name: corner } of wanted) problems.push({ code: "own/corner-missing", corner, size: middle.label });
    return nothing;
  }
  const asFound = shapeAsFound(reference.ring, reference.places, wanted, first.corners);
  const located = laid.map((one, index): Located => {
    const here = invariant(turned[index], "size");
    const fixed = onlyOf(fixedIn(index), wanted);
    const found =
      index === chosen
        ? first
        : findCorners(here.ring, withGuesses(here, asFound, reference, first.corners), asFound, SIZE_SLACK, fixed);
    const corners = (found?.corners ?? byShare(here.ring, reference.ring, first.corners)).map(
      (corner): PlacedCorner => ({
        ...corner,
        by: fixed.has(corner.name) ? "her" : index === chosen || isSeen(here, corner.s) ? "form" : "other size",
      }),
    );
    return { ...here, laid: one, corners };
  });
  const followed = followSaid(
    located,
    saidCorners.flatMap(({ name: corner, at }) => (at === null ? [] : [corner])),
  );
  const { sizes: darted, problems: unlike } = matchDarts(followed, wanted, name, said);
  problems.push(...unlike);
  const sizes = darted.map((one): TracedSize => {
    const place = placeBy(way);
    const moved = intoPiece(place, sheetPoint(one.laid.shift.x, one.laid.shift.y));
    const started = { ...place, dx: moved.x, dy: moved.y };
    const inside = line === "cutting" ? stitchLineOf(one, wanted, said, onFold, problems) : one;
    return uprightAs(name, { ...inside, label: one.laid.label, place: started, mirror: unshifted(one.laid) });
  });
  return { ...nothing, corners: wanted, sizes };
}

const unshifted = ({ mirror, shift: by }: Laid): Axis | null =>
  mirror === null ? null : { ...mirror, x: mirror.x - by.x, y: mirror.y - by.y };

/** The size that others follow: the one most was said of, else the middle one. */
function referenceOf(laid: readonly Laid[], said: readonly string[]): number {
  const counts = laid.map(({ label }) => said.filter((size) => size === label).length);
  const most = Math.max(0, ...counts);
  return most > 0 ? counts.indexOf(most) : Math.floor(laid.length / 2);
}

const onlyOf = (fixed: ReadonlyMap<PointName, Mm>, wanted: readonly ShapeCorner[]): ReadonlyMap<PointName, Mm> =>
  new Map([...fixed].filter(([name]) => wanted.some((corner) => corner.name === name)));

const isSeen = ({ places }: Turned, s: Mm): boolean =>
  places.some((place) => place.turn !== 0 && Math.abs(place.s - s) < SOLVER_ACCURACY);

/** Where a corner ought to lie by the other size, for a size that has no corner there. */
function withGuesses(
  here: Turned,
  asFound: readonly ShapeCorner[],
  reference: Turned,
  corners: readonly FoundCorner[],
): readonly Candidate[] {
  const guesses = byShare(here.ring, reference.ring, corners).flatMap(({ s }, index): Candidate[] => {
    const at = pointOn(here.ring, s);
    const turn = invariant(asFound[index], "corner").turn - GUESSED;
    return here.places.some((place) => distance(place.at, at) < GUESS_CLEAR)
      ? []
      : [{ s, at, turn, sharp: false, atDart: false }];
  });
  return [...here.places, ...guesses].toSorted((p, q) => p.s - q.s);
}
/** What a place without a corner costs, as if it turned by so much less; degrees. */
const GUESSED = 28;
const GUESS_CLEAR: Mm = 12;

/** The corners of another size by their shares of the ring; the first is where it lies in its box. */
function byShare(ring: TracedRing, other: TracedRing, corners: readonly FoundCorner[]): readonly FoundCorner[] {
  const origin = invariant(corners[0], "corner").s;
  const at = pointOn(other, origin);
  const [here, there] = [boxOf(ring), boxOf(other)];
  const like = piecePoint(
    here.x + ((at.x - there.x) / there.width) * here.width,
    here.y + ((at.y - there.y) / there.height) * here.height,
  );
  const start = nearestOn(ring, like).s;
  return corners.map(({ name, s }) => ({
    name,
    s: (start + (wayFrom(other, origin, s) / other.length) * ring.length) % ring.length,
  }));
}

const boxOf = (ring: TracedRing) => extentOf(ring.edges.map(({ a }) => a));

/** What was said of a corner in one size, followed by all others: the same share of the way between its neighbours. */
function followSaid(located: readonly Located[], said: readonly PointName[]): readonly Located[] {
  let all = located;
  for (const name of new Set(said)) {
    const home = all.find(({ corners }) => corners.some((corner) => corner.name === name && corner.by === "her"));
    if (home === undefined) continue;
    const index = home.corners.findIndex((corner) => corner.name === name);
    const share = shareBetween(home, index);
    all = all.map((one) => {
      const own = one.corners[index];
      if (own === undefined || own.by === "her") return one;
      const count = one.corners.length;
      const [before, after] = [one.corners.at(index - 1), one.corners[(index + 1) % count]];
      if (before === undefined || after === undefined) return one;
      const span = wayFrom(one.ring, before.s, after.s);
      const s = (before.s + share * span) % one.ring.length;
      const isThere = (p: Mm): boolean =>
        Math.min(wayFrom(one.ring, p, s), wayFrom(one.ring, s, p)) < FOLLOWED_NEAR * span &&
        p !== before.s &&
        p !== after.s;
      const near = one.places
        .filter((place) => place.sharp && isThere(place.s))
        .toSorted(
          (p, q) =>
            Math.abs(wayFrom(one.ring, before.s, p.s) - share * span) -
            Math.abs(wayFrom(one.ring, before.s, q.s) - share * span),
        )[0];
      const corners = one.corners.map((corner, k): PlacedCorner =>
        k === index ? { name, s: near?.s ?? s, by: "other size" } : corner,
      );
      return { ...one, corners };
    });
  }
  return all;
}
const FOLLOWED_NEAR = 0.05;

function shareBetween({ ring, corners }: Located, index: number): number {
  const [before, own, after] = [corners.at(index - 1), corners[index], corners[(index + 1) % corners.length]];
  if (before === undefined || own === undefined || after === undefined) return 0;
  return wayFrom(ring, before.s, own.s) / wayFrom(ring, before.s, after.s);
}

/** Corners of a piece without a name of ours: all that turn, from the upper left one on. */
function cornersAsDrawn({ ring, places }: Turned, said: OwnPieceSaid | undefined): readonly ShapeCorner[] {
  const level = said?.levels?.top ?? "bust";
  const sharp = places.filter((place) => Math.abs(place.turn) > OTHER_CORNER);
  const used =
    sharp.length >= 3 ? sharp : [0, 1, 2, 3].map((k) => ({ at: pointOn(ring, (ring.length * k) / 4), turn: 0 }));
  const start = used.reduce((best, place, index) => {
    const now = invariant(used[best], "place").at;
    return place.at.x + place.at.y < now.x + now.y ? index : best;
  }, 0);
  return [...used.slice(start), ...used.slice(0, start)].slice(0, MOST_CORNERS).map((place, index) => ({
    name: `corner${String(index).padStart(2, "0")}` as ShapeCorner["name"],
    level,
    turn: place.turn,
    x: place.at.x,
    y: place.at.y,
    seam: "edge",
    way: 0,
  }));
}
const OTHER_CORNER = 18;
const MOST_CORNERS = 60;

const otherCorners = ({ ring }: Turned, wanted: readonly ShapeCorner[]): readonly FoundCorner[] =>
  wanted.map(({ name, x, y }) => ({ name, s: nearestOn(ring, piecePoint(x, y)).s }));

const HOMES: Readonly<Partial<Record<SeamName, DartHome>>> = {
  side: "side",
  waist: "waist",
  underBust: "underBust",
  shoulder: "shoulder",
  armhole: "armhole",
  neck: "neck",
  centre: "centre",
};

interface DartPlace {
  readonly corner: number;
  readonly share: number;
}

const placeOf = ({ ring, corners }: Located, first: Mm, second: Mm): DartPlace | null => {
  for (const [index, { s }] of corners.entries()) {
    const next = invariant(corners[(index + 1) % corners.length], "corner");
    const span = wayFrom(ring, s, next.s);
    const [from, to] = [wayFrom(ring, s, first), wayFrom(ring, s, second)];
    if (from <= to && to <= span + SOLVER_ACCURACY) return { corner: index, share: (from + to) / 2 / span };
  }
  return null;
};

interface Darted {
  readonly laid: Laid;
  readonly ring: TracedRing;
  readonly corners: readonly PlacedCorner[];
  readonly darts: readonly PlacedDart[];
}

/** The darts of all sizes under the same names; one that a size lacks is put where the others have it. */
function matchDarts(
  located: readonly Located[],
  wanted: readonly ShapeCorner[],
  name: PieceName,
  said: OwnPieceSaid | undefined,
): { readonly sizes: readonly Darted[]; readonly problems: readonly PieceProblem[] } {
  const problems: PieceProblem[] = [];
  const found = located.map((one) =>
    one.mouths.flatMap(({ first, second, dart }) => {
      const place = placeOf(one, first, second);
      return place === null ? [] : [{ ...place, first, second, dart }];
    }),
  );
  // The size that shows most darts stands for all, but that of a dart pointed at every size has its own.
  const model = found.reduce((best, own, index) => (own.length > (found[best]?.length ?? 0) ? index : best), 0);
  const pointedAt = found.flatMap((own, index) =>
    own.filter(({ dart }) => dart.by === "her").map((dart) => ({ index, dart })),
  );
  const base = [...(found[model] ?? [])].map((dart) => ({ index: model, dart }));
  for (const one of pointedAt) if (!base.some(({ dart }) => isLike(dart, one.dart))) base.push(one);
  const counted = base.filter(
    ({ dart }) =>
      dart.dart.by === "her" || 2 * found.filter((own) => own.some((one) => isLike(one, dart))).length >= found.length,
  );
  const named = namedDarts(counted, located, wanted, name, said).filter(
    (dart) => said?.notDarts?.includes(dart.name) !== true,
  );
  const sizes = located.map((one, index): Darted => {
    const own = found[index] ?? [];
    const used = new Set<(typeof own)[number]>();
    const kept = named.map((dart) => {
      const match = own
        .filter((each) => isLike(each, dart.place) && !used.has(each))
        .toSorted((p, q) => Math.abs(p.share - dart.place.share) - Math.abs(q.share - dart.place.share))[0];
      if (match !== undefined) {
        used.add(match);
        return { dart, traced: match.dart, isOwn: true };
      }
      problems.push({ code: "own/sizes-unlike", size: one.laid.label });
      return { dart, traced: asElsewhere(one, invariant(located[dart.home], "size"), dart), isOwn: false };
    });
    const isSame = kept.every(({ isOwn }) => isOwn) && kept.length === one.mouths.length;
    const remade = isSame
      ? one
      : mouthed(
          one.plain,
          kept.map(({ traced }) => traced),
        );
    const at = (s: Mm): Mm => (isSame ? s : nearestOn(remade.ring, pointOn(one.ring, s)).s);
    const darts = kept.flatMap(({ dart, traced }): PlacedDart[] => {
      const mouth = remade.mouths.find((each) => each.dart === traced);
      if (mouth === undefined) return [];
      return [
        {
          name: dart.name,
          seam: dart.seam,
          first: mouth.first,
          second: mouth.second,
          apex: traced.apex,
          by: traced.by,
          innerFirst: dart.innerFirst,
        },
      ];
    });
    return {
      laid: one.laid,
      ring: remade.ring,
      corners: one.corners.map((corner) => ({ ...corner, s: at(corner.s) })),
      darts,
    };
  });
  return { sizes, problems };
}

const isLike = (one: DartPlace, other: DartPlace): boolean =>
  one.corner === other.corner && Math.abs(one.share - other.share) < LIKE_SHARE;
const LIKE_SHARE = 0.2;

const width = ({ first, second }: { readonly first: Mm; readonly second: Mm }): Mm => second - first;

interface NamedDart {
  readonly name: DartName;
  readonly seam: SeamName;
  readonly place: DartPlace;
  readonly innerFirst: boolean;
  /** The size that it is taken from. */
  readonly home: number;
  readonly first: Mm;
  readonly second: Mm;
  readonly dart: TracedDart;
}

function namedDarts(
  darts: readonly {
    readonly index: number;
    readonly dart: DartPlace & { readonly first: Mm; readonly second: Mm; readonly dart: TracedDart };
  }[],
  located: readonly Located[],
  wanted: readonly ShapeCorner[],
  name: PieceName,
  said: OwnPieceSaid | undefined,
): readonly NamedDart[] {
  const taken = new Set<DartName>();
  return darts
    .toSorted((p, q) => width(q.dart) - width(p.dart))
    .flatMap(({ index, dart }): NamedDart[] => {
      const { seam, way } = invariant(wanted[dart.corner], "corner");
      const one = invariant(located[index], "size");
      const [a, b] = [pointOn(one.ring, dart.first), pointOn(one.ring, dart.second)];
      const middle = midpoint(a, b);
      const rises = middle.y - dart.dart.apex.y > FRENCH_RISE * distance(middle, dart.dart.apex);
      const isFrench = seam === "side" && rises && dart.share > FRENCH_BELOW;
      const home = isFrench ? "french" : HOMES[seam];
      if (home === undefined) return [];
      const hers = said?.darts?.find(
        (each) => dart.dart.by === "her" && each.size === one.laid.label && !taken.has(each.name),
      );
      const dartsName =
        hers?.name ??
        (["", "2", "3"] as const).map((number: DartNumber) => dartName(home, number)).find((each) => !taken.has(each));
      if (dartsName === undefined || name === "strap") return [];
      taken.add(dartsName);
      const isInward = seam === "waist" || seam === "underBust" ? Math.abs(way) > 90 : seam === "centre";
      return [
        {
          name: dartsName,
          seam,
          place: { corner: dart.corner, share: dart.share },
          innerFirst: !isInward,
          home: index,
          first: dart.first,
          second: dart.second,
          dart: dart.dart,
        },
      ];
    });
}
/** A French dart opens in the lower part of the side seam and rises at least so much of its length. */
const FRENCH_BELOW = 0.55;
const FRENCH_RISE = 0.45;

/** A dart of another size, at the same shares of its seam; its end moved as the middle of its mouth is. */
function asElsewhere(one: Located, other: Located, dart: NamedDart): TracedDart {
  const spanOf = ({ ring, corners }: Located) => {
    const [from, to] = [corners[dart.place.corner], corners[(dart.place.corner + 1) % corners.length]];
    const start = invariant(from, "corner").s;
    return { start, span: wayFrom(ring, start, invariant(to, "corner").s) };
  };
  const [here, there] = [spanOf(one), spanOf(other)];
  const moved = (s: Mm): PiecePoint =>
    pointOn(one.ring, here.start + (wayFrom(other.ring, there.start, s) / there.span) * here.span);
  const [a, b] = [moved(dart.first), moved(dart.second)];
  const was = midpoint(pointOn(other.ring, dart.first), pointOn(other.ring, dart.second));
  const now = midpoint(a, b);
  return {
    first: nearestOn(one.plain, a).s,
    second: nearestOn(one.plain, b).s,
    apex: shift(dart.dart.apex, now.x - was.x, now.y - was.y),
    by: dart.dart.by,
  };
}

/** The stitch line inside a cutting line, with all that lies on it. */
function stitchLineOf(
  one: Darted,
  wanted: readonly ShapeCorner[],
  said: OwnPieceSaid | undefined,
  onFold: boolean,
  problems: PieceProblem[],
): Darted {
  const { ring, corners, darts } = one;
  const allowanceOf = (seam: SeamName): Mm =>
    said?.allowances?.[seam] ?? (seam === "centre" && onFold ? 0 : USUAL_ALLOWANCE);
  const start = invariant(corners[0], "corner").s;
  const cuts = [
    ...corners.map((corner, index) => ({
      s: corner.s,
      corner: index as number | null,
      dart: null as PlacedDart | null,
    })),
    ...darts.flatMap((dart) => [
      { s: dart.first, corner: null, dart },
      { s: dart.second, corner: null, dart: null },
    ]),
  ].toSorted((p, q) => wayFrom(ring, start, p.s) - wayFrom(ring, start, q.s));
  const runs: (CutRun & { readonly seam: SeamName; readonly from: (typeof cuts)[number] })[] = [];
  let seam: SeamName = "edge";
  for (const [index, from] of cuts.entries()) {
    if (from.corner !== null) seam = invariant(wanted[from.corner], "corner").seam;
    if (from.dart !== null) continue;
    const to = invariant(cuts[(index + 1) % cuts.length], "cut");
    const { dart } = to;
    runs.push({
      from,
      seam,
      edges: partOn(ring, from.s, to.s),
      allowance: allowanceOf(seam),
      next:
        dart === null
          ? { kind: "corner" }
          : { kind: "mouth", apex: dart.apex, legs: [pointOn(ring, dart.first), pointOn(ring, dart.second)] },
    });
  }
  const taken = takenInside(runs, (a, b) => !isSmooth(a, b, turnAt(a, b)));
  if (!taken.ok) {
    const at = runs[taken.failure.run]?.seam ?? "edge";
    problems.push({ code: "own/allowance-too-wide", seam: at, size: one.laid.label });
    return one;
  }
  const edges: EdgeCurve<"piece">[] = [];
  const indices = new Map<PiecePoint, number>();
  const lines = taken.value;
  for (const [index, points] of lines.entries()) {
    indices.set(invariant(points[0], "point"), edges.length);
    for (let i = 1; i < points.length; i += 1)
      edges.push(lineEdge(invariant(points[i - 1], "point"), invariant(points[i], "point")));
    const next = invariant(lines[(index + 1) % lines.length], "line");
    if (runs[index]?.next.kind === "mouth") {
      indices.set(invariant(points.at(-1), "point"), edges.length);
      edges.push(lineEdge(invariant(points.at(-1), "point"), invariant(next[0], "point")));
    }
  }
  const made = asMeant(tracedRing(edges));
  const sOf = (p: PiecePoint | undefined): Mm =>
    invariant(made.starts[invariant(indices.get(invariant(p, "point")), "edge")], "start");
  return {
    ...one,
    ring: made,
    corners: corners.map((corner, index) => ({
      ...corner,
      s: sOf(lines[runs.findIndex(({ from }) => from.corner === index)]?.[0]),
    })),
    darts: darts.map((dart) => {
      const index = runs.findIndex(({ next }) => next.kind === "mouth" && next.apex === dart.apex);
      return { ...dart, first: sOf(lines[index]?.at(-1)), second: sOf(lines[(index + 1) % lines.length]?.[0]) };
    }),
  };
}

/** Where the lower end of the centre line lies in the piece frame, so that heights of pieces are of one kind; mm. */
const LOWER_END: Readonly<Partial<Record<PieceName, Mm>>> = { frontBasque: 0, backBasque: 0, strap: 0, cup: 325 };
const WAIST: Mm = 420;

/** The centre line upright and at 0; pieces without one keep how they lie on the sheet. */
function uprightAs(
  name: PieceName,
  one: Omit<Darted, "laid"> & Pick<TracedSize, "label" | "place" | "mirror">,
): TracedSize {
  const sOf = (...names: readonly PointName[]): Mm | null =>
    one.corners.find((corner) => names.includes(corner.name))?.s ?? null;
  const isBasque = name === "frontBasque" || name === "backBasque";
  const isBand = name === "frontBand" || name === "backBand";
  const topS = isBasque ? sOf("centreWaist") : isBand ? sOf("underBustCentre") : sOf("centreNeck");
  const lowS = isBasque ? sOf("centreHem") : isBand ? sOf("centreWaist") : sOf("centreWaist", "underBustCentre");
  const placeAt = (s: Mm | null): PiecePoint | null => (s === null ? null : pointOn(one.ring, s));
  let tilt = 0;
  let anchor = placeAt(isBasque ? topS : lowS);
  if (topS !== null && lowS !== null) {
    const [top, low] = [pointOn(one.ring, topS), pointOn(one.ring, lowS)];
    const lean = Math.atan2(low.x - top.x, low.y - top.y);
    const isStraight = partOn(one.ring, lowS, topS)
      .flatMap((edge) => edgeFlatten(edge, CENTRE_STRAIGHT / 10))
      .every((at) => Math.abs(lineDistance(at, low, top)) < CENTRE_STRAIGHT);
    if (isStraight && Math.abs(lean) > SOLVER_ACCURACY) tilt = lean;
    if (!isStraight) anchor = piecePoint(top.x, isBasque ? top.y : low.y);
  } else if (name === "strap") anchor = placeAt(sOf("strapBackInner"));
  else if (name === "sideFront") anchor = placeAt(sOf("princessWaist"));
  const lean = (p: PiecePoint): PiecePoint => piecePoint(...tiltBy(p.x, p.y, tilt));
  const at = anchor === null ? null : lean(anchor);
  const [dx, dy] = at === null ? [0, 0] : [-at.x, (LOWER_END[name] ?? WAIST) - at.y];
  const move = (p: PiecePoint): PiecePoint => shift(lean(p), dx, dy);
  return {
    label: one.label,
    mirror: one.mirror,
    place: placedBy(one.place, tilt, dx, dy),
    ring: { ...one.ring, edges: one.ring.edges.map((edge) => edgeMap(edge, move)) },
    corners: one.corners,
    darts: one.darts.map((dart) => ({ ...dart, apex: move(dart.apex) })),
  };
}
