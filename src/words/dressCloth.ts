/** Cloth to buy, in words: how much, what other widths would take, and what to give up where there is too little. */
import type { ClothName } from "../core/decisions/dress";
import type { LengthUnit } from "../core/decisions/work";
import type { ClothLay, LayFailure } from "../core/cloth/cutting";
import type { GiveUp, RemnantAnswer } from "../core/dress/remnant";
import type { Mm } from "../core/units";
import { clothName } from "./dressParts";
import { clothLength, numberEntry } from "./dressStep";
import { formatLength } from "./terms/length";
import { capital } from "./terms/names";
import { listWords, percentWords } from "./terms/language";

/** Narrower is a ribbon, wider is not woven (common practice, no source). */
export const LEAST_CLOTH: Mm = 200;
export const MOST_CLOTH: Mm = 4000;

export const LAYING = "Laying the parts out…";
export const NOT_LAID = "The parts could not be laid out just now. Change something, or load the page again.";
export const otherWidths = (cloth: ClothName): string => `Other widths of the ${clothName(cloth)}`;
export const DOES_IT_GO = "Does it go?";
export const TAKE_WAY = "Take this";
export const WHERE_LAID = "Where each part lies";

export const drawnLayLabel = (cloth: ClothName): string => `The parts laid on the ${clothName(cloth)}`;

/** "main cloth 2.45 m, lining 1.60 m"; of what is not laid yet the name alone. */
export const clothsOutcome = (
  cloths: readonly { readonly name: ClothName; readonly toBuy: Mm | null }[],
  unit: LengthUnit,
): string =>
  cloths
    .map(({ name, toBuy }) => (toBuy === null ? clothName(name) : `${clothName(name)} ${clothLength(toBuy, unit)}`))
    .join(", ");

export const buyWords = ({ toBuy, width }: ClothLay, unit: LengthUnit): string =>
  `${clothLength(toBuy, unit)} of ${formatLength(width, unit)}`;

/** How good the lay is: no lay can be shorter than either of two lengths. */
export const boundsWords = ({ length, leastByArea, leastByLongest, used }: ClothLay, unit: LengthUnit): string =>
  `Takes ${formatLength(length, unit)}. No lay takes less than ${formatLength(Math.max(leastByArea, leastByLongest), unit)}: ${leastByArea > leastByLongest ? "the parts cover as much" : "the longest part is as long"}. ${percentWords(used)} of the cloth is used.`;

export function layFailureWords(failure: LayFailure, named: (key: string) => string, unit: LengthUnit): string {
  switch (failure.code) {
    case "cloth/nothing-to-lay":
      return "Nothing is cut from it.";
    case "cloth/part-too-wide":
      return `${named(failure.key)} needs ${formatLength(failure.needed, unit)} across; the cloth is ${formatLength(failure.width, unit)} wide.`;
  }
}

/** Whether what she has is enough, and by how much. */
export function remnantWords(answer: RemnantAnswer, named: (key: string) => string, unit: LengthUnit): string {
  const length = (mm: Mm): string => formatLength(mm, unit);
  if (answer.goes) return `It goes: ${length(answer.left)} is left over.`;
  const why =
    answer.short !== null
      ? `${length(answer.short)} is missing`
      : answer.failure === null
        ? "it cannot be laid"
        : layFailureWords(answer.failure, named, unit).replace(/\.$/, "");
  return answer.ways.length === 0
    ? `It does not go: ${why}. Nothing that was tried makes it go.`
    : `It does not go: ${why}. It would go with`;
}

const plain = (value: number): string => numberEntry(value);

function giveUpWords(giveUp: GiveUp, unit: LengthUnit): string {
  switch (giveUp.code) {
    case "remnant/single-layer":
      return "the cloth laid single, not folded";
    case "remnant/both-ways":
      return "some parts turned upside down";
    case "remnant/elsewhere":
      return `${giveUp.group === "facing" ? "facings" : "bindings"} of another cloth`;
    case "remnant/ratio":
      return `${giveUp.tier === null ? "the skirt" : `tier ${giveUp.tier}`} gathered ${plain(giveUp.to)} times, not ${plain(giveUp.from)}`;
    case "remnant/widths":
      return `tier ${giveUp.tier} of ${giveUp.to} widths, not ${giveUp.from}`;
    case "remnant/flare":
      return `a flare of ${plain(giveUp.to)}°, not ${plain(giveUp.from)}°`;
    case "remnant/share":
      return `${percentWords(giveUp.to)} of a circle, not ${percentWords(giveUp.from)}`;
    case "remnant/length":
      return `a skirt ${formatLength(giveUp.to, unit)} long, not ${formatLength(giveUp.from, unit)}`;
  }
}

export const wayOutWords = (giveUps: readonly GiveUp[], unit: LengthUnit): string =>
  capital(listWords(giveUps.map((giveUp) => giveUpWords(giveUp, unit))));
