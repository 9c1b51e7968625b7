/**
 * Pieces as a DXF file laid out after ASTM D6673, the open exchange standard of the apparel trade: a block for each piece,
 * its lines and points told apart by numbered layers.
 *
 * The numbers of the layers, the group codes of notches and the wording of the texts are quoted from notes made from memory
 * of the standard, not from its text. Its base is the DXF of release 13; what is written here is that of release 12
 * (AC1009) in ASCII: it holds every entity that the standard asks for, needs no handles, classes or objects, and is what
 * general-purpose programs read most surely.
 */
import { edgeFlatten, type EdgeCurve } from "../core/geometry/edgeCurve";
import { midpoint, type PiecePoint } from "../core/geometry/point";
import { notchDepth } from "../core/cutting/notches";
import type { NotchCut, TruePiece } from "../core/cutting/truePiece";
import { foldOf } from "../core/cutting/truePieces";
import { CUTTING_ACCURACY } from "../core/tolerance";
import type { Mm, Radians } from "../core/units";
import { capital, pieceWords } from "../words/terms/names";
import { cutTooWords, partNamed, STRAP_WORDS, tackingWords, VENT_FOLD_WORDS } from "../words/truePaper";
import { plainLetters } from "./plainLetters";
import * as say from "../words/trueFile";

export interface DxfOptions {
  readonly style: string;
  /** Said as the size of pieces that are the wearer's own. */
  readonly sizeName: string;
  /** yyyy-mm-dd. */
  readonly day: string;
  /** For a toile, which is cut from one cloth. */
  readonly toile?: true;
}

/** @source ASTM D6673, from memory */
const LAYER = {
  boundary: 1,
  turnPoint: 2,
  curvePoint: 3,
  notch: 4,
  mirror: 6,
  grain: 7,
  internal: 8,
  drill: 13,
  sew: 14,
  annotation: 15,
} as const;
type Layer = (typeof LAYER)[keyof typeof LAYER];

/** mm. Between two pieces on the sheet. */
const GAP: Mm = 20;

/** mm. Height of letters, and that below which they are not read. */
const LETTERS: Mm = 4;
const SMALLEST: Mm = 2;

/** From one line of writing to the next, and how wide a letter is in most programs: in heights of letters. */
const SPACED = 1.75;
const WIDE = 0.9;

/** Steps per mm. */
const STEPS = 1000;

/** A group code and its value. */
type Group = readonly [code: number, value: string | number];

/** In the drawing: x to the right, y up. */
interface Place {
  readonly x: Mm;
  readonly y: Mm;
}

/**
 * The pieces in mm, each in a block of its own named by its key, laid side by side without overlapping. y grows upward in
 * DXF, so that the pieces lie as they do on paper, not turned over. Boundaries are closed polylines (layer 1) with a point
 * at each corner (2) and at each point that stands for a curve (3). A notch is a point (4) on the boundary with its depth
 * (group 39, mm) and its direction into the piece (group 50, degrees against the clock from +x). Stitch lines (14) and
 * inner lines (8) leave their curves by 0.05 mm at the most. All writing is ASCII.
 */
export function writeDxf(pieces: readonly TruePiece[], options: DxfOptions): string {
  const offsets = sideBySide(pieces);
  const groups: Group[] = [
    ...header(),
    ...tables(),
    ...section(
      "BLOCKS",
      pieces.flatMap((piece, i) => block(piece, blockName(piece, i), options)),
    ),
    ...section("ENTITIES", [
      ...pieces.flatMap((piece, i) => insert(blockName(piece, i), { x: offsets[i] ?? 0, y: 0 })),
      ...styleText(pieces, options),
    ]),
    [0, "EOF"],
  ];
  return groups.map(([code, value]) => `${String(code).padStart(3)}\r\n${writtenValue(value)}\r\n`).join("");
}

const writtenValue = (value: string | number): string => (typeof value === "string" ? value : written(value));

// Rounded so, a number prints without an exponent and without a negative zero.
const written = (value: number): string => String(Math.round(value * STEPS) / STEPS);

const section = (name: string, content: readonly Group[]): Group[] => [
  [0, "SECTION"],
  [2, name],
  ...content,
  [0, "ENDSEC"],
];

/** Metric, in mm. $INSUNITS is younger than release 12, but older programs pass over it and newer ones scale by it. */
const header = (): Group[] =>
  section("HEADER", [
    [9, "$ACADVER"],
    [1, "AC1009"],
    [9, "$INSUNITS"],
    [70, 4],
    [9, "$MEASUREMENT"],
    [70, 1],
  ]);

function tables(): Group[] {
  const layers = Object.values(LAYER);
  return section("TABLES", [
    ...table("LTYPE", 1, [
      [0, "LTYPE"],
      [2, "CONTINUOUS"],
      [70, 0],
      [3, "Solid line"],
      [72, 65],
      [73, 0],
      [40, 0],
    ]),
    ...table(
      "LAYER",
      layers.length,
      layers.flatMap((layer): Group[] => [
        [0, "LAYER"],
        [2, String(layer)],
        [70, 0],
        [62, 7],
        [6, "CONTINUOUS"],
      ]),
    ),
  ]);
}

const table = (name: string, count: number, content: readonly Group[]): Group[] => [
  [0, "TABLE"],
  [2, name],
  [70, count],
  ...content,
  [0, "ENDTAB"],
];

/** Names of blocks have 31 letters at the most in release 12 (from memory). */
const LONGEST_NAME = 31;
const blockName = ({ key }: TruePiece, index: number): string =>
  key.length <= LONGEST_NAME ? key : `${key.slice(0, LONGEST_NAME - 4)}-${index + 1}`;

function block(piece: TruePiece, name: string, options: DxfOptions): Group[] {
  const boundary = piece.cutting.map(({ at }) => at);
  return [
    ...([[0, "BLOCK"], [8, "0"], [2, name], [70, 0], ...at({ x: 0, y: 0 }), [3, name]] satisfies Group[]),
    ...polyline(LAYER.boundary, boundary, true),
    ...piece.cutting.flatMap(({ at: place, corner }) => point(corner ? LAYER.turnPoint : LAYER.curvePoint, place)),
    ...piece.notches.flatMap((notch) => (notch.twins ?? [notch]).flatMap((one) => notchPoint(one, notch.outward))),
    ...mirrorLine(piece),
    ...line(LAYER.grain, ...piece.grain),
    ...piece.darts.flatMap(({ legs }) => legs.flatMap((leg) => chain(LAYER.internal, [leg]))),
    ...(piece.ventFold === null ? [] : line(LAYER.internal, ...piece.ventFold)),
    ...piece.levels.flatMap(({ points }) => open(LAYER.internal, points)),
    ...piece.lengthen.flatMap((ends) => line(LAYER.internal, ...ends)),
    ...piece.tacking.flatMap((row) => line(LAYER.internal, ...row)),
    ...piece.drills.flatMap((drill) => point(LAYER.drill, drill.at)),
    ...polyline(LAYER.sew, flattened(piece.stitch).slice(0, -1), true),
    ...pieceText(piece, options),
    ...([
      [0, "ENDBLK"],
      [8, "0"],
    ] satisfies Group[]),
  ];
}

/** Points along the edges, both ends among them. */
const flattened = (edges: readonly EdgeCurve<"piece">[]): readonly PiecePoint[] =>
  edges.flatMap((edge, i) => edgeFlatten(edge, CUTTING_ACCURACY).slice(i === 0 ? 0 : 1));

const chain = (layer: Layer, edges: readonly EdgeCurve<"piece">[]): Group[] => open(layer, flattened(edges));

function open(layer: Layer, points: readonly PiecePoint[]): Group[] {
  const [first, second, ...more] = points;
  if (first === undefined || second === undefined) return [];
  return more.length === 0 ? line(layer, first, second) : polyline(layer, points, false);
}

/** From the piece frame, where y grows downward. */
const upright = ({ x, y }: PiecePoint): Place => ({ x, y: -y });

const at = ({ x, y }: Place): Group[] => [
  [10, x],
  [20, y],
  [30, 0],
];

const point = (layer: Layer, place: PiecePoint): Group[] => [[0, "POINT"], [8, String(layer)], ...at(upright(place))];

function line(layer: Layer, from: PiecePoint, to: PiecePoint): Group[] {
  const end = upright(to);
  return [[0, "LINE"], [8, String(layer)], ...at(upright(from)), [11, end.x], [21, end.y], [31, 0]];
}

function polyline(layer: Layer, points: readonly PiecePoint[], closed: boolean): Group[] {
  const name = String(layer);
  return [
    ...([[0, "POLYLINE"], [8, name], [66, 1], ...at({ x: 0, y: 0 }), [70, closed ? 1 : 0]] satisfies Group[]),
    ...points.flatMap((place): Group[] => [[0, "VERTEX"], [8, name], ...at(upright(place))]),
    ...([
      [0, "SEQEND"],
      [8, name],
    ] satisfies Group[]),
  ];
}

/**
 * Unbroken from one end of the boundary to the other, so that a mirror image closes it. Two halves that differ are joined
 * along it, each drawn by itself: there it mirrors nothing, and is an inner line.
 */
function mirrorLine(piece: TruePiece): Group[] {
  const fold = foldOf(piece);
  return fold === null ? [] : line(piece.half === null ? LAYER.mirror : LAYER.internal, ...fold);
}

/** On the boundary; as deep as it is drawn on paper, and of no depth where there is no allowance to cut it in. */
function notchPoint({ stitch, cut }: NotchCut, outward: Radians): Group[] {
  const depth = notchDepth({ stitch, cut });
  // Inward, and y grows upward here: where nothing is allowed the two points are one, and tell no direction.
  const degrees = (Math.atan2(Math.sin(outward), -Math.cos(outward)) * 180) / Math.PI;
  return [...point(LAYER.notch, cut), [39, depth], [50, degrees < 0 ? degrees + 360 : degrees]];
}

function pieceText(piece: TruePiece, { sizeName, toile }: DxfOptions): Group[] {
  const half = piece.half === null ? "" : `, ${piece.half}`;
  const tacked = piece.half === null ? "" : tackingWords(piece.half);
  const said = [
    `Piece Name: ${capital(partNamed(piece.label ?? pieceWords(piece.name), piece.part?.cloth))}${half}`,
    `Size: ${piece.size ?? sizeName}`,
    `Quantity: ${piece.cut.count}`,
  ];
  const lines = [
    ...said.map((text) => ({ text, layer: LAYER.boundary })),
    ...[say.cutText(piece.cut.count, piece.cut.onFold, piece.half), ...cutTooWords(piece, toile === true)].map(
      (text) => ({ text, layer: LAYER.annotation }),
    ),
  ];
  return [
    ...inTitleBox(piece.title, lines),
    ...(piece.half === null
      ? []
      : piece.tacking.slice(0, 1).flatMap(([from]) => writing(LAYER.annotation, upright(from), tacked))),
    ...piece.notches.flatMap(({ kind, stitch }) =>
      kind === "strap" ? writing(LAYER.annotation, upright(stitch), STRAP_WORDS, SMALLEST) : [],
    ),
    ...(piece.ventFold === null
      ? []
      : writing(LAYER.annotation, upright(midpoint(...piece.ventFold)), VENT_FOLD_WORDS, LETTERS, 90)),
    ...(piece.bustPoint === null ? [] : writing(LAYER.annotation, upright(piece.bustPoint), say.bustPoint)),
  ];
}

/** Lines in the box that is kept free for the title: along its longer side, and smaller where they would not fit. */
function inTitleBox(
  { centre, width, height }: TruePiece["title"],
  lines: readonly { readonly text: string; readonly layer: Layer }[],
): Group[] {
  const middle = upright(centre);
  const [along, across] = [Math.max(width, height), Math.min(width, height)];
  const longest = Math.max(...lines.map(({ text }) => text.length));
  const size = Math.max(SMALLEST, Math.min(LETTERS, along / (WIDE * longest), across / (SPACED * lines.length)));
  const start = (-along / 2) * Math.min(1, (WIDE * longest * size) / along);
  return lines.flatMap(({ text, layer }, i) => {
    const down = ((i + 1 - lines.length / 2) * SPACED - 0.5 * (SPACED - 1)) * size;
    const place =
      width >= height ? { x: middle.x + start, y: middle.y - down } : { x: middle.x + down, y: middle.y + start };
    return writing(layer, place, text, size, width >= height ? 0 : 90);
  });
}

function styleText(pieces: readonly TruePiece[], { style, sizeName, day }: DxfOptions): Group[] {
  const lowest = Math.min(0, ...pieces.flatMap(({ cutting }) => cutting.map(({ at: place }) => upright(place).y)));
  const start = { x: 0, y: lowest - GAP };
  const lines = [
    `Style Name: ${style}`,
    `Creation Date: ${day}`,
    `Author: Bodicewright`,
    `Sample Size: ${sizeName}`,
    "Units: METRIC",
  ];
  return lines.flatMap((text, i) => writing(LAYER.boundary, below(start, i), text));
}

const below = ({ x, y }: Place, lines: number): Place => ({ x, y: y - lines * SPACED * LETTERS });

/** From its lower left corner, turned by so many degrees against the clock. */
const writing = (layer: Layer, place: Place, text: string, size: Mm = LETTERS, degrees = 0): Group[] => [
  ...([[0, "TEXT"], [8, String(layer)], ...at(place), [40, size], [1, ascii(text)]] satisfies Group[]),
  ...(degrees === 0 ? [] : ([[50, degrees]] satisfies Group[])),
];

/** Two percent signs would begin a control code of the format. */
const ascii = (text: string): string =>
  plainLetters(text, (code) => code >= 0x20 && code < 0x7f).replaceAll(/%(?=%)/gu, "% ");

const insert = (key: string, place: Place): Group[] => [
  [0, "INSERT"],
  [8, String(LAYER.boundary)],
  [2, key],
  ...at(place),
];

/** How far each piece is moved to the right: from the left to the right, as wide as they are, with gaps. */
function sideBySide(pieces: readonly TruePiece[]): Mm[] {
  let free = 0;
  return pieces.map(({ cutting }) => {
    const across = cutting.map((corner) => corner.at.x);
    const move = free - Math.min(...across);
    free = move + Math.max(...across) + GAP;
    return move;
  });
}
