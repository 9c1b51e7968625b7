/** Where a new dart is opened on each seam. */
import {
  edgeCrossingsAtY,
  edgeIntersections,
  edgeLength,
  edgeLengthBetween,
  edgeParameterAtLength,
  lineEdge,
} from "../../geometry/edgeCurve";
import { polar, type PiecePoint } from "../../geometry/point";
import { seamLength } from "../../girth/seamLength";
import type { DartHome, Piece, PointName, SeamName } from "../../pattern/piece";
import { invariant } from "../../result";
import { curveOf } from "../../pattern/ring";
import { stretchAt, stretchLength, type Stretch } from "../../pattern/seamStretch";
import { SHORTEST_EDGE } from "../../tolerance";
import type { Mm, Radians } from "../../units";

const SEAM_OF: Readonly<Record<DartHome, SeamName>> = {
  side: "side",
  french: "side",
  waist: "waist",
  underBust: "underBust",
  shoulder: "shoulder",
  armhole: "armhole",
  neck: "neck",
  centre: "centre",
};

export const seamOfHome = (home: DartHome): SeamName => SEAM_OF[home];

/** Whether a piece has the seam that a dart of that home opens on. */
export const hasHome = (piece: Piece, home: DartHome): boolean =>
  piece.edges.some(({ seam, mouthOf }) => seam === SEAM_OF[home] && mouthOf === null);

/** A place on the outline: an edge by its index, and the curve parameter on it. */
export interface Place {
  readonly edge: number;
  readonly t: number;
}

/** mm below the bust level, along the side seam (common practice, no source). */
const SIDE_BELOW_BUST: Mm = 45;
/** mm below the bust level on the centre line: the level itself stays one corner. */
const CENTRE_BELOW_BUST: Mm = 5;
/** Shares of the sewn seam, counted the way round (common practice, no source). */
const ARMHOLE = 2 / 3;
const FRENCH = 4 / 5;
const MIDDLE = 1 / 2;
/** mm that stay at least between a new dart and a corner of the seam. */
const CLEAR_OF_CORNERS: Mm = 8;
const FAR: Mm = 5000;

/**
 * Where a dart is opened.
 *
 * @param point the point it serves
 * @param below the direction from it to the cut of a dart from below, so that the middle of its mouth comes plumb below
 */
export function placeOfDart(piece: Piece, home: DartHome, point: PiecePoint, below: Radians): Place {
  switch (home) {
    case "side":
      return atLength(piece, "side", sewnLengthTo(piece, "side", "sideBust") + SIDE_BELOW_BUST);
    case "french":
      return atShare(piece, "side", FRENCH);
    case "waist":
    case "underBust":
      return inDirection(piece, SEAM_OF[home], point, below);
    case "armhole":
      return atShare(piece, "armhole", ARMHOLE);
    case "shoulder":
    case "neck":
      return atShare(piece, SEAM_OF[home], MIDDLE);
    case "centre":
      return atHeight(piece, Math.max(point.y, piece.points.centreBust?.at.y ?? point.y) + CENTRE_BELOW_BUST);
  }
}

const sewnEdges = (piece: Piece, seam: SeamName): number[] =>
  piece.edges.flatMap((edge, index) => (edge.seam === seam && edge.mouthOf === null ? [index] : []));

const lengthOf = (piece: Piece, index: number): Mm => edgeLength(curveOf(piece, invariant(piece.edges[index], "edge")));

const atShare = (piece: Piece, seam: SeamName, share: number): Place =>
  atLength(piece, seam, share * seamLength(piece, seam));

/** Sewn length from where the seam starts, going round, to a corner of it; 0 where it has none of that name. */
export function sewnLengthTo(piece: Piece, seam: SeamName, corner: PointName): Mm {
  const edges = sewnEdges(piece, seam);
  const last = edges.findIndex((index) => invariant(piece.edges[index], "edge").to === corner);
  return edges.slice(0, last + 1).reduce((sum, index) => sum + lengthOf(piece, index), 0);
}

/** The place at a sewn length along the seam, clear of its corners. */
export function atLength(piece: Piece, seam: SeamName, length: Mm): Place {
  const edges = sewnEdges(piece, seam);
  let left = length;
  for (const [i, edge] of edges.entries()) {
    const own = lengthOf(piece, edge);
    if (left <= own || i === edges.length - 1) return clear(piece, edge, Math.min(left, own));
    left -= own;
  }
  return { edge: invariant(edges[0], seam), t: MIDDLE };
}

/** The place kept clear of the corners of its edge. */
function clear(piece: Piece, edge: number, length: Mm): Place {
  const stretch = stretchAt(piece, edge);
  if (stretch.length > 1) return clearOfBends(piece, stretch, edge, length);
  const curve = curveOf(piece, invariant(piece.edges[edge], "edge"));
  const own = edgeLength(curve);
  const room = Math.min(CLEAR_OF_CORNERS, Math.max(SHORTEST_EDGE, own / 3));
  return { edge, t: edgeParameterAtLength(curve, Math.min(own - room, Math.max(room, length))) };
}

/** The same on a stretch with bends: clear of its corners, and no nearer a bend than an edge may be short. */
function clearOfBends(piece: Piece, stretch: Stretch, edge: number, length: Mm): Place {
  const whole = stretchLength(piece, stretch);
  const before = stretch.slice(0, stretch.indexOf(edge));
  const room = Math.min(CLEAR_OF_CORNERS, whole / 3);
  const wanted = Math.min(whole - room, Math.max(room, stretchLength(piece, before) + length));
  let gone = 0;
  let best = { edge, along: wanted, off: Infinity };
  for (const index of stretch) {
    const own = lengthOf(piece, index);
    const bare = Math.min(SHORTEST_EDGE, own / 2);
    const along = Math.min(gone + own - bare, Math.max(gone + bare, wanted));
    // An edge too short to be parted is taken only where there is no other.
    const off = Math.abs(along - wanted) + (own < 2 * SHORTEST_EDGE ? whole : 0);
    if (off < best.off) best = { edge: index, along: along - gone, off };
    gone += own;
  }
  return {
    edge: best.edge,
    t: edgeParameterAtLength(curveOf(piece, invariant(piece.edges[best.edge], "edge")), best.along),
  };
}

function inDirection(piece: Piece, seam: SeamName, point: PiecePoint, direction: Radians): Place {
  const ray = lineEdge(point, polar(point, direction, FAR));
  for (const edge of sewnEdges(piece, seam)) {
    const met = edgeIntersections(curveOf(piece, invariant(piece.edges[edge], "edge")), ray)[0];
    if (met === undefined) continue;
    const curve = curveOf(piece, invariant(piece.edges[edge], "edge"));
    return stretchAt(piece, edge).length > 1
      ? clear(piece, edge, edgeLengthBetween(curve, 0, met.t1))
      : { edge, t: met.t1 };
  }
  return atShare(piece, seam, MIDDLE);
}

function atHeight(piece: Piece, y: Mm): Place {
  for (const edge of sewnEdges(piece, "centre")) {
    const curve = curveOf(piece, invariant(piece.edges[edge], "edge"));
    const t = edgeCrossingsAtY(curve, y)[0];
    if (t !== undefined) return clear(piece, edge, edgeLengthBetween(curve, 0, t));
  }
  return atShare(piece, "centre", MIDDLE);
}
