/** From blended pieces to the wearer's own: adjusted for the bust. */
import { fromSideNeck, probableBustPoint, type ProbableBustPoint } from "../bodies/probableBustPoint";
import { halve } from "../geometry/iterate";
import { angleAt, distance, piecePoint, type PiecePoint } from "../geometry/point";
import type { MeasuredBody } from "../measures/tape";
import type { Making } from "../nest/patternPieces";
import { homeOf } from "../pattern/dartNames";
import { pointOf, type PieceName } from "../pattern/piece";
import { pieceIn, piecesOf, type PieceSet } from "../pattern/pieceSet";
import { ok, type Result } from "../result";
import type { BustAdjusted } from "../style/style";
import type { FullBustFailure } from "../surgery/fullBust";
import { BUST_DART_WIDEST_DEGREES, GIRTH_WORTH_TELLING, SAME_LINE, SHORTEST_EDGE } from "../tolerance";
import { degreesFrom, type Mm } from "../units";

export interface Built {
  /** Blended, in the cup version, before the bust alteration. */
  readonly cut: PieceSet;
  /** After it: what the wearer's own alterations start from. */
  readonly blended: PieceSet;
  /** null where the bust is not altered, or nothing worth it can be made of what was asked. */
  readonly bust: Result<BustAdjusted, FullBustFailure> | null;
  /** Whole bust change that was made. */
  readonly alteration: Mm;
  /** In the base size of the style's bust piece. */
  readonly bustPoint: {
    readonly printed: PiecePoint;
    readonly own: PiecePoint | null;
    readonly probable: ProbableBustPoint | null;
  };
  /** The pieces with the darts that the wearer's own cup asks for; null where they cannot be made. */
  readonly wanted: PieceSet | null;
}

export interface BuildInputs {
  readonly making: Making;
  /** The piece that carries the bust point. */
  readonly bustPiece: PieceName;
  readonly cupDifference: Mm;
  /** Whole bust change to make; where it cannot be made, whether the most that can is made instead. */
  readonly asked: Mm;
  readonly asMuchAsCanBe: boolean;
  /** Body bust less what base size and cup are drafted for. */
  readonly residual: Mm;
  readonly body: MeasuredBody;
  readonly age: number | undefined;
}

/** Builds the pieces for the picks. */
export function buildPieces(from: BuildInputs): Built {
  const inputs = { ...from, making: oncePerSpread(from.making) };
  const { making, bustPiece, cupDifference } = inputs;
  const { open, cut, others, sideNeck } = making;
  const bustPointOf = (pieces: PieceSet): PiecePoint => pointOf(pieceIn(pieces, bustPiece), "bustPoint");
  const { bust, alteration } = adjustBust(inputs);
  const altered = bust !== null && bust.ok ? bust.value.pieces : null;
  const blended = altered === null ? cut : making.finish(altered, bustPointOf(altered), cupDifference + alteration);
  const own = ownBustPoint(sideNeck, bustPointOf(blended), inputs.body);
  const probable = probableBustPoint(sideNeck, inputs.body, inputs.age);
  const wanted = inputs.residual === 0 ? ok(open) : openPieces(making.adjustBust(open, inputs.residual / 2));
  return {
    cut: { ...cut, ...others },
    blended: { ...blended, ...others },
    bust,
    alteration,
    bustPoint: { printed: bustPointOf(blended), own, probable },
    wanted: wanted.ok
      ? making.finish(wanted.value, own ?? bustPointOf(wanted.value), cupDifference + inputs.residual)
      : null,
  };
}

/**
 * What is tried, what is made and what her darts would be are often of one spread: that is spread once, and its darts ended once
 * at a bust point.
 */
function oncePerSpread(making: Making): Making {
  const { open } = making;
  const spreads = new Map<Mm, ReturnType<Making["adjustBust"]>>();
  const ended: {
    readonly from: PieceSet;
    readonly at: PiecePoint;
    readonly difference: Mm;
    readonly pieces: PieceSet;
  }[] = [];
  return {
    ...making,
    adjustBust: (from, spread) => {
      const known = from === open ? spreads.get(spread) : undefined;
      const done = known ?? making.adjustBust(from, spread);
      if (from === open) spreads.set(spread, done);
      return done;
    },
    finish: (from, at, difference) => {
      const known = ended.find(
        (one) => one.from === from && one.at.x === at.x && one.at.y === at.y && one.difference === difference,
      );
      const pieces = known?.pieces ?? making.finish(from, at, difference);
      if (known === undefined) ended.push({ from, at, difference, pieces });
      return pieces;
    },
  };
}

/** The bust altered by what was asked, or by the most that can be made of it. */
function adjustBust(inputs: BuildInputs): Pick<Built, "bust" | "alteration"> {
  const { making, asked, asMuchAsCanBe } = inputs;
  const { open } = making;
  if (asked === 0) return { bust: null, alteration: 0 };
  const whole = making.adjustBust(open, asked / 2);
  // What she set herself is hers to sew.
  if (!asMuchAsCanBe) return { bust: whole, alteration: whole.ok ? asked : 0 };
  const reach = whole.ok ? asked / 2 : whole.failure.most;
  const made = (spread: Mm): BustAdjusted | null => {
    const done = making.adjustBust(open, spread);
    return done.ok && areDartsSensible(inputs, done.value.pieces, spread) ? done.value : null;
  };
  const all = made(reach);
  // What is less than all is let in by whole millimetres.
  const most =
    all !== null ? reach : Math.trunc(2 * halve(0, reach, SAME_LINE, (tried) => made(tried) !== null).holding) / 2;
  if (2 * Math.abs(most) < GIRTH_WORTH_TELLING) return { bust: null, alteration: 0 };
  const part = all ?? made(most);
  return part === null ? { bust: null, alteration: 0 } : { bust: ok(part), alteration: 2 * most };
}

/**
 * Whether every bust dart, drawn to its end as usual, can be sewn as one dart: neither too wide nor a hair. Gathers are none, and what an under-bust dart
 * cannot take is gathered into its band.
 */
function areDartsSensible({ making, bustPiece, ...inputs }: BuildInputs, open: PieceSet, spread: Mm): boolean {
  const cupDifference = inputs.cupDifference + 2 * spread;
  const finished = making.finish(open, pointOf(pieceIn(open, bustPiece), "bustPoint"), cupDifference);
  return piecesOf(finished).every((piece) =>
    piece.darts.every(({ name, aimsAt, gathered, apex, inner, outer }) => {
      if (aimsAt === null || gathered === true || homeOf(name) === "underBust") return true;
      const mouth = [pointOf(piece, inner), pointOf(piece, outer)] as const;
      if (distance(...mouth) < SHORTEST_EDGE) return false;
      // Sewn past the line, a dart from below would take of the bust what was let in.
      const line = piece.points.bustLineInner;
      if (spread > 0 && homeOf(name) === "waist" && line !== undefined && pointOf(piece, apex).y < line.at.y)
        return false;
      // What a smaller bust leaves wide was wider before.
      return spread < 0 || degreesFrom(angleAt(pointOf(piece, apex), ...mouth)) <= BUST_DART_WIDEST_DEGREES;
    }),
  );
}

const openPieces = (result: Result<BustAdjusted, FullBustFailure>): Result<PieceSet, FullBustFailure> =>
  result.ok ? ok(result.value.pieces) : result;

/**
 * The wearer's bust point on the front, from the side neck point: how far out and how far down, each where she measured it,
 * the other as the pattern has it; null where she measured neither.
 */
function ownBustPoint(
  sideNeck: PiecePoint,
  printed: PiecePoint,
  { bustPointWidth, sideNeckToBustPoint }: MeasuredBody,
): PiecePoint | null {
  if (bustPointWidth === undefined && sideNeckToBustPoint === undefined) return null;
  const x = bustPointWidth === undefined ? printed.x : bustPointWidth.value / 2;
  return sideNeckToBustPoint === undefined
    ? piecePoint(x, printed.y)
    : fromSideNeck(sideNeck, 2 * x, sideNeckToBustPoint.value);
}
