/** Whether a doubt about the tape is answered, and where it is asked. */
import type { Suspicion } from "./suspicion";

/** Neither taken again nor said to be right. */
export const isOpen = ({ takenAgain, saidRight }: Suspicion): boolean => !takenAgain && !saidRight;

/** Of two measures in each other's place, the question is asked at the first. */
export function isAskedElsewhere(doubts: readonly Suspicion[], { measure, misreading }: Suspicion): boolean {
  if (misreading?.kind !== "swapped") return false;
  const other = doubts.findIndex(
    (doubt) => doubt.measure === misreading.other && doubt.misreading?.kind === "swapped" && isOpen(doubt),
  );
  return other >= 0 && other < doubts.findIndex((doubt) => doubt.measure === measure);
}
