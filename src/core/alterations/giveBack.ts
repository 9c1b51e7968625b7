/**
 * Giving back: what a dart sets free on its seam (or takes from it) is taken (or let out) elsewhere, so that the sewn
 * seam keeps its length. Amounts are found by measuring the seam, so truing is counted in.
 */
import { directionOf, distance, polar, shift } from "../geometry/point";
import { seamLength } from "../girth/seamLength";
import { fail, must, ok, type Result } from "../result";
import { moveMouthEnd } from "../dart/mouthEnd";
import { trueSeamAtDart } from "../dart/trueSeam";
import { dartOf, pointOf, type DartRef, type Edge, type Piece, type PieceName } from "../pattern/piece";
import { SEWN_AGREEMENT, SHORTEST_EDGE, SOLVER_ACCURACY } from "../tolerance";
import { radians, type Mm } from "../units";
import { edgeFrom, edgeTo } from "../surgery/ring";
import type { SlipFailure } from "../plan/plan";
import type { GiveBack, GiveBackPlace } from "../plan/work";
import { moveMouth } from "../dart/moveMouth";
import { pieceIn, withPiece, type PieceSet } from "./pieceSet";

/** Places where the seam of a dart can give back, the usual one first. */
export function giveBackPlaces(pieces: PieceSet, ref: DartRef): readonly GiveBackPlace[] {
  if (dartOf(pieceIn(pieces, ref.piece), ref.dart).seam === "side") return ["waistEnd", "underarm"];
  if (otherPiece(ref.piece) === null) return ["sideSeam", "centreSeam"];
  return ["sideSeam", "centreSeam", "otherDart"];
}

/** The bodice piece whose waist dart can take over, for a bodice piece. */
const otherPiece = (name: PieceName): PieceName | null => (name === "front" ? "back" : name === "back" ? "front" : null);

const basqueOf = (name: PieceName): PieceName => (name === "front" ? "frontBasque" : "backBasque");

export interface GivenBack {
  readonly pieces: PieceSet;
  readonly given: readonly { readonly place: GiveBackPlace; readonly piece: PieceName; readonly amount: Mm }[];
}

/** Rounds of correction: each divides the error by well over ten. */
const ROUNDS = 4;

/**
 * Takes at the chosen places what makes the dart's seam, summed over the pieces concerned, `wanted` mm long again.
 *
 * @param pieces the pieces after the dart was changed and trued
 * @param wanted sewn length of the seam before: the dart's own piece, and for `otherDart` the other one with it; mm
 * @param shares how it is shared, summing to 1
 * @returns the pieces and what was taken; or why another dart cannot take its share, or how much would be left over
 */
export function giveBack(pieces: PieceSet, ref: DartRef, wanted: Mm, shares: GiveBack): Result<GivenBack, SlipFailure> {
  const places = giveBackPlaces(pieces, ref).filter((place) => (shares[place] ?? 0) > 0);
  let amount = sewn(pieces, ref) - wanted;
  let result: GivenBack = { pieces, given: [] };
  for (let round = 0; round < ROUNDS; round += 1) {
    const taken = takeAt(pieces, ref, places, shares, amount);
    if (!taken.ok) return taken;
    result = taken.value;
    const error = sewn(result.pieces, ref) - wanted;
    if (Math.abs(error) < SOLVER_ACCURACY) break;
    amount += error;
  }
  // Far amounts bend a seam more than they shorten it, and the rounds then run away: that is no answer.
  const left = Math.abs(sewn(result.pieces, ref) - wanted);
  return left > SEWN_AGREEMENT ? fail({ code: "slip/not-given-back", left }) : ok(result);
}

/** Sewn length of the dart's seam, with the other bodice piece's at the waist, since a share may move there. */
export function sewn(pieces: PieceSet, ref: DartRef): Mm {
  const piece = pieceIn(pieces, ref.piece);
  const { seam } = dartOf(piece, ref.dart);
  const own = seamLength(piece, seam);
  const other = seam === "waist" ? otherPiece(ref.piece) : null;
  return other === null ? own : own + seamLength(pieceIn(pieces, other), seam);
}

function takeAt(
  pieces: PieceSet,
  ref: DartRef,
  places: readonly GiveBackPlace[],
  shares: GiveBack,
  total: Mm,
): Result<GivenBack, SlipFailure> {
  let set = pieces;
  const given: { place: GiveBackPlace; piece: PieceName; amount: Mm }[] = [];
  for (const place of places) {
    const amount = total * must(shares[place], place);
    const on = place === "otherDart" ? must(otherPiece(ref.piece), "other piece") : ref.piece;
    const taken = takeAtPlace(set, ref, place, amount);
    if (!taken.ok) return taken;
    set = taken.value;
    given.push({ place, piece: on, amount });
  }
  const own = trueSeamAtDart(pieceIn(set, ref.piece), ref.dart);
  return ok({ pieces: withPiece(set, own), given });
}

function takeAtPlace(set: PieceSet, ref: DartRef, place: GiveBackPlace, amount: Mm): Result<PieceSet, SlipFailure> {
  const piece = pieceIn(set, ref.piece);
  switch (place) {
    case "sideSeam":
      return ok(withPiece(set, takeAtSide(piece, amount)));
    case "centreSeam":
      return ok(withPiece(set, takeAtCentre(piece, amount)));
    case "waistEnd":
      return ok(withPiece(set, waistKept(slideAlongSide(piece, "sideWaist", -amount), seamLength(piece, "waist"))));
    case "underarm":
      return lowerUnderarm(set, piece, amount);
    case "otherDart": {
      const other = must(otherPiece(ref.piece), "other piece");
      // The basque goes with the bodice, so that the two waist seams still match.
      const changes = [[other, amount], [basqueOf(other), amount], [basqueOf(ref.piece), -amount]] as const;
      return changes.reduce<Result<PieceSet, SlipFailure>>(
        (so, [name, by]) => (so.ok ? changeDart(so.value, name, by) : so),
        ok(set),
      );
    }
  }
}

/** The underarm moved down its own edge, which must not be used up. */
function lowerUnderarm(set: PieceSet, piece: Piece, amount: Mm): Result<PieceSet, SlipFailure> {
  const edge = must(piece.edges[edgeFrom(piece, "underarm")], "side edge");
  const room = distance(pointOf(piece, edge.from), pointOf(piece, edge.to)) - SHORTEST_EDGE;
  if (amount > room) return fail({ code: "slip/not-given-back", left: amount - room });
  return ok(withPiece(set, slideAlongSide(piece, "underarm", amount)));
}

/** Widens (or narrows) a waist dart by an amount, half at each end; a piece that is not there stays so. */
function changeDart(set: PieceSet, name: PieceName, amount: Mm): Result<PieceSet, SlipFailure> {
  const piece = set[name];
  if (piece === undefined) return ok(set);
  const moved = moveMouth(piece, "waistDart", amount / 2, amount / 2);
  if (moved.ok) return ok(withPiece(set, trueSeamAtDart(moved.value, "waistDart")));
  const { failure } = moved;
  if (failure.code !== "slip/dart-vanishes" && failure.code !== "slip/off-the-seam") return moved;
  return fail({ ...failure, dart: { piece: name, dart: "waistDart" } });
}

/** A wedge off the centre line: all of it at the waist, nothing at the bust line (bodice) or the hip line (basque). */
function takeAtCentre(piece: Piece, amount: Mm): Piece {
  const to = shift(pointOf(piece, "centreWaist"), amount, 0);
  const moved = moveMouthEnd(piece, "centreWaist", to);
  const far = piece.points.centreHip === undefined ? "centreBust" : "centreHip";
  return squareAtCentre({ ...moved, centreOnFold: false }, far);
}

/** The waist seam redrawn square to the centre line. */
function squareAtCentre(piece: Piece, far: "centreBust" | "centreHip"): Piece {
  const waist = pointOf(piece, "centreWaist");
  const line = directionOf(waist, pointOf(piece, far));
  // On the bodice the line runs up and the piece lies clockwise of it; on the basque it runs down.
  const outward = radians(line + (far === "centreBust" ? Math.PI / 2 : -Math.PI / 2));
  const edges = piece.edges.map((edge): Edge => {
    if (edge.seam !== "waist" || edge.curve === null) return edge;
    if (edge.to === "centreWaist") {
      return { ...edge, curve: { ...edge.curve, c2: polar(waist, outward, distance(waist, edge.curve.c2)) } };
    }
    if (edge.from === "centreWaist") {
      return { ...edge, curve: { ...edge.curve, c1: polar(waist, outward, distance(waist, edge.curve.c1)) } };
    }
    return edge;
  });
  return { ...piece, edges };
}

/**
 * The side end of the waist moved in, and up or down the seam until the side seam has its length again: it is still to be
 * sewn to the other piece.
 */
function takeAtSide(piece: Piece, amount: Mm): Piece {
  const wanted = seamLength(piece, "side");
  let taken = moveMouthEnd(piece, "sideWaist", shift(pointOf(piece, "sideWaist"), -amount, 0));
  const down = piece.points.underarm === undefined ? -1 : 1;
  for (let round = 0; round < ROUNDS; round += 1) {
    const error = seamLength(taken, "side") - wanted;
    if (Math.abs(error) < SOLVER_ACCURACY) break;
    taken = moveMouthEnd(taken, "sideWaist", shift(pointOf(taken, "sideWaist"), 0, -down * error));
  }
  return taken;
}

/** The side end of the waist moved across until the waist seam has its length again. */
function waistKept(piece: Piece, wanted: Mm): Piece {
  let kept = piece;
  for (let round = 0; round < ROUNDS; round += 1) {
    const error = seamLength(kept, "waist") - wanted;
    if (Math.abs(error) < SOLVER_ACCURACY) break;
    kept = moveMouthEnd(kept, "sideWaist", shift(pointOf(kept, "sideWaist"), -error, 0));
  }
  return kept;
}

/** Moves an end of the side seam along the seam's own direction there; positive down. */
function slideAlongSide(piece: Piece, end: "underarm" | "sideWaist", amount: Mm): Piece {
  const at = pointOf(piece, end);
  if (end === "underarm") {
    const edge = must(piece.edges[edgeFrom(piece, end)], "side edge");
    return moveMouthEnd(piece, end, polar(at, directionOf(at, pointOf(piece, edge.to)), amount));
  }
  const edge = must(piece.edges[edgeTo(piece, end)], "side edge");
  const back = edge.curve === null ? directionOf(at, pointOf(piece, edge.from)) : directionOf(at, edge.curve.c2);
  return moveMouthEnd(piece, end, polar(at, back, -amount));
}
