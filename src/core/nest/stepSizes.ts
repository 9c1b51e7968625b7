/** A second size from one, by the steps that she measured between its line and the next on the tissue. */
import type { Tissue, TissueLengths } from "../decisions/tissue";
import type { SizeChart } from "../chart/sizeChart";
import { piecePoint, type PiecePoint } from "../geometry/point";
import { isBasque } from "../pattern/pieceGroups";
import {
  pointNames,
  type LevelName,
  type NamedPoint,
  type Piece,
  type PieceName,
  type PointName,
} from "../pattern/piece";
import { invariant } from "../result";
import { SAME_GIRTH } from "../tolerance";
import type { Mm } from "../units";
import type { SizePieces } from "./allSizes";
import type { GirthLevel } from "./patternPieces";

/** The points at the side that a step of a level is measured between, the first that a piece has. */
const AT_SIDE: Readonly<Record<GirthLevel, readonly PointName[]>> = {
  bust: ["sideBust", "underarm", "sideUnderBust"],
  waist: ["sideWaist"],
  hip: ["sideHip", "sideHem"],
};

const STEP_OF = { bust: "bustStep", waist: "waistStep", hip: "hipStep" } as const;

export interface Stepped {
  readonly next: SizePieces;
  /** Levels of which no step was measured: there both sizes are alike. */
  readonly alike: ReadonlySet<GirthLevel>;
}

/**
 * The size beside one: every point goes out by the step at its level, less the nearer it lies to the centre. Heights stay. A
 * step that was measured between two other sizes counts as it stands to the chart's own step there.
 *
 * @param towards 1: the next size up, −1: the one below
 */
export function stepSize(
  { index, pieces }: SizePieces,
  { chart, tissue }: { readonly chart: SizeChart; readonly tissue: Tissue | undefined },
  towards: 1 | -1,
): Stepped {
  const measured = chart.sizes.findIndex(({ label }) => label === tissue?.size);
  const chartStep = (from: number, level: GirthLevel): Mm | undefined => {
    const [low, high] = [chart.sizes[from]?.[level], chart.sizes[from + 1]?.[level]];
    return low === undefined || high === undefined ? undefined : high - low;
  };
  /** By how much a step of the chart here is larger than where it was measured; as large where the chart does not say. */
  const grown = (level: GirthLevel): number => {
    const [here, there] = [chartStep(Math.min(index, index + towards), level), chartStep(measured, level)];
    return here === undefined || there === undefined || there < SAME_GIRTH ? 1 : here / there;
  };
  const stepsOf = (name: PieceName): TissueLengths => {
    // Of a line that the chart has no more nothing is known.
    const own = measured < 0 ? {} : (tissue?.pieces[name] ?? {});
    const scaled: { -readonly [step in keyof TissueLengths]: Mm } = {};
    for (const level of ["bust", "waist", "hip"] as const) {
      const step = own[STEP_OF[level]];
      if (step !== undefined) scaled[STEP_OF[level]] = step * grown(level);
    }
    return scaled;
  };
  const alike = new Set<GirthLevel>(
    (["bust", "waist", "hip"] as const).filter((level) =>
      pieces.some((piece) => isAtSide(piece, level) && stepsOf(piece.name)[STEP_OF[level]] === undefined),
    ),
  );
  return {
    next: {
      index: index + towards,
      pieces: pieces.map((piece) => stepped(piece, stepsOf(piece.name), alike, towards)),
    },
    alike,
  };
}

/** Pieces that bring a part of the girth at a level: a basque has none at the bust, though its side may begin there. */
const isAtSide = (piece: Piece, level: GirthLevel): boolean =>
  piece.levelLines.some((line) => line.level === level) && !(level === "waist" && isBasque(piece.name));

const girthLevel = (level: LevelName): GirthLevel => (level === "waist" || level === "hip" ? level : "bust");

function stepped(piece: Piece, steps: TissueLengths, alike: ReadonlySet<GirthLevel>, towards: 1 | -1): Piece {
  const across = (at: PiecePoint, level: LevelName): Mm => {
    const girth = girthLevel(level);
    const side = AT_SIDE[girth].find((name) => piece.points[name] !== undefined);
    const step = alike.has(girth) ? 0 : (steps[STEP_OF[girth]] ?? 0);
    if (side === undefined) return 0;
    const reach = invariant(piece.points[side], side).at.x;
    return reach > 0 ? towards * step * Math.min(1, Math.max(0, at.x / reach)) : 0;
  };
  const moved = (at: PiecePoint, level: LevelName): PiecePoint => piecePoint(at.x + across(at, level), at.y);
  const points: Partial<Record<PointName, NamedPoint>> = {};
  for (const name of pointNames(piece)) {
    const point = invariant(piece.points[name], name);
    points[name] = { ...point, at: moved(point.at, point.level) };
  }
  const levelAt = (name: PointName): LevelName => invariant(piece.points[name], name).level;
  return {
    ...piece,
    points,
    edges: piece.edges.map((edge) =>
      edge.curve === null
        ? edge
        : {
            ...edge,
            curve: {
              c1: moved(edge.curve.c1, levelAt(edge.from)),
              c2: moved(edge.curve.c2, levelAt(edge.to)),
            },
          },
    ),
  };
}
