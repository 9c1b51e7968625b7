/** Strips of the demonstration on its own pieces, laid by their crosses on the lines of its file as a person would lay them. */
import type { Work } from "../../src/core/decisions/work";
import { overlayOf } from "../../src/core/overlay/overlayOf";
import type { Patch, PatchLine } from "../../src/core/overlay/overlay";
import { linnet, linnetWork, sideBySide, TOP } from "../tools/ownDemo";
import type { ForeignOutline } from "./foreign/foreignTypes";
import { planOf } from "./works";

interface XY {
  readonly x: number;
  readonly y: number;
}

interface Laid {
  readonly patch: Patch;
  /** From the frame of the piece to the file, mm. */
  readonly toFile: (place: XY) => XY;
  readonly crosses: readonly { readonly name: string; readonly off: number }[];
  /** Points of the strip's printed line and of the altered one, each with how far it lies from the file's nearest line. */
  readonly printed: readonly { readonly off: number }[];
  readonly changed: readonly { readonly off: number }[];
}

const A4_LONG = 277;
const STEPS = 60;

export const alteredLinnet = (svg: string): Work => ({
  ...linnetWork(svg),
  picks: { bustAlteration: 0 },
  alterations: [
    {
      kind: "dartEnd",
      id: "end",
      dart: { piece: "front", dart: "frenchDart" },
      shorten: 12,
      across: 0,
      hold: "mouth",
      giveBack: {},
    },
    { kind: "fit", id: "sway", fit: "swayBack", amount: 10 },
  ],
});

const cubic = (a: XY, p: XY, q: XY, b: XY, t: number): XY => {
  const [s, u] = [1 - t, t];
  const mix = (w: number, x: number, y: number, z: number): number =>
    s * s * s * w + 3 * s * s * u * x + 3 * s * u * u * y + u * u * u * z;
  return { x: mix(a.x, p.x, q.x, b.x), y: mix(a.y, p.y, q.y, b.y) };
};

/** The lines of a layer: moves, lines, cubics and closings, all told from the sheet's own corner. */
function linesOfLayer(svg: string, label: string): readonly (readonly XY[])[] {
  const [, layer = ""] = new RegExp(`<g id="size-${label}"[^>]*>([\\s\\S]*?)</g>`).exec(svg) ?? [];
  return [...layer.matchAll(/<path d="([^"]+)"/g)].map(([, data = ""]) => {
    const all: XY[] = [];
    for (const [, letter, rest = ""] of data.matchAll(/([MLCZ])([^MLCZ]*)/g)) {
      const numbers = rest.trim().split(/\s+/).map(Number);
      const at = (i: number): XY => ({ x: numbers[i] ?? Number.NaN, y: numbers[i + 1] ?? Number.NaN });
      const last = all.at(-1);
      const [first] = all;
      if (letter === "Z" && first !== undefined) all.push(first);
      else if (letter === "C" && last !== undefined)
        for (let i = 1; i <= STEPS; i += 1) all.push(cubic(last, at(0), at(2), at(4), i / STEPS));
      else if (letter !== "Z") all.push(at(0));
    }
    return all;
  });
}

function offLine(place: XY, a: XY, b: XY): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const t = Math.min(1, Math.max(0, ((place.x - a.x) * dx + (place.y - a.y) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(place.x - a.x - t * dx, place.y - a.y - t * dy);
}

const offLines = (place: XY, lines: readonly (readonly XY[])[]): number =>
  Math.min(...lines.flatMap((line) => line.slice(1).map((b, i) => offLine(place, line[i] ?? b, b))));

/** Corners, ends of darts and marks of an outline by name. */
const cornersOf = ({ ring, darts, inside }: ForeignOutline): ReadonlyMap<string, XY> =>
  new Map<string, XY>([
    ...ring.flatMap(({ from, segments: [first] }): [string, XY][] => (first === undefined ? [] : [[from, first.a]])),
    ...darts.map(({ name, apex }): [string, XY] => [`${name}Apex`, apex]),
    ...Object.entries(inside),
  ]);

/** The slide and turn that brings places nearest to their partners. */
function laidBy(pairs: readonly (readonly [XY, XY])[]): (place: XY) => XY {
  const middle = (which: 0 | 1): XY => ({
    x: pairs.reduce((sum, pair) => sum + pair[which].x, 0) / pairs.length,
    y: pairs.reduce((sum, pair) => sum + pair[which].y, 0) / pairs.length,
  });
  const [from, to] = [middle(0), middle(1)];
  let [dot, cross] = [0, 0];
  for (const [a, b] of pairs) {
    const [ax, ay, bx, by] = [a.x - from.x, a.y - from.y, b.x - to.x, b.y - to.y];
    dot += ax * bx + ay * by;
    cross += ax * by - ay * bx;
  }
  const turn = Math.atan2(cross, dot);
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return ({ x, y }) => ({
    x: to.x + cos * (x - from.x) - sin * (y - from.y),
    y: to.y + sin * (x - from.x) + cos * (y - from.y),
  });
}

const sampled = (lines: readonly PatchLine[]): readonly XY[] =>
  lines.flatMap(({ edges }) =>
    edges.flatMap((edge) =>
      Array.from({ length: 9 }, (_, i) =>
        edge.curve !== null
          ? cubic(edge.a, edge.curve.c1, edge.curve.c2, edge.b, i / 8)
          : { x: edge.a.x + ((edge.b.x - edge.a.x) * i) / 8, y: edge.a.y + ((edge.b.y - edge.a.y) * i) / 8 },
      ),
    ),
  );

export function onOriginal(svg: string): readonly Laid[] {
  const plan = planOf(alteredLinnet(svg));
  const overlay = overlayOf(
    plan,
    plan.left.pieces.map(({ name }) => name),
    A4_LONG,
  );
  const lines = linesOfLayer(svg, overlay.baseSize.label ?? "");
  const placed = sideBySide(linnet().pieces);
  return overlay.patches.map((patch): Laid => {
    const own = placed.find(({ piece }) => piece.name === patch.tissue);
    const outline = own?.piece.sizes.find(({ label }) => label === overlay.baseSize.label);
    if (own === undefined || outline === undefined) throw new Error(`no ${patch.tissue} in the file`);
    const corners = cornersOf(outline);
    const pairs = patch.layOn.flatMap(({ name, at }): { name: string; at: XY; on: XY }[] => {
      const corner = corners.get(name);
      return corner === undefined ? [] : [{ name, at, on: { x: corner.x + own.dx, y: corner.y + TOP } }];
    });
    const toFile = laidBy(pairs.map(({ at, on }) => [at, on]));
    const offs = (all: readonly PatchLine[]): readonly { readonly off: number }[] =>
      sampled(all.filter(({ kind }) => kind !== "level")).map((place) => ({ off: offLines(toFile(place), lines) }));
    return {
      patch,
      toFile,
      crosses: pairs.map(({ name, at, on }) => {
        const { x, y } = toFile(at);
        return { name, off: Math.hypot(x - on.x, y - on.y) };
      }),
      printed: offs(patch.baseSize),
      changed: offs(patch.changed),
    };
  });
}
