/** Parts laid on a width of cloth, and the list they are cut by. */
import { ringArea } from "../geometry/ringArea";
import type { Allowances } from "../decisions/allowances";
import { CLOTH_NAMES, type Cloth, type ClothName } from "../decisions/dress";
import type { LengthUnit } from "../decisions/work";
import type { Closure } from "../decisions/pattern";
import type { Part } from "../parts/part";
import { fail, ok, type Result } from "../result";
import { biasLengths, copiesOf } from "./copies";
import { cutRingOf } from "./cutRing";
import type { ClothLay, CutLine, LayFailure } from "./cutting";
import { layPrepared, type LayOptions, type Prepared } from "./layPrepared";
import { boxOf } from "./rings";
import { usableWidth, widthOf } from "./usualCloth";

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
  const lines = parts.map((part) => {
    const cloth = cloths[part.cloth] ?? {};
    const { open, half } = cutRingOf(part, allowances);
    const onFold = part.cut.onFold && half !== null;
    const { width, length } = boxOf(onFold ? half : open);
    const strip =
      part.kind === "rectangle" && part.grain === "bias"
        ? biasLengths(part, usableWidth(widthOf(cloth, unit), cloth.fold === true))
        : null;
    const [across, along] = part.grain === "across" ? [length, width] : [width, length];
    const line: CutLine = {
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
    };
    return { line, area: ringArea(open) };
  });
  return lines
    .toSorted(
      ({ line: p, area: pArea }, { line: q, area: qArea }) =>
        CLOTH_NAMES.indexOf(p.cloth) - CLOTH_NAMES.indexOf(q.cloth) ||
        rankOf(p) - rankOf(q) ||
        (p.isRectangle ? q.width - p.width || q.length - p.length : qArea - pArea),
    )
    .map(({ line }) => line);
}

/** On the bias last: strips come out of what is left. */
const rankOf = ({ isRectangle, grain, onFold }: CutLine): number =>
  grain === "bias" ? 3 : isRectangle ? 0 : onFold ? 1 : 2;
