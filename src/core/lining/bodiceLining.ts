/**
 * The lining of a bodice, of the shell's own pieces: neck, armhole and strap seams a little inside the finished edge, the ends
 * beside a closure folded back clear of it, ease in the side seams between underarm and waist. The sewn waist stays the shell's,
 * less what the ends keep from the closure; gathers are sewn as darts of the same intake.
 */
import { seamLength } from "../girth/seamLength";
import { distance } from "../geometry/point";
import {
  pointNames,
  pointOf,
  type Edge,
  type Piece,
  type PieceName,
  type PointName,
  type SeamName,
} from "../pattern/piece";
import { isBasque, isFrontPiece } from "../pattern/pieceGroups";
import { pieceIn, piecesOf, setOf, type PieceSet } from "../pattern/pieceSet";
import { remember } from "../remember";
import { invariant } from "../result";
import { truedOver } from "../surgery/openDart";
import { withSeamEnd } from "../surgery/walkAgain";
import { trueAll } from "../truing/trueAll";
import { equalLegs } from "../truing/trueSeams";
import { walkSeams } from "../truing/walkSeams";
import { LINING_TRUED_AT_MOST } from "../tolerance";
import type { Mm } from "../units";
import { leaveFree } from "./leaveFree";
import { openSeamOf, type OpenAt } from "./openSeam";
import { setBack } from "./setBack";
import { easeSide, type SidePart } from "./sideEase";
import { UNDER_EDGE } from "./usualLining";

/** Made of one half of the finished bodice. */
export interface HalfAsked {
  readonly pieces: PieceSet;
  readonly at: OpenAt;
  /** At each closed side seam, of each piece. */
  readonly ease: Mm;
  readonly beside: Mm;
  /** Of a basque's ends, below the waist. */
  readonly below: Mm;
}

/** Seams along an upper edge, which the lining is sewn to the shell by. */
const UPPER: ReadonlySet<SeamName> = new Set<SeamName>(["neck", "armhole", "strap"]);

/** Straps are their own lining; what the planner has no name for is a collar or a facing. */
export const isLined = (name: PieceName): boolean => name !== "strap" && !name.startsWith("other");

const LINED = [
  "back",
  "front",
  "centreFront",
  "sideFront",
  "cup",
  "frontBand",
  "backBand",
  "frontBasque",
  "backBasque",
] as const;
const made = remember([...LINED, "at", "ease", "beside", "below"], ({ at, ease, beside, below, ...pieces }: MadeOf) =>
  lineHalf({ pieces, at, ease, beside, below }),
);
type MadeOf = Omit<HalfAsked, "pieces"> & { readonly back: Piece } & Partial<
    Readonly<Record<(typeof LINED)[number], Piece>>
  >;

/** The lining of one half; the very same again where nothing of it is another. */
export function bodiceLining({ pieces, at, ease, beside, below }: HalfAsked): PieceSet {
  const { back, ...others } = setOf(piecesOf(pieces).filter(({ name }) => isLined(name)));
  return made({ ...others, back: invariant(back, "back"), at, ease, beside, below });
}

/** Less and less is tried where a shape leaves no room for all of it: the ease first, then a set-back end above the waist. */
const TRIES = [
  { isEased: true, isClear: true },
  { isEased: false, isClear: true },
  { isEased: false, isClear: false },
] as const;

function lineHalf(asked: HalfAsked): PieceSet {
  let lined: PieceSet = {};
  for (const { isEased, isClear } of TRIES) {
    const ease = isEased ? asked.ease : 0;
    const drawn = setOf(
      piecesOf(asked.pieces).map((piece) =>
        linePiece(piece, { ...asked, ease, part: sidePart(asked.pieces, piece) }, isClear),
      ),
    );
    const { pieces, left } = trueAll(drawn, [equalLegs, walkSeams]);
    lined = pieces;
    if (left === null && piecesOf(pieces).every((piece) => isNear(pieceIn(drawn, piece.name), piece))) break;
  }
  return lined;
}

/** Whether truing moved its corners by no more than tenths and a few millimetres. */
const isNear = (drawn: Piece, trued: Piece): boolean =>
  pointNames(drawn).every((name) => distance(pointOf(drawn, name), pointOf(trued, name)) < LINING_TRUED_AT_MOST);

interface PieceAsked extends Omit<HalfAsked, "pieces"> {
  readonly part: SidePart;
}

/** Bodices in two above the waist have the side seam of each half on an upper part and a band. */
function sidePart({ cup, back, frontBand, backBand }: PieceSet, piece: Piece): SidePart {
  const [upper, band] = isFrontPiece(piece.name) ? [cup, frontBand] : [back, backBand];
  if (upper === undefined || band === undefined) return { from: 0, to: 1 };
  const above = seamLength(upper, "side");
  const share = above / (above + seamLength(band, "side"));
  return piece === band ? { from: share, to: 1 } : { from: 0, to: share };
}

function linePiece(shell: Piece, { at, ease, beside, below, part }: PieceAsked, isClear: boolean): Piece {
  const opens = openSeamOf(shell, at);
  const sewn = sewnAsDarts(shell);
  if (isBasque(shell.name)) return opens === null ? sewn : leaveFree(sewn, opens, { below, beside });
  const eased = opens === "side" ? sewn : easeSide(sewn, ease, part);
  const fromZip = isClear ? beside : 0;
  const upper = (edge: Edge): Mm => (edge.seam === opens ? fromZip : UPPER.has(edge.seam) ? UNDER_EDGE : 0);
  // Of an edge that is shorter than what its neighbours take off it, nothing is left: then only the closure is kept clear of.
  const drawn = setBack(eased, upper) ?? setBack(eased, (edge) => (edge.seam === opens ? fromZip : 0)) ?? eased;
  return opens === null ? drawn : withWaist(drawn, opens, seamLength(shell, "waist") - beside);
}

/** Along the waist the end keeps clear by just what is wanted, however the two lines meet. */
function withWaist(piece: Piece, opens: SeamName, length: Mm): Piece {
  const ends = (seam: SeamName): readonly PointName[] =>
    piece.edges.filter((edge) => edge.seam === seam).flatMap(({ from, to }) => [from, to]);
  const corner = ends("waist").find((name) => ends(opens).includes(name));
  return corner === undefined ? piece : withSeamEnd(piece, "waist", corner, length);
}

/** What the shell draws up as gathers, the lining has as darts. */
function sewnAsDarts(shell: Piece): Piece {
  return shell.darts.reduce((piece, { gathered, ...dart }): Piece => {
    if (gathered !== true) return piece;
    const darts = piece.darts.map((one) => (one.name === dart.name ? dart : one));
    return truedOver({ ...piece, darts }, dart.name, seamLength(shell, dart.seam));
  }, shell);
}
