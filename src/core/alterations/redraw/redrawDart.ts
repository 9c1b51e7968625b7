/**
 * A dart redrawn: its end, mouth or place is changed, its legs and its seam are trued, and what the seam gained or lost is
 * given back where the wearer said.
 */
import type { DartRedraw, GiveBack } from "../../decisions/alteration";
import type { AlterationNote } from "../outcome/trace";
import type { AlterationFailure } from "../outcome/alterationFailure";
import { trueLegs } from "../../dart/trueLegs";
import { trueSeamAtDart } from "../../dart/trueSeam";
import { fail, ok, type Result } from "../../result";
import { dartOf, type Piece } from "../../pattern/piece";
import { untouched, type Applied } from "../outcome/applied";
import { takenAtBust } from "../../girth/levelWidth";
import { GIRTH_WORTH_TELLING, SAME_LINE, SHARES_WHOLE } from "../../tolerance";
import type { Mm } from "../../units";
import { applyDartEnd } from "./moveDartEnd";
import { applyDartPlace } from "./moveDartPlace";
import { giveBack, giveBackPlaces, sewn } from "./giveBack";
import { moveMouth } from "../../dart/moveMouth";
import { pieceIn, withPiece, type PieceSet } from "../../pattern/pieceSet";

type Change<K extends DartRedraw["kind"]> = (
  piece: Piece,
  alteration: Extract<DartRedraw, { kind: K }>,
) => Result<Piece, AlterationFailure>;

/** What each kind does to its piece; all else (truing, giving back, the trace) is the same for all. */
const KINDS: { readonly [K in DartRedraw["kind"]]: Change<K> } = {
  dartEnd: applyDartEnd,
  dartMouth: (piece, { dart, inner, outer }) => moveMouth(piece, dart.dart, inner, outer),
  dartPlace: applyDartPlace,
};

function change(piece: Piece, alteration: DartRedraw): Result<Piece, AlterationFailure> {
  switch (alteration.kind) {
    case "dartEnd":
      return KINDS.dartEnd(piece, alteration);
    case "dartMouth":
      return KINDS.dartMouth(piece, alteration);
    case "dartPlace":
      return KINDS.dartPlace(piece, alteration);
  }
}

/** The pieces after a dart was redrawn; or why it cannot be, with the nearest amount that can. */
export function redrawDart(pieces: PieceSet, alteration: DartRedraw): Result<Applied, AlterationFailure> {
  const { dart: ref } = alteration;
  const piece = pieces[ref.piece];
  if (piece === undefined || !piece.darts.some((d) => d.name === ref.dart)) {
    return fail({ code: "alteration/no-such-dart", dart: ref });
  }
  // Drawn up as gathers it has no legs to redraw.
  if (dartOf(piece, ref.dart).gathered === true) return fail({ code: "alteration/not-this-dart", dart: ref });
  const shares = sharesFor(pieces, alteration);
  if (!shares.ok) return shares;
  const { seam } = dartOf(piece, ref.dart);
  const before = sewn(pieces, ref);
  const changed = change(piece, alteration);
  if (!changed.ok) return changed;
  const legs = trueLegs(changed.value, ref.dart);
  const trued = withPiece(pieces, trueSeamAtDart(legs.piece, ref.dart));
  const back = giveBack(trued, ref, before, shares.value);
  if (!back.ok) return back;
  const { pieces: after, given } = back.value;
  const offCentre = alteration.kind === "dartPlace" && alteration.how === "offCentreSeam" ? alteration.by : 0;
  // A dart drawn past the bust line takes width there, too.
  const takes = takenAtBust(pieceIn(after, ref.piece)) - takenAtBust(piece);
  return ok({
    pieces: after,
    truing: { inner: legs.inner, outer: legs.outer },
    girths: { bust: -2 * (offCentre + takes) },
    trace: {
      ...untouched(ref.piece, pieces, after),
      seam,
      seamBefore: before,
      seamUngiven: sewn(trued, ref),
      seamAfter: sewn(after, ref),
      given,
      notes: notesOf(piece, pieceIn(after, ref.piece), alteration, legs.inner),
    },
  });
}

/** The shares asked for, or the usual place for all of it where none is given; refused where they do not add up to 1. */
function sharesFor(pieces: PieceSet, { dart, giveBack: wanted }: DartRedraw): Result<GiveBack, AlterationFailure> {
  const places = giveBackPlaces(pieces, dart);
  const sum = places.reduce((total, place) => total + (wanted[place] ?? 0), 0);
  const usual = places[0];
  if (sum === 0 && usual !== undefined) return ok({ [usual]: 1 });
  if (Math.abs(sum - 1) > SHARES_WHOLE) return fail({ code: "alteration/shares-not-whole", sum });
  return ok(wanted);
}

function notesOf(before: Piece, after: Piece, alteration: DartRedraw, trued: Mm): AlterationNote[] {
  const notes: AlterationNote[] = [];
  if (before.centreOnFold && !after.centreOnFold) notes.push({ code: "centreNowSeam" });
  if (alteration.kind === "dartPlace" && alteration.how === "offCentreSeam") {
    notes.push({ code: "bustLoses", amount: 2 * alteration.by });
  }
  const takes = 2 * (takenAtBust(after) - takenAtBust(before));
  if (takes > GIRTH_WORTH_TELLING) notes.push({ code: "bustLoses", amount: takes });
  if (Math.abs(trued) > SAME_LINE) notes.push({ code: "legsTrued", amount: Math.abs(trued) });
  return notes;
}
