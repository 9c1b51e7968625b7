/** What a piece may be, by what stands on it: words of the trade in English, and our own names. Only a proposal. */
import { isBasque } from "../pattern/pieceGroups";
import type { PieceName } from "../pattern/piece";

/** Said first wins: what is longer says more. */
const WORDS: readonly { readonly name: PieceName; readonly means: RegExp }[] = [
  { name: "sideFront", means: /\bside\s*front\b|\bfront\s*side\b/ },
  { name: "centreFront", means: /\b(?:centre|center|middle)\s*front\b|\bfront\s*(?:centre|center|middle)\b/ },
  { name: "frontBasque", means: /\bfront\s*(?:basque|peplum|skirt)\b|\b(?:basque|peplum|skirt)\s*front\b/ },
  { name: "backBasque", means: /\bback\s*(?:basque|peplum|skirt)\b|\b(?:basque|peplum|skirt)\s*back\b/ },
  { name: "frontBand", means: /\bfront\s*(?:midriff\s*)?(?:band|midriff)\b|\b(?:band|midriff)\s*front\b/ },
  { name: "backBand", means: /\bback\s*(?:midriff\s*)?(?:band|midriff)\b|\b(?:band|midriff)\s*back\b/ },
  { name: "strap", means: /\bstraps?\b/ },
  { name: "cup", means: /\bcups?\b/ },
  { name: "front", means: /\bfront\b/ },
  { name: "back", means: /\bback\b/ },
];

/** What the planner has no name for. */
const OTHERS =
  /\b(?:other|collar|facing|interfacing|lining|pocket|sleeve|cuff|yoke|belt|loop|placket|ruffle|flounce|bow|binding)\b/;

const BASQUES = WORDS.filter(({ name }) => isBasque(name));

const plain = (text: string): string =>
  text
    .replaceAll(/([a-z])([A-Z])/gu, "$1 $2")
    .replaceAll(/[^\p{L}]+/gu, " ")
    .toLowerCase();

/**
 * The piece that a text names, among those a plan has.
 *
 * @returns "other" for a piece that the planner has no name for; null where the text says nothing
 */
export function namedBy(text: string, among: readonly PieceName[]): PieceName | "other" | null {
  const words = plain(text);
  if (OTHERS.test(words)) return "other";
  // A basque is no front or back, also where the plan goes to the waist and takes none.
  if (BASQUES.some(({ name, means }) => !among.includes(name) && means.test(words))) return null;
  return WORDS.find(({ name, means }) => among.includes(name) && means.test(words))?.name ?? null;
}

/** The word itself, for a label. */
export const otherWord = (text: string): string => OTHERS.exec(plain(text))?.[0] ?? "";
