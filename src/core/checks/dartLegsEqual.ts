/** The two legs of each dart are of one length. */
import { SEWN_AGREEMENT } from "../tolerance";
import type { DartRef } from "../pattern/piece";
import type { PieceSet } from "../pattern/pieceSet";
import type { Mm } from "../units";
import type { CheckResult } from "./check";
import { near, type Check } from "./context";

/** As long as a dart is what the pattern drew, its legs differ as they were drawn. */
const drawnLegsOf = (pieces: PieceSet, { piece, dart }: DartRef): Mm =>
  pieces[piece]?.darts.find(({ name }) => name === dart)?.drawnLegs ?? 0;

export const dartLegsEqual: Check = ({ darts, pieces }) =>
  // Gathers have no legs.
  darts
    .filter(({ ref }) => pieces[ref.piece]?.darts.find(({ name }) => name === ref.dart)?.gathered !== true)
    .map(({ ref, drawn }): CheckResult =>
      near({
        name: "dartLegsEqual",
        measured: drawn.legOuter - drawn.legInner,
        expected: drawnLegsOf(pieces, ref),
        tolerance: SEWN_AGREEMENT,
        unit: "mm",
        pieces: [ref.piece],
        dart: ref.dart,
      }),
    );
