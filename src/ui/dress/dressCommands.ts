/** What an entry on the step Dress does: a part of the dress with one choice of it changed; one without any is as usual. */
import type {
  Cloth,
  ClothName,
  Dress,
  DressMeasure,
  Edges,
  Lining,
  Neckline,
  Skirt,
  Straps,
  Tier,
} from "../../core/decisions/dress";
import { LIMITS } from "../../core/decisions/limits";
import type { Command } from "../../core/plan/commands";
import { without } from "../../core/plan/workParts";
import type { Mm } from "../../core/units";

const some = <T extends object>(part: T): T | null => (Object.keys(part).length === 0 ? null : part);

export const setSkirt = (skirt: Skirt | null): Command => ({ kind: "setDress", part: "skirt", value: skirt });

export const setLining = (lining: Lining): Command => ({ kind: "setDress", part: "lining", value: some(lining) });

export const setNeckline = (neckline: Neckline): Command => ({
  kind: "setDress",
  part: "neckline",
  // Its other figures are kept, so that nothing is lost by trying.
  value: neckline.shape === "asPattern" && Object.keys(neckline).length === 1 ? null : neckline,
});

export const setStraps = (straps: Straps | null): Command => ({ kind: "setDress", part: "straps", value: straps });

export const setEdges = (edges: Edges): Command => ({ kind: "setDress", part: "edges", value: some(edges) });

export function setDressMeasure({ measures = {} }: Dress, measure: DressMeasure, value: Mm | null): Command {
  const after = value === null ? without(measures, measure) : { ...measures, [measure]: value };
  return { kind: "setDress", part: "measures", value: some(after) };
}

export function setCloth({ cloths = {} }: Dress, name: ClothName, cloth: Cloth): Command {
  const kept = some(cloth);
  const after = kept === null ? without(cloths, name) : { ...cloths, [name]: kept };
  return { kind: "setDress", part: "cloths", value: some(after) };
}

/** So many tiers: those there are, and further ones as they usually are. */
export const withTiers = (skirt: Skirt, count: number): Skirt => ({
  ...skirt,
  tiers: Array.from(
    { length: Math.min(Math.max(count, LIMITS.tiers.least), LIMITS.tiers.most) },
    (_, at): Tier => skirt.tiers?.[at] ?? {},
  ),
});

/** One tier of so many, changed. */
export const withTier = (skirt: Skirt, count: number, at: number, tier: Tier): Skirt => {
  const all = withTiers(skirt, count);
  return { ...all, tiers: (all.tiers ?? []).map((one, index) => (index === at ? tier : one)) };
};
