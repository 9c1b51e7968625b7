/** Numbers, lengths and transforms as SVG writes them. */
import { MM_PER_CM, MM_PER_INCH } from "../core/units";
import { after, IDENTITY, moving, scaling, turning, type Affine } from "./affine";

const NUMBER = String.raw`[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?`;

/** mm. A px of the web is a 96th of an inch by definition; a point a 72nd. */
export const MM_PER_PX = MM_PER_INCH / 96;

/** Lengths that are real: mm in each. */
const REAL: Readonly<Record<string, number>> = {
  mm: 1,
  cm: MM_PER_CM,
  q: 0.25,
  in: MM_PER_INCH,
  pt: MM_PER_INCH / 72,
  pc: MM_PER_INCH / 6,
};

/** px to an em where nothing else is said. */
const EM = 16;

const LENGTH = new RegExp(String.raw`^(${NUMBER})(mm|cm|q|in|pt|pc|px|rem|em|ex|%)?$`, "iu");
const LONGEST = 64;

interface Length {
  readonly value: number;
  readonly unit: string;
}

function lengthIn(text: string | undefined): Length | null {
  const said = text?.trim() ?? "";
  if (said === "" || said.length > LONGEST) return null;
  const [, value, unit = ""] = LENGTH.exec(said) ?? [];
  return value === undefined ? null : { value: Number(value), unit: unit.toLowerCase() };
}

/** mm, where it is said in a unit of the real world; else null. */
export function realLength(text: string | undefined): number | null {
  const length = lengthIn(text);
  const mm = length === null ? undefined : REAL[length.unit];
  return length === null || mm === undefined || !(length.value > 0) ? null : length.value * mm;
}

/**
 * In px, which are the units of a drawing wherever no viewBox says otherwise.
 *
 * @param whole what a hundred per cent are
 */
export function pxOf(text: string | undefined, whole: number, absent: number): number {
  const length = lengthIn(text);
  if (length === null) return absent;
  const { value, unit } = length;
  const mm = REAL[unit];
  if (mm !== undefined) return (value * mm) / MM_PER_PX;
  if (unit === "%") return (value / 100) * whole;
  if (unit === "em" || unit === "rem") return value * EM;
  return unit === "ex" ? (value * EM) / 2 : value;
}

/** All numbers of a list; those behind the first that is none are left. */
export function numbersIn(text: string): number[] {
  const number = new RegExp(String.raw`[\s,]*(${NUMBER})`, "uy");
  const found: number[] = [];
  for (let next = number.exec(text); next !== null; next = number.exec(text)) found.push(Number(next[1]));
  return found;
}

const STEP = /[\s,]*([a-zA-Z]+)\s*\(([^()]*)\)/uy;

/** @returns the map; of a list that cannot be read, nothing, as browsers do */
export function transformOf(text: string | undefined, spend: (steps: number) => void): Affine {
  if (text === undefined) return IDENTITY;
  spend(text.length);
  const step = new RegExp(STEP);
  let map = IDENTITY;
  let at = 0;
  for (let next = step.exec(text); next !== null; next = step.exec(text)) {
    const one = stepOf(next[1] ?? "", numbersIn(next[2] ?? ""));
    if (one === null) return IDENTITY;
    map = after(map, one);
    at = step.lastIndex;
  }
  return /[^\s,;]/u.test(text.slice(at)) ? IDENTITY : map;
}

function stepOf(name: string, [p, q, r, s, t, u]: readonly number[]): Affine | null {
  if (p === undefined) return null;
  switch (name) {
    case "matrix":
      return q === undefined || r === undefined || s === undefined || t === undefined || u === undefined
        ? null
        : { a: p, b: q, c: r, d: s, e: t, f: u };
    case "translate":
      return moving(p, q ?? 0);
    case "scale":
      return scaling(p, q ?? p);
    case "rotate":
      return q === undefined || r === undefined ? turning(p) : after(after(moving(q, r), turning(p)), moving(-q, -r));
    case "skewX":
      return { ...IDENTITY, c: Math.tan((p * Math.PI) / 180) };
    case "skewY":
      return { ...IDENTITY, b: Math.tan((p * Math.PI) / 180) };
    default:
      return null;
  }
}
