/** Each bust dart ends short of the bust point, along its own axis: neither past it nor far off. */
import { DART_STOP_LEAST, DART_STOP_MOST } from "../tolerance";
import type { CheckResult } from "./check";
import type { Check } from "./context";

export const dartEndShortOfBustPoint: Check = ({ darts }) =>
  darts.flatMap(({ ref, drawn }): CheckResult[] => {
    if (drawn.end === null) return [];
    const measured = drawn.end.along;
    const expected = Math.min(DART_STOP_MOST, Math.max(DART_STOP_LEAST, measured));
    return [
      {
        name: "dartEndShortOfBustPoint",
        ok: measured === expected,
        measured,
        expected,
        tolerance: 0,
        unit: "mm",
        pieces: [ref.piece],
        dart: ref.dart,
      },
    ];
  });
