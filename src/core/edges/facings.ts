/** Facings of both halves: which ones their edges take, how deep they can be, and the pieces. */
import { edgeFlatten, edgeLength } from "../geometry/edgeCurve";
import type { PiecePoint } from "../geometry/point";
import { segmentNearest } from "../geometry/segment";
import type { EdgeFinish } from "../decisions/dress";
import { pointOf, type DressPiece, type Piece } from "../pattern/piece";
import type { PieceSet } from "../pattern/pieceSet";
import { remember } from "../remember";
import { FACING_FOLLOWS } from "../tolerance";
import type { Mm } from "../units";
import { clearOfCorners, facingPiece, type FacedEdges } from "./facingPiece";
import { centreDown, upperWalk, type WalkEdge } from "./upperWalk";

/** Kept between a facing's lower line and the end of a dart that it does not cross, mm (our own choice). */
const CLEAR_OF_DART: Mm = 6;
/** A facing narrower than this turns out, mm (common practice, no source). */
const LEAST_DEPTH: Mm = 25;
/** Kept of the shoulder beside a facing of one of its edges, mm (our own choice). */
const LEFT_OF_SHOULDER: Mm = 10;
/** Two facings that come nearer than this on a shoulder are made as one, mm (common practice, no source). */
const MADE_AS_ONE: Mm = 20;

export interface Facings {
  /** Of the wearer's left half and of her right one: the same where the halves are. */
  readonly pieces: readonly [readonly Piece[], readonly Piece[]];
  /** As it could be made, in both halves. */
  readonly depth: Mm;
  /** Neck and armhole in one, in both halves. */
  readonly inOne: boolean;
}

export interface FacingsAsked {
  /** The wearer's left half first. */
  readonly halves: readonly [PieceSet, PieceSet];
  readonly neck: EdgeFinish;
  readonly armhole: EdgeFinish;
  readonly depth: Mm;
}

interface Side {
  readonly pieces: readonly Piece[];
  readonly walk: readonly WalkEdge[];
}

const sideOf = remember(
  ["first", "second", "depth"],
  ({ first, second, depth }: { readonly first: Piece; readonly second: Piece | null; readonly depth: Mm }): Side => {
    const pieces = second === null ? [first] : [first, second];
    return { pieces, walk: upperWalk(pieces, depth) };
  },
);

/** The pieces of the front's upper edge from the centre outwards, and the back's; null: it has none that is known. */
function sidesOf(half: PieceSet, depth: Mm): readonly [Side, Side] | null {
  const { front, centreFront, sideFront, cup, back } = half;
  if (back === undefined) return null;
  const first = cup ?? front ?? centreFront;
  if (first === undefined) return null;
  const second = first === centreFront ? (sideFront ?? null) : null;
  if ([first, back].some(({ points }) => points.centreNeck === undefined)) return null;
  return [sideOf({ first, second, depth }), sideOf({ first: back, second: null, depth })];
}

const ofSeam = ({ walk }: Side, ...seams: readonly WalkEdge["seam"][]): readonly WalkEdge[] =>
  walk.filter(({ seam }) => seams.includes(seam));

const lengthOn = (side: Side, seam: WalkEdge["seam"]): Mm =>
  ofSeam(side, seam).reduce((sum, { curve }) => sum + edgeLength(curve), 0);

/**
 * Facings of the edges that take one. Halves that differ are made in one way, as far as the narrower of them allows: a neck that is
 * faced by itself on one side and with the armhole on the other cannot be sewn.
 *
 * @param depth mm, as asked for
 * @source common practice
 */
export function facingsOf({ halves: [left, right], neck, armhole, depth: asked }: FacingsAsked): Facings {
  const sidesOfLeft = sidesOf(left, asked);
  const sidesOfRight = right === left ? sidesOfLeft : sidesOf(right, asked);
  const sides = [sidesOfLeft, ...(right === left ? [] : [sidesOfRight])].flatMap((own) => own ?? []);
  if (sides.length === 0 || (neck !== "facing" && armhole !== "facing"))
    return { pieces: [[], []], depth: asked, inOne: false };
  const depth = Math.max(LEAST_DEPTH, Math.min(asked, ...sides.map(roomAboveDarts)));
  const shoulder = Math.min(...sides.map((side) => lengthOn(side, "shoulder")));
  const isStrapped = shoulder === 0;
  // A strapped edge is one from centre to side: it is faced as a whole.
  const inOne = isStrapped || (neck === "facing" && armhole === "facing" && shoulder < 2 * depth + MADE_AS_ONE);
  const faces: readonly FacedEdges[] = inOne
    ? ["both"]
    : [...(neck === "facing" ? (["neck"] as const) : []), ...(armhole === "facing" ? (["armhole"] as const) : [])];
  const rowsOf = (seam: WalkEdge["seam"]) => sides.map((side) => ofSeam(side, seam).map(({ curve }) => curve));
  const shoulders = rowsOf("shoulder");
  const onShoulderOf = (edges: FacedEdges): Mm =>
    clearOfCorners(
      // From the neck out, or from the armhole in.
      edges === "armhole" ? shoulders.map((row) => row.toReversed()) : shoulders,
      Math.min(depth, shoulder - LEFT_OF_SHOULDER),
    );
  const onSide = clearOfCorners(rowsOf("side"), Math.min(depth, ...sides.map((side) => lengthOn(side, "side"))));
  const piecesOn = (own: readonly [Side, Side] | null): readonly Piece[] =>
    faces.flatMap((edges) =>
      (own ?? []).flatMap((side, at): readonly Piece[] => {
        const [first, second = null] = side.pieces;
        if (first === undefined) return [];
        const name = nameOf(edges, at === 0);
        const onShoulder = onShoulderOf(edges);
        const drawn = facing({ first, second, walked: asked, name, faces: edges, depth, onShoulder, onSide });
        return drawn === null ? [] : [drawn];
      }),
    );
  const ofLeft = piecesOn(sidesOfLeft);
  return { pieces: [ofLeft, right === left ? ofLeft : piecesOn(sidesOfRight)], depth, inOne };
}

const nameOf = (faces: FacedEdges, isFront: boolean): DressPiece =>
  faces === "armhole" ? (isFront ? "frontArmholeFacing" : "backArmholeFacing") : isFront ? "frontFacing" : "backFacing";

interface OneFacing {
  readonly first: Piece;
  readonly second: Piece | null;
  /** How deep the parts of a princess seam are laid together. */
  readonly walked: Mm;
  readonly name: DressPiece;
  readonly faces: FacedEdges;
  readonly depth: Mm;
  readonly onShoulder: Mm;
  readonly onSide: Mm;
}

const facing = remember(
  ["first", "second", "walked", "name", "faces", "depth", "onShoulder", "onSide"],
  ({ first, second, walked, name, faces, depth, onShoulder, onSide }: OneFacing): Piece | null =>
    facingPiece({
      name,
      walk: sideOf({ first, second, depth: walked }).walk,
      centre: centreDown(first),
      faces,
      depth,
      onShoulder,
      onSide,
      isOnFold: first.centreOnFold,
    }),
);

/** How deep a facing can be before it runs into the end of a dart that does not cross it. */
function roomAboveDarts(side: Side): Mm {
  const faced = ofSeam(side, "neck", "strap", "armhole").flatMap(({ curve }) => edgeFlatten(curve, FACING_FOLLOWS));
  const away = (p: PiecePoint): Mm =>
    faced.reduce((least, b, at) => {
      const a = faced[at - 1];
      return a === undefined ? least : Math.min(least, segmentNearest(a, b, p).distance);
    }, Infinity);
  const apexes = side.pieces.flatMap((piece) =>
    piece.darts.filter(({ seam }) => seam === "waist" || seam === "underBust").map(({ apex }) => pointOf(piece, apex)),
  );
  return Math.min(...apexes.map((apex) => away(apex) - CLEAR_OF_DART));
}
