/** Where the bodice's darts and princess seams end at its waist: there a fitted skirt's run on. */
import { edgeLength } from "../geometry/edgeCurve";
import { seamLength } from "../girth/seamLength";
import type { Piece } from "../pattern/piece";
import type { PieceSet } from "../pattern/pieceSet";
import { curveOf } from "../pattern/ring";
import type { DartPlaces } from "../skirts/skirtDraft";
import type { Mm } from "../units";

/** @param bodice the wearer's left half first; the very same object twice where they are alike */
export function dartPlaces([left, right]: readonly [PieceSet, PieceSet]): readonly [DartPlaces, DartPlaces] {
  const one = placesOf(left);
  return [one, right === left ? one : placesOf(right)];
}

function placesOf({ front, centreFront, frontBand, back, backBand }: PieceSet): DartPlaces {
  const ofFront = frontBand ?? front;
  const ofBack = backBand ?? back;
  return {
    front: centreFront === undefined ? alongWaist(ofFront) : [seamLength(centreFront, "waist")],
    back: alongWaist(ofBack),
  };
}

/** Each dart of a waist seam, along it from the centre, the others sewn shut. */
function alongWaist(piece: Piece | undefined): readonly Mm[] {
  if (piece === undefined) return [];
  const edges = piece.edges.filter(({ seam }) => seam === "waist");
  const first = edges.findIndex(({ from, to }) => from === "centreWaist" || to === "centreWaist");
  if (first < 0) return [];
  const fromCentre = edges[first]?.from === "centreWaist" ? edges : edges.toReversed();
  const places: Mm[] = [];
  let along = 0;
  for (const edge of fromCentre) {
    if (edge.mouthOf === null) along += edgeLength(curveOf(piece, edge));
    else places.push(along);
  }
  return places;
}
