/**
 * What of the body has to go through what of the garment, and whether it does. Nothing here is knitted: no stretch is counted.
 * Cloth that is open further down still holds together where the opening ends: round any level it lets through its girth and
 * twice the way from there to the end. The least of that over every level counts, a waist far above a wide hem too.
 */
import type { Closure } from "../decisions/pattern";
import { roundLevels } from "../girth/roundLevels";
import { seamLength, seamLengthDownTo } from "../girth/seamLength";
import type { Piece } from "../pattern/piece";
import { isBasque } from "../pattern/pieceGroups";
import { piecesOf, type PieceSet } from "../pattern/pieceSet";
import { invariant } from "../result";
import { SOLVER_ACCURACY } from "../tolerance";
import type { Mm } from "../units";
import type { WayIn } from "./gettingIn";

/** Head girth that a closed neck must pass, mm (common practice, no source). */
const HEAD_GIRTH: Mm = 570;
/** Over the bust with the shoulders and one arm raised, mm (common practice, no source: 20 to 60). */
const OVERHEAD_OVER_BUST: Mm = 60;
/** Over the hips, mm (common practice, no source). */
export const STEPPING_OVER_HIPS: Mm = 20;

/** How wide cloth is all round so far below the waist seam, along the seam that opens; even between two of them. */
export interface HangingLevel {
  readonly below: Mm;
  readonly girth: Mm;
}

export interface GarmentOpened {
  /** The bodice, the wearer's left half first; with its basques, or with a skirt in their place. */
  readonly halves: readonly [PieceSet, PieceSet];
  readonly closure: Closure;
  readonly body: {
    readonly bust: Mm;
    readonly hip: Mm | null;
    /** Round the shoulders with one arm raised, where it was measured. */
    readonly shoulderGirth?: Mm | null;
    /** Of her body, below the waist; absent: as the basque has it. */
    readonly hipDepth?: Mm;
  };
  /** From the waist to the hem; empty: none. */
  readonly skirt: readonly HangingLevel[];
  readonly lining: readonly HangingLevel[];
  /** How much further down than the opening the lining of the skirt is open. */
  readonly liningFree: Mm;
  /** How far down along the lining the hips go; absent: as along the shell. */
  readonly liningHipDepth?: Mm;
  /** Each strap as it is made, the left one first; null: as the pattern's. */
  readonly strapLengths: readonly [Mm, Mm] | null;
  /** The neck edge is none that she has to get through: its straps are untied. */
  readonly isNeckUntied: boolean;
}

/** A loop of cloth that something has to go through. */
interface Loop {
  readonly girth: Mm;
  /** How far below the waist it meets the seam that opens; null: it stays closed however long the opening is. */
  readonly below: Mm | null;
  readonly at: "neck" | "waist" | "underBust" | null;
  readonly of: "shell" | "lining";
  /** How much further down than the opening it is open. */
  readonly free: Mm;
  /** Whether the hips go so far down. */
  readonly isToHips: boolean;
}

/** A loop as the opening leaves it. */
export interface Passage extends Loop {
  readonly needed: Mm;
  readonly lets: Mm;
}

/** One way in. */
export interface WayRead {
  readonly way: WayIn;
  readonly passages: readonly Passage[];
  /** How far below the waist the opening has to end at the least; Infinity: none is long enough. */
  readonly leastEnd: Mm;
  /** How much further down that is than it ends; Infinity: none is long enough. */
  readonly longer: Mm;
}

export interface GettingThrough {
  /** The easier one first; none where the garment comes apart all the way. */
  readonly ways: readonly WayRead[];
  /** Below the waist: where the opening ends, and where the garment does. */
  readonly end: Mm;
  readonly full: Mm;
}

export function getThrough(garment: GarmentOpened): GettingThrough {
  const { halves, closure, body, skirt, strapLengths, isNeckUntied } = garment;
  const full = skirt.at(-1)?.below ?? lengthBelowWaist(halves, closure);
  const end = Math.max(closure.belowWaist, 0);
  const opensWhole = end >= full;
  if (opensWhole && closure.place === "centreBack") return { ways: [], end, full };
  const hipLine = skirt.length > 0 ? (body.hipDepth ?? full) : hipLineBelow(halves, closure);
  const round = opensWhole ? [] : loopsRound(garment, end, hipLine);
  const necks = isNeckUntied ? [] : [neckOf(halves, closure, strapLengths)];
  const hips = body.hip === null ? null : body.hip + STEPPING_OVER_HIPS;
  const overhead = Math.max(body.bust + OVERHEAD_OVER_BUST, body.shoulderGirth ?? 0);
  const read = (way: WayIn, passages: readonly Passage[]) => wayThrough(way, end, full, passages);
  const needing = (loops: readonly Loop[], needed: Mm): readonly Passage[] =>
    loops.map((loop) => passageOf(loop, needed, end));
  const ways: readonly WayRead[] = [
    ...(hips === null
      ? []
      : [read("steppingIn", needing([...necks, ...round.filter(({ isToHips }) => isToHips)], hips))]),
    read("overhead", [...needing(necks, HEAD_GIRTH), ...needing(round, overhead)]),
  ];
  const easiest = ways.reduce((a, b) => (isEasier(b, a) ? b : a));
  return { ways: [easiest, ...ways.filter((way) => way !== easiest)], end, full };
}

function loopsRound(
  { halves, closure, skirt, lining, liningFree, liningHipDepth }: GarmentOpened,
  end: Mm,
  hipLine: Mm,
): readonly Loop[] {
  const liningHip = liningHipDepth ?? hipLine;
  const hanging = (levels: readonly HangingLevel[], of: Loop["of"], free: Mm, hip: Mm): readonly Loop[] =>
    withLevelsAt(levels, [end + free, hip]).map((level) => ({
      ...level,
      at: null,
      of,
      free,
      isToHips: level.below <= hip + SOLVER_ACCURACY,
    }));
  return [
    ...roundLevels(halves, closure.place, end).map(({ girth, below, seam }): Loop => ({
      girth,
      below,
      at: seam,
      of: "shell",
      free: 0,
      isToHips: below <= hipLine + SOLVER_ACCURACY,
    })),
    ...hanging(skirt, "shell", 0, hipLine),
    ...hanging(lining, "lining", liningFree, liningHip),
  ];
}

/** The same levels, and one just at each of some places between them. */
function withLevelsAt(levels: readonly HangingLevel[], places: readonly Mm[]): readonly HangingLevel[] {
  return levels.flatMap((level, at) => {
    const next = levels[at + 1];
    if (next === undefined) return [level];
    const within = places
      .filter((place) => place > level.below && place < next.below)
      .map((below) => ({
        below,
        girth: level.girth + ((next.girth - level.girth) * (below - level.below)) / (next.below - level.below),
      }));
    return [level, ...within];
  });
}

const passageOf = ({ girth, below, at, of, free, isToHips }: Loop, needed: Mm, end: Mm): Passage => ({
  girth,
  below,
  at,
  of,
  free,
  isToHips,
  needed,
  lets: girth + (below === null ? 0 : 2 * Math.max(0, end + free - below)),
});

function wayThrough(way: WayIn, end: Mm, full: Mm, passages: readonly Passage[]): WayRead {
  const leastEnd = leastEndOf(passages, end, full);
  return { way, passages, leastEnd, longer: Math.max(leastEnd - end, 0) };
}

/** How much further down the opening would have to end for some of what has to be passed; Infinity: none is long enough. */
export const longerBy = (passages: readonly Passage[], { end, full }: { readonly end: Mm; readonly full: Mm }): Mm =>
  Math.max(leastEndOf(passages, end, full) - end, 0);

/** Open to the hem it has no level left. Infinity where something is too tight that stays closed all the same. */
const leastEndOf = (passages: readonly Passage[], end: Mm, full: Mm): Mm =>
  passages.some(({ girth, below, needed }) => below === null && girth < needed)
    ? Infinity
    : Math.min(leastEndOfOpen(passages), Math.max(full, end));

/**
 * How far down the opening has to end for everything to go through; −Infinity where nothing is too tight. A level that is too
 * tight needs half of what it lacks below itself.
 */
function leastEndOfOpen(passages: readonly Passage[]): Mm {
  const leastOf = (of: Loop["of"]): Mm => {
    const lacking: { readonly below: Mm; readonly free: Mm; readonly lack: number }[] = [];
    for (const passage of passages) {
      const { girth, below, needed, free } = passage;
      if (below !== null && passage.of === of) lacking.push({ below, free, lack: needed - girth });
    }
    lacking.sort((a, b) => a.below - b.below);
    let least: Mm = -Infinity;
    for (let at = 0; at < lacking.length; at += 1) {
      const { below, free, lack } = invariant(lacking[at], "level");
      if (lack > 0) least = Math.max(least, below + lack / 2 - free);
      // Between a level that lacks and one that does not, the opening goes down to where nothing is lacking any more.
      const next = lacking[at + 1];
      if (next !== undefined && lack * next.lack <= 0 && lack !== next.lack)
        least = Math.max(least, below + (next.below - below) * (lack / (lack - next.lack)) - free);
    }
    return least;
  };
  return Math.max(leastOf("shell"), leastOf("lining"));
}

/** The way that needs less of a longer opening; of two alike, the one with more room. */
const isEasier = (a: WayRead, b: WayRead): boolean =>
  a.longer === b.longer ? roomOf(a.passages) > roomOf(b.passages) : a.longer < b.longer;

const roomOf = (passages: readonly Passage[]): Mm => Math.min(...passages.map(({ lets, needed }) => lets - needed));

export const tightestOf = <P extends Passage>(passages: readonly P[]): P | null =>
  passages.length === 0 ? null : passages.reduce((a, b) => (b.lets - b.needed < a.lets - a.needed ? b : a));

/** The neck edge, over straps too: a strap's inner edge goes from the neck edge in front to the one behind. */
function neckOf(
  halves: readonly [PieceSet, PieceSet],
  { place }: Closure,
  strapLengths: GarmentOpened["strapLengths"],
): Loop {
  const along = (piece: Piece, half: number): Mm =>
    (piece.name === "strap" ? strapLengths?.[half] : undefined) ?? seamLength(piece, "neck");
  const girth = sum(halves.flatMap((half, at) => piecesOf(half).map((piece) => along(piece, at))));
  const below = place === "side" ? null : -sum(halves.map((half) => aboveWaist(half, place) / 2));
  return { girth, below, at: "neck", of: "shell", free: 0, isToHips: true };
}

/** The seam that opens from its upper end to the waist: the centre back, or the side from the underarm. */
export const aboveWaist = ({ back, backBand }: PieceSet, place: Closure["place"]): Mm =>
  sum(
    [back, backBand].map((piece) =>
      piece === undefined ? 0 : seamLength(piece, place === "side" ? "side" : "centre"),
    ),
  );

/** From the waist to the hem along the seam that opens; 0 of a garment that ends at the waist. */
const lengthBelowWaist = (halves: readonly [PieceSet, PieceSet], { place }: Closure): Mm =>
  Math.max(
    ...halves.flatMap((half) =>
      piecesOf(half)
        .filter(({ name }) => (place === "side" ? isBasque(name) : name === "backBasque"))
        .map((piece) => seamLength(piece, place === "side" ? "side" : "centre")),
    ),
    0,
  );

/** How far below the waist the garment's own hip line lies, along the seam that opens; on halves that differ the lower one. */
const hipLineBelow = (halves: readonly [PieceSet, PieceSet], { place }: Closure): Mm =>
  Math.max(
    ...halves.map(({ backBasque }) =>
      backBasque === undefined
        ? 0
        : place === "side"
          ? seamLengthDownTo(backBasque, "side", "sideHip")
          : seamLengthDownTo(backBasque, "centre", "centreHip"),
    ),
  );

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
