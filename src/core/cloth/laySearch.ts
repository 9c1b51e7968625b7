/**
 * Questions that take several lays to answer: each lay is asked for and its answer waited for, so that the page can have them made
 * by a worker, and a door without a screen at once.
 */
import { type Result } from "../result";
import type { Mm } from "../units";
import type { ClothLay, LayFailure } from "./cutting";
import { prepareLay, type ClothAsked } from "./layCloth";
import { layPrepared, type Prepared } from "./layPrepared";
import { lengthToBuy, SOLD_WIDTHS, widthOf } from "./usualCloth";

export interface LayWanted {
  readonly prepared: Prepared;
  readonly effort: number;
  readonly goal: Mm;
}

export type LaySearch<T> = Generator<LayWanted, T, ClothLay>;

/**
 * All lays made here and now.
 *
 * @param share of the usual search that each is given: less is quicker, and no door that shows lays may ask for less
 */
export function answered<T>(search: LaySearch<T>, share = 1): T {
  let step = search.next();
  while (step.done !== true) {
    const { prepared, effort, goal } = step.value;
    step = search.next(layPrepared(prepared, { effort: effort * share, goal }));
  }
  return step.value;
}

/** What is needed of cloth of one width. */
export interface ClothAtWidth {
  readonly width: Mm;
  readonly isHers: boolean;
  readonly needed:
    | { readonly length: Mm; readonly toBuy: Mm; readonly area: number }
    | { readonly failure: LayFailure };
}

/**
 * What is needed at each width that is sold, and at hers, the narrowest first. `area`: m² to buy.
 *
 * @param at the parts as they are cut for a width: panels of a tier are as wide as the cloth lets them
 */
export function* clothTable(
  asked: Pick<ClothAsked, "cloth" | "unit">,
  at: (width: Mm) => Result<ClothAsked, LayFailure>,
): LaySearch<readonly ClothAtWidth[]> {
  const { cloth, unit } = asked;
  const hers = widthOf(cloth, unit);
  const widths = [...new Set([...SOLD_WIDTHS[unit], hers])].toSorted((p, q) => p - q);
  const table: ClothAtWidth[] = [];
  for (const width of widths) {
    const there = at(width);
    const prepared = there.ok ? prepareLay({ ...there.value, cloth: { ...there.value.cloth, width } }) : there;
    if (!prepared.ok) {
      table.push({ width, isHers: width === hers, needed: { failure: prepared.failure } });
      continue;
    }
    const { length } = yield { prepared: prepared.value, effort: 1, goal: 0 };
    const toBuy = lengthToBuy(length, cloth, unit);
    table.push({ width, isHers: width === hers, needed: { length, toBuy, area: (width * toBuy) / SQUARE_METRE } });
  }
  return table;
}

/** mm². */
const SQUARE_METRE = 1e6;
