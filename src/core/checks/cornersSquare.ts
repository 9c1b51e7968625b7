/** The centre line meets the neck, the waist and the hem squarely. */
import { piecesOf } from "../pattern/pieceSet";
import { CENTRE_CORNERS } from "../pattern/centreCorners";
import type { Piece } from "../pattern/piece";
import { remember } from "../remember";
import { near, type Check } from "./context";
import { cornerAtDegrees, squareAt, squareWithin } from "../girth/cornerAngle";

export const cornersSquare: Check = ({ pieces }) => piecesOf(pieces).flatMap((piece) => cornersOf({ piece }));

/** Most pieces are no others than in the plan before, or on the other half. */
const cornersOf = remember(["piece"], ({ piece }: { readonly piece: Piece }) =>
  CENTRE_CORNERS.filter((point) => piece.points[point] !== undefined).map((point) =>
    near({
      name: "cornersSquare",
      measured: cornerAtDegrees(piece, point),
      expected: squareAt(piece, point),
      tolerance: squareWithin(piece, point),
      unit: "degrees",
      pieces: [piece.name],
      point,
    }),
  ),
);
