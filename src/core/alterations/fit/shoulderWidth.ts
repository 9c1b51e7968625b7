/** Shoulder width: the seam made longer or shorter at its end on front and back alike, the armhole drawn on to it. */
import { seamLength } from "../../girth/seamLength";
import { between } from "../../geometry/point";
import { pointOf, type Edge, type Piece, type PieceName } from "../../pattern/piece";
import { fail, invariant, ok } from "../../result";
import { edgeFrom } from "../../pattern/ring";
import { stretchAt, stretchLength, stretchTo } from "../../pattern/seamStretch";
import { hasShoulders, shoulderPieces } from "../../surgery/shoulderLine";
import { withSeamEnd } from "../../surgery/walkAgain";
import { SAME_POINT, SHORTEST_EDGE } from "../../tolerance";
import type { Mm } from "../../units";
import { pieceIn, withPiece, type PieceSet } from "../../pattern/pieceSet";
import type { FitDefinition } from "../outcome/definition";

const tips = (pieces: PieceSet): readonly PieceName[] =>
  (["front", "back"] as const).map((side) => invariant(shoulderPieces(pieces, side).at(-1), "tip piece"));

/** What can come off the shoulder's last stretch on every piece; mm. */
const roomOf = (pieces: PieceSet): Mm =>
  Math.min(
    ...tips(pieces).map((name) => {
      const piece = pieceIn(pieces, name);
      return stretchLength(piece, stretchTo(piece, "shoulderTip")) - SHORTEST_EDGE - SAME_POINT;
    }),
  );

/** A shoulder that ends further in would send the armhole in and out again: its first stretch is bent less. */
const BENDS_OVER: Mm = 50;

function withFlatterTop(piece: Piece, amount: Mm): Piece {
  const index = edgeFrom(piece, "shoulderTip");
  // One with bends is bent less as a whole already.
  if (stretchAt(piece, index).length > 1) return piece;
  const edges = piece.edges.map((edge, i): Edge => {
    if (i !== index || edge.curve === null || amount >= 0) return edge;
    return {
      ...edge,
      curve: { ...edge.curve, c1: between(pointOf(piece, "shoulderTip"), edge.curve.c1, 1 + amount / BENDS_OVER) },
    };
  });
  return { ...piece, edges };
}

export const shoulderWidth: FitDefinition = {
  range: { least: -30, most: 25 },
  madeOn: ["front", "centreFront", "sideFront", "back"],
  applies: hasShoulders,
  apply: (pieces, amount) => {
    const most = -roomOf(pieces);
    if (amount < most) return fail({ code: "alteration/too-much", most });
    const set = tips(pieces).reduce((done, name) => {
      const piece = pieceIn(done, name);
      const moved = withSeamEnd(piece, "shoulder", "shoulderTip", seamLength(piece, "shoulder") + amount);
      return withPiece(done, withFlatterTop(moved, amount));
    }, pieces);
    return ok({ pieces: set, traces: [], values: {} });
  },
};
