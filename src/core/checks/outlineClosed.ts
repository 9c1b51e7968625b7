/** Every outline is closed, does not cross itself and has no edge too short to cut. */
import { piecesOf } from "../pattern/pieceSet";
import { outlineFaultsIn } from "../pattern/soundOutline";
import type { CheckResult } from "./check";
import type { Check } from "./context";

export const outlineClosed: Check = ({ pieces }) =>
  piecesOf(pieces).map((piece): CheckResult => {
    const faults = outlineFaultsIn(piece);
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
