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
import { isBelowWaist, isFrontPiece } from "../pattern/pieceGroups";
import { invariant } from "../result";
import { SAME_POINT } from "../tolerance";
import { radians, type Mm, type Radians } from "../units";
import type { Notch, NotchCut, RingPoint } from "./truePiece";
import { alongTo, placeAlong, walkAlong, type Walk, type WalkedPlace } from "./walk";

/** A notch before it is known where the piece is cut. */
export interface NotchPlace extends WalkedPlace {
  readonly kind: Notch["kind"];
  readonly number: number;
  readonly seam: Notch["seam"];
  /** Of a double notch: the two places it is cut at. */
  readonly twins?: readonly [WalkedPlace, WalkedPlace];
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
/** From one to the other of a double notch, mm (common practice, no source: 6 mm, ¼ in). */
const DOUBLE: Mm = 6;
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
  return [...places, ...balanceMarks(pieces), ...openingEnds(pieces, closure)];
}

/** What meets has one shape on both pieces: double only where backs alone meet (the trade's custom). */
const isDouble = ({ first, second }: SeamPair): boolean => [...first, ...second].every((name) => isBackPiece(name));
const isBackPiece = (name: PieceName): boolean => !isFrontPiece(name) && name !== "strap";

/** Single on a front armhole, double on a back one, so that facing or lining cannot be put in the wrong way round. */
const ARMHOLES: readonly (readonly PieceName[])[] = [
  ["front"],
  ["centreFront", "sideFront"],
  ["cup"],
  ["back"],
  ["frontFacing"],
  ["backFacing"],
  ["frontArmholeFacing"],
  ["backArmholeFacing"],
];
/** How far down the armhole from its upper end. */
const BALANCE_AT = 0.58;
/** A shorter armhole has no room for one. */
const BALANCED: Mm = 90;

function balanceMarks(set: PieceSet): readonly NotchPlace[] {
  return ARMHOLES.flatMap((names): NotchPlace[] => {
    const pieces = names.flatMap((name) => set[name] ?? []);
    if (pieces.length < names.length) return [];
    const walk = walkAlong(pieces, "armhole");
    const at = BALANCE_AT * walk.length;
    if (walk.length < BALANCED || !isClear(walk, at)) return [];
    const place = marked(walk, at, names.every(isBackPiece));
    return [{ ...place, kind: "balance", number: 0, seam: "armhole" }];
  });
}

/** A place on a walk, and where it is double the two about it. */
const marked = (walk: Walk, at: Mm, double: boolean): WalkedPlace & Pick<NotchPlace, "twins"> => ({
  ...placeAlong(walk, at),
  ...(double ? { twins: [placeAlong(walk, at - DOUBLE / 2), placeAlong(walk, at + DOUBLE / 2)] } : {}),
});

function onPair(set: PieceSet, pair: SeamPair): readonly (readonly (WalkedPlace & Pick<NotchPlace, "twins">)[])[] {
  const { seam, first, second, ease } = pair;
  const [one, other] = [walkOf(set, first, seam), walkOf(set, second, seam)];
  if (one.length === 0 || other.length === 0) return [];
  // As much as the seams really differ by, which is the ease named, or nothing, to within what truing leaves.
  const scale = ease === 0 ? 1 : other.length / one.length;
  const bust = seam === "princess" ? aboutBust(one, other) : null;
  const wanted =
    bust ?? sharesOf(one.length).map((share) => ({ a: share * one.length, b: share * one.length * scale }));
  return wanted
    .flatMap(({ a, b }) => cleared(one, other, a, b))
    .map(({ a, b }) => [marked(one, a, isDouble(pair)), marked(other, b, isDouble(pair))]);
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
        ? isBelowWaist(piece.name) && !isFrontPiece(piece.name) && !piece.centreOnFold
        : isBelowWaist(piece.name);
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

/** How deep a notch goes from the cutting line, mm: never to the stitch line, where it would open the seam. */
const NOTCH_DEPTH: Mm = 5;
const NOTCH_SHARE = 0.6;

/** How deep a notch goes: 0 where there is no allowance to cut it in. */
export const notchDepth = ({ stitch, cut }: NotchCut): Mm => Math.min(NOTCH_DEPTH, NOTCH_SHARE * distance(stitch, cut));

/** The notch with its ends on the cutting line. */
export function cutNotch(place: NotchPlace, cutting: readonly RingPoint[]): Notch {
  const { kind, number, seam, outward, twins } = place;
  const cutAt = ({ at, outward: way }: WalkedPlace): NotchCut => ({ stitch: at, cut: wayOut(kind, at, way, cutting) });
  return {
    kind,
    number,
    seam,
    outward,
    ...cutAt(place),
    ...(twins === undefined ? {} : { twins: [cutAt(twins[0]), cutAt(twins[1])] }),
  };
}

/** The first place where the way out meets the cutting line. */
function wayOut(kind: Notch["kind"], at: PiecePoint, outward: Radians, cutting: readonly RingPoint[]): PiecePoint {
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
  return cut;
}
