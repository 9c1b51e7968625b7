/** Bindings: strips cut on the bias that are sewn round an edge. mm. */
import type { Mm } from "../units";

/** A bias strip is stretched a little as it is sewn on, and so cut shorter than its edge (common practice, no source). */
const OF_EDGE = 0.97;
/** And longer by this, to turn in its ends, mm (common practice, no source). */
const FOR_ENDS: Mm = 50;
/** It is folded into four (common practice, no source). */
const LAYERS = 4;

export const stripLength = (edge: Mm): Mm => edge * OF_EDGE + FOR_ENDS;
export const stripWidth = (finished: Mm): Mm => LAYERS * finished;
