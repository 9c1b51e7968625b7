/**
 * Notches: made anew on the pieces as they are after every alteration, so that they meet whatever was moved. Each is measured
 * along the sewn seam from the end where it is walked first, on both pieces; what is eased in is spread over the way.
 */
import type { Closure } from "../decisions/pattern";
import { distance, polar, type PiecePoint } from "../geometry/point";
import { segmentIntersections } from "../geometry/segment";
import { pieceIn, piecesOf, type PieceSet } from "../pattern/pieceSet";
import { seamPairsOf, type SeamPair } from "../pattern/sewnTogether";
import { pointOf, type Piece, type PieceName } from "../pattern/piece";
import { invariant } from "../result";
import { SAME_POINT } from "../tolerance";
import { radians, type Mm, type Radians } from "../units";
import type { Notch, RingPoint } from "./truePiece";
import { alongTo, placeAlong, walkAlong, type Walk, type WalkedPlace } from "./walk";

/** A notch before it is known where the piece is cut. */
export interface NotchPlace extends WalkedPlace {
  readonly kind: Notch["kind"];
  readonly number: number;
  readonly seam: Notch["seam"];
}

/** Shares of the way at which a seam is notched: never the same seen from either end, so that a piece cannot be turned round. */
const SHARES: readonly { readonly upTo: Mm; readonly at: readonly number[] }[] = [
  { upTo: 60, at: [] },
  { upTo: 260, at: [0.42] },
  { upTo: Infinity, at: [0.3, 0.64] },
];
/** On a princess seam, above and below the bust point: between them lies what is eased or stretched (common practice, no source). */
const ABOUT_BUST: Mm = 50;
/** A notch keeps clear of corners, darts and seams by this, mm. */
const CLEAR: Mm = 18;
/** How far a notch is moved to be clear, at a time. */
const STEP: Mm = 3;

/** All notches of a set of pieces but those of darts and folds. Those with one number meet. */
export function notchPlaces(pieces: PieceSet, closure: Closure): readonly NotchPlace[] {
  const places: NotchPlace[] = [];
  let number = 0;
  for (const pair of seamPairsOf(pieces)) {
    for (const two of onPair(pieces, pair)) {
      number += 1;
      places.push(...two.map((place): NotchPlace => ({ ...place, kind: "seam", number, seam: pair.seam })));
    }
  }
  return [...places, ...openingEnds(pieces, closure)];
}

function onPair(set: PieceSet, { seam, first, second, ease }: SeamPair): readonly (readonly WalkedPlace[])[] {
  const [one, other] = [walkOf(set, first, seam), walkOf(set, second, seam)];
  if (one.length === 0 || other.length === 0) return [];
  // As much as the seams really differ by, which is the ease named, or nothing, to within what truing leaves.
  const scale = ease === 0 ? 1 : other.length / one.length;
  const bust = seam === "princess" ? aboutBust(one, other) : null;
  const wanted =
    bust ?? sharesOf(one.length).map((share) => ({ a: share * one.length, b: share * one.length * scale }));
  return wanted
    .flatMap(({ a, b }) => cleared(one, other, a, b))
    .map(({ a, b }) => [placeAlong(one, a), placeAlong(other, b)]);
}

const walkOf = (set: PieceSet, names: readonly PieceName[], seam: SeamPair["seam"]): Walk =>
  walkAlong(
    names.map((name) => pieceIn(set, name)),
    seam,
  );

const sharesOf = (length: Mm): readonly number[] =>
  invariant(
    SHARES.find(({ upTo }) => length <= upTo),
    "shares",
  ).at;

interface Meeting {
  readonly a: Mm;
  readonly b: Mm;
}

/** Above and below the bust point, and a little off it: a third of the way would fall anywhere. */
function aboutBust(one: Walk, other: Walk): readonly Meeting[] | null {
  const [a, b] = [alongTo(one, "princessBust"), alongTo(other, "princessBust")];
  if (a === null || b === null) return null;
  return [-ABOUT_BUST, 0, ABOUT_BUST].map((by) => ({ a: a + by, b: b + by }));
}

/** The nearest place where the notch stands clear on both pieces; none where there is no such place. */
function cleared(one: Walk, other: Walk, a: Mm, b: Mm): readonly Meeting[] {
  const most = Math.min(one.length, other.length) / 3;
  for (let by = 0; by <= most; by += STEP) {
    for (const off of by === 0 ? [0] : [by, -by]) {
      if (isClear(one, a + off) && isClear(other, b + off)) return [{ a: a + off, b: b + off }];
    }
  }
  return [];
}

const isClear = ({ breaks, length }: Walk, along: Mm): boolean =>
  along > 0 && along < length && breaks.every((at) => Math.abs(at - along) >= CLEAR);

/** Where the opening ends below the waist: on the centre back seam, or on both edges of the side seam. */
function openingEnds(pieces: PieceSet, { place, belowWaist }: Closure): readonly NotchPlace[] {
  if (belowWaist <= 0) return [];
  return piecesOf(pieces).flatMap((piece): NotchPlace[] => {
    const isThere =
      place === "centreBack"
        ? piece.name === "backBasque"
        : piece.name === "frontBasque" || piece.name === "backBasque";
    const seam = place === "centreBack" ? "centre" : "side";
    const walk = walkAlong([piece], seam);
    return isThere && belowWaist < walk.length
      ? [{ ...placeAlong(walk, belowWaist), kind: "opening", number: 0, seam }]
      : [];
  });
}

/** Ends of dart legs, and of the centre line where it lies on the fold: each in the way it is snipped. */
export function ownNotches(piece: Piece, onFold: boolean): readonly NotchPlace[] {
  const darts = piece.darts.flatMap((dart): NotchPlace[] => {
    const end = pointOf(piece, dart.apex);
    return [dart.inner, dart.outer].map((name) => {
      const at = pointOf(piece, name);
      return { piece: piece.name, at, outward: wayFrom(end, at), kind: "dart", number: 0, seam: dart.seam };
    });
  });
  if (!onFold) return darts;
  const centre = walkAlong([piece], "centre");
  const [first, last] = [centre.steps[0], centre.steps.at(-1)];
  if (first === undefined || last === undefined) return darts;
  const ends = [first.curve.a, last.curve.b].map((at, index): NotchPlace => {
    const inside = index === 0 ? first.curve.b : last.curve.a;
    return { piece: piece.name, at, outward: wayFrom(inside, at), kind: "centre", number: 0, seam: "centre" };
  });
  return [...darts, ...ends];
}

const wayFrom = (a: PiecePoint, b: PiecePoint): Radians => radians(Math.atan2(b.y - a.y, b.x - a.x));

/** Longer than any allowance, also where one is crossed at a slant, mm. */
const ACROSS: Mm = 300;

/** The notch with its end on the cutting line: the first place where the way out meets it. */
export function cutNotch({ kind, number, seam, at, outward }: NotchPlace, cutting: readonly RingPoint[]): Notch {
  const far = polar(at, outward, ACROSS);
  let cut = at;
  let nearest = Infinity;
  cutting.forEach((from, index) => {
    const to = invariant(cutting[(index + 1) % cutting.length], "point");
    for (const { point } of segmentIntersections(at, far, from.at, to.at)) {
      const off = distance(at, point);
      // The cutting line runs along the fold itself: there the end of it is meant, not the start.
      const isEnd = kind !== "centre" || off > SAME_POINT * 100;
      if (isEnd && off < nearest) [cut, nearest] = [point, off];
    }
  });
  return { kind, number, seam, outward, stitch: at, cut };
}
