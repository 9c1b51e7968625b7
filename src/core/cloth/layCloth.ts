/** Parts laid on a width of cloth. */
import type { Allowances } from "../decisions/allowances";
import type { Cloth, ClothName } from "../decisions/dress";
import type { LengthUnit } from "../decisions/work";
import type { Closure } from "../decisions/pattern";
import type { Part } from "../parts/part";
import { fail, type Result } from "../result";
import type { Mm } from "../units";
import type { ClothLay, CutLine } from "./cutting";

export interface ClothAsked {
  readonly name: ClothName;
  readonly cloth: Cloth;
  readonly parts: readonly Part[];
  readonly allowances: Allowances;
  readonly closure: Closure;
  readonly unit: LengthUnit;
}

export type LayFailure =
  | { readonly code: "cloth/nothing-to-lay" }
  /** Wider than the cloth however it may lie. */
  | { readonly code: "cloth/part-too-wide"; readonly key: string; readonly needed: Mm; readonly width: Mm };

/** Each of her parts of that cloth, in the order of cutting: long rectangles first, since they are torn across. */
export function cutListOf(_parts: readonly Part[], _allowances: Allowances, _closure: Closure): readonly CutLine[] {
  return [];
}

export function layCloth(_asked: ClothAsked, _progress?: (share: number) => void): Result<ClothLay, LayFailure> {
  return fail({ code: "cloth/nothing-to-lay" });
}
