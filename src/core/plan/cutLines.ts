/** Where the new cutting lines run: a line for each level that is blended, on each piece that has a side there. */
import { pieceIn, type PieceSet } from "../pattern/pieceSet";
import { neighbours, type LevelSizes } from "../blend/blendPiece";
import { pointOf, type Nest, type Piece, type PieceName, type PointName } from "../pattern/piece";
import { invariant } from "../result";
import type { Mm } from "../units";
import type { Built } from "./buildPieces";
import { SAME_LINE } from "../tolerance";
import type { CutLine } from "./plan";

const CUT_LINES: readonly Pick<CutLine, "piece" | "level">[] = [
  { piece: "front", level: "waist" },
  { piece: "sideFront", level: "waist" },
  { piece: "frontBand", level: "waist" },
  { piece: "back", level: "waist" },
  { piece: "backBand", level: "waist" },
  { piece: "frontBasque", level: "waist" },
  { piece: "frontBasque", level: "hip" },
  { piece: "backBasque", level: "waist" },
  { piece: "backBasque", level: "hip" },
];

export const cutLinePoint = (level: CutLine["level"]): PointName => (level === "hip" ? "sideHip" : "sideWaist");

/** The point of a piece that a cutting line runs to. */
export const lineAt = (pieces: PieceSet, { piece, level }: Pick<CutLine, "piece" | "level">) =>
  pointOf(seamedTo(pieces, piece), cutLinePoint(level));

/** The piece, or what a style seam made of it. */
const seamedTo = (pieces: PieceSet, name: PieceName): Piece =>
  pieces[name] ?? pieceIn(pieces, name === "front" ? "sideFront" : name);

/**
 * The cutting lines of the pieces as blended, and how far each runs from the printed line below it. The share of the way is
 * the piece's own: a band, whose dart is shut, does not carry the share of a frame that has one.
 */
export function drawCutLines(nest: Nest, { cut, blended }: Built, at: LevelSizes): CutLine[] {
  return CUT_LINES.filter(({ piece, level }) => cut[piece]?.points[cutLinePoint(level)] !== undefined).map((line) => {
    const { between, share } = lines(nest, at[line.level]);
    const { lower } = neighbours(at[line.level], nest.labels.length);
    const { x } = lineAt(cut, line);
    const [printed, next] = [printedAt(nest, lower, line), printedAt(nest, lower + 1, line)];
    return {
      ...line,
      between,
      share:
        printed === null || next === null || Math.abs(next - printed) < SAME_LINE
          ? share
          : (x - printed) / (next - printed),
      offset: x - (printed ?? x),
      alterationMove: 0,
      at: lineAt(blended, line),
    };
  });
}

/** The cutting lines with how far alterations moved each afterwards. */
export const alterationMoves = (cutLines: readonly CutLine[], blended: PieceSet, after: PieceSet): readonly CutLine[] =>
  cutLines.map((line) => ({ ...line, alterationMove: lineAt(after, line).x - lineAt(blended, line).x }));

/** Where the printed line of a size runs at a level; null where that size is not printed in this cup. */
function printedAt(nest: Nest, size: number, { piece, level }: Pick<CutLine, "piece" | "level">): Mm | null {
  const printed = nest.sizes[size]?.find(({ name }) => name === piece);
  return printed === undefined ? null : pointOf(printed, cutLinePoint(level)).x;
}

/** The labels of the printed lines on either side of a fractional size, and the share between them. */
export function lines(nest: Nest, size: number): { between: readonly [string, string]; share: number } {
  const { lower, share } = neighbours(size, nest.labels.length);
  return { between: [invariant(nest.labels[lower], "size"), invariant(nest.labels[lower + 1], "size")], share };
}
