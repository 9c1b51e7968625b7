/** What was found in a file of outlines, as data for other programs; the README names every key. */
import type { FileDrawing } from "../core/decisions/fileDrawing";
import type { LineFeature, LineMeaning } from "../core/decisions/ownPattern";
import type { Point } from "../core/geometry/point";
import { outlineBounds } from "../core/geometry/outline";
import type { EdgeCurve } from "../core/geometry/edgeCurve";
import type { ClosedOutline, OutlineGroup, OutlineReading, Scale, SortedLines } from "../core/outlines/outlineReading";
import { sharpCorners } from "../core/outlines/sharpCorners";
import type { Mm } from "../core/units";
import { rounded } from "./rounded";

type Pair = readonly [number, number];

export interface ReportLook {
  readonly layer: string;
  readonly group: string;
  readonly colour: string;
  readonly dash: string;
  readonly width: number;
  readonly lines: number;
}

export interface ReportSize {
  readonly value: string;
  readonly is: LineMeaning["of"];
  /** Only of a size. */
  readonly size: string | null;
  readonly said_by: "wearer" | Exclude<SortedLines["saidBy"], "her">;
  readonly lines: number;
  readonly length_mm: number;
}

export interface ReportOutline {
  readonly id: string;
  readonly size: string | null;
  readonly width_mm: number;
  readonly height_mm: number;
  readonly corners_mm: readonly Pair[];
  readonly edges: readonly {
    readonly from_mm: Pair;
    readonly to_mm: Pair;
    readonly controls_mm: readonly Pair[] | null;
  }[];
  readonly widest_gap_mm: number;
}

export interface PiecesReport {
  readonly file: {
    readonly format: FileDrawing["format"];
    readonly lines: number;
    readonly points: number;
    readonly writings: number;
    readonly hidden_layers: readonly string[];
    readonly looks: readonly ReportLook[];
  };
  readonly scale: {
    readonly unit_mm: number | null;
    readonly by: Scale["by"];
    readonly said_mm: number | null;
    readonly said_by: "size" | "header" | "text" | null;
    readonly known_mm: number | null;
    readonly disagree: boolean;
    readonly squares: readonly {
      readonly outline: string;
      readonly at: Pair;
      readonly width_mm: number;
      readonly height_mm: number;
      readonly usual_mm: Pair | null;
    }[];
  };
  readonly sizes: {
    readonly by: LineFeature;
    readonly other_features: readonly { readonly feature: LineFeature; readonly values: number }[];
    readonly lines: readonly ReportSize[];
  };
  readonly join_within_mm: number;
  readonly outlines: readonly ReportOutline[];
  readonly unclosed: readonly {
    readonly size: string | null;
    readonly layer: string;
    readonly from_mm: Pair;
    readonly to_mm: Pair;
    readonly gap_mm: number;
  }[];
  readonly pieces: readonly ReportGroup[];
}

interface ReportGroup {
  readonly id: string;
  readonly name: string;
  readonly kind: "piece" | "test square" | "frame";
  readonly sizes: readonly {
    readonly size: string;
    readonly outline: string;
    readonly sewing: string | null;
    readonly shift_mm: Pair;
  }[];
  readonly inner_lines: number;
  readonly inner_closed: readonly string[];
  readonly marks: readonly { readonly at_mm: Pair; readonly size: string | null; readonly form: string }[];
  readonly writings: readonly { readonly at_mm: Pair; readonly text: string }[];
}

/** Exact enough to be drawn again. */
const fine = (value: number): number => rounded(value, 4);
const mm = (value: Mm): number => rounded(value, 2);
const place = (at: Point<"sheet">): Pair => [fine(at.x), fine(at.y)];

export function piecesReport(drawing: FileDrawing, reading: OutlineReading): PiecesReport {
  const { scale } = reading;
  return {
    file: {
      format: drawing.format,
      lines: drawing.lines.reduce((sum, { paths }) => sum + paths.length, 0),
      points: drawing.points.length,
      writings: drawing.writings.length,
      hidden_layers: drawing.hiddenLayers,
      looks: drawing.lines.map(({ look, paths }) => ({ ...look, lines: paths.length })),
    },
    scale: {
      unit_mm: scale.mm,
      by: scale.by,
      said_mm: scale.said?.mm ?? null,
      said_by: scale.said?.saidBy ?? null,
      known_mm: scale.known,
      disagree: scale.disagree,
      squares: scale.squares.map(({ outline, at, width, height, usual }) => ({
        outline,
        at: [at.x, at.y],
        width_mm: mm(width),
        height_mm: mm(height),
        usual_mm: usual === null ? null : [usual.width, usual.height],
      })),
    },
    sizes: {
      by: reading.sortedBy,
      other_features: reading.features.map(({ feature, values }) => ({ feature, values })),
      lines: reading.lines.map(sizeReport),
    },
    join_within_mm: mm(reading.joinWithin),
    outlines: reading.outlines.map(outlineReport),
    unclosed: reading.unclosed.flatMap(({ line: { size, layer, edges }, gap }) => {
      const [from, to] = [edges[0]?.a, edges.at(-1)?.b];
      return from === undefined || to === undefined
        ? []
        : [{ size, layer, from_mm: place(from), to_mm: place(to), gap_mm: mm(gap) }];
    }),
    pieces: reading.groups.map(groupReport),
  };
}

const sizeReport = ({ value, meaning, saidBy, count, length }: SortedLines): ReportSize => ({
  value,
  is: meaning.of,
  size: meaning.of === "size" ? meaning.size : null,
  said_by: saidBy === "her" ? "wearer" : saidBy,
  lines: count,
  length_mm: mm(length),
});

function outlineReport({ id, size, edges, widestGap }: ClosedOutline): ReportOutline {
  const { min, max } = outlineBounds(edges);
  return {
    id,
    size,
    width_mm: mm(max.x - min.x),
    height_mm: mm(max.y - min.y),
    corners_mm: sharpCorners(edges).map(place),
    edges: edges.map(edgeReport),
    widest_gap_mm: fine(widestGap),
  };
}

const edgeReport = ({ a, b, curve }: EdgeCurve<"sheet">): ReportOutline["edges"][number] => ({
  from_mm: place(a),
  to_mm: place(b),
  controls_mm: curve === null ? null : [place(curve.c1), place(curve.c2)],
});

const groupReport = (group: OutlineGroup): ReportGroup => ({
  id: group.id,
  name: group.nameInFile,
  kind: group.isSquare ? "test square" : group.isFrame === true ? "frame" : "piece",
  sizes: Object.entries(group.outlines).map(([size, outline]) => {
    const shift = group.shift[size] ?? { x: 0, y: 0 };
    return { size, outline, sewing: group.sewing?.[size] ?? null, shift_mm: [fine(shift.x), fine(shift.y)] };
  }),
  inner_lines: group.inner.length,
  inner_closed: group.innerClosed,
  marks: group.marks.map(({ at, size, form }) => ({ at_mm: place(at), size, form })),
  writings: group.writings.map(({ at, text }) => ({ at_mm: place(at), text })),
});
