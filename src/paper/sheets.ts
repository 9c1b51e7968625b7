/** From what is asked to a laid sheet: the pieces at true scale, their ink, and where each lies. */
import { PIECE_ORDER } from "../core/alterations/pieceSet";
import { ringAround } from "../core/cutting/ringAround";
import { isTurnedOver, truePiecesOf } from "../core/cutting/truePieces";
import type { TruePiece } from "../core/cutting/truePiece";
import { edgeFlatten } from "../core/geometry/edgeCurve";
import { piecePoint, type PiecePoint } from "../core/geometry/point";
import type { Piece } from "../core/pattern/piece";
import type { Plan } from "../core/plan/plan";
import { fail, must, ok, type Result } from "../core/result";
import { FORMATS } from "../core/sheets/formats";
import { layPieces } from "../core/sheets/layPieces";
import type { SheetLayout } from "../core/sheets/layout";
import { outlineOf } from "../core/surgery/ring";
import { CUTTING_ACCURACY } from "../core/tolerance";
import type { Mm } from "../core/units";
import type { Ink } from "../drawing/ink";
import { pieceInk, sizeLabelInk, underInk } from "../drawing/pieceInk";
import { mirroredInk, placedInk } from "../drawing/placeInk";
import type { SheetPiece } from "../drawing/sheetPages";
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
  readonly ink: readonly Ink<"piece">[];
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
    const own = pieceInk(piece, { title: titleLines(work, plan, piece, { day, allowances: choices.allowances }), allowances: choices.allowances });
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
      ink: [...(over ? mirroredInk(beneath) : beneath), ...own],
      outline: own.filter((ink) => ink.role === "cutting" || ink.role === "fold").filter((ink) => ink.kind === "line"),
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

/** Lays what is to be printed on the paper chosen. */
export function layOut(laid: readonly Laid[], { choices }: PaperRequest): Result<LaidSheet, PaperFailure> {
  if (laid.length === 0) return fail({ code: "sheet/nothing-to-lay" });
  const layout = layPieces(laid.map(({ key, ring }) => ({ key, ring })), { format: FORMATS[choices.format], margin: choices.margin, overlap: OVERLAP, gap: 0 });
  if (!layout.ok) return layout;
  const placed = (inkOf: (one: Laid) => readonly Ink<"piece">[]): SheetPiece[] =>
    layout.value.placements.map((placement) => {
      const one = must(laid.find(({ key }) => key === placement.key), placement.key);
      return { key: one.key, label: one.label, ink: placedInk(inkOf(one), placement) };
    });
  return ok({ layout: layout.value, pieces: placed(({ ink }) => ink), outlines: placed(({ outline }) => outline) });
}

/** All names in the order of the pattern. */
export const namesOf = (plan: Plan): readonly Piece["name"][] => PIECE_ORDER.filter((name) => plan.pieces.some((piece) => piece.name === name));
