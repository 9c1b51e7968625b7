/** How a share of a ring is drawn on the cloth with a string and a pin: mm of the cloth, the pin at the origin, y along the cloth. */
import type { LengthUnit } from "../core/decisions/work";
import type { SectorPart } from "../core/parts/part";
import { SHARES_WHOLE } from "../core/tolerance";
import type { Mm } from "../core/units";
import { circleSteps, radiusWords, sideWords, STRAIGHT_GRAIN } from "../words/circleSketch";
import { arcSpots, line, words, type Figure, type FigureMark, type Spot } from "./figure";

/** From the pin, along the string. */
interface SketchRadii {
  readonly waist: Mm;
  readonly hem: Mm;
  /** Of the lines that are cut. */
  readonly waistCut: Mm;
  readonly hemCut: Mm;
}

export interface CircleSketch {
  readonly figure: Figure;
  readonly radii: SketchRadii;
  /** From the cut end of the cloth to the pin, along the fold or the selvage; and from that selvage across to it. */
  readonly pin: { readonly along: Mm; readonly across: Mm };
  /** What to do, in order. */
  readonly steps: readonly string[];
}

const QUARTER = Math.PI / 2;
/** Degrees of type and of the room round it, as shares of the drawing's longer side. */
const TYPE = 1 / 26;
const ROOM = 1 / 16;
/** Where along the arcs the strings lie, as shares of the angle. */
const WAIST_STRING = 0.24;
const HEM_STRING = 0.6;

/** From straight down, turning to the right. */
const placeAt = (radius: Mm, angle: number): Spot => ({ x: radius * Math.sin(angle), y: radius * Math.cos(angle) });

/** An arc about the pin from one angle to another, both from straight down. */
const arc = (radius: Mm, from: number, to: number): readonly Spot[] =>
  arcSpots({ x: 0, y: 0 }, radius, QUARTER - from, QUARTER - to);

export function circleSketch(part: SectorPart, unit: LengthUnit): CircleSketch {
  const { inner, outer, angle, allowances, foldSides } = part;
  const radii: SketchRadii = {
    waist: inner,
    hem: outer,
    waistCut: Math.max(0, inner - allowances.inner),
    hemCut: outer + allowances.outer,
  };
  const onFold = foldSides === 1;
  // A ring that closes is slashed open: there is no cloth beside its seam.
  const isWhole = (angle * (1 + foldSides)) / (2 * Math.PI) > 1 - SHARES_WHOLE;
  /** How far the cut goes beyond a side at a radius. */
  const beyond = (radius: Mm): number =>
    isWhole || radius <= 0 ? 0 : Math.asin(Math.min(1, allowances.sides / radius));
  const start = (radius: Mm): number => (onFold ? 0 : -beyond(radius));
  const hemCut = arc(radii.hemCut, start(radii.hemCut), angle + beyond(radii.hemCut));
  const waist = waistSpots(part);
  const waistCut =
    part.waistRadii === undefined
      ? arc(radii.waistCut, start(radii.waistCut), angle + beyond(radii.waistCut))
      : waistSpots(part, { nearer: allowances.inner, from: start(inner), to: angle + beyond(inner) });
  const reach = [...hemCut, ...waistCut];
  const left = Math.min(0, ...reach.map(({ x }) => x));
  const [right, top, foot] = [
    Math.max(...reach.map(({ x }) => x)),
    Math.min(0, ...reach.map(({ y }) => y)),
    Math.max(...reach.map(({ y }) => y)),
  ];
  const size = Math.max(right - left, foot - top);
  const [room, type] = [size * ROOM, size * TYPE];
  const cloth: readonly Spot[] = [
    { x: left, y: top },
    { x: right + room, y: top },
    { x: right + room, y: foot + room },
    { x: left, y: foot + room },
  ];
  const pin: Spot = { x: 0, y: 0 };
  const waistAt = radiusAt(part, angle * WAIST_STRING);
  const [waistEnd, hemEnd] = [placeAt(waistAt, angle * WAIST_STRING), placeAt(outer, angle * HEM_STRING)];
  const marks: FigureMark[] = [
    line("cloth", cloth, true),
    line("measure", [
      { x: left, y: top },
      { x: right + room, y: top },
    ]),
    line(onFold ? "fold" : "selvage", [
      { x: left, y: top },
      { x: left, y: foot + room },
    ]),
    ...(isWhole && !onFold
      ? [line("cutting", hemCut, true), line("cutting", waistCut, true)]
      : [line("cutting", [...hemCut, ...waistCut.toReversed()], true)]),
    line("stitch", waist),
    line("stitch", arc(outer, 0, angle)),
    ...(isWhole ? slashMarks(part) : [line("stitch", [placeAt(inner, angle), placeAt(outer, angle)])]),
    ...(isWhole || onFold ? [] : [line("stitch", [placeAt(inner, 0), placeAt(outer, 0)])]),
    line("measure", [pin, waistEnd]),
    line("measure", [pin, hemEnd]),
    line("pin", arcSpots(pin, type * 0.3, 0, 2 * Math.PI), true),
    ...grainMarks(part, size, type),
    words(sideWords(onFold), { x: left - type * 0.5, y: (top + foot) / 2 }, type, { anchor: "middle", degrees: -90 }),
    besideString(pin, hemEnd, radiusWords("hem", outer, unit), type, 0.62),
    besideString(pin, waistEnd, radiusWords("waist", waistAt, unit), type, null),
  ];
  const along = Math.abs(top);
  const across = Math.abs(left);
  return {
    figure: {
      box: {
        x: left - room - type,
        y: top - room,
        width: right - left + 3 * room + type,
        height: foot - top + 3 * room,
      },
      marks,
    },
    radii,
    pin: { along, across },
    steps: circleSteps({ part, radii, pin: { along, across } }, unit),
  };
}

/** How far the waist is from the pin at an angle: even between two places where that is told. */
function radiusAt({ inner, waistRadii = [] }: SectorPart, angle: number): Mm {
  const after = waistRadii.findIndex(({ at }) => at >= angle);
  const [from, to] = [waistRadii[after - 1], waistRadii[after]];
  if (to === undefined) return waistRadii.at(-1)?.radius ?? inner;
  if (from === undefined) return to.radius;
  return from.radius + ((to.radius - from.radius) * (angle - from.at)) / (to.at - from.at);
}

/** The waist as it is drawn, or nearer to the pin, as it is cut. */
function waistSpots(
  part: SectorPart,
  {
    nearer = 0,
    from = 0,
    to = part.angle,
  }: { readonly nearer?: Mm; readonly from?: number; readonly to?: number } = {},
): readonly Spot[] {
  const steps = Math.max(8, Math.ceil((to - from) / (Math.PI / 60)));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = from + ((to - from) * i) / steps;
    return placeAt(Math.max(0, radiusAt(part, Math.min(Math.max(angle, 0), part.angle)) - nearer), angle);
  });
}

/** Where a ring that closes is cut open, and the seam beside the cut. */
function slashMarks({ inner, outer, angle, slash = 0, foldSides, allowances }: SectorPart): readonly FigureMark[] {
  const [top, foot] = [placeAt(inner - allowances.inner, angle), placeAt(outer + allowances.outer, angle)];
  const [ux, uy] = [-Math.cos(angle), Math.sin(angle)];
  const beside = (side: number): FigureMark =>
    line(
      "stitch",
      [placeAt(inner, angle), placeAt(outer, angle)].map(({ x, y }) => ({
        x: x + ux * slash * side,
        y: y + uy * slash * side,
      })),
    );
  return [line("cutting", [top, foot]), ...(foldSides === 1 ? [beside(1)] : [beside(1), beside(-1)])];
}

/** Along a string; beyond the end of a short one. */
function besideString(from: Spot, to: Spot, text: string, size: Mm, share: number | null): FigureMark {
  const way = Math.atan2(to.y - from.y, to.x - from.x);
  const isBack = Math.cos(way) < 0;
  const degrees = ((isBack ? way + Math.PI : way) * 180) / Math.PI;
  if (share === null) {
    const at = { x: to.x + Math.cos(way) * size * 0.6, y: to.y + Math.sin(way) * size * 0.6 };
    return words(text, at, size, { anchor: isBack ? "end" : "start", degrees });
  }
  const [nx, ny] = [Math.sin((degrees * Math.PI) / 180), -Math.cos((degrees * Math.PI) / 180)];
  return words(
    text,
    {
      x: from.x + (to.x - from.x) * share + nx * size * 0.35,
      y: from.y + (to.y - from.y) * share + ny * size * 0.35,
    },
    size,
    { anchor: "middle", degrees },
  );
}

/** The straight grain, beside the fold or the selvage. */
function grainMarks({ inner, outer, angle }: SectorPart, size: Mm, type: Mm): readonly FigureMark[] {
  const middle = Math.min(angle * 0.12, 0.2);
  const [from, to] = [placeAt(inner + (outer - inner) * 0.3, middle), placeAt(inner + (outer - inner) * 0.75, middle)];
  const x = from.x;
  const head = size / 70;
  return [
    line("grain", [
      { x, y: from.y },
      { x, y: to.y },
    ]),
    line("grain", [
      { x: x - head, y: from.y + 2 * head },
      { x, y: from.y },
      { x: x + head, y: from.y + 2 * head },
    ]),
    line("grain", [
      { x: x - head, y: to.y - 2 * head },
      { x, y: to.y },
      { x: x + head, y: to.y - 2 * head },
    ]),
    words(STRAIGHT_GRAIN, { x: x + type * 0.9, y: (from.y + to.y) / 2 }, type * 0.85, {
      anchor: "middle",
      degrees: -90,
    }),
  ];
}
