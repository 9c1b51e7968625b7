/**
 * Bodice length above the bust: front and back cut across at the middle of the armhole's depth, above the place where a
 * bust adjustment turns the side part, so that the order of the two does not matter.
 */
import {
  edgeCrossingsAtY,
  edgeLength,
  edgeLengthBetween,
  edgeParameterAtLength,
  edgePointAt,
} from "../../geometry/edgeCurve";
import { pointOf, type Piece, type PieceName } from "../../pattern/piece";
import { fail, must, ok } from "../../result";
import { acrossAt, type Across } from "../../surgery/lengthenAcross";
import { lengthenAll, type Line } from "./lengthenAll";
import type { SurgeryTrace } from "../../surgery/cutAndMove";
import { curveOf, edgeFrom } from "../../pattern/ring";
import type { Mm } from "../../units";
import type { PieceSet } from "../../pattern/pieceSet";
import type { FitDefinition } from "../outcome/definition";
import { isCut, isDartCut, princessBeginsIn, told, toldFor, walkedBy, walkingTold, type Steps } from "./told";

/** How far below the shoulder's end the cut lies, as shares of the way to where the armhole turns in, in order of choice. */
const LINES = [0.75, 0.6, 0.9, 0.45, 0.3] as const;

/** The pieces with a shoulder end: the cut is set by them. */
const isShoulderPiece = (piece: Piece | undefined): piece is Piece => piece?.points.shoulderTip !== undefined;

/** How far down the armhole runs before it turns in, or comes to a seam. */
const upperDepth = (piece: Piece): Mm =>
  pointOf(piece, must(piece.edges[edgeFrom(piece, "shoulderTip")], "armhole").to).y - pointOf(piece, "shoulderTip").y;

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
      acrossAt(must(centreFront, "centreFront"), matchingHeight(must(centreFront, "centreFront"), front, y)),
    ]);
  }
  const line = lines.flatMap(([name, across]) => (across === null ? [] : [[name, across] as const]));
  return line.length === lines.length ? line : null;
}

/** The height at which the upper princess seam of the centre front is as far along as the side front's is at a height. */
function matchingHeight(centreFront: Piece, sideFront: Piece, y: Mm): Mm {
  const side = curveOf(sideFront, must(sideFront.edges[edgeFrom(sideFront, "princessBust")], "princess seam"));
  const t = edgeCrossingsAtY(side, y)[0] ?? 1;
  const centre = curveOf(centreFront, must(centreFront.edges[edgeFrom(centreFront, "princessTop")], "princess seam"));
  const along = Math.min(edgeLengthBetween(side, t, 1), edgeLength(centre));
  return edgePointAt(centre, edgeParameterAtLength(centre, along)).y;
}

/** How far the cut on the back lies below the end of the shoulder. */
function depthOf(pieces: PieceSet, traces: readonly SurgeryTrace[]): Mm {
  const cut = must(traces.find(({ piece }) => piece === "back")?.cuts[0]?.[0], "cut on the back");
  return cut.y - pointOf(must(pieces.back, "back"), "shoulderTip").y;
}

function lineOf(pieces: PieceSet): Line | null {
  for (const share of LINES) {
    const line = lineAt(pieces, share);
    if (line !== null) return line;
  }
  return null;
}

const OPEN =
  "Cut along it. Slide the lower part straight down until the gap is {amount} all the way, and stick paper behind it.";
const FOLD = "Fold {amount} out along it, by the same all the way.";
const CENTRE = "Draw the centre straight through the change.";
const ARMHOLE = "Draw the armhole smooth through the change.";
const DART = "Draw the legs of the dart that was cut across again from its end to its mouth, and make them equal.";
const PRINCESS = "Draw the princess seam again in one smooth curve through the change.";
const WALK =
  "Nothing is cut on this piece. Walk the princess seam against the centre front's: both are as long as they were.";
const WALK_SIDE = "Walk the princess seam against the centre front's.";
const DEEPER = "The armhole is {amount} deeper: lengthen the sleeve's cap, or the armhole's facing, to match.";
const LESS_DEEP = "The armhole is {amount} less deep: alter the sleeve's cap, or the armhole's facing, to match.";

const lineFrom = (from: string, to: string): string =>
  `Draw a line from the ${from} straight across to the ${to}, square to the grain, {down} straight below the end of the shoulder: equally far down on front and back.`;
const LINE_BEYOND =
  "Lay the princess seam on the side front's from the shoulder down, and mark where the line on the side front begins. From that mark draw a line straight across to the centre front, square to the grain.";

/** The line on one piece: by the end of the shoulder where the piece has it, else from the piece that has. */
function lineTold(piece: Piece): string {
  if (!isShoulderPiece(piece)) return LINE_BEYOND;
  return piece.name === "sideFront" ? lineFrom("princess seam", "armhole") : lineFrom("centre", "armhole");
}

function stepsFor(piece: Piece, traces: readonly SurgeryTrace[], longer: boolean, walked: Mm): readonly string[] {
  if (!isCut(piece, traces)) return [WALK];
  const hasArmhole = isShoulderPiece(piece);
  const isPrincessCut = princessBeginsIn(piece, "shoulder");
  return told(
    lineTold(piece),
    longer ? OPEN : FOLD,
    piece.name !== "sideFront" && CENTRE,
    hasArmhole && ARMHOLE,
    isDartCut(piece, traces) && DART,
    isPrincessCut && PRINCESS,
    isPrincessCut && (piece.name === "centreFront" ? walkingTold(walked) : WALK_SIDE),
    hasArmhole && (longer ? DEEPER : LESS_DEEP),
  );
}

/** For a garment in front and back; what is done on others depends on where their seams run. */
const stepsOfWhole = (move: string, armhole: string): Steps => {
  const whole = [lineFrom("centre", "armhole"), move, CENTRE, ARMHOLE, armhole];
  return { front: whole, centreFront: whole, sideFront: [WALK], back: whole };
};

export const lengthAboveBust: FitDefinition = {
  phase: "length",
  words: {
    name: "Bodice length above the bust",
    seen: "The bust line and the armhole sit too high and the armhole cuts in; or the upper chest and the armhole sag.",
    amount: "Lengthen by",
    hint: "less than 0 shortens",
    more: { title: "Lengthen the bodice above the bust by {amount}", steps: stepsOfWhole(OPEN, DEEPER) },
    less: { title: "Shorten the bodice above the bust by {amount}", steps: stepsOfWhole(FOLD, LESS_DEEP) },
  },
  range: { least: -40, most: 50 },
  applies: (pieces) => lineOf(pieces) !== null,
  apply: (pieces, amount) => {
    const line = lineOf(pieces);
    if (line === null) return fail({ code: "slip/not-on-this-style" });
    const done = lengthenAll(pieces, line, amount);
    if (!done.ok) return done;
    const { pieces: after, traces } = done.value;
    const isPrincessCut = traces.some(({ piece }) => piece === "sideFront");
    const walked = isPrincessCut ? walkedBy(pieces, after, amount) : 0;
    const steps = toldFor(pieces, after, (piece) => stepsFor(piece, traces, amount > 0, walked));
    return ok({ ...done.value, steps, values: { down: depthOf(pieces, traces), walked: Math.abs(walked) } });
  },
};
