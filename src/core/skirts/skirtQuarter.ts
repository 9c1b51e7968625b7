/**
 * A quarter of a fitted skirt, drawn flat with what its darts or its seam between two panels take in: origin at the centre of
 * the waist, x to the side, y down. Its waist is square to the centre, to both legs of each dart and to the side seam, so that it
 * runs smooth when sewn, and what that makes it longer is taken in, so that it is sewn to the very length of the bodice's quarter.
 *
 * The side seam is as long as the skirt is at the side, whatever the waist does: the front's and the back's meet. What waist to
 * floor differs by at the centre goes in at the waist, which is lifted or lowered there; the hem is level.
 */
import {
  edgeCrossingsAtY,
  edgeLength,
  edgeLengthBetween,
  edgePointAt,
  lineEdge,
  type EdgeCurve,
} from "../geometry/edgeCurve";
import { piecePoint, polar, type PiecePoint } from "../geometry/point";
import { controls, DOWN } from "../pattern/namedEdges";
import { invariant } from "../result";
import { SOLVER_ACCURACY } from "../tolerance";
import { radians, type Mm, type Radians } from "../units";

export interface QuarterAsked {
  /** Finished. */
  readonly waist: Mm;
  /** What its hip is wider than its waist. */
  readonly suppression: Mm;
  /** Of it, at the side; the rest goes into darts, or into one seam. */
  readonly atSide: Mm;
  /** Where darts or the seam stand: along the finished waist from the centre. None: the side takes all. */
  readonly places: readonly Mm[];
  readonly takenBy: "darts" | "panel";
  readonly dartLength: Mm;
  /** Along the side seam. */
  readonly hipDepth: Mm;
  readonly sideLength: Mm;
  /** null: as the waist comes to lie. */
  readonly centreLength: Mm | null;
  readonly flare: Radians;
  readonly panelFlare: Radians;
}

/** A dart, or what lies between the two edges of a seam, upright about x. */
export interface Gap {
  readonly x: Mm;
  readonly intake: Mm;
  /** Height of both its upper ends. */
  readonly y: Mm;
  /** How far each edge leans off the upright at the waist. */
  readonly lean: Radians;
}

export interface Quarter {
  readonly asked: QuarterAsked;
  readonly gaps: readonly Gap[];
  /** From the centre to the side, one more than gaps. */
  readonly waist: readonly EdgeCurve<"piece">[];
  /** From the waist to the hip. */
  readonly side: EdgeCurve<"piece">;
  readonly hip: PiecePoint;
  readonly sideHem: PiecePoint;
  readonly centreLength: Mm;
  /** What the side takes in, as drawn. */
  readonly atSide: Mm;
}

/** A side seam leaves the waist steeper than it goes to the hip, at most by this. */
const SIDE_START = 1.5;
/** Rounds; each leaves a hundredth of what was off. */
const ROUNDS = 12;

interface Placed {
  readonly xs: readonly Mm[];
  readonly intake: Mm;
  readonly sideX: Mm;
}

export function drawQuarter(asked: QuarterAsked): Quarter {
  const { waist, suppression, atSide, places } = asked;
  const hipX = waist + suppression;
  const inGaps = places.length === 0 ? 0 : suppression - atSide;
  const each = places.length === 0 ? 0 : inGaps / places.length;
  let placed: Placed = {
    xs: places.map((place, i) => place + (i + 0.5) * each),
    intake: inGaps,
    sideX: hipX - (places.length === 0 ? suppression : atSide),
  };
  let drawn = drawPlaced(asked, hipX, placed);
  for (let round = 0; round < ROUNDS; round += 1) {
    const lengths = drawn.waist.map(edgeLength);
    const over = lengths.reduce((sum, length) => sum + length, 0) - waist;
    let sewn = 0;
    const off = places.map((place, i) => {
      sewn += invariant(lengths[i], "waist");
      return place - sewn;
    });
    if (Math.max(Math.abs(over), ...off.map(Math.abs)) < SOLVER_ACCURACY) break;
    placed = {
      xs: placed.xs.map((x, i) => x + invariant(off[i], "off") + ((i + 0.5) * over) / places.length),
      intake: places.length === 0 ? 0 : placed.intake + over,
      sideX: placed.sideX - (places.length === 0 ? over : 0),
    };
    drawn = drawPlaced(asked, hipX, placed);
  }
  return drawn;
}

/** How steeply a line leaves the waist that comes in by `by` over `down` and leans out by `flare` from there. */
function leanOf(by: Mm, down: Mm, flare: Radians): Radians {
  const chord = Math.atan2(by, down);
  return radians(Math.min(Math.max(2 * chord - flare, 0), SIDE_START * Math.max(chord, 0)));
}

function drawPlaced(asked: QuarterAsked, hipX: Mm, { xs, intake, sideX }: Placed): Quarter {
  const { hipDepth, sideLength, flare, panelFlare } = asked;
  const { rise, lean } = sideOf(hipX - sideX, hipDepth, flare);
  const each = xs.length === 0 ? 0 : intake / xs.length;
  const gapLean =
    asked.takenBy === "darts"
      ? radians(Math.atan2(each / 2, asked.dartLength))
      : leanOf(each / 2, hipDepth, panelFlare);
  // First as it lies by itself: level at the centre, square to what it meets.
  let y = 0;
  let fromX = 0;
  let fromLean = 0;
  const free: Mm[] = [];
  for (const x of xs) {
    y += (x - each / 2 - fromX) * Math.tan((fromLean - gapLean) / 2);
    free.push(y);
    fromX = x + each / 2;
    fromLean = gapLean;
  }
  y += (sideX - fromX) * Math.tan((fromLean - lean) / 2);
  const centreLength = asked.centreLength ?? sideLength - hipDepth + rise + y;
  const hipY = hipDepth + centreLength - sideLength;
  const lifted = hipY - rise - y;
  const gaps = xs.map((x, i): Gap => ({
    x,
    intake: each,
    lean: gapLean,
    y: invariant(free[i], "y") + liftAt(x, sideX, lifted),
  }));

  const hip = piecePoint(hipX, hipY);
  const sideWaist = piecePoint(sideX, hipY - rise);
  const waist: EdgeCurve<"piece">[] = [];
  let from = piecePoint(0, 0);
  let leaving = 0;
  for (const gap of gaps) {
    const slope = Math.atan(liftSlopeAt(gap.x, sideX, lifted));
    waist.push(bent(from, leaving, piecePoint(gap.x - each / 2, gap.y), slope - gapLean));
    from = piecePoint(gap.x + each / 2, gap.y);
    leaving = slope + gapLean;
  }
  waist.push(bent(from, leaving, sideWaist, -lean));
  return {
    asked,
    gaps,
    waist,
    side: sideLine(sideWaist, lean, hip, flare),
    hip,
    sideHem: polar(hip, radians(DOWN - flare), sideLength - hipDepth),
    centreLength,
    atSide: hipX - sideX,
  };
}

function bent(from: PiecePoint, leaving: number, to: PiecePoint, arriving: number): EdgeCurve<"piece"> {
  const [c1, c2] = controls(from, radians(leaving), to, radians(arriving));
  return { a: from, b: to, curve: { c1, c2 } };
}

/** Nothing at the centre and all at the side, level at both, so that the waist stays square there. */
const liftAt = (x: Mm, sideX: Mm, whole: Mm): Mm => whole * (x / sideX) ** 2 * (3 - (2 * x) / sideX);
const liftSlopeAt = (x: Mm, sideX: Mm, whole: Mm): number => (6 * whole * (x / sideX) * (1 - x / sideX)) / sideX;

/** A line from the waist to the hip, or the edge of a panel, mirrored: it goes over into the flare below. */
export function sideLine(
  from: PiecePoint,
  lean: Radians,
  to: PiecePoint,
  flare: Radians,
  way: 1 | -1 = 1,
): EdgeCurve<"piece"> {
  const [c1, c2] = controls(from, radians(DOWN - way * lean), to, radians(DOWN - way * flare), 0.33, 0.4);
  return { a: from, b: to, curve: { c1, c2 } };
}

/** How high above the hip a side starts that is as long as the hip is deep. */
function sideOf(by: Mm, hipDepth: Mm, flare: Radians): { readonly rise: Mm; readonly lean: Radians } {
  const lean = leanOf(by, hipDepth, flare);
  let rise = hipDepth;
  for (let round = 0; round < ROUNDS; round += 1) {
    const over = edgeLength(sideLine(piecePoint(-by, -rise), lean, piecePoint(0, 0), flare)) - hipDepth;
    if (Math.abs(over) < SOLVER_ACCURACY) break;
    rise -= over;
  }
  return { rise, lean };
}

/** The edge of the panel nearer the centre, from the waist to the hip. */
export function panelLine(quarter: Quarter, { x, intake, y, lean }: Gap): EdgeCurve<"piece"> {
  return sideLine(piecePoint(x - intake / 2, y), lean, piecePoint(x, quarter.hip.y), quarter.asked.panelFlare);
}

/** How wide the quarter is, so far below its hip line (negative: above). `isShut`: darts are shut into flare. */
export function widthAt(quarter: Quarter, belowHip: Mm, isShut: boolean): Mm {
  const { asked, gaps, hip, side } = quarter;
  const y = hip.y + belowHip;
  const outer = belowHip >= 0 ? hip.x + belowHip * Math.tan(asked.flare) : xAt(side, y);
  return gaps.reduce((width, gap) => width - takenAt(quarter, gap, y, isShut), outer);
}

function takenAt(quarter: Quarter, gap: Gap, y: Mm, isShut: boolean): Mm {
  const { asked, hip } = quarter;
  if (asked.takenBy === "panel") {
    if (y >= hip.y) return -2 * (y - hip.y) * Math.tan(asked.panelFlare);
    return 2 * (gap.x - xAt(panelLine(quarter, gap), y));
  }
  const share = Math.min(1 - (y - gap.y) / asked.dartLength, 1);
  return gap.intake * (isShut ? share : Math.max(share, 0));
}

const xAt = (line: EdgeCurve<"piece">, y: Mm): Mm => edgePointAt(line, parameterAtY(line, y)).x;

/** Its upper end where it starts lower. */
const parameterAtY = (line: EdgeCurve<"piece">, y: Mm): number =>
  y <= line.a.y ? 0 : (edgeCrossingsAtY(line, y).at(-1) ?? 1);

/** How far along the side seam from the waist a height is, so far below the hip line. */
export function alongSide({ asked, hip, side }: Quarter, belowHip: Mm): Mm {
  if (belowHip >= 0) return asked.hipDepth + belowHip / Math.cos(asked.flare);
  return edgeLengthBetween(side, 0, parameterAtY(side, hip.y + belowHip));
}

/**
 * The hem between two lines, square to both: level as far as it can be, and turned up to a line that leans out.
 *
 * @param from    its end nearer the centre, `way` 1 leaning out to the side there, −1 to the centre
 */
export function hemLine(from: PiecePoint, fromLean: Radians, to: PiecePoint, toLean: Radians): EdgeCurve<"piece"> {
  if (fromLean === 0 && toLean === 0) return lineEdge(from, to);
  const level = Math.max(from.y, to.y, levelOf(from, fromLean, to, toLean));
  const c1 = turnPoint(from, fromLean, level, 1, to);
  const c2 = turnPoint(to, toLean, level, -1, from);
  return { a: from, b: to, curve: { c1, c2 } };
}

/** As deep as a hem that leans at both ends comes: a few mm below them. */
const levelOf = (from: PiecePoint, fromLean: Radians, to: PiecePoint, toLean: Radians): Mm =>
  fromLean === 0 ? from.y : Math.min(from.y + fromLean * HEM_TURN, to.y + toLean * HEM_TURN);
/** mm. Over about so much a hem turns up to a side that leans. */
const HEM_TURN: Mm = 40;

/** Where the square to a leaning line meets the level of the hem: the control of a curve that leaves squarely. */
function turnPoint(end: PiecePoint, lean: Radians, level: Mm, way: 1 | -1, other: PiecePoint): PiecePoint {
  const most = Math.abs(other.x - end.x) / 2;
  const along = lean === 0 ? (2 * most) / 3 : Math.min(Math.max((level - end.y) / Math.sin(lean), HEM_TURN / 4), most);
  return piecePoint(end.x + way * along * Math.cos(lean), end.y + along * Math.sin(lean));
}
