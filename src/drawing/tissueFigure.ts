/** One piece with the places to lay a tape on it, lettered: plain drawing data in the piece frame, mm. */
import type { TissueLength } from "../core/decisions/tissue";
import {
  edgeLength,
  edgeParameterAtLength,
  edgePointAt,
  edgeTangentAt,
  type EdgeCurve,
} from "../core/geometry/edgeCurve";
import { distance, piecePoint, shift, type PiecePoint } from "../core/geometry/point";
import { chainPath, outlinePath } from "../core/geometry/svgPath";
import type { Piece } from "../core/pattern/piece";
import { outlineOf } from "../core/pattern/ring";
import { isStep, tapeWay } from "../core/tissue/tapeWays";
import { SAME_POINT } from "../core/tolerance";
import type { Mm } from "../core/units";
import { around, boundsOf, type Box } from "./layout";
import { pieceMarks } from "./pieceMarks";

interface TapeMark {
  readonly length: TissueLength;
  readonly letter: string;
  /** Where the tape lies: one path, with a gap over each folded dart. */
  readonly tape: string;
  /** Both ends of it. */
  readonly ends: readonly [PiecePoint, PiecePoint];
  /** The middle of the letter. */
  readonly letterAt: PiecePoint;
  /** It is laid to the line of the next size up. */
  readonly onNext: boolean;
}

export interface TissueFigure {
  readonly box: Box;
  readonly outline: string;
  readonly darts: readonly string[];
  /** The line of the next size up; null: there is none. */
  readonly next: { readonly outline: string; readonly darts: readonly string[] } | null;
  readonly centre: { readonly path: string; readonly onFold: boolean; readonly middle: PiecePoint | null };
  readonly bustPoint: PiecePoint | null;
  readonly titleAt: PiecePoint;
  readonly tapes: readonly TapeMark[];
  /** As many millimetres are one pixel where the figure is drawn in the room given. */
  readonly mmPerPixel: number;
}

interface FigureRoom {
  readonly width: number;
  readonly height: number;
}

const FIRST_LETTER = 97;
/** The letter of the n-th length of a piece. */
export const letterAt = (index: number): string => String.fromCharCode(FIRST_LETTER + index);

/** Room round the piece for what stands outside it, pixels. */
const MARGIN = 21;
/** From the tape to the middle of its letter, and between two letters, pixels. */
const BESIDE = 12;
const APART = 15;

/**
 * @param piece as the stand-in has it, in the size measured
 * @param lengths in the order in which they are lettered
 * @param shown whether a length is drawn
 * @param room that it is drawn in, pixels
 */
export function tissueFigure(
  piece: Piece,
  next: Piece | null,
  lengths: readonly TissueLength[],
  shown: (length: TissueLength) => boolean,
  room: FigureRoom,
): TissueFigure {
  const laid = lengths.flatMap((length, index) => {
    const way = tapeWay(piece, length, next ?? undefined);
    return way === null || !shown(length) ? [] : [{ length, letter: letterAt(index), way }];
  });
  const own = around(boundsOf(piece), next === null ? boundsOf(piece) : boundsOf(next));
  const mmPerPixel = Math.max(
    own.width / Math.max(1, room.width - 2 * MARGIN),
    own.height / Math.max(1, room.height - 2 * MARGIN),
  );
  const margin = MARGIN * mmPerPixel;
  const taken: PiecePoint[] = [];
  const tapes = laid.map(({ length, letter, way }): TapeMark => {
    const beside = besideOf(way, taken, mmPerPixel);
    taken.push(beside);
    return {
      length,
      letter,
      tape: runsOf(way).map(chainPath).join(""),
      ends: endsOf(way),
      letterAt: beside,
      onNext: isStep(length),
    };
  });
  const marks = pieceMarks(piece);
  const centre = piece.edges.filter(({ seam }) => seam === "centre");
  const corners = centre.flatMap(({ from, to }) => [piece.points[from], piece.points[to]]).flatMap((p) => p?.at ?? []);
  return {
    box: {
      x: own.x - margin,
      y: own.y - margin,
      width: own.width + 2 * margin,
      height: own.height + 2 * margin,
    },
    outline: outlinePath(outlineOf(piece)),
    darts: marks.darts.map(({ legs }) => legs),
    next:
      next === null
        ? null
        : { outline: outlinePath(outlineOf(next)), darts: pieceMarks(next).darts.map((d) => d.legs) },
    centre: {
      path: marks.centre,
      onFold: piece.centreOnFold,
      middle:
        corners.length === 0
          ? null
          : piecePoint(mean(corners.map(({ x }) => x)), extentMiddle(corners.map(({ y }) => y))),
    },
    bustPoint: piece.points.bustPoint?.at ?? null,
    titleAt: marks.title,
    tapes,
    mmPerPixel,
  };
}

const mean = (values: readonly Mm[]): Mm => values.reduce((sum, one) => sum + one, 0) / values.length;
const extentMiddle = (values: readonly Mm[]): Mm => (Math.min(...values) + Math.max(...values)) / 2;

/** Strokes that go on from one another; over the mouth of a folded dart the tape is taken up. */
function runsOf(way: readonly EdgeCurve<"piece">[]): readonly (readonly EdgeCurve<"piece">[])[] {
  const runs: EdgeCurve<"piece">[][] = [];
  let end: PiecePoint | null = null;
  for (const stroke of way) {
    const last = runs.at(-1);
    if (last !== undefined && end !== null && distance(end, stroke.a) < SAME_POINT) last.push(stroke);
    else runs.push([stroke]);
    end = stroke.b;
  }
  return runs;
}

function endsOf(run: readonly EdgeCurve<"piece">[]): readonly [PiecePoint, PiecePoint] {
  const [first, last] = [run[0], run.at(-1)];
  // A run is never empty.
  const origin = piecePoint(0, 0);
  return [first?.a ?? origin, last?.b ?? origin];
}

/** Shares of the tape where its letter may stand, the best first. */
const SHARES = [0.5, 0.35, 0.65, 0.2, 0.8, 0.08, 0.92];

/** The first place beside the tape that is clear of the letters that stand already, or the clearest. */
function besideOf(run: readonly EdgeCurve<"piece">[], taken: readonly PiecePoint[], mmPerPixel: number): PiecePoint {
  const places = SHARES.flatMap((share) => {
    const found = onRun(run, share);
    if (found === null) return [];
    const [ux, uy] = [-Math.sin(found.direction), Math.cos(found.direction)];
    return [-1, 1].map((side) => shift(found.at, ux * side * BESIDE * mmPerPixel, uy * side * BESIDE * mmPerPixel));
  });
  const room = (place: PiecePoint): Mm => Math.min(Infinity, ...taken.map((other) => distance(place, other)));
  const clear = places.find((place) => room(place) >= APART * mmPerPixel);
  return clear ?? places.toSorted((a, b) => room(b) - room(a))[0] ?? piecePoint(0, 0);
}

function onRun(
  run: readonly EdgeCurve<"piece">[],
  share: number,
): { readonly at: PiecePoint; readonly direction: number } | null {
  let left = share * run.reduce((sum, edge) => sum + edgeLength(edge), 0);
  for (const edge of run) {
    const length = edgeLength(edge);
    if (left <= length || edge === run.at(-1)) {
      const t = edgeParameterAtLength(edge, Math.min(left, length));
      return { at: edgePointAt(edge, t), direction: edgeTangentAt(edge, t) };
    }
    left -= length;
  }
  return null;
}
