/** Whether she gets in, how, and the zip it takes. */
import type { Closure } from "../decisions/pattern";
import { seamLength } from "../girth/seamLength";
import type { PieceSet } from "../pattern/pieceSet";
import type { Mm } from "../units";
import { isButtoned, type ClosureReading, type WayThrough, type ZipLength } from "./gettingIn";
import { aboveWaist, getThrough, tightestOf, type HangingLevel, type WayRead } from "./gettingThrough";
import { longestZip, nextLongerZip, openingClosedBy, zipNeeded } from "./zipLengths";

export interface ClosureAsked {
  /** The finished bodice, the wearer's left half first. */
  readonly bodice: readonly [PieceSet, PieceSet];
  readonly closure: Closure;
  readonly zip: "invisible" | "lapped";
  /** Below the waist, from the waist seam on; empty: nothing hangs there. `lining` where it is lined. */
  readonly skirt: readonly HangingLevel[];
  readonly lining: readonly HangingLevel[];
  /** How much further down than the opening the lining of the skirt is open. */
  readonly liningFree?: Mm;
  /** How far down along the lining the hips go; absent: as along the shell. */
  readonly liningHipDepth?: Mm;
  /** Each strap as it is made, the left one first; absent: as the pattern's. */
  readonly strapLengths?: readonly [Mm, Mm] | null;
  /** Its straps are tied: no closed edge goes over the head. */
  readonly isNeckUntied?: boolean;
  readonly body: {
    readonly bust: Mm;
    readonly hip: Mm | null;
    /** Round the shoulders with one arm raised, where it was measured. */
    readonly shoulderGirth: Mm | null;
    /** From the waist down to the hip; absent: as the basque has it. */
    readonly hipDepth?: Mm;
  };
}

export function readClosure(asked: ClosureAsked): ClosureReading {
  const { bodice, closure, zip, skirt, lining, body } = asked;
  const { liningFree = 0, liningHipDepth, strapLengths = null, isNeckUntied = false } = asked;
  const halves = bodice;
  const { ways, end, full } = getThrough({
    halves,
    closure,
    body,
    skirt,
    lining,
    liningFree,
    strapLengths,
    isNeckUntied,
    ...(liningHipDepth === undefined ? {} : { liningHipDepth }),
  });
  const above = upperPart(bodice, closure);
  const opening = above + Math.min(end, full);
  const [easier] = ways;
  const passes = easier === undefined || easier.longer === 0;
  const leastEnd = Math.min(...ways.map((way) => way.leastEnd));
  const leastOpening = ways.length === 0 ? opening : leastEnd === Infinity ? null : Math.max(above + leastEnd, 0);
  const isWhole = ways.length === 0;
  const closed = passes ? opening : leastOpening;
  const hasZip = !isButtoned(closure) && !isWhole && closed !== null && leastOpening !== null;
  const sold = (unit: "cm" | "in"): SoldZip =>
    hasZip ? soldFor({ closed, least: leastOpening, zip, unit }) : { zip: null, endsAt: null };
  const [cm, inch] = [sold("cm"), sold("in")];
  return {
    ways: ways.flatMap((way) => throughOf(way, above)),
    passes,
    opening,
    leastOpening,
    comesApart: isWhole,
    zip: { cm: cm.zip, in: inch.zip },
    endsAt: { cm: cm.endsAt, in: inch.endsAt },
    levelMarks: marksOf(bodice, closure, above, opening),
  };
}

interface SoldZip {
  readonly zip: ZipLength | null;
  readonly endsAt: Mm | null;
}

interface ZipSought {
  readonly closed: Mm;
  readonly least: Mm;
  readonly zip: "invisible" | "lapped";
  readonly unit: "cm" | "in";
}

/** The next longer one; where none is, the longest, if the opening may end as high as that asks. */
function soldFor({ closed, least, zip, unit }: ZipSought): SoldZip {
  const next = nextLongerZip(zipNeeded(closed, zip), unit);
  if (next !== null) return { zip: next, endsAt: null };
  const longest = longestZip(unit);
  const endsAt = openingClosedBy(longest, zip);
  return endsAt >= least ? { zip: longest, endsAt } : { zip: null, endsAt: null };
}

function throughOf({ way, passages, longer }: WayRead, above: Mm): readonly WayThrough[] {
  const tightest = tightestOf(passages);
  if (tightest === null) return [];
  const { girth, below, lets, of, needed, at } = tightest;
  return [
    {
      way,
      needed,
      tightest: { girth, lets, of, at, below: below ?? -above },
      passes: lets >= needed,
      longer: longer === Infinity ? null : longer,
    },
  ];
}

/** The zip's upper part, of a side on her left, of a centre back sewn of both halves. */
function upperPart([left, right]: readonly [PieceSet, PieceSet], { place }: Closure): Mm {
  return place === "side" ? aboveWaist(left, place) : (aboveWaist(left, place) + aboveWaist(right, place)) / 2;
}

function marksOf(
  [left, right]: readonly [PieceSet, PieceSet],
  { place }: Closure,
  above: Mm,
  opening: Mm,
): ClosureReading["levelMarks"] {
  const band = (half: PieceSet): Mm =>
    half.backBand === undefined ? 0 : seamLength(half.backBand, place === "side" ? "side" : "centre");
  const bandDepth = place === "side" ? band(left) : (band(left) + band(right)) / 2;
  return [
    { at: "topEdge", from: 0 },
    ...(bandDepth === 0 ? [] : [{ at: "underBust" as const, from: above - bandDepth }]),
    { at: "waist", from: above },
    ...(opening > above ? [{ at: "end" as const, from: opening }] : []),
  ];
}
