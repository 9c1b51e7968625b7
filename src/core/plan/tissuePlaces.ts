/**
 * Where the points of a finished piece lie on the printed tissue: each from its own printed place, or, where the tissue has
 * no such point, from the printed corner nearest to it. Amounts that add up over the work are told once, as what comes of it.
 */
import { distance, type PiecePoint } from "../geometry/point";
import { edgeLength } from "../geometry/edgeCurve";
import {
  isNumbered,
  pointOf,
  type DartName,
  type Edge,
  type Piece,
  type PieceName,
  type PointName,
  type SeamName,
} from "../pattern/piece";
import { curveOf } from "../pattern/ring";
import { remember } from "../remember";
import { READS_AS_NOTHING } from "../tolerance";
import type { Mm } from "../units";

export interface TissuePlace {
  readonly point: PointName;
  /** The printed point it is found from: itself, where the tissue has it. */
  readonly from: PointName;
  /** Square to the grain: positive away from the centre line. */
  readonly out: Mm;
  /** Along the grain. */
  readonly down: Mm;
  /** Told from where the blend marked it, straight down (or up) from there. */
  readonly isFromMark?: true;
}

/** What can be found on any tissue, in the order it is told: down the centre, along the top, down the side. */
const CORNERS: readonly PointName[] = [
  "centreNeck",
  "neckCorner",
  "sideNeck",
  "shoulderTip",
  "armholeTouch",
  "strapInner",
  "strapOuter",
  "princessTop",
  "underarm",
  "sideBust",
  "sideUnderBust",
  "sideWaist",
  "sideHip",
  "sideHem",
  "centreHem",
  "centreHip",
  "centreWaist",
  "underBustCentre",
  "centreBust",
  "princessBust",
  "princessWaist",
  "strapFrontInner",
  "strapFrontOuter",
  "strapBackInner",
  "strapBackOuter",
  "bustPoint",
];

const SEEN: ReadonlySet<PointName> = new Set(CORNERS);

/** The piece as it is printed; what a style seam made of a front is found on the front's tissue. */
export const printedOf = (printed: readonly Piece[], name: PieceName): Piece | undefined =>
  printed.find((piece) => piece.name === name) ??
  (name === "centreFront" || name === "sideFront" ? printed.find((piece) => piece.name === "front") : undefined);

/** The place of a point of the piece; null where the piece or the tissue has none to tell it by. */
export function tissuePlace(printed: Piece, piece: Piece, point: PointName): TissuePlace | null {
  const at = piece.points[point]?.at;
  if (at === undefined) return null;
  const from = printed.points[point] === undefined ? nearestCorner(printed, at) : point;
  const known = from === null ? undefined : printed.points[from]?.at;
  return from === null || known === undefined ? null : { point, from, out: at.x - known.x, down: at.y - known.y };
}

function nearestCorner(printed: Piece, at: PiecePoint): PointName | null {
  let nearest: PointName | null = null;
  let least = Infinity;
  for (const name of CORNERS) {
    const place = printed.points[name]?.at;
    const isPlain = printed.edges.some(({ from }) => from === name) || name === "bustPoint";
    if (place === undefined || !isPlain || distance(place, at) >= least) continue;
    nearest = name;
    least = distance(place, at);
  }
  return nearest;
}

const lies = ({ point, from, out, down }: TissuePlace): boolean =>
  point === from && Math.hypot(out, down) <= READS_AS_NOTHING;

/** Corners of a piece that the planner has no name for; it has no others. */
const ownCornersOf = (piece: Piece): readonly PointName[] =>
  piece.edges.flatMap(({ from }) => (isNumbered(from) ? [from] : []));

/** The ends of mouths of darts that are not drawn by a job of their own: of gathers, and where a seam alone was moved. */
const mouthsOf = (piece: Piece, drawn: readonly DartName[]): readonly PointName[] =>
  piece.darts.flatMap(({ name, inner, outer }) => (drawn.includes(name) ? [] : [inner, outer]));

/** Those of the corners that a piece has, in the order told; the bust point with them. */
function cornersOn(piece: Piece): readonly PointName[] {
  const onPiece = new Set(piece.edges.map(({ from }) => from));
  return [...CORNERS.filter((name) => name === "bustPoint" || onPiece.has(name)), ...ownCornersOf(piece)];
}

/**
 * Every point of a piece that no longer lies where it is printed.
 *
 * @param drawn darts that are told where they are drawn
 */
export function movedOnTissue(printed: Piece, piece: Piece, drawn: readonly DartName[]): readonly TissuePlace[] {
  const isCorner = (name: PointName): boolean => piece.edges.some(({ from }) => from === name);
  return [...cornersOn(piece), ...mouthsOf(piece, drawn).filter(isCorner)]
    .flatMap((name) => tissuePlace(printed, piece, name) ?? [])
    .filter((place) => !lies(place));
}

/** Points that stayed, to lay the piece on its tissue by: the first and the last of them in the order told. */
export const stayedOnTissue = (printed: Piece, piece: Piece): readonly PointName[] => stayedOf({ piece, printed });

/** A piece as it lies on its tissue: most are the same on both halves, and as in the plan before. */
interface OnTissue {
  readonly piece: Piece;
  readonly printed: Piece;
}

const stayedOf = remember(["piece", "printed"], ({ piece, printed }: OnTissue): readonly PointName[] => {
  const corners = cornersOn(piece).filter((name) => {
    if (name === "bustPoint" || name === "armholeTouch") return false;
    const place = tissuePlace(printed, piece, name);
    return place !== null && lies(place);
  });
  const [first, last] = [corners[0], corners.at(-1)];
  return first === undefined || last === undefined ? [] : first === last ? [first] : [first, last];
});

/** The ends of a dart's mouth and its own end. */
export interface DartPlaces {
  readonly inner: TissuePlace;
  readonly outer: TissuePlace;
  readonly apex: TissuePlace;
}

/** Where a dart is drawn; null where the tissue has nothing to tell it by. */
export function dartPlaces(printed: Piece, piece: Piece, name: DartName): DartPlaces | null {
  const dart = piece.darts.find((one) => one.name === name);
  if (dart === undefined) return null;
  const [inner, outer, apex] = [dart.inner, dart.outer, dart.apex].map((point) => tissuePlace(printed, piece, point));
  return inner == null || outer == null || apex == null ? null : { inner, outer, apex };
}

/** A line between two points that was traced otherwise: laid between their new places, it would not come out as long as this. */
export interface DrawnLength {
  readonly seam: SeamName;
  readonly from: PointName;
  readonly to: PointName;
  readonly length: Mm;
}

/** The outline from one point that can be seen to the next. */
function runsOf(piece: Piece): readonly (readonly Edge[])[] {
  const mouths = piece.darts.flatMap(({ inner, outer }) => [inner, outer]);
  const isSeen = (name: PointName): boolean => SEEN.has(name) || isNumbered(name) || mouths.includes(name);
  const runs: Edge[][] = [];
  for (const edge of piece.edges) {
    const last = runs.at(-1);
    const before = last?.at(-1);
    if (last !== undefined && before?.seam === edge.seam && !isSeen(before.to)) last.push(edge);
    else runs.push([edge]);
  }
  return runs.filter((run) => run.every(({ mouthOf }) => mouthOf === null));
}

const endsOf = (run: readonly Edge[]): readonly [PointName, PointName] | null => {
  const [first, last] = [run[0], run.at(-1)];
  return first === undefined || last === undefined ? null : [first.from, last.to];
};

const lengthOf = (piece: Piece, run: readonly Edge[]): Mm =>
  run.reduce((sum, edge) => sum + edgeLength(curveOf(piece, edge)), 0);

/** Lines to be drawn to a length: those that the traced ones, turned and stretched into their new ends, are not as long as. */
export const drawnLengths = (printed: Piece, piece: Piece): readonly DrawnLength[] => lengthsDrawn({ piece, printed });

const lengthsDrawn = remember(["piece", "printed"], ({ piece, printed }: OnTissue): readonly DrawnLength[] => {
  const traced = runsOf(printed);
  return runsOf(piece).flatMap((run): readonly DrawnLength[] => {
    const ends = endsOf(run);
    const seam = run[0]?.seam;
    if (ends === null || seam === undefined) return [];
    const [from, to] = ends;
    // All round without a corner: there is no chord to lay it in.
    if (from === to) return [];
    const length = lengthOf(piece, run);
    const own = traced.find((one) => {
      const [start, end] = endsOf(one) ?? [];
      return start === from && end === to && one[0]?.seam === seam;
    });
    const chord = (of: Piece): Mm => distance(pointOf(of, from), pointOf(of, to));
    const carried = own === undefined ? null : lengthOf(printed, own) * (chord(piece) / chord(printed));
    // A seam is made of several such lines on both of its pieces.
    const isAsTraced = carried !== null && Math.abs(carried - length) <= READS_AS_NOTHING / 2;
    return isAsTraced ? [] : [{ seam, from, to, length }];
  });
});
