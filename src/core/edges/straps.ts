/** Straps as they are chosen: how wide and long, where they are sewn, and the strips that they are made of. mm. */
import type { Straps } from "../decisions/dress";
import type { Allowances } from "../decisions/allowances";
import { HALVES, type Half } from "../decisions/alteration";
import { distance, midpoint, type PiecePoint } from "../geometry/point";
import { seamLength } from "../girth/seamLength";
import type { Part, RectanglePart } from "../parts/part";
import { pointOf, type Piece } from "../pattern/piece";
import type { PieceSet } from "../pattern/pieceSet";
import { SAME_POINT } from "../tolerance";
import type { Mm } from "../units";
import type { BothStraps, StrapFigures } from "./edgesDraft";

/** A strap covers what is worn under it by this on each side, mm (common practice, no source). */
const BESIDE_BRA: Mm = 5;
/** Of a tied strap, for half of a bow and its end, mm (common practice, no source). */
const TO_TIE: Mm = 300;
/** How much of a strap's back end is elastic as worn, mm; its casing is cut so many times as long (common practice, no source). */
const ELASTIC_WORN: Mm = 100;
const CASING_FULL = 1.5;
/** Elastic is worn a little stretched, and sewn in at both ends by this, mm (common practice, no source). */
const ELASTIC_OF_WORN = 0.9;
const ELASTIC_ENDS: Mm = 10;
/** An elastic is narrower than its casing by this, mm; and no narrower one than this is sold (common practice, no source). */
const ELASTIC_ROOM: Mm = 3;
const ELASTIC_NARROWEST: Mm = 4;

/** A strap can be turned as narrow as this, mm (common practice, no source). */
const NARROWEST: Mm = 5;

/** Usual seam allowance of strips, where it fits inside them, mm: half the finished width at the most, as of any turned strap. */
const STRIP_ALLOWANCE: Mm = 6;
/** Where a strip's end is caught in a seam, mm, where she has said nothing of it (common practice, no source). */
const END_ALLOWANCE: Mm = 15;

export interface StrapDraft {
  readonly figures: BothStraps;
  readonly parts: readonly Part[];
}

/** The middle of a piece's strap seam. */
const middleOf = (piece: Piece): PiecePoint => midpoint(pointOf(piece, "strapInner"), pointOf(piece, "strapOuter"));

/** From a cup or a back to the shoulder. */
const wayOf = (piece: Piece): Mm => distance(middleOf(piece), pointOf(piece, "strapAim"));

/** From where it goes over the shoulder on one half's back to the seam of the other half's. */
function wayAcross(back: Piece, other: Piece): Mm {
  const [at, aim] = [middleOf(other), pointOf(back, "strapAim")];
  return Math.hypot(aim.x + at.x, aim.y - at.y);
}

/** The pieces of a half that a strap follows from. */
interface Strapped {
  readonly strap: Piece;
  readonly cup: Piece;
  readonly back: Piece;
}

function strappedOf({ strap, cup, back }: PieceSet): Strapped | null {
  if (strap === undefined || cup === undefined || back === undefined) return null;
  if ([cup, back].some(({ points }) => points.strapInner === undefined || points.strapAim === undefined)) return null;
  return { strap, cup, back };
}

/**
 * Straps of a bodice, each by the half whose shoulder it goes over: a crossed one is sewn to the back of the other half.
 *
 * @param halves the wearer's left half first
 * @returns null: this bodice has no straps. mm
 * @source common practice
 */
export function draftStraps(
  halves: readonly [PieceSet, PieceSet],
  straps: Straps,
  allowances: Allowances,
): StrapDraft | null {
  const [left, right] = [strappedOf(halves[0]), strappedOf(halves[1])];
  if (left === null || right === null) return null;
  const one = strapFigures(left, right.back, straps);
  const other = halves[0] === halves[1] ? one : strapFigures(right, left.back, straps);
  const end = allowances.strap ?? END_ALLOWANCE;
  const stripsFor = ({ kind, width, length, elastic }: StrapFigures, half: Half | null) =>
    stripsOf({ width, length, isTied: kind === "tied", hasElastic: elastic !== null, end, half });
  const figures = { left: one, right: areAlike(one, other) ? one : asNear(other, one) };
  return {
    figures,
    // Where they are sewn elsewhere they can be cut alike for all that.
    parts: isCutAlike(one, other) ? stripsFor(one, null) : HALVES.flatMap((half) => stripsFor(figures[half], half)),
  };
}

const isCutAlike = (a: StrapFigures, b: StrapFigures): boolean => areNear([a.width, a.length], [b.width, b.length]);

const areAlike = (a: StrapFigures, b: StrapFigures): boolean =>
  isCutAlike(a, b) &&
  areNear([a.seamWidth, a.asked, a.way, a.fromCentreBack], [b.seamWidth, b.asked, b.way, b.fromCentreBack]);

/** What is alike to the eye is the same number: it is told and bought together. */
function asNear(strap: StrapFigures, other: StrapFigures): StrapFigures {
  const width = held(strap.width, other.width);
  return { ...strap, width, length: held(strap.length, other.length), elastic: strap.elastic && elasticOf(width) };
}

const held = (value: Mm, like: Mm): Mm => (areNear([value], [like]) ? like : value);

const areNear = (one: readonly Mm[], other: readonly Mm[]): boolean =>
  one.every((value, at) => Math.abs(value - (other[at] ?? Infinity)) <= SAME_POINT);

/** @param otherBack of the other half */
function strapFigures({ strap, cup, back }: Strapped, otherBack: Piece, straps: Straps): StrapFigures {
  const isCrossed = straps.kind === "crossed";
  const sewnTo = isCrossed ? otherBack : back;
  const own = seamLength(strap, "strap") / 2;
  const ownLength = distance(pointOf(strap, "strapFrontInner"), pointOf(strap, "strapBackInner"));
  const seamWidth = Math.min(seamLength(cup, "strap"), seamLength(sewnTo, "strap"));
  const asked = straps.width ?? own;
  // No wider one fits the seams that it is sewn to, and none narrower can be turned.
  const width = Math.max(Math.min(asked, Math.max(seamWidth, own)), NARROWEST);
  const plainWay = wayOf(cup) + wayOf(back);
  const way = wayOf(cup) + (isCrossed ? wayAcross(back, sewnTo) : wayOf(back));
  // Without a word of hers it is longer or shorter than its way by as much as the pattern's own. Half of it is never enough.
  const worn = Math.max(way / 2, way + (straps.ease ?? ownLength - plainWay));
  const isTied = straps.kind === "tied";
  return {
    kind: straps.kind,
    width,
    seamWidth,
    asked,
    length: isTied ? worn / 2 + TO_TIE : worn,
    way,
    coversBra: straps.braStrap === undefined ? null : width >= straps.braStrap + 2 * BESIDE_BRA,
    coversFrom: straps.braStrap === undefined ? null : straps.braStrap + 2 * BESIDE_BRA,
    elastic: straps.elastic === true && !isTied ? elasticOf(width) : null,
    fromCentreBack: seamLength(sewnTo, "neck") + seamLength(sewnTo, "strap") / 2,
  };
}

const elasticOf = (width: Mm): NonNullable<StrapFigures["elastic"]> => ({
  length: ELASTIC_WORN * ELASTIC_OF_WORN + 2 * ELASTIC_ENDS,
  width: Math.max(width - ELASTIC_ROOM, ELASTIC_NARROWEST),
});

interface Strips {
  readonly width: Mm;
  readonly length: Mm;
  readonly isTied: boolean;
  readonly hasElastic: boolean;
  readonly end: Mm;
  /** null: cut for both. */
  readonly half: Half | null;
}

/** Folded lengthwise and turned: twice as wide as finished. Of a tied strap each shoulder has two. */
function stripsOf({ width, length, isTied, hasElastic, end, half }: Strips): readonly RectanglePart[] {
  const strip = (key: string, name: RectanglePart["name"], depth: Mm, each: number): RectanglePart => ({
    kind: "rectangle",
    key: half === null ? key : `${key}-${half}`,
    group: "strap",
    cloth: "main",
    cut: { onFold: false, count: each * (half === null ? HALVES.length : 1) },
    half,
    grain: "along",
    name,
    width: 2 * width,
    depth,
    allowances: { top: end, bottom: end, sides: Math.min(STRIP_ALLOWANCE, width / 2) },
  });
  if (isTied) return [strip("tie", "tie", length, 2)];
  if (!hasElastic) return [strip("strap-strip", "strap", length, 1)];
  return [
    strip("strap-strip", "strap", Math.max(length - ELASTIC_WORN, 0), 1),
    strip("elastic-casing", "elasticCasing", ELASTIC_WORN * CASING_FULL, 1),
  ];
}
