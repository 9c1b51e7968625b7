/** The centre line meets the neck, the waist and the hem squarely. */
import { piecesOf } from "../pattern/pieceSet";
import { CENTRE_CORNERS } from "../pattern/centreCorners";
import { SQUARE_CORNER_DEGREES } from "../tolerance";
import { near, type Check } from "./context";
import { cornerAtDegrees, squareAt } from "../girth/cornerAngle";

export const cornersSquare: Check = ({ pieces }) =>
  piecesOf(pieces).flatMap((piece) =>
    CENTRE_CORNERS.filter((point) => piece.points[point] !== undefined).map((point) =>
      near({
        name: "cornersSquare",
        measured: cornerAtDegrees(piece, point),
        expected: squareAt(piece, point),
        tolerance: SQUARE_CORNER_DEGREES,
        unit: "degrees",
        pieces: [piece.name],
        point,
      }),
    ),
  );
