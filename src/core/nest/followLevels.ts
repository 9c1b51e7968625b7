/**
 * Points between two levels take a share of each, so that a side seam keeps one smooth line when bust, waist and hip are of
 * different sizes, whatever lies on it: a dart, bends. The share goes by the sewn way along the seam, so it is
 * the same on front and back.
 */
import { edgeLength } from "../geometry/edgeCurve";
import { curveOf } from "../pattern/ring";
import {
  type Edge,
  type LevelName,
  type NamedPoint,
  type Piece,
  type PieceName,
  type PointName,
} from "../pattern/piece";
import { invariant } from "../result";
import type { Mm } from "../units";

/** Corners of the side that lie at a level. */
const AT_LEVEL: Readonly<Partial<Record<PointName, LevelName>>> = {
  underarm: "underarm",
  sideBust: "bust",
  sideUnderBust: "underBust",
  sideWaist: "waist",
  sideHip: "hip",
  sideHem: "hip",
};

/** @source a cubic between two levels whose controls go with their ends takes 3t² − 2t³ of the second */
const shareAt = (t: number): number => t * t * (3 - 2 * t);

type Follows = Pick<NamedPoint, "level" | "towards">;

/** The pieces of all sizes with the points between levels following both; what is asked of the first size holds for all. */
export function followLevels(sizes: readonly (readonly Piece[])[]): readonly (readonly Piece[])[] {
  const [first] = sizes;
  if (first === undefined) return sizes;
  const follows = new Map<PieceName, ReadonlyMap<PointName, Follows>>();
  for (const piece of first) follows.set(piece.name, new Map([...bendsOf(piece), ...sideOf(piece)]));
  return sizes.map((pieces) => pieces.map((piece) => following(piece, follows.get(piece.name) ?? new Map())));
}

function following(piece: Piece, follows: ReadonlyMap<PointName, Follows>): Piece {
  if (follows.size === 0) return piece;
  const points: Partial<Record<PointName, NamedPoint>> = { ...piece.points };
  for (const [name, { level, towards }] of follows) {
    const point = points[name];
    if (point !== undefined) points[name] = { at: point.at, level, ...(towards === undefined ? {} : { towards }) };
  }
  return { ...piece, points };
}

interface OnSide {
  readonly name: PointName;
  /** Sewn way from the top of the side seam; mm. */
  readonly way: Mm;
  /** Whether the edge that ends here is a line, or the mouth of a dart. */
  readonly isStraight: boolean;
}

function sideOf(piece: Piece): readonly (readonly [PointName, Follows])[] {
  let way: Mm = 0;
  const places: OnSide[] = [];
  for (const [index, edge] of downwards(piece).entries()) {
    if (index === 0) places.push({ name: edge.from, way, isStraight: true });
    if (edge.mouthOf === null) way += edgeLength(curveOf(piece, edge));
    places.push({ name: edge.to, way, isStraight: edge.curve === null });
  }
  return places.flatMap(({ name, way: here }, index): (readonly [PointName, Follows])[] => {
    if (AT_LEVEL[name] !== undefined) return [];
    const above = places.slice(0, index).findLast((place) => AT_LEVEL[place.name] !== undefined);
    const below = places.slice(index + 1).find((place) => AT_LEVEL[place.name] !== undefined);
    if (above === undefined || below === undefined) return [];
    const [from, to] = [invariant(AT_LEVEL[above.name], "level"), invariant(AT_LEVEL[below.name], "level")];
    const whole = below.way - above.way;
    if (whole <= 0) return [];
    const t = (here - above.way) / whole;
    // A line from level to level stays one.
    const isLine = places
      .slice(places.indexOf(above) + 1, places.indexOf(below) + 1)
      .every((place) => place.isStraight);
    return [[name, { level: from, towards: { level: to, share: isLine ? t : shareAt(t) } }]];
  });
}

/** The edges of a side seam from above to below, though the ring may run the other way. */
function downwards(piece: Piece): readonly Edge[] {
  const run = runsOf(piece).find(([edge]) => edge?.seam === "side") ?? [];
  const [first, last] = [run[0], run.at(-1)];
  if (first === undefined || last === undefined) return [];
  const [top, bottom] = [piece.points[first.from]?.at.y ?? 0, piece.points[last.to]?.at.y ?? 0];
  return top <= bottom
    ? run
    : run.toReversed().map((edge) => ({
        ...edge,
        from: edge.to,
        to: edge.from,
        curve: edge.curve === null ? null : { c1: edge.curve.c2, c2: edge.curve.c1 },
      }));
}

/** The ring cut into its seams, each from its first edge on. */
function runsOf({ edges }: Piece): readonly (readonly Edge[])[] {
  const start = edges.findIndex((edge, index) => edges.at(index - 1)?.seam !== edge.seam);
  const ring = start < 0 ? edges : [...edges.slice(start), ...edges.slice(0, start)];
  const runs: Edge[][] = [];
  for (const edge of ring) {
    const run = runs.at(-1);
    if (run !== undefined && run[0]?.seam === edge.seam) run.push(edge);
    else runs.push([edge]);
  }
  return runs;
}

/** Bends between two corners of different levels, on any other seam. */
function bendsOf(piece: Piece): readonly (readonly [PointName, Follows])[] {
  return runsOf(piece).flatMap((run) => {
    const places = run.reduce<{ name: PointName; way: Mm }[]>(
      (all, edge) => [
        ...all,
        {
          name: edge.to,
          way: invariant(all.at(-1), "place").way + edgeLength(curveOf(piece, edge)),
        },
      ],
      [{ name: invariant(run[0], "edge").from, way: 0 }],
    );
    return places.flatMap(({ name, way }, index): (readonly [PointName, Follows])[] => {
      if (!isBendName(name)) return [];
      const before = places.slice(0, index).findLast((place) => !isBendName(place.name));
      const after = places.slice(index + 1).find((place) => !isBendName(place.name));
      const [from, to] = [before && piece.points[before.name]?.level, after && piece.points[after.name]?.level];
      if (before === undefined || after === undefined || from === undefined || to === undefined) return [];
      if (from === to) return [[name, { level: from }]];
      const share = shareAt((way - before.way) / (after.way - before.way));
      return [[name, { level: from, towards: { level: to, share } }]];
    });
  });
}

const isBendName = (name: PointName): boolean => name.startsWith("bend");
