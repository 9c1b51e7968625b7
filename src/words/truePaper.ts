/** What is written on true-scale pieces and on the sheets that they are printed on. */
import { dayWords } from "./terms/days";
import type { Half } from "../core/decisions/alteration";
import type { ClothName } from "../core/decisions/dress";
import type { CutCount, SeamRun, TruePiece } from "../core/cutting/truePiece";
import type { LevelName, NestSource } from "../core/pattern/piece";
import type { Plan, PlannedLevel } from "../core/plan/plan";
import type { LengthUnit, Work } from "../core/decisions/work";
import { cupsWords, shareWords } from "./blend";
import { halfWords } from "./fits";
import { plannedTitle } from "./ledger";
import { formatAmount } from "./terms/length";
import { TOILE_ALLOWANCE } from "../core/cutting/usualAllowances";
import { allowanceAmount } from "./allowances";
import { capital, centreWords, clothWords, levelWords, pieceWords, seamWords } from "./terms/names";
import { percentWords } from "./terms/language";

/** Ticked at the cutting table: what else is cut by this piece is the garment's own affair. */
const TO_TICK = "Cut too: ☐ lining ☐ interfacing";

/** The same where it is known what else is cut by it; nothing where that is nothing. */
const alsoToTick = (also: readonly ClothName[]): readonly string[] =>
  also.length === 0 ? [] : [`Cut too: ${also.map((cloth) => `☐ ${clothWords(cloth)}`).join(" ")}`];

/** What else is cut by a piece, to tick: a strap is its own lining, and a toile is cut from nothing else. */
export const cutTooWords = ({ name, also }: Pick<TruePiece, "name" | "also">, isToile: boolean): readonly string[] =>
  name === "strap" || isToile ? [] : also === undefined ? [TO_TICK] : alsoToTick(also);

/** Beside rows of tacking, short: "tack, L". */
export const tackingWords = (half: Half): string => `tack: ${HALF_LETTERS[half]}`;
/** On pieces and strips: the wearer's own left and right. */
const HALF_LETTERS: Readonly<Record<Half, string>> = { left: "L", right: "R" };

type Named = Pick<TruePiece, "name" | "label" | "half" | "part">;

/** "FRONT", "BACK L, YOUR LEFT HALF", "FRONT · LINING". */
export const pieceTitle = (piece: Named): string => pieceNamed(piece).toUpperCase();

/** The same within a sentence: "back L, your left half", "front · lining". */
export const pieceNamed = ({ name, label, half, part }: Named): string =>
  namedHalf(partNamed(label ?? pieceWords(name), part?.cloth), half);

/** A part of a piece's name by what it is cut from, where that is not the main cloth: "front · lining". */
export const partNamed = (words: string, cloth: ClothName | undefined): string =>
  cloth === undefined || cloth === "main" ? words : `${words} · ${clothWords(cloth)}`;

/** "back L, your left half". */
export const namedHalf = (words: string, half: Half | null): string =>
  half === null ? words : `${words} ${HALF_LETTERS[half]}, your ${halfWords(half)}`;

/** How often, and how it lies on the cloth. */
export function cutWords({
  name,
  half,
  cut,
  part,
}: Pick<TruePiece, "name" | "half" | "part"> & { readonly cut: CutCount }): string {
  if (name === "strap" && part === undefined)
    return half === null ? "Cut 4: two layers for each strap" : "Cut 2: two layers of this strap";
  if (half !== null) {
    const layer = "this side up on the right side of the cloth, in one layer";
    return cut.onFold
      ? `Join to the ${otherHalf(half)} half along the ${centreWords(name)}, then cut ${cut.count}, ${layer}`
      : `Cut ${cut.count}, ${layer}`;
  }
  if (cut.onFold) return `Cut ${cut.count} on the fold`;
  if (cut.count === 1) return "Cut 1";
  return `Cut ${cut.count}, ${cut.count === 2 ? "one" : Math.floor(cut.count / 2)} turned over`;
}

const otherHalf = (half: Half): Half => (half === "left" ? "right" : "left");

/** Along the centre line that lies on the fold, or that the two printed halves are joined by. */
export const foldWords = ({ name, half }: Pick<TruePiece, "name" | "half">): string =>
  half === null
    ? `PLACE ON FOLD · ${centreWords(name)}`
    : `JOIN TO ${otherHalf(half).toUpperCase()} HALF · ${centreWords(name)}, not a fold`;

/** Along a seam: what it is and how it opens; shorter where there is no room for all of it. */
export function seamNameWords(
  { seam, opens, edges }: SeamRun,
  piece: Pick<TruePiece, "name" | "half" | "seams">,
): readonly string[] {
  const own = seam === "centre" ? `${centreWords(piece.name)} seam` : seamWords(seam, piece.name);
  if (piece.name === "strap") {
    if (seam !== "strap") return [`${seam === "neck" ? "neck" : "armhole"} side`];
    const tops = piece.seams.filter((run) => run.seam === "strap").flatMap((run) => run.edges.map(({ a }) => a.y));
    return [edges.every(({ a }) => a.y < (Math.min(...tops) + Math.max(...tops)) / 2) ? "back" : "front"];
  }
  // Its mark says it.
  if (seam === "strap") return [];
  if (opens === null) return [own];
  if (opens === "free") return [`${own}: left open at the closure`, own];
  const how = seam === "side" ? "left side opens" : opens === "buttons" ? "opens, buttons" : "opens, zip";
  // Between buttons there may be room for the least alone.
  return [`${own}: ${how}`, own, how];
}

/** Which way the bulk of a dart is pressed: its folded end is cut for that way alone. */
export const dartFoldWords = (down: boolean, piece: TruePiece["name"]): string =>
  down ? "fold down" : `fold to ${centreWords(piece)}`;

/** Along the centre back of a vent. */
export const VENT_FOLD_WORDS = "vent fold";

/** The pattern's own bust line: where the bust point was measured, it need not pass through that. */
export const levelLineWords = (level: LevelName, bent = false): string =>
  `${level === "bust" ? "bust line of the pattern" : `${levelWords(level)} line`}${bent ? ": straight with the dart shut" : ""}`;
export const GRAIN_WORDS = "straight grain";
export const BUST_POINT_WORDS = "bust point";
export const openingWords = (opens: SeamRun["opens"]): string => (opens === "zip" ? "zip ends" : "opening ends");
/** At the mark where the middle of a strap is sewn on; the order of sewing calls it by this. */
export const STRAP_WORDS = pieceWords("strap");
export const LENGTHEN_WORDS = "lengthen or shorten here";
export const GATHER_WORDS = "gather from mark to mark";

/** "waist 40 % from 12 to 14", short enough for a piece. */
function lineWords({ level, between, share }: PlannedLevel): string {
  const where = shareWords(between, share);
  if (where.startsWith("on the")) return `${levelWords(level)} ${where}`;
  return share < 0 || share > 1
    ? `${levelWords(level)} ${where}`
    : `${levelWords(level)} ${percentWords(share)} from ${between[0]} to ${between[1]}`;
}

/** The sizes it is made of, base size first. */
export function blendWords(plan: Plan, half: Half | null = null): string {
  const { baseSize } = plan.sizing;
  const cup = half === null ? cupsWords(plan) : plan[half].sizing.cup.label;
  const lines = plan.levels.filter(({ level }) => level !== "bust").map(lineWords);
  return [`Frame ${baseSize.label}${cup === null ? "" : `, cup ${cup}`}`, ...lines].join("; ");
}

/** What the wearer altered on a piece, and the bust alteration; each in a few words. Nothing for a piece as blended. */
export function alteredWords(
  plan: Plan,
  { name, half }: Pick<TruePiece, "name" | "half">,
  unit: LengthUnit,
): readonly string[] {
  return plan.ledger.flatMap((planned) => {
    if (!planned.outcome.ok || planned.what.kind === "blend") return [];
    if (planned.piece !== name && planned.outcome.value.after[name] === undefined) return [];
    const own = planned.half ?? (planned.what.kind === "alteration" ? planned.what.alteration.half : undefined);
    if (half !== null && own !== undefined && own !== half) return [];
    const title = plannedTitle(planned, unit);
    return planned.what.kind === "bust"
      ? [`${title}, ${formatAmount(Math.abs(planned.what.spread), unit)} on the half`]
      : [title];
  });
}

/** Of a printed size, where it comes from. */
const AS_PRINTED: Readonly<Record<NestSource, string>> = {
  standIn: "as drafted",
  fitted: "drafted, fitted to your tissue",
  own: "as in your file",
};

/** Where a toile has wide allowances. */
export const TOILE_SEAMS = "shoulder, sides, waist and centre seams";

/** The sizes that a piece of the pattern is made of. */
const sizesWords = (plan: Plan, { half, size }: TruePiece, nested: boolean): string =>
  size === null
    ? unbroken(blendWords(plan, half))
    : `${nested ? "All printed sizes" : `Printed size ${size}`}${plan.sizing.cup.label === null ? "" : `, cup ${plan.sizing.cup.label}`}, ${AS_PRINTED[plan.nest.source]}`;

/** What stands in the middle of a piece, the most needed first; the first line is its name. */
export function titleLines(
  work: Work,
  plan: Plan,
  piece: TruePiece,
  options: { readonly day: string; readonly allowances: boolean; readonly nested?: true; readonly toile?: true },
): readonly string[] {
  const altered = piece.size === null && piece.part === undefined ? alteredWords(plan, piece, work.unit) : [];
  return [
    pieceTitle(piece),
    `Piece ${piece.number[0]} of ${piece.number[1]}. ${cutWords(piece)}`,
    ...(piece.part === undefined ? [sizesWords(plan, piece, options.nested === true)] : []),
    options.toile === true
      ? `TOILE: ${allowanceAmount(TOILE_ALLOWANCE[work.unit], work.unit)} to let out at ${TOILE_SEAMS}`
      : options.allowances
        ? "Allowances included"
        : "NO seam allowances: add them",
    ...cutTooWords(piece, options.toile === true),
    ...(altered.length === 0 ? [] : [`Altered: ${altered.map(lowerStart).join("; ")}`]),
    // A day is not parted from its month at the end of a line.
    `${work.name}, ${dayWords(options.day).replaceAll(" ", "\u00a0")}${work.invented ? "; invented demo" : ""}`,
  ];
}

/** Lines are broken between the parts of a list, not within them. */
const unbroken = (list: string): string =>
  list
    .split("; ")
    .map((part) => part.replaceAll(" ", "\u00a0"))
    .join("; ");

const lowerStart = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** One size of several on one piece: "Front, size 12". */
export const nestPartTitle = (piece: Pick<TruePiece, "name">, label: string): string =>
  `${capital(pieceWords(piece.name))}, size ${label}`;
