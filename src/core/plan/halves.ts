/** What is told of both halves of the body together, where left and right differ. */
import type { Half } from "../decisions/alteration";
import type { CheckResult } from "../checks/check";
import type { ChecklistItem, PlanHalf, Slip } from "./plan";
import type { Work } from "../decisions/work";

/** The slips of both halves in the order they are made; those on both stand once, as the left half has them. */
export function slipsOfHalves(work: Work, left: PlanHalf, right: PlanHalf): readonly Slip[] {
  if (left === right) return left.slips;
  const place = (id: string): number => work.alterations.findIndex((a) => a.id === id);
  const own = [...left.slips, ...right.slips.filter(({ id }) => !left.slips.some((slip) => slip.id === id))];
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
  return merged(left, right, (check) => JSON.stringify({ ...check, measured: Math.round(check.measured * 10) }));
}

/** `right` null: the halves are alike. Jobs alike on both halves stand once; the rest say which half they are for. */
export function workOfHalves(
  left: readonly ChecklistItem[],
  right: readonly ChecklistItem[] | null,
): readonly ChecklistItem[] {
  if (right === null) return left;
  return merged(left, right, ({ piece, step, amount }) =>
    step.kind === "slip" ? `${piece} ${step.slip.id}` : JSON.stringify([piece, step, Math.round(amount * 10)], rounded),
  );
}

/** Tenths of a millimetre or degree: what differs by less is said alike. */
const rounded = (_key: string, value: unknown): unknown => (typeof value === "number" ? Math.round(value * 10) : value);

function merged<T extends { readonly half?: Half }>(
  left: readonly T[],
  right: readonly T[],
  keyOf: (item: T) => string,
): readonly T[] {
  const [ofLeft, ofRight] = [new Set(left.map(keyOf)), new Set(right.map(keyOf))];
  return [
    ...left.map((item): T => (ofRight.has(keyOf(item)) ? item : { ...item, half: "left" })),
    ...right.filter((item) => !ofLeft.has(keyOf(item))).map((item): T => ({ ...item, half: "right" })),
  ];
}
