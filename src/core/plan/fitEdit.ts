/** From what is set on the Fit step to the alterations that say it. */
import type { Alteration, FitAlteration, Half } from "../decisions/alteration";
import { FIT_NAMES, type FitName } from "../decisions/fitNames";
import { fitOf } from "../alterations/fit/index";
import { PHASE_ORDER, phaseOfFit, type Phase } from "../decisions/tradeOrder";
import { setOf } from "../pattern/pieceSet";
import type { Command } from "./commands";
import { halvesOf, type Plan } from "./plan";
import type { Work } from "../decisions/work";
import type { Mm } from "../units";

export type Halves = "both" | Half;

const fitId = (fit: FitName, halves: Halves): string => (halves === "both" ? `fit-${fit}` : `fit-${fit}-${halves}`);

const isFit = (alteration: Alteration): alteration is FitAlteration => alteration.kind === "fit";

/** The uses of one fit alteration: one for both halves, or one for each; older works may have one for both beside those. */
export const usesOf = (work: Work, fit: FitName): readonly FitAlteration[] =>
  work.alterations.filter(isFit).filter((a) => a.fit === fit);

export const halvesAsked = ({ half }: FitAlteration): Halves => half ?? "both";

/** A use as it stands, or a new one of no amount. */
export const useOn = (uses: readonly FitAlteration[], fit: FitName, halves: Halves): FitAlteration =>
  uses.find((use) => halvesAsked(use) === halves) ?? {
    kind: "fit",
    id: fitId(fit, halves),
    fit,
    amount: 0,
    ...(halves === "both" ? {} : { half: halves }),
  };

/** Puts it with another amount; of no amount it leaves the ledger. */
export const amountCommand = (use: FitAlteration, amount: Mm): Command =>
  amount === 0
    ? { kind: "removeAlteration", id: use.id, ...(use.half === undefined ? {} : { half: use.half }) }
    : { kind: "putAlteration", alteration: { ...use, amount } };

/**
 * What asking for other halves changes. From both to one, and back, the amount goes along, since it is the same thing
 * asked for elsewhere; between left and right each keeps its own.
 */
export function halvesCommands(
  uses: readonly FitAlteration[],
  fit: FitName,
  from: Halves,
  to: Halves,
): readonly Command[] {
  const shown = useOn(uses, fit, from);
  if (from === to || shown.amount === 0 || (from !== "both" && to !== "both")) return [];
  const gone = to === "both" ? uses.filter((use) => use.half !== undefined) : [shown];
  const { amount } = shown;
  return [
    ...gone.map(({ id }): Command => ({ kind: "removeAlteration", id })),
    { kind: "putAlteration", alteration: { ...useOn([], fit, to), amount } },
  ];
}

/** Whether the garment has what it is made on, before or after the wearer's other alterations. */
export function appliesTo(plan: Plan, fit: FitName): boolean {
  const { applies } = fitOf(fit);
  return applies(setOf(plan.blended)) || halvesOf(plan).some(({ pieces }) => applies(setOf(pieces)));
}

/** Fit alterations by where they stand in the trade's order, in the registry's order. */
export const fitsByPhase = (
  fits: readonly FitName[] = FIT_NAMES,
): readonly { readonly phase: Phase; readonly fits: readonly FitName[] }[] =>
  PHASE_ORDER.map((phase) => ({ phase, fits: fits.filter((fit) => phaseOfFit(fit) === phase) })).filter(
    (group) => group.fits.length > 0,
  );
