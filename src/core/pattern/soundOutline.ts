/** What is wrong with the outline of a piece: asked when it is made, and again when the plan is checked. */
import { validateOutline } from "../geometry/outline";
import { remember } from "../remember";
import type { Piece } from "./piece";
import { outlineOf } from "./ring";

const faultsOf = remember(
  ["piece"],
  ({ piece }: { readonly piece: Piece }) => validateOutline(outlineOf(piece)).length,
);

/** How many faults; 0 where it can be cut. */
export const outlineFaultsIn = (piece: Piece): number => faultsOf({ piece });
