/**
 * The garment can be got on and off: what stays closed when it is open passes over what of the body must go through. Nothing
 * here is knitted: no stretch is counted. Cloth that is open further down still holds together where the opening ends: round
 * any level it lets through its girth and twice the way from there to the end. The least of that over every level counts, a
 * waist far above a wide hem too.
 */
import type { Closure } from "../decisions/pattern";
import { roundLevels, type RoundLevel } from "../girth/roundLevels";
import { seamLength, seamLengthDownTo } from "../girth/seamLength";
import type { LevelName, PieceName } from "../pattern/piece";
import { isBasque } from "../pattern/pieceGroups";
import { piecesOf, type PieceSet } from "../pattern/pieceSet";
import { remember } from "../remember";
import { SOLVER_ACCURACY } from "../tolerance";
import type { Mm } from "../units";
import type { WayIn } from "../opening/gettingIn";
import type { CheckResult } from "./check";
import type { Check } from "./context";

/** Head girth that a closed neck must pass (common practice, no source). */
const HEAD_GIRTH: Mm = 570;
/** Over the bust with the shoulders and one arm raised (common practice, no source: 20 to 60). */
const OVERHEAD_OVER_BUST: Mm = 60;
/** Over the hips (common practice, no source). */
const STEPPING_OVER_HIPS: Mm = 20;

/** A loop of cloth that something must go through. */
interface Loop {
  readonly girth: Mm;
  /** How far below the waist it meets the seam that opens; null: it stays closed however long the opening is. */
  readonly below: Mm | null;
  readonly needed: Mm;
  readonly level: LevelName;
  readonly pieces: readonly PieceName[];
}

/** A loop as the opening leaves it. */
interface Passage extends Loop {
  readonly lets: Mm;
}

/** It is of the whole garment: asked for the second half it is known. */
const passing = remember(["left", "right", "closure", "bust", "hip"], openingOf);

export const openingPasses: Check = ({ halves: [left, right], closure, body: { bust, hip } }) =>
  passing({ left, right, closure, bust, hip });

interface Opening {
  readonly left: PieceSet;
  readonly right: PieceSet;
  readonly closure: Closure;
  readonly bust: Mm;
  readonly hip: Mm | null;
}

function openingOf({ left, right, closure, ...body }: Opening): readonly CheckResult[] {
  const halves = [left, right] as const;
  const full = lengthBelowWaist(halves, closure);
  const end = Math.max(closure.belowWaist, 0);
  const opensWhole = end >= full;
  if (opensWhole && closure.place === "centreBack") return [];
  const levels = opensWhole ? [] : roundLevels(halves, closure.place, end);
  const hipLine = hipLineBelow(halves, closure);
  const hips = body.hip === null ? null : body.hip + STEPPING_OVER_HIPS;
  const overhead = body.bust + OVERHEAD_OVER_BUST;
  const neck = neckOf(halves, closure);
  const ways: readonly Way[] = [
    ...(hips === null
      ? []
      : [
          wayThrough("steppingIn", end, full, [
            { ...neck, needed: hips },
            // The hips go as far as their own line.
            ...levels.filter(({ below }) => below <= hipLine + SOLVER_ACCURACY).map((one) => loopOf(one, hips)),
          ]),
        ]),
    wayThrough("overhead", end, full, [{ ...neck, needed: HEAD_GIRTH }, ...levels.map((one) => loopOf(one, overhead))]),
  ];
  const { way, passages } = ways.reduce((a, b) => (isEasier(b, a) ? b : a));
  const isApart = closure.place === "side";
  return [passages.filter(({ below }) => below === null), passages.filter(({ below }) => below !== null)]
    .filter((some, at) => some.length > 0 && (at === 1 || isApart))
    .map((some) => resultOf(way, some, end, full));
}

interface Way {
  readonly way: WayIn;
  readonly passages: readonly Passage[];
  readonly longer: Mm;
}

function wayThrough(way: WayIn, end: Mm, full: Mm, loops: readonly Loop[]): Way {
  const passages = loops.map((loop) => ({
    ...loop,
    lets: loop.girth + (loop.below === null ? 0 : 2 * Math.max(0, end - loop.below)),
  }));
  return { way, passages, longer: longerBy(passages, end, full) };
}

/**
 * How much further down the opening would have to end. A level that is too tight needs half of what it lacks below itself;
 * one open to the hem has no level left. Infinity where something is too tight that stays closed all the same.
 */
function longerBy(passages: readonly Passage[], end: Mm, full: Mm): Mm {
  if (passages.some(({ girth, below, needed }) => below === null && girth < needed)) return Infinity;
  const lacking = passages
    .flatMap(({ girth, below, needed }) => (below === null ? [] : [{ below, lack: needed - girth }]))
    .toSorted((a, b) => a.below - b.below);
  let least = end;
  for (const [at, { below, lack }] of lacking.entries()) {
    if (lack > 0) least = Math.max(least, below + lack / 2);
    // Between a level that lacks and one that does not, the opening goes down to where nothing is lacking any more.
    const next = lacking[at + 1];
    if (next !== undefined && lack * next.lack <= 0 && lack !== next.lack)
      least = Math.max(least, below + (next.below - below) * (lack / (lack - next.lack)));
  }
  return Math.min(least, Math.max(full, end)) - end;
}

/** The way that needs less of a longer opening; of two alike, the one with more room. */
const isEasier = (a: Way, b: Way): boolean =>
  a.longer === b.longer ? roomOf(a.passages) > roomOf(b.passages) : a.longer < b.longer;

const roomOf = (passages: readonly Passage[]): Mm => Math.min(...passages.map(({ lets, needed }) => lets - needed));

function resultOf(way: WayIn, passages: readonly Passage[], end: Mm, full: Mm): CheckResult {
  const tightest = passages.reduce((a, b) => (b.lets - b.needed < a.lets - a.needed ? b : a));
  const { lets, needed, level, pieces, below } = tightest;
  return {
    name: "openingPasses",
    ok: lets >= needed,
    measured: lets,
    expected: needed,
    tolerance: 0,
    unit: "mm",
    pieces,
    level,
    ...(below === null ? {} : { tightest: { way, belowWaist: below, longer: longerBy(passages, end, full) } }),
  };
}

function loopOf({ girth, below, seam }: RoundLevel, needed: Mm): Loop {
  const level = seam ?? (below > 0 ? "hip" : below < 0 ? "bust" : "waist");
  return { girth, below, needed, level, pieces: below < 0 ? [] : ["frontBasque", "backBasque"] };
}

/** The neck edge, over straps too: a strap's inner edge goes from the neck edge in front to the one behind. */
function neckOf(halves: readonly [PieceSet, PieceSet], { place }: Closure): Omit<Loop, "needed"> {
  const round = piecesOf(halves[0]).filter((piece) => piece.edges.some(({ seam }) => seam === "neck"));
  const girth = sum(halves.flatMap((half) => piecesOf(half).map((piece) => seamLength(piece, "neck"))));
  return {
    girth,
    below: place === "side" ? null : -sum(halves.map((half) => alongBack(half) / 2)),
    level: "neck",
    pieces: round.map(({ name }) => name),
  };
}

/** The centre back above the waist. */
const alongBack = ({ back, backBand }: PieceSet): Mm =>
  sum([back, backBand].map((piece) => (piece === undefined ? 0 : seamLength(piece, "centre"))));

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
