/** The pieces that stand in for the pattern's own: drafted from its chart, and made up in its style. */
import { blendedSeamLength, blendPiece, levelSizes, type LevelSizes } from "../blend/blendPiece";
import type { Pattern } from "../decisions/pattern";
import { easeOfRow } from "../draft/draftMeasures";

import { levelWidth } from "../girth/levelWidth";
import { seamLength } from "../girth/seamLength";
import { pointOf, type Piece, type PieceName } from "../pattern/piece";
import { pieceIn, type PieceSet } from "../pattern/pieceSet";
import { remember } from "../remember";
import { invariant, ok } from "../result";
import { girthAt } from "../sizing/solveLevel";
import { styleOf } from "../style/index";
import { walkBasques } from "../surgery/walkBasques";
import type { Mm } from "../units";
import type { Cup, PatternPieces } from "./patternPieces";
import { differenceOf, draftBlocks, printNest, type Blocks, type PrintedNest } from "./printedNest";
import { trueToBodice } from "./trueToBodice";

interface InCup {
  readonly pattern: Pattern;
  readonly cup: Cup;
}

/** The blocks of every size. */
export const blocksOf: (of: Pick<InCup, "pattern">) => Blocks = remember(
  ["pattern"],
  ({ pattern }: Pick<InCup, "pattern">) => draftBlocks(pattern),
);

/** The nest in one cup version. */
export const standInNest: (of: InCup) => PrintedNest = remember(["pattern", "cup"], ({ pattern, cup }: InCup) =>
  printNest(pattern, blocksOf({ pattern }), differenceOf(pattern, cup)),
);

export function standInPieces(pattern: Pattern): PatternPieces {
  const blocks = (): Blocks => blocksOf({ pattern });
  const style = styleOf(pattern.style);
  return {
    source: "standIn",
    chart: pattern.chart,
    alike: new Set(),
    isEaseMeasured: false,
    printed: (cup) => standInNest({ pattern, cup }),
    printedWaists: () => printedWaists(blocks()),
    finishedWaistAt: (_, baseSize, size) => finishedWaistAt(blocks(), baseSize, size),
    finishedHips: () => finishedHips(blocks()),
    finishedHipAt: (_, __, size) => girthAt(invariant(finishedHips(blocks()), "hips"), size),
    easeOf: (_, size) => easeOfRow(invariant(pattern.chart.sizes[size], "row"), pattern.ease),
    make: (cup, at) => {
      const difference = differenceOf(pattern, cup);
      const front = blendPiece(blocks().front, at);
      const opened = style.open(front, blendPiece(blocks().back, at), difference, { strap: pattern.strap });
      if (!opened.ok) return opened;
      const open = opened.value;
      const cut = style.finish(open, pointOf(pieceIn(open, style.bustPiece), "bustPoint"), difference);
      return ok({
        open,
        cut,
        others: basquesOf(blocks(), at, cut, style.waistPieces),
        sideNeck: pointOf(front, "sideNeck"),
        adjustBust: (pieces, spread) => style.adjustBust(pieces, spread),
        finish: (pieces, bustPoint, cupDifference) => style.finish(pieces, bustPoint, cupDifference),
      });
    },
  };
}

/** Whole finished waist at a fractional size, the base size's darts kept; mm. */
function finishedWaistAt(blocks: Blocks, baseSize: number, size: number): Mm {
  const at = levelSizes(baseSize, size, baseSize);
  return 2 * (blendedSeamLength(blocks.front, at, "waist") + blendedSeamLength(blocks.back, at, "waist"));
}

function finishedHips({ frontBasque, backBasque }: Blocks): readonly Mm[] | null {
  if (frontBasque.length === 0) return null;
  return frontBasque.map(
    (front, size) =>
      2 *
      (invariant(levelWidth(front, "hip"), "hip line") +
        invariant(levelWidth(invariant(backBasque[size], "size"), "hip"), "hip line")),
  );
}

const printedWaists = (blocks: Blocks): readonly Mm[] =>
  blocks.front.map(
    (front, size) =>
      2 *
      (invariant(levelWidth(front, "waist"), "waist") +
        invariant(levelWidth(invariant(blocks.back[size], "size"), "waist"), "waist")),
  );

function basquesOf(
  blocks: Blocks,
  at: LevelSizes,
  cut: PieceSet,
  waistPieces: { readonly front: readonly PieceName[]; readonly back: readonly PieceName[] },
): PieceSet {
  if (blocks.frontBasque.length === 0) return {};
  const waistOf = (names: readonly PieceName[]): Mm =>
    names.reduce((sum, name) => sum + seamLength(pieceIn(cut, name), "waist"), 0);
  const trued = (sizes: readonly Piece[], waist: Mm) => ({ piece: trueToBodice(blendPiece(sizes, at), waist), waist });
  const { front, back } = walkBasques(
    trued(blocks.frontBasque, waistOf(waistPieces.front)),
    trued(blocks.backBasque, waistOf(waistPieces.back)),
  );
  return { frontBasque: front, backBasque: back };
}
