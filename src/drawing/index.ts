/**
 * Pieces and plans as plain drawing data, for screen and paper alike.
 *
 * `placePieces` and `boxOf` lay pieces out on the table; `pieceMarks` gives one piece as paths; `sizeLabels`,
 * `pieceLabels`, `planLabels` and `keepApart` give what is written beside them; `pieceDiagram` is one piece with its amounts for paper.
 */
export {
  boxOf,
  boundsOf,
  onTable,
  placeHalves,
  placeKey,
  placePieces,
  placeTransform,
  type Box,
  type Place,
} from "./layout";
export { pieceMarks, type PieceMarks } from "./pieceMarks";
export { isWrittenAlike, keepApart, nearestApart, textPixels, type Label } from "./labels";
export { cutLineWords, pieceLabels, planLabels, sizeLabels, sizesInUse } from "./planLabels";
export { pieceDiagram } from "./pieceDiagram";
