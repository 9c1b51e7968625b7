/**
 * Giving back: what a dart sets free on its seam (or takes from it) is taken (or let out) elsewhere, so that the sewn
 * seam keeps its length. Amounts are found by measuring the seam, so truing is counted in.
 */
import type { GiveBack, GiveBackPlace } from "../../decisions/alteration";
import type { AlterationFailure } from "../outcome/alterationFailure";
import { edgeTangentAt } from "../../geometry/edgeCurve";
import { comeNear } from "../../geometry/iterate";
import { directionOf, distance, polar, shift, turnBetween } from "../../geometry/point";
import { seamLength } from "../../girth/seamLength";
import { fail, invariant, ok, type Result } from "../../result";
import { moveMouthEnd } from "../../dart/mouthEnd";
import { trueSeamAtDart } from "../../dart/trueSeam";
import {
  dartOf,
  pointOf,
  type DartRef,
  type Edge,
  type Piece,
  type PieceName,
  type PointName,
  type SeamName,
} from "../../pattern/piece";
import { SEWN_AGREEMENT, SHORTEST_EDGE, SOLVER_ACCURACY } from "../../tolerance";
import { edgeTurned } from "../../surgery/straightThrough";
import { radians, radiansFromDegrees, type Mm, type Radians } from "../../units";
import { curveOf, edgeTo } from "../../pattern/ring";
import { endsOf, stretchAt, stretchFrom, stretchLength } from "../../pattern/seamStretch";
import { moveMouth } from "../../dart/moveMouth";
import { pieceIn, withPiece, type PieceSet } from "../../pattern/pieceSet";

/** Places where the seam of a dart can give back, the usual one first. */
export function giveBackPlaces(pieces: PieceSet, ref: DartRef): readonly GiveBackPlace[] {
  const piece = pieceIn(pieces, ref.piece);
  const { seam } = dartOf(piece, ref.dart);
  switch (seam) {
    case "side":
      return ["waistEnd", "underarm"];
    case "shoulder":
      return ["armholeEnd", "neckEnd"];
    case "armhole":
      return ["armholeEnd"];
    case "neck":
      return ["neckEnd"];
    case "centre":
      return ["centreEnd"];
    default: {
      const places: readonly GiveBackPlace[] = hasSeam(piece, "centre") ? ["sideSeam", "centreSeam"] : ["sideSeam"];
      return otherPiece(pieces, ref) === null ? places : [...places, "otherDart"];
    }
  }
}

/** The bodice piece whose waist dart can take over, for a dart at the waist of the other. */
function otherPiece(pieces: PieceSet, ref: DartRef): PieceName | null {
  const other = ref.piece === "front" ? "back" : ref.piece === "back" ? "front" : null;
  if (other === null || dartOf(pieceIn(pieces, ref.piece), ref.dart).seam !== "waist") return null;
  return pieces[other]?.darts.some(({ name }) => name === "waistDart") === true ? other : null;
}

const basqueOf = (name: PieceName): PieceName => (name === "front" ? "frontBasque" : "backBasque");

export interface GivenBack {
  readonly pieces: PieceSet;
  readonly given: readonly { readonly place: GiveBackPlace; readonly piece: PieceName; readonly amount: Mm }[];
}

/** Rounds of correction at the most: at a waist each divides the error by well over ten, at a cup's wide darts by two or three. */
const ROUNDS = 12;

/**
 * Takes at the chosen places what makes the dart's seam, summed over the pieces concerned, `wanted` mm long again.
 *
 * @param pieces the pieces after the dart was changed and trued
 * @param wanted sewn length of the seam before: the dart's own piece, and for `otherDart` the other one with it; mm
 * @param shares how it is shared, summing to 1
 * @returns the pieces and what was taken; or why another dart cannot take its share, or how much would be left over
 */
export function giveBack(
  pieces: PieceSet,
  ref: DartRef,
  wanted: Mm,
  shares: GiveBack,
): Result<GivenBack, AlterationFailure> {
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
  return left <= SEWN_AGREEMENT ? ok(result) : fail({ code: "alteration/not-given-back", left });
}

/** Sewn length of the dart's seam, with the other bodice piece's at the waist, since a share may move there. */
export function sewn(pieces: PieceSet, ref: DartRef): Mm {
  const piece = pieceIn(pieces, ref.piece);
  const { seam } = dartOf(piece, ref.dart);
  const own = seamLength(piece, seam);
  const other = otherPiece(pieces, ref);
  return other === null ? own : own + seamLength(pieceIn(pieces, other), seam);
}

function takeAt(
  pieces: PieceSet,
  ref: DartRef,
  places: readonly GiveBackPlace[],
  shares: GiveBack,
  total: Mm,
): Result<GivenBack, AlterationFailure> {
  let set = pieces;
  const given: { place: GiveBackPlace; piece: PieceName; amount: Mm }[] = [];
  for (const place of places) {
    const amount = total * invariant(shares[place], place);
    const on = place === "otherDart" ? invariant(otherPiece(pieces, ref), "other piece") : ref.piece;
    const taken = takeAtPlace(set, ref, place, amount);
    if (!taken.ok) return taken;
    set = taken.value;
    given.push({ place, piece: on, amount });
  }
  return ok({ pieces: withPiece(set, trueSeamAtDart(pieceIn(set, ref.piece), ref.dart)), given });
}

function takeAtPlace(
  set: PieceSet,
  ref: DartRef,
  place: GiveBackPlace,
  amount: Mm,
): Result<PieceSet, AlterationFailure> {
  const piece = pieceIn(set, ref.piece);
  const { seam } = dartOf(piece, ref.dart);
  switch (place) {
    case "sideSeam":
      return ok(withPiece(set, takeAtSide(piece, amount)));
    case "centreSeam":
      return ok(withPiece(set, takeAtCentre(piece, amount)));
    case "waistEnd":
      return ok(
        withPiece(
          set,
          lowerSeamKept(slideAlongSide(piece, sideEnd(piece), -amount), seamLength(piece, lowerSeam(piece))),
        ),
      );
    case "underarm":
      return lowerUnderarm(set, piece, amount);
    case "armholeEnd":
      return takeAtCorner(set, piece, { seam, other: seam === "armhole" ? aboveArmhole(piece) : "armhole" }, amount);
    case "neckEnd":
      return takeAtCorner(set, piece, { seam, other: seam === "neck" ? aboveNeck(piece) : "neck" }, amount);
    case "centreEnd":
      return takeAtCorner(set, piece, { seam, other: lowerSeam(piece) }, amount);
    case "otherDart": {
      const other = invariant(otherPiece(set, ref), "other piece");
      // The basque goes with the bodice, so that the two waist seams still match.
      const changes = [
        [other, amount],
        [basqueOf(other), amount],
        [basqueOf(ref.piece), -amount],
      ] as const;
      return changes.reduce<Result<PieceSet, AlterationFailure>>(
        (so, [name, by]) => (so.ok ? changeDart(so.value, name, by) : so),
        ok(set),
      );
    }
  }
}

const hasSeam = (piece: Piece, seam: SeamName): boolean => piece.edges.some((edge) => edge.seam === seam);

/** The seam along the lower edge of a bodice piece or a cup, and where it meets the side seam. */
const lowerSeam = (piece: Piece): "waist" | "underBust" => (hasSeam(piece, "waist") ? "waist" : "underBust");
const sideEnd = (piece: Piece): "sideWaist" | "sideUnderBust" =>
  lowerSeam(piece) === "waist" ? "sideWaist" : "sideUnderBust";
const centreEnd = (piece: Piece): "centreWaist" | "underBustCentre" =>
  lowerSeam(piece) === "waist" ? "centreWaist" : "underBustCentre";

/** What an armhole or a neckline runs up to. */
const aboveArmhole = (piece: Piece): SeamName =>
  UPPER_SEAMS.find((seam) => meetingOf(piece, seam, "armhole") !== null) ?? "side";
const aboveNeck = (piece: Piece): SeamName =>
  UPPER_SEAMS.find((seam) => meetingOf(piece, seam, "neck") !== null) ?? "centre";
const UPPER_SEAMS: readonly SeamName[] = ["shoulder", "strap", "princess"];

/** The corner at which two seams of a piece meet, and the edges there; null where they do not. */
function meetingOf(
  piece: Piece,
  seam: SeamName,
  other: SeamName,
): { readonly corner: PointName; readonly edge: number; readonly otherEdge: number } | null {
  const count = piece.edges.length;
  for (const [index, edge] of piece.edges.entries()) {
    const next = (index + 1) % count;
    const after = invariant(piece.edges[next], "edge");
    if (edge.seam === seam && after.seam === other) return { corner: edge.to, edge: index, otherEdge: next };
    if (edge.seam === other && after.seam === seam) return { corner: edge.to, edge: next, otherEdge: index };
  }
  return null;
}

/**
 * The corner that ends a seam moved back along it, and along the seam that it meets there until that one has its length
 * again.
 */
function takeAtCorner(
  set: PieceSet,
  piece: Piece,
  { seam, other }: { readonly seam: SeamName; readonly other: SeamName },
  amount: Mm,
): Result<PieceSet, AlterationFailure> {
  const meeting = meetingOf(piece, seam, other);
  if (meeting === null) return fail({ code: "alteration/not-given-back", left: Math.abs(amount) });
  const { corner, edge, otherEdge } = meeting;
  const room = stretchLength(piece, stretchAt(piece, edge)) - SHORTEST_EDGE;
  if (amount > room) return fail({ code: "alteration/not-given-back", left: amount - room });
  const wanted = seamLength(piece, other);
  const moved = moveMouthEnd(piece, corner, polar(pointOf(piece, corner), awayFrom(piece, edge, corner), amount));
  const taken = comeNear(moved, {
    missOf: (drawn) => seamLength(drawn, other) - wanted,
    correct: (drawn, longer) =>
      moveMouthEnd(drawn, corner, polar(pointOf(drawn, corner), awayFrom(drawn, otherEdge, corner), longer)),
    rounds: CORNER_ROUNDS,
    accuracy: SOLVER_ACCURACY,
  });
  return ok(withPiece(set, taken.value));
}

/** Rounds at the most in which a corner settles; each leaves a small part of the error. */
const CORNER_ROUNDS = 20;

/** The direction in which an edge leaves one of its ends. */
function awayFrom(piece: Piece, index: number, end: PointName): Radians {
  const edge = invariant(piece.edges[index], "edge");
  const curve = curveOf(piece, edge);
  return edge.from === end ? edgeTangentAt(curve, 0) : radians(edgeTangentAt(curve, 1) + Math.PI);
}

/** The underarm moved down its own edge, which must not be used up. */
function lowerUnderarm(set: PieceSet, piece: Piece, amount: Mm): Result<PieceSet, AlterationFailure> {
  const { from, to } = endsOf(piece, stretchFrom(piece, "underarm"));
  const room = distance(pointOf(piece, from), pointOf(piece, to)) - SHORTEST_EDGE;
  if (amount > room) return fail({ code: "alteration/not-given-back", left: amount - room });
  return ok(withPiece(set, slideAlongSide(piece, "underarm", amount)));
}

/** Widens (or narrows) a waist dart by an amount, half at each end; a piece or a dart that is not there stays so. */
function changeDart(set: PieceSet, name: PieceName, amount: Mm): Result<PieceSet, AlterationFailure> {
  const piece = set[name];
  if (piece === undefined) return ok(set);
  if (!piece.darts.some((dart) => dart.name === "waistDart")) return ok(set);
  const moved = moveMouth(piece, "waistDart", amount / 2, amount / 2);
  if (moved.ok) return ok(withPiece(set, trueSeamAtDart(moved.value, "waistDart")));
  const { failure } = moved;
  if (failure.code !== "alteration/dart-vanishes" && failure.code !== "alteration/off-the-seam") return moved;
  return fail({ ...failure, dart: { piece: name, dart: "waistDart" } });
}

/** A wedge off the centre line: all of it at the lower edge, nothing at the bust line (bodice) or the hip line (basque). */
function takeAtCentre(piece: Piece, amount: Mm): Piece {
  const end = centreEnd(piece);
  const moved = moveMouthEnd(piece, end, shift(pointOf(piece, end), amount, 0));
  const far = piece.points.centreHip === undefined ? "centreBust" : "centreHip";
  return squareAtCentre({ ...moved, centreOnFold: false }, end, far);
}

/** The waist seam, or the one under the bust, redrawn square to the centre line. */
function squareAtCentre(piece: Piece, end: "centreWaist" | "underBustCentre", far: "centreBust" | "centreHip"): Piece {
  const waist = pointOf(piece, end);
  const seam = lowerSeam(piece);
  const line = directionOf(waist, pointOf(piece, far));
  // On the bodice the line runs up and the piece lies clockwise of it; on the basque it runs down.
  const outward = radians(line + (far === "centreBust" ? Math.PI / 2 : -Math.PI / 2));
  const beside = piece.edges.findIndex((edge) => edge.seam === seam && (edge.from === end || edge.to === end));
  if (piece.drawnTurns !== undefined || stretchAt(piece, beside).length > 1) {
    const edge = invariant(piece.edges[beside], "edge");
    const own = piece.drawnTurns?.[end];
    const wanted = own === undefined ? 0 : radiansFromDegrees((far === "centreBust" ? 1 : -1) * (90 - own));
    const arrives = edge.to === end;
    const curve = curveOf(piece, edge);
    const away = arrives ? radians(edgeTangentAt(curve, 1) + Math.PI) : edgeTangentAt(curve, 0);
    return edgeTurned(piece, beside, arrives ? "end" : "start", radians(turnBetween(away, radians(outward + wanted))));
  }
  const edges = piece.edges.map((edge): Edge => {
    if (edge.seam !== seam || edge.curve === null) return edge;
    if (edge.to === end) {
      return { ...edge, curve: { ...edge.curve, c2: polar(waist, outward, distance(waist, edge.curve.c2)) } };
    }
    if (edge.from === end) {
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
  const end = sideEnd(piece);
  const down = piece.points.underarm === undefined ? -1 : 1;
  return comeNear(moveMouthEnd(piece, end, shift(pointOf(piece, end), -amount, 0)), {
    missOf: (taken) => seamLength(taken, "side") - wanted,
    correct: (taken, error) => moveMouthEnd(taken, end, shift(pointOf(taken, end), 0, -down * error)),
    rounds: ROUNDS,
    accuracy: SOLVER_ACCURACY,
  }).value;
}

/** The side end of the lower seam moved across until that seam has its length again. */
function lowerSeamKept(piece: Piece, wanted: Mm): Piece {
  const end = sideEnd(piece);
  return comeNear(piece, {
    missOf: (kept) => seamLength(kept, lowerSeam(kept)) - wanted,
    correct: (kept, error) => moveMouthEnd(kept, end, shift(pointOf(kept, end), -error, 0)),
    rounds: ROUNDS,
    accuracy: SOLVER_ACCURACY,
  }).value;
}

/** Moves an end of the side seam along the seam's own direction there; positive down. */
function slideAlongSide(piece: Piece, end: "underarm" | "sideWaist" | "sideUnderBust", amount: Mm): Piece {
  const at = pointOf(piece, end);
  if (end === "underarm") {
    const towards = endsOf(piece, stretchFrom(piece, end)).to;
    return moveMouthEnd(piece, end, polar(at, directionOf(at, pointOf(piece, towards)), amount));
  }
  const edge = invariant(piece.edges[edgeTo(piece, end)], "side edge");
  const back = edge.curve === null ? directionOf(at, pointOf(piece, edge.from)) : directionOf(at, edge.curve.c2);
  return moveMouthEnd(piece, end, polar(at, back, -amount));
}
