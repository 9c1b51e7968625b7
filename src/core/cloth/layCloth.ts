/** Parts laid on a width of cloth, and the list they are cut by. */
import type { Allowances } from "../decisions/allowances";
import { CLOTH_NAMES, type Cloth, type ClothName } from "../decisions/dress";
import type { LengthUnit } from "../decisions/work";
import type { Closure } from "../decisions/pattern";
import type { Part } from "../parts/part";
import { fail, invariant, ok, type Result } from "../result";
import type { Mm } from "../units";
import { areaOf, biasLengths, boxOf, copiesOf, type Copy } from "./copies";
import { cutRingOf } from "./cutRing";
import type { ClothLay, CutLine, LaidPart, LayFailure } from "./cutting";
import { packCloth } from "./packCloth";
import { lengthToBuy, SELVAGE, usableWidth, widthOf } from "./usualCloth";

export type { LayFailure };

export interface ClothAsked {
  readonly name: ClothName;
  readonly cloth: Cloth;
  /** Those of other cloths are passed over. */
  readonly parts: readonly Part[];
  readonly allowances: Allowances;
  readonly closure: Closure;
  readonly unit: LengthUnit;
}

export interface LayOptions {
  /** Told shares from 0 to 1. */
  readonly progress?: (share: number) => void;
  /** How long it is searched: 1 as usual. */
  readonly effort?: number;
  /** mm. Short enough, as laid: no more is searched for. */
  readonly goal?: Mm;
  /** Another row of choices of the search. */
  readonly seed?: number;
}

/** What is laid, before it is: plain data, all geometry done. */
export interface Prepared {
  readonly name: ClothName;
  readonly cloth: Cloth;
  readonly unit: LengthUnit;
  readonly width: Mm;
  readonly copies: readonly Copy[];
}

/** Cells that are looked at for a lay: some half a second on a slow machine. */
const LOOKS = 30_000_000;

export function prepareLay({ name, cloth, parts, allowances, unit }: ClothAsked): Result<Prepared, LayFailure> {
  const own = parts.filter((part) => part.cloth === name);
  if (own.length === 0) return fail({ code: "cloth/nothing-to-lay" });
  const width = widthOf(cloth, unit);
  const onFold = cloth.fold === true;
  const copies = copiesOf(own, allowances, {
    oneWay: cloth.oneWay === true,
    onFold,
    usable: usableWidth(width, onFold),
  });
  return copies.ok ? ok({ name, cloth, unit, width, copies: copies.value }) : copies;
}

export function layPrepared(
  { name, cloth, unit, width, copies }: Prepared,
  { progress = () => undefined, effort = 1, goal = 0, seed = 0 }: LayOptions = {},
): ClothLay {
  const onFold = cloth.fold === true;
  const usable = usableWidth(width, onFold);
  const places = packCloth(copies, { usable, looks: LOOKS * effort, goal, progress, seed });
  const from = onFold ? 0 : SELVAGE;
  const parts = copies.map(({ key, copy, layers }, index): LaidPart => {
    const { way, x, y } = invariant(places[index], "place");
    return {
      key,
      copy,
      layers,
      ring: way.ring.map((spot) => ({ x: from + x + spot.x, y: y + spot.y })),
      x: from + x,
      y,
      width: way.width,
      length: way.length,
      turn: way.turn,
      isTurnedOver: way.isTurnedOver,
      atFold: way.atFold,
    };
  });
  const length = Math.max(...parts.map((part) => part.y + part.length));
  const area = parts.reduce((sum, { ring }) => sum + areaOf(ring), 0);
  return {
    cloth: name,
    width,
    onFold,
    oneWay: cloth.oneWay === true,
    parts,
    length,
    toBuy: lengthToBuy(length, cloth, unit),
    leastByArea: area / usable,
    leastByLongest: Math.max(...copies.map(({ ways }) => Math.min(...ways.map((way) => way.length)))),
    used: area / usable / length,
  };
}

/** The parts of one cloth, as short as a fixed search finds: the same parts always lie the same. */
export function layCloth(
  asked: ClothAsked,
  progress?: (share: number) => void,
  options: LayOptions = {},
): Result<ClothLay, LayFailure> {
  const prepared = prepareLay(asked);
  if (!prepared.ok) return prepared;
  return ok(layPrepared(prepared.value, { ...options, ...(progress === undefined ? {} : { progress }) }));
}

/**
 * Each of her parts, cloth by cloth, in the order of cutting: rectangles first, the longest before all, since they are torn
 * or cut across the whole width; then what lies on the fold, then the rest, the largest first.
 */
export function cutListOf(
  parts: readonly Part[],
  allowances: Allowances,
  _closure: Closure,
  cloths: Readonly<Partial<Record<ClothName, Cloth>>> = {},
  unit: LengthUnit = "cm",
): readonly CutLine[] {
  const lines = parts.map((part): CutLine & { readonly area: number } => {
    const cloth = cloths[part.cloth] ?? {};
    const { open, half } = cutRingOf(part, allowances);
    const onFold = part.cut.onFold && half !== null;
    const { width, length } = boxOf(onFold ? half : open);
    const strip =
      part.kind === "rectangle" && part.grain === "bias"
        ? biasLengths(part, usableWidth(widthOf(cloth, unit), cloth.fold === true))
        : null;
    const [across, along] = part.grain === "across" ? [length, width] : [width, length];
    return {
      key: part.key,
      cloth: part.cloth,
      onFold,
      count: part.cut.count * (strip?.lengths ?? 1),
      width: strip?.width ?? across,
      length: strip?.length ?? along,
      isRectangle: part.kind === "rectangle",
      grain: part.grain,
      inPairs: part.kind === "piece" && !part.cut.onFold && part.cut.count > 1,
      oneWay: cloth.oneWay === true,
      lengths: strip?.lengths ?? 1,
      area: areaOf(open),
    };
  });
  return lines
    .toSorted(
      (p, q) =>
        CLOTH_NAMES.indexOf(p.cloth) - CLOTH_NAMES.indexOf(q.cloth) ||
        rankOf(p) - rankOf(q) ||
        (p.isRectangle ? q.width - p.width || q.length - p.length : q.area - p.area),
    )
    .map(({ area: _, ...line }) => line);
}

/** On the bias last: strips come out of what is left. */
const rankOf = ({ isRectangle, grain, onFold }: CutLine): number =>
  grain === "bias" ? 3 : isRectangle ? 0 : onFold ? 1 : 2;
