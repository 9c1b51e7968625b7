/** Pieces as the command line tells them in JSON, measured and drawn by bezier-js: nothing here uses the core's own geometry. */
import { Bezier } from "bezier-js";
import type { ReportEdge, ReportPiece } from "../../src/cli/pieceReport";
import { invariant } from "../../src/core/result";

export interface Place {
  readonly x: number;
  readonly y: number;
}

export const placeOf = ([x, y]: readonly [number, number]): Place => ({ x, y });

export const distanceOf = (a: Place, b: Place): number => Math.hypot(b.x - a.x, b.y - a.y);

export const cornerOf = ({ name, corners_mm }: ReportPiece, corner: ReportEdge["from"]): Place =>
  placeOf(invariant(corners_mm[corner], `${name}.${corner}`));

/** Two places of a straight line, or the four of a cubic. */
export type Stretch = readonly Place[];

export const stretchOf = (piece: ReportPiece, { from, to, controls_mm }: ReportEdge): Stretch => [
  cornerOf(piece, from),
  ...(controls_mm ?? []).map(placeOf),
  cornerOf(piece, to),
];

export function lengthOf(stretch: Stretch): number {
  const [a, b, c, d] = stretch;
  if (a === undefined || b === undefined) return Number.NaN;
  return c === undefined || d === undefined ? distanceOf(a, b) : new Bezier([a, b, c, d]).length();
}

/** How far off the stretch a place lies. */
export function missOf(stretch: Stretch, place: Place): number {
  const [a, b, c, d] = stretch;
  if (a === undefined || b === undefined) return Number.NaN;
  if (c !== undefined && d !== undefined) return missOfCubic(new Bezier([a, b, c, d]), place);
  const share =
    ((place.x - a.x) * (b.x - a.x) + (place.y - a.y) * (b.y - a.y)) / ((b.x - a.x) ** 2 + (b.y - a.y) ** 2 || 1);
  const along = Math.min(1, Math.max(0, share));
  return distanceOf({ x: a.x + along * (b.x - a.x), y: a.y + along * (b.y - a.y) }, place);
}

/** The library looks at every thousandth of the curve; between them the nearest is closed in upon by thirds. */
function missOfCubic(cubic: Bezier, place: Place): number {
  const miss = (t: number): number => distanceOf(cubic.get(t), place);
  const { t: near = 0 } = cubic.project(place);
  let [low, high] = [Math.max(0, near - 0.002), Math.min(1, near + 0.002)];
  for (let round = 0; round < 30; round += 1) {
    const [one, other] = [low + (high - low) / 3, high - (high - low) / 3];
    if (miss(one) < miss(other)) high = other;
    else low = one;
  }
  return miss((low + high) / 2);
}

/** Sewn length of a seam on all the pieces named, in mm; those that are not there or have none of it count nothing. */
export const seamOn = (pieces: readonly ReportPiece[], names: readonly string[], seam: string): number =>
  pieces
    .filter(({ name }) => names.includes(name))
    .flatMap((piece) =>
      piece.edges.filter((edge) => edge.seam === seam && edge.line !== "mouth").map((edge) => stretchOf(piece, edge)),
    )
    .reduce((sum, stretch) => sum + lengthOf(stretch), 0);
