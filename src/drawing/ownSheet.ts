/** A file of outlines as it is seen: its lines as they were drawn, and over them what was made of them. In the file's units. */
import type { FileDrawing, FilePlace, LineLook } from "../core/decisions/fileDrawing";
import type { LineFeature } from "../core/decisions/ownPattern";
import { edgeMap, type EdgeCurve } from "../core/geometry/edgeCurve";
import { filePoint, sheetPoint, type SheetPoint } from "../core/geometry/point";
import { chainPath, outlinePath } from "../core/geometry/svgPath";
import type { OutlineGroup, OutlineReading } from "../core/outlines/outlineReading";
import { boxRound, mmOf, placesOf } from "../core/ownPieces/drawingPlaces";
import type { Box } from "./layout";
import { readableOnPaper } from "./readableOnPaper";

/** All lines of one look, as one path. */
export interface LookInk {
  readonly path: string;
  /** As drawn, but dark enough to be seen on paper. */
  readonly colour: string;
  /** Pixels of dashes and gaps; null: a whole line. */
  readonly dash: string | null;
  /** Pixels. */
  readonly width: number;
  /** What the lines are sorted by, of every feature. */
  readonly of: Readonly<Record<LineFeature, string>>;
}

export const lookInk = ({ lines }: FileDrawing): readonly LookInk[] =>
  lines.map(({ look, paths }) => ({
    path: paths.join(""),
    colour: readableOnPaper(look.colour),
    dash: dashPixels(look.dash),
    width: widthPixels(
      look.width,
      lines.map((each) => each.look.width),
    ),
    of: featuresOf(look),
  }));

const featuresOf = ({ layer, group, colour, dash, width }: LineLook): LookInk["of"] => ({
  layer,
  group,
  colour,
  dash,
  width: String(width),
});

/** Pixels that a run of dashes and gaps takes, whatever it is in the file. */
const DASH_RUN = { least: 6, each: 5, most: 26 };

/** How line types are drawn that a file gives by name; what its name says nothing of is a whole line. */
const NAMED_DASHES: readonly { readonly named: RegExp; readonly dash: string }[] = [
  { named: /dash.*dot|center|centre|phantom|divide/i, dash: "9 3 2 3" },
  { named: /dot/i, dash: "2 4" },
  { named: /dash|hidden|border/i, dash: "7 4" },
];

/** Of a file's dashes; null: a whole line. */
export function dashPixels(dash: string): string | null {
  const lengths = dash.split(/[\s,]+/).map(Number);
  if (dash.trim() === "" || !lengths.every((length) => Number.isFinite(length) && length >= 0))
    return NAMED_DASHES.find(({ named }) => named.test(dash))?.dash ?? null;
  const total = lengths.reduce((sum, length) => sum + length, 0);
  if (total === 0) return null;
  const run = Math.min(DASH_RUN.most, Math.max(DASH_RUN.least, DASH_RUN.each * lengths.length));
  return lengths.map((length) => Math.max(1, Math.round((length / total) * run * 10) / 10)).join(" ");
}

/** Pixels of the finest and the widest line of a file. */
const WIDTHS = { usual: 1.25, least: 1, most: 2.6 };

/** The widths of a file lie far apart or near one another: what is wider is seen to be wider. */
export function widthPixels(width: number, all: readonly number[]): number {
  const known = all.filter((each) => each > 0);
  const [least, most] = [Math.min(...known), Math.max(...known)];
  if (width <= 0 || !(most > least)) return WIDTHS.usual;
  return WIDTHS.least + ((WIDTHS.most - WIDTHS.least) * (width - least)) / (most - least);
}

/** The whole sheet. */
export function sheetBox(drawing: FileDrawing): Box {
  const { box } = placesOf({ drawing });
  if (box === null) return { x: 0, y: 0, width: 1, height: 1 };
  return { x: box.min.x, y: box.min.y, width: box.max.x - box.min.x, height: box.max.y - box.min.y };
}

const toFile =
  (mm: number) =>
  ({ x, y }: SheetPoint) =>
    filePoint(x / mm, y / mm);

/** A closed outline, or a line that closes nothing, in the file's units. */
export const outlineInk = (reading: OutlineReading, edges: readonly EdgeCurve<"sheet">[]): string =>
  outlinePath(edges.map((edge) => edgeMap(edge, toFile(mmOf(reading.scale)))));
export const openLineInk = (reading: OutlineReading, edges: readonly EdgeCurve<"sheet">[]): string =>
  chainPath(edges.map((edge) => edgeMap(edge, toFile(mmOf(reading.scale)))));

/** A place on the sheet, in the file's units. */
export const placeInFile = (reading: OutlineReading, { x, y }: SheetPoint): FilePlace => {
  const mm = mmOf(reading.scale);
  return { x: x / mm, y: y / mm };
};

/** The outlines of a group, by size. */
export const outlinesOf = (reading: OutlineReading, group: OutlineGroup) =>
  Object.entries(group.outlines).flatMap(([size, id]) => {
    const outline = reading.outlines.find((each) => each.id === id);
    return outline === undefined ? [] : [{ size, outline }];
  });

/** Round all outlines of a piece, in the file's units. */
export function groupBox(reading: OutlineReading, group: OutlineGroup): Box | null {
  const mm = mmOf(reading.scale);
  const box = boxRound(outlinesOf(reading, group).flatMap(({ outline }) => outline.edges));
  if (box === null) return null;
  return {
    x: box.min.x / mm,
    y: box.min.y / mm,
    width: (box.max.x - box.min.x) / mm,
    height: (box.max.y - box.min.y) / mm,
  };
}

export interface SmallPiece {
  readonly box: Box;
  /** The largest outline first, then the others, then what lies inside. */
  readonly paths: readonly { readonly path: string; readonly is: "outline" | "inner" }[];
}

/** A piece in small, turned as it will stand: sizes in one another, as far as they were drawn so. */
export function smallPiece(
  reading: OutlineReading,
  group: OutlineGroup,
  turns: 0 | 1 | 2 | 3,
  turnedOver: boolean,
): SmallPiece | null {
  const laid = (point: SheetPoint): SheetPoint => {
    let { x, y } = point;
    for (let turn = 0; turn < turns; turn += 1) [x, y] = [-y, x];
    return sheetPoint(turnedOver ? -x : x, y);
  };
  // What is turned over runs the other way round, which is no matter for a drawing.
  const turned = (edges: readonly EdgeCurve<"sheet">[]) => edges.map((edge) => edgeMap(edge, laid));
  const outlines = outlinesOf(reading, group).map(({ size, outline }) => {
    const away = group.shift[size];
    const there = ({ x, y }: SheetPoint) => sheetPoint(x + (away?.x ?? 0), y + (away?.y ?? 0));
    return turned(outline.edges.map((edge) => edgeMap(edge, there)));
  });
  const inner = group.inner.map(({ edges }) => turned(edges));
  const box = boxRound(outlines.flat());
  if (box === null) return null;
  return {
    box: { x: box.min.x, y: box.min.y, width: box.max.x - box.min.x, height: box.max.y - box.min.y },
    paths: [
      ...outlines.map((edges) => ({ path: outlinePath(edges), is: "outline" as const })),
      ...inner.map((edges) => ({ path: chainPath(edges), is: "inner" as const })),
    ],
  };
}
