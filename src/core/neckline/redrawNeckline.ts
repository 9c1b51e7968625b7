/** The upper edge redrawn on the plan's own pieces. mm. */
import type { Neckline } from "../decisions/dress";
import { halve } from "../geometry/iterate";
import { type PiecePoint } from "../geometry/point";
import { cornerAtDegrees, turnAtDegrees } from "../girth/cornerAngle";
import { pointOf, type Piece, type PieceName, type PointName } from "../pattern/piece";
import { piecesOf, withPiece, type PieceSet } from "../pattern/pieceSet";
import { edgeTo } from "../pattern/ring";
import { remember } from "../remember";
import { fail, invariant, ok, type Result } from "../result";
import { closeWedgeIntoDart, closeWedgeIntoPrincess, takesWedge } from "../surgery/closeWedge";
import { edgeTurned } from "../surgery/straightThrough";
import { DRAWN_ALIKE_DEGREES, WORTH_NOTING } from "../tolerance";
import { trueAll } from "../truing/trueAll";
import { radians, radiansFromDegrees, type Mm, type Radians } from "../units";
import {
  BESIDE_MOUTH,
  CENTRE_LEFT,
  flattened,
  HIGHER_AT_MOST,
  isClear,
  nearestTo,
  SHOULDER_LEFT,
  type Polyline,
} from "./clearances";
import { drawShape, roundLine, type DrawnShape } from "./edgeShapes";
import { gapeOver, shapedAbout } from "./gapeOfEdge";
import { curvesOf, endMoved, neckRunOf, roomBeside, runLength, withEdge, type EndMoved, type NeckRun } from "./neckRun";

/** How an edge will stand off this body, and what cures it. */
export interface NecklineGape {
  /** mm of the edge of one half that has no body to lie on. */
  readonly gape: Mm;
  /** Pinched out of it, where that was chosen. */
  readonly pinched: Mm;
}

export interface RedrawnNeckline {
  readonly pieces: PieceSet;
  /** What the edge was drawn on: the pieces as they were given, pinched where that was chosen. */
  readonly under: PieceSet;
  /** Finished edge of this half before and after. */
  readonly before: Mm;
  readonly after: Mm;
  readonly front: NecklineGape;
  readonly back: NecklineGape;
}

export type NecklineFailure =
  /** This bodice has no edge that such a shape could be drawn on. */
  | { readonly code: "neckline/not-on-style" }
  /** It would come nearer than `least` to the bust point, a dart or the armhole. `of`: whose depth it is. */
  | { readonly code: "neckline/too-deep"; readonly most: Mm; readonly of: "front" | "back" }
  | { readonly code: "neckline/too-wide"; readonly most: Mm }
  | { readonly code: "neckline/too-high"; readonly most: Mm };

const NO_GAPE: NecklineGape = { gape: 0, pinched: 0 };

/** The corner of a front at its shoulder, degrees: beyond these the back could not be drawn on to it in a line. */
const LEAST_AT_SHOULDER = 60;
const MOST_AT_SHOULDER = 120;
const STRAIGHT = 180;

/** Limits are told to a millimetre that works. */
const TOLD_TO: Mm = 0.25;

const redrawn = remember(["pieces", "neckline"], ({ pieces, neckline }: Asked) => redraw(pieces, neckline));

interface Asked {
  readonly pieces: PieceSet;
  readonly neckline: Neckline;
}

/**
 * The edge redrawn, and pinched where that was chosen.
 *
 * @param pieces the final pieces of one half
 * @returns pieces whose shoulders still walk, whose edge runs straight on over the shoulder seam, and square to the centre where
 *          the shape is round or square; the very same pieces where nothing is asked
 */
export const redrawNeckline = (pieces: PieceSet, neckline: Neckline): Result<RedrawnNeckline, NecklineFailure> =>
  redrawn({ pieces, neckline });

/** A neckline with nothing left out. */
interface Drawn {
  readonly shape: DrawnShape;
  readonly deeper: Mm;
  readonly wider: Mm;
  readonly backDeeper: Mm;
}

function redraw(pieces: PieceSet, neckline: Neckline): Result<RedrawnNeckline, NecklineFailure> {
  const runs = runsOn(pieces);
  const { shape, deeper = 0, wider = 0, backDeeper = 0, pinched = false } = neckline;
  if (shape === "asPattern") {
    const before = runs === null ? 0 : lengthOf(pieces);
    return ok({ pieces, under: pieces, before, after: before, front: NO_GAPE, back: NO_GAPE });
  }
  if (runs === null) return fail({ code: "neckline/not-on-style" });
  const asked: Drawn = { shape, deeper, wider, backDeeper };
  const done = drawnOn(pieces, asked);
  if (done === null) return fail(whyNot(pieces, asked));
  const gape = gapeOn(pieces, done);
  const before = lengthOf(pieces);
  const plain = {
    pieces: done,
    under: pieces,
    before,
    after: lengthOf(done),
    front: { gape, pinched: 0 },
    back: NO_GAPE,
  };
  if (!pinched || gape < WORTH_NOTING) return ok(plain);
  const closed = pinchedOn(pieces, done, gape);
  const again = closed === null ? null : drawnOn(closed.pieces, asked);
  if (closed === null || again === null) return ok(plain);
  return ok({
    ...plain,
    pieces: again,
    under: closed.pieces,
    after: lengthOf(again),
    front: { gape, pinched: closed.pinched },
  });
}

interface Runs {
  readonly front: NeckRun;
  /** null: no back with an edge. */
  readonly back: NeckRun | null;
}

/** The piece that the front's edge is drawn on. */
const frontName = ({ front, centreFront, cup }: PieceSet): PieceName | null =>
  (front ?? centreFront ?? cup)?.name ?? null;

function runsOn(pieces: PieceSet): Runs | null {
  const name = frontName(pieces);
  const front = name === null ? null : neckRunOf(pieces[name]);
  const back = neckRunOf(pieces.back);
  // Where a shoulder is sewn both edges are drawn, or none.
  if (front === null || (front.end === "sideNeck" && back?.end !== "sideNeck")) return null;
  return { front, back };
}

/** Of this half, front and back; and of a side front, where the edge crosses on to it. */
const lengthOf = (pieces: PieceSet): Mm =>
  piecesOf(pieces).reduce((sum, piece) => {
    const run = neckRunOf(piece);
    return sum + (run === null ? 0 : runLength(run));
  }, 0);

/** The pieces with their new edges; null where that is not to be had. */
function drawnOn(pieces: PieceSet, asked: Drawn): PieceSet | null {
  const runs = runsOn(pieces);
  if (runs === null || !isWithin(runs, asked)) return null;
  const { front, back } = runs;
  if (front.end === "strapInner") {
    const cup = strapped(front, asked);
    const lowered = back === null || asked.backDeeper === 0 ? null : strappedBack(back, asked);
    if (cup === null || (lowered === null && asked.backDeeper !== 0)) return null;
    const done = withPiece(pieces, cup);
    return lowered === null ? done : withPiece(done, lowered);
  }
  if (back === null) return null;
  return shouldered(pieces, front, back, asked);
}

/** Whether the ends of the edges stay within what they move along. */
function isWithin({ front, back }: Runs, { deeper, wider, backDeeper }: Drawn): boolean {
  const isRoom = (run: NeckRun, depth: Mm, width: Mm): boolean => {
    if (Math.min(depth, width) < -HIGHER_AT_MOST) return false;
    if (depth > roomBeside(run, "centre").length - CENTRE_LEFT) return false;
    if (run.end === "strapInner") return width === 0;
    const { length, to } = roomBeside(run, "shoulder");
    return width <= length - (to === "shoulderTip" ? SHOULDER_LEFT : BESIDE_MOUTH);
  };
  return isRoom(front, deeper, wider) && (back === null || isRoom(back, backDeeper, wider));
}

const clear = (piece: Piece, run: NeckRun, drawn: Piece): Piece | null =>
  isClear(run.piece, lineOf(invariant(neckRunOf(drawn), "neck"))) ? piece : null;

const lineOf = (run: NeckRun): Polyline => flattened(curvesOf(run));

/** Which way the run comes to its end. */
function arrivingAt({ piece, edges }: NeckRun): Radians {
  const last = invariant(edges.at(-1), "neck");
  const end = pointOf(piece, last.to);
  const from = last.curve?.c2 ?? pointOf(piece, last.from);
  return radians(Math.atan2(end.y - from.y, end.x - from.x));
}

function strapped(run: NeckRun, { shape, deeper }: Drawn): Piece | null {
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
  return clear(piece, run, piece);
}

function strappedBack(run: NeckRun, { backDeeper }: Drawn): Piece | null {
  const centre = endMoved(run, "centre", backDeeper);
  if (centre === null) return null;
  const way = {
    centre: centre.at,
    up: centre.direction,
    end: pointOf(run.piece, run.end),
    arriving: arrivingAt(run),
    bounds: null,
  };
  const piece = withCorners(withEdge(run, centre, null, { curves: [roundLine(way)], corners: [] }), "scoop", []);
  return clear(piece, run, piece);
}

/** Front and back of a bodice with a shoulder seam: as much off both shoulders, and one line over the seam. */
function shouldered(pieces: PieceSet, front: NeckRun, back: NeckRun, asked: Drawn): PieceSet | null {
  const [frontCentre, frontEnd] = [endMoved(front, "centre", asked.deeper), endMoved(front, "shoulder", asked.wider)];
  const [backCentre, backEnd] = [endMoved(back, "centre", asked.backDeeper), endMoved(back, "shoulder", asked.wider)];
  if (frontCentre === null || frontEnd === null || backCentre === null || backEnd === null) return null;
  const ownCorner = STRAIGHT - cornerAtDegrees(back.piece, "sideNeck");
  const corner = Math.min(MOST_AT_SHOULDER, Math.max(LEAST_AT_SHOULDER, ownCorner));
  const way = {
    centre: frontCentre.at,
    up: frontCentre.direction,
    end: frontEnd.at,
    arriving: comingIn(frontEnd, corner),
    bounds: [comingIn(frontEnd, LEAST_AT_SHOULDER), comingIn(frontEnd, MOST_AT_SHOULDER)] as const,
  };
  const made = withEdge(front, frontCentre, frontEnd, drawShape(asked.shape, way, false));
  const drawnFront = withCorners(made, asked.shape, ["sideNeck"]);
  const drawnBack = backMeeting(back, asked, [backCentre, backEnd], STRAIGHT - cornerAtDegrees(made, "sideNeck"));
  if (clear(drawnFront, front, drawnFront) === null || clear(drawnBack, back, drawnBack) === null) return null;
  return withPiece(withPiece(pieces, drawnFront), drawnBack);
}

/** Which way an edge comes to a shoulder that it makes such a corner with, degrees. */
const comingIn = ({ direction }: EndMoved, corner: number): Radians =>
  radians(direction - radiansFromDegrees(STRAIGHT - corner));

/** The back's edge between its moved ends, square to the centre, meeting the front's in one line. */
function backMeeting(
  run: NeckRun,
  { wider, backDeeper }: Drawn,
  [centre, end]: readonly [EndMoved, EndMoved],
  corner: number,
): Piece {
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

function gapeOn(pieces: PieceSet, drawn: PieceSet): Mm {
  const name = frontName(pieces);
  const piece = name === null ? undefined : pieces[name];
  const [own, made] = [neckRunOf(piece), neckRunOf(name === null ? undefined : drawn[name])];
  const bust = piece?.points.bustPoint?.at;
  if (piece === undefined || own === null || made === null || bust === undefined) return 0;
  return gapeOver(bust, shapedAbout(piece, pieces), lineOf(own), lineOf(made));
}

/** The gape closed as a wedge to the bust point, before the edge is drawn: at the pattern's own edge it is that much wider. */
function pinchedOn(
  pieces: PieceSet,
  drawn: PieceSet,
  gape: Mm,
): { readonly pieces: PieceSet; readonly pinched: Mm } | null {
  const name = frontName(pieces);
  const piece = name === null ? undefined : pieces[name];
  const [own, made] = [neckRunOf(piece), neckRunOf(name === null ? undefined : drawn[name])];
  const bust = piece?.points.bustPoint?.at;
  if (piece === undefined || own === null || made === null || bust === undefined || !takesWedge(piece, "neck"))
    return null;
  const wider = nearestTo(lineOf(own), bust) / nearestTo(lineOf(made), bust);
  const close = (amount: Mm) =>
    piece.points.princessBust === undefined
      ? closeWedgeIntoDart(piece, { seam: "neck", amount, point: bust })
      : closeWedgeIntoPrincess(piece, "neck", amount);
  const whole = close(gape * wider);
  const most = whole.ok ? null : whole.failure.code === "wedge/too-much" ? whole.failure.most : 0;
  const done = most === null ? whole : most / wider < WORTH_NOTING ? null : close(most);
  if (done === null || !done.ok) return null;
  const pinched = most === null ? gape : most / wider;
  return { pieces: trueAll(withPiece(pieces, done.value.piece)).pieces, pinched };
}

/** Which amount is too much, and the most of it that works with the others as they are. */
function whyNot(pieces: PieceSet, asked: Drawn): NecklineFailure {
  const works = (other: Partial<Drawn>): boolean => drawnOn(pieces, { ...asked, ...other }) !== null;
  const most = (holding: Mm, failing: Mm, with_: (value: Mm) => Partial<Drawn>): Mm =>
    halve(holding, failing, TOLD_TO, (value) => works(with_(value))).holding;
  const deeper = (value: Mm): Partial<Drawn> => ({ deeper: value });
  const wider = (value: Mm): Partial<Drawn> => ({ wider: value });
  const back = (value: Mm): Partial<Drawn> => ({ backDeeper: value });
  if (asked.deeper < 0 && works(deeper(0))) return { code: "neckline/too-high", most: -most(0, asked.deeper, deeper) };
  if (works(deeper(0))) return { code: "neckline/too-deep", most: most(0, asked.deeper, deeper), of: "front" };
  if (works(wider(0))) return { code: "neckline/too-wide", most: most(0, asked.wider, wider) };
  if (works(back(0))) return { code: "neckline/too-deep", most: most(0, asked.backDeeper, back), of: "back" };
  // With one amount alone it cannot be had: it must be higher than the pattern's own, or more than one is too much.
  if (works(deeper(-HIGHER_AT_MOST)))
    return { code: "neckline/too-deep", most: most(-HIGHER_AT_MOST, asked.deeper, deeper), of: "front" };
  if (works({ deeper: 0, backDeeper: 0 }) && asked.deeper > 0) {
    const withoutBack = { ...asked, backDeeper: 0 };
    return {
      code: "neckline/too-deep",
      most: halve(0, asked.deeper, TOLD_TO, (value) => drawnOn(pieces, { ...withoutBack, deeper: value }) !== null)
        .holding,
      of: "front",
    };
  }
  if (drawnOn(pieces, { ...asked, deeper: 0, wider: 0, backDeeper: 0 }) !== null) {
    const narrow = { ...asked, deeper: 0, backDeeper: 0 };
    return {
      code: "neckline/too-wide",
      most: halve(0, asked.wider, TOLD_TO, (value) => drawnOn(pieces, { ...narrow, wider: value }) !== null).holding,
    };
  }
  return { code: "neckline/not-on-style" };
}

/** How far the direction of the edge turns over the shoulder seam, degrees: 0 runs straight on. */
export const turnOverShoulder = (front: Piece, back: Piece): number =>
  cornerAtDegrees(front, "sideNeck") + cornerAtDegrees(back, "sideNeck") - STRAIGHT;
