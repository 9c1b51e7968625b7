/** Every copy of every part, and the ways in which each may lie on the cloth: plain data, that a worker can be sent. */
import { isPartTurnedOver } from "../cutting/turnedOver";
import type { Allowances } from "../decisions/allowances";
import { cutDepth, cutWidth, type Part, type RectanglePart } from "../parts/part";
import { fail, invariant, ok, type Result } from "../result";
import { SAME_POINT } from "../tolerance";
import type { Mm } from "../units";
import { cutRingOf } from "./cutRing";
import type { LayFailure } from "./cutting";
import { boxOf, boxRing, type Copy, type Ring, type Way } from "./rings";

/** The cloth that is laid on: `usable` mm across, of one layer. */
export interface Ground {
  readonly oneWay: boolean;
  readonly onFold: boolean;
  readonly usable: Mm;
}

interface Turns {
  readonly oneWay: readonly number[];
  readonly both: readonly number[];
}

/** On the bias both slants are alike to the cloth; half a turn is not, where it has a nap. */
const TURNS: Readonly<Record<Part["grain"], Turns>> = {
  along: { oneWay: [0], both: [0, 180] },
  across: { oneWay: [90], both: [90, 270] },
  bias: { oneWay: [45, 315], both: [45, 315, 225, 135] },
};

/** A share of a circle has every slant of the grain in it: one that is too wide as drawn is turned by a quarter, all copies alike. */
const ROUND_TURNS: Turns = TURNS.across;

/** mm. What is added to both ends of each length of a strip that is joined (common practice, no source). */
const JOIN: Mm = 10;
/** More lengths than these nobody joins. */
const MOST_LENGTHS = 12;

/** All that is to be laid. Fails where some part is too wide however it lies. */
export function copiesOf(
  parts: readonly Part[],
  allowances: Allowances,
  ground: Ground,
): Result<readonly Copy[], LayFailure> {
  const copies: Copy[] = [];
  for (const part of parts) {
    const made = ofPart(part, allowances, ground);
    const refused = made.find(({ ways }) => ways.every(({ width }) => !fits(width, ground.usable)));
    if (refused !== undefined) {
      const needed = Math.min(...refused.ways.map(({ width }) => width));
      return fail({ code: "cloth/part-too-wide", key: part.key, needed, width: ground.usable });
    }
    copies.push(...made);
  }
  return ok(copies);
}

const fits = (width: Mm, usable: Mm): boolean => width <= usable + SAME_POINT;

function ofPart(part: Part, allowances: Allowances, ground: Ground): readonly Copy[] {
  const strip = stripOf(part, ground.usable);
  const { open, half } = strip === null ? cutRingOf(part, allowances) : { open: strip.ring, half: null };
  const count = part.cut.count * (strip?.lengths ?? 1);
  const laid = (ways: readonly Way[], layers: 1 | 2, at: readonly number[]): readonly Copy[] => {
    const fitting = ways.filter(({ width }) => fits(width, ground.usable));
    const paper = part.kind === "piece" ? { isPaperMirrored: startsOver(part) } : {};
    return at.map((copy) => ({ key: part.key, copy, layers, ...paper, ways: fitting.length > 0 ? fitting : ways }));
  };
  const all = Array.from({ length: count }, (_, index) => index + 1);
  const turned = turnsOf(part, open, ground);
  const isTurned = turned !== TURNS.along;
  if (ground.onFold && half !== null && !isTurned && (part.cut.onFold || !fits(boxOf(open).width, ground.usable)))
    return laid(foldWays(half, ground), 2, all);
  const turns = ground.oneWay ? turned.oneWay : turned.both;
  const [up, over] = [waysOf(open, turns, false), waysOf(open, turns, true)];
  const isPaired = half === null && strip === null;
  const begin = isPaired && startsOver(part) ? 1 : 0;
  // Each second copy is turned over, but of what is alike on both sides, which may lie either way.
  const alike = part.kind === "sector" ? [...up, ...over] : up;
  const single = (copy: number): readonly Way[] => (!isPaired ? alike : (copy + begin) % 2 === 1 ? up : over);
  if (!ground.onFold) return all.flatMap((copy) => laid(single(copy), 1, [copy]));
  const pairs = all.filter((copy) => copy % 2 === 1 && copy < count);
  return [
    ...laid(isPaired ? [...up, ...over] : alike, 2, pairs),
    ...(count % 2 === 1 ? laid(single(count), 1, [count]) : []),
  ];
}

/** Whether what is cut first, right side of the cloth up, is the mirror image of what is drawn. */
function startsOver(part: Part): boolean {
  if (part.kind === "piece")
    return isPartTurnedOver(part.group, part.piece.name, part.otherHalf === undefined ? part.half : "left");
  const isBack = part.key.startsWith(ROUND_BACK);
  // A quarter is drawn from its centre to its side, as pieces are; what goes over several from her left to her right.
  if (part.cut.count > 1) return false;
  return (part.half === "left") === isBack;
}

/** What the sectors of a back are called by. */
const ROUND_BACK = "circle-back";

function turnsOf(part: Part, open: Ring, { usable }: Ground): Turns {
  const isTooWide = part.kind === "sector" && part.grain === "along" && !fits(boxOf(open).width, usable);
  return isTooWide && fits(boxOf(open).length, usable) ? ROUND_TURNS : TURNS[part.grain];
}

/** A strip on the bias that is too long for the width of the cloth: in so many lengths as it takes, all alike. */
function stripOf(part: Part, usable: Mm): { readonly ring: Ring; readonly lengths: number } | null {
  if (part.kind !== "rectangle" || part.grain !== "bias") return null;
  const { lengths, width, length } = biasLengths(part, usable);
  return { ring: boxRing(width, length), lengths };
}

/** How a strip on the bias is cut: how many lengths, and the cut size of each across and along itself. */
export function biasLengths(
  part: RectanglePart,
  usable: Mm,
): { readonly lengths: number; readonly width: Mm; readonly length: Mm } {
  const [width, length] = [cutWidth(part), cutDepth(part)];
  const [short, long] = [Math.min(width, length), Math.max(width, length)];
  const each = (lengths: number): Mm => (lengths === 1 ? long : long / lengths + 2 * JOIN);
  const counts = Array.from({ length: MOST_LENGTHS }, (_, index) => index + 1);
  const lengths = counts.find((count) => fits((each(count) + short) * Math.SQRT1_2, usable)) ?? MOST_LENGTHS;
  return width > length ? { lengths, width: each(lengths), length } : { lengths, width, length: each(lengths) };
}

const waysOf = (ring: Ring, turns: readonly number[], over: boolean): readonly Way[] =>
  turns.map((turn) => wayOf(ring, turn, over, false));

/** Upside down it is turned over too, so that its straight side stays on the fold. */
const foldWays = (half: Ring, { oneWay }: Ground): readonly Way[] => [
  wayOf(half, 0, false, true),
  ...(oneWay ? [] : [wayOf(half, 180, true, true)]),
];

function wayOf(ring: Ring, turn: number, over: boolean, atFold: boolean): Way {
  const [cos, sin] = invariant(SLANTS.get(turn), "slant");
  const turned = ring.map(({ x: drawn, y }) => {
    const x = over ? -drawn : drawn;
    return { x: x * cos - y * sin, y: x * sin + y * cos };
  });
  const { x, y, width, length } = boxOf(turned);
  const moved = turned.map((spot) => ({ x: spot.x - x, y: spot.y - y }));
  return { ring: moved, width, length, turn, isTurnedOver: over, atFold };
}

/** Cosine and sine by degrees, exact: what is upright stays upright to the last bit. */
const SLANTS: ReadonlyMap<number, readonly [number, number]> = new Map([
  [0, [1, 0]],
  [45, [Math.SQRT1_2, Math.SQRT1_2]],
  [90, [0, 1]],
  [135, [-Math.SQRT1_2, Math.SQRT1_2]],
  [180, [-1, 0]],
  [225, [-Math.SQRT1_2, -Math.SQRT1_2]],
  [270, [0, -1]],
  [315, [Math.SQRT1_2, -Math.SQRT1_2]],
]);
