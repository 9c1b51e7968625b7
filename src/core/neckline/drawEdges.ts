/** Both upper edges of one half drawn anew: that of the front, and that of the back so that the two meet in one line. mm. */
import { cornerAtDegrees, turnAtDegrees } from "../girth/cornerAngle";
import { seamLength } from "../girth/seamLength";
import { pointOf, type Piece, type PieceName, type PointName } from "../pattern/piece";
import { piecesOf, withPiece, type PieceSet } from "../pattern/pieceSet";
import { curveOf, edgeTo } from "../pattern/ring";
import { invariant } from "../result";
import { edgeTurned } from "../surgery/straightThrough";
import { DRAWN_ALIKE_DEGREES } from "../tolerance";
import { radians, radiansFromDegrees, type Mm, type Radians } from "../units";
import {
  BESIDE_MOUTH,
  CENTRE_LEFT,
  flattened,
  HIGHER_AT_MOST,
  isClear,
  SHOULDER_LEFT,
  type Polyline,
} from "./clearances";
import { drawShape, roundLine, type Between, type DrawnShape } from "./edgeShapes";
import { curvesOf, endMoved, neckRunOf, roomBeside, withEdge, type EndMoved, type NeckRun } from "./neckRun";
import { besideCentre, drawnOver, endBeside, seamRunOf } from "./overPrincess";

/** A neckline with nothing left out. */
export interface Asked {
  readonly shape: DrawnShape;
  readonly deeper: Mm;
  readonly wider: Mm;
  readonly backDeeper: Mm;
}

/** The corner of a front at its shoulder, degrees: beyond these the back could not be drawn on to it in a line. */
const LEAST_AT_SHOULDER = 60;
const MOST_AT_SHOULDER = 120;
const STRAIGHT = 180;

export interface Runs {
  readonly front: NeckRun;
  /** null: no back with an edge. */
  readonly back: NeckRun | null;
}

/** The piece that the front's edge is drawn on. */
export const frontName = ({ front, centreFront, cup }: PieceSet): PieceName | null =>
  (front ?? centreFront ?? cup)?.name ?? null;

export function runsOn(pieces: PieceSet): Runs | null {
  const name = frontName(pieces);
  const front = name === null ? null : neckRunOf(pieces[name]);
  const back = neckRunOf(pieces.back);
  // Where a shoulder is sewn both edges are drawn, or none; one over a princess seam is drawn already.
  if (front === null || front.end === "princessTop" || (front.end === "sideNeck" && back?.end !== "sideNeck"))
    return null;
  return { front, back };
}

/** Of this half, front and back, on whatever piece. */
export const lengthOf = (pieces: PieceSet): Mm =>
  piecesOf(pieces).reduce((sum, piece) => (piece.name === "strap" ? sum : sum + seamLength(piece, "neck")), 0);

/** The pieces with their new edges; null where that is not to be had. */
export function drawnOn(pieces: PieceSet, asked: Asked): PieceSet | null {
  const runs = runsOn(pieces);
  if (runs === null || !isWithin(runs, pieces, asked)) return null;
  const { front, back } = runs;
  if (front.end === "strapInner") {
    const cup = strapped(front, asked.shape, asked.deeper);
    const lowered = back === null || asked.backDeeper === 0 ? null : strapped(back, "scoop", asked.backDeeper);
    if (cup === null || (lowered === null && asked.backDeeper !== 0)) return null;
    const done = withPiece(pieces, cup);
    return lowered === null ? done : withPiece(done, lowered);
  }
  if (back === null) return null;
  const beyond = beyondSeam(front, pieces, asked.wider);
  return beyond === null ? shouldered(pieces, front, back, asked) : crossing(pieces, front, back, { ...asked, beyond });
}

/** Whether the ends of the edges stay within what they move along. */
const isWithin = ({ front, back }: Runs, pieces: PieceSet, { deeper, wider, backDeeper }: Asked): boolean =>
  isRoom(front, deeper, beyondSeam(front, pieces, wider) === null ? wider : 0) &&
  (back === null || isRoom(back, backDeeper, wider));

/** How far along the shoulder of a side front an edge ends that crosses the princess seam there; null: it does not come so far. */
function beyondSeam(front: NeckRun, { sideFront }: PieceSet, wider: Mm): Mm | null {
  const { length, to } = roomBeside(front, "shoulder");
  const beyond = wider - length;
  const seam = seamRunOf(sideFront);
  if (front.piece.name !== "centreFront" || to !== "princessTop" || seam === null || beyond < BESIDE_MOUTH) return null;
  const room = roomBeside(seam, "shoulder");
  return beyond <= room.length - (room.to === "shoulderTip" ? SHOULDER_LEFT : BESIDE_MOUTH) ? beyond : null;
}

function isRoom(run: NeckRun, depth: Mm, width: Mm): boolean {
  if (Math.min(depth, width) < -HIGHER_AT_MOST) return false;
  if (depth > roomBeside(run, "centre").length - CENTRE_LEFT) return false;
  if (run.end === "strapInner") return width === 0;
  const { length, to } = roomBeside(run, "shoulder");
  return width <= length - (to === "shoulderTip" ? SHOULDER_LEFT : BESIDE_MOUTH);
}

const isClearOf = (run: NeckRun, drawn: Piece): boolean =>
  isClear(run.piece, lineOf(invariant(neckRunOf(drawn), "neck")));

const lineOf = (run: NeckRun): Polyline => flattened(curvesOf(run));

/** Which way the run comes to its end. */
function arrivingAt({ piece, edges }: NeckRun): Radians {
  const last = invariant(edges.at(-1), "neck");
  const end = pointOf(piece, last.to);
  const from = last.curve?.c2 ?? pointOf(piece, last.from);
  return radians(Math.atan2(end.y - from.y, end.x - from.x));
}

/** A cup, or the back behind it: from the centre to where its strap is sewn on. */
function strapped(run: NeckRun, shape: DrawnShape, deeper: Mm): Piece | null {
  const centre = endMoved(run, "centre", deeper);
  if (centre === null) return null;
  const way = {
    centre: centre.at,
    up: centre.direction,
    end: pointOf(run.piece, run.end),
    arriving: arrivingAt(run),
    bounds: null,
  };
  const piece = withCorners(withEdge(run, centre, null, drawShape(shape, way, true)), shape, []);
  return isClearOf(run, piece) ? piece : null;
}

/** The corner that a front's edge makes at the shoulder where nothing else decides: the back keeps its own. */
function cornerBeside(back: NeckRun): number {
  const own = STRAIGHT - cornerAtDegrees(back.piece, "sideNeck");
  return Math.min(MOST_AT_SHOULDER, Math.max(LEAST_AT_SHOULDER, own));
}

/** What a front's edge is drawn between. */
const wayTo = (centre: EndMoved, end: Pick<EndMoved, "at" | "direction">, corner: number): Between => ({
  centre: centre.at,
  up: centre.direction,
  end: end.at,
  arriving: comingIn(end, corner),
  bounds: [comingIn(end, LEAST_AT_SHOULDER), comingIn(end, MOST_AT_SHOULDER)],
});

/** Front and back of a bodice with a shoulder seam: as much off both shoulders, and one line over the seam. */
function shouldered(pieces: PieceSet, front: NeckRun, back: NeckRun, asked: Asked): PieceSet | null {
  const [centre, end] = [endMoved(front, "centre", asked.deeper), endMoved(front, "shoulder", asked.wider)];
  if (centre === null || end === null) return null;
  const shape = drawShape(asked.shape, wayTo(centre, end, cornerBeside(back)), false);
  const made = withEdge(front, centre, end, shape);
  const drawnFront = withCorners(made, asked.shape, ["sideNeck"]);
  const drawnBack = backMeeting(back, asked, STRAIGHT - cornerAtDegrees(made, "sideNeck"));
  if (drawnBack === null || !isClearOf(front, drawnFront) || !isClearOf(back, drawnBack)) return null;
  return withPiece(withPiece(pieces, drawnFront), drawnBack);
}

/** The same where the edge goes on over the side front. */
function crossing(
  pieces: PieceSet,
  front: NeckRun,
  back: NeckRun,
  asked: Asked & { readonly beyond: Mm },
): PieceSet | null {
  const side = seamRunOf(pieces.sideFront);
  const centre = endMoved(front, "centre", asked.deeper);
  const end = side === null ? null : endMoved(side, "shoulder", asked.beyond);
  if (side === null || centre === null || end === null) return null;
  const way = wayTo(centre, endBeside(front.piece, side.piece, end), cornerBeside(back));
  const made = drawnOver(front, side.piece, centre, end, drawShape(asked.shape, way, false));
  if (made === null) return null;
  const centreFront = withCorners(made.centreFront, asked.shape, ["princessTop"]);
  const sideFront = withTurns(made.sideFront, {
    princessTop: null,
    sideNeck: null,
    ...(made.sideFront.points.neckCorner === undefined
      ? {}
      : { neckCorner: turnAtDegrees(made.sideFront, "neckCorner") }),
  });
  const drawnBack = backMeeting(back, asked, STRAIGHT - cornerAtDegrees(sideFront, "sideNeck"));
  const onSide = flattened(neckCurves(sideFront));
  const isFree =
    isClear(front.piece, flattened(neckCurves(centreFront)), "princess") && isClear(side.piece, onSide, "princess");
  if (drawnBack === null || !isFree || !isClearOf(back, drawnBack)) return null;
  return [centreFront, sideFront, drawnBack].reduce(withPiece, pieces);
}

const neckCurves = (piece: Piece) =>
  piece.edges.filter(({ seam }) => seam === "neck").map((edge) => curveOf(piece, edge));

/** The whole edge of the front as a line of places, that on a side front laid beside the centre front. */
export function frontLine(pieces: PieceSet): Polyline | null {
  const run = runsOn(pieces)?.front ?? null;
  const { centreFront, sideFront } = pieces;
  if (run !== null) return lineOf(run);
  if (centreFront === undefined || sideFront === undefined) return null;
  const onSide = besideCentre(centreFront, sideFront, flattened(neckCurves(sideFront)));
  return [...flattened(neckCurves(centreFront)), ...onSide.slice(1)];
}

/** Which way an edge comes to a shoulder that it makes such a corner with, degrees. */
const comingIn = ({ direction }: Pick<EndMoved, "direction">, corner: number): Radians =>
  radians(direction - radiansFromDegrees(STRAIGHT - corner));

/** The back's edge between its moved ends, square to the centre, meeting the front's in one line. */
function backMeeting(run: NeckRun, { wider, backDeeper }: Asked, corner: number): Piece | null {
  const [centre, end] = [endMoved(run, "centre", backDeeper), endMoved(run, "shoulder", wider)];
  if (centre === null || end === null) return null;
  if (wider === 0 && backDeeper === 0) {
    const turn = cornerAtDegrees(run.piece, "sideNeck") - corner;
    if (Math.abs(turn) <= DRAWN_ALIKE_DEGREES) return run.piece;
    const turned = edgeTurned(run.piece, edgeTo(run.piece, "sideNeck"), "end", radiansFromDegrees(-turn));
    return withTurns(turned, { sideNeck: null });
  }
  const way = {
    centre: centre.at,
    up: centre.direction,
    end: end.at,
    arriving: comingIn(end, corner),
    bounds: null,
  };
  const made = withEdge(run, centre, end, { curves: [roundLine(way)], corners: [] });
  return withTurns(made, { sideNeck: null, centreNeck: null });
}

/** What turns by design is noted as drawn so, and what was the pattern's own turn there is no more. */
function withCorners(piece: Piece, shape: DrawnShape, straight: readonly PointName[]): Piece {
  const isPeaked = shape === "vee" || shape === "sweetheart";
  const within = piece.points.neckCorner === undefined ? {} : { neckCorner: turnAtDegrees(piece, "neckCorner") };
  return withTurns(piece, {
    centreNeck: isPeaked ? turnAtDegrees(piece, "centreNeck") : null,
    ...within,
    ...Object.fromEntries(straight.map((name) => [name, null])),
  });
}

/** null: as our own drafts. */
function withTurns(piece: Piece, turns: Readonly<Partial<Record<PointName, number | null>>>): Piece {
  const drawnTurns = Object.fromEntries(
    Object.entries({ ...piece.drawnTurns, ...turns }).filter(([, turn]) => turn !== null && turn !== undefined),
  );
  if (Object.keys(drawnTurns).length > 0) return { ...piece, drawnTurns };
  const { drawnTurns: _, ...plain } = piece;
  return plain;
}
