/** Each bust dart points at the bust point: its axis passes it near enough, to either side. */
import { DART_ASIDE_MOST } from "../tolerance";
import type { CheckResult } from "./check";
import { near, type Check } from "./context";

export const dartPointsAtBustPoint: Check = ({ darts }) =>
  darts.flatMap(({ ref, drawn }): CheckResult[] =>
    drawn.end === null
      ? []
      : [
          near({
            name: "dartPointsAtBustPoint",
            measured: drawn.end.across,
            expected: 0,
            tolerance: DART_ASIDE_MOST,
            unit: "mm",
            pieces: [ref.piece],
            dart: ref.dart,
          }),
        ],
  );
