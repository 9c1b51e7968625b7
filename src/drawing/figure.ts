/** A plain line drawing for the page and for paper alike: lines and words, each with what it means. */
import type { Mm } from "../core/units";
import type { Box } from "./layout";

/** What a line means, which tells its look. */
export type FigureRole =
  /** Filled: the garment, what is seen of its inside, cloth on a table. */
  | "cloth"
  | "inside"
  | "edge"
  | "seam"
  | "dart"
  /** Short lines where cloth is drawn up, and long ones where it falls in folds. */
  | "gather"
  | "drape"
  | "hem"
  /** What lies under it: dotted. */
  | "lining"
  | "zip"
  | "button"
  | "strap"
  | "binding"
  /** Of cloth on a table: its fold and selvages, where it is cut, the grain, and lengths told. */
  | "fold"
  | "selvage"
  | "cutting"
  | "stitch"
  | "grain"
  | "measure"
  | "pin";

export interface Spot {
  readonly x: Mm;
  readonly y: Mm;
}

export interface FigureLine {
  readonly kind: "line";
  readonly role: FigureRole;
  /** Path data. */
  readonly path: string;
}

export interface FigureWords {
  readonly kind: "words";
  /** On the foot of the writing. */
  readonly at: Spot;
  readonly anchor: "start" | "middle" | "end";
  readonly text: string;
  readonly size: Mm;
  /** Turned about its place, clockwise on screen. Absent: upright. */
  readonly degrees?: number;
  readonly bold?: true;
}

export type FigureMark = FigureLine | FigureWords;

export interface Figure {
  readonly box: Box;
  /** As they are drawn, one over the other. */
  readonly marks: readonly FigureMark[];
}

const tenth = (value: number): number => Math.round(value * 10) / 10 + 0;
const written = ({ x, y }: Spot): string => `${tenth(x)} ${tenth(y)}`;

/** Straight from spot to spot. */
function pathThrough(spots: readonly Spot[], closed = false): string {
  const [first, ...rest] = spots;
  if (first === undefined) return "";
  return `M${written(first)}${rest.map((spot) => `L${written(spot)}`).join("")}${closed ? "Z" : ""}`;
}

export const line = (role: FigureRole, spots: readonly Spot[], closed = false): FigureLine => ({
  kind: "line",
  role,
  path: pathThrough(spots, closed),
});

export const words = (
  text: string,
  at: Spot,
  size: Mm,
  options: Partial<Pick<FigureWords, "anchor" | "degrees" | "bold">> = {},
): FigureWords => ({ kind: "words", text, at, size, anchor: "start", ...options });

/** Steps of an arc, one for every few degrees. */
const ARC_STEP = Math.PI / 60;

/** An arc about a centre from one angle to another, +x towards +y. */
export function arcSpots({ x, y }: Spot, radius: Mm, from: number, to: number): readonly Spot[] {
  const steps = Math.max(2, Math.ceil(Math.abs(to - from) / ARC_STEP));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = from + ((to - from) * i) / steps;
    return { x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle) };
  });
}
