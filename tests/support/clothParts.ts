/** Parts to lay on cloth: made by hand, and the bodices of plans with skirts of simple shapes on them. Invented. */
import { bodiceParts } from "../../src/core/dress/bodiceParts";
import type { Cloth, ClothName } from "../../src/core/decisions/dress";
import { STYLE_NAMES } from "../../src/core/decisions/pattern";
import type { Part, RectanglePart, SectorPart } from "../../src/core/parts/part";
import { setOf } from "../../src/core/pattern/pieceSet";
import { steadyChooser } from "../../src/core/sheets/steadyChoice";
import { invariant } from "../../src/core/result";
import { radians } from "../../src/core/units";
import { planOf, testWork } from "./works";

const NO_ALLOWANCES = { top: 0, bottom: 0, sides: 0 };

/** Cut sizes across and along its own grain, no allowances. */
export const rectanglePart = (
  key: string,
  width: number,
  depth: number,
  count = 1,
  more: Partial<RectanglePart> = {},
): RectanglePart => ({
  kind: "rectangle",
  key,
  name: "tier",
  group: "skirt",
  cloth: "main",
  cut: { onFold: false, count },
  half: null,
  grain: "along",
  width,
  depth,
  allowances: NO_ALLOWANCES,
  ...more,
});

export const sectorPart = (
  key: string,
  inner: number,
  outer: number,
  angle: number,
  more: Partial<SectorPart> = {},
): SectorPart => ({
  kind: "sector",
  key,
  group: "skirt",
  cloth: "main",
  cut: { onFold: false, count: 1 },
  half: null,
  grain: "along",
  inner,
  outer,
  angle: radians(angle),
  allowances: { inner: 0, outer: 0, sides: 0 },
  foldSides: 0,
  ...more,
});

export interface InventedDress {
  readonly name: string;
  readonly parts: readonly Part[];
  readonly cloth: Cloth;
}

const WIDTHS = [1100, 1140, 1400, 1500];

/** One of many dresses, the same for the same seed: a bodice of any style, a skirt of any simple shape, small parts. */
export function inventedDress(seed: number): InventedDress {
  const choose = steadyChooser();
  for (let skip = 0; skip < seed; skip++) choose(1000);
  const among = (from: number, to: number): number => from + ((to - from) * choose(1000)) / 1000;
  const style = invariant(STYLE_NAMES[choose(STYLE_NAMES.length)], "style");
  const plan = planOf({ ...testWork, pattern: { ...testWork.pattern, style, length: "waist" } });
  const set = setOf(plan.left.pieces);
  const bodice = bodiceParts([set, set], { edges: [], strap: null, bias: [], facing: null, binding: null, parts: [] });
  const width = invariant(WIDTHS[choose(WIDTHS.length)], "width");
  const cloth = { width, oneWay: choose(3) === 0, fold: choose(4) === 0 };
  const skirt = SKIRTS[choose(SKIRTS.length)]?.(among, width) ?? [];
  const strip = { name: "binding", group: "binding", grain: "bias" } as const;
  const small: readonly Part[] = [
    rectanglePart("binding", 40, among(400, 1100), 2, strip),
    rectanglePart("belt", 120, among(600, 900), 2, { name: "tie", group: "strap" }),
  ];
  return { name: `${seed} ${style}`, parts: [...bodice, ...skirt, ...small.slice(0, choose(3))], cloth };
}

const SKIRTS: readonly ((among: (from: number, to: number) => number, width: number) => readonly Part[])[] = [
  (among, width) => tiers([among(1000, 1500), among(1600, 2500)], [among(250, 350), among(300, 450)], width),
  (among, width) =>
    tiers([among(1000, 1300), among(1400, 1900), among(2000, 3200)], [250, among(250, 300), 330], width),
  (among) => {
    const waist = among(660, 800);
    const inner = waist / Math.PI;
    return [
      sectorPart("half-circle", inner - 15, inner + among(500, 650), Math.PI / 2, { cut: { onFold: false, count: 2 } }),
    ];
  },
  (among) =>
    ["front", "side", "back"].map((panel) => {
      const angle = among(0.18, 0.3);
      const inner = among(120, 140) / angle;
      return sectorPart(`panel-${panel}`, inner, inner + among(550, 700), angle, { cut: { onFold: false, count: 2 } });
    }),
];

const tiers = (widths: readonly number[], depths: readonly number[], cloth: number): readonly Part[] =>
  widths.map((width, index) => {
    const panels = Math.ceil(width / (cloth - 20 - 30));
    return rectanglePart(`tier-${index + 1}`, width / panels + 30, (depths[index] ?? 300) + 45, panels);
  });

export const askedOf = ({ parts, cloth }: Pick<InventedDress, "parts" | "cloth">, name: ClothName = "main") => ({
  name,
  cloth,
  parts,
  allowances: {},
  closure: { place: "centreBack", belowWaist: 0 } as const,
  unit: "cm" as const,
});
