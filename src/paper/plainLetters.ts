/** Writing for a typeface that lacks some signs: each of them becomes the nearest plain letters, never a wrong sign. */

/** Whether the code point (no surrogate) can be written. */
export type CanWrite = (codePoint: number) => boolean;

/** What stands for a sign that does not fall apart into a letter and its marks. */
const NEAR: Readonly<Record<string, string>> = {
  "“": '"',
  "”": '"',
  "„": '"',
  "«": '"',
  "»": '"',
  "″": '"',
  "‘": "'",
  "’": "'",
  "‚": "'",
  "′": "'",
  "–": "-",
  "—": "-",
  "‐": "-",
  "‑": "-",
  "−": "-",
  "×": "x",
  "÷": "/",
  "⁄": "/",
  "±": "+/-",
  "·": ".",
  "•": "*",
  "☐": "[ ]",
  "°": " deg",
  "→": "->",
  "←": "<-",
  "≤": "<=",
  "≥": ">=",
  "€": "EUR",
  "£": "GBP",
  "©": "(c)",
  "®": "(R)",
  ł: "l",
  Ł: "L",
  ø: "o",
  Ø: "O",
  đ: "d",
  Đ: "D",
  ð: "d",
  Ð: "D",
  þ: "th",
  Þ: "Th",
  ı: "i",
  ß: "ss",
  ẞ: "SS",
  æ: "ae",
  Æ: "AE",
  œ: "oe",
  Œ: "OE",
};

/**
 * Cyrillic small letters in Latin ones.
 *
 * @source ICAO Doc 9303, part 3, transliteration of Cyrillic characters; from memory
 */
const CYRILLIC: Readonly<Record<string, string>> = {
  а: "a",
  б: "b",
  в: "v",
  г: "g",
  ґ: "g",
  д: "d",
  е: "e",
  є: "ie",
  ё: "e",
  ж: "zh",
  з: "z",
  и: "i",
  і: "i",
  ї: "i",
  й: "i",
  к: "k",
  л: "l",
  м: "m",
  н: "n",
  о: "o",
  п: "p",
  р: "r",
  с: "s",
  т: "t",
  у: "u",
  ф: "f",
  х: "kh",
  ц: "ts",
  ч: "ch",
  ш: "sh",
  щ: "shch",
  ъ: "ie",
  ы: "y",
  ь: "",
  э: "e",
  ю: "iu",
  я: "ia",
  ў: "u",
};

/**
 * Greek small letters in Latin ones.
 *
 * @source ISO 843:1997, transliteration without marks; from memory
 */
const GREEK: Readonly<Record<string, string>> = {
  α: "a",
  β: "v",
  γ: "g",
  δ: "d",
  ε: "e",
  ζ: "z",
  η: "i",
  θ: "th",
  ι: "i",
  κ: "k",
  λ: "l",
  μ: "m",
  ν: "n",
  ξ: "x",
  ο: "o",
  π: "p",
  ρ: "r",
  σ: "s",
  ς: "s",
  τ: "t",
  υ: "y",
  φ: "f",
  χ: "ch",
  ψ: "ps",
  ω: "o",
};

/** Stands for a letter that nothing can be written for: an empty box, which nobody takes for the letter; else a question mark. */
const UNKNOWN = ["□", "?"];

/** Joiners, selectors and other signs without a shape of their own, and marks that found no letter to stand on. */
const SHAPELESS = /[\p{Cf}\p{M}]/u;

/**
 * The text with every sign that cannot be written replaced: by its letter without marks, by a near sign, or by an empty box ("?" where that cannot be written either).
 * Fractions fall apart too, with a space after the whole number ("34½" is "34 1/2"). Line breaks, tabs and other spaces
 * become plain spaces, what has no shape is left out.
 */
export function plainLetters(text: string, canWrite: CanWrite): string {
  let written = "";
  for (const sign of text.normalize("NFC").replaceAll(/[\s\p{Cc}]/gu, " ")) {
    if (SHAPELESS.test(sign)) continue;
    const plain = plainSign(sign, canWrite);
    const isFraction = plain !== sign && /\p{No}/u.test(sign) && plain.includes("/");
    written += isFraction && /\d$/.test(written) ? ` ${plain}` : plain;
  }
  return written;
}

function plainSign(sign: string, canWrite: CanWrite): string {
  const canAll = (letters: string): boolean =>
    Array.from(letters).every((letter) => canWrite(letter.codePointAt(0) ?? 0));
  if (canAll(sign)) return sign;
  const near = NEAR[sign] ?? latinOf(sign);
  if (near !== undefined && canAll(near)) return near;
  const apart = sign.normalize("NFKD").replaceAll(/\p{M}/gu, "");
  if (apart !== sign && apart !== "") return Array.from(apart, (part) => plainSign(part, canWrite)).join("");
  return UNKNOWN.find(canAll) ?? "";
}

/** A Cyrillic or Greek letter in Latin ones, with a capital where it has one. */
function latinOf(sign: string): string | undefined {
  const small = sign.toLowerCase();
  const latin = CYRILLIC[small] ?? GREEK[small];
  if (latin === undefined || small === sign) return latin;
  return latin.charAt(0).toUpperCase() + latin.slice(1);
}
