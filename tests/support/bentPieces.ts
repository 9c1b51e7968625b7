/**
 * The same pieces drawn with a bend within each of their curves: the curve cut in two by de Casteljau, so that the outline is just
 * the same line. What is done to such a piece must come out as it does without the bends.
 */
import { pieceIn, piecesOf, setOf, type PieceSet } from "../../src/core/pattern/pieceSet";
import {
  isBend,
  pointNames,
  pointOf,
  type BendName,
  type Edge,
  type NamedPoint,
  type Piece,
  type PointName,
  type SeamName,
} from "../../src/core/pattern/piece";
import { piecePoint, type PiecePoint } from "../../src/core/geometry/point";
import { applyAlteration } from "../../src/core/alterations/applyAlteration";
import type { AlterationTrace } from "../../src/core/alterations/outcome/trace";
import type { Alteration } from "../../src/core/decisions/alteration";
import { bustPointOf, garment, type Garment } from "./garments";
import { seamByBezierJs } from "./independent";

const along = (a: PiecePoint, b: PiecePoint, t: number): PiecePoint =>
  piecePoint(a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t);

const bendAt = (count: number): BendName => {
  const digits = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9] as const;
  const [tens, units] = [digits[Math.floor(count / 10)], digits[count % 10]];
  if (tens === undefined || units === undefined) throw new Error("bends");
  return `bend0${tens}${units}`;
};

/** The piece with its curves cut at t, but those of some seams; a mouth and a straight edge stay one. */
export function withBends(piece: Piece, t: number, but: readonly SeamName[] = []): Piece {
  const points: Partial<Record<PointName, NamedPoint>> = { ...piece.points };
  let count = 0;
  const edges = piece.edges.flatMap((edge): Edge[] => {
    if (edge.mouthOf !== null || edge.curve === null || but.includes(edge.seam)) return [edge];
    const [a, b, { c1, c2 }] = [pointOf(piece, edge.from), pointOf(piece, edge.to), edge.curve];
    const [ab, bc, cd] = [along(a, c1, t), along(c1, c2, t), along(c2, b, t)];
    const [abc, bcd] = [along(ab, bc, t), along(bc, cd, t)];
    const bend = bendAt(count);
    count += 1;
    points[bend] = { at: along(abc, bcd, t), level: "bust" };
    return [
      { ...edge, to: bend, curve: { c1: ab, c2: abc } },
      { ...edge, from: bend, curve: { c1: bcd, c2: cd } },
    ];
  });
  return { ...piece, points, edges };
}

const CHORDS = 32;
const cubicAt = (piece: Piece, { from, to, curve }: Edge, t: number): PiecePoint => {
  const [a, b] = [pointOf(piece, from), pointOf(piece, to)];
  const { c1, c2 } = curve ?? { c1: along(a, b, 1 / 3), c2: along(a, b, 2 / 3) };
  const [p, q, r, s] = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3];
  return piecePoint(p * a.x + q * c1.x + r * c2.x + s * b.x, p * a.y + q * c1.y + r * c2.y + s * b.y);
};

function fromSegment(p: PiecePoint, a: PiecePoint, b: PiecePoint): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / square));
  return Math.hypot(a.x + dx * t - p.x, a.y + dy * t - p.y);
}

/** How far the line of a bent piece lies off that of the plain one, at its bends and half-way between them and the corners. */
function lineOff(plain: Piece, bent: Piece, seam: SeamName): number {
  const chords = plain.edges
    .filter((edge) => edge.seam === seam)
    .flatMap((edge) =>
      Array.from(
        { length: CHORDS },
        (_, i) => [cubicAt(plain, edge, i / CHORDS), cubicAt(plain, edge, (i + 1) / CHORDS)] as const,
      ),
    );
  return bent.edges
    .filter((edge) => edge.seam === seam && (isBend(edge.from) || isBend(edge.to)))
    .flatMap((edge) => [0, 0.25, 0.5, 0.75].map((t) => cubicAt(bent, edge, t)))
    .reduce((most, p) => Math.max(most, Math.min(...chords.map(([a, b]) => fromSegment(p, a, b)))), 0);
}

export interface BentLimits {
  /** What corners may lie apart, seams be longer or shorter, and lines lie beside each other; mm. */
  readonly corner: number;
  readonly seam: number;
  readonly line: number;
}

const isJoin = (name: PointName): boolean => name.startsWith("cut");

/** What is not the same on a piece with bends as on the one without, in words. */
export function bentOff(plain: Piece, bent: Piece, { corner, seam, line }: BentLimits): readonly string[] {
  const corners = pointNames(plain).flatMap((name) => {
    const [p, q] = [pointOf(plain, name), bent.points[name]?.at];
    // Where a shut dart is joined up, one has a corner and the other may have none.
    if (q === undefined) return isJoin(name) ? [] : [`${name} is missing`];
    const off = Math.hypot(p.x - q.x, p.y - q.y);
    return off <= corner ? [] : [`${name} is ${off} off`];
  });
  const seams = [...new Set(plain.edges.map((edge) => edge.seam))].flatMap((name) => {
    const longer = Math.abs(seamByBezierJs(plain, name) - seamByBezierJs(bent, name));
    const beside = lineOff(plain, bent, name);
    return [
      ...(longer <= seam ? [] : [`${name} is ${longer} longer or shorter`]),
      ...(beside <= line ? [] : [`${name} lies ${beside} beside`]),
    ];
  });
  return [...corners, ...seams].map((said) => `${plain.name}: ${said}`);
}

/** The same of all pieces that were changed, and of nothing else. */
function setOff(before: PieceSet, plain: PieceSet, bent: PieceSet, limits: BentLimits): readonly string[] {
  const names = piecesOf(plain).map(({ name }) => name);
  const others = piecesOf(bent).filter(({ name }) => !names.includes(name));
  return [
    ...piecesOf(plain).flatMap((piece) =>
      before[piece.name] === piece ? [] : bentOff(piece, pieceIn(bent, piece.name), limits),
    ),
    ...others.map(({ name }) => `${name} is there`),
  ];
}

/** A garment, and the same with bends. */
interface PlainAndBent {
  readonly plain: PieceSet;
  readonly bent: PieceSet;
}

/** A princess seam with bends is one of the pattern's own, which is walked by other rules: it has none. */
export const withAndWithout = (style: Garment["style"]): PlainAndBent => {
  const plain = garment({ style });
  return { plain, bent: setOf(piecesOf(plain).map((piece) => withBends(piece, 0.45, ["princess"]))) };
};

/**
 * In what an alteration of the bent pieces differs from that of the plain ones; a refusal is to be just the same.
 *
 * @param told what the lengths that are told may differ by, mm
 */
export function unlikeWithBends(
  { plain, bent }: PlainAndBent,
  alteration: Alteration,
  limits: BentLimits,
  told = 0.01,
): readonly unknown[] {
  const context = { bustPoint: bustPointOf(plain) };
  const [one, other] = [plain, bent].map((pieces) => applyAlteration(pieces, alteration, context));
  if (one?.ok !== true || other?.ok !== true) return JSON.stringify(one) === JSON.stringify(other) ? [] : [one, other];
  const [was, is] = [one.value.trace, other.value.trace];
  const values = Object.entries({ ...is.values, ...was.values }).filter(
    ([key, value]) => !(Math.abs((is.values[key] ?? Number.NaN) - value) <= told),
  );
  const partsOf = ({ surgery, given }: AlterationTrace): string =>
    JSON.stringify([
      surgery.map(({ piece, parts }) => [piece, parts.length]),
      given.map(({ place, piece }) => [place, piece]),
    ]);
  return [
    ...setOff(plain, one.value.pieces, other.value.pieces, limits),
    ...values,
    ...(partsOf(was) === partsOf(is) ? [] : [partsOf(was), partsOf(is)]),
  ];
}
