/** Outlines of a file by their corners, as one piece in some sizes: straight from corner to corner. */
import { lineEdge, type EdgeCurve } from "../../src/core/geometry/edgeCurve";
import { sheetPoint } from "../../src/core/geometry/point";
import type { ClosedOutline, Mark, OpenLine, OutlineGroup } from "../../src/core/outlines/outlineReading";

export type At = readonly [number, number];

/** A closed line through these places. */
export const closedLine = (places: readonly At[]): EdgeCurve<"sheet">[] =>
  places.map((a, index) => lineEdge(sheetPoint(...a), sheetPoint(...(places[(index + 1) % places.length] ?? a))));

/** A line through these places. */
export const openLine = (places: readonly At[]): EdgeCurve<"sheet">[] => closedLine(places).slice(0, -1);

export const innerLine = (places: readonly At[], size: string | null = null): OpenLine => ({
  id: `inner ${places.join(" ")}`,
  size,
  layer: "",
  edges: openLine(places),
});

export const crossAt = (at: At): Mark => ({ at: sheetPoint(...at), size: null, layer: "", form: "cross" });

interface Grouped {
  readonly group: OutlineGroup;
  readonly outlines: ReadonlyMap<string, ClosedOutline>;
}

/** By size, each with its outline, or the places that it runs through. */
export function groupedOutlines(
  sizes: Readonly<Record<string, readonly At[] | readonly EdgeCurve<"sheet">[]>>,
  more: Partial<OutlineGroup> = {},
): Grouped {
  const isPlaces = (line: readonly At[] | readonly EdgeCurve<"sheet">[]): line is readonly At[] =>
    Array.isArray(line[0]);
  const outlines = Object.entries(sizes).map(([size, line]): ClosedOutline => ({
    id: `outline ${size}`,
    size,
    edges: isPlaces(line) ? closedLine(line) : line,
    widestGap: 0,
  }));
  return {
    group: {
      id: "group",
      outlines: Object.fromEntries(outlines.map(({ id, size }) => [size ?? "", id])),
      shift: {},
      inner: [],
      innerClosed: [],
      marks: [],
      writings: [],
      nameInFile: "",
      isSquare: false,
      ...more,
    },
    outlines: new Map(outlines.map((outline) => [outline.id, outline])),
  };
}
