/** One alteration of the wearer, applied: a dart redrawn, a dart made into another thing, or a fit alteration. */
import type { Alteration, DartSurgery, FitAlteration } from "../decisions/alteration";
import type { AlterationFailure } from "./outcome/alterationFailure";
import { fail, ok, type Result } from "../result";
import { furthestOf } from "../pattern/ring";
import { outlineFaultsIn } from "../pattern/soundOutline";
import { FURTHEST_POINT } from "../tolerance";
import type { Mm } from "../units";
import { untouched, type Applied } from "./outcome/applied";
import { fitOf } from "./fit/index";
import type { FitApplied, FitContext } from "./outcome/definition";
import { piecesOf, type PieceSet } from "../pattern/pieceSet";
import { redrawDart } from "./redraw/redrawDart";
import { operateOnDart } from "./dartSurgery/index";

/**
 * The pieces after one alteration.
 *
 * @returns the pieces and what moved; or why it cannot be done, with the nearest amount that can
 */
export function applyAlteration(
  pieces: PieceSet,
  alteration: Alteration,
  context: FitContext,
): Result<Applied, AlterationFailure> {
  const done = made(pieces, alteration, context);
  const far = done.ok ? outOfReach(done.value.trace.after) : null;
  return far === null ? done : fail(far);
}

function made(pieces: PieceSet, alteration: Alteration, context: FitContext): Result<Applied, AlterationFailure> {
  switch (alteration.kind) {
    case "dartEnd":
    case "dartMouth":
    case "dartPlace":
      return redrawDart(pieces, alteration);
    case "fit":
      return applied(pieces, applyFit(pieces, alteration, context));
    default:
      return applied(pieces, applyToDart(pieces, alteration));
  }
}

function applyFit(
  pieces: PieceSet,
  { fit, amount: asked, half }: FitAlteration,
  context: FitContext,
): Result<FitApplied, AlterationFailure> {
  const definition = fitOf(fit);
  if (!definition.applies(pieces)) return fail({ code: "alteration/not-on-this-style" });
  // Half of a whole amount goes to each half of the body: what is asked of one alone is twice that in all.
  const times = half !== undefined && definition.isWhole === true ? 2 : 1;
  const amount = asked * times;
  const { least, most } = definition.range;
  if (amount < least || amount > most) return tooMuch((amount < least ? least : most) / times);
  if (amount === 0) return ok({ pieces, traces: [], values: {} });
  const done = definition.apply(pieces, amount, context);
  return done.ok || done.failure.code !== "alteration/too-much" ? done : tooMuch(done.failure.most / times);
}

const tooMuch = (most: Mm): Result<never, AlterationFailure> => fail({ code: "alteration/too-much", most });

function applyToDart(pieces: PieceSet, alteration: DartSurgery): Result<FitApplied, AlterationFailure> {
  const { dart } = alteration;
  const piece = pieces[dart.piece];
  if (piece === undefined || !piece.darts.some((d) => d.name === dart.dart))
    return fail({ code: "alteration/no-such-dart", dart });
  return operateOnDart(pieces, alteration);
}

/** A piece with a point or a handle further out than any bodice reaches; null where all are within. */
function outOfReach(pieces: PieceSet): AlterationFailure | null {
  for (const piece of piecesOf(pieces)) {
    const reach = furthestOf(piece);
    if (!(reach <= FURTHEST_POINT))
      return { code: "alteration/out-of-reach", piece: piece.name, reach, furthest: FURTHEST_POINT };
  }
  return null;
}

/** Pieces that came out spoilt are no answer: nobody can cut them. */
function applied(before: PieceSet, done: Result<FitApplied, AlterationFailure>): Result<Applied, AlterationFailure> {
  if (!done.ok) return done;
  const { pieces, traces, values, girths = {} } = done.value;
  const changed = piecesOf(pieces).filter((piece) => before[piece.name] !== piece);
  // What lies out of reach is told so; to look for crossings in it could take long.
  const spoilt = changed.find((piece) => furthestOf(piece) <= FURTHEST_POINT && outlineFaultsIn(piece) > 0);
  if (spoilt !== undefined) return fail({ code: "alteration/outline-spoilt", piece: spoilt.name });
  const main = traces[0]?.piece ?? changed[0]?.name ?? "front";
  return ok({
    pieces,
    truing: { inner: 0, outer: 0 },
    girths,
    trace: { ...untouched(main, before, pieces), surgery: traces, values },
  });
}
