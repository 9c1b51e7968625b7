/** Path data of SVG, every command of it. */
import { after, moving, scaling, turning, type Place } from "./affine";
import { STEPS } from "./drawingBuilder";
import { arcParts, type Part, type Stroke } from "./stroke";

const NUMBER = /[\s,]*([+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?)/uy;
const FLAG = /[\s,]*([01])/uy;
const COMMAND = /[\s,]*([MmLlHhVvCcSsQqTtAaZz])/uy;

/** Kinds of the arguments: a number, a flag. */
const TAKES: Readonly<Record<string, string>> = {
  M: "nn",
  L: "nn",
  H: "n",
  V: "n",
  C: "nnnnnn",
  S: "nnnn",
  Q: "nnnn",
  T: "nn",
  A: "nnnffnn",
};

/** A control point that S or T mirrors, and which of both asks for it. */
interface Mirrored {
  readonly of: "C" | "Q";
  readonly place: Place;
}

/**
 * The lines of it, one for each that is unbroken. Where it cannot be read on, what stands before is taken and no more, as the
 * standard asks.
 *
 * @param spend is called for each command
 */
export function pathStrokes(data: string, spend: (steps: number) => void): Stroke[] {
  const strokes: Stroke[] = [];
  let at = 0;
  let begun: Place | null = null;
  let here: Place = { x: 0, y: 0 };
  let parts: Part[] = [];
  let before: Mirrored | null = null;

  const next = (pattern: RegExp): string | null => {
    pattern.lastIndex = at;
    const [found, text] = pattern.exec(data) ?? [];
    if (found === undefined || text === undefined) return null;
    at += found.length;
    return text;
  };
  const taken = (kinds: string): number[] | null => {
    const values: number[] = [];
    const from = at;
    for (const kind of kinds) {
      const text = next(kind === "f" ? FLAG : NUMBER);
      if (text === null) {
        at = from;
        return null;
      }
      values.push(Number(text));
    }
    return values;
  };
  const end = (closed: boolean): void => {
    if (begun !== null && (parts.length > 0 || closed)) strokes.push({ from: begun, parts, closed });
    parts = [];
  };
  const cubic = (c1: Place, c2: Place, to: Place): void => void parts.push({ controls: [c1, c2], to });

  for (let letter = next(COMMAND); letter !== null; letter = next(COMMAND)) {
    const kind = letter.toUpperCase();
    const relative = letter !== kind;
    if (strokes.length === 0 && begun === null && kind !== "M") return [];
    if (kind === "Z") {
      spend(STEPS.part);
      end(true);
      if (begun !== null) here = begun;
      before = null;
      continue;
    }
    let first = true;
    for (;;) {
      const values = taken(TAKES[kind] ?? "");
      if (values === null) {
        // One set of arguments at least; what is behind the last is the next command, or what cannot be read.
        if (first) {
          end(false);
          return strokes;
        }
        break;
      }
      spend(STEPS.part);
      const [p = 0, q = 0, r = 0, s = 0, t = 0, u = 0, v = 0] = values;
      const from: Place = here;
      const place = (x: number, y: number): Place => (relative ? { x: from.x + x, y: from.y + y } : { x, y });
      const mirrored = (of: "C" | "Q"): Place =>
        before?.of === of ? { x: 2 * from.x - before.place.x, y: 2 * from.y - before.place.y } : from;
      let mark: Mirrored | null = null;
      switch (kind) {
        case "M":
          if (first) {
            end(false);
            begun = place(p, q);
            here = begun;
            break;
          }
          here = place(p, q);
          parts.push({ to: here });
          break;
        case "L":
          here = place(p, q);
          parts.push({ to: here });
          break;
        case "H":
          here = { x: relative ? from.x + p : p, y: from.y };
          parts.push({ to: here });
          break;
        case "V":
          here = { x: from.x, y: relative ? from.y + p : p };
          parts.push({ to: here });
          break;
        case "C":
        case "S": {
          const c1 = kind === "C" ? place(p, q) : mirrored("C");
          const c2 = kind === "C" ? place(r, s) : place(p, q);
          here = kind === "C" ? place(t, u) : place(r, s);
          cubic(c1, c2, here);
          mark = { of: "C", place: c2 };
          break;
        }
        case "Q":
        case "T": {
          const c: Place = kind === "Q" ? place(p, q) : mirrored("Q");
          here = kind === "Q" ? place(r, s) : place(p, q);
          cubic(twoThirds(from, c), twoThirds(here, c), here);
          mark = { of: "Q", place: c };
          break;
        }
        default:
          here = place(u, v);
          parts.push(...arc(from, here, { x: p, y: q }, r, s === 1, t === 1));
      }
      before = mark;
      first = false;
    }
  }
  end(false);
  return strokes;
}

const twoThirds = (from: Place, to: Place): Place => ({
  x: from.x + (2 / 3) * (to.x - from.x),
  y: from.y + (2 / 3) * (to.y - from.y),
});

/**
 * @source W3C, Scalable Vector Graphics (SVG) 1.1, F.6: from both ends to the centre
 */
function arc(from: Place, to: Place, said: Place, degrees: number, large: boolean, sweep: boolean): Part[] {
  let [rx, ry] = [Math.abs(said.x), Math.abs(said.y)];
  if (from.x === to.x && from.y === to.y) return [];
  if (rx === 0 || ry === 0) return [{ to }];
  const turn = turning(degrees);
  const half = { x: (from.x - to.x) / 2, y: (from.y - to.y) / 2 };
  const x = turn.a * half.x + turn.b * half.y;
  const y = turn.c * half.x + turn.d * half.y;
  const needed = Math.hypot(x / rx, y / ry);
  if (needed > 1) [rx, ry] = [rx * needed, ry * needed];
  // In units of the radii; both ends lie on a circle of 1 about the centre.
  const [u, v] = [x / rx, y / ry];
  const off = Math.hypot(u, v);
  const reach = Math.sqrt(Math.max(0, 1 - off * off)) / off;
  const side = large === sweep ? -reach : reach;
  const centre = { x: side * v, y: -side * u };
  const start = Math.atan2(v - centre.y, u - centre.x);
  let angle = Math.atan2(-v - centre.y, -u - centre.x) - start;
  if (sweep && angle < 0) angle += 2 * Math.PI;
  if (!sweep && angle > 0) angle -= 2 * Math.PI;
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const ellipse = after(turn, scaling(rx, ry));
  const frame = after(
    moving(
      middle.x + ellipse.a * centre.x + ellipse.c * centre.y,
      middle.y + ellipse.b * centre.x + ellipse.d * centre.y,
    ),
    ellipse,
  );
  const parts = arcParts(frame, start, start + angle);
  const last = parts.at(-1);
  return last?.controls === undefined ? [{ to }] : [...parts.slice(0, -1), { controls: last.controls, to }];
}
