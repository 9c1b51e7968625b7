/** Where points of a finished piece lie on the printed tissue, in words: from their own printed places, or from a printed corner. */
import type { DrawnLength, TissuePlace } from "../core/plan/tissuePlaces";
import type { PointName } from "../core/pattern/piece";
import { drawn, small, type Context } from "./terms/jobText";
import { capital, listWords, seamWords } from "./terms/names";
import { tissueWords } from "./terms/points";

/** "13 mm outwards and 5 mm up"; null where there is nothing to mark. */
function awayWords({ out, down }: TissuePlace, context: Context): string | null {
  const across = drawn(out, context) ? [`${small(out, context)} ${out > 0 ? "outwards" : "inwards"}`] : [];
  const along = drawn(down, context) ? [`${small(down, context)} ${down > 0 ? "down" : "up"}`] : [];
  return across.length + along.length === 0 ? null : [...across, ...along].join(" and ");
}

/** What is said of what did not move. */
export const AS_PRINTED = "where it is printed";

/** From where it is printed, or from a printed corner: "5 mm outwards and 20 mm down", "12 mm inwards from the printed underarm". */
export function placeWords(place: TissuePlace, context: Context): string {
  const away = awayWords(place, context);
  if (place.point === place.from) return away ?? AS_PRINTED;
  const from = tissueWords(place.from, context.pieceName);
  return away === null ? `at the printed ${from}` : `${away} from the printed ${from}`;
}

/** "Side at the waist: 13 mm outwards." null where it is marked where it is printed. */
export function placeMove(place: TissuePlace, context: Context): string | null {
  if (place.isFromMark === true) {
    const way = place.down > 0 ? "below" : "above";
    return drawn(place.down, context)
      ? `${capital(tissueWords(place.point, context.pieceName))}: ${small(place.down, context)} straight ${way} its mark.`
      : null;
  }
  if (place.point === place.from && awayWords(place, context) === null) return null;
  return `${capital(tissueWords(place.point, context.pieceName))}: ${placeWords(place, context)}.`;
}

/** "Draw the under-bust seam from the side to the mouth … 17.3 cm long." */
export const lengthMove = ({ seam, from, to, length }: DrawnLength, context: Context): string =>
  `Draw the ${seamWords(seam, context.pieceName)} from the ${tissueWords(from, context.pieceName)} to the ${tissueWords(to, context.pieceName)} in a smooth line ${small(length, context)} long.`;

/** How the corners are counted that have no words of their own. */
export const CORNERS_COUNTED = "Its corners are counted by the clock, from the upper left one.";

/** How the finished piece is laid on its tissue. */
export function layWords(stayed: readonly PointName[], context: Context): string {
  const names = stayed.map((point) => tissueWords(point, context.pieceName));
  if (names.length === 0) return "Lay the piece on the tissue, grain on grain";
  return `Lay the piece on the tissue, grain on grain, ${listWords(names)} where ${names.length === 1 ? "it is" : "they are"} printed`;
}
