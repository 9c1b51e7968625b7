/**
 * A foreign nest as the lines of a file, drawn as some house might: sizes told apart by this or that, nested or laid side by
 * side, turned, in any unit, broken into many lines in any order and direction, with lines that sizes share.
 *
 *     const { drawing, truth } = drawingOf(foreignNest({ seed: 7 }), { seed: 3, by: "dash", named: false, pieces: 5 });
 *
 * `truth` holds every outline on the sheet in mm, as a reading should give it.
 */
import type { FileDrawing, LineLook, LinesOfLook, Writing } from "../../../src/core/decisions/fileDrawing";
import type { LineFeature } from "../../../src/core/decisions/ownPattern";
import { diceOf } from "./dice";
import type { ForeignNest, ForeignOutline } from "./foreignTypes";
import { backwards, cutAt, line, mapped, turned, xy, type Segment, type XY } from "./plane";

export interface DrawnHow {
  readonly seed?: number;
  readonly format?: "svg" | "dxf";
  /** By what the sizes differ; by groups, each piece of each size has its own. */
  readonly by?: LineFeature;
  /** Whether layers, groups and dashes are called by the sizes. */
  readonly named?: boolean;
  readonly layout?: "nested" | "side by side";
  /** Radians, the whole sheet. */
  readonly turn?: number;
  /** How long a unit of the file is, mm; and whether the file says so. */
  readonly unit?: number;
  readonly unitSaid?: boolean;
  /** Into how many lines each edge is broken, at the most; 0: each outline is one closed line. */
  readonly broken?: number;
  /** Ends lie up to so many mm apart. */
  readonly gaps?: number;
  /** The centre line is drawn once, for all sizes. */
  readonly sharedCentre?: boolean;
  /** Share of the lines that are drawn twice. */
  readonly doubled?: number;
  /** Dart: drawn as lines inside, the outline going on across its mouth; or cut into the outline. */
  readonly darts?: "inside" | "cut" | "none";
  readonly grain?: boolean;
  readonly notches?: boolean;
  readonly frame?: boolean;
  /** Side of a test square in mm, and whether its length is written in it. */
  readonly square?: number;
  readonly squareWritten?: string;
  /** Names of the pieces written on them. */
  readonly titles?: boolean;
}

export interface TrueOutline {
  readonly piece: string;
  readonly size: string;
  /** On the sheet in mm, closed, by the clock before the sheet is turned over; legs of darts in it where they are cut. */
  readonly ring: readonly Segment[];
  /** Named corners of the ring. */
  readonly corners: Readonly<Record<string, XY>>;
  readonly darts: readonly { readonly name: string; readonly inner: XY; readonly outer: XY; readonly apex: XY }[];
  /** Points that lie on no corner. */
  readonly inside: Readonly<Record<string, XY>>;
}

export interface Drawn {
  readonly drawing: FileDrawing;
  readonly truth: readonly TrueOutline[];
}

const GAP = 60;
const COLOURS = ["#cc0000", "#0000cc", "#008800", "#cc00cc", "#00aaaa", "#885500", "#555555", "#ff8800"] as const;
const DASHES = ["", "4 2", "8 2", "2 2", "8 2 2 2", "8 2 2 2 2 2", "1 3", "12 4"] as const;

const written = (value: number): string => String(Math.round(value * 1e6) / 1e6);
const place = ({ x, y }: XY): string => `${written(x)} ${written(y)}`;

function pathOf(segments: readonly Segment[], closed: boolean): string {
  const [first] = segments;
  if (first === undefined) return "";
  const steps = segments.map(({ b, c }) =>
    c === undefined ? `L${place(b)}` : `C${place(c[0])} ${place(c[1])} ${place(b)}`,
  );
  return `M${place(first.a)}${steps.join("")}${closed ? "Z" : ""}`;
}

/** The ring of an outline, with darts cut into it or not. */
function ringOf(outline: ForeignOutline, darts: DrawnHow["darts"]): { segments: Segment[]; isCentre: boolean }[] {
  return outline.ring.map(({ seam, mouthOf, segments }) => {
    const dart = outline.darts.find(({ name }) => name === mouthOf);
    const [first] = segments;
    if (dart === undefined || first === undefined || darts !== "cut")
      return { segments: [...segments], isCentre: seam === "centre" };
    return { segments: [line(first.a, dart.apex), line(dart.apex, first.b)], isCentre: false };
  });
}

export function drawingOf(nest: ForeignNest, how: DrawnHow = {}): Drawn {
  const {
    seed = 1,
    format = "svg",
    by = "layer",
    named = true,
    layout = "nested",
    turn = 0,
    unit = 1,
    unitSaid = true,
    broken = 0,
    gaps = 0,
    sharedCentre = false,
    doubled = 0,
    darts = "inside",
    grain = true,
    notches = true,
    frame = false,
    square = 0,
    squareWritten = "",
    titles = false,
  } = how;
  const dice = diceOf(seed);
  const labels = nest.chart.map(({ label }) => label);
  const base: LineLook = { layer: "", group: "", colour: "#000000", dash: "", width: 0.35 / unit };
  const lookOf = (size: number, piece: string): LineLook => {
    const label = labels[size] ?? "";
    switch (by) {
      case "layer":
        return { ...base, layer: named ? `Size ${label}` : `L${"abcdefgh"[size] ?? ""}` };
      case "group":
        return { ...base, group: named ? `${piece} ${label}` : `${piece}${"abcdefgh"[size] ?? ""}` };
      case "colour":
        return { ...base, colour: COLOURS[size] ?? "" };
      case "dash":
        return { ...base, dash: named ? `SIZE_${label}` : (DASHES[size] ?? "") };
      case "width":
        return { ...base, width: (0.2 + 0.1 * size) / unit };
    }
  };
  const lookOfAll = (name: string): LineLook =>
    by === "layer"
      ? { ...base, layer: name }
      : by === "group"
        ? { ...base, group: name }
        : { ...base, colour: "#777777", dash: by === "dash" ? "20 1" : "", width: 0.05 / unit };

  // In mm, before the whole sheet is turned.
  const drawn: { readonly look: LineLook; readonly segments: readonly Segment[]; readonly closed: boolean }[] = [];
  const texts: { readonly at: XY; readonly text: string; readonly group: string }[] = [];
  const truth: TrueOutline[] = [];
  const draw = (look: LineLook, segments: readonly Segment[], closed = false): void => {
    drawn.push({ look, segments, closed });
    if (dice.chance(doubled)) drawn.push({ look, segments: closed ? segments : backwards(segments), closed });
  };
  const moved =
    (dx: number, dy: number) =>
    (p: XY): XY =>
      xy(p.x + dx, p.y + dy);
  const breakUp = (segments: readonly Segment[]): Segment[] =>
    segments.flatMap((segment) => {
      const parts: Segment[] = [];
      let rest = segment;
      for (let left = 1 + Math.floor(dice.from(0, broken)); left > 1; left -= 1) {
        const [first, second] = cutAt(rest, 1 / left);
        parts.push(first);
        rest = second;
      }
      return [...parts, rest];
    });
  /** A little shortened at both ends. */
  const shortened = (segment: Segment): Segment => {
    if (gaps === 0) return segment;
    const long = Math.hypot(segment.b.x - segment.a.x, segment.b.y - segment.a.y);
    if (long < 6 * gaps) return segment;
    const off = (): number => (dice.from(0, gaps) / 2 / long) * (segment.c === undefined ? 1 : 0.8);
    const [, cut] = cutAt(segment, off());
    return cutAt(cut, 1 - off())[0];
  };

  let free = 0;
  for (const piece of nest.pieces) {
    const extents = piece.sizes.map((outline) => {
      const xs = outline.ring.flatMap(({ segments }) =>
        segments.flatMap(({ a, b, c }) => [a.x, b.x, ...(c ?? []).map(({ x }) => x)]),
      );
      return [Math.min(...xs), Math.max(...xs)] as const;
    });
    const left = Math.min(...extents.map(([low]) => low));
    const right = Math.max(...extents.map(([, high]) => high));
    const centres: [number, number][] = [];
    piece.sizes.forEach((outline, size) => {
      const to = layout === "nested" ? moved(free - left, 100) : moved(free - left + size * (right - left + GAP), 100);
      const look = lookOf(size, piece.name);
      const ring = ringOf(outline, darts).map((one) => ({ ...one, segments: one.segments.map((s) => mapped(s, to)) }));
      const corners = Object.fromEntries(
        outline.ring.flatMap(({ from, segments: [first] }) => (first === undefined ? [] : [[from, to(first.a)]])),
      );
      truth.push({
        piece: piece.name,
        size: labels[size] ?? "",
        ring: ring.flatMap(({ segments }) => segments),
        corners,
        darts: outline.darts.map(({ name, apex, inner, outer }) => ({
          name,
          apex: to(apex),
          inner: corners[inner] ?? to(apex),
          outer: corners[outer] ?? to(apex),
        })),
        inside: Object.fromEntries(Object.entries(outline.inside).map(([name, at]) => [name, to(at)])),
      });
      const isShared = sharedCentre && layout === "nested";
      const own = ring.filter(({ isCentre }) => !(isShared && isCentre));
      const all = own.flatMap(({ segments }) => segments);
      if (isShared)
        for (const { segments } of ring.filter(({ isCentre }) => isCentre))
          for (const { a, b } of segments) centres.push([a.x, a.y], [b.x, b.y]);
      if (broken === 0 && !isShared && gaps === 0) draw(look, all, true);
      else if (broken === 0 && gaps === 0)
        // One open line from the centre round to the centre again: the ring begins at the centre neck.
        draw(look, all);
      else for (const one of breakUp(all)) draw(look, [shortened(one)]);
      if (darts === "inside")
        for (const dart of truth.at(-1)?.darts ?? [])
          draw(look, [line(dart.inner, dart.apex), line(dart.apex, dart.outer)]);
      if (notches)
        for (const notch of outline.notches.map(to))
          // From the outline a little outward or inward: a loose short line.
          draw(look, [line(notch, xy(notch.x - 5, notch.y + 1))]);
      if (by === "group" && titles)
        texts.push({ at: to(xy(40, 150)), text: `Size: ${labels[size] ?? ""}`, group: look.group });
    });
    if (centres.length > 0) {
      const ys = centres.map(([, y]) => y);
      const [x] = centres[0] ?? [0];
      draw(lookOfAll("all sizes"), [line(xy(x, Math.min(...ys)), xy(x, Math.max(...ys)))]);
    }
    const [first] = piece.sizes;
    if (grain && first !== undefined)
      draw(lookOfAll("grain"), [
        line(moved(free - left, 100)(first.grain[0]), moved(free - left, 100)(first.grain[1])),
      ]);
    if (titles && first !== undefined)
      texts.push({ at: moved(free - left, 100)(xy(40, 120)), text: piece.name, group: "" });
    free += (layout === "nested" ? 1 : piece.sizes.length) * (right - left + GAP);
  }
  const low = Math.max(...truth.flatMap(({ ring }) => ring.map(({ a }) => a.y))) + 40;
  if (square > 0) {
    const [a, b, c, d] = [xy(20, low), xy(20 + square, low), xy(20 + square, low + square), xy(20, low + square)];
    draw(lookOfAll("marks"), [line(a, b), line(b, c), line(c, d), line(d, a)], true);
    if (squareWritten !== "") texts.push({ at: xy(20 + square / 4, low + square / 2), text: squareWritten, group: "" });
  }
  if (frame) {
    const [a, b, c, d] = [xy(-30, -30), xy(free + 10, -30), xy(free + 10, low + 130), xy(-30, low + 130)];
    draw(lookOfAll("frame"), [line(a, b), line(b, c), line(c, d), line(d, a)], true);
    for (const at of [15, 30])
      draw(lookOfAll("frame"), [line(xy(free - 150, low + 130 - at), xy(free + 10, low + 130 - at))]);
  }

  const turnedBy = (p: XY): XY => turned(p, xy(0, 0), turn);
  const inFile = (p: XY): XY => {
    const at = turnedBy(p);
    return xy(at.x / unit, at.y / unit);
  };
  const shuffled =
    broken === 0
      ? drawn
      : drawn
          .map((one) => ({ one, at: dice.from(0, 1) }))
          .toSorted((p, q) => p.at - q.at)
          .map(({ one }) => one);
  const byLook = new Map<string, { look: LineLook; paths: string[] }>();
  for (const { look, segments, closed } of shuffled) {
    const way = !closed && broken > 0 && dice.chance(0.5) ? backwards(segments) : segments;
    const key = JSON.stringify(look);
    const known = byLook.get(key) ?? { look, paths: [] };
    known.paths.push(
      pathOf(
        way.map((s) => mapped(s, inFile)),
        closed,
      ),
    );
    byLook.set(key, known);
  }
  const lines: LinesOfLook[] = [...byLook.values()];
  const writings: Writing[] = texts.map(({ at, text, group }) => ({ ...inFile(at), text, layer: "", group }));
  return {
    drawing: {
      format,
      unit: unitSaid ? { mm: unit, saidBy: format === "dxf" ? "header" : "size" } : null,
      lines,
      points: [],
      writings,
      hiddenLayers: [],
    },
    truth: truth.map((one) => ({
      ...one,
      ring: one.ring.map((s) => mapped(s, turnedBy)),
      corners: mapPlaces(one.corners, turnedBy),
      inside: mapPlaces(one.inside, turnedBy),
      darts: one.darts.map(({ name, inner, outer, apex }) => ({
        name,
        inner: turnedBy(inner),
        outer: turnedBy(outer),
        apex: turnedBy(apex),
      })),
    })),
  };
}

const mapPlaces = (places: Readonly<Record<string, XY>>, to: (p: XY) => XY): Record<string, XY> =>
  Object.fromEntries(Object.entries(places).map(([name, at]) => [name, to(at)]));
