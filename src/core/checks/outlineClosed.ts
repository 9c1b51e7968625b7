/** Every outline is closed, does not cross itself and has no edge too short to cut. */
import type { Piece } from "../pattern/piece";
import { piecesOf } from "../pattern/pieceSet";
import { validateOutline } from "../geometry/outline";
import { outlineOf } from "../pattern/ring";
import { remember } from "../remember";
import type { CheckResult } from "./check";
import type { Check } from "./context";

/** Most pieces are no others than in the plan before. */
const faultsOf = remember(
  ["piece"],
  ({ piece }: { readonly piece: Piece }) => validateOutline(outlineOf(piece)).length,
);

export const outlineClosed: Check = ({ pieces }) =>
  piecesOf(pieces).map((piece): CheckResult => {
    const faults = faultsOf({ piece });
    return {
      name: "outlineClosed",
      ok: faults === 0,
      measured: faults,
      expected: 0,
      tolerance: 0,
      unit: "faults",
      pieces: [piece.name],
    };
  });
