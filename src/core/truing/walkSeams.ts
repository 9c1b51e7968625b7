/** Walking: seams that are sewn together brought to one length at the end that is free, half on each piece. */
import type { TruingChange } from "./changes";
import { pieceIn, piecesOf, withPiece, type PieceSet } from "../pattern/pieceSet";
import { seamLength } from "../girth/seamLength";
import { seamPairsOf, type SeamPair } from "../pattern/sewnTogether";
import type { Piece, PieceName, PointName, SeamName } from "../pattern/piece";
import { fitCorner } from "../surgery/fitCorner";
import { withSeamEnd } from "../surgery/walkAgain";
import { WALKED_AGREEMENT } from "../tolerance";
import type { Mm } from "../units";
import { hasCorner, otherSeamAt } from "./joins";
import type { Truing } from "./truing";

/** The ends that are free to move, in order of choice. */
const FREE_ENDS: Readonly<Partial<Record<SeamName, readonly PointName[]>>> = {
  side: ["underarm", "sideHem", "sideWaist"],
  shoulder: ["shoulderTip"],
  princess: ["princessWaist"],
  waist: ["sideWaist"],
  underBust: ["sideUnderBust"],
};

/** Ends where no seam is sewn to another piece but the one walked: it simply runs on there, or ends sooner. */
const OPEN_ENDS: readonly PointName[] = ["underarm", "sideHem", "shoulderTip"];

export const walkSeams: Truing = (pieces, changes) =>
  seamPairsOf(pieces).reduce((set, pair) => walked(set, pair, changes), pieces);

function walked(set: PieceSet, { seam, first, second, ease }: SeamPair, changes: TruingChange[]): PieceSet {
  const off = lengthOf(set, first, seam) - lengthOf(set, second, seam) - ease;
  if (Math.abs(off) <= WALKED_AGREEMENT) return set;
  // The girth of the waist is the bodice's: the basque goes by it. All else meets half-way.
  const share = seam === "waist" ? 0 : off / 2;
  const made: TruingChange[] = [];
  const one = share === 0 ? set : withEndMoved(set, first, seam, -share, made);
  const both = withEndMoved(one, second, seam, off - share, made);
  const left = lengthOf(both, first, seam) - lengthOf(both, second, seam) - ease;
  // A corner that runs away is no answer: the seam stays as it was, and is found not to walk.
  if (!(Math.abs(left) < Math.abs(off))) return set;
  changes.push(...made);
  return both;
}

const lengthOf = (set: PieceSet, names: readonly PieceName[], seam: SeamName): Mm =>
  names.reduce((sum, name) => sum + seamLength(pieceIn(set, name), seam), 0);

/** The seam made longer at its free end; another seam sewn there keeps its length where it can. */
function withEndMoved(
  set: PieceSet,
  names: readonly PieceName[],
  seam: SeamName,
  longer: Mm,
  changes: TruingChange[],
): PieceSet {
  const found = freeEnd(set, names, seam);
  if (found === null) return set;
  const { piece, corner } = found;
  const length = seamLength(piece, seam) + longer;
  const other = OPEN_ENDS.includes(corner) ? null : otherSeamAt(piece, corner, seam);
  const fitted =
    other === null
      ? null
      : fitCorner(piece, corner, [
          { seam, length },
          { seam: other, length: seamLength(piece, other) },
        ]);
  changes.push({ piece: piece.name, seam, what: "seamWalked", point: corner, amount: Math.abs(longer) });
  return withPiece(set, fitted ?? withSeamEnd(piece, seam, corner, length));
}

function freeEnd(
  set: PieceSet,
  names: readonly PieceName[],
  seam: SeamName,
): { readonly piece: Piece; readonly corner: PointName } | null {
  for (const corner of FREE_ENDS[seam] ?? []) {
    for (const piece of piecesOf(set)) {
      if (
        names.includes(piece.name) &&
        hasCorner(piece, corner) &&
        piece.edges.some((edge) => edge.seam === seam && (edge.from === corner || edge.to === corner))
      ) {
        return { piece, corner };
      }
    }
  }
  return null;
}
