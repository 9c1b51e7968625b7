/** Doubts about the tape that nobody has answered yet: neither measured again, nor set right, nor said to be right. */
import type { Work } from "../decisions/work";
import { bodyOf } from "../measures/tape";
import { isOpen } from "./answered";
import { suspicionsOf, type Suspicion } from "./suspicion";

/** The most doubtful first. */
export const openDoubts = ({ tapes, age, unit, trusted }: Work): readonly Suspicion[] =>
  suspicionsOf(bodyOf(tapes), age, unit, trusted).filter(isOpen);
