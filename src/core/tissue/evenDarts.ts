/**
 * How much of the waist darts, or of a princess seam, grows from size to size: the stand-in's follow what each row of the chart
 * has between bust and waist, those of printed patterns grow evenly or not at all. Made even on the whole chart, the finished
 * waist of every size kept, so that what is measured of one step holds for the others.
 */
import { seamLength } from "../girth/seamLength";
import { isBasque } from "../pattern/pieceGroups";
import { piecesOf, setOf, type PieceSet } from "../pattern/pieceSet";
import { pointOf, type Nest, type PieceName } from "../pattern/piece";
import { invariant } from "../result";
import type { Mm } from "../units";
import type { Quantity } from "./tissueModel";

const isBack = (name: PieceName): boolean => name.startsWith("back");

/** The pieces of the front and of the back that have a waist seam, the one at the side last. */
function halvesOf(pieces: PieceSet): readonly (readonly PieceName[])[] {
  const withWaist = piecesOf(pieces).filter(
    (piece) => !isBasque(piece.name) && piece.edges.some(({ seam }) => seam === "waist"),
  );
  return [withWaist.filter(({ name }) => !isBack(name)), withWaist.filter(({ name }) => isBack(name))].flatMap(
    (half) => {
      const atSide = half.find((piece) => piece.points.sideWaist !== undefined);
      if (atSide === undefined) return [];
      return [[...half.filter((piece) => piece !== atSide), atSide].map(({ name }) => name)];
    },
  );
}

const sewnWaist = (set: PieceSet, names: readonly PieceName[]): Mm =>
  names.reduce((sum, name) => sum + seamLength(invariant(set[name], name), "waist"), 0);

/** Where the side lies at the waist beyond what is sewn: all that darts take, and how a piece lies in its frame. */
const beyondSewn = (set: PieceSet, names: readonly PieceName[]): Mm =>
  pointOf(invariant(set[invariant(names.at(-1), "side")], "side"), "sideWaist").x - sewnWaist(set, names);

/** The sewn waists of front and back, and where the side lies beyond them. */
export function takenQuantities(pieces: PieceSet): readonly (Quantity & { readonly key: string })[] {
  return halvesOf(pieces).flatMap((of) => [
    { of, usesNext: false, key: `sewn ${of.join()}`, value: (set: PieceSet) => sewnWaist(set, of) },
    { of, usesNext: false, key: `beyond ${of.join()}`, value: (set: PieceSet) => beyondSewn(set, of) },
  ]);
}

/**
 * What those quantities are in a size, made even.
 *
 * @param stepsOf how many steps of the bust a size lies above the one measured
 */
export function evenlyTaken(
  { sizes }: Nest,
  measured: number,
  index: number,
  stepsOf: (index: number) => number,
): readonly { readonly quantity: Quantity; readonly wanted: Mm }[] {
  const [own, here] = [setOf(sizes[measured] ?? []), setOf(sizes[index] ?? [])];
  const [first, last] = [setOf(sizes[0] ?? []), setOf(sizes.at(-1) ?? [])];
  const wholeSteps = stepsOf(sizes.length - 1) - stepsOf(0);
  return takenQuantities(own).map((quantity) => {
    const at = (set: PieceSet): Mm => quantity.value(set, set);
    if (!quantity.key.startsWith("beyond") || !(wholeSteps > 0)) return { quantity, wanted: at(here) };
    return { quantity, wanted: at(own) + ((at(last) - at(first)) / wholeSteps) * stepsOf(index) };
  });
}
