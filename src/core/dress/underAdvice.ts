/** What goes under a cloth that shows through, and what of the sewing shows. */
import type { Dress } from "../decisions/dress";
import type { UnderAdvice } from "./dressPlan";

export function underAdvice({ under }: Dress): UnderAdvice {
  return { recommended: "nothing", chosen: under ?? "nothing", showing: [] };
}
