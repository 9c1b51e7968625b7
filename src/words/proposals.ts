/** What her lengths and widths ask for, in words: what to alter, the sum behind it, and what agrees. */
import type { FitAlteration } from "../core/decisions/alteration";
import type { PrintedLength } from "../core/decisions/pattern";
import type { LengthUnit } from "../core/decisions/work";
import type { Compared } from "../core/proposals/compare";
import type { Advice, Proposal, Unanswered } from "../core/proposals/proposals";
import { READS_AS_NOTHING } from "../core/tolerance";
import type { Mm } from "../core/units";
import { fitTitle } from "./fits";
import { measureWords } from "./measures";
import type { SumLine } from "./sumLine";
import { formatAmount, formatLength, formatSigned } from "./terms/length";
import { capital, listWords } from "./terms/names";

export const FROM_MEASURES = "From your measures";
export const NOT_ALTERED = "Measured, not altered";

/** "Shorten the bodice below the bust by 20 mm". */
export function proposalTitle({ altered, amount, stands }: Proposal, unit: LengthUnit): string {
  if (altered.kind === "dartsOut") {
    const by = amount - stands;
    return `Redraw the ends of the bust darts ${formatAmount(Math.abs(by), unit)} ${by > 0 ? "further out" : "nearer the centre"}`;
  }
  if (amount === 0) return `Take out: ${fitTitle(fitOf(altered.fit, stands), unit).toLowerCase()}`;
  return fitTitle(fitOf(altered.fit, amount), unit);
}

const fitOf = (fit: FitAlteration["fit"], amount: Mm): FitAlteration => ({ kind: "fit", id: "", fit, amount });

/** What the button says. */
export const takeWords = ({ stands, amount }: Proposal): string =>
  stands === 0 ? "Take" : amount === 0 ? "Take out" : "Change";

/** What a measure is called where it stands in a sentence. */
const named = (measure: PrintedLength): string =>
  measure === "sideNeckToBustPoint" ? "bust depth" : measureWords(measure).short;

/** "your back waist length 39.0 cm, the pattern’s 41.0 cm". */
function heldAgainst({ measure, body, garment, figure, from }: Compared, unit: LengthUnit): string {
  const isChanged = Math.abs(garment - figure) > READS_AS_NOTHING;
  const its = isChanged ? "the garment’s" : from === "printed" ? "the pattern’s" : "our draft’s";
  return `your ${named(measure)} ${formatLength(body, unit)}, ${its} ${formatLength(garment, unit)}`;
}

/** The sum in one sentence. */
export function proposalSentence(proposal: Proposal, unit: LengthUnit): string {
  const { from, stands, amount, altered, missing } = proposal;
  const off = from.filter(({ agrees }) => !agrees).map((one) => heldAgainst(one, unit));
  const agreeing = from.filter(({ agrees }) => agrees);
  // Where the alteration stands, all that it stands on may agree by now.
  const told =
    off.length === 0
      ? from.map((one) => heldAgainst(one, unit))
      : [...off, ...agreeing.map(({ measure }) => `your ${named(measure)} agrees`)];
  const said = [capital(`${told.join("; ")}.`)];
  const why = reasonOf(proposal, unit);
  if (why !== null) said.push(why);
  if (altered.kind === "fit" && stands !== 0)
    said.push(`You have ${formatAmount(stands, unit)}; your measures now ask for ${formatAmount(amount, unit)}.`);
  if (Math.abs(missing) > READS_AS_NOTHING)
    said.push(`${formatAmount(Math.abs(missing), unit)} more is asked for than can be made here.`);
  return said.join(" ");
}

function reasonOf({ why, from }: Proposal, unit: LengthUnit): string | null {
  const has = (measure: PrintedLength): boolean => from.some((one) => one.measure === measure);
  const offOf = (measure: PrintedLength): Mm => from.find((one) => one.measure === measure)?.off ?? 0;
  switch (why) {
    case "length": {
      const hints: string[] = [];
      if (has("backWaistLength") && has("frontWaistLength")) hints.push("Back and front are off alike: length.");
      else if (has("backWaistLength"))
        hints.push("The front waist length would tell length from a round or hollow back.");
      else hints.push("The back waist length would tell length from the shape of the front.");
      if (!has("sideNeckToBustPoint")) hints.push("The bust depth would tell what of it belongs above the bust.");
      return hints.join(" ");
    }
    case "above":
      return "By your bust depth, so much of it belongs above the bust.";
    case "backAlone":
      return offOf("backWaistLength") > 0
        ? "The back is longer by itself: it is rounder."
        : "The back is shorter by itself: it is hollow at the waist.";
    case "frontAlone":
      return `The front is ${offOf("frontWaistLength") > 0 ? "longer" : "shorter"} by itself; what the bust adjustment lengthens is counted.`;
    case "bustDepth": {
      const off = offOf("sideNeckToBustPoint");
      return `Your bust point lies ${formatAmount(Math.abs(off), unit)} ${off > 0 ? "lower" : "higher"}.`;
    }
    case "bustWidth": {
      const off = offOf("bustPointWidth") / 2;
      return `Your bust point lies ${formatAmount(Math.abs(off), unit)} ${off > 0 ? "further out" : "nearer the centre"}.`;
    }
    case "width":
      return null;
  }
}

/** The sum of one measure: what the pattern is drafted for, what has changed since, hers, and what they are apart. */
export function comparedSum(
  { body, figure, from, changed, garment, off }: Compared,
  unit: LengthUnit,
): readonly SumLine[] {
  const changes = (
    [
      ["through the cup version", changed.cup],
      ["through the bust adjustment", changed.bust],
      ["through your alterations", changed.own],
    ] as const
  ).filter(([, by]) => Math.abs(by) > READS_AS_NOTHING);
  return [
    { words: from === "printed" ? "the pattern says" : "our draft’s figure", figure: formatLength(figure, unit) },
    ...changes.map(([words, by]) => ({ words, figure: formatSigned(by, unit) })),
    ...(changes.length === 0 ? [] : [{ words: "the garment’s", figure: formatLength(garment, unit) }]),
    { words: "yours", figure: formatLength(body, unit) },
    { words: "apart", figure: formatSigned(off, unit), total: true },
  ];
}

/** "Why 20 mm?" */
export const whyWords = ({ altered, amount, stands }: Proposal, unit: LengthUnit): string =>
  `Why ${formatAmount(Math.abs(altered.kind === "fit" ? amount : amount - stands), unit)}?`;

/** The base of all sums, said once. */
export const EASE_NOTE =
  "Body is held against body: what the pattern is drafted for, with all that its pieces have changed by since. Ease drafted in stays.";

/** "5 agree: back waist length, across back, …". */
export const agreeingTitle = (agreeing: readonly Compared[]): string =>
  `${agreeing.length === 1 ? "1 agrees" : `${agreeing.length} agree`}: ${listWords(agreeing.map(({ measure }) => named(measure)))}`;

export const agreeingSentence = (compared: Compared, unit: LengthUnit): string =>
  `${capital(heldAgainst(compared, unit))}; tape and pattern are good to ${formatAmount(compared.doubt, unit)}.`;

const BECAUSE: Readonly<Record<Unanswered["because"], string>> = {
  noAlteration: "Nothing here alters it: see to it at the fitting.",
  straps: "Straps are cut long: pin them shorter at the fitting.",
  notOnPieces: "These pieces have no place for it: see to it at the fitting.",
  noRoom: "No more of it can be made here: see to it at the fitting.",
  measureBack: "The height alters nothing. Measure the back waist length: it tells.",
};

export const unansweredSentence = ({ compared, because }: Unanswered, unit: LengthUnit): string =>
  `${capital(heldAgainst(compared, unit))}. ${BECAUSE[because]}`;

export const notOnPiecesSentence = (measures: readonly PrintedLength[]): string =>
  `Not held against these pieces: ${listWords(measures.map((measure) => named(measure)))}.`;

/** What was measured and is not altered, each with its sum, for paper and for the command line. */
export function notAltered(advice: Advice, unit: LengthUnit): readonly string[] {
  return [
    ...advice.proposals.map(
      (proposal) => `Not taken: ${lowered(proposalTitle(proposal, unit))}. ${proposalSentence(proposal, unit)}`,
    ),
    ...advice.unanswered.map((one) => unansweredSentence(one, unit)),
  ];
}

const lowered = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
