/** Gathered skirts: one width, or tiers each gathered on the one above. All rectangles, in widths of the cloth. */
import type { Skirt, Tier } from "../decisions/dress";
import { allowanceOf } from "../parts/seamAllowance";
import type { RectanglePart } from "../parts/part";
import { fail, ok, type Result } from "../result";
import { ROUNDING } from "../tolerance";
import type { Mm } from "../units";
import type { SkirtAsked, SkirtDraft, SkirtFailure, SkirtLevel, SkirtNote, TierFigures } from "./skirtDraft";
import { skirtLength } from "./skirtLength";
import {
  PANEL_LEAST,
  RATIO_RANGE,
  RATIO_TOLD,
  SELVAGE,
  TIER_GROWS,
  TIER_LEAST,
  USUAL_HIP_EASE,
  USUAL_RATIO,
  USUAL_TIERS,
} from "./skirtPractice";

export const gathered = (asked: SkirtAsked): Result<SkirtDraft, SkirtFailure> => draftGathered(asked, null);

export const tiers = (asked: SkirtAsked): Result<SkirtDraft, SkirtFailure> =>
  draftGathered(asked, asked.skirt.tiers ?? Array.from({ length: USUAL_TIERS }, (): Tier => ({})));

function draftGathered(asked: SkirtAsked, of: readonly Tier[] | null): Result<SkirtDraft, SkirtFailure> {
  const { skirt, waist, closure, allowances, clothWidth } = asked;
  const all = of ?? [{}];
  const length = skirtLength(asked, depthsOfAll(all));
  if (!length.ok) return length;
  const { side, level, notes } = length.value;
  const depths = depthsOf(all, side, skirt.growing === true);
  if (depths === null) {
    const set = all.reduce((sum, { depth = TIER_LEAST }) => sum + depth, 0);
    return fail({ code: "skirt/tiers-deeper-than-skirt", depths: set, length: side });
  }
  const sides = allowanceOf(allowances, "side");
  const usable = clothWidth - 2 * SELVAGE - 2 * sides;
  const needed = PANEL_LEAST + 2 * SELVAGE + 2 * sides;
  if (clothWidth < needed) return fail({ code: "skirt/cloth-too-narrow", width: clothWidth, needed });
  const widths = tierWidths({ skirt, all, depths, waist: waist.whole, usable, over: overHip(asked) });
  if (!widths.ok) return widths;
  const figures = widths.value;
  const lengths = { side, front: level?.front ?? side, back: level?.back ?? side };
  const upper = upperEdgeOf(lengths);
  const seam = allowanceOf(allowances, "waist");
  const parts = figures.map((tier, i): RectanglePart => {
    const isLast = i === figures.length - 1;
    const rectangle = {
      kind: "rectangle",
      key: of === null ? "gathered" : `tier-${i + 1}`,
      group: "skirt",
      cloth: "main",
      cut: { onFold: false, count: tier.panels },
      half: null,
      grain: "along",
      name: of === null ? "gathered" : "tier",
      tier: i + 1,
      width: tier.panelWidth,
      depth: tier.depth + (i === 0 ? upper.more : 0),
      allowances: { top: seam, bottom: isLast ? (skirt.hem ?? allowanceOf(allowances, "hem")) : seam, sides },
    } as const;
    return i === 0 && upper.edge !== null ? { ...rectangle, upperEdge: upper.edge } : rectangle;
  });
  const opening = closure.place === "centreBack" ? lengths.back - side : 0;
  return ok({
    kind: skirt.kind,
    lengths,
    hem: figures.at(-1)?.width ?? waist.whole,
    halves: noPieces,
    parts,
    levels: levelsOf(waist.whole, figures, opening),
    tiers: figures,
    notes: [...notes, ...joins(figures, closure.belowWaist, opening), ...pockets(skirt)],
  });
}

/** Over her hips it is at least as wide as they are with ease to sit; null: they are not measured. */
export const overHip = ({ skirt, body }: SkirtAsked): { readonly girth: Mm; readonly depth: Mm } | null =>
  body.hip === null ? null : { girth: body.hip + (skirt.hipEase ?? USUAL_HIP_EASE), depth: body.hipDepth };

const none = {};
export const noPieces = [none, none] as const;

export const pockets = ({ pockets: asked }: Skirt): readonly SkirtNote[] =>
  asked === true ? [{ code: "skirt/pockets" }] : [];

/** Their sum where each is set; null: the length shares out what is left. */
const depthsOfAll = (all: readonly Tier[]): Mm | null =>
  all.every(({ depth }) => depth !== undefined) ? all.reduce((sum, { depth = 0 }) => sum + depth, 0) : null;

/** What is not set is shared out, all alike or each deeper than the one above; null: there is not enough left. */
function depthsOf(all: readonly Tier[], length: Mm, isGrowing: boolean): readonly Mm[] | null {
  const shares = all.map(({ depth }, i) => (depth === undefined ? (isGrowing ? TIER_GROWS ** i : 1) : 0));
  const sum = shares.reduce((a, b) => a + b, 0);
  const left = length - all.reduce((set, { depth = 0 }) => set + depth, 0);
  const depths = all.map(({ depth }, i) => depth ?? (left * (shares[i] ?? 0)) / sum);
  return depths.every((depth) => depth >= TIER_LEAST) ? depths : null;
}

/** Rounded up as it is told, so that what is told to do will do. */
export const toldRatio = (ratio: number): number => Math.ceil(ratio * RATIO_TOLD - ROUNDING) / RATIO_TOLD;

interface WidthsAsked {
  readonly skirt: Skirt;
  readonly all: readonly Tier[];
  readonly depths: readonly Mm[];
  readonly waist: Mm;
  /** Of one width of cloth, finished. */
  readonly usable: Mm;
  readonly over: { readonly girth: Mm; readonly depth: Mm } | null;
}

function tierWidths(asked: WidthsAsked): Result<readonly TierFigures[], SkirtFailure> {
  const { skirt, all, depths, usable, over } = asked;
  const found: TierFigures[] = [];
  let gatheredTo = asked.waist;
  let above = 0;
  for (const [i, tier] of all.entries()) {
    const depth = depths[i] ?? 0;
    const isOverHip = over !== null && above + depth >= over.depth;
    const least = Math.max(RATIO_RANGE.least, isOverHip ? toldRatio(over.girth / gatheredTo) : 0);
    const isWhole = skirt.tierCut === "wholeWidths";
    const set =
      isWhole && tier.widths !== undefined ? (tier.widths * usable) / gatheredTo : (tier.ratio ?? skirt.ratio);
    const ratio = set ?? Math.max(USUAL_RATIO, least);
    if (!(ratio >= least && ratio <= RATIO_RANGE.most)) {
      return fail({ code: "skirt/ratio-out-of-range", ratio, least, most: RATIO_RANGE.most });
    }
    // What is just so many widths is not one more by rounding.
    const panels = Math.ceil(((gatheredTo * ratio) / usable) * (1 - ROUNDING));
    const width = isWhole ? panels * usable : gatheredTo * ratio;
    found.push({ width, gatheredTo, depth, panels, panelWidth: width / panels });
    gatheredTo = width;
    above += depth;
  }
  return ok(found);
}

/** The first rectangle is as deep as the skirt is long where it is longest; elsewhere its upper edge is cut lower. */
function upperEdgeOf({ front, side, back }: SkirtDraft["lengths"]): {
  readonly more: Mm;
  readonly edge: Required<RectanglePart>["upperEdge"] | null;
} {
  const most = Math.max(front, side, back);
  const edge = { front: most - front, side: most - side, back: most - back };
  return { more: most - side, edge: edge.front === 0 && edge.side === 0 && edge.back === 0 ? null : edge };
}

/** At the waist and at every seam the cloth is drawn up to what it hangs on; just below it is as wide as it is. */
function levelsOf(waist: Mm, figures: readonly TierFigures[], atOpening: Mm): readonly SkirtLevel[] {
  const levels: SkirtLevel[] = [];
  let below = 0;
  let girth = waist;
  for (const [i, { width, depth }] of figures.entries()) {
    levels.push({ below, girth }, { below, girth: width });
    below += depth + (i === 0 ? atOpening : 0);
    girth = width;
  }
  return [...levels, { below, girth }];
}

/** Every tier that the opening runs into is joined there. */
function joins(figures: readonly TierFigures[], belowWaist: Mm, atOpening: Mm): readonly SkirtNote[] {
  let above = 0;
  return figures.flatMap(({ depth }, i): readonly SkirtNote[] => {
    const isReached = belowWaist > above;
    above += depth + (i === 0 ? atOpening : 0);
    return isReached ? [{ code: "skirt/join-at-opening", tier: i + 1 }] : [];
  });
}
