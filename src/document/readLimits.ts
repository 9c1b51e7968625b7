/** What is looked at before a file of unknown origin is parsed, so that none can keep the page or the command line busy. */
import { fail, ok, type Result } from "../core/result";

export type TooMuch =
  | { readonly code: "file/too-large"; readonly most: number }
  | { readonly code: "file/too-deep"; readonly most: number };

/**
 * Bytes. A work as full as it can be, with a thousand fields of which each holds a whole page that could not be read, would
 * be larger; but the fullest that is ever met has a few hundred kilobytes, and a few megabytes are parsed in no time.
 */
export const LARGEST_WORK = 8_000_000;
/** Bytes. Hundreds of works, each with a long ledger; what a browser keeps for a page is seldom more. */
export const LARGEST_WORKS = 64_000_000;
/** Lists and records within one another. A file of works has eight; a reader of JSON can be brought down by many thousands. */
export const DEEPEST = 40;

const QUOTE = 0x22;
const BACKSLASH = 0x5c;
const OPENING = new Set([0x5b, 0x7b]);
const CLOSING = new Set([0x5d, 0x7d]);

/**
 * One pass over a text, before it is parsed.
 *
 * @param most bytes, as UTF-8
 */
export function checkText(text: string, most: number = LARGEST_WORK): Result<null, TooMuch> {
  // A character is a byte at least.
  if (text.length > most) return fail({ code: "file/too-large", most });
  let bytes = 0;
  let depth = 0;
  let isInString = false;
  for (let at = 0; at < text.length; at += 1) {
    const unit = text.charCodeAt(at);
    bytes += bytesOf(unit);
    if (bytes > most) return fail({ code: "file/too-large", most });
    if (isInString) {
      if (unit === QUOTE) isInString = false;
      else if (unit === BACKSLASH) {
        // What is escaped ends no string.
        at += 1;
        bytes += 1;
      }
    } else if (unit === QUOTE) isInString = true;
    else if (OPENING.has(unit)) {
      depth += 1;
      if (depth > DEEPEST) return fail({ code: "file/too-deep", most: DEEPEST });
    } else if (CLOSING.has(unit)) depth -= 1;
  }
  return ok(null);
}

/** Of one unit of UTF-16: half of a pair is two of its four. */
function bytesOf(unit: number): number {
  if (unit < 0x80) return 1;
  if (unit < 0x800) return 2;
  return unit >= 0xd8_00 && unit <= 0xdf_ff ? 2 : 3;
}

/** More values than any work can hold within its limits, twice over: with more, the schema would be busy for seconds. */
const MOST_VALUES = 80_000;
/** Of all trials of a work together, of which each was sewn by as much as a work holds. */
const MOST_OF_TRIALS = 240_000;

/** Whether a work holds more values than any, or its trials do. */
export function holdsTooMuch(data: unknown): boolean {
  if (typeof data !== "object" || data === null || !("trials" in data)) return isMoreThan(MOST_VALUES, data);
  const { trials, ...others } = data;
  return isMoreThan(MOST_VALUES, others) || isMoreThan(MOST_OF_TRIALS, trials);
}

/** Whether one part of a work does. */
export const partHoldsTooMuch = (key: string, part: unknown): boolean =>
  isMoreThan(key === "trials" ? MOST_OF_TRIALS : MOST_VALUES, part);

/** Looks at no more of them. */
function isMoreThan(most: number, data: unknown): boolean {
  let left = most;
  // In a store a value can hold itself.
  const counted = new Set<object>();
  const count = (value: unknown, depth: number): boolean => {
    left -= 1;
    if (left < 0) return true;
    if (typeof value !== "object" || value === null || depth > DEEPEST || counted.has(value)) return false;
    counted.add(value);
    const parts: readonly unknown[] = Array.isArray(value) ? value : Object.values(value);
    return parts.length > left || parts.some((part) => count(part, depth + 1));
  };
  return count(data, 0);
}
