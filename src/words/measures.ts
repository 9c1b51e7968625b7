/**
 * The measures in words: their names, where the tape goes, and what to say of a value that looks wrong. Bodies are
 * spoken of neutrally: it is always the tape, the unit or the entry that is in question.
 */
import type { MeasureName } from "../core/measures/measure";
import { checkMeasure, type MeasureNeed, type MeasureMisreading } from "../core/measures/registry";
import type { LengthUnit } from "../core/decisions/work";
import { MM_PER_CM, MM_PER_INCH, type Mm } from "../core/units";
import { formatLength } from "./terms/length";
import { upToDecimals } from "./terms/language";

export interface MeasureWords {
  /** Its name in the standard (ISO 8559-1), with a capital. */
  readonly name: string;
  /** The trade's or the household's name, where there is another. */
  readonly trade: string | null;
  /** As it stands inside a sentence. */
  readonly short: string;
  readonly where: string;
}

const WORDS: Readonly<Record<MeasureName, MeasureWords>> = {
  bustGirth: {
    name: "Bust girth",
    trade: "full bust",
    short: "bust",
    where:
      "Round the fullest part of the bust, level all the way, over the bra you will wear. Breathe out and let the tape lie, not pull.",
  },
  upperChestGirth: {
    name: "Upper chest girth",
    trade: "high bust",
    short: "upper chest",
    where: "Above the breast, high under the arms and up over the shoulder blades; arms down again before you read it.",
  },
  underBustGirth: {
    name: "Under-bust girth",
    trade: "band",
    short: "under-bust",
    where: "Level round the ribs just below the bust, where the band of a bra sits.",
  },
  waistGirth: {
    name: "Waist girth",
    trade: null,
    short: "waist",
    where:
      "Tie a thread round and bend to the side: it settles at the waist. Measure there, with a finger under the tape.",
  },
  hipGirth: {
    name: "Hip girth",
    trade: "seat",
    short: "hip",
    where: "Round the fullest part of the seat, level, feet together.",
  },
  height: {
    name: "Height",
    trade: null,
    short: "height",
    where:
      "Without shoes, back to a wall, a book held level on the head. Mark the wall under the book and measure to the floor.",
  },
  bustPointWidth: {
    name: "Bust point width",
    trade: "apex to apex",
    short: "bust point width",
    where: "Straight across from one bust point to the other, not dipping in between.",
  },
  sideNeckToBustPoint: {
    name: "Side neck point to bust point",
    trade: "bust depth",
    short: "side neck point to bust point",
    where: "From where the shoulder line meets the base of the neck, down to the bust point.",
  },
  backWaistLength: {
    name: "Back waist length",
    trade: "nape to waist",
    short: "back waist length",
    where: "From the bone that stands out at the nape when the head bends, down the spine to the waist thread.",
  },
  frontWaistLength: {
    name: "Front waist length",
    trade: "side neck to waist, over the bust",
    short: "front waist length",
    where: "From the side neck point over the bust point and on, hanging straight, to the waist thread.",
  },
  neckBaseGirth: {
    name: "Neck base girth",
    trade: null,
    short: "neck base",
    where: "Round the base of the neck, where a close necklace lies. Stand the tape on its edge to take the curve.",
  },
  shoulderLength: {
    name: "Shoulder length",
    trade: "shoulder seam",
    short: "shoulder length",
    where: "From the side neck point along the shoulder to the end of its bone.",
  },
  acrossBack: {
    name: "Across back width",
    trade: "cross back",
    short: "across back",
    where: "Across the shoulder blades from arm crease to arm crease, half way down the armhole, arms down.",
  },
  acrossFront: {
    name: "Across front width",
    trade: "cross front",
    short: "across front",
    where: "Above the bust from arm crease to arm crease, half way down the armhole, arms down.",
  },
};

export const measureWords = (name: MeasureName): MeasureWords => WORDS[name];

/** What each measure serves; true of every garment. */
const SERVES: Readonly<Record<MeasureName, string>> = {
  bustGirth: "For the size, the cup and the bust adjustment.",
  upperChestGirth: "For the size of the frame, and the cup.",
  underBustGirth: "Held against a midriff band. Else it only sharpens guesses and doubts.",
  waistGirth: "For your line at the waist.",
  hipGirth: "For your line at the hip.",
  height: "Alters nothing. It sharpens guesses; beside the pattern’s it may say to measure the back waist.",
  bustPointWidth: "For how far out the bust darts end.",
  sideNeckToBustPoint: "For how low the bust darts end, and whether length goes in above or below them.",
  backWaistLength: "For the length; beside the front waist, for a round or hollow back.",
  frontWaistLength: "For the length over the bust.",
  neckBaseGirth: "Held against the pattern’s neck; alters nothing.",
  shoulderLength: "For the width of the shoulder.",
  acrossBack: "For the width between the armholes at the back.",
  acrossFront: "For the width between the armholes in front.",
};

export const measureServes = (name: MeasureName): string => SERVES[name];

const NEEDS: Readonly<Record<MeasureNeed, string>> = {
  always: "Needed for any plan.",
  toHip: "Needed where the pattern reaches the hip.",
  forCup: "Not needed, but without it the cup cannot be told.",
  welcome: "Not needed: without it the pattern’s own proportion is taken.",
};

export const measureNeedWords = (need: MeasureNeed): string => NEEDS[need];

/** Why a value cannot be taken; null for one that can. */
export function measureRefusal(name: MeasureName, value: Mm, unit: LengthUnit): string | null {
  const verdict = checkMeasure(name, value);
  if (verdict.state !== "impossible") return null;
  const { least, most, misreadings } = verdict;
  const range = `from ${formatLength(least, unit)} to ${formatLength(most, unit)}`;
  return joined([
    `${WORDS[name].name} is taken ${range}, and this says ${formatLength(value, unit)}.`,
    misreadingSentence(misreadings, value, unit),
  ]);
}

/** What may have gone wrong in reading or typing a value, as a question; empty where nothing comes to mind. */
export function misreadingSentence(misreadings: readonly MeasureMisreading[], value: Mm, unit: LengthUnit): string {
  // Only the other unit can have been read by mistake.
  const other = unit === "cm" ? "centimetresAsInches" : "inchesAsCentimetres";
  const questions = misreadings
    .filter(({ kind }) => kind !== other)
    .map((misreading) => {
      switch (misreading.kind) {
        case "inchesAsCentimetres":
          return `are these inches (${plain(value / MM_PER_CM)} in is ${formatLength(misreading.meant, unit)})`;
        case "centimetresAsInches":
          return `are these centimetres (${plain(value / MM_PER_INCH)} cm is ${formatLength(misreading.meant, unit)})`;
        case "half":
          return `is it half of the measure (the whole would be ${formatLength(misreading.meant, unit)})`;
      }
    });
  const [first] = questions;
  if (first === undefined) return "";
  return `${first.charAt(0).toUpperCase()}${questions.join(", or ").slice(1)}?`;
}

const plain = (value: number): string => upToDecimals(value, 2);

const joined = (sentences: readonly string[]): string => sentences.filter((sentence) => sentence !== "").join(" ");
