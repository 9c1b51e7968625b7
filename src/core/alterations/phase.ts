/** The trade's order of alterations: length, bust, darts, widths, shoulders and edges. */
import type { SlipPhase } from "../plan/plan";
import type { Alteration } from "../plan/work";
import { FIT_NAMES, FIT_PHASES } from "./fit/names";

export const PHASE_ORDER: readonly SlipPhase[] = ["widthsTraced", "length", "bust", "darts", "widths", "edges"];

export const phaseOf = (alteration: Alteration): SlipPhase =>
  alteration.kind === "fit" ? FIT_PHASES[alteration.fit] : "darts";

/**
 * Where an alteration stands in the trade's order, finer than its phase: among fits of one phase as they are offered, whole
 * lengths before wedges.
 */
export const placeInOrder = (alteration: Alteration): number =>
  rankOf(phaseOf(alteration)) * FIT_NAMES.length + (alteration.kind === "fit" ? FIT_NAMES.indexOf(alteration.fit) : 0);

export const rankOf = (phase: SlipPhase): number => PHASE_ORDER.indexOf(phase);
