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
  /** Why the front of a size cannot be made. */
  readonly refusedAt: (size: number) => FullBustFailure | undefined;
}

/**
 * The nest as printed in one cup version, all pieces of each size together. A size is made when it is read: what is planned
 * stands on a few of them, and in a cup that one half alone has nobody looks at the others.
 */
export function printNest(pattern: Pattern, blocks: Blocks, difference: Mm): PrintedNest {
  const labels = pattern.chart.sizes.map((size) => size.label);
  const made: ReturnType<typeof printSize>[] = [];
  const at = (size: number) => (made[size] ??= printSize(pattern, blocks, difference, size));
  const sizes: (readonly Piece[])[] = [];
  for (const size of labels.keys())
    Object.defineProperty(sizes, size, { enumerable: true, configurable: true, get: () => at(size).pieces });
  return { nest: { source: "standIn", labels, sizes }, refusedAt: (size) => at(size).refused };
}

function printSize(
  pattern: Pattern,
  blocks: Blocks,
  difference: Mm,
  size: number,
): { readonly pieces: readonly Piece[]; readonly refused: FullBustFailure | undefined } {
  const style = styleOf(pattern.style);
  const [block, back] = [invariant(blocks.front[size], "front"), invariant(blocks.back[size], "back")];
  const open = style.open(block, back, difference, { strap: pattern.strap });
  const bodice = open.ok
    ? piecesOf(style.finish(open.value, pointOf(pieceIn(open.value, style.bustPiece), "bustPoint"), difference))
    : [];
  return {
    pieces: [...bodice, ...[blocks.frontBasque, blocks.backBasque].flatMap((all) => all[size] ?? [])],
    refused: open.ok ? undefined : open.failure,
  };
}

/** Cup difference of the version picked; the chart's own where there are none. */
export const differenceOf = (pattern: Pick<Pattern, "chart">, cup: string | null): Mm =>
  pattern.chart.cups.find((c) => c.label === cup)?.difference ?? pattern.chart.draftedDifference;
