/**
 * Pieces that lie before us as they are printed, her own or a stand-in brought to them: blended as they are, opened to the bust
 * point where the bust is altered, and their darts then ended as hers are. What is not altered is not redrawn.
 */
import { blendedSeamLength, blendPiece, levelSizes, type LevelSizes } from "../blend/blendPiece";
import type { SizeChart } from "../chart/sizeChart";
import { drawnStop } from "../dart/dartEnd";
import { readDartEnd, type DartEndReading } from "../dart/dartEndReading";
import { dartCorners } from "../dart/moveMouth";
import type { Ease, Pattern } from "../decisions/pattern";
import type { PiecePoint } from "../geometry/point";
import { levelWidth } from "../girth/levelWidth";
import { seamLength } from "../girth/seamLength";
import { isBasque } from "../pattern/pieceGroups";
import { pieceIn, piecesOf, setOf, type PieceSet } from "../pattern/pieceSet";
import {
  pointOf,
  type DartName,
  type Nest,
  type NestSource,
  type Piece,
  type PieceName,
  type SeamName,
} from "../pattern/piece";
import { remember } from "../remember";
import { fail, invariant, ok, type Result } from "../result";
import { styleOf } from "../style/index";
import type { Style } from "../style/style";
import type { FullBustFailure } from "../surgery/fullBust";
import type { Mm } from "../units";
import { openToBustPoint, sideNeckOf } from "./openToBustPoint";
import type { Cup, GirthLevel, Making, PatternPieces } from "./patternPieces";
import { joinBlended } from "./joinBlended";
import { blendedEase, walkBlended } from "./seamEase";

/** The printed pieces of one cup version, in every size of the chart. */
export interface DrawnNest {
  readonly nest: Nest;
  /** Bust less upper chest that they are made for. */
  readonly difference: Mm;
  /** Why a size cannot be made in this cup. */
  readonly refusedAt: (size: number) => FullBustFailure | undefined;
}

export interface DrawnFrom {
  readonly source: NestSource;
  readonly pattern: Pattern;
  readonly chart: SizeChart;
  readonly alike: ReadonlySet<GirthLevel>;
  readonly drawnIn: (cup: Cup) => DrawnNest;
}

/** Waists of whole sizes that are remembered: all sizes on a few frames. */
const WAISTS_KEPT = 60;

const inOneCup = remember(["nest"], ({ nest }: { readonly nest: Nest }) => {
  const byName = new Map<PieceName, Piece[]>();
  for (const piece of nest.sizes.flat()) byName.set(piece.name, [...(byName.get(piece.name) ?? []), piece]);
  return byName;
});

export function drawnPieces({ source, pattern, chart, alike, drawnIn }: DrawnFrom): PatternPieces {
  const style = styleOf(pattern.style);
  const waistAt = (cup: Cup, baseSize: number, size: number): Mm =>
    Number.isInteger(size)
      ? finishedWaist({ nest: drawnIn(cup).nest, baseSize, size })
      : finishedAt(drawnIn(cup).nest, "waist", levelSizes(baseSize, size, baseSize));
  const hipAt = (cup: Cup, baseSize: number, size: number): Mm =>
    finishedAt(drawnIn(cup).nest, "hip", levelSizes(baseSize, baseSize, size));
  const places = chart.sizes.map((_, index) => index);
  return {
    source,
    chart,
    alike,
    isEaseMeasured: true,
    printed: (cup) => drawnIn(cup),
    printedWaists: (cup) => places.map((index) => waistAt(cup, index, index)),
    finishedWaistAt: waistAt,
    finishedHips: (cup) => (pattern.length === "waist" ? null : places.map((index) => hipAt(cup, index, index))),
    finishedHipAt: hipAt,
    easeOf: (cup, size) => easeOf(drawnIn(cup), pattern, size),
    make: (cup, at) => make(drawnIn(cup), style, pattern, at),
  };
}

/** As asked for once for every plan on the same pieces. */
const finishedWaist = remember(
  ["nest", "baseSize", "size"],
  ({ nest, baseSize, size }: { readonly nest: Nest; readonly baseSize: number; readonly size: number }) =>
    finishedAt(nest, "waist", levelSizes(baseSize, size, baseSize)),
  WAISTS_KEPT,
);

/** Whole finished girth at a level, darts closed; the bodice's where a basque is sewn to it. */
function finishedAt(nest: Nest, level: "bust" | "waist" | "hip", at: LevelSizes): Mm {
  let sum: Mm = 0;
  const isPrinted = isOneSize(at);
  const pieceAt = (sizes: readonly Piece[]): Piece =>
    isPrinted ? invariant(sizes[at.bust], "size") : blendPiece(sizes, at);
  const seamAt = (sizes: readonly Piece[], seam: SeamName): Mm =>
    isPrinted ? seamLength(pieceAt(sizes), seam) : blendedSeamLength(sizes, at, seam);
  for (const [name, sizes] of inOneCup({ nest })) {
    const line = sizes[0]?.levelLines.find((one) => one.level === level);
    if (line === undefined || (level === "waist" && isBasque(name))) continue;
    sum += "seam" in line.along ? seamAt(sizes, line.along.seam) : (levelWidth(pieceAt(sizes), level) ?? 0);
  }
  return 2 * sum;
}

/** What the pieces of a size measure less the body that the chart, and the cup, give for it. */
function easeOf({ nest, difference }: DrawnNest, { chart, ease }: Pattern, size: number): Ease {
  const row = invariant(chart.sizes[size], "row");
  const at = levelSizes(size, size, size);
  const hip = finishedAt(nest, "hip", at);
  return {
    bust: finishedAt(nest, "bust", at) - (row.bust - chart.draftedDifference + difference),
    waist: finishedAt(nest, "waist", at) - row.waist,
    hip: hip === 0 ? ease.hip : hip - row.hip,
  };
}

function make(
  { nest, difference, refusedAt }: DrawnNest,
  style: Style,
  pattern: Pattern,
  at: LevelSizes,
): Result<Making, FullBustFailure> {
  const cannot = refusedAt(at.bust);
  if (cannot !== undefined) return fail(cannot);
  const blended = setOf([...inOneCup({ nest })].map(([, sizes]) => blendedEase(blendPiece(sizes, at), sizes, at.bust)));
  const pieces = isOneSize(at)
    ? blended
    : joinBlended(walkBlended(blended, setOf(invariant(nest.sizes[at.bust], "base size"))));
  const { bodice: cut, others } = parted(pieces);
  const bustPoint = pointOf(pieceIn(cut, style.bustPiece), "bustPoint");
  const open = openToBustPoint(cut, style.bustPiece, pattern, at.bust);
  const endOf =
    (from: Mm, to: Mm) =>
    (dart: DartName): DartEndReading | null => {
      const printed = pieceIn(cut, style.bustPiece);
      if (!printed.darts.some(({ name }) => name === dart)) return null;
      const { along, across } = readDartEnd(dartCorners(printed, dart), bustPoint);
      return { along: along + drawnStop(dart, to) - drawnStop(dart, from), across };
    };
  return ok({
    open,
    cut,
    others,
    sideNeck: sideNeckOf(pieceIn(cut, style.bustPiece), pattern, at.bust),
    adjustBust: (from, spread) => adjusted({ from, style, spread }),
    finish: (from, to, cupDifference) =>
      from === open && cupDifference === difference && isSamePlace(to, bustPoint)
        ? cut
        : style.finish(from, to, cupDifference, endOf(difference, cupDifference)),
  });
}

/** What is made of the bust, and what her darts would be by it, are asked for the same spread. */
const adjusted = remember(
  ["from", "style", "spread"],
  ({ from, style, spread }: { readonly from: PieceSet; readonly style: Style; readonly spread: Mm }) =>
    style.adjustBust(from, spread),
);

const isSamePlace = (a: PiecePoint, b: PiecePoint): boolean => a.x === b.x && a.y === b.y;

const isOneSize = (at: LevelSizes): boolean =>
  new Set<number>(Object.values(at)).size === 1 && Number.isInteger(at.bust);

const isOther = ({ name }: Piece): boolean => isBasque(name) || name.startsWith("other");

/** Pieces below the waist, and those without a name of ours, are never altered for the bust. */
function parted(pieces: PieceSet): { readonly bodice: PieceSet; readonly others: PieceSet } {
  return {
    bodice: setOf(piecesOf(pieces).filter((piece) => !isOther(piece))),
    others: setOf(piecesOf(pieces).filter(isOther)),
  };
}
