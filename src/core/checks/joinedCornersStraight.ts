/** Where two corners come together when sewn, they make a straight line: at the ends of seams and across shut darts. */
import { pieceIn, piecesOf } from "../alterations/pieceSet";
import { seamCornerAtDart } from "../dart/trueSeam";
import type { PieceName, PointName } from "../pattern/piece";
import { JOINED_CORNER_DEGREES } from "../tolerance";
import { degreesFrom } from "../units";
import { near, type Check } from "./context";
import { cornerAtDegrees } from "./corners";

const JOINS: readonly { readonly point: PointName; readonly first: PieceName; readonly second: PieceName }[] = [
  { point: "sideNeck", first: "front", second: "back" },
  { point: "shoulderTip", first: "front", second: "back" },
  { point: "underarm", first: "front", second: "back" },
  { point: "sideWaist", first: "front", second: "back" },
  { point: "sideWaist", first: "frontBasque", second: "backBasque" },
  { point: "sideHem", first: "frontBasque", second: "backBasque" },
];

export const joinedCornersStraight: Check = ({ pieces }) => [
  ...JOINS.filter(({ first, second }) => pieces[first] !== undefined && pieces[second] !== undefined).map(
    ({ point, first, second }) =>
      near({
        name: "joinedCornersStraight",
        measured: cornerAtDegrees(pieceIn(pieces, first), point) + cornerAtDegrees(pieceIn(pieces, second), point),
        expected: 180,
        tolerance: JOINED_CORNER_DEGREES,
        unit: "degrees",
        pieces: [first, second],
        point,
      }),
  ),
  ...piecesOf(pieces).flatMap((piece) =>
    piece.darts.map((dart) =>
      near({
        name: "joinedCornersStraight",
        measured: 180 - degreesFrom(seamCornerAtDart(piece, dart.name)),
        expected: 180,
        tolerance: JOINED_CORNER_DEGREES,
        unit: "degrees",
        pieces: [piece.name],
        seam: dart.seam,
        dart: dart.name,
      }),
    ),
  ),
];
