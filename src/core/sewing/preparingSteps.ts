/** What comes before the first seam and after the last. */
import type { Part } from "../parts/part";
import type { SewnDress } from "./sewnDress";
import { inGroup, keysOf, step, type StepDraft } from "./stepDraft";

export function preparingSteps(dress: SewnDress): readonly StepDraft[] {
  const { parts, edges, isBodiceLined, skirt, hasBasque } = dress;
  const all = keysOf(parts);
  // Strips for button stands run over seams: they are fused once these are sewn.
  const fused = parts.filter(({ cloth, group }) => cloth === "interfacing" && group !== "buttonStand");
  const underlined = inGroup(parts, "underlining");
  const darted = parts.filter(hasDarts);
  const bodice = keysOf(inGroup(parts, "bodice"));
  const isFinished = isBodiceLined || edges.edges.some(({ finish }) => finish !== "lining");
  return [
    step("washCloth", all),
    step("cutOut", all),
    ...(darted.length === 0 ? [] : [step("markDarts", keysOf(darted))]),
    ...(fused.length === 0 ? [] : [step("fuseInterfacing", keysOf(fused))]),
    ...(underlined.length === 0 ? [] : [step("tackUnderlining", keysOf(underlined))]),
    ...(isFinished ? [step("fitBeforeTopEdge", bodice)] : []),
    ...(skirt !== null || hasBasque ? [step("fitBeforeWaist", bodice)] : []),
    step("press", all),
  ];
}

const hasDarts = (part: Part): boolean =>
  part.kind === "piece" &&
  part.cloth !== "interfacing" &&
  (part.piece.darts.length > 0 || (part.otherHalf?.darts.length ?? 0) > 0);
