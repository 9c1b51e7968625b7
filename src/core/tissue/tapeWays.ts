/** The way that the tape is laid for each length of a piece: what the page draws is what is measured. */
import type { TissueLength } from "../decisions/tissue";
import { cubicBounds } from "../geometry/bezierBounds";
import {
  cubicOfEdge,
  edgeCrossingsAtY,
  edgeLength,
  edgePointAt,
  lineEdge,
  type EdgeCurve,
} from "../geometry/edgeCurve";
import { midpoint, piecePoint, type PiecePoint } from "../geometry/point";
import { homeOf } from "../pattern/dartNames";
import type { Dart, Edge, Piece, PointName, SeamName } from "../pattern/piece";
import { curveOf } from "../pattern/ring";
import type { Mm } from "../units";

type Way = readonly EdgeCurve<"piece">[];

const isFromBelow = ({ name }: Dart): boolean => homeOf(name) === "waist" || homeOf(name) === "underBust";

/** The dart from the waist; on a piece that ends at the under-bust the one from there. */
export const dartFromBelow = (piece: Piece): Dart | undefined => piece.darts.find(isFromBelow);
/** The dart towards the bust point from anywhere else. */
export const dartToBust = (piece: Piece): Dart | undefined =>
  piece.darts.find((dart) => !isFromBelow(dart) && dart.aimsAt !== null);

const at = (piece: Piece, name: PointName): PiecePoint | undefined => piece.points[name]?.at;

const isCorner = (piece: Piece, name: PointName): boolean => piece.edges.some(({ from }) => from === name);

/** A straight way, where both ends are there. */
const straightWay = (from: PiecePoint | undefined, to: PiecePoint | undefined): Way | null =>
  from === undefined || to === undefined ? null : [lineEdge(from, to)];

const cornersApart = (piece: Piece, from: readonly PointName[], to: readonly PointName[]): Way | null => {
  const first = (names: readonly PointName[]) => names.find((name) => isCorner(piece, name));
  const [a, b] = [first(from), first(to)];
  return a === undefined || b === undefined ? null : straightWay(at(piece, a), at(piece, b));
};

const sewn = (piece: Piece, seam: SeamName): readonly Edge[] =>
  piece.edges.filter((edge) => edge.seam === seam && edge.mouthOf === null);

function alongSeam(piece: Piece, seam: SeamName): Way | null {
  const edges = sewn(piece, seam);
  return edges.length === 0 ? null : edges.map((edge) => curveOf(piece, edge));
}

const hasCentre = (piece: Piece): boolean => piece.edges.some(({ seam }) => seam === "centre");

/** Where a piece's centre line lies. */
function centreX(piece: Piece): Mm | null {
  const edge = piece.edges.find(({ seam }) => seam === "centre");
  return edge === undefined ? null : (at(piece, edge.from)?.x ?? null);
}

/** Square from the centre line to a point. */
function fromCentre(piece: Piece, to: PiecePoint | undefined): Way | null {
  const x = centreX(piece);
  return to === undefined || x === null ? null : straightWay(piecePoint(x, to.y), to);
}

function mouthWay(piece: Piece, dart: Dart | undefined): Way | null {
  return dart === undefined ? null : straightWay(at(piece, dart.inner), at(piece, dart.outer));
}

function dartLengthWay(piece: Piece, dart: Dart | undefined): Way | null {
  if (dart === undefined) return null;
  const [apex, inner, outer] = [at(piece, dart.apex), at(piece, dart.inner), at(piece, dart.outer)];
  return inner === undefined || outer === undefined ? null : straightWay(apex, midpoint(inner, outer));
}

/** Along the side seam from the underarm to the near end of a dart's mouth; null for a dart that opens elsewhere. */
function fromUnderarmWay(piece: Piece, dart: Dart | undefined): Way | null {
  if (dart === undefined || dart.seam !== "side") return null;
  const start = piece.edges.findIndex(({ from }) => from === "underarm");
  const way: EdgeCurve<"piece">[] = [];
  for (const edge of piece.edges.slice(Math.max(start, 0))) {
    if (start < 0 || edge.seam !== "side" || edge.from === dart.inner || edge.mouthOf !== null) break;
    way.push(curveOf(piece, edge));
    if (edge.to === dart.inner) return way;
  }
  return null;
}

/** Straight down from the side neck point to the waist seam, across a dart's open mouth too. */
function sideNeckDown(piece: Piece): Way | null {
  const neck = at(piece, "sideNeck");
  if (neck === undefined || !isCorner(piece, "sideNeck") || !piece.edges.some(({ seam }) => seam === "side"))
    return null;
  for (const edge of piece.edges) {
    if (edge.seam !== "waist") continue;
    const curve = curveOf(piece, edge);
    const t = edgeCrossingsAtY(turned(curve), neck.x)[0];
    if (t !== undefined) return straightWay(neck, edgePointAt(curve, t));
  }
  return null;
}

const over = (p: PiecePoint): PiecePoint => piecePoint(p.y, p.x);

/** x and y changed over, so that a plumb line is a level one. */
function turned({ a, b, curve }: EdgeCurve<"piece">): EdgeCurve<"piece"> {
  return { a: over(a), b: over(b), curve: curve === null ? null : { c1: over(curve.c1), c2: over(curve.c2) } };
}

/** From the centre line to where the armhole comes nearest to it. */
function acrossWay(piece: Piece): Way | null {
  if (!hasCentre(piece) || !isCorner(piece, "armholeTouch")) return null;
  let nearest: PiecePoint | undefined;
  for (const edge of sewn(piece, "armhole")) {
    const curve = curveOf(piece, edge);
    const cubic = cubicOfEdge(curve);
    const candidates = [curve.a, curve.b];
    if (cubic !== null) {
      const least = cubicBounds(cubic).min.x;
      const t = edgeCrossingsAtY(turned(curve), least)[0];
      if (t !== undefined) candidates.push(edgePointAt(curve, t));
    }
    for (const point of candidates) if (nearest === undefined || point.x < nearest.x) nearest = point;
  }
  return fromCentre(piece, nearest);
}

/** The place of a piece's outline furthest from the centre at a height. */
function outermostAt(piece: Piece, y: Mm): PiecePoint | undefined {
  let found: PiecePoint | undefined;
  for (const edge of piece.edges) {
    const curve = curveOf(piece, edge);
    for (const t of edgeCrossingsAtY(curve, y)) {
      const point = edgePointAt(curve, t);
      if (found === undefined || point.x > found.x) found = piecePoint(point.x, y);
    }
  }
  return found;
}

/** Straight across at the bust point, darts open; on a back at its bust line. From the centre line, or from the princess seam. */
function bustWay(piece: Piece): Way | null {
  if (!isCorner(piece, "underarm") && !isCorner(piece, "princessBust")) return null;
  const princess = isCorner(piece, "princessBust") ? at(piece, "princessBust") : undefined;
  if (princess !== undefined)
    return hasCentre(piece) ? fromCentre(piece, princess) : straightWay(princess, outermostAt(piece, princess.y));
  const level = at(piece, "bustPoint") ?? at(piece, "centreBust");
  return level === undefined ? null : fromCentre(piece, outermostAt(piece, level.y));
}

const BASQUES = new Set<string>(["frontBasque", "backBasque"]);

const WAYS: Readonly<Record<Exclude<TissueLength, Step>, (piece: Piece) => Way | null>> = {
  waistDartMouth: (piece) => mouthWay(piece, dartFromBelow(piece)),
  waistDartLength: (piece) => dartLengthWay(piece, dartFromBelow(piece)),
  waistDartFromCentre: (piece) => {
    const dart = dartFromBelow(piece);
    return dart === undefined || !hasCentre(piece)
      ? null
      : cornersApart(piece, [dart.seam === "waist" ? "centreWaist" : "underBustCentre"], [dart.inner]);
  },
  bustDartMouth: (piece) => mouthWay(piece, dartToBust(piece)),
  bustDartLength: (piece) => dartLengthWay(piece, dartToBust(piece)),
  bustDartFromUnderarm: (piece) => fromUnderarmWay(piece, dartToBust(piece)),
  // On a princess seam it is as far as the piece is wide there.
  bustPointFromCentre: (piece) => (isCorner(piece, "princessBust") ? null : fromCentre(piece, at(piece, "bustPoint"))),
  bustPointFromSideNeck: (piece) =>
    isCorner(piece, "sideNeck") ? straightWay(at(piece, "sideNeck"), at(piece, "bustPoint")) : null,
  centreLength: (piece) => alongSeam(piece, "centre"),
  sideNeckToWaist: sideNeckDown,
  sideLength: (piece) => alongSeam(piece, "side"),
  shoulderLength: (piece) => alongSeam(piece, "shoulder"),
  neckWidth: (piece) => (isCorner(piece, "sideNeck") ? fromCentre(piece, at(piece, "sideNeck")) : null),
  neckDepth: (piece) => {
    const [neck, centre] = [at(piece, "sideNeck"), at(piece, "centreNeck")];
    return neck === undefined || centre === undefined ? null : straightWay(piecePoint(centre.x, neck.y), centre);
  },
  acrossWidth: acrossWay,
  bustWidth: bustWay,
  waistWidth: (piece) =>
    hasCentre(piece)
      ? cornersApart(piece, ["centreWaist"], ["princessWaist", "sideWaist"])
      : cornersApart(piece, ["princessWaist"], ["sideWaist"]),
  hipWidth: (piece) => (BASQUES.has(piece.name) ? fromCentre(piece, at(piece, "sideHip")) : null),
  underBustWidth: (piece) => cornersApart(piece, ["underBustCentre"], ["sideUnderBust"]),
};

type Step = "bustStep" | "waistStep" | "hipStep" | "waistDartMouthNext";

/** Of which width each step is the growth. */
const STEP_OF = { bustStep: "bustWidth", waistStep: "waistWidth", hipStep: "hipWidth" } as const;

export const isStep = (length: TissueLength): length is Step =>
  length === "waistDartMouthNext" || Object.hasOwn(STEP_OF, length);

/** The steps lie at a seam that runs down the body beside a centre line. */
const hasSteps = (piece: Piece): boolean => hasCentre(piece) && piece.edges.some(({ seam }) => seam === "side");

/**
 * Where the tape lies for a length, as strokes one after the other; null where the piece has no such length.
 *
 * @param next the same piece in the next size up, which the steps are measured to
 */
export function tapeWay(piece: Piece, length: TissueLength, next?: Piece): Way | null {
  if (!isStep(length)) return WAYS[length](piece);
  if (next === undefined) return null;
  if (length === "waistDartMouthNext") return WAYS.waistDartMouth(next);
  if (!hasSteps(piece)) return null;
  const [own, other] = [piece, next].map((one) => WAYS[STEP_OF[length]](one)?.at(-1)?.b);
  return own === undefined || other === undefined ? null : straightWay(own, piecePoint(other.x, own.y));
}

/**
 * A length as the pieces have it, mm; null where the piece has no such length. A step is negative where the next size is
 * narrower.
 *
 * @param next the same piece in the next size up, for the steps
 */
export function measureTissue(piece: Piece, length: TissueLength, next?: Piece): Mm | null {
  const way = tapeWay(piece, length, next);
  if (way === null) return null;
  const sum = way.reduce((total, stroke) => total + edgeLength(stroke), 0);
  const [first] = way;
  return isStep(length) && length !== "waistDartMouthNext" && first !== undefined && first.b.x < first.a.x ? -sum : sum;
}
