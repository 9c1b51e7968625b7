/** The pieces of a pattern in every printed size: drafted blocks, and the style's pieces made from them in one cup. */
import type { Pattern } from "../decisions/pattern";
import { draftMeasuresFor, type DraftMeasures } from "../draft/draftMeasures";
import { draftBackBlock } from "../draft/backBlock";
import { draftBasque } from "../draft/basque";
import { draftFrontBlock } from "../draft/frontBlock";
import { shapingOf } from "../draft/shaping";
import { seamLength } from "../girth/seamLength";
import { pieceIn, piecesOf } from "../pattern/pieceSet";
import { invariant } from "../result";
import { styleOf } from "../style/index";
import type { FullBustFailure } from "../surgery/fullBust";
import { walkBasques } from "../surgery/walkBasques";
import { NARROWEST_DART } from "../tolerance";
import type { Mm } from "../units";
import { pointOf, type Nest, type Piece } from "../pattern/piece";

/** The block pieces of all sizes, piece by piece, smallest first: what is blended. */
export interface Blocks {
  readonly front: readonly Piece[];
  readonly back: readonly Piece[];
  /** Empty where the pattern ends at the waist. */
  readonly frontBasque: readonly Piece[];
  readonly backBasque: readonly Piece[];
}

/** The basque's darts are narrower than the bodice's by this where the bodice's allow it (common practice, no source). */
const BASQUE_DART_LESS: Mm = 9;

/** Drafts the blocks of every size of a pattern. */
export function draftBlocks({ chart, ease, length }: Pattern): Blocks {
  const measures = chart.sizes.map((row) => draftMeasuresFor(row, chart, ease));
  const front = measures.map(draftFrontBlock);
  const back = measures.map(draftBackBlock);
  if (length === "waist") return { front, back, frontBasque: [], backBasque: [] };
  const narrowest = Math.min(...measures.map((m) => shapingOf(m).dart));
  const dartLess = Math.min(BASQUE_DART_LESS, narrowest - NARROWEST_DART);
  const basqueOf = (side: "front" | "back", m: DraftMeasures, bodice: Piece | undefined) => {
    const waist = bodice === undefined ? 0 : seamLength(bodice, "waist");
    return { piece: draftBasque(m, waist, { side, dartLess }), waist };
  };
  const basques = measures.map((m, index) =>
    walkBasques(basqueOf("front", m, front[index]), basqueOf("back", m, back[index])),
  );
  return { front, back, frontBasque: basques.map((both) => both.front), backBasque: basques.map((both) => both.back) };
}

export interface PrintedNest {
  /** A size whose front cannot be made in this cup has no front here. */
  readonly nest: Nest;
  /** By index, why the front of a size cannot be made. */
  readonly refused: ReadonlyMap<number, FullBustFailure>;
}

/** The nest as printed in one cup version, all pieces of each size together. */
export function printNest(pattern: Pattern, blocks: Blocks, difference: Mm): PrintedNest {
  const style = styleOf(pattern.style);
  const sizes: Piece[][] = [];
  const refused = new Map<number, FullBustFailure>();
  for (let index = 0; index < blocks.front.length; index += 1) {
    const block = blocks.front[index];
    if (block === undefined) continue;
    const back = invariant(blocks.back[index], "back");
    const open = style.open(block, back, difference, { strap: pattern.strap });
    if (!open.ok) refused.set(index, open.failure);
    const bodice = open.ok
      ? piecesOf(style.finish(open.value, pointOf(pieceIn(open.value, style.bustPiece), "bustPoint"), difference))
      : [];
    sizes.push([...bodice, ...[blocks.frontBasque, blocks.backBasque].flatMap((all) => all[index] ?? [])]);
  }
  return { nest: { source: "standIn", labels: pattern.chart.sizes.map((size) => size.label), sizes }, refused };
}

/** Cup difference of the version picked; the chart's own where there are none. */
export const differenceOf = (pattern: Pick<Pattern, "chart">, cup: string | null): Mm =>
  pattern.chart.cups.find((c) => c.label === cup)?.difference ?? pattern.chart.draftedDifference;
