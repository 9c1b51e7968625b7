/** What her lengths and widths ask for, in words: what to alter, the sum behind it, and what agrees. */
import type { FitAlteration } from "../core/decisions/alteration";
import type { PrintedLength } from "../core/decisions/pattern";
import type { LengthUnit } from "../core/decisions/work";
import type { Part } from "../core/proposals/askedFor";
import type { Compared } from "../core/proposals/compare";
import type { Advice, Proposal, Unanswered } from "../core/proposals/proposals";
import { snapStep } from "../core/plan/dartEdit";
import { READS_AS_NOTHING } from "../core/tolerance";
import type { Mm } from "../core/units";
import { fitTitle } from "./fits";
import { measureWords } from "./measures";
import type { SumLine } from "./sumLine";
import { formatAmount, formatLength, formatSigned } from "./terms/length";
import { capital } from "./terms/names";
import { listWords, plural } from "./terms/language";

export const FROM_MEASURES = "From your measures";
export const NOT_ALTERED = "Measured, not altered";

/** "Shorten the bodice below the bust by 20 mm". */
export function proposalTitle({ altered, amount, stands }: Proposal, unit: LengthUnit): string {
  if (altered.kind === "dartEnds") return "Set the ends of the bust darts by your bust point";
  if (altered.kind === "dartsOut") {
    if (stands !== 0 && amount === 0) return `Take out: ${lowered(dartsWords(stands, unit))}`;
    return dartsWords(amount - stands, unit);
  }
  if (amount === 0) return `Take out: ${fitTitle(fitOf(altered.fit, stands), unit).toLowerCase()}`;
  if (stands === 0) return fitTitle(fitOf(altered.fit, amount), unit);
  return `Change ${formatAmount(stands, unit)} to ${formatAmount(amount, unit)}: ${lowered(fitTitle(fitOf(altered.fit, amount), unit))}`;
}

const dartsWords = (by: Mm, unit: LengthUnit): string =>
  `Redraw the ends of the bust darts ${formatAmount(Math.abs(by), unit)} ${by > 0 ? "further out" : "nearer the centre"}`;

const fitOf = (fit: FitAlteration["fit"], amount: Mm): FitAlteration => ({ kind: "fit", id: "", fit, amount });

/** What the button says. */
export const takeWords = ({ stands, amount }: Proposal): string =>
  stands === 0 ? "Take" : amount === 0 ? "Take out" : "Change";

/** The button by itself; a title that says so already is enough. */
export const takeLabel = (proposal: Proposal, unit: LengthUnit): string => {
  const title = proposalTitle(proposal, unit);
  return proposal.altered.kind === "fit" && proposal.stands !== 0 ? title : `${takeWords(proposal)}: ${title}`;
};

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
  const { from, stands, amount, altered, missing, girths } = proposal;
  const off = from.filter(({ agrees }) => !agrees).map((one) => heldAgainst(one, unit));
  const agreeing = from.filter(({ agrees }) => agrees);
  // Where the alteration stands, all that it stands on may agree by now.
  const told =
    off.length === 0 || proposal.why === "dartEnd"
      ? from.map((one) => heldAgainst(one, unit))
      : [...off, ...agreeing.map(({ measure }) => `your ${named(measure)} agrees`)];
  const said = [capital(`${told.join("; ")}.`)];
  const why = reasonOf(proposal, unit);
  if (why !== null) said.push(why);
  if (altered.kind === "fit" && stands !== 0 && amount !== 0)
    said.push(`You have ${formatAmount(stands, unit)}; your measures now ask for ${formatAmount(amount, unit)}.`);
  if (Math.abs(missing) > READS_AS_NOTHING)
    said.push(`${formatAmount(Math.abs(missing), unit)} more is asked for than can be made here.`);
  if (girths.length > 0)
    said.push(
      `It makes ${listWords(girths.map(({ level, by }) => `the ${level} ${formatAmount(Math.abs(by), unit)} ${by > 0 ? "larger" : "smaller"}`))}.`,
    );
  return said.join(" ");
}

function reasonOf({ why, from }: Proposal, unit: LengthUnit): string | null {
  const has = (measure: PrintedLength): boolean => from.some((one) => one.measure === measure);
  const offOf = (measure: PrintedLength): Mm => from.find((one) => one.measure === measure)?.off ?? 0;
  const isOff = (measure: PrintedLength): boolean => from.some((one) => one.measure === measure && !one.agrees);
  switch (why) {
    case "dartEnd":
      return "As near as tape and pattern tell; but by your bust point a dart ends in the wrong place.";
    case "noLonger":
      return "Your measures no longer ask for it.";
    case "length": {
      const hints: string[] = [];
      if (has("backWaistLength") && has("frontWaistLength"))
        hints.push(
          isOff("backWaistLength") === isOff("frontWaistLength")
            ? "Back and front are off alike: length."
            : "So much both bear: length.",
        );
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

const PART_WORDS: Readonly<Record<Part["of"], string>> = {
  bothLengths: "what back and front both bear",
  backLength: "the back is apart",
  frontLength: "the front is apart",
  length: "taken as length",
  above: "of it above the bust",
  strap: "given by the straps",
  depth: "the bust depth is apart",
  width: "apart",
  halfWidth: "half of it on each side",
};

/** From what the measures are apart to the amount, line by line; none where nothing is asked for. */
export function askedSum({ parts, altered, amount, stands, missing }: Proposal, unit: LengthUnit): readonly SumLine[] {
  if (parts.length === 0) return [];
  const asked = altered.kind === "fit" ? amount : amount - stands;
  const wedge = asked + missing - parts.reduce((sum, { by }) => sum + by, 0);
  const step = snapStep(unit);
  return [
    ...parts.map(({ of, by }) => ({ words: PART_WORDS[of], figure: formatSigned(by, unit) })),
    ...(Math.abs(wedge) > step / 2 + READS_AS_NOTHING
      ? [{ words: "more, since a wedge gives less where the tape runs", figure: formatSigned(wedge, unit) }]
      : []),
    ...(Math.abs(missing) > READS_AS_NOTHING
      ? [{ words: "that cannot be made here", figure: formatSigned(0 - missing, unit) }]
      : []),
    { words: "asked for", figure: formatSigned(asked, unit), total: true },
  ];
}

/** "Why 20 mm?" */
export const whyWords = ({ altered, amount, stands }: Proposal, unit: LengthUnit): string =>
  amount === 0 ? "Why?" : `Why ${formatAmount(Math.abs(altered.kind === "fit" ? amount : amount - stands), unit)}?`;

/** The base of all sums, said once. */
export const EASE_NOTE =
  "Body is held against body: what the pattern is drafted for, with all that its pieces have changed by since. Ease drafted in stays.";

/** "5 agree: back waist length, across back, …". */
export const agreeingTitle = (agreeing: readonly Compared[]): string =>
  `${plural(agreeing.length, { one: "1 agrees", other: `${agreeing.length} agree` })}: ${listWords(agreeing.map(({ measure }) => named(measure)))}`;

export const agreeingSentence = (compared: Compared, unit: LengthUnit): string =>
  `${capital(heldAgainst(compared, unit))}; tape and pattern are good to ${formatAmount(compared.doubt, unit)}.`;

const BECAUSE: Readonly<Record<Unanswered["because"], string>> = {
  noAlteration: "Nothing here alters it: see to it at the fitting.",
  straps: "Straps are cut long: pin them shorter at the fitting.",
  notOnPieces: "These pieces have no place for it: see to it at the fitting.",
  noRoom: "No more of it can be made here: see to it at the fitting.",
  littleRoom: "Less than half of it can be made here: see to it at the fitting.",
  measureBack: "The height alters nothing. Measure the back waist length: it tells.",
  toile: "The toile showed otherwise: it goes before the tape.",
};

export const unansweredSentence = ({ compared, because }: Unanswered, unit: LengthUnit): string =>
  `${capital(heldAgainst(compared, unit))}. ${BECAUSE[because]}`;

export const notOnPiecesSentence = (measures: readonly PrintedLength[]): string =>
  `Not held against these pieces: ${listWords(measures.map((measure) => named(measure)))}.`;

/** "Settle the doubt about your bust first: …"; null where nothing is held back. */
export const heldBackSentence = ({ heldBackBy }: Advice): string | null =>
  heldBackBy.length === 0
    ? null
    : `Settle the ${plural(heldBackBy.length, { one: "doubt", other: "doubts" })} about your ${listWords(heldBackBy.map((measure) => (measure === "sideNeckToBustPoint" ? "bust depth" : measureWords(measure).short)))} first.`;

/** What was measured and is not altered, each with its sum, for paper and for the command line. */
export function notAltered(advice: Advice, unit: LengthUnit): readonly string[] {
  const held = heldBackSentence(advice);
  return [
    ...(held === null ? [] : [held]),
    ...advice.proposals.map(
      (proposal) => `Not taken: ${lowered(proposalTitle(proposal, unit))}. ${proposalSentence(proposal, unit)}`,
    ),
    ...advice.unanswered.map((one) => unansweredSentence(one, unit)),
  ];
}

const lowered = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
