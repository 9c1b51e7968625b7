/** Pages of ink made by hand, for the tests of the files written from them. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { lineEdge } from "../../src/core/geometry/edgeCurve";
import { sheetPoint, type SheetPoint } from "../../src/core/geometry/point";
import { radians } from "../../src/core/units";
import type { Ink, InkGroup, InkLine, InkPage, InkRole, InkText } from "../../src/drawing/ink";

const fontFile = (name: string): Uint8Array =>
  new Uint8Array(
    readFileSync(
      fileURLToPath(new URL(`../../node_modules/@expo-google-fonts/source-sans-3/${name}`, import.meta.url)),
    ),
  );

export const TYPEFACES = {
  regular: fontFile("400Regular/SourceSans3_400Regular.ttf"),
  bold: fontFile("700Bold/SourceSans3_700Bold.ttf"),
};

export const PDF_OPTIONS = { title: "A title", day: "2025-03-04", typefaces: TYPEFACES };

/** Letters that break careless writers of files. */
export const AWKWARD = "Łódź Ж “quotes” <&> 👗";

/** Straight lines through places of x and y. */
export function inkLine(
  places: readonly (readonly [number, number])[],
  more: Partial<Omit<InkLine<"sheet">, "kind" | "edges">> = {},
): InkLine<"sheet"> {
  const points = places.map(([x, y]) => sheetPoint(x, y));
  const edges = points.slice(1).map((b, i) => lineEdge(points[i] ?? b, b));
  return { kind: "line", role: "cutting", closed: false, ...more, edges };
}

export const inkCurve = (
  [a, c1, c2, b]: readonly [SheetPoint, SheetPoint, SheetPoint, SheetPoint],
  role: InkRole = "cutting",
): InkLine<"sheet"> => ({
  kind: "line",
  role,
  closed: false,
  edges: [{ a, b, curve: { c1, c2 } }],
});

export const inkText = (
  text: string,
  x: number,
  y: number,
  more: Partial<Omit<InkText<"sheet">, "kind" | "turn">> & { turn?: number } = {},
): InkText<"sheet"> => ({
  kind: "text",
  role: "note",
  anchor: "start",
  size: 5,
  ...more,
  at: sheetPoint(x, y),
  text,
  turn: radians(more.turn ?? 0),
});

export const inkGroup = (ink: readonly Ink<"sheet">[], more: Partial<InkGroup> = {}): InkGroup => ({
  id: "group",
  label: "Group",
  dx: 0,
  dy: 0,
  clip: null,
  ...more,
  ink,
});

export const inkPage = (groups: readonly InkGroup[], more: Partial<InkPage> = {}): InkPage => ({
  name: "A1",
  width: 210,
  height: 297,
  ...more,
  groups,
});
