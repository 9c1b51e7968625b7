/** A true-scale piece as ink, in its own frame: what is drawn and written on it. */
import type { TrueDart, TruePiece, Notch } from "../core/cutting/truePiece";
import { lineEdge, type EdgeCurve } from "../core/geometry/edgeCurve";
import { between, distance, midpoint, piecePoint, shift, type PiecePoint } from "../core/geometry/point";
import { segmentNearest } from "../core/geometry/segment";
import { outlineOf } from "../core/surgery/ring";
import { legsOf } from "../core/dart/bowedLegs";
import type { Piece } from "../core/pattern/piece";
import { must } from "../core/result";
import { radians, type Mm } from "../core/units";
import { BUST_POINT_WORDS, foldWords, GATHER_WORDS, GRAIN_WORDS, levelLineWords, OPENING_WORDS } from "../words/truePaper";
import type { Ink, InkLine, InkRole, InkText } from "./ink";
import { fitLines } from "./fitLines";

type PieceInk = Ink<"piece">;

const NO_TURN = radians(0);
/** Small writing on a piece, mm (about 8 points). */
const SMALL: Mm = 2.9;

const chain = (role: InkRole, edges: readonly EdgeCurve<"piece">[], closed = false): InkLine<"piece"> => ({ kind: "line", role, edges, closed });

/** Straight from point to point. */
const polyline = (role: InkRole, points: readonly PiecePoint[], closed = false): InkLine<"piece"> =>
  chain(role, points.slice(1).map((to, index) => lineEdge(must(points[index], "point"), to)), closed);

const words = (role: InkRole, at: PiecePoint, text: string, options: Partial<Pick<InkText<"piece">, "anchor" | "size" | "turn" | "bold">> = {}): InkText<"piece"> => ({
  kind: "text",
  role,
  at,
  anchor: "start",
  text,
  size: SMALL,
  turn: NO_TURN,
  ...options,
});

export interface PieceInkOptions {
  /** What stands on the piece: its name first. */
  readonly title: readonly string[];
  /** Whether there are allowances; without, the stitch line is cut along. */
  readonly allowances: boolean;
}

/** All of a piece, its printed sizes left out. */
export function pieceInk(piece: TruePiece, { title, allowances }: PieceInkOptions): readonly PieceInk[] {
  return [
    ...(allowances ? [chain("stitch", piece.stitch, true)] : []),
    ...cutInk(piece, allowances),
    ...foldInk(piece),
    ...piece.levels.flatMap(({ level, points }) => levelInk(points, levelLineWords(level))),
    ...piece.darts.flatMap(dartInk),
    ...piece.notches.flatMap(notchInk),
    ...grainInk(piece.grain),
    ...(piece.bustPoint === null ? [] : bustPointInk(piece.bustPoint)),
    ...piece.drills.flatMap((drill) => (drill.what === "button" ? buttonInk(drill.at, drill.hole) : drillInk(drill.at))),
    ...titleInk(piece, title),
  ];
}

/** A piece of another size or from before, as one thin line with its darts. */
export function underInk(piece: Piece, role: "printed" | "before", size?: number): readonly PieceInk[] {
  const lines = [
    chain(role, outlineOf(piece), true),
    ...piece.darts.filter(({ gathered }) => gathered !== true).flatMap(({ name }) => {
      const { inner, outer } = legsOf(piece, name);
      return [chain(role, [inner.curve]), chain(role, [outer.curve])];
    }),
  ];
  return size === undefined ? lines : lines.map((line) => ({ ...line, size }));
}

/** Where a printed size is named: the first of these corners that the piece has, and one that is far from it. */
const NAMED_AT = [
  ["sideWaist", "sideHem", "sideUnderBust", "princessWaist", "strapFrontOuter"],
  ["shoulderTip", "underarm", "strapOuter", "princessTop", "strapBackOuter"],
] as const;

export const sizeLabelInk = (piece: Piece, label: string): readonly PieceInk[] =>
  NAMED_AT.flatMap((corners): PieceInk[] => {
    const at = corners.map((name) => piece.points[name]?.at).find((point) => point !== undefined);
    return at === undefined ? [] : [words("printed", shift(at, 0.8, 2.4), label, { size: 2.4 })];
  });

/** mm. A point of the cutting line this near the fold is on it. */
const ON_FOLD: Mm = 0.02;

/** The cutting line, broken where the piece lies on the fold. */
function cutInk({ cutting, stitch, fold }: TruePiece, allowances: boolean): readonly PieceInk[] {
  const onFold = (p: PiecePoint): boolean => fold.some(({ a, b }) => segmentNearest(a, b, p).distance < ON_FOLD);
  const runsOn = (a: PiecePoint, b: PiecePoint): boolean => onFold(a) && onFold(b) && onFold(midpoint(a, b));
  if (!allowances) {
    const edges = stitch.filter(({ a, b, curve }) => curve !== null || !runsOn(a, b));
    return edges.length === stitch.length ? [chain("cutting", stitch, true)] : runsOf(edges).map((run) => chain("cutting", run));
  }
  const all = cutting.map(({ at }, index) => lineEdge(at, must(cutting[(index + 1) % cutting.length], "point").at));
  const edges = all.filter(({ a, b }) => !runsOn(a, b) && !(fold.length > 0 && beyondFold(a, b, fold)));
  return edges.length === all.length ? [chain("cutting", all, true)] : runsOf(edges).map((run) => chain("cutting", run));
}

/** Where the cutting line follows the fold on, above and below the stitch line. */
const beyondFold = (a: PiecePoint, b: PiecePoint, fold: readonly EdgeCurve<"piece">[]): boolean => {
  const line = must(fold[0], "fold");
  const off = (p: PiecePoint): Mm => {
    const [dx, dy] = [line.b.x - line.a.x, line.b.y - line.a.y];
    return Math.abs((p.x - line.a.x) * dy - (p.y - line.a.y) * dx) / Math.hypot(dx, dy);
  };
  return off(a) < ON_FOLD && off(b) < ON_FOLD;
};

/** Edges of a ring with some left out, as the runs that are left, each whole. */
function runsOf(edges: readonly EdgeCurve<"piece">[]): readonly (readonly EdgeCurve<"piece">[])[] {
  const runs: EdgeCurve<"piece">[][] = [];
  for (const edge of edges) {
    const last = runs.at(-1);
    const end = last?.at(-1);
    if (last !== undefined && end !== undefined && distance(end.b, edge.a) < ON_FOLD) last.push(edge);
    else runs.push([edge]);
  }
  const [first, last] = [runs[0], runs.at(-1)];
  // The ring may begin in the middle of a run.
  if (runs.length > 1 && first !== undefined && last !== undefined && distance(must(last.at(-1), "edge").b, must(first[0], "edge").a) < ON_FOLD) {
    runs.pop();
    runs[0] = [...last, ...first];
  }
  return runs;
}

function foldInk(piece: TruePiece): readonly PieceInk[] {
  const [first, last] = [piece.fold[0], piece.fold.at(-1)];
  if (first === undefined || last === undefined) return [];
  // From the cutting line above to the one below.
  const ends = piece.notches.filter(({ kind }) => kind === "centre").map(({ cut }) => cut).toSorted((p, q) => p.y - q.y);
  const [from, to] = [ends[0] ?? first.a, ends.at(-1) ?? last.b];
  const inside = piece.grain[0].x > from.x ? 1 : -1;
  const up = Math.PI / 2;
  const middle = between(from, to, 0.5);
  const bracket = [shift(between(from, to, 0.12), 9 * inside, 0), between(from, to, 0.12), between(from, to, 0.88), shift(between(from, to, 0.88), 9 * inside, 0)];
  return [
    polyline("fold", [from, to]),
    ...[bracket[0], bracket[3]].map((end, index): PieceInk => polyline("grain", [must(end, "end"), must(bracket[index === 0 ? 1 : 2], "corner")])),
    arrowHead(must(bracket[1], "corner"), -inside, 0),
    arrowHead(must(bracket[2], "corner"), -inside, 0),
    words("fold", shift(middle, inside > 0 ? 4.5 : -2, 0), foldWords(piece), { anchor: "middle", turn: radians(-up), size: 3.2 }),
  ];
}

/** A small filled head that points one way, its tip at a point. */
function arrowHead(tip: PiecePoint, ux: number, uy: number): InkLine<"piece"> {
  const [back, side] = [3.2, 1.1];
  const base = shift(tip, -ux * back, -uy * back);
  return { ...polyline("grain", [tip, shift(base, -uy * side, ux * side), shift(base, uy * side, -ux * side), tip], true), filled: true };
}

function grainInk([from, to]: TruePiece["grain"]): readonly PieceInk[] {
  const middle = midpoint(from, to);
  return [
    polyline("grain", [from, to]),
    arrowHead(from, 0, -1),
    arrowHead(to, 0, 1),
    words("grain", shift(middle, -1.4, 0), GRAIN_WORDS, { anchor: "middle", turn: radians(-Math.PI / 2) }),
  ];
}

function levelInk(points: readonly PiecePoint[], name: string): readonly PieceInk[] {
  const last = points.at(-1);
  const before = points.at(-2);
  if (last === undefined || before === undefined) return [];
  const inward = last.x >= before.x ? -1 : 1;
  return [polyline("level", points), words("level", shift(last, 4 * inward, -1.2), name, { anchor: inward < 0 ? "end" : "start", size: 2.6 })];
}

function dartInk({ legs, fold, mouth, gathered }: TrueDart): readonly PieceInk[] {
  if (!gathered) return [...legs.map((leg) => chain("dartLeg", [leg])), ...(fold === null ? [] : [polyline("dartFold", fold)])];
  const [a, b] = mouth;
  const span = distance(a, b);
  const count = Math.max(2, Math.round(span / 7));
  const [sx, sy] = span === 0 ? [0, 0] : [-(b.y - a.y) / span, (b.x - a.x) / span];
  const wave = Array.from({ length: count + 1 }, (_, i) => {
    const off = i === 0 || i === count ? 0 : i % 2 === 0 ? 2 : -2;
    return shift(between(a, b, i / count), sx * off, sy * off);
  });
  return [polyline("gather", wave), words("gather", shift(midpoint(a, b), 0, -4), GATHER_WORDS, { anchor: "middle" })];
}

/** How deep a notch goes from the cutting line, mm: never to the stitch line, where it would open the seam. */
const NOTCH_DEPTH: Mm = 5;
const NOTCH_SHARE = 0.6;
/** Without an allowance it is a tick inside the line. */
const TICK: Mm = 4;

function notchInk({ kind, number, stitch, cut }: Notch): readonly PieceInk[] {
  const allowance = distance(stitch, cut);
  const hasRoom = allowance > 0.5;
  const inner = hasRoom ? between(cut, stitch, Math.min(NOTCH_DEPTH, allowance * NOTCH_SHARE) / allowance) : stitch;
  const tick = hasRoom ? [cut, inner] : [stitch, shift(stitch, TICK, 0)];
  const ink: PieceInk[] = [polyline("notch", tick)];
  if (kind === "dart" || kind === "centre" || !hasRoom) return ink;
  const [ux, uy] = [(stitch.x - cut.x) / allowance, (stitch.y - cut.y) / allowance];
  // The number stands inside the stitch line, where the scissors do not come.
  const at = shift(stitch, ux * 3.4, uy * 3.4 + 1.2);
  ink.push({ ...polyline("notch", [shift(cut, -uy * 1.8, ux * 1.8), inner, shift(cut, uy * 1.8, -ux * 1.8)], false) });
  ink.push(words("notch", at, kind === "opening" ? OPENING_WORDS : String(number), { anchor: kind === "opening" ? (ux >= 0 ? "start" : "end") : "middle", size: 3.4, bold: true }));
  return ink;
}

/** Kappa: a quarter of a circle as one cubic, off by less than 0.03 % of the radius. */
const KAPPA = 0.5523;

function circle(centre: PiecePoint, radius: Mm, role: InkRole): InkLine<"piece"> {
  const at = (x: number, y: number): PiecePoint => piecePoint(centre.x + x * radius, centre.y + y * radius);
  const quarter = (ax: number, ay: number, bx: number, by: number): EdgeCurve<"piece"> => ({
    a: at(ax, ay),
    b: at(bx, by),
    curve: { c1: at(ax + KAPPA * bx, ay + KAPPA * by), c2: at(bx + KAPPA * ax, by + KAPPA * ay) },
  });
  return chain(role, [quarter(1, 0, 0, 1), quarter(0, 1, -1, 0), quarter(-1, 0, 0, -1), quarter(0, -1, 1, 0)], true);
}

const cross = (at: PiecePoint, arm: Mm): readonly PieceInk[] => [
  polyline("mark", [shift(at, -arm, 0), shift(at, arm, 0)]),
  polyline("mark", [shift(at, 0, -arm), shift(at, 0, arm)]),
];

const bustPointInk = (at: PiecePoint): readonly PieceInk[] => [circle(at, 3, "mark"), ...cross(at, 5), words("mark", shift(at, 6, -1.5), BUST_POINT_WORDS)];

const BUTTON_ARM: Mm = 3.6;
const HOLE_BAR: Mm = 1.2;

/** The very point where a dart ends; the circle is for the thread. */
const drillInk = (at: PiecePoint): readonly PieceInk[] => [circle(at, 1.4, "mark"), ...cross(at, 0.7)];

/** A button's place, with a cross that stands beyond its circle, and its buttonhole barred at both ends. */
function buttonInk(at: PiecePoint, [outer, inner]: readonly [PiecePoint, PiecePoint]): readonly PieceInk[] {
  const length = distance(outer, inner);
  const [sx, sy] = [(inner.y - outer.y) / length, (outer.x - inner.x) / length];
  const bar = (end: PiecePoint): PieceInk => polyline("mark", [shift(end, -sx * HOLE_BAR, -sy * HOLE_BAR), shift(end, sx * HOLE_BAR, sy * HOLE_BAR)]);
  return [circle(at, 2, "mark"), polyline("mark", [shift(at, -sx * BUTTON_ARM, -sy * BUTTON_ARM), shift(at, sx * BUTTON_ARM, sy * BUTTON_ARM)]), polyline("mark", [outer, inner]), bar(outer), bar(inner)];
}

function titleInk({ title: box }: TruePiece, lines: readonly string[]): readonly PieceInk[] {
  const turned = box.height > box.width;
  const [width, height] = turned ? [box.height, box.width] : [box.width, box.height];
  return fitLines(lines, width, height).map(({ text, size, down, bold }): PieceInk => {
    const at = turned ? shift(box.centre, down, 0) : shift(box.centre, 0, down);
    return words("title", at, text, { anchor: "middle", size, turn: radians(turned ? -Math.PI / 2 : 0), ...(bold ? { bold } : {}) });
  });
}
