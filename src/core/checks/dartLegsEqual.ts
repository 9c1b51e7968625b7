/** The two legs of each dart are of one length. */
import { SEWN_AGREEMENT } from "../tolerance";
import { near, type Check } from "./context";

export const dartLegsEqual: Check = ({ darts, pieces }) =>
  // Gathers have no legs.
  darts
    .filter(({ ref }) => pieces[ref.piece]?.darts.find(({ name }) => name === ref.dart)?.gathered !== true)
    .map(({ ref, drawn }) =>
      near({
        name: "dartLegsEqual",
        measured: drawn.legOuter - drawn.legInner,
        expected: 0,
        tolerance: SEWN_AGREEMENT,
        unit: "mm",
        pieces: [ref.piece],
        dart: ref.dart,
      }),
    );
