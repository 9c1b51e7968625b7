/** Cloth for a dress as it follows from a work: what is asked of a lay, and what other widths would cost. */
import type { ClothAsked } from "../cloth/layCloth";
import { clothTable, type ClothAtWidth, type LaySearch } from "../cloth/laySearch";
import type { LayFailure } from "../cloth/cutting";
import type { Cloth, ClothName, Dress } from "../decisions/dress";
import { fail, ok, type Result } from "../result";
import type { Mm } from "../units";
import { dressOf, type DressDecided } from "./dressOf";

/** What is laid on one of her cloths; null: there is no dress, or it has no part of that cloth. */
export function clothAskedOf(work: DressDecided, name: ClothName): ClothAsked | null {
  const dress = dressOf(work);
  if (!dress.ok || !dress.value.cloths.includes(name)) return null;
  return {
    name,
    cloth: work.dress?.cloths?.[name] ?? {},
    parts: dress.value.parts,
    allowances: work.allowances ?? {},
    closure: work.pattern.closure,
    unit: work.unit,
  };
}

/** The dress with something of a cloth changed. */
export const withCloth = (dress: Dress, name: ClothName, change: Cloth): Dress => ({
  ...dress,
  cloths: { ...dress.cloths, [name]: { ...dress.cloths?.[name], ...change } },
});

/** What she would need at each width that is sold, the dress drafted anew for it. */
export function clothTableOf(work: DressDecided, name: ClothName): LaySearch<readonly ClothAtWidth[]> {
  const at = (width: Mm): Result<ClothAsked, LayFailure> => {
    const there = clothAskedOf({ ...work, dress: withCloth(work.dress ?? {}, name, { width }) }, name);
    return there === null ? fail({ code: "cloth/nothing-to-lay" }) : ok(there);
  };
  return clothTable({ cloth: work.dress?.cloths?.[name] ?? {}, unit: work.unit }, at);
}
