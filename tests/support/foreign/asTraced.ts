/** The adapter: a foreign nest as a reading of outlines gives it. Only its types are of src. */
import type { SizeChart } from "../../../src/core/chart/sizeChart";
import { piecePoint, type PiecePoint } from "../../../src/core/geometry/point";
import type { TracedNest } from "../../../src/core/ownPieces/ownReading";
import type {
  BendName,
  Dart,
  DartName,
  Edge,
  LevelName,
  NamedPoint,
  Piece,
  PointName,
  SeamName,
} from "../../../src/core/pattern/piece";
import type { ForeignNest, ForeignPiece, Stretch } from "./foreignTypes";
import { cutAt, lengthOf, lengthTo, bisect, mix, type Segment, type XY } from "./plane";

const LEVELS: Readonly<Record<string, LevelName>> = {
  centreNeck: "neck",
  sideNeck: "neck",
  shoulderTip: "shoulder",
  armholeTouch: "shoulder",
  princessTop: "shoulder",
  underarm: "underarm",
  sideWaist: "waist",
  centreWaist: "waist",
  underBustCentre: "underBust",
  sideHip: "hip",
  sideHem: "hip",
  centreHem: "hip",
  centreHip: "hip",
};
const OTHER_LEVELS: Readonly<Record<string, LevelName>> = {
  corner00: "neck",
  corner01: "neck",
  corner02: "shoulder",
  corner03: "shoulder",
};
/** Waist dart points keep to the bust's size, as those of the planner's own pieces do. */
const levelOf = (corner: string): LevelName => LEVELS[corner] ?? OTHER_LEVELS[corner] ?? "bust";

const at = ({ x, y }: XY): PiecePoint => piecePoint(x, y);

/** Where along a stretch its segments meet, as shares of its length. */
function sharesOf({ segments }: Stretch): number[] {
  const whole = lengthOf(segments);
  let sum = 0;
  return segments.slice(0, -1).map((s) => {
    sum += lengthTo(s, 1);
    return sum / whole;
  });
}

/** Shares nearer than this are one: mm in a metre. */
const ONE = 1e-6;

/**
 * Where a size that has fewer corners is to be cut so that it has as many: each of its own is matched, in order, with one of
 * the size that has most, all together as near as can be; between them by arc length in proportion.
 */
function matched(most: readonly number[], own: readonly number[]): number[] {
  if (own.length === most.length) return [...own];
  const best = nearest(most, own);
  const known = [[0, 0], ...best.map((place, i) => [most[place] ?? 0, own[i] ?? 0]), [1, 1]] as const;
  return most.map((share) => {
    const next = known.findIndex(([there = 0]) => there >= share);
    const [[a = 0, x = 0] = [], [b = 1, y = 1] = []] = [known[next - 1], known[next]];
    return x + ((share - a) / (b - a)) * (y - x);
  });
}

/** Which of `most` each of `own` goes with, rising. */
function nearest(most: readonly number[], own: readonly number[]): number[] {
  let best: { off: number; at: number[] } = { off: Infinity, at: [] };
  const go = (places: number[], off: number): void => {
    if (off >= best.off) return;
    if (places.length === own.length) {
      best = { off, at: places };
      return;
    }
    for (let i = (places.at(-1) ?? -1) + 1; i < most.length; i += 1)
      go([...places, i], off + Math.abs((most[i] ?? 0) - (own[places.length] ?? 0)));
  };
  go([], 0);
  return best.at;
}

/** The segments of a stretch, cut at shares of its length. */
function cutUp(stretch: Stretch, shares: readonly number[]): Segment[] {
  const whole = lengthOf(stretch.segments);
  const rest = [...stretch.segments];
  const parts: Segment[] = [];
  let done = 0;
  for (const share of shares) {
    const [first] = rest;
    if (first === undefined) break;
    const long = lengthTo(first, 1);
    const wanted = share * whole - done;
    if (wanted >= long - ONE * whole) {
      parts.push(first);
      rest.shift();
      done += long;
      continue;
    }
    const t = bisect(0, 1, (u) => lengthTo(first, u) - wanted);
    const [before, after] = cutAt(first, t);
    parts.push(before);
    rest[0] = after;
    done += lengthTo(before, 1);
  }
  return [...parts, ...rest];
}

const smooth = (t: number): number => 3 * t * t - 2 * t * t * t;

/** A piece of all sizes: bends wherever the size with most of them has one. */
export function piecesOfForeign({ name, centreOnFold, sizes }: ForeignPiece): Piece[] {
  const [first] = sizes;
  if (first === undefined) return [];
  const most = first.ring.map((_, index) =>
    sizes
      .map(({ ring }) => (ring[index] === undefined ? [] : sharesOf(ring[index])))
      .reduce((a, b) => (b.length > a.length ? b : a)),
  );
  const cut = sizes.map(({ ring }) =>
    ring.map((stretch, index) => cutUp(stretch, matched(most[index] ?? [], sharesOf(stretch)))),
  );
  return sizes.map((outline, size): Piece => {
    const points: Partial<Record<PointName, NamedPoint>> = {};
    const edges: Edge[] = [];
    let bends = 0;
    outline.ring.forEach((stretch, index) => {
      const parts = cut[size]?.[index] ?? [];
      const [from, to] = [levelOf(stretch.from), levelOf(stretch.to)];
      let start: PointName = stretch.from as PointName;
      parts.forEach((part, i) => {
        const isCurved = cut.some((ring) => ring[index]?.[i]?.c !== undefined);
        if (i > 0) {
          start = `bend${String(bends).padStart(3, "0")}` as BendName;
          bends += 1;
          const share = smooth(most[index]?.[i - 1] ?? 0);
          points[start] = { at: at(part.a), level: from, ...(from === to ? {} : { towards: { level: to, share } }) };
        } else points[start] = { at: at(part.a), level: from };
        const last = i === parts.length - 1;
        const end = last ? (stretch.to as PointName) : (`bend${String(bends).padStart(3, "0")}` as BendName);
        const [c1, c2] = part.c ?? [mix(part.a, part.b, 1 / 3), mix(part.a, part.b, 2 / 3)];
        edges.push({
          from: start,
          to: end,
          seam: stretch.seam as SeamName,
          curve: isCurved ? { c1: at(c1), c2: at(c2) } : null,
          mouthOf: stretch.mouthOf as DartName | null,
        });
      });
    });
    for (const [point, place] of Object.entries(outline.inside))
      points[point as PointName] = { at: at(place), level: levelOf(point) };
    const bust = points.bustPoint;
    if (bust !== undefined && name === "front") {
      points.bustLineInner = bust;
      points.bustLineOuter = bust;
    }
    const darts = outline.darts.map((dart): Dart => {
      const apex = `${dart.name}Apex` as PointName;
      points[apex] = { at: at(dart.apex), level: "bust" };
      return {
        name: dart.name as DartName,
        seam: dart.seam as SeamName,
        inner: dart.inner as PointName,
        outer: dart.outer as PointName,
        apex,
        aimsAt: dart.aimsAtBust ? "bustPoint" : null,
      };
    });
    return { name, points, edges, darts, levelLines: levelLinesOf(name), centreOnFold };
  });
}

function levelLinesOf(name: ForeignPiece["name"]): Piece["levelLines"] {
  const waist = { level: "waist", along: { seam: "waist" } } as const;
  switch (name) {
    case "front":
      return [
        { level: "bust", along: { points: ["centreBust", "bustLineInner", "bustLineOuter", "sideBust"] } },
        waist,
      ];
    case "centreFront":
      return [{ level: "bust", along: { points: ["centreBust", "princessBust"] } }, waist];
    case "sideFront":
      return [{ level: "bust", along: { points: ["princessBust", "sideBust"] } }, waist];
    case "back":
      return [{ level: "bust", along: { points: ["centreBust", "sideBust"] } }, waist];
    case "frontBasque":
    case "backBasque":
      return [waist, { level: "hip", along: { points: ["centreHip", "sideHip"] } }];
    default:
      return [];
  }
}

export function tracedOf({ chart, pieces }: ForeignNest): TracedNest {
  const all = pieces.map(piecesOfForeign);
  return {
    sizes: chart.map(({ label }, index) => ({
      label,
      pieces: all.flatMap((sizes) => sizes[index] ?? []),
    })),
    cup: null,
    labels: pieces.some(({ name }) => name === "other1") ? { other1: "collar" } : {},
  };
}

export const chartOf = ({ chart, finished }: ForeignNest, printed = false): SizeChart => ({
  sizes: chart.map((row, index) => {
    const made = finished[index];
    return printed && made !== undefined
      ? {
          ...row,
          finishedBust: made.bust,
          finishedWaist: made.waist,
          ...(made.hip === null ? {} : { finishedHip: made.hip }),
        }
      : row;
  }),
  draftedDifference: 50,
  cups: [],
});
