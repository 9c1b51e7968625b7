/** From what is asked to a laid sheet: the pieces at true scale, their ink, and where each lies. */
import { ringAround } from "../core/cutting/ringAround";
import type { Lines } from "../core/cutting/room";
import { isTurnedOver, titledClearOf, truePiecesOf } from "../core/cutting/truePieces";
import type { TruePiece } from "../core/cutting/truePiece";
import { edgeFlatten, lineEdge } from "../core/geometry/edgeCurve";
import { midpoint, piecePoint, sheetPoint, type PiecePoint, type SheetPoint } from "../core/geometry/point";
import type { Piece } from "../core/pattern/piece";
import type { Plan } from "../core/plan/plan";
import { fail, must, ok, type Result } from "../core/result";
import type { Overlay } from "../core/overlay/overlay";
import { overlayOf } from "../core/overlay/overlayOf";
import { FORMATS, type PaperFormat } from "../core/sheets/formats";
import { layPieces } from "../core/sheets/layPieces";
import type { Placement, SheetLayout } from "../core/sheets/layout";
import { offSheet } from "../core/sheets/placing";
import { outlineOf } from "../core/surgery/ring";
import { CUTTING_ACCURACY } from "../core/tolerance";
import { boundsOfPoints } from "../core/geometry/bounds";
import { radians, type Mm } from "../core/units";

import type { Ink } from "../drawing/ink";
import { textWidth } from "../drawing/fitLines";
import { overlayInk } from "../drawing/overlayInk";
import { pieceInk, sizeLabelInk, underInk } from "../drawing/pieceInk";
import { mirroredInk, placedInk } from "../drawing/placeInk";
import type { SheetPiece } from "../drawing/sheetPages";
import { stripTitle } from "../words/overlay";
import { pieceTitle, titleLines } from "../words/truePaper";
import type { PaperFailure, PaperRequest } from "./request";

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
  readonly outline: readonly Ink<"piece">[];
  readonly ring: readonly PiecePoint[];
}

export interface LaidSheet {
  readonly layout: SheetLayout;
  readonly pieces: readonly SheetPiece[];
  readonly outlines: readonly SheetPiece[];
}

/** The true-scale pieces that are asked for. */
export const truePiecesFor = ({ work, plan, choices }: PaperRequest): Result<readonly TruePiece[], PaperFailure> =>
  truePiecesOf(plan, {
    names: choices.pieces,
    size: choices.size,
    allowances: choices.allowances ? (work.allowances ?? {}) : null,
    closure: work.pattern.closure,
  });

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
    const title = titleLines(work, plan, piece, { day, allowances });
    const cut = pieceInk(piece, { title: [], allowances }).filter((ink) => ink.kind === "line" && (ink.role === "cutting" || ink.role === "fold"));
    const rings = [
      piece.cutting.map(({ at }) => at),
      ...under.map(({ piece: other }) =>
        outlineOf(other)
          .flatMap((edge) => edgeFlatten(edge, CUTTING_ACCURACY).slice(1))
          .map((p) => (over ? piecePoint(-p.x, p.y) : p)),
      ),
    ];
    return {
      key: piece.key,
      label: pieceTitle(piece),
      ink: (borders) => [...(over ? mirroredInk(beneath) : beneath), ...pieceInk(titledClearOf(piece, borders), { title, allowances })],
      outline: [...cut, mapName(piece.title.centre, pieceTitle(piece))],
      ring: ringAround(rings, SPARE),
    };
  });
}

interface Under {
  readonly piece: Piece;
  readonly role: "printed" | "before";
  readonly size?: number;
  readonly label?: string;
}

function underPieces(plan: Plan, { name, size }: TruePiece, { choices }: PaperRequest): readonly Under[] {
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

const mapName = (at: PiecePoint, text: string): Ink<"piece"> => ({ kind: "text", role: "map", at, anchor: "middle", text, size: MAP_NAME, turn: radians(0) });

/** The strips of an overlay that are asked for, none longer than a page. */
export function overlayFor({ plan, choices }: PaperRequest): Overlay {
  const { width, height } = FORMATS[choices.format];
  const longest = Math.max(width, height ?? 0) - 2 * choices.margin - 2 * SPARE;
  return overlayOf(plan, choices.pieces, longest);
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
      ink: () => overlayInk(patch, overlay.frame, work.unit),
      outline: [{ kind: "line", role: "cutting", edges, closed: true }, mapName(midpoint(min, max), title)],
      ring,
    };
  });
}

/** Lays what is to be printed on paper. */
export function layOut(laid: readonly Laid[], format: PaperFormat, margin: Mm): Result<LaidSheet, PaperFailure> {
  if (laid.length === 0) return fail({ code: "sheet/nothing-to-lay" });
  const layout = layPieces(laid.map(({ key, ring }) => ({ key, ring })), { format, margin, overlap: OVERLAP, gap: 0 });
  if (!layout.ok) return layout;
  const borders = bordersOf(layout.value);
  const placed = (inkOf: (one: Laid, placement: Placement) => readonly Ink<"piece">[]): SheetPiece[] =>
    layout.value.placements.map((placement) => {
      const one = must(laid.find(({ key }) => key === placement.key), placement.key);
      return { key: one.key, label: one.label, ink: placedInk(inkOf(one, placement), placement) };
    });
  return ok({
    layout: layout.value,
    pieces: placed(({ ink }, placement) => ink(borders.map((line) => line.map((p) => offSheet(placement, p))))),
    outlines: placed(({ outline }) => outline).map(named),
  });
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
  const { min, max } = boundsOfPoints(piece.ink.flatMap((ink) => (ink.kind === "line" ? ink.edges.map(({ a }) => a) : [])));
  const [width, height] = [max.x - min.x, max.y - min.y];
  const ink = piece.ink.map((one): Ink<"sheet"> => {
    if (one.kind === "line") return one;
    const isTight = textWidth(one.text, one.size) > width && height > width;
    return { ...one, turn: radians(isTight ? -Math.PI / 2 : 0) };
  });
  return { ...piece, ink };
}
