/** A true-scale piece as ink, in its own frame: what is drawn and written on it. */
import { isFreeWithin, isInRing, type Lines } from "../core/cutting/room";
import { isFoldedDown } from "../core/dart/dartCap";
import { notchDepth } from "../core/cutting/notches";
import type { Notch, NotchCut, TrueDart, TruePiece } from "../core/cutting/truePiece";
import { foldOf } from "../core/cutting/truePieces";
import { edgeFlatten, lineEdge, type EdgeCurve } from "../core/geometry/edgeCurve";
import { between, directionOf, distance, midpoint, polar, shift, type PiecePoint } from "../core/geometry/point";
import { lineDistance, segmentIntersections, segmentNearest } from "../core/geometry/segment";
import { outlineOf } from "../core/pattern/ring";
import { legsOf } from "../core/dart/bowedLegs";
import type { Piece } from "../core/pattern/piece";
import { invariant } from "../core/result";
import { LEVEL_KEPT, ON_FOLD, SAME_LINE, WORDS_ACCURACY } from "../core/tolerance";
import { radians, type Mm, type Radians } from "../core/units";
import {
  BUST_POINT_WORDS,
  dartFoldWords,
  foldWords,
  GATHER_WORDS,
  GRAIN_WORDS,
  LENGTHEN_WORDS,
  levelLineWords,
  openingWords,
  seamNameWords,
  STRAP_WORDS,
  tackingWords,
  VENT_FOLD_WORDS,
} from "../words/truePaper";
import { alongLine, obstaclesOf, readable } from "./alongLine";
import type { Ink, InkLine, InkRole, InkText } from "./ink";
import { fitLines, textWidth } from "./fitLines";
import { circleEdges } from "./inkShapes";

type PieceInk = Ink<"piece">;

const NO_TURN = radians(0);
/** Arm of the cross at the bust point of one of several sizes. */
const NEST_CROSS: Mm = 3;
/** Small writing on a piece, mm (9 points). */
const SMALL: Mm = 3.2;

const chain = (role: InkRole, edges: readonly EdgeCurve<"piece">[], closed = false): InkLine<"piece"> => ({
  kind: "line",
  role,
  edges,
  closed,
});

/** Straight from point to point. */
const polyline = (role: InkRole, points: readonly PiecePoint[], closed = false): InkLine<"piece"> =>
  chain(
    role,
    points.slice(1).map((to, index) => lineEdge(invariant(points[index], "point"), to)),
    closed,
  );

const words = (
  role: InkRole,
  at: PiecePoint,
  text: string,
  options: Partial<Pick<InkText<"piece">, "anchor" | "size" | "turn" | "bold">> = {},
): InkText<"piece"> => ({
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
  /** Borders of pages, which words along the fold keep clear of. */
  readonly borders?: Lines;
}

/** All of a piece, its printed sizes left out. */
export function pieceInk(piece: TruePiece, { title, allowances, borders = [] }: PieceInkOptions): readonly PieceInk[] {
  const named = titleInk(piece, title);
  const inside = [
    ...foldInk(piece, borders),
    ...piece.levels.flatMap(({ level, points }) => levelInk(points, levelLineWords(level, isBent(points)))),
    ...piece.darts.flatMap((dart) => dartInk(dart, piece.name)),
    ...piece.dots.map((at): PieceInk => ({ ...circle(at, 1.1, "mark"), filled: true })),
    ...piece.notches.flatMap((notch) => notchInk(notch, piece)),
    ...grainInk(piece.grain),
    ...tackingInk(piece),
    ...(piece.bustPoint === null ? [] : bustPointInk(piece.bustPoint, piece)),
    ...piece.drills.flatMap((drill) =>
      drill.what === "button" ? buttonInk(drill.at, drill.hole) : drillInk(drill.at),
    ),
  ];
  const vent = ventInk(piece, [...inside, ...named], borders);
  const folded = [...inside, ...vent];
  const marked = [...folded, ...strapInk(piece, [...folded, ...named], borders)];
  const lengthen = lengthenInk(piece, [...marked, ...named], borders);
  return [
    ...(allowances ? stitchInk(piece) : []),
    ...cutInk(piece, allowances),
    ...marked,
    ...lengthen,
    ...seamNamesInk(piece, [...marked, ...lengthen, ...named], borders),
    ...named,
  ];
}

/** A line of the body that is drawn with a bend: straight once the dart that it passes is shut. */
const isBent = (points: readonly PiecePoint[]): boolean => {
  const [first, last] = [points[0], points.at(-1)];
  return (
    first !== undefined && last !== undefined && points.some((p) => Math.abs(lineDistance(p, first, last)) > LEVEL_KEPT)
  );
};

const ringOf = ({ stitch }: TruePiece): readonly PiecePoint[] =>
  stitch.flatMap((edge) => edgeFlatten(edge, WORDS_ACCURACY).slice(1));

/** What each seam is called, and how it opens, where there is room for it along the seam. */
function seamNamesInk(piece: TruePiece, drawn: readonly PieceInk[], borders: Lines): readonly PieceInk[] {
  const ring = ringOf(piece);
  const taken: PieceInk[] = [...drawn];
  return piece.seams.flatMap((run): readonly PieceInk[] => {
    for (const text of seamNameWords(run, piece)) {
      const place = alongLine(run.edges, text, SMALL, { ring, lines: [...obstaclesOf(taken), ...borders] });
      if (place === null) continue;
      const ink = words("stitch", place.at, text, { anchor: "middle", turn: place.turn });
      taken.push(ink);
      return [ink];
    }
    return [];
  });
}

/** Half of how far the two lines stand apart between which a piece is cut across, mm. */
const LENGTHEN_APART: Mm = 1.5;
/** They stop so far from what is written large, mm. */
const LENGTHEN_CLEAR: Mm = 3;

/** Two lines across the piece, broken where the title stands, and what they are for. */
function lengthenInk(piece: TruePiece, drawn: readonly PieceInk[], borders: Lines): readonly PieceInk[] {
  const { title, lengthen } = piece;
  const ring = ringOf(piece);
  const [left, right] = [-1, 1].map((side) => title.centre.x + side * (title.width / 2 + LENGTHEN_CLEAR));
  return lengthen.flatMap((ends): readonly PieceInk[] => {
    const [a, b] = ends[0].x <= ends[1].x ? ends : [ends[1], ends[0]];
    const isCrossing = Math.abs(midpoint(a, b).y - title.centre.y) < title.height / 2 + LENGTHEN_CLEAR;
    const at = (x: number): PiecePoint => between(a, b, (x - a.x) / (b.x - a.x));
    const parts: readonly (readonly [PiecePoint, PiecePoint])[] =
      isCrossing && left !== undefined && right !== undefined && left > a.x && right < b.x
        ? [
            [a, at(left)],
            [at(right), b],
          ]
        : [[a, b]];
    const lines = parts.flatMap(([from, to]) =>
      [-LENGTHEN_APART, LENGTHEN_APART].map((by) => polyline("lengthen", [shift(from, 0, by), shift(to, 0, by)])),
    );
    // Above the upper line: seen from its right end, that is on the side where words are set.
    const longest = parts.toSorted((p, q) => distance(...q) - distance(...p))[0] ?? [a, b];
    const upper = lineEdge(shift(longest[1], 0, -LENGTHEN_APART), shift(longest[0], 0, -LENGTHEN_APART));
    const place = alongLine([upper], LENGTHEN_WORDS, SMALL, { ring, lines: [...obstaclesOf(drawn), ...borders] });
    return place === null
      ? lines
      : [...lines, words("lengthen", place.at, LENGTHEN_WORDS, { anchor: "middle", turn: place.turn })];
  });
}

/** A piece of another size or from before, as one thin line with its darts. */
export function underInk(piece: Piece, role: "printed" | "before", size?: number): readonly PieceInk[] {
  const lines = [
    chain(role, outlineOf(piece), true),
    ...piece.darts
      .filter(({ gathered }) => gathered !== true)
      .flatMap(({ name }) => {
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

/** What the sizes of a nest share: the name of the piece, and its grain. */
export const nestInk = (piece: TruePiece, title: readonly string[]): readonly PieceInk[] => [
  ...grainInk(piece.grain),
  ...titleInk(piece, title),
];

/** The bust point of one of several sizes, without a word. */
export const bustPointCross = (at: PiecePoint): readonly PieceInk[] => cross(at, NEST_CROSS);

/** The cutting line, broken where the piece lies on the fold. */
function cutInk({ cutting, stitch, fold }: TruePiece, allowances: boolean): readonly PieceInk[] {
  const onFold = (p: PiecePoint): boolean => fold.some(({ a, b }) => segmentNearest(a, b, p).distance < ON_FOLD);
  const runsOn = (a: PiecePoint, b: PiecePoint): boolean => onFold(a) && onFold(b) && onFold(midpoint(a, b));
  if (!allowances) {
    const edges = stitch.filter(({ a, b, curve }) => curve !== null || !runsOn(a, b));
    return edges.length === stitch.length
      ? [chain("cutting", stitch, true)]
      : runsOf(edges).map((run) => chain("cutting", run));
  }
  const all = cutting.map(({ at }, index) =>
    lineEdge(at, invariant(cutting[(index + 1) % cutting.length], "point").at),
  );
  const edges = all.filter(({ a, b }) => !runsOn(a, b) && !(fold.length > 0 && beyondFold(a, b, fold)));
  return edges.length === all.length
    ? [chain("cutting", all, true)]
    : runsOf(edges).map((run) => chain("cutting", run));
}

/** Where the cutting line follows the fold on, above and below the stitch line. */
const beyondFold = (a: PiecePoint, b: PiecePoint, fold: readonly EdgeCurve<"piece">[]): boolean => {
  const line = invariant(fold[0], "fold");
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
  if (
    runs.length > 1 &&
    first !== undefined &&
    last !== undefined &&
    distance(invariant(last.at(-1), "edge").b, invariant(first[0], "edge").a) < ON_FOLD
  ) {
    runs.pop();
    runs[0] = [...last, ...first];
  }
  return runs;
}

/** The stitch line, but for what lies on the fold: nothing is sewn there. */
function stitchInk({ stitch, fold }: TruePiece): readonly PieceInk[] {
  const isFold = ({ a, b, curve }: EdgeCurve<"piece">): boolean =>
    curve === null && fold.some((edge) => edge.a === a && edge.b === b);
  const sewn = stitch.filter((edge) => !isFold(edge));
  return sewn.length === stitch.length
    ? [chain("stitch", stitch, true)]
    : runsOf(sewn).map((run) => chain("stitch", run));
}

/** How far inside the fold the bracket runs that points at it, and between which shares of it, mm. */
const BRACKET: Mm = 8;
const BRACKET_ENDS = [0.2, 0.8] as const;
const FOLD_WORDS: Mm = 3.6;

function foldInk(piece: TruePiece, borders: Lines): readonly PieceInk[] {
  const fold = foldOf(piece);
  if (fold === null) return [];
  // From the cutting line above to the one below.
  const [from, to] = fold;
  const inside = piece.grain[0].x > from.x ? 1 : -1;
  const text = foldWords(piece);
  const at = wordsAlong(from, to, textWidth(text, FOLD_WORDS, true), borders);
  const along = (off: Mm): PieceInk =>
    words(
      "fold",
      shift(at, (off + FOLD_WORDS / 3) * inside + (inside > 0 ? FOLD_WORDS / 3 : -FOLD_WORDS / 3), 0),
      text,
      { anchor: "middle", turn: radians(-Math.PI / 2), size: FOLD_WORDS, bold: true },
    );
  const [upper, lower] = [between(from, to, BRACKET_ENDS[0]), between(from, to, BRACKET_ENDS[1])];
  if (piece.half !== null) {
    // Marks on both halves at the same heights, to join them by.
    const marks = [0.25, 0.5, 0.75]
      .map((share) => between(from, to, share))
      .map((p): PieceInk => ({
        ...polyline("notch", [shift(p, 0, -2.4), shift(p, 4.2 * inside, 0), shift(p, 0, 2.4), shift(p, 0, -2.4)], true),
        filled: true,
      }));
    return [polyline("joinEdge", [from, to]), ...marks, along(5)];
  }
  return [
    polyline("fold", [from, to]),
    polyline("grain", [upper, shift(upper, BRACKET * inside, 0), shift(lower, BRACKET * inside, 0), lower]),
    arrowHead(upper, -inside, 0),
    arrowHead(lower, -inside, 0),
    along(BRACKET),
  ];
}

/** The middle of a stretch of a line that is as long as some words, clear of borders; the middle of all where there is none. */
function wordsAlong(from: PiecePoint, to: PiecePoint, length: Mm, borders: Lines): PiecePoint {
  const total = distance(from, to);
  const crossings = borders.flatMap((line) =>
    line.slice(1).flatMap((b, i) => segmentIntersections(from, to, line[i] ?? b, b).map(({ t1 }) => t1 * total)),
  );
  const isClear = (middle: Mm): boolean =>
    middle > length / 2 &&
    middle < total - length / 2 &&
    crossings.every((at) => Math.abs(at - middle) > length / 2 + 2);
  for (const share of [0.5, 0.42, 0.58, 0.34, 0.66, 0.27, 0.73])
    if (isClear(share * total)) return between(from, to, share);
  return between(from, to, 0.5);
}

/** A small filled head that points one way, its tip at a point. */
function arrowHead(tip: PiecePoint, ux: number, uy: number): InkLine<"piece"> {
  const [back, side] = [3.2, 1.1];
  const base = shift(tip, -ux * back, -uy * back);
  return {
    ...polyline("grain", [tip, shift(base, -uy * side, ux * side), shift(base, uy * side, -ux * side), tip], true),
    filled: true,
  };
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

/** Words stand so far beside a row of tacking, mm. */
const BESIDE_TACKING: Mm = 1.4;

/** The rows, and along the first of them whose half they tell. */
function tackingInk({ tacking, half }: TruePiece): readonly PieceInk[] {
  const left = tacking.toSorted(([a], [b]) => a.x - b.x)[0];
  if (half === null || left === undefined) return [];
  const at = shift(midpoint(...left), -BESIDE_TACKING, 0);
  return [
    ...tacking.map((row) => polyline("tacking", row)),
    words("tacking", at, tackingWords(half), { anchor: "middle", turn: radians(-Math.PI / 2) }),
  ];
}

function levelInk(points: readonly PiecePoint[], name: string): readonly PieceInk[] {
  const last = points.at(-1);
  const before = points.at(-2);
  if (last === undefined || before === undefined) return [];
  // Along its last stretch, read as it lies.
  const way = directionOf(before, last);
  const turn = readable(way);
  const at = polar(polar(last, radians(way + Math.PI), 4), radians(turn - Math.PI / 2), 1.2);
  return [
    polyline("level", points),
    words("level", at, name, { anchor: Math.cos(turn - way) > 0 ? "end" : "start", turn }),
  ];
}

/** Words stand along a fold that is at least so long. */
const FOLD_NAMED: Mm = 45;

function dartInk({ name, legs, fold, mouth, gathered }: TrueDart, piece: TruePiece["name"]): readonly PieceInk[] {
  if (!gathered) {
    const lines = [
      ...legs.map((leg) => chain("dartLeg", [leg])),
      ...(fold === null ? [] : [polyline("dartFold", fold)]),
    ];
    return fold === null || distance(...fold) < FOLD_NAMED
      ? lines
      : [...lines, dartFoldInk(fold, dartFoldWords(isFoldedDown(name), piece))];
  }
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

/** Along the fold near the mouth, where the dart is wide; never upside down. */
function dartFoldInk([end, tip]: readonly [PiecePoint, PiecePoint], text: string): PieceInk {
  const way = Math.atan2(tip.y - end.y, tip.x - end.x);
  const turn = readable(radians(way));
  const at = between(end, tip, 0.68);
  return words("dartFold", shift(at, Math.sin(turn) * 0.9, -Math.cos(turn) * 0.9), text, {
    anchor: "middle",
    turn,
  });
}

/** What a vent is folded in along, and that it is: beside the line on the one side or the other, where there is room. */
function ventInk(piece: TruePiece, drawn: readonly PieceInk[], borders: Lines): readonly PieceInk[] {
  if (piece.ventFold === null) return [];
  const [top, hem] = piece.ventFold;
  const room = { ring: ringOf(piece), lines: [...obstaclesOf(drawn), ...borders] };
  const place =
    alongLine([lineEdge(top, hem)], VENT_FOLD_WORDS, SMALL, room) ??
    alongLine([lineEdge(hem, top)], VENT_FOLD_WORDS, SMALL, room);
  const line = polyline("ventFold", [top, hem]);
  return place === null
    ? [line]
    : [line, words("ventFold", place.at, VENT_FOLD_WORDS, { anchor: "middle", turn: place.turn })];
}

/** Without an allowance it is a tick inside the line. */
const TICK: Mm = 4;

/** Inward, from the edge that is cut. */
function inwardOf({ stitch, cut }: NotchCut, outward: Radians): readonly [x: number, y: number] {
  const allowance = distance(stitch, cut);
  return allowance > SAME_LINE
    ? [(stitch.x - cut.x) / allowance, (stitch.y - cut.y) / allowance]
    : [-Math.cos(outward), -Math.sin(outward)];
}

function notchInk(notch: Notch, piece: TruePiece): readonly PieceInk[] {
  const { kind, number, outward, stitch, seam } = notch;
  const hasRoom = distance(stitch, notch.cut) > SAME_LINE;
  const cuts = (notch.twins ?? [notch]).flatMap((one) => {
    const [ux, uy] = inwardOf(one, outward);
    const depth = hasRoom ? notchDepth(one) : TICK;
    const inner = shift(one.cut, ux * depth, uy * depth);
    const tick = polyline("notch", [one.cut, inner]);
    if (kind === "dart" || kind === "centre") return [tick];
    const arm = (side: 1 | -1): PiecePoint => shift(one.cut, -uy * 1.8 * side, ux * 1.8 * side);
    return [tick, polyline("notch", [arm(1), inner, arm(-1)])];
  });
  if (kind !== "seam" && kind !== "opening") return cuts;
  // The number stands inside the stitch line, where the scissors do not come.
  const [ux, uy] = inwardOf(notch, outward);
  const at = shift(stitch, ux * (hasRoom ? 3.4 : 3.4 + TICK), uy * (hasRoom ? 3.4 : 3.4 + TICK) + 1.2);
  const isOpening = kind === "opening";
  const opens = piece.seams.find((run) => run.seam === seam)?.opens ?? null;
  return [
    ...cuts,
    words("notch", at, isOpening ? openingWords(opens) : String(number), {
      anchor: isOpening ? (ux >= 0 ? "start" : "end") : "middle",
      size: isOpening ? SMALL : 4,
      bold: true,
    }),
  ];
}

/** From the stitch line inwards to the word at a strap's mark: the first place where it crosses nothing, mm. */
const STRAP_WORD_AT: readonly Mm[] = [3, 4, 5, 6, 8, 10, 12, 15, 18, 22, 26, 30];

/** What the mark in the middle of a strap's seam is for; a narrow end of a piece has room for it further in. */
function strapInk(piece: TruePiece, drawn: readonly PieceInk[], borders: Lines): readonly PieceInk[] {
  const ring = ringOf(piece);
  const lines = [...obstaclesOf(drawn), ...borders];
  return piece.notches.flatMap((notch): readonly PieceInk[] => {
    if (notch.kind !== "strap") return [];
    const inward = radians(notch.outward + Math.PI);
    const turn = readable(directionOf(notch.stitch, polar(notch.stitch, radians(notch.outward + Math.PI / 2), 1)));
    const tried = STRAP_WORD_AT.map((off) =>
      words("notch", polar(notch.stitch, inward, off), STRAP_WORDS, { anchor: "middle", turn }),
    );
    const free = tried.find((ink) => isFreeWithin((obstaclesOf([ink])[0] ?? []).slice(0, 4), ring, lines));
    return [free ?? invariant(tried[0], "a place")];
  });
}

const circle = (centre: PiecePoint, radius: Mm, role: InkRole): InkLine<"piece"> =>
  chain(role, circleEdges(centre, radius), true);

const cross = (at: PiecePoint, arm: Mm): readonly PieceInk[] => [
  polyline("mark", [shift(at, -arm, 0), shift(at, arm, 0)]),
  polyline("mark", [shift(at, 0, -arm), shift(at, 0, arm)]),
];

/** Its name stands on the side where the piece goes on. */
function bustPointInk(at: PiecePoint, { cutting }: TruePiece): readonly PieceInk[] {
  const room = 8 + textWidth(BUST_POINT_WORDS, SMALL);
  const isRight = isInRing(
    cutting.map((point) => point.at),
    shift(at, room + 8, 0),
  );
  return [
    circle(at, 3, "mark"),
    ...cross(at, 5),
    words("mark", shift(at, isRight ? 6 : -6, -1.5), BUST_POINT_WORDS, { anchor: isRight ? "start" : "end" }),
  ];
}

const BUTTON_ARM: Mm = 3.6;
const HOLE_BAR: Mm = 1.2;

/** The very point where a dart ends; the circle is for the thread. */
const drillInk = (at: PiecePoint): readonly PieceInk[] => [circle(at, 1.4, "mark"), ...cross(at, 0.7)];

/** A button's place, with a cross that stands beyond its circle, and its buttonhole barred at both ends. */
function buttonInk(at: PiecePoint, [outer, inner]: readonly [PiecePoint, PiecePoint]): readonly PieceInk[] {
  const length = distance(outer, inner);
  const [sx, sy] = [(inner.y - outer.y) / length, (outer.x - inner.x) / length];
  const bar = (end: PiecePoint): PieceInk =>
    polyline("mark", [shift(end, -sx * HOLE_BAR, -sy * HOLE_BAR), shift(end, sx * HOLE_BAR, sy * HOLE_BAR)]);
  return [
    circle(at, 2, "mark"),
    polyline("mark", [shift(at, -sx * BUTTON_ARM, -sy * BUTTON_ARM), shift(at, sx * BUTTON_ARM, sy * BUTTON_ARM)]),
    polyline("mark", [outer, inner]),
    bar(outer),
    bar(inner),
  ];
}

function titleInk({ title: box }: TruePiece, lines: readonly string[]): readonly PieceInk[] {
  const turned = box.height > box.width;
  const [width, height] = turned ? [box.height, box.width] : [box.width, box.height];
  return fitLines(lines, width, height).map(({ text, size, down, bold }): PieceInk => {
    const at = turned ? shift(box.centre, down, 0) : shift(box.centre, 0, down);
    return words("title", at, text, {
      anchor: "middle",
      size,
      turn: radians(turned ? -Math.PI / 2 : 0),
      ...(bold ? { bold } : {}),
    });
  });
}
