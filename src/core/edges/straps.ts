/** Straps as they are chosen: how wide and long, where they are sewn, and the strips that they are made of. mm. */
import type { Straps } from "../decisions/dress";
import type { Allowances } from "../decisions/allowances";
import { distance, midpoint, type PiecePoint } from "../geometry/point";
import { seamLength } from "../girth/seamLength";
import type { Part, RectanglePart } from "../parts/part";
import { pointOf, type Piece } from "../pattern/piece";
import type { PieceSet } from "../pattern/pieceSet";
import type { Mm } from "../units";
import type { StrapFigures } from "./edgesDraft";

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
  readonly figures: StrapFigures;
  readonly parts: readonly Part[];
}

/** The middle of a piece's strap seam. */
const middleOf = (piece: Piece): PiecePoint => midpoint(pointOf(piece, "strapInner"), pointOf(piece, "strapOuter"));

/** From a cup or a back to the shoulder. */
const wayOf = (piece: Piece): Mm => distance(middleOf(piece), pointOf(piece, "strapAim"));

/** On a back, over to the other side. */
function wayAcross(piece: Piece): Mm {
  const [at, aim] = [middleOf(piece), pointOf(piece, "strapAim")];
  return Math.hypot(aim.x + at.x, aim.y - at.y);
}

/** null: this bodice has no straps. */
export function draftStraps({ strap, cup, back }: PieceSet, straps: Straps, allowances: Allowances): StrapDraft | null {
  if (strap === undefined || cup === undefined || back === undefined) return null;
  if ([cup, back].some(({ points }) => points.strapInner === undefined || points.strapAim === undefined)) return null;
  const own = seamLength(strap, "strap") / 2;
  const ownLength = distance(pointOf(strap, "strapFrontInner"), pointOf(strap, "strapBackInner"));
  const seamWidth = Math.min(seamLength(cup, "strap"), seamLength(back, "strap"));
  const asked = straps.width ?? own;
  // No wider one fits the seams that it is sewn to, and none narrower can be turned.
  const width = Math.max(Math.min(asked, Math.max(seamWidth, own)), NARROWEST);
  const isCrossed = straps.kind === "crossed";
  const plainWay = wayOf(cup) + wayOf(back);
  const way = wayOf(cup) + (isCrossed ? wayAcross(back) : wayOf(back));
  // Without a word of hers it is longer or shorter than its way by as much as the pattern's own. Half of it is never enough.
  const worn = Math.max(way / 2, way + (straps.ease ?? ownLength - plainWay));
  const isTied = straps.kind === "tied";
  const elastic = straps.elastic === true && !isTied ? elasticOf(width) : null;
  const length = isTied ? worn / 2 + TO_TIE : worn;
  return {
    figures: {
      kind: straps.kind,
      width,
      seamWidth,
      asked,
      length,
      way,
      coversBra: straps.braStrap === undefined ? null : width >= straps.braStrap + 2 * BESIDE_BRA,
      coversFrom: straps.braStrap === undefined ? null : straps.braStrap + 2 * BESIDE_BRA,
      elastic,
      fromCentreBack: seamLength(back, "neck") + seamLength(back, "strap") / 2,
    },
    parts: stripsOf({ width, length, isTied, hasElastic: elastic !== null, end: allowances.strap ?? END_ALLOWANCE }),
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
}

/** Folded lengthwise and turned: twice as wide as finished. */
function stripsOf({ width, length, isTied, hasElastic, end }: Strips): readonly RectanglePart[] {
  const strip = (key: string, name: RectanglePart["name"], depth: Mm, count: number): RectanglePart => ({
    kind: "rectangle",
    key,
    group: "strap",
    cloth: "main",
    cut: { onFold: false, count },
    half: null,
    grain: "along",
    name,
    width: 2 * width,
    depth,
    allowances: { top: end, bottom: end, sides: Math.min(STRIP_ALLOWANCE, width / 2) },
  });
  if (isTied) return [strip("tie", "tie", length, 4)];
  if (!hasElastic) return [strip("strap-strip", "strap", length, 2)];
  return [
    strip("strap-strip", "strap", Math.max(length - ELASTIC_WORN, 0), 2),
    strip("elastic-casing", "elasticCasing", ELASTIC_WORN * CASING_FULL, 2),
  ];
}
