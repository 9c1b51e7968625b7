/** From blocks to the wearer's pieces: blended at each level, made up in the style, adjusted for the bust. */
import { pieceIn, piecesOf, type PieceSet } from "../pattern/pieceSet";
import { moveMouthEnd } from "../dart/mouthEnd";
import { blendPiece, levelSizes, type LevelSizes } from "../blend/blendPiece";
import { seamLength } from "../girth/seamLength";
import { levelWidth } from "../girth/levelWidth";
import { halve } from "../geometry/iterate";
import { angleAt, piecePoint, shift, type PiecePoint } from "../geometry/point";
import { homeOf } from "../pattern/dartNames";
import { pointOf, type Piece, type PieceName } from "../pattern/piece";
import type { Blocks } from "../nest/printedNest";
import { invariant, ok, type Result } from "../result";
import { walkBasques } from "../surgery/walkBasques";
import type { BustAdjusted, Style, StyleOptions } from "../style/style";
import type { FullBustFailure } from "../surgery/fullBust";
import { fromSideNeck, probableBustPoint, type ProbableBustPoint } from "../bodies/probableBustPoint";
import type { MeasuredBody } from "../measures/tape";
import { BUST_DART_WIDEST_DEGREES, GIRTH_WORTH_TELLING, SAME_LINE } from "../tolerance";
import { degreesFrom, type Mm } from "../units";

/** Whole finished waist for each size at the waist, the base size's darts kept; mm. */
export function finishedWaists(blocks: Blocks, baseSize: number): readonly Mm[] {
  return blocks.front.map((_, size) => finishedWaistAt(blocks, baseSize, size));
}

/** Whole finished waist at a fractional size, the base size's darts kept; mm. */
export function finishedWaistAt(blocks: Blocks, baseSize: number, size: number): Mm {
  const at = levelSizes(baseSize, size, baseSize);
  return 2 * (blendedWaist(blocks.front, at) + blendedWaist(blocks.back, at));
}

/** Blends the waist seam alone: that is all the finished waist needs. */
function blendedWaist(sizes: readonly Piece[], at: LevelSizes): Mm {
  return seamLength(blendPiece(sizes, at, "waist"), "waist");
}

/** Whole finished hip of each size; null where the pattern ends at the waist. */
export function finishedHips({ frontBasque, backBasque }: Blocks): readonly Mm[] | null {
  if (frontBasque.length === 0) return null;
  return frontBasque.map(
    (front, size) =>
      2 *
      (invariant(levelWidth(front, "hip"), "hip line") +
        invariant(levelWidth(invariant(backBasque[size], "size"), "hip"), "hip line")),
  );
}

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
  readonly blocks: Blocks;
  readonly style: Style;
  readonly options: StyleOptions;
  readonly at: LevelSizes;
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
export function buildPieces(inputs: BuildInputs): Result<Built, FullBustFailure> {
  const { blocks, style, at, cupDifference } = inputs;
  const block = { front: blendPiece(blocks.front, at), back: blendPiece(blocks.back, at) };
  const opened = style.open(block.front, block.back, cupDifference, inputs.options);
  if (!opened.ok) return opened;
  const open = opened.value;
  const bustPointOf = (pieces: PieceSet): PiecePoint => pointOf(pieceIn(pieces, style.bustPiece), "bustPoint");
  const cut = style.finish(open, bustPointOf(open), cupDifference);
  const { bust, alteration } = adjustBust(style, open, inputs);
  const altered = bust !== null && bust.ok ? bust.value.pieces : null;
  const blended = altered === null ? cut : style.finish(altered, bustPointOf(altered), cupDifference + alteration);
  const own = ownBustPoint(pointOf(block.front, "sideNeck"), bustPointOf(blended), inputs.body);
  const probable = probableBustPoint(pointOf(block.front, "sideNeck"), inputs.body, inputs.age);
  const wanted = inputs.residual === 0 ? ok(open) : openPieces(style.adjustBust(open, inputs.residual / 2));
  const basques = basquesOf(inputs, cut);
  return ok({
    cut: { ...cut, ...basques },
    blended: { ...blended, ...basques },
    bust,
    alteration,
    bustPoint: { printed: bustPointOf(blended), own, probable },
    wanted: wanted.ok
      ? style.finish(wanted.value, own ?? bustPointOf(wanted.value), cupDifference + inputs.residual)
      : null,
  });
}

/** The bust altered by what was asked, or by the most that can be made of it. */
function adjustBust(
  style: Style,
  open: PieceSet,
  { asked, asMuchAsCanBe, cupDifference }: BuildInputs,
): Pick<Built, "bust" | "alteration"> {
  if (asked === 0) return { bust: null, alteration: 0 };
  const whole = style.adjustBust(open, asked / 2);
  // What she set herself is hers to sew.
  if (!asMuchAsCanBe) return { bust: whole, alteration: whole.ok ? asked : 0 };
  const reach = whole.ok ? asked / 2 : whole.failure.most;
  const made = (spread: Mm): BustAdjusted | null => {
    const done = style.adjustBust(open, spread);
    return done.ok && (spread < 0 || areDartsSensible(style, done.value.pieces, cupDifference + 2 * spread))
      ? done.value
      : null;
  };
  const all = made(reach);
  // What is less than all is let in by whole millimetres.
  const most =
    all !== null || reach < 0
      ? reach
      : Math.floor(2 * halve(0, reach, SAME_LINE, (tried) => made(tried) !== null).holding) / 2;
  if (2 * Math.abs(most) < GIRTH_WORTH_TELLING) return { bust: null, alteration: 0 };
  const part = all ?? made(most);
  return part === null ? { bust: null, alteration: 0 } : { bust: ok(part), alteration: 2 * most };
}

/**
 * Whether every bust dart, drawn to its end as usual, can be sewn as one dart. Gathers are none, and what an under-bust dart
 * cannot take is gathered into its band.
 */
function areDartsSensible(style: Style, open: PieceSet, cupDifference: Mm): boolean {
  const finished = style.finish(open, pointOf(pieceIn(open, style.bustPiece), "bustPoint"), cupDifference);
  return piecesOf(finished).every((piece) =>
    piece.darts.every(({ name, aimsAt, gathered, apex, inner, outer }) => {
      if (aimsAt === null || gathered === true || homeOf(name) === "underBust") return true;
      const angle = angleAt(pointOf(piece, apex), pointOf(piece, inner), pointOf(piece, outer));
      return degreesFrom(angle) <= BUST_DART_WIDEST_DEGREES;
    }),
  );
}

const openPieces = (result: Result<BustAdjusted, FullBustFailure>): Result<PieceSet, FullBustFailure> =>
  result.ok ? ok(result.value.pieces) : result;

function basquesOf({ blocks, style, at }: BuildInputs, cut: PieceSet): PieceSet {
  if (blocks.frontBasque.length === 0) return {};
  const waistOf = (names: readonly PieceName[]): Mm =>
    names.reduce((sum, name) => sum + seamLength(pieceIn(cut, name), "waist"), 0);
  const trued = (sizes: readonly Piece[], waist: Mm) => ({ piece: trueToBodice(blendPiece(sizes, at), waist), waist });
  const { front, back } = walkBasques(
    trued(blocks.frontBasque, waistOf(style.waistPieces.front)),
    trued(blocks.backBasque, waistOf(style.waistPieces.back)),
  );
  return { frontBasque: front, backBasque: back };
}

/** Rounds of truing; each leaves a small part of the error. */
const ROUNDS = 3;

/**
 * The basque's waist seam trued to the bodice's. Blended, the two agree to well within a millimetre unless the waist
 * lies many sizes from the base size; the side seam takes the rest.
 */
function trueToBodice(basque: Piece, wanted: Mm): Piece {
  let trued = basque;
  for (let round = 0; round < ROUNDS; round += 1) {
    const longer = seamLength(trued, "waist") - wanted;
    trued = moveMouthEnd(trued, "sideWaist", shift(pointOf(trued, "sideWaist"), -longer, 0));
  }
  return trued;
}

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
