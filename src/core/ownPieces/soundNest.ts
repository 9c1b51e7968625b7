/** Whether pieces read from lines can be a garment for the bodies of the chart: what is sewn together is about as long, and it fits round. */
import type { SizeChart } from "../chart/sizeChart";
import { levelWidth } from "../girth/levelWidth";
import { seamLength } from "../girth/seamLength";
import { isBasque } from "../pattern/pieceGroups";
import { pieceIn, setOf } from "../pattern/pieceSet";
import type { Piece, PieceName, SeamName } from "../pattern/piece";
import { seamPairsOf } from "../pattern/sewnTogether";
import { invariant } from "../result";
import { SEWN_UNLIKE } from "../tolerance";
import type { Mm } from "../units";
import type { Missing, TracedNest } from "./ownReading";

/** What a garment may be smaller or larger than the body, gathered or overlapping as it may be: less or more is misread; mm. */
const EASE = {
  bust: { least: -150, most: 400 },
  waist: { least: -150, most: 500 },
  hip: { least: -150, most: 1000 },
} as const;
const LEVELS = ["bust", "waist", "hip"] as const;

/** A cup is gathered onto its band: how much longer it is says nothing. */
const MAY_GATHER: ReadonlySet<SeamName> = new Set(["underBust"]);

type Unsound = Extract<Missing, { readonly code: "own/seams-unlike" | "own/girth-unlike" }>;

/** Round all pieces that have a line at a level; a basque's waist is the bodice's. */
function girthAt(pieces: readonly Piece[], level: (typeof LEVELS)[number]): Mm | null {
  const widths = pieces
    .filter(({ name }) => level !== "waist" || !isBasque(name))
    .flatMap((piece) => levelWidth(piece, level) ?? []);
  return widths.length === 0 ? null : 2 * widths.reduce((sum, width) => sum + width, 0);
}

/** What shows that corners, darts or sizes were taken for others: of each pair of seams and each girth the worst size. */
export function unsoundIn(nest: TracedNest, chart: SizeChart): readonly Unsound[] {
  const worst = new Map<string, Unsound>();
  const note = (key: string, found: Unsound): void => {
    const known = worst.get(key);
    if (known === undefined || Math.abs(found.by) > Math.abs(known.by)) worst.set(key, found);
  };
  for (const { label, pieces } of nest.sizes) {
    const set = setOf(pieces);
    const sewn = (names: readonly PieceName[], seam: SeamName): Mm =>
      names.reduce((sum, name) => sum + seamLength(pieceIn(set, name), seam), 0);
    for (const { seam, first, second, ease } of seamPairsOf(set)) {
      const [piece, other] = [invariant(first[0], "piece"), invariant(second[0], "piece")];
      const by = sewn(first, seam) - sewn(second, seam);
      if (MAY_GATHER.has(seam) || Math.abs(by - ease) <= SEWN_UNLIKE) continue;
      note(`${seam} ${piece} ${other}`, { code: "own/seams-unlike", piece, other, seam, size: label, by });
    }
  }
  const [piece] = nest.sizes[0]?.pieces ?? [];
  for (const { label, pieces } of nest.sizes) {
    const row = chart.sizes.find((size) => size.label === label);
    for (const level of LEVELS) {
      const girth = girthAt(pieces, level);
      if (girth === null || row === undefined || piece === undefined) continue;
      const by = girth - row[level];
      if (by >= EASE[level].least && by <= EASE[level].most) continue;
      note(level, { code: "own/girth-unlike", piece: piece.name, level, size: label, by });
    }
  }
  return [...worst.values()];
}
