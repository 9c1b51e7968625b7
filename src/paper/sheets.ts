/** From what is asked to a laid sheet: the pieces at true scale, their ink, and where each lies. */
import { ringAround } from "../core/cutting/ringAround";
import type { Lines } from "../core/cutting/room";
import {
  alsoCutBy,
  isPrintedAmong,
  markedWith,
  paperOf,
  printedParts,
  replacedPieces,
  truePartsOf,
} from "../core/cutting/trueParts";
import { titledClearOf, truePiecesOf } from "../core/cutting/truePieces";
import { isTurnedOver } from "../core/cutting/turnedOver";
import type { TruePiece } from "../core/cutting/truePiece";
import { edgeFlatten, lineEdge } from "../core/geometry/edgeCurve";
import { midpoint, piecePoint, sheetPoint, type PiecePoint, type SheetPoint } from "../core/geometry/point";
import type { Part } from "../core/parts/part";
import type { Piece, PieceName } from "../core/pattern/piece";
import type { Plan } from "../core/plan/plan";
import { fail, invariant, ok, type Result } from "../core/result";
import type { Overlay } from "../core/overlay/overlay";
import { overlayOf } from "../core/overlay/overlayOf";
import { FORMATS, type PaperFormat } from "../core/sheets/formats";
import { layPieces } from "../core/sheets/layPieces";
import type { Placement, SheetLayout } from "../core/sheets/layout";
import { offSheet } from "../core/sheets/placing";
import { outlineOf } from "../core/pattern/ring";
import { CUTTING_ACCURACY } from "../core/tolerance";
import { boundsOfPoints } from "../core/geometry/bounds";
import { ringArea } from "../core/geometry/ringArea";
import { radians, type Mm } from "../core/units";

import type { Ink } from "../drawing/ink";
import { textWidth } from "../drawing/fitLines";
import { overlayInk } from "../drawing/overlayInk";
import { bustPointCross, nestInk, pieceInk, sizeLabelInk, underInk } from "../drawing/pieceInk";
import { mirroredInk, placedInk } from "../drawing/placeInk";
import type { SheetPiece } from "../drawing/sheetPages";
import { stripTitle } from "../words/overlay";
import { nestPartTitle, pieceTitle, titleLines } from "../words/truePaper";
import { allowancesFor, type PaperFailure, type PaperRequest } from "./request";

/** The strip that is printed on both of two neighbouring pages, mm. */
export const OVERLAP: Mm = 10;
/** Room about each piece: lines have a width, and scissors need some too, mm. */
const SPARE: Mm = 3;

/** Something to lay on the sheet: its ink in its own frame, its outline alone for the map, and the room it takes. */
export interface Laid {
  readonly key: string;
  readonly label: string;
  /** With its title clear of some lines, the borders of pages, where it can be. */
  readonly ink: (borders: Lines) => readonly Ink<"piece">[];
  /** What its ink consists of, where it is of several sizes. */
  readonly parts?: readonly { readonly key: string; readonly label: string; readonly ink: readonly Ink<"piece">[] }[];
  readonly outline: readonly Ink<"piece">[];
  readonly ring: readonly PiecePoint[];
}

export interface LaidSheet {
  /** Whether its pages are joined to one sheet; else each stands for itself. */
  readonly joined: boolean;
  readonly layout: SheetLayout;
  /** Their ink, drawn when it is asked for: what is only looked at in small needs none. */
  readonly pieces: () => readonly SheetPiece[];
  readonly outlines: readonly SheetPiece[];
}

/** The true-scale pieces that are asked for, and the parts of the dress after them. */
export function truePiecesFor(request: PaperRequest): Result<readonly TruePiece[], PaperFailure> {
  const { work, plan, choices, dress } = request;
  const allowances = allowancesFor(request);
  const { closure } = work.pattern;
  const isOwn = choices.size === null && choices.nested !== true;
  const marked = dress === undefined || !isOwn ? {} : markedWith(plan, dress.parts);
  const pieces = truePiecesOf(plan, { names: choices.pieces, size: choices.size, allowances, closure, ...marked });
  if (dress === undefined || !isOwn || !pieces.ok) return pieces;
  const ids = choices.parts ?? [];
  const parts = truePartsOf({ ...dress, ids, pieces: choices.pieces, allowances, closure });
  if (!parts.ok) return parts;
  const isPrinted = isPrintedAmong(dress.parts, ids, choices.pieces);
  const own = pieces.value.map((piece): TruePiece => ({
    ...piece,
    also: alsoCutBy(dress.parts, piece.key, isPrinted),
  }));
  return ok(numbered([...own, ...parts.value], plan, dress.parts));
}

/** Numbers over the bodice and all that hangs on it; halves of one piece share theirs, and parts that one paper cuts. */
function numbered(pieces: readonly TruePiece[], plan: Plan, parts: readonly Part[]): readonly TruePiece[] {
  const replaced = replacedPieces(plan, parts);
  const ids = [
    ...plan.left.pieces.map(({ name }) => name).filter((name) => !replaced.includes(name)),
    ...printedParts(parts).map(({ id }) => id),
    // Printed all the same, after what the dress is cut from.
    ...replaced.filter((name) => pieces.some((piece) => piece.part === undefined && piece.name === name)),
  ];
  return pieces.map((piece): TruePiece => {
    const key = paperOf(parts, piece.key);
    const place = ids.findIndex((id) => id === key || `${id}-${piece.half}` === key);
    return place < 0 ? piece : { ...piece, number: [place + 1, ids.length] };
  });
}

/** Pieces with all that is drawn on and under them. */
export function piecesToLay(request: PaperRequest, pieces: readonly TruePiece[]): readonly Laid[] {
  const { work, plan, choices, day } = request;
  return pieces.map((piece): Laid => {
    const under = underPieces(plan, piece, request);
    const over = isTurnedOver(piece.name, piece.half);
    const beneath = under.flatMap(({ piece: other, role, size, label }) => [
      ...underInk(other, role, size),
      ...(label === undefined ? [] : sizeLabelInk(other, label)),
    ]);
    const { allowances } = choices;
    const title = titleLines(work, plan, piece, {
      day,
      allowances,
      ...(choices.toile === true ? { toile: true } : {}),
    });
    const cut = pieceInk(piece, { title: [], allowances }).filter(
      (ink) => ink.kind === "line" && (ink.role === "cutting" || ink.role === "fold"),
    );
    const rings = [
      piece.cutting.map(({ at }) => at),
      ...under.map(({ piece: other }) => ringOfPiece(other).map((p) => (over ? piecePoint(-p.x, p.y) : p))),
    ];
    return {
      key: piece.key,
      label: pieceTitle(piece),
      ink: (borders) => [
        ...(over ? mirroredInk(beneath) : beneath),
        ...pieceInk(titledClearOf(piece, borders), { title, allowances, borders }),
      ],
      outline: [...cut, mapName(piece.title.centre, pieceTitle(piece))],
      ring: ringAround(rings, SPARE),
    };
  });
}

/** The printed sizes one in another, each a part of its own, and what all of them share. */
export function nestToLay({ work, plan, choices, day }: PaperRequest, base: readonly TruePiece[]): readonly Laid[] {
  return base.map((piece): Laid => {
    const sizes = plan.nest.labels.flatMap((label, size) => {
      const printed = plan.nest.sizes[size]?.find(({ name }) => name === piece.name);
      return printed === undefined ? [] : [{ label, size, printed }];
    });
    const parts = [
      ...sizes.map(({ label, size, printed }) => ({
        key: sizeKey(piece.name, plan.nest.labels, size),
        label: nestPartTitle(piece, label),
        ink: [
          ...underInk(printed, "printed", size),
          ...sizeLabelInk(printed, label),
          ...(printed.points.bustPoint === undefined ? [] : bustPointCross(printed.points.bustPoint.at)),
        ],
      })),
      {
        key: `${piece.name}-all`,
        label: pieceTitle(piece),
        ink: nestInk(piece, titleLines(work, plan, piece, { day, allowances: choices.allowances, nested: true })),
      },
    ];
    const rings = sizes.map(({ printed }) => ringOfPiece(printed));
    return {
      key: piece.key,
      label: pieceTitle(piece),
      ink: () => parts.flatMap(({ ink }) => ink),
      parts,
      outline: [
        ...sizes.flatMap(({ printed, size }) => underInk(printed, "printed", size)),
        mapName(piece.title.centre, pieceTitle(piece)),
      ],
      ring: ringAround(rings, SPARE),
    };
  });
}

const plain = (label: string): string =>
  label
    .normalize("NFKD")
    .replaceAll(/[^A-Za-z0-9]+/gu, "-")
    .replaceAll(/^-|-$/gu, "");

/** Letters, digits and hyphens; by the label of the size, and by its place too where labels alone would be alike. */
export function sizeKey(piece: PieceName, labels: readonly string[], size: number): string {
  const own = plain(labels[size] ?? "");
  const isOwn = own !== "" && labels.filter((label) => plain(label) === own).length === 1;
  return `${piece}-size-${isOwn ? own : `${own}-line-${size + 1}`}`;
}

const ringOfPiece = (piece: Piece): readonly PiecePoint[] =>
  outlineOf(piece).flatMap((edge) => edgeFlatten(edge, CUTTING_ACCURACY).slice(1));

interface Under {
  readonly piece: Piece;
  readonly role: "printed" | "before";
  readonly size?: number;
  readonly label?: string;
}

function underPieces(whole: Plan, { name, size, half, part }: TruePiece, { choices }: PaperRequest): readonly Under[] {
  // No pattern has it printed.
  if (part !== undefined) return [];
  // A half with a cup of its own has other pieces printed.
  const plan = whole[half ?? "left"];
  const printed = choices.under
    .filter((label) => label !== size)
    .flatMap((label): Under[] => {
      const index = plan.nest.labels.indexOf(label);
      const piece = plan.nest.sizes[index]?.find((one) => one.name === name);
      return piece === undefined ? [] : [{ piece, role: "printed", size: index, label }];
    });
  const before = choices.before && size === null ? plan.blended.filter((one) => one.name === name) : [];
  return [...printed, ...before.map((piece): Under => ({ piece, role: "before" }))];
}

/** Names on the map, mm of the sheet: small enough there to stand within the piece. */
const MAP_NAME: Mm = 15;

const mapName = (at: PiecePoint, text: string): Ink<"piece"> => ({
  kind: "text",
  role: "map",
  at,
  anchor: "middle",
  text,
  size: MAP_NAME,
  turn: radians(0),
});

/** The strips of an overlay that are asked for, none longer than a page. */
export function overlayFor({ plan, choices, old }: PaperRequest): Overlay {
  const { width, height } = FORMATS[choices.format];
  const longest = Math.max(width, height ?? 0) - 2 * choices.margin - 2 * SPARE;
  return overlayOf(plan, choices.pieces, longest, old?.plan ?? null);
}

export function stripsToLay({ work }: PaperRequest, overlay: Overlay): readonly Laid[] {
  return overlay.patches.map((patch): Laid => {
    const { ring } = patch;
    const { min, max } = boundsOfPoints(ring);
    const edges = ring.map((at, index) => lineEdge(at, ring[(index + 1) % ring.length] ?? at));
    const title = stripTitle(patch);
    return {
      key: patch.key,
      label: title,
      ink: () => overlayInk(patch, overlay.baseSize, work.unit),
      outline: [{ kind: "line", role: "cutting", edges, closed: true }, mapName(midpoint(min, max), title)],
      ring,
    };
  });
}

/** Lays what is to be printed on paper. */
export function layOut(laid: readonly Laid[], format: PaperFormat, margin: Mm): Result<LaidSheet, PaperFailure> {
  if (laid.length === 0) return fail({ code: "sheet/nothing-to-lay" });
  const layout = layPieces(
    laid.map(({ key, ring }) => ({ key, ring })),
    { format, margin, overlap: OVERLAP, gap: 0 },
  );
  return layout.ok ? ok(drawn(laid, layout.value, true)) : layout;
}

/** Pages that are not joined stand this far apart on the map, mm. */
const APART: Mm = 14;

/**
 * Lays strips so that each lies on one page and no pages are joined: every strip goes on the first page that has room for
 * it. Where one is larger than a page, all are laid like pieces.
 */
export function layStrips(laid: readonly Laid[], format: PaperFormat, margin: Mm): Result<LaidSheet, PaperFailure> {
  if (laid.length === 0) return fail({ code: "sheet/nothing-to-lay" });
  if (format.height === null) return layOut(laid, format, margin);
  const window = (format.width - 2 * margin) * (format.height - 2 * margin);
  const onePage = (own: readonly Laid[]): Result<SheetLayout | null, PaperFailure> => {
    if (own.reduce((sum, { ring }) => sum + ringArea(ring), 0) > window) return ok(null);
    const layout = layPieces(
      own.map(({ key, ring }) => ({ key, ring })),
      { format, margin, overlap: OVERLAP, gap: 0 },
    );
    return layout.ok ? ok(layout.value.tiles.length === 1 ? layout.value : null) : layout;
  };
  const pages: { readonly laid: readonly Laid[]; readonly layout: SheetLayout }[] = [];
  for (const strip of laid.toSorted((a, b) => ringArea(b.ring) - ringArea(a.ring))) {
    let isPlaced = false;
    for (let index = 0; index < pages.length && !isPlaced; index += 1) {
      const together = [...(pages[index]?.laid ?? []), strip];
      const layout = onePage(together);
      if (!layout.ok) return layout;
      if (layout.value === null) continue;
      pages[index] = { laid: together, layout: layout.value };
      isPlaced = true;
    }
    if (isPlaced) continue;
    const alone = onePage([strip]);
    if (!alone.ok) return alone;
    if (alone.value === null) return layOut(laid, format, margin);
    pages.push({ laid: [strip], layout: alone.value });
  }
  const [width, height] = [format.width - 2 * margin, format.height - 2 * margin];
  const layout: SheetLayout = {
    placements: pages.flatMap((page, index) =>
      page.layout.placements.map((placement) => {
        const [tile] = page.layout.tiles;
        return {
          ...placement,
          dx: placement.dx - (tile?.x ?? 0) + index * (width + APART),
          dy: placement.dy - (tile?.y ?? 0),
        };
      }),
    ),
    width: pages.length * (width + APART) - APART,
    height,
    tiles: pages.map((_, column) => ({
      column,
      row: 0,
      name: String(column + 1),
      x: column * (width + APART),
      y: 0,
      width,
      height,
    })),
    joins: [],
    columns: pages.length,
    rows: 1,
  };
  return ok(drawn(laid, layout, false));
}

/** What is laid, with its ink where it lies. */
function drawn(laid: readonly Laid[], layout: SheetLayout, joined: boolean): LaidSheet {
  const borders = bordersOf(layout);
  const placed = (inkOf: (one: Laid, placement: Placement) => readonly Ink<"piece">[]): SheetPiece[] =>
    layout.placements.map((placement) => {
      const one = invariant(
        laid.find(({ key }) => key === placement.key),
        placement.key,
      );
      const parts = one.parts?.map(({ key, label, ink }) => ({ key, label, ink: placedInk(ink, placement) }));
      const whole = { key: one.key, label: one.label, ink: placedInk(inkOf(one, placement), placement) };
      return parts === undefined ? whole : { ...whole, parts };
    });
  return {
    joined,
    layout,
    pieces: () => placed(({ ink }, placement) => ink(borders.map((line) => line.map((p) => offSheet(placement, p))))),
    outlines: placed(({ outline }) => outline).map(named),
  };
}

/** Where pages are cut and come to lie on their neighbours: both edges of each strip that two of them share. */
function bordersOf({ tiles, columns, rows }: SheetLayout): readonly (readonly SheetPoint[])[] {
  if (columns === 1 && rows === 1) return [];
  return tiles.flatMap(({ x, y, width, height }) => [
    [sheetPoint(x, y), sheetPoint(x, y + height)],
    [sheetPoint(x + width, y), sheetPoint(x + width, y + height)],
    [sheetPoint(x, y), sheetPoint(x + width, y)],
    [sheetPoint(x, y + height), sheetPoint(x + width, y + height)],
  ]);
}

/** Names on the map stand upright, whichever way the piece lies; along it where it is too narrow for that. */
function named(piece: SheetPiece): SheetPiece {
  const { min, max } = boundsOfPoints(
    piece.ink.flatMap((ink) => (ink.kind === "line" ? ink.edges.map(({ a }) => a) : [])),
  );
  const [width, height] = [max.x - min.x, max.y - min.y];
  const ink = piece.ink.map((one): Ink<"sheet"> => {
    if (one.kind === "line") return one;
    const isTight = textWidth(one.text, one.size) > width && height > width;
    return { ...one, turn: radians(isTight ? -Math.PI / 2 : 0) };
  });
  return { ...piece, ink };
}
