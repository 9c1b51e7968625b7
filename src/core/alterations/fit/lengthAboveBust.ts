/**
 * Bodice length above the bust: front and back cut across at the middle of the armhole's depth, above the place where a
 * bust adjustment turns the side part, so that the order of the two does not matter.
 */
import { edgeCrossingsAtY, edgeLengthBetween, edgePointAt } from "../../geometry/edgeCurve";
import { pointOf, type Piece, type PieceName } from "../../pattern/piece";
import { fail, invariant, ok } from "../../result";
import { acrossAt, type Across } from "../../surgery/lengthenAcross";
import { lengthenAll, type Line } from "./lengthenAll";
import type { SurgeryTrace } from "../../surgery/cutAndMove";
import { curveOf } from "../../pattern/ring";
import { endsOf, placeAlong, stretchFrom, stretchLength } from "../../pattern/seamStretch";
import type { Mm } from "../../units";
import type { PieceSet } from "../../pattern/pieceSet";
import type { FitDefinition } from "../outcome/definition";
import { walkedBy } from "./whatChanged";

/** How far below the shoulder's end the cut lies, as shares of the way to where the armhole turns in, in order of choice. */
const LINES = [0.75, 0.6, 0.9, 0.45, 0.3] as const;

/** The pieces with a shoulder end: the cut is set by them. */
const isShoulderPiece = (piece: Piece | undefined): piece is Piece => piece?.points.shoulderTip !== undefined;

/** How far down the armhole runs before it turns in, or comes to a seam. */
const upperDepth = (piece: Piece): Mm =>
  pointOf(piece, endsOf(piece, stretchFrom(piece, "shoulderTip")).to).y - pointOf(piece, "shoulderTip").y;

const shoulderFront = ({ front, centreFront, sideFront }: PieceSet): Piece | undefined =>
  [front, centreFront, sideFront].find(isShoulderPiece);

/**
 * One level: as far below the end of the shoulder on front and back, measured down. A side front that stands tilted,
 * since the dart at its top is open, is cut square to the grain, and the centre front where the two meet on the seam.
 */
function lineAt(pieces: PieceSet, share: number): Line | null {
  const { back, centreFront } = pieces;
  const front = shoulderFront(pieces);
  if (front === undefined || !isShoulderPiece(back)) return null;
  const depth = share * Math.min(...[front, back].map(upperDepth));
  const lines: [PieceName, Across | null][] = [front, back].map((piece) => [
    piece.name,
    acrossAt(piece, pointOf(piece, "shoulderTip").y + depth),
  ]);
  if (front.name === "sideFront") {
    const y = pointOf(front, "shoulderTip").y + depth;
    lines.push([
      "centreFront",
      acrossAt(invariant(centreFront, "centreFront"), matchingHeight(invariant(centreFront, "centreFront"), front, y)),
    ]);
  }
  const line = lines.flatMap(([name, across]) => (across === null ? [] : [[name, across] as const]));
  return line.length === lines.length ? line : null;
}

const curveAt = (piece: Piece, index: number) => curveOf(piece, invariant(piece.edges[index], "edge"));

/** The height at which the upper princess seam of the centre front is as far along as the side front's is at a height. */
function matchingHeight(centreFront: Piece, sideFront: Piece, y: Mm): Mm {
  const [side, centre] = [stretchFrom(sideFront, "princessBust"), stretchFrom(centreFront, "princessTop")];
  const beyond = side.findIndex((index) => edgeCrossingsAtY(curveAt(sideFront, index), y).length > 0);
  const curve = curveAt(sideFront, side[beyond < 0 ? side.length - 1 : beyond] ?? 0);
  const t = edgeCrossingsAtY(curve, y)[0] ?? 1;
  const rest = beyond < 0 ? [] : side.slice(beyond + 1);
  const along = Math.min(
    edgeLengthBetween(curve, t, 1) + stretchLength(sideFront, rest),
    stretchLength(centreFront, centre),
  );
  const place = placeAlong(centreFront, centre, along);
  return edgePointAt(curveAt(centreFront, place.index), place.t).y;
}

/** How far the cut on the back lies below the end of the shoulder. */
function depthOf(pieces: PieceSet, traces: readonly SurgeryTrace[]): Mm {
  const cut = invariant(traces.find(({ piece }) => piece === "back")?.cuts[0]?.[0], "cut on the back");
  return cut.y - pointOf(invariant(pieces.back, "back"), "shoulderTip").y;
}

function lineOf(pieces: PieceSet): Line | null {
  for (const share of LINES) {
    const line = lineAt(pieces, share);
    if (line !== null) return line;
  }
  return null;
}

export const lengthAboveBust: FitDefinition = {
  range: { least: -40, most: 50 },
  madeOn: ["front", "centreFront", "sideFront", "back"],
  applies: (pieces) => lineOf(pieces) !== null,
  apply: (pieces, amount) => {
    const line = lineOf(pieces);
    if (line === null) return fail({ code: "alteration/not-on-this-style" });
    const done = lengthenAll(pieces, line, amount);
    if (!done.ok) return done;
    const { pieces: after, traces } = done.value;
    const isPrincessCut = traces.some(({ piece }) => piece === "sideFront");
    const walked = isPrincessCut ? walkedBy(pieces, after, amount) : 0;
    return ok({ ...done.value, values: { down: depthOf(pieces, traces), walked: Math.abs(walked) } });
  },
};
