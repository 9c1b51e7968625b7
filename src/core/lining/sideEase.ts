/**
 * Ease let in at a side seam between its ends: at the underarm and at the waist the seam stays where it was, so that the upper
 * edge and the waist still go with the shell's; a third of the way down, over the fullest of the ribs, it lies further out by
 * what is wanted.
 */
import { between, directionOf, shift, type PiecePoint } from "../geometry/point";
import { dartOf, pointOf, type Dart, type Edge, type Piece, type PointName } from "../pattern/piece";
import { bendStretch, stretchLength, type Stretch } from "../pattern/seamStretch";
import { invariant } from "../result";
import { radians, type Mm, type Radians } from "../units";

/** A leg that runs more along the seam than across it is not lengthened for the whole of it (our own choice). */
const ACROSS_LEAST = 0.4;

/** A stretch of the seam between two darts: its edges, where it lies on the whole (shares), and how it runs. */
interface Run {
  readonly stretch: Stretch;
  readonly from: number;
  readonly to: number;
  readonly way: Radians;
  readonly ends: { readonly start: PointName; readonly end: PointName };
  readonly darts: { readonly before: Dart | null; readonly after: Dart | null };
}

/** Which part of a side seam that goes on over several pieces lies on one of them, as shares from the underarm down. */
export interface SidePart {
  readonly from: number;
  readonly to: number;
}

const WHOLE: SidePart = { from: 0, to: 1 };

/** The piece with its side seam further out by so much. A dart there keeps legs that are alike. */
export function easeSide(original: Piece, by: Mm, part: SidePart = WHOLE): Piece {
  if (by === 0) return original;
  const piece: Piece = { ...original, edges: original.edges.map((edge) => withCurve(original, edge)) };
  const runs = runsOf(piece);
  if (runs.length === 0) return original;
  const outAt = (share: number): Mm => by * swell(part.from + (part.to - part.from) * share);
  return runs.reduce<Piece>((done, run) => eased(done, run, runs, outAt), piece);
}

/**
 * Nothing at both ends, one at a third, and without a turn at the lower end, where the waist is square to the seam.
 *
 * @source a cubic, so that a seam of one cubic stays one
 */
const swell = (share: number): number => (27 / 4) * share * (1 - share) * (1 - share);

const smooth = (share: number): number => share * share * (3 - 2 * share);

/** A straight edge of the side seam as a cubic, so that it can be bent. */
function withCurve(piece: Piece, edge: Edge): Edge {
  if (edge.seam !== "side" || edge.mouthOf !== null || edge.curve !== null) return edge;
  const [a, b] = [pointOf(piece, edge.from), pointOf(piece, edge.to)];
  return { ...edge, curve: { c1: between(a, b, 1 / 3), c2: between(a, b, 2 / 3) } };
}

function runsOf(piece: Piece): readonly Run[] {
  const { edges } = piece;
  const start = edges.findIndex((edge, at) => edge.seam === "side" && edges.at(at - 1)?.seam !== "side");
  if (start < 0) return [];
  const parts: { stretch: number[]; before: Dart | null; after: Dart | null }[] = [
    { stretch: [], before: null, after: null },
  ];
  for (let step = 0; step < edges.length; step += 1) {
    const index = (start + step) % edges.length;
    const edge = invariant(edges[index], "edge");
    if (edge.seam !== "side") break;
    const last = invariant(parts.at(-1), "part");
    if (edge.mouthOf === null) {
      last.stretch.push(index);
      continue;
    }
    last.after = dartOf(piece, edge.mouthOf);
    parts.push({ stretch: [], before: last.after, after: null });
  }
  const whole = parts.reduce((sum, { stretch }) => sum + stretchLength(piece, stretch), 0);
  let gone: Mm = 0;
  return parts.flatMap(({ stretch, before, after }): Run[] => {
    const [first, last] = [stretch[0], stretch.at(-1)];
    if (first === undefined || last === undefined) return [];
    const from = gone / whole;
    gone += stretchLength(piece, stretch);
    const ends = { start: invariant(edges[first], "edge").from, end: invariant(edges[last], "edge").to };
    const way = directionOf(pointOf(piece, ends.start), pointOf(piece, ends.end));
    return [{ stretch, from, to: gone / whole, way, ends, darts: { before, after } }];
  });
}

/** How far both legs of a dart are lengthened: across the seam that is what the seam goes out by there. */
function longerLegs(piece: Piece, dart: Dart, runs: readonly Run[], outAt: (share: number) => Mm): Mm {
  const shares = runs.flatMap(({ way, darts, ends, to }) => {
    const end = darts.after === dart ? ends.end : darts.before === dart ? ends.start : null;
    if (end === null) return [];
    const leg = directionOf(pointOf(piece, dart.apex), pointOf(piece, end));
    return [{ across: Math.cos(leg - outwardOf(way)), at: darts.after === dart ? to : null }];
  });
  const at = shares.find((one) => one.at !== null)?.at ?? 1;
  const across = shares.reduce((sum, one) => sum + one.across, 0) / Math.max(1, shares.length);
  return outAt(at) / Math.max(ACROSS_LEAST, across);
}

/** Out of a ring that goes clockwise. */
const outwardOf = (way: Radians): Radians => radians(way - Math.PI / 2);

function eased(piece: Piece, run: Run, runs: readonly Run[], outAt: (share: number) => Mm): Piece {
  const { stretch, from, to, way, ends, darts } = run;
  const out = outwardOf(way);
  /** What an end by a dart goes beyond, or short of, what the seam goes out by. */
  const endOff = (dart: Dart | null, end: "start" | "end"): { readonly x: Mm; readonly y: Mm } => {
    if (dart === null) return { x: 0, y: 0 };
    const leg = directionOf(pointOf(piece, dart.apex), pointOf(piece, ends[end]));
    const [long, wide] = [longerLegs(piece, dart, runs, outAt), outAt(end === "end" ? to : from)];
    return { x: long * Math.cos(leg) - wide * Math.cos(out), y: long * Math.sin(leg) - wide * Math.sin(out) };
  };
  const [off, offAtEnd] = [endOff(darts.before, "start"), endOff(darts.after, "end")];
  return bendStretch(piece, stretch, (point: PiecePoint, share) => {
    const wide = outAt(from + (to - from) * share);
    const [near, far] = [smooth(1 - share), smooth(share)];
    return shift(
      point,
      wide * Math.cos(out) + near * off.x + far * offAtEnd.x,
      wide * Math.sin(out) + near * off.y + far * offAtEnd.y,
    );
  });
}
