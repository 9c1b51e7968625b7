/** Where points of a finished piece lie on the printed tissue, in words: from their own printed places, or from a printed corner. */
import type { DrawnLength, TissuePlace } from "../core/plan/tissuePlaces";
import type { PointName } from "../core/pattern/piece";
import { drawn, small, type Context } from "./terms/jobText";
import { capital, seamWords } from "./terms/names";
import { tissueWords } from "./terms/points";
import { listWords } from "./terms/language";

/** "13 mm outwards and 5 mm up"; null where there is nothing to mark. */
export function movedWords({ out, down }: TissuePlace, context: Context): string | null {
  const across = drawn(out, context) ? [`${small(out, context)} ${out > 0 ? "outwards" : "inwards"}`] : [];
  const along = drawn(down, context) ? [`${small(down, context)} ${down > 0 ? "down" : "up"}`] : [];
  return across.length + along.length === 0 ? null : [...across, ...along].join(" and ");
}

/** What is said of what did not move. */
export const asItLies = ({ isFromOld }: Pick<Context, "isFromOld">): string =>
  isFromOld === true ? "where it was" : "where it is printed";

/** Before the name of a corner that a place is told from. */
const ofWhich = ({ isFromOld }: Context): string => (isFromOld === true ? "old" : "printed");

/** From where it is printed, or from a printed corner: "5 mm outwards and 20 mm down", "12 mm inwards from the printed underarm". */
export function placeWords(place: TissuePlace, context: Context): string {
  const away = movedWords(place, context);
  if (place.point === place.from) return away ?? asItLies(context);
  const from = tissueWords(place.from, context.pieceName);
  const which = ofWhich(context);
  return away === null ? `at the ${which} ${from}` : `${away} from the ${which} ${from}`;
}

/** "Side at the waist: 13 mm outwards." null where it is marked where it is printed. */
export function placeMove(place: TissuePlace, context: Context): string | null {
  if (place.isFromMark === true) {
    const way = place.down > 0 ? "below" : "above";
    return drawn(place.down, context)
      ? `${capital(tissueWords(place.point, context.pieceName))}: ${small(place.down, context)} straight ${way} its mark.`
      : null;
  }
  if (place.point === place.from && movedWords(place, context) === null) return null;
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
  const under = context.isFromOld === true ? "old piece" : "tissue";
  const lay = `Lay the piece on the ${under}, grain on grain`;
  if (names.length === 0) return lay;
  const isOne = names.length === 1;
  const where =
    context.isFromOld === true ? (isOne ? "it was" : "they were") : `${isOne ? "it is" : "they are"} printed`;
  return `${lay}, ${listWords(names)} where ${where}`;
}
