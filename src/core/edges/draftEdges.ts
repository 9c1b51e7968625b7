/** Straps, and the finish of every upper edge that no lining takes. */
import type { Allowances } from "../decisions/allowances";
import type { Half } from "../decisions/alteration";
import type { EdgeFinish, Edges, Straps } from "../decisions/dress";
import type { Closure } from "../decisions/pattern";
import { seamLength } from "../girth/seamLength";
import { isFrontPiece } from "../pattern/pieceGroups";
import { partsOfHalves } from "../parts/halfParts";
import type { Part, PiecePart, RectanglePart } from "../parts/part";
import type { Piece, SeamName } from "../pattern/piece";
import { piecesOf, type PieceSet } from "../pattern/pieceSet";
import type { Mm } from "../units";
import { stripLength, stripWidth } from "./bindings";
import type { EdgeFigures, EdgesDraft } from "./edgesDraft";
import { facingsOf, type Facings } from "./facings";
import { draftStraps } from "./straps";

/** mm (common practice, no source). */
export const USUAL_FACING_DEPTH: Mm = 60;
export const USUAL_BINDING_WIDTH: Mm = 8;

/** What can be cut and sewn, mm (our own choice). */
const DEPTHS = { least: 25, most: 150 } as const;
const BINDING_WIDTHS = { least: 4, most: 40 } as const;

const within = (value: Mm, { least, most }: { readonly least: Mm; readonly most: Mm }): Mm =>
  Math.min(Math.max(value, least), most);

export interface EdgesAsked {
  readonly edges: Edges;
  readonly straps: Straps | null;
  /** The finished bodice, the wearer's left half first. */
  readonly bodice: readonly [PieceSet, PieceSet];
  readonly isLined: boolean;
  readonly closure: Closure;
  readonly allowances: Allowances;
}

export function draftEdges({ edges, straps, bodice, isLined, closure, allowances }: EdgesAsked): EdgesDraft {
  const [left] = bodice;
  const asked = { neck: edges.neck ?? "facing", armhole: edges.armhole ?? "facing" } as const;
  const wanted = { depth: edges.facingDepth ?? USUAL_FACING_DEPTH, width: edges.bindingWidth ?? USUAL_BINDING_WIDTH };
  const depth = within(wanted.depth, DEPTHS);
  const width = within(wanted.width, BINDING_WIDTHS);
  const isStrapped = left.strap !== undefined || left.cup !== undefined;
  // A strapped edge runs from centre to side in one: it is finished in one way.
  const finish = isStrapped ? { neck: asked.neck, armhole: asked.neck } : asked;
  const facings = isLined ? null : facingsOf({ halves: bodice, ...finish, depth });
  const figures = figuresOf(bodice, finish, {
    isLined,
    isStrapped,
    opensBack: closure.place === "centreBack",
    width,
  });
  const strips = figures.flatMap(({ strip }) => (strip === null ? [] : [strip]));
  const strap = straps === null ? null : draftStraps(bodice, straps, allowances);
  return {
    edges: figures,
    strap: strap?.figures ?? null,
    bias:
      strips.length === 0
        ? []
        : [{ width: stripWidth(width), length: strips.reduce((sum, { length, count }) => sum + length * count, 0) }],
    facing:
      facings === null || facings.pieces.every((half) => half.length === 0)
        ? null
        : { asked: wanted.depth, depth: facings.depth, inOne: facings.inOne },
    binding: strips.length === 0 ? null : { asked: wanted.width, width },
    parts: [
      ...(facings === null ? [] : facingParts(facings)),
      ...strips.map((strip, at) => bindingPart(strip, at)),
      ...(strap?.parts ?? []),
    ],
  };
}

interface Finished {
  readonly isLined: boolean;
  readonly isStrapped: boolean;
  /** The back is in two, each bound by itself. */
  readonly opensBack: boolean;
  readonly width: Mm;
}

const along = (half: PieceSet, seam: SeamName, has: (piece: Piece) => boolean = () => true): Mm =>
  piecesOf(half)
    .filter((piece) => piece.name !== "strap" && !piece.name.startsWith("other") && has(piece))
    .reduce((sum, piece) => sum + seamLength(piece, seam), 0);

const isFront = ({ name }: Piece): boolean => isFrontPiece(name);
const isBack = ({ name }: Piece): boolean => !isFrontPiece(name);

function figuresOf(
  [left, right]: readonly [PieceSet, PieceSet],
  finish: { readonly neck: EdgeFinish; readonly armhole: EdgeFinish },
  { isLined, isStrapped, opensBack, width }: Finished,
): readonly EdgeFigures[] {
  const figure = (
    edge: EdgeFigures["edge"],
    length: Mm,
    count: number,
    more: Partial<EdgeFigures> = {},
    bound = length,
  ): EdgeFigures => ({
    edge,
    length,
    finish: isLined ? "lining" : finish[edge],
    strip:
      !isLined && finish[edge] === "binding" ? { length: stripLength(bound), width: stripWidth(width), count } : null,
    ...more,
  });
  const both = (seam: SeamName, has?: (piece: Piece) => boolean): Mm =>
    along(left, seam, has) + along(right, seam, has);
  // A binding of the neck runs on over the seams of the straps, whose ends it takes in.
  const boundOver = (has: (piece: Piece) => boolean): Mm => both("neck", has) + both("strap", has);
  const backs = opensBack ? 2 : 1;
  const necks = isStrapped
    ? [
        figure("neck", both("neck", isFront), 1, { at: "front" }, boundOver(isFront)),
        figure("neck", both("neck", isBack), backs, { at: "back" }, boundOver(isBack) / backs),
      ]
    : [figure("neck", both("neck"), 1)];
  const [ofLeft, ofRight] = [along(left, "armhole"), along(right, "armhole")];
  const armholes =
    ofLeft === ofRight
      ? [figure("armhole", ofLeft, 2)]
      : [figure("armhole", ofLeft, 1, { half: "left" }), figure("armhole", ofRight, 1, { half: "right" })];
  return [...necks, ...armholes].filter(({ length }) => length > 0);
}

/** Each facing, and its interfacing. */
function facingParts({ pieces: [left, right] }: Facings): readonly Part[] {
  const names = [...new Set([...left, ...right].map(({ name }) => name))];
  return names.flatMap((name) => {
    const [one, other] = [left.find((piece) => piece.name === name), right.find((piece) => piece.name === name)];
    const of = (cloth: "main" | "interfacing"): readonly PiecePart[] => {
      if (one !== undefined && other !== undefined)
        return partsOfHalves(one, other, (piece, half) => facingPart(piece, half, cloth));
      // An edge that one half alone has.
      return [
        ...(one === undefined ? [] : [facingPart(one, "left", cloth)]),
        ...(other === undefined ? [] : [facingPart(other, "right", cloth)]),
      ];
    };
    return of("main").flatMap((part, at) => [part, ...of("interfacing").slice(at, at + 1)]);
  });
}

function facingPart(piece: Piece, half: Half | null, cloth: "main" | "interfacing"): PiecePart {
  const onFold = piece.centreOnFold;
  return {
    kind: "piece",
    key: [piece.name, ...(half === null ? [] : [half]), ...(cloth === "main" ? [] : [cloth])].join("-"),
    group: "facing",
    cloth,
    cut: { onFold, count: onFold || half !== null ? 1 : 2 },
    half,
    grain: "along",
    piece,
  };
}

function bindingPart({ length, width, count }: NonNullable<EdgeFigures["strip"]>, at: number): RectanglePart {
  return {
    kind: "rectangle",
    key: `binding-${at + 1}`,
    group: "binding",
    cloth: "main",
    cut: { onFold: false, count },
    half: null,
    grain: "bias",
    name: "binding",
    width: length,
    depth: width,
    allowances: { top: 0, bottom: 0, sides: 0 },
  };
}
