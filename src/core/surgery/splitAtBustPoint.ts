/**
 * Two darts made one seam: the front is cut in two along them, over the bust point. Legs are drawn straight from the
 * ends of the mouths to the bust point, wherever the darts end; `drawPrincess` makes a seam of them.
 */
import { CoreBug, invariant } from "../result";
import { piecePoint } from "../geometry/point";
import { straight } from "../pattern/namedEdges";
import {
  dartOf,
  pointNames,
  pointOf,
  type Dart,
  type DartName,
  type Edge,
  type NamedPoint,
  type Piece,
  type PieceName,
  type PointName,
} from "../pattern/piece";
import { edgeFrom, edgeTo } from "../pattern/ring";

export interface PrincessPieces {
  readonly centreFront: Piece;
  readonly sideFront: Piece;
}

/**
 * Cuts a front along an upper dart and its waist dart.
 *
 * @param front    a half front with the point `bustPoint`, a dart `waistDart` and the upper dart; other darts stay
 *                 with the piece that they open on
 * @param upperDart the dart that the seam begins at; its mouth comes before the waist dart's, going round
 * @returns the two pieces in the frame of the front, with straight legs: `princessTop`, `princessBust` and
 *          `princessWaist` are the mouth ends and the bust point; a CoreBug where a dart is missing
 */
export function splitAtBustPoint(front: Piece, upperDart: DartName): PrincessPieces {
  const upper = dartOf(front, upperDart);
  const lower = dartOf(front, "waistDart");
  const bust = invariant(front.points.bustPoint, "bustPoint");
  // Going round from the centre front's neck, the upper mouth is entered at its inner end, the waist's at its outer.
  const toUpper = stretch(front, lower.inner, upper.inner);
  const toLower = stretch(front, upper.outer, lower.outer);
  const others = front.darts.filter((dart) => dart !== upper && dart !== lower);
  const seam: Edge[] = [
    straight("princessTop", "princessBust", "princess"),
    straight("princessBust", "princessWaist", "princess"),
  ];
  const back: Edge[] = [
    straight("princessWaist", "princessBust", "princess"),
    straight("princessBust", "princessTop", "princess"),
  ];

  const centre = cutOut(front, "centreFront", [...renamed(toUpper, lower.inner, upper.inner)], seam, {
    top: upper.inner,
    waist: lower.inner,
    bust,
    others,
  });
  const side = cutOut(front, "sideFront", [...renamed(toLower, lower.outer, upper.outer)], back, {
    top: upper.outer,
    waist: lower.outer,
    bust,
    others,
  });
  return { centreFront: withCentre(front, centre), sideFront: side };
}

/** The edges from one corner to another, the way they go. */
function stretch(piece: Piece, from: PointName, to: PointName): Edge[] {
  const last = edgeTo(piece, to);
  const found: Edge[] = [];
  for (let index = edgeFrom(piece, from), steps = 0; steps < piece.edges.length; steps += 1) {
    found.push(invariant(piece.edges[index], "edge"));
    if (index === last) return found;
    index = (index + 1) % piece.edges.length;
  }
  throw new CoreBug(`${piece.name}: ${to} is not reached from ${from}`);
}

const renamed = (edges: readonly Edge[], waist: PointName, top: PointName): Edge[] => {
  const name = (point: PointName): PointName =>
    point === waist ? "princessWaist" : point === top ? "princessTop" : point;
  return edges.map((edge) => ({ ...edge, from: name(edge.from), to: name(edge.to) }));
};

function cutOut(
  front: Piece,
  name: PieceName,
  kept: readonly Edge[],
  seam: readonly Edge[],
  { top, waist, bust, others }: { top: PointName; waist: PointName; bust: NamedPoint; others: readonly Dart[] },
): Piece {
  const points: Partial<Record<PointName, NamedPoint>> = {
    princessTop: invariant(front.points[top], top),
    princessBust: bust,
    princessWaist: invariant(front.points[waist], waist),
  };
  const darts = others.filter((dart) => kept.some((edge) => edge.mouthOf === dart.name));
  for (const corner of [...kept.map((edge) => edge.from), ...darts.map((dart) => dart.apex)]) {
    if (points[corner] === undefined) points[corner] = invariant(front.points[corner], corner);
  }
  const along: PointName[] = (["centreBust", "princessBust", "sideBust"] as const).filter(
    (point) => points[point] !== undefined,
  );
  return {
    name,
    points,
    edges: startingAtTop([...kept, ...seam]),
    darts,
    levelLines: [
      ...(along.length > 1 ? [{ level: "bust" as const, along: { points: along } }] : []),
      { level: "waist", along: { seam: "waist" } },
    ],
    centreOnFold: false,
  };
}

/** The ring of the centre front begins at the neck, as the front's does; that of the side front at the top of its seam. */
function startingAtTop(edges: readonly Edge[]): Edge[] {
  const neck = edges.findIndex((edge) => edge.from === "centreNeck");
  const start = neck >= 0 ? neck : edges.findIndex((edge) => edge.from === "princessTop");
  return [...edges.slice(start), ...edges.slice(0, start)];
}

/** What the centre front alone carries: the bust point, the under-bust level, and its bust line level with the bust point. */
function withCentre(front: Piece, piece: Piece): Piece {
  const points: Partial<Record<PointName, NamedPoint>> = {
    ...piece.points,
    bustPoint: invariant(front.points.bustPoint, "bustPoint"),
  };
  const centreBust = invariant(front.points.centreBust, "centreBust");
  points.centreBust = { ...centreBust, at: piecePoint(centreBust.at.x, pointOf(front, "bustPoint").y) };
  if (pointNames(front).includes("underBustCentre"))
    points.underBustCentre = invariant(front.points.underBustCentre, "underBustCentre");
  return { ...piece, points, centreOnFold: front.centreOnFold };
}
