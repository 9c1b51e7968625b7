/** What is told of both halves of the body together, where left and right differ. */
import type { Half } from "../decisions/alteration";
import type { CheckResult } from "../checks/check";
import type { ChecklistItem, ChecklistStep, PlanHalf, PlannedAlteration } from "./plan";
import type { AlterationTrace } from "../alterations/outcome/trace";
import { isCut, isDartCut, walkedBy } from "../alterations/fit/whatChanged";
import { piecesOf } from "../pattern/pieceSet";
import type { Decided } from "../decisions/decided";
import { remember } from "../remember";
import { invariant } from "../result";
import { SOLVER_ACCURACY } from "../tolerance";
import { inOrderOfWork } from "./workPhases";

/** The halves with what comes out otherwise on the other one named as their own. */
export function namedApart(left: PlanHalf, right: PlanHalf): readonly [PlanHalf, PlanHalf] {
  if (left === right) return [left, right];
  return [named(left, right, "left"), named(right, left, "right")];
}

function named(own: PlanHalf, other: PlanHalf, half: Half): PlanHalf {
  const isApart = (planned: PlannedAlteration): boolean =>
    isForBoth(planned) && cameOut(planned) !== cameOut(other.alterations.find(({ id }) => id === planned.id) ?? null);
  return own.alterations.some(isApart)
    ? { ...own, alterations: own.alterations.map((planned) => (isApart(planned) ? { ...planned, half } : planned)) }
    : own;
}

/** Blend lines say of both what is said of a level. */
const isForBoth = ({ what }: PlannedAlteration): boolean =>
  what.kind === "bust" || (what.kind === "alteration" && what.alteration.half === undefined);

/** Of one for both: whether it is made, or why not; of a bust alteration how much of it. */
function cameOut(planned: PlannedAlteration | null): string {
  if (planned === null) return "";
  const { what, outcome } = planned;
  const amounts = what.kind === "bust" ? [what.amount, what.asked, what.spread].map(tenths) : [];
  return JSON.stringify([amounts, outcome.ok ? null : outcome.failure.code]);
}

/**
 * The alterations of both halves in the order they are made; those on both stand once, as the left half has them, unless they
 * come out otherwise on the right.
 */
export function ledgerOfHalves(work: Decided, left: PlanHalf, right: PlanHalf): readonly PlannedAlteration[] {
  if (left === right) return left.alterations;
  const place = (id: string): number => work.alterations.findIndex((a) => a.id === id);
  const own = [
    ...left.alterations,
    ...right.alterations.filter(
      ({ id, half }) => half !== undefined || !left.alterations.some((planned) => planned.id === id),
    ),
  ];
  const wearers = own.filter(({ source }) => source === "wearer").toSorted((a, b) => place(a.id) - place(b.id));
  return [
    ...own.filter(({ source }) => source === "bust"),
    ...wearers,
    ...own.filter(({ source }) => source === "blend"),
  ];
}

/** `right` null: the halves are alike. What is found alike on both halves stands once; the rest says which half it is of. */
export function checksOfHalves(
  left: readonly CheckResult[],
  right: readonly CheckResult[] | null,
): readonly CheckResult[] {
  if (right === null) return left;
  return merged(
    left,
    right,
    ({ name, ok, measured, expected, tolerance, unit, pieces, ...where }) =>
      `${name} ${ok} ${tenths(measured)} ${tenths(expected)} ${tolerance} ${unit} ${pieces.join()} ${JSON.stringify(where)}`,
  );
}

/** `right` null: the halves are alike. Jobs alike on both halves stand once; the rest say which half they are for. */
export function workOfHalves(
  left: readonly ChecklistItem[],
  right: readonly ChecklistItem[] | null,
): readonly ChecklistItem[] {
  if (right === null) return left;
  return inOrderOfWork(
    merged(left, right, ({ piece, step, amount }) => `${piece} ${tenths(amount)} ${inTenths(told(step))}`),
  );
}

/** A plain value as text, its numbers in tenths: what reads alike is alike. */
function inTenths(value: unknown): string {
  if (typeof value === "number") return String(tenths(value));
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  let fields = "";
  for (const [name, of] of Object.entries(value)) if (of !== undefined) fields += `${name}:${inTenths(of)},`;
  return `{${fields}}`;
}

/** What came of an alteration, told: made on pieces that are the very same on both halves it is one and the same. */
const traceTold = remember(["trace"], ({ trace }: { readonly trace: AlterationTrace }): string => {
  const { values, given, notes, surgery, before, after } = trace;
  const cut = piecesOf(before).map((piece) => [piece.name, isCut(piece, surgery), isDartCut(piece, surgery)]);
  return inTenths([values, given, notes, cut, walkedBy(before, after, 0)]);
});

/** What is told of a step: pieces of the two halves may differ where no words do. */
function told(step: ChecklistStep): unknown {
  // A line is marked where it runs before any alteration moves it.
  if (step.kind === "blend") return { ...step, cutLine: { ...step.cutLine, alterationMove: 0 } };
  if (step.kind === "level") return step.level.amount;
  if (step.kind !== "alteration") return step;
  const { id, outcome } = step.planned;
  if (!outcome.ok) return [id, outcome.failure];
  return [id, traceTold({ trace: outcome.value })];
}

/**
 * Tenths of a millimetre or degree: what differs by less is said alike. Amounts typed, and their halves, lie in the middle
 * between two tenths often: there rounding would tell apart what is one, so they are moved out of it.
 */
const tenths = (value: number): number => Math.round((value + SOLVER_ACCURACY) * 10);

/** Both in one list, each in its own order: what is alike stands once, what is not beside its like of the other half. */
function merged<T extends { readonly half?: Half }>(
  left: readonly T[],
  right: readonly T[],
  keyOf: (item: T) => string,
): readonly T[] {
  // What is found on one piece is one and the same where both halves have it.
  const known = new Map<T, string>();
  const keyOnce = (item: T): string => {
    const key = known.get(item) ?? keyOf(item);
    known.set(item, key);
    return key;
  };
  const keysOfLeft = left.map(keyOnce);
  const keys = right.map(keyOnce);
  const ofLeft = new Set(keysOfLeft);
  /** Where each stands first. */
  const ofRight = new Map<string, number>();
  for (const [index, key] of keys.entries()) if (!ofRight.has(key)) ofRight.set(key, index);
  const all: T[] = [];
  let taken = 0;
  const takeOwnOfRight = (upTo: number): void => {
    for (; taken < upTo; taken += 1)
      if (!ofLeft.has(invariant(keys[taken], "key"))) all.push({ ...invariant(right[taken], "item"), half: "right" });
  };
  for (const [index, item] of left.entries()) {
    const at = ofRight.get(invariant(keysOfLeft[index], "key"));
    if (at !== undefined) takeOwnOfRight(at);
    all.push(at === undefined ? { ...item, half: "left" } : item);
  }
  takeOwnOfRight(right.length);
  return all;
}
