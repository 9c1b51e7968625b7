/**
 * A block cut in two at the under-bust: the upper part keeps its share of the waist dart as a dart from below, the lower
 * part becomes a band round the midriff, its share of the dart closed. Both parts keep every other line of the block.
 */
import {
  edgeCrossingsAtY,
  edgeLengthBetween,
  edgeParameterAtLength,
  edgePointAt,
  edgeTangentAt,
  type EdgeCurve,
} from "../geometry/edgeCurve";
import { directionOf, polar, turnBetween, type PiecePoint } from "../geometry/point";
import { rigidMotion } from "../geometry/rigid";
import { seamLength } from "../girth/seamLength";
import { controls, curved, DOWN, INWARD, mouth, straight } from "../pattern/namedEdges";
import { trueSeamEvenly } from "../dart/trueSeamEvenly";
import {
  dartOf,
  pointOf,
  type Dart,
  type Edge,
  type NamedPoint,
  type Piece,
  type PieceName,
  type PointName,
} from "../pattern/piece";
import { invariant } from "../result";
import { cutAndMove, rejoin } from "../surgery/cutAndMove";
import { curveOf, edgeFrom, edgeTo, insertPoint } from "../pattern/ring";
import { radians, type Mm, type Radians } from "../units";

/** Rounds in which the height at the side settles; each leaves well under a tenth of the error. */
const ROUNDS = 4;

/**
 * The waist dart drawn to a point of its axis, and the waist seam trued over it: closed about that point, the seam runs
 * on without a corner. The finished waist stays.
 */
export function drawDartTo(block: Piece, apex: PiecePoint): Piece {
  const dart = dartOf(block, "waistDart");
  const drawn: Piece = { ...block, points: { ...block.points, [dart.apex]: { at: apex, level: "bust" } } };
  return trueSeamEvenly(drawn, "waistDart", seamLength(block, "waist"));
}

/** Where the cut crosses the dart: leg directions from its end, and how far down both legs. */
interface AtDart {
  readonly apex: PiecePoint;
  readonly half: Radians;
  readonly inner: PiecePoint;
  readonly outer: PiecePoint;
}

/**
 * Level at the centre and square to the leg, the cut falls with half of the leg's slope. So at a distance r down the leg,
 * apex.y + r cos h = centre.y + (apex.x - r sin h) tan(h / 2); and cos h + sin h tan(h / 2) = 1.
 */
function atDart(block: Piece): AtDart {
  const dart = dartOf(block, "waistDart");
  const apex = pointOf(block, dart.apex);
  const [toInner, toOuter] = [dart.inner, dart.outer].map((name) => directionOf(apex, pointOf(block, name)));
  const inward = invariant(toInner, "leg");
  const outward = invariant(toOuter, "leg");
  const half = radians(turnBetween(outward, inward) / 2);
  const down = pointOf(block, "underBustCentre").y - apex.y + apex.x * Math.tan(half / 2);
  return { apex, half, inner: polar(apex, inward, down), outer: polar(apex, outward, down) };
}

const sideCurve = (block: Piece): EdgeCurve<"piece"> =>
  curveOf(block, invariant(block.edges[edgeFrom(block, "sideBust")], "side edge"));

/**
 * How far down the side seam from the bust line the cut comes out of itself: square to the dart's leg and to the side
 * seam, it falls by the mean of both slopes.
 */
export function usualSideDepth(block: Piece): Mm {
  const { half, outer } = atDart(block);
  const side = sideCurve(block);
  let t = invariant(edgeCrossingsAtY(side, pointOf(block, "underBustCentre").y)[0], "side at the under-bust");
  for (let round = 0; round < ROUNDS; round += 1) {
    const slope = edgeTangentAt(side, t) - DOWN;
    const y = outer.y + (edgePointAt(side, t).x - outer.x) * Math.tan((slope - half) / 2);
    t = edgeCrossingsAtY(side, y)[0] ?? t;
  }
  return edgeLengthBetween(side, 0, t);
}

export interface CutNames {
  readonly upper: PieceName;
  readonly band: PieceName;
  /** What the dart of the upper part aims at. */
  readonly aimsAt: PointName | null;
}

export interface CutApart {
  readonly upper: Piece;
  readonly band: Piece;
}

/**
 * Cuts a block in two.
 *
 * @param block     with its waist dart drawn to where its legs meet (see `drawDartTo`)
 * @param sideDepth how far below the bust line the cut meets the side seam, along it; mm
 */
export function cutAtUnderBust(block: Piece, sideDepth: Mm, names: CutNames): CutApart {
  const at = atDart(block);
  const t = edgeParameterAtLength(sideCurve(block), sideDepth);
  const cut = insertPoint(block, edgeFrom(block, "sideBust"), t, "sideUnderBust", "underBust");
  const side = pointOf(cut, "sideUnderBust");
  const squareToSide = radians(edgeTangentAt(sideCurve(block), t) + Math.PI / 2);
  const centre = pointOf(cut, "underBustCentre");
  const outer = controls(side, squareToSide, at.outer, radians(INWARD - at.half));
  const inner = controls(at.inner, radians(INWARD + at.half), centre, INWARD);
  const marked: Piece = {
    ...cut,
    points: {
      ...cut.points,
      underBustCentre: { at: centre, level: "underBust" },
      underBustDartInner: { at: at.inner, level: "bust" },
      underBustDartOuter: { at: at.outer, level: "bust" },
      underBustDartApex: { at: at.apex, level: "bust" },
    },
  };
  return { upper: upperOf(marked, outer, inner, names), band: bandOf(marked, outer, inner, names.band) };
}

type Controls = readonly [PiecePoint, PiecePoint];

function upperOf(cut: Piece, outer: Controls, inner: Controls, { upper, aimsAt }: CutNames): Piece {
  const end = edgeFrom(cut, "sideUnderBust");
  const dart: Dart = {
    name: "underBustDart",
    seam: "underBust",
    inner: "underBustDartInner",
    outer: "underBustDartOuter",
    apex: "underBustDartApex",
    aimsAt,
  };
  return withOwnPoints({
    ...cut,
    name: upper,
    edges: [
      ...cut.edges.slice(0, end),
      curved("sideUnderBust", "underBustDartOuter", "underBust", outer[0], outer[1]),
      mouth("underBustDartOuter", "underBustDartInner", "underBust", "underBustDart"),
      curved("underBustDartInner", "underBustCentre", "underBust", inner[0], inner[1]),
      straight("underBustCentre", "centreBust", "centre"),
      ...cut.edges.slice(edgeFrom(cut, "centreBust")),
    ],
    darts: [...cut.darts.filter(({ name }) => name !== "waistDart"), dart],
    levelLines: cut.levelLines.filter(({ level }) => level !== "waist"),
  });
}

function bandOf(cut: Piece, outer: Controls, inner: Controls, name: PieceName): Piece {
  const open: Piece = {
    ...cut,
    name,
    edges: [
      curved("underBustCentre", "underBustDartInner", "underBust", inner[1], inner[0]),
      mouth("underBustDartInner", "underBustDartOuter", "underBust", "waistDart"),
      curved("underBustDartOuter", "sideUnderBust", "underBust", outer[1], outer[0]),
      ...cut.edges.slice(edgeFrom(cut, "sideUnderBust"), edgeTo(cut, "centreWaist") + 1),
      straight("centreWaist", "underBustCentre", "centre"),
    ],
    darts: [],
    levelLines: [
      { level: "underBust", along: { seam: "underBust" } },
      { level: "waist", along: { seam: "waist" } },
    ],
  };
  const apex = pointOf(cut, "underBustDartApex");
  const shut = turnBetween(
    directionOf(apex, pointOf(cut, "waistDartOuter")),
    directionOf(apex, pointOf(cut, "waistDartInner")),
  );
  const { piece } = cutAndMove(
    open,
    [{ from: "underBustDartOuter", to: "waistDartOuter", inside: [], carries: [], motion: rigidMotion(apex, shut) }],
    { cuts: [], hinges: [apex] },
  );
  const joined = rejoin(rejoin(piece, "underBustDartInner", "underBustDartOuter"), "waistDartOuter", "waistDartInner");
  return withOwnPoints(
    renamed(renamed(joined, "underBustDartInner", "bandTopMiddle"), "waistDartOuter", "waistMiddle"),
  );
}

/** A corner under another name. */
function renamed(piece: Piece, from: PointName, to: PointName): Piece {
  const named = (name: PointName): PointName => (name === from ? to : name);
  return {
    ...piece,
    points: { ...piece.points, [to]: invariant(piece.points[from], from) },
    edges: piece.edges.map((edge): Edge => ({ ...edge, from: named(edge.from), to: named(edge.to) })),
  };
}

/** The piece without the points that went with the other part: what its outline, darts and level lines do not use goes. */
export function withOwnPoints(piece: Piece, ...more: readonly PointName[]): Piece {
  const used = new Set<PointName>([
    ...more,
    ...piece.edges.map(({ from }) => from),
    ...piece.darts.flatMap(({ apex, aimsAt }) => (aimsAt === null ? [apex] : [apex, aimsAt])),
    ...piece.levelLines.flatMap(({ along }) => ("points" in along ? along.points : [])),
  ]);
  const points: Partial<Record<PointName, NamedPoint>> = {};
  for (const name of used) points[name] = invariant(piece.points[name], name);
  return { ...piece, points };
}
