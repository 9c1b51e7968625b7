/** The sewn front in words: how it is turned, and how its darts end. */
import type { SewnTip } from "../core/sewn/sewFront";
import { degreesFrom } from "../core/units";
import { dartWords } from "./terms/names";

/** "Turned 30° to the left.", "Seen from the front." Degrees; positive turns what faces you to the right. */
function turnSentence(turn: number): string {
  const degrees = Math.round(Math.abs(turn));
  if (degrees === 0) return "Seen from the front.";
  return `Turned ${degrees}° to the ${turn > 0 ? "right" : "left"}.`;
}

/** The whole angle at the point, degrees: 180° is flat. */
const pointDegrees = ({ halfApex }: SewnTip): number => Math.round(2 * degreesFrom(halfApex));

/** "The waist dart ends in a point of 144°." */
const tipSentence = (tip: SewnTip): string => `The ${dartWords(tip.dart)} ends in a point of ${pointDegrees(tip)}°.`;

/** All that is seen of a sewn front, for those who do not see it. */
export const seenSentence = (turn: number, tips: readonly SewnTip[]): string =>
  [turnSentence(turn), ...tipsSentences(tips)].join(" ");

/** What there is to say of the points of a front; a front without darts has none. */
export const tipsSentences = (tips: readonly SewnTip[]): readonly string[] =>
  tips.length === 0 ? ["No dart ends in a point: the fullness is spread along the seams."] : tips.map(tipSentence);

export const SEWN_TITLES = { drawn: "As drawn", wanted: "As your cup asks" } as const;
export const SEWN_VIEWS = { front: "Front", threeQuarter: "Three-quarter", side: "Side" } as const;
export const SEWN_KEYS = "Drag to turn it, or use the arrow keys.";
export const SEWN_NOTE =
  "180° would be flat; the smaller the angle, the sharper the point. Drawn from the pieces alone, as cloth that does not stretch; real cloth is pressed softer.";
