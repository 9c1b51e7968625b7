/** What two versions of a work hold differently, in a dressmaker's words, as it stands inside a sentence. */
import type { Alteration, AlterationKind } from "../core/decisions/alteration";
import type { Collision, OneDecision } from "../core/decisions/collision";
import type { DressPart } from "../core/decisions/dress";
import type { Trial } from "../core/decisions/trial";
import type { Picks } from "../core/decisions/decided";
import { FIT_WORDS } from "./alterations/index";
import { columnWords } from "./chart";
import { halfWords } from "./fits";
import { measureWords } from "./measures";
import { dartRefWords, seamWords } from "./terms/names";

const DECISIONS: Readonly<Record<OneDecision, string>> = {
  name: "the name",
  wearer: "the wearer’s name",
  invented: "whether it is invented",
  begunFrom: "the base it was begun from",
  unit: "the unit",
  paper: "the paper",
  age: "the age",
  bustRadius: "the radius of the bust",
  sheetFormat: "the paper for true-scale pieces",
  printerMargin: "the printer’s white edge",
};

const PICKS: Readonly<Record<keyof Picks, string>> = {
  baseSize: "the frame picked",
  cup: "the cup picked",
  halfCups: "the cup picked for one half",
  waist: "the size picked at the waist",
  hip: "the size picked at the hip",
  bustAlteration: "the bust adjustment",
};

const PATTERN = {
  patternName: "the pattern’s name",
  draftedDifference: "the cup that the chart is drafted for",
  length: "the pattern’s length",
  closure: "the closure",
  style: "the style",
  strap: "the straps",
  tissue: "what was measured on the tissue",
  own: "the pieces read from a file",
  pattern: "the pattern",
  sizes: "the chart’s list of sizes",
  cups: "the chart’s list of cup versions",
  tapes: "the list of times measured",
  alterations: "the order of the alterations",
} as const;

const DRESS: Readonly<Record<DressPart, string>> = {
  measures: "what was measured for the dress",
  skirt: "the skirt",
  lining: "the lining",
  neckline: "the neckline",
  straps: "the straps of the dress",
  edges: "how the edges are finished",
  zip: "the zip",
  opacity: "how far the cloth shows through",
  under: "what goes under the cloth",
  cloths: "the cloths",
};

const DART_PARTS: Readonly<Record<Exclude<AlterationKind, "fit">, string>> = {
  dartEnd: "its end",
  dartMouth: "its mouth",
  dartPlace: "its place",
  dartPivot: "moved to another seam",
  dartSplit: "split",
  dartGather: "gathered",
  dartLegs: "its legs",
  dartSeam: "made a seam",
};

/** "the waist", "the chart’s size 12, its waist", "the alteration: sway back". */
export function collisionWords(collision: Collision): string {
  switch (collision.of) {
    case "dress":
      return DRESS[collision.part];
    case "taken":
      return `the day of ${setWords(collision.set)}`;
    case "measure": {
      const measure = `the ${measureWords(collision.measure).short}`;
      return collision.set === 0 ? measure : `${measure} of ${setWords(collision.set)}`;
    }
    case "trusted":
      return `whether the ${measureWords(collision.measure).short} is right`;
    case "patternEase":
      return `the pattern’s ease at the ${collision.level}`;
    case "easeWanted":
      return `the ease you want at the ${collision.level}`;
    case "printedLength": {
      const length = `the pattern’s ${measureWords(collision.measure).short}`;
      return collision.size === null ? length : `${length} in size ${collision.size}`;
    }
    case "size":
      return lineWords("size", collision.label, collision.column === null ? null : columnWords(collision.column));
    case "cup":
      return lineWords(
        "cup version",
        collision.label,
        collision.column === "label" ? "name" : collision.column === null ? null : "difference",
      );
    case "pick":
      return PICKS[collision.pick];
    case "alteration":
      return `the alteration: ${alterationWords(collision.alteration)}`;
    case "allowance":
      return `the allowance of the ${collision.seam === "centre" ? "centre seams" : seamWords(collision.seam, "front")}`;
    case "seen":
      return collision.dart === null
        ? "what is seen of the darts"
        : `what is seen of the ${dartRefWords(collision.dart)}, ${halfWords(collision.dart.half)}`;
    case "trial":
      return trialWords(collision.trial, collision.part);
    case "observation":
      return `what was seen in ${oneTrialWords(collision.trial)}`;
    case "unread":
      return "an entry that cannot be read yet";
    case "name":
    case "wearer":
    case "invented":
    case "begunFrom":
    case "unit":
    case "paper":
    case "age":
    case "bustRadius":
    case "sheetFormat":
    case "printerMargin":
      return DECISIONS[collision.of];
    case "patternName":
    case "draftedDifference":
    case "length":
    case "closure":
    case "style":
    case "strap":
    case "tissue":
    case "own":
    case "pattern":
    case "sizes":
    case "cups":
    case "tapes":
    case "alterations":
      return PATTERN[collision.of];
  }
}

const TRIAL_PARTS: Readonly<Record<keyof Trial, string>> = {
  id: "what is kept",
  day: "the day",
  sewn: "what was sewn",
  cloth: "the cloth",
  pinnedBy: "who pinned it",
  bra: "the bra",
  shoes: "the shoes",
  measured: "what the toile measures",
  observations: "what was seen",
  checks: "how the toile hangs",
  taken: "the answers taken",
  verdict: "the verdict",
  because: "the reason",
  base: "whether it is kept as the base",
};

function trialWords(trial: Trial | null, part: keyof Trial | null): string {
  if (trial === null) return "the list of trials";
  return part === null ? oneTrialWords(trial) : `${TRIAL_PARTS[part]} of ${oneTrialWords(trial)}`;
}

const oneTrialWords = ({ day }: Trial): string => (day === undefined ? "a trial of no day" : `the trial of ${day}`);

/** Sets stand newest first. */
const setWords = (set: number): string => (set === 0 ? "the newest measuring" : `measuring ${set + 1} of those kept`);

function lineWords(kind: string, label: string, column: string | null): string {
  const line = label.trim() === "" ? `a ${kind} of the chart that has no name` : `the chart’s ${kind} ${label}`;
  return column === null ? line : `${line}, its ${column}`;
}

function alterationWords(alteration: Alteration): string {
  if (alteration.kind !== "fit") return `${dartRefWords(alteration.dart)}, ${DART_PARTS[alteration.kind]}`;
  const { name } = FIT_WORDS[alteration.fit];
  const fit = name.charAt(0).toLowerCase() + name.slice(1);
  return alteration.half === undefined ? fit : `${fit}, ${halfWords(alteration.half)}`;
}
