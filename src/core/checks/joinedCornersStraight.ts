/** Where two corners come together when sewn, they make a straight line: at the ends of seams and across shut darts. */
import { pieceIn, piecesOf } from "../pattern/pieceSet";
import { seamCornerAtDart, turnAsDrawn } from "../dart/trueSeam";
import { joinsOf } from "../pattern/sewnTogether";
import type { Piece } from "../pattern/piece";
import { remember } from "../remember";
import { JOINED_CORNER_DEGREES } from "../tolerance";
import { degreesFrom } from "../units";
import { near, type Check } from "./context";
import { cornerAtDegrees, straightAt } from "../girth/cornerAngle";

export const joinedCornersStraight: Check = ({ pieces }) => [
  ...joinsOf(pieces).map(({ point, first, second }) =>
    near({
      name: "joinedCornersStraight",
      measured: cornerAtDegrees(pieceIn(pieces, first), point) + cornerAtDegrees(pieceIn(pieces, second), point),
      expected: straightAt(pieceIn(pieces, first), pieceIn(pieces, second), point),
      tolerance: JOINED_CORNER_DEGREES,
      unit: "degrees",
      pieces: [first, second],
      point,
    }),
  ),
  ...piecesOf(pieces).flatMap((piece) => overDarts({ piece })),
];

/** Most pieces are no others than in the plan before, or on the other half. */
const overDarts = remember(["piece"], ({ piece }: { readonly piece: Piece }) =>
  // A gathered mouth is drawn up, not folded: the seam runs over it as it lies.
  piece.darts
    .filter((dart) => dart.gathered !== true)
    .map((dart) =>
      near({
        name: "joinedCornersStraight",
        measured: 180 - degreesFrom(seamCornerAtDart(piece, dart.name)),
        expected: 180 - degreesFrom(turnAsDrawn(piece, dart.name)),
        tolerance: JOINED_CORNER_DEGREES,
        unit: "degrees",
        pieces: [piece.name],
        seam: dart.seam,
        dart: dart.name,
      }),
    ),
);
