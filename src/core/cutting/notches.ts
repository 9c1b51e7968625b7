/**
 * Notches: made anew on the pieces as they are after every alteration, so that they meet whatever was moved. Each is measured
 * along the sewn seam from the end where it is walked first, on both pieces; what is eased in is spread over the way.
 */
import type { Closure } from "../decisions/pattern";
import { distance, polar, type PiecePoint } from "../geometry/point";
import { segmentIntersections } from "../geometry/segment";
import { isSamePiece, pieceIn, piecesOf, type PieceSet } from "../pattern/pieceSet";
import { seamPairsOf, type SeamPair } from "../pattern/sewnTogether";
import { pointOf, type Piece, type PieceName } from "../pattern/piece";
import { isBelowWaist, isFrontPiece } from "../pattern/pieceGroups";
import { invariant } from "../result";
import { SAME_POINT } from "../tolerance";
import { radians, type Mm, type Radians } from "../units";
import type { Notch, NotchCut, RingPoint } from "./truePiece";
import { alongAt, alongTo, placeAlong, walkAlong, type Walk, type WalkedPlace } from "./walk";

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

/** The numbers of the notches of a dress: a seam between the same pieces has the same ones in every layer of it. */
export type Numbers = Map<string, number>;

/** The same of both halves, the wearer's left one first. */
export type OfHalves<T> = readonly [left: T, right: T];

/** All notches of a set of pieces but those of darts and folds. Those with one number meet. */
export const notchPlaces = (pieces: PieceSet, closure: Closure): readonly NotchPlace[] =>
  notchesOfHalves([pieces, pieces], closure)[0];

/**
 * The same of both halves. A piece that is alike on both is notched once, where its partner of either half can meet it.
 *
 * @param numbers those given so far, to which these are added
 * @param shell what already hangs on pieces of these sets: what hangs there besides meets their notches as they are
 */
export function notchesOfHalves(
  sets: OfHalves<PieceSet>,
  closure: Closure,
  numbers: Numbers = new Map(),
  shell?: OfHalves<readonly NotchPlace[]>,
): OfHalves<readonly NotchPlace[]> {
  const places: OfHalves<NotchPlace[]> = [[], []];
  const put = (half: 0 | 1, { seam }: SeamPair, two: Two, number: number): void => {
    places[half].push(...two.map((place): NotchPlace => ({ ...place, kind: "seam", number, seam })));
  };
  const pairs = ofHalves((half) => seamPairsOf(sets[half]));
  for (const [key, pair] of new Map(pairs.flat().map((own) => [keyOfPair(own), own]))) {
    if (shell !== undefined && !pair.first.some(isBelowWaist)) {
      for (const half of HALVES)
        for (const { two, number } of metOnShell(sets[half], pair, shell[half])) put(half, pair, two, number);
      continue;
    }
    const there = ofHalves((half) => pairs[half].find((own) => keyOfPair(own) === key) ?? null);
    for (const [index, both] of onPair(sets, there).entries()) {
      if (both.every((two) => two === null)) continue;
      const number = numbers.get(`${key} ${index}`) ?? numbers.size + 1;
      numbers.set(`${key} ${index}`, number);
      for (const half of HALVES) {
        const two = both[half];
        if (two !== null) put(half, pair, two, number);
      }
    }
  }
  const balance = balanceMarks(sets);
  return ofHalves((half) => [...places[half], ...balance[half], ...openingEnds(sets[half], closure)]);
}

const HALVES = [0, 1] as const;
const ofHalves = <T>(of: (half: 0 | 1) => T): OfHalves<T> => [of(0), of(1)];

const keyOfPair = ({ seam, first, second }: SeamPair): string => `${seam} ${first.join("+")} ${second.join("+")}`;

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

function balanceMarks(sets: OfHalves<PieceSet>): OfHalves<readonly NotchPlace[]> {
  const [left, right] = ofHalves((half) => ARMHOLES.map((names) => balanceMark(sets[half], names)));
  // Its way there may differ between the halves, but a piece that is alike on both is marked once.
  const shared = right.map((mark, index) => {
    const other = left[index];
    return other !== null && other !== undefined && isShared(sets, [other.piece]) ? other : mark;
  });
  return [left.flatMap((mark) => mark ?? []), shared.flatMap((mark) => mark ?? [])];
}

function balanceMark(set: PieceSet, names: readonly PieceName[]): NotchPlace | null {
  const pieces = names.flatMap((name) => set[name] ?? []);
  if (pieces.length < names.length) return null;
  const walk = walkAlong(pieces, "armhole");
  const at = BALANCE_AT * walk.length;
  if (walk.length < BALANCED || !isClear(walk, at)) return null;
  return { ...marked(walk, at, names.every(isBackPiece)), kind: "balance", number: 0, seam: "armhole" };
}

/** Whether pieces are alike on both halves. */
const isShared = ([left, right]: OfHalves<PieceSet>, names: readonly PieceName[]): boolean =>
  left === right || names.every((name) => isSamePiece(left[name], right[name]));

/** A place on a walk, and where it is double the two about it. */
const marked = (walk: Walk, at: Mm, double: boolean): WalkedPlace & Pick<NotchPlace, "twins"> => ({
  ...placeAlong(walk, at),
  ...(double ? { twins: [placeAlong(walk, at - DOUBLE / 2), placeAlong(walk, at + DOUBLE / 2)] } : {}),
});

type Two = readonly (WalkedPlace & Pick<NotchPlace, "twins">)[];

/** A seam of one half: both of its sides, and how much longer the second is walked than the first. */
interface Sewn {
  readonly pair: SeamPair;
  readonly one: Walk;
  readonly other: Walk;
  readonly scale: number;
}

function sewnOf(set: PieceSet, pair: SeamPair): Sewn | null {
  const { seam, first, second, ease } = pair;
  const [one, other] = [walkOf(set, first, seam), walkOf(set, second, seam)];
  if (one.length === 0 || other.length === 0) return null;
  // As much as the seams really differ by, which is the ease named, or nothing, to within what truing leaves.
  return { pair, one, other, scale: ease === 0 ? 1 : other.length / one.length };
}

const wantedOn = ({ pair, one, other, scale }: Sewn, shares = sharesOf(one.length)): readonly Meeting[] =>
  (pair.seam === "princess" ? aboutBust(one, other) : null) ??
  shares.map((share) => ({ a: share * one.length, b: share * one.length * scale }));

const twoAt = ({ pair, one, other }: Sewn, { a, b }: Meeting): Two => [
  marked(one, a, isDouble(pair)),
  marked(other, b, isDouble(pair)),
];

/** The notches of a seam on both halves, in the order in which they are walked; null where a half has none there. */
function onPair(sets: OfHalves<PieceSet>, pairs: OfHalves<SeamPair | null>): readonly OfHalves<Two | null>[] {
  const [left, right] = ofHalves((half) => {
    const pair = pairs[half];
    return pair === null ? null : sewnOf(sets[half], pair);
  });
  if (left !== null && right !== null && sets[0] !== sets[1]) {
    const [isFirst, isSecond] = [isShared(sets, left.pair.first), isShared(sets, left.pair.second)];
    if (isFirst || isSecond) return onShared(left, right, isFirst);
  }
  if (left !== null && right !== null && sets[0] !== sets[1]) return onPieces(sets, left, right);
  const [these, those] = [allAlone(left), sets[0] === sets[1] ? null : allAlone(right)];
  const most = Math.max(these.length, those?.length ?? 0);
  return Array.from({ length: most }, (_, index) => {
    const here = these[index] ?? null;
    return [here, those === null ? here : (those[index] ?? null)] as const;
  });
}

const allAlone = (sewn: Sewn | null): readonly (Two | null)[] =>
  sewn === null ? [] : wantedOn(sewn).map((meeting) => alone(sewn, meeting));

function alone(sewn: Sewn, wanted: Meeting): Two | null {
  const off = clearOff([sewn], [wanted]);
  return off === null ? null : twoAt(sewn, moved(wanted, off));
}

/** One side of the seam is a piece that is alike on both halves: it is notched where it is clear of what either half has there. */
function onShared(left: Sewn, right: Sewn, isFirst: boolean): readonly OfHalves<Two | null>[] {
  const [these, those] = [wantedOn(left), wantedOn(right, sharesOf(left.one.length))];
  return these.map((wanted, index) => {
    const there = those[index] ?? wanted;
    const met = isFirst ? { a: wanted.a, b: there.b } : { a: wanted.b / right.scale, b: wanted.b };
    const off = clearOff([left, right], [wanted, met]);
    return off === null
      ? [alone(left, wanted), alone(right, met)]
      : [twoAt(left, moved(wanted, off)), twoAt(right, moved(met, off))];
  });
}

/**
 * Both sides of the seam differ between the halves, but a piece on either may be alike: a notch that comes on it stands at one
 * place of it, and its partner on the other half moves along.
 */
function onPieces(sets: OfHalves<PieceSet>, left: Sewn, right: Sewn): readonly OfHalves<Two | null>[] {
  const [these, those] = [wantedOn(left), wantedOn(right)];
  const alikeAt = (here: Walk, there: Walk, along: Mm): Mm | null => {
    const place = placeAlong(here, along);
    const isThere = there.steps.some(({ piece }) => piece === place.piece);
    return isThere && isShared(sets, [place.piece]) ? alongAt(there, place) : null;
  };
  return Array.from({ length: Math.max(these.length, those.length) }, (_, index) => {
    const [wanted, own] = [these[index], those[index]];
    if (wanted === undefined || own === undefined)
      return [wanted === undefined ? null : alone(left, wanted), own === undefined ? null : alone(right, own)] as const;
    const [a, b] = [alikeAt(left.one, right.one, wanted.a), alikeAt(left.other, right.other, wanted.b)];
    const met = { a: a ?? (b === null ? own.a : b / right.scale), b: b ?? (a === null ? own.b : a * right.scale) };
    if (a === null && b === null) return [alone(left, wanted), alone(right, own)] as const;
    const off = clearOff([left, right], [wanted, met]);
    return off === null
      ? ([alone(left, wanted), alone(right, own)] as const)
      : ([twoAt(left, moved(wanted, off)), twoAt(right, moved(met, off))] as const);
  });
}

/** What hangs on pieces that are notched already, at those notches: as many as are clear there. */
function metOnShell(
  set: PieceSet,
  pair: SeamPair,
  shell: readonly NotchPlace[],
): readonly { readonly two: Two; readonly number: number }[] {
  const sewn = sewnOf(set, pair);
  if (sewn === null) return [];
  return shell
    .filter(({ kind, seam, piece }) => kind === "seam" && seam === pair.seam && pair.first.includes(piece))
    .flatMap((place) => {
      const a = alongAt(sewn.one, place);
      const b = a * sewn.scale;
      return isClear(sewn.other, b) ? [{ two: twoAt(sewn, { a, b }), number: place.number }] : [];
    });
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

const moved = ({ a, b }: Meeting, off: Mm): Meeting => ({ a: a + off, b: b + off });

/** How far a notch is moved along to stand clear on every side that it meets; null where there is no such place. */
function clearOff(sewn: readonly Sewn[], meetings: readonly Meeting[]): Mm | null {
  const most = Math.min(...sewn.flatMap(({ one, other }) => [one.length, other.length])) / 3;
  const isFree = (off: Mm): boolean =>
    sewn.every(({ one, other }, index) => {
      const { a, b } = invariant(meetings[index], "meeting");
      return isClear(one, a + off) && isClear(other, b + off);
    });
  for (let by = 0; by <= most; by += STEP) {
    const off = (by === 0 ? [0] : [by, -by]).find(isFree);
    if (off !== undefined) return off;
  }
  return null;
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

/** Ends of dart legs, the middle of a strap's seam, and ends of the centre line where it lies on the fold: each in the way it is snipped. */
export function ownNotches(piece: Piece, onFold: boolean): readonly NotchPlace[] {
  const darts = piece.darts.flatMap((dart): NotchPlace[] => {
    const end = pointOf(piece, dart.apex);
    return [dart.inner, dart.outer].map((name) => {
      const at = pointOf(piece, name);
      return { piece: piece.name, at, outward: wayFrom(end, at), kind: "dart", number: 0, seam: dart.seam };
    });
  });
  const own = [...darts, ...strapMiddle(piece)];
  if (!onFold) return own;
  const centre = walkAlong([piece], "centre");
  const [first, last] = [centre.steps[0], centre.steps.at(-1)];
  if (first === undefined || last === undefined) return own;
  const ends = [first.curve.a, last.curve.b].map((at, index): NotchPlace => {
    const inside = index === 0 ? first.curve.b : last.curve.a;
    return { piece: piece.name, at, outward: wayFrom(inside, at), kind: "centre", number: 0, seam: "centre" };
  });
  return [...own, ...ends];
}

/** Of a piece that a strap is sewn on to. A narrower or a wider strap than the seam is set about the same place. */
function strapMiddle(piece: Piece): readonly NotchPlace[] {
  if (piece.name === "strap") return [];
  const walk = walkAlong([piece], "strap");
  return walk.length === 0 ? [] : [{ ...placeAlong(walk, walk.length / 2), kind: "strap", number: 0, seam: "strap" }];
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
