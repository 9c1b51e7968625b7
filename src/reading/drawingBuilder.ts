/** Gathers what a reader finds, holds it to the limits of a document, and writes it as a drawing. */
import type { FileDrawing, FileUnit, LineLook, LinesOfLook } from "../core/decisions/fileDrawing";
import { LIMITS } from "../core/decisions/limits";
import { FILE_STEP } from "../core/tolerance";
import type { Place } from "./affine";
import { refuse } from "./readingFailure";
import type { Stroke } from "./stroke";

/** Steps of reading, some half a millionth of a second each. A pattern needs some ten thousands. */
const MOST_STEPS = 5_000_000;

/** Steps that go into it: an element looked at, a part of a line, a part that is computed from others. */
export const STEPS = { element: 20, part: 6, computed: 40 } as const;

/** Lines before those that go on from one another are joined, and coordinates of all of them. */
const MOST_STROKES = 120_000;
const MOST_NUMBERS = LIMITS.fileText / 2;

/** Places behind the point, where the length of a unit is not known, and at the most. */
const USUAL_DIGITS = 4;
const MOST_DIGITS = 7;

/** Where something lies in the order of the file. */
interface Where {
  readonly layer: string;
  readonly group: string;
  /** Switched off in the file. */
  readonly off: boolean;
}

export type Look = Where & Pick<LineLook, "colour" | "dash" | "width">;

interface Held {
  readonly look: Look;
  readonly stroke: Stroke;
}

export interface DrawingBuilder {
  /** Counts steps of work, so that no file keeps the reader busy for ever. */
  readonly spend: (steps: number) => void;
  readonly line: (look: Look, stroke: Stroke) => void;
  /** @param spare may be left out where there are more points than a document holds */
  readonly point: (where: Where, at: Place, spare: boolean) => void;
  readonly writing: (where: Where, at: Place, text: string) => void;
  /** All that was written so far. */
  readonly texts: () => readonly string[];
  readonly drawing: (format: FileDrawing["format"], unit: FileUnit | null) => FileDrawing;
}

const isWithinReach = (value: number): boolean => Math.abs(value) <= LIMITS.fileCoordinate;

const within = ({ x, y }: Place): Place =>
  isWithinReach(x) && isWithinReach(y)
    ? { x, y }
    : refuse({ code: "reading/out-of-reach", most: LIMITS.fileCoordinate });

export function drawingBuilder(): DrawingBuilder {
  const strokes: Held[] = [];
  const found: (Where & Place & { readonly spare: boolean })[] = [];
  const writings: (Where & Place & { readonly text: string })[] = [];
  let steps = 0;
  let numbers = 0;
  let lost = 0;

  return {
    spend: (more) => {
      steps += more;
      if (steps > MOST_STEPS) refuse({ code: "reading/too-many", of: "copies", count: steps, most: MOST_STEPS });
    },
    line: (look, stroke) => {
      if (isPoint(stroke)) return;
      within(stroke.from);
      for (const { to, controls } of stroke.parts) {
        within(to);
        controls?.forEach(within);
        numbers += controls === undefined ? 2 : 6;
      }
      if (numbers > MOST_NUMBERS)
        refuse({ code: "reading/too-many", of: "letters", count: 2 * numbers, most: LIMITS.fileText });
      // Those beyond are counted, to say how many there are, and no longer held.
      if (strokes.length < MOST_STROKES) strokes.push({ look, stroke });
      else lost += 1;
    },
    point: (where, at, spare) => void found.push({ ...where, ...within(at), spare }),
    writing: (where, at, text) => {
      const said = text.trim().slice(0, LIMITS.text);
      if (said !== "") writings.push({ ...where, ...within(at), text: said });
    },
    texts: () => writings.map(({ text }) => text),
    drawing: (format, unit) => {
      const digits = digitsFor(unit);
      const held = strokes.length + lost > LIMITS.fileLines ? joined(strokes) : strokes;
      if (held.length + lost > LIMITS.fileLines)
        refuse({ code: "reading/too-many", of: "lines", count: held.length + lost, most: LIMITS.fileLines });
      const points = found.length > LIMITS.fileMarks ? found.filter(({ spare }) => !spare) : found;
      const marks = [points, writings].find((all) => all.length > LIMITS.fileMarks);
      if (marks !== undefined)
        refuse({ code: "reading/too-many", of: "marks", count: marks.length, most: LIMITS.fileMarks });

      const shown = new Set(
        [...held.map(({ look }) => look), ...points, ...writings].filter(({ off }) => !off).map(({ layer }) => layer),
      );
      const hidden = new Set<string>();
      const layerOf = ({ layer, off }: Where): string => {
        if (!off) return layer;
        const name = shown.has(layer) || layer === "" ? `${layer} (off)`.trim() : layer;
        hidden.add(name);
        return name;
      };
      const lines = sorted(held, layerOf, digits);
      if (lines.length === 0 && points.length === 0 && writings.length === 0) refuse({ code: "reading/empty" });
      const rounded = ({ x, y }: Place): Place => ({ x: Number(written(x, digits)), y: Number(written(y, digits)) });
      const drawn = {
        format,
        unit,
        lines,
        points: points.map((point) => ({ ...rounded(point), layer: layerOf(point), group: point.group })),
        writings: writings.map((one) => ({ ...rounded(one), text: one.text, layer: layerOf(one), group: one.group })),
      };
      if (hidden.size > LIMITS.fileLooks)
        refuse({ code: "reading/too-many", of: "looks", count: hidden.size, most: LIMITS.fileLooks });
      return { ...drawn, hiddenLayers: [...hidden] };
    },
  };
}

const isSame = (p: Place, q: Place): boolean => p.x === q.x && p.y === q.y;

const isPoint = ({ from, parts }: Stroke): boolean =>
  parts.every(({ to, controls = [] }) => [to, ...controls].every((place) => isSame(place, from)));

const keyOf = ({ layer, group, off, colour, dash, width }: Look): string =>
  JSON.stringify([layer, group, off, colour, dash, width]);

/** Lines of one look that begin where the one before ends, made one: what other programs write as many small segments. */
function joined(strokes: readonly Held[]): Held[] {
  const found: { look: Look; from: Place; parts: Stroke["parts"][number][]; closed: boolean }[] = [];
  for (const { look, stroke } of strokes) {
    const last = found.at(-1);
    const end = last?.parts.at(-1)?.to;
    if (
      last === undefined ||
      end === undefined ||
      last.closed ||
      stroke.closed ||
      !isSame(end, stroke.from) ||
      keyOf(last.look) !== keyOf(look)
    ) {
      found.push({ look, from: stroke.from, parts: [...stroke.parts], closed: stroke.closed });
      continue;
    }
    last.parts.push(...stroke.parts);
    last.closed = isSame(last.from, last.parts.at(-1)?.to ?? end);
  }
  return found.map(({ look, ...stroke }) => ({ look, stroke }));
}

function sorted(held: readonly Held[], layerOf: (look: Look) => string, digits: number): LinesOfLook[] {
  const byLook = new Map<string, { look: LineLook; paths: string[] }>();
  let length = 0;
  for (const { look, stroke } of held) {
    const key = keyOf(look);
    const kept = byLook.get(key) ?? { look: lookOf(look, layerOf(look)), paths: [] };
    if (!byLook.has(key)) byLook.set(key, kept);
    const path = pathOf(stroke, digits);
    if (path === null) continue;
    kept.paths.push(path);
    length += path.length;
  }
  if (length > LIMITS.fileText)
    refuse({ code: "reading/too-many", of: "letters", count: length, most: LIMITS.fileText });
  const lines = [...byLook.values()].filter(({ paths }) => paths.length > 0);
  if (lines.length > LIMITS.fileLooks)
    refuse({ code: "reading/too-many", of: "looks", count: lines.length, most: LIMITS.fileLooks });
  return lines;
}

const lookOf = ({ group, colour, dash, width }: Look, layer: string): LineLook => ({
  layer,
  group,
  colour,
  dash,
  width,
});

/** So many that a step is FILE_STEP or less. */
function digitsFor(unit: FileUnit | null): number {
  if (unit === null) return USUAL_DIGITS;
  let digits = 0;
  while (digits < MOST_DIGITS && 10 ** -digits * unit.mm > FILE_STEP) digits += 1;
  return digits;
}

function written(value: number, digits: number): string {
  const text = value.toFixed(digits);
  const short = text.includes(".") ? text.replace(/\.?0+$/u, "") : text;
  return short === "-0" ? "0" : short;
}

/** null: as written, no more than a point. */
function pathOf({ from, parts, closed }: Stroke, digits: number): string | null {
  const place = ({ x, y }: Place): string => `${written(x, digits)} ${written(y, digits)}`;
  const start = place(from);
  let path = `M${start}`;
  let last = start;
  let letter = "M";
  parts.forEach(({ to, controls }, i) => {
    const end = place(to);
    const next = controls === undefined ? "L" : "C";
    const places = controls === undefined ? [end] : [...controls.map(place), end];
    if (places.every((one) => one === last)) return;
    // The way back to the beginning is what Z says.
    if (closed && controls === undefined && i === parts.length - 1 && end === start) return;
    path += `${next === letter ? " " : next}${places.join(" ")}`;
    letter = next;
    last = end;
  });
  if (letter === "M") return null;
  return closed ? `${path}Z` : path;
}
