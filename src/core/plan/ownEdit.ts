/** What is said of a file of outlines, a move at a time: each gives the pattern with it said, and shares what it leaves alone. */
import { LIMITS } from "../decisions/limits";
import type {
  CornerSaid,
  DartSaid,
  LineFeature,
  LineMeaning,
  OwnCorner,
  OwnPattern,
  OwnPieceSaid,
} from "../decisions/ownPattern";
import type { DartName, OtherPiece, PieceName, SeamName } from "../pattern/piece";
import { OTHER_PIECES } from "../pattern/pieceSet";
import type { Mm } from "../units";

/** What was said of a piece so far; of one that nothing was said of, nothing. */
export const saidOfPiece = (own: OwnPattern, id: string): OwnPieceSaid =>
  own.pieces.find((piece) => piece.id === id) ?? { id, name: null };

/** What is said of a piece now, over what the reading made of what was said a moment ago. */
export function saidNow<T extends OwnPieceSaid>(own: OwnPattern, read: T): T {
  const said = saidOfPiece(own, read.id);
  const allowances = { ...read.allowances, ...said.allowances };
  return { ...read, ...said, allowances, name: said.name ?? read.name };
}

/** With something else said of one piece. */
export function withPieceSaid(own: OwnPattern, id: string, change: (said: OwnPieceSaid) => OwnPieceSaid): OwnPattern {
  const at = own.pieces.findIndex((piece) => piece.id === id);
  const next = change(saidOfPiece(own, id));
  if (at >= 0) return { ...own, pieces: own.pieces.with(at, next) };
  return own.pieces.length >= LIMITS.filePieces ? own : { ...own, pieces: [...own.pieces, next] };
}

/** What one kind of lines is. */
export const withLines = (own: OwnPattern, value: string, meaning: LineMeaning): OwnPattern => ({
  ...own,
  lines: { ...own.lines, [value]: meaning },
});

/** Sorted by another feature: what was said of the kinds of the old one goes with it. */
export function withSortBy(own: OwnPattern, feature: LineFeature): OwnPattern {
  const { lines: _, ...rest } = own;
  return { ...rest, sortBy: feature };
}

/** null: the usual. */
export function withJoin(own: OwnPattern, within: Mm | null): OwnPattern {
  const { joinWithin: _, ...rest } = own;
  return within === null ? rest : { ...rest, joinWithin: Math.min(within, LIMITS.length) };
}

export function withKnown(own: OwnPattern, known: OwnPattern["known"] | null): OwnPattern {
  const { known: _, ...rest } = own;
  return known === null || known === undefined || !isLength(known.length) ? rest : { ...rest, known };
}

const isLength = (length: Mm): boolean => length > 0 && length <= LIMITS.length;

/** null: not said. */
export function withCup(own: OwnPattern, cup: string | null): OwnPattern {
  const { cup: _, ...rest } = own;
  return cup === null ? rest : { ...rest, cup };
}

export function withInUse(own: OwnPattern, inUse: boolean): OwnPattern {
  const { inUse: _, ...rest } = own;
  return inUse ? { ...rest, inUse } : rest;
}

/** The first name of those without a name of ours that no other piece has; null: all are taken. */
export const freeOther = (own: OwnPattern, id: string): OtherPiece | null =>
  OTHER_PIECES.find((name) => own.pieces.every((piece) => piece.id === id || piece.name !== name)) ?? null;

/** Named, or nothing of the pattern, or neither yet. */
export function named(said: OwnPieceSaid, name: PieceName | "nothing" | null): OwnPieceSaid {
  const { leftOut: _, ...rest } = said;
  return name === "nothing" ? { ...rest, name: null, leftOut: true } : { ...rest, name };
}

export function withLabel(said: OwnPieceSaid, label: string | null): OwnPieceSaid {
  const { label: _, ...rest } = said;
  return label === null ? rest : { ...rest, label: label.slice(0, LIMITS.text) };
}

/** The same allowance on each of these seams; held to what is ever cut. */
export function withAllowance(said: OwnPieceSaid, seams: readonly SeamName[], value: Mm): OwnPieceSaid {
  const held = Math.min(LIMITS.allowance, Math.max(0, value));
  return { ...said, allowances: { ...said.allowances, ...Object.fromEntries(seams.map((seam) => [seam, held])) } };
}

/** A corner where she points; of that size alone, as the others follow. */
export function withCorner(said: OwnPieceSaid, corner: CornerSaid): OwnPieceSaid {
  const before = said.corners ?? [];
  const at = before.findIndex(({ name, size }) => name === corner.name && size === corner.size);
  if (at < 0 && before.length >= LIMITS.fileCorners) return said;
  return { ...said, corners: at < 0 ? [...before, corner] : before.with(at, corner) };
}

/** A corner as the reading finds it, in every size. */
export function withoutCorner(said: OwnPieceSaid, corner: OwnCorner): OwnPieceSaid {
  const { corners = [], ...rest } = said;
  const left = corners.filter(({ name }) => name !== corner);
  return left.length === 0 ? rest : { ...rest, corners: left };
}

/** A dart where she points, in place of what was said of it before. */
export function withDart(said: OwnPieceSaid, dart: DartSaid): OwnPieceSaid {
  const { darts = [], ...rest } = dartForgotten(said, dart.name);
  return darts.length >= LIMITS.fileCorners ? said : { ...rest, darts: [...darts, dart] };
}

/** It is no dart. */
export function withoutDart(said: OwnPieceSaid, dart: DartName): OwnPieceSaid {
  const { notDarts = [], ...rest } = dartForgotten(said, dart);
  return { ...rest, notDarts: [...notDarts, dart] };
}

/** Nothing is said of that dart any more. */
export function dartForgotten(said: OwnPieceSaid, dart: DartName): OwnPieceSaid {
  const { darts = [], notDarts = [], ...rest } = said;
  const left = darts.filter(({ name }) => name !== dart);
  const none = notDarts.filter((name) => name !== dart);
  return {
    ...rest,
    ...(left.length === 0 ? {} : { darts: left }),
    ...(none.length === 0 ? {} : { notDarts: none }),
  };
}

export function withBustPoint(said: OwnPieceSaid, bustPoint: OwnPieceSaid["bustPoint"] | null): OwnPieceSaid {
  const { bustPoint: _, ...rest } = said;
  return bustPoint === null || bustPoint === undefined ? rest : { ...rest, bustPoint };
}

/** Seams of a piece beyond whose stitch line there can be an allowance: as the reading finds them, but for one on the fold. */
export const seamsAllowed = ({ allowances = {}, centreOnFold }: OwnPieceSaid): readonly SeamName[] =>
  SEAM_ORDER.filter((seam) => allowances[seam] !== undefined && !(seam === "centre" && centreOnFold === true));

const SEAM_ORDER: readonly SeamName[] = [
  "centre",
  "neck",
  "shoulder",
  "strap",
  "armhole",
  "princess",
  "side",
  "underBust",
  "waist",
  "hem",
  "edge",
];

export const isOther = (name: PieceName): name is OtherPiece => OTHER_PIECES.some((other) => other === name);
