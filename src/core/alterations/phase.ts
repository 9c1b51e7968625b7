/** The trade's order of alterations: length, bust, darts, widths, shoulders and edges. */
import type { SlipPhase } from "../plan/plan";
import type { Alteration } from "../plan/work";
import { fitOf } from "./fit/index";

export const PHASE_ORDER: readonly SlipPhase[] = ["widthsTraced", "length", "bust", "darts", "widths", "edges"];

export const phaseOf = (alteration: Alteration): SlipPhase => (alteration.kind === "fit" ? fitOf(alteration.fit).phase : "darts");

export const rankOf = (phase: SlipPhase): number => PHASE_ORDER.indexOf(phase);
