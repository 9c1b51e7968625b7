/** Buttons in place of a zip: where they come on the centre back, walked over its pieces from the neck to the end of the opening. */
import type { Closure } from "../decisions/pattern";
import type { Part } from "../parts/part";
import type { PieceName } from "../pattern/piece";
import type { LengthUnit } from "../decisions/work";
import { piecesOf, type PieceSet } from "../pattern/pieceSet";
import { polar, type PiecePoint } from "../geometry/point";
import { isBelowWaist } from "../pattern/pieceGroups";
import { radians, type Mm } from "../units";
import { placeAlong, walkAlong, type Walk, type WalkedPlace } from "./walk";

/**
 * The first below the finished neck edge and the last above the end of the opening, mm.
 *
 * @source common practice, no source
 */
const BUTTON_FROM_END: Mm = 12;
/** A button keeps clear of a seam that crosses the centre back by this, mm: the layers there are too thick to work a buttonhole in. */
const BUTTON_FROM_SEAM: Mm = 8;
/** How much further from its end the first or the last may stand, so that none comes on a seam, and how finely that is tried, mm. */
const MOST_GIVEN: Mm = 16;
const TRIED: Mm = 0.5;

/**
 * The narrowest allowance at the centre back that makes a stand for usual buttons, mm: the width of one of 15, and as much turned
 * in (common practice, no source).
 */
export const LEAST_STAND: Mm = 30;
/** The same as a tape has it: in inches the next eighth that does, 1 1/4 in, as entries keep it. */
export const STAND_TO_ALLOW: Readonly<Record<LengthUnit, Mm>> = { cm: LEAST_STAND, in: 31.8 };

/** How buttons stand along the opening, mm. */
export interface ButtonRow {
  /** From the finished neck edge to each of them. */
  readonly along: readonly Mm[];
  /** From one to the next. */
  readonly spacing: Mm;
  /** From the neck edge to the first, and from the last to the end of the opening. */
  readonly ends: readonly [Mm, Mm];
}

/**
 * What the opening goes on into below the waist: a piece that is among those walked, or a skirt that is given by its measures,
 * on which nothing can be marked: then how long that is, mm.
 */
export type Below = "drafted" | Mm;

/**
 * What the opening goes on into on a dress of these parts: all tiers of a measured skirt, so much shorter as the first is cut
 * lower at the centre back, or the shortest way down a circle's share.
 */
export function belowIn(parts: readonly Part[]): Below {
  const skirt = parts.filter(({ group }) => group === "skirt");
  if (skirt.length === 0 || skirt.some(({ kind }) => kind === "piece")) return "drafted";
  const ways = skirt.flatMap((part) =>
    part.kind === "sector"
      ? [part.outer - Math.max(part.inner, ...(part.waistRadii ?? []).map(({ radius }) => radius))]
      : [],
  );
  if (ways.length > 0) return Math.min(...ways);
  return skirt.reduce(
    (sum, part) => sum + (part.kind === "rectangle" ? part.depth - (part.upperEdge?.back ?? 0) : 0),
    0,
  );
}

interface Opening {
  readonly walk: Walk;
  readonly length: Mm;
  /** So much of it lies above the waist. */
  readonly above: Mm;
}

const DOWN_THE_BACK: ReadonlySet<PieceName> = new Set(["back", "backBand", "backBasque", "skirtBack"]);

/**
 * The centre back from the neck to the end of the opening: the whole of it above the waist, and so far into what hangs there.
 * None where it does not open there, or where a piece of it lies on the fold.
 */
function openingOf(pieces: PieceSet, { place, belowWaist }: Closure, below: Below): Opening | null {
  if (place !== "centreBack") return null;
  const backs = piecesOf(pieces).filter(({ name }) => DOWN_THE_BACK.has(name));
  if (backs.some(({ centreOnFold }) => centreOnFold)) return null;
  const walk = walkAlong(backs, "centre");
  const above = walkAlong(
    backs.filter(({ name }) => !isBelowWaist(name)),
    "centre",
  ).length;
  const length = above + Math.max(belowWaist, 0);
  return above === 0
    ? null
    : { walk, length: Math.min(length, below === "drafted" ? walk.length : above + below), above };
}

/**
 * The row of buttons that a closure asks for: evenly from the first to the last. Where one would come on a seam, the first or
 * the last is taken further from its end, the rest spread anew, by as little as helps; where nothing helps, they stay as they
 * were. None without buttons, or where the opening is too short for two.
 */
export function buttonRow(pieces: PieceSet, closure: Closure, below: Below = "drafted"): ButtonRow | null {
  const { buttons } = closure;
  if (buttons === undefined) return null;
  const opening = openingOf(pieces, closure, below);
  return opening === null ? null : rowIn(opening, buttons);
}

/** How long the opening is that a row of buttons closes on these pieces, mm; null wherever there is no row. */
export function buttonedLength(pieces: PieceSet, closure: Closure, below: Below = "drafted"): Mm | null {
  const opening = closure.buttons === undefined ? null : openingOf(pieces, closure, below);
  return opening === null || !takesRow(opening) ? null : opening.length;
}

const takesRow = ({ length }: Opening): boolean => length > 2 * BUTTON_FROM_END;

function rowIn(opening: Opening, buttons: number): ButtonRow | null {
  if (!takesRow(opening)) return null;
  const { walk, length } = opening;
  const rowOf = (above: Mm, below: Mm): ButtonRow =>
    evenly(length, [BUTTON_FROM_END + above, BUTTON_FROM_END + below], buttons);
  // Of both ends of the walk every button is clear: it stands further from them than from any seam.
  const isClear = ({ along, spacing }: ButtonRow): boolean =>
    spacing > 0 && along.every((at) => walk.breaks.every((seam) => Math.abs(at - seam) >= BUTTON_FROM_SEAM));
  const given = Array.from({ length: MOST_GIVEN / TRIED + 1 }, (_, index) => index * TRIED);
  // Least given in all comes first, and of as much the row whose first button stays nearer the neck.
  const tries = given
    .flatMap((above) => given.map((below) => ({ above, below })))
    .toSorted((p, q) => p.above + p.below - q.above - q.below);
  const found = tries.find(({ above, below }) => isClear(rowOf(above, below)));
  return rowOf(found?.above ?? 0, found?.below ?? 0);
}

function evenly(length: Mm, ends: ButtonRow["ends"], buttons: number): ButtonRow {
  const spacing = (length - ends[0] - ends[1]) / (buttons - 1);
  return { along: Array.from({ length: buttons }, (_, index) => ends[0] + index * spacing), spacing, ends };
}

/** Of the row of buttons, those on a skirt that is given by its measures: how far below the waist seam each comes, mm. */
export function buttonsOnMeasured(pieces: PieceSet, closure: Closure, length: Mm): readonly Mm[] {
  const [opening, row] = [openingOf(pieces, closure, length), buttonRow(pieces, closure, length)];
  return opening === null || row === null
    ? []
    : row.along.filter((along) => along > opening.above).map((along) => along - opening.above);
}

/**
 * Where each button is sewn, on the centre line, which the two halves meet on when buttoned: from the neck down, with the way
 * square out to the edge of the stand. `meets` is the other half where the halves differ: its row is then taken, spread over
 * this one, so that every button has its buttonhole. Those on a skirt that is given by its measures have no place.
 */
export function buttonPlaces(
  pieces: PieceSet,
  closure: Closure,
  meets = pieces,
  below: Below = "drafted",
): readonly WalkedPlace[] {
  const { buttons } = closure;
  if (buttons === undefined) return [];
  const [opening, row] = [openingOf(pieces, closure, below), buttonRow(meets, closure, below)];
  if (opening === null || row === null) return [];
  const { walk, length } = opening;
  const own = evenly(length, row.ends, buttons);
  return own.spacing > 0
    ? own.along.filter((along) => along <= walk.length).map((along) => placeAlong(walk, along))
    : [];
}

/** How far a buttonhole begins outside the centre line, mm: the button's shank lies in that end of it (common practice, no source). */
export const HOLE_BEYOND: Mm = 3;
/** Length of a buttonhole for a button 12 mm wide and 3 mm thick, mm: its width and its thickness (common practice, no source). */
const HOLE_LENGTH: Mm = 15;
/** How far it goes on inside the centre line, mm. */
export const HOLE_WITHIN: Mm = HOLE_LENGTH - HOLE_BEYOND;

/** The buttonhole of a place on the other half: across the centre line, from outside it inwards. */
export const buttonholeAt = ({ at, outward }: WalkedPlace): readonly [PiecePoint, PiecePoint] => [
  polar(at, outward, HOLE_BEYOND),
  polar(at, radians(outward + Math.PI), HOLE_WITHIN),
];
