/** The altered pieces as data for other programs: outlines, darts and folds of either half. The README names every key. */
import { legsOf } from "../core/dart/bowedLegs";
import { straightToBustPoint } from "../core/dart/dartEndReading";
import type { EdgeCurve } from "../core/geometry/edgeCurve";
import type { PiecePoint } from "../core/geometry/point";
import {
  pointOf,
  type Dart,
  type DartName,
  type Edge,
  type Piece,
  type PieceName,
  type PointName,
  type SeamName,
} from "../core/pattern/piece";
import type { Plan, PlanHalf } from "../core/plan/plan";
import { invariant } from "../core/result";
import { isSamePiece } from "../core/pattern/pieceSet";
import { degreesFrom } from "../core/units";
import { rounded } from "./rounded";

type Pair<T> = readonly [T, T];
type Place = Pair<number>;

export interface ReportEdge {
  readonly from: PointName;
  readonly to: PointName;
  readonly seam: SeamName;
  /** `mouth`: straight across a dart, no stitch line. `fold`: on the fold of the cloth. */
  readonly line: "stitch" | "fold" | "mouth";
  /** Whose mouth it is; null of other lines. */
  readonly dart: DartName | null;
  /** Of a cubic Bézier curve; null: straight. */
  readonly controls_mm: Pair<Place> | null;
}

/** From the mouth to the end of the dart. */
export interface ReportLeg {
  readonly length_mm: number;
  readonly controls_mm: Pair<Place> | null;
}

export interface ReportPieceDart {
  readonly name: DartName;
  readonly seam: SeamName;
  readonly gathered: boolean;
  readonly apex_mm: Place;
  /** Corners of the outline. */
  readonly inner: PointName;
  readonly outer: PointName;
  /** null of gathers, which have none. */
  readonly legs: { readonly inner: ReportLeg; readonly outer: ReportLeg } | null;
  readonly intake_mm: number;
  readonly angle_deg: number;
  readonly fullness_mm: number;
  readonly apex_to_bust_point_mm: number | null;
  readonly short_of_bust_point_mm: number | null;
  readonly bust_point_beside_mm: number | null;
}

export interface ReportOutline {
  readonly corners_mm: Readonly<Partial<Record<PointName, Place>>>;
  /** Closed: each begins where the one before ends. */
  readonly edges: readonly ReportEdge[];
}

export interface ReportPiece extends ReportOutline {
  readonly name: PieceName;
  readonly same_on_both: boolean;
  readonly darts: readonly ReportPieceDart[];
  readonly bust_point_mm: Place | null;
  /** Ends of the centre line that lies on the fold, the upper one first; null where there is none. */
  readonly fold_mm: Pair<Place> | null;
}

export interface ReportPieces {
  readonly left: readonly ReportPiece[];
  readonly right: readonly ReportPiece[];
}

/** Fine enough that no point moves by more than 0.0001 mm. */
const DECIMALS = 4;

const mm = (value: number): number => rounded(value, DECIMALS);
const place = ({ x, y }: PiecePoint): Place => [mm(x), mm(y)];
const controls = (curve: EdgeCurve<"piece">["curve"]): Pair<Place> | null =>
  curve === null ? null : [place(curve.c1), place(curve.c2)];

export function pieceReports(plan: Plan): ReportPieces {
  const { left, right } = plan;
  return { left: reportsOf(plan, left, right), right: reportsOf(plan, right, left) };
}

const reportsOf = (plan: Plan, half: PlanHalf, other: PlanHalf): readonly ReportPiece[] =>
  half.pieces.map((piece) => ({
    name: piece.name,
    same_on_both: isSamePiece(
      piece,
      other.pieces.find(({ name }) => name === piece.name),
    ),
    ...outlineReport(piece),
    darts: piece.darts.map((dart) => reportDart(half, piece, dart)),
    bust_point_mm: piece.name === plan.bustPiece ? place(plan.bustPoint.own ?? plan.bustPoint.printed) : null,
    fold_mm: foldOf(piece),
  }));

export const outlineReport = (piece: Piece): ReportOutline => ({
  corners_mm: Object.fromEntries(piece.edges.map(({ from }) => [from, place(pointOf(piece, from))])),
  edges: piece.edges.map((edge) => reportEdge(piece, edge)),
});

const isOnFold = (piece: Piece, { seam, mouthOf }: Edge): boolean =>
  piece.centreOnFold && seam === "centre" && mouthOf === null;

const reportEdge = (piece: Piece, edge: Edge): ReportEdge => ({
  from: edge.from,
  to: edge.to,
  seam: edge.seam,
  line: edge.mouthOf !== null ? "mouth" : isOnFold(piece, edge) ? "fold" : "stitch",
  dart: edge.mouthOf,
  controls_mm: controls(edge.curve),
});

function reportDart({ darts }: PlanHalf, piece: Piece, dart: Dart): ReportPieceDart {
  const { name, seam, inner, outer } = dart;
  const gathered = dart.gathered === true;
  const { drawn } = invariant(
    darts.find(({ ref }) => ref.piece === piece.name && ref.dart === name),
    `${piece.name}.${name}`,
  );
  const legs = legsOf(piece, name);
  const leg = ({ curve, length }: (typeof legs)["inner"]): ReportLeg => ({
    length_mm: mm(length),
    controls_mm: controls(curve.curve),
  });
  return {
    name,
    seam,
    gathered,
    apex_mm: place(pointOf(piece, dart.apex)),
    inner,
    outer,
    legs: gathered ? null : { inner: leg(legs.inner), outer: leg(legs.outer) },
    intake_mm: mm(drawn.intake),
    angle_deg: rounded(degreesFrom(drawn.angle), DECIMALS),
    fullness_mm: mm(drawn.fullness),
    apex_to_bust_point_mm: drawn.end === null ? null : mm(straightToBustPoint(drawn.end)),
    short_of_bust_point_mm: drawn.end === null ? null : mm(drawn.end.along),
    bust_point_beside_mm: drawn.end === null ? null : mm(drawn.end.across),
  };
}

function foldOf(piece: Piece): Pair<Place> | null {
  const ends = piece.edges
    .filter((edge) => isOnFold(piece, edge))
    .flatMap(({ from, to }) => [pointOf(piece, from), pointOf(piece, to)])
    .toSorted((a, b) => a.y - b.y);
  const [top, bottom] = [ends[0], ends.at(-1)];
  return top === undefined || bottom === undefined ? null : [place(top), place(bottom)];
}
