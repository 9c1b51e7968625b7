/** One toile, two ways: another way tried on one half, and the better of the two kept for both. */
import { HALVES, isMadeOn, isSameThing, onHalves, type Alteration, type Half } from "../decisions/alteration";
import type { Picks } from "../decisions/decided";
import type { Work } from "../decisions/work";
import { fail, ok, type Result } from "../result";
import { isSame } from "../same";
import { applyCommand, type Command } from "./commands";
import { planOf } from "./planOf";
import { idOnHalf } from "./putAlteration";

/**
 * What is for both halves made one for each, alike until the one on `half` is changed; nothing to do where it is for one half
 * already, or is not there.
 */
export const tryOnOther = ({ alterations }: Work, id: string, half: Half): readonly Command[] =>
  alterations.some((a) => a.id === id && a.half === undefined) ? [{ kind: "splitAlteration", id, half }] : [];

/** Why neither half, or no mean of the two, can be kept. */
export type KeepFailure =
  /** There is nothing that only one half has. */
  | { readonly code: "keep/halves-alike" }
  /** These are made on one half alone, so that there is no mean. */
  | { readonly code: "keep/on-one-half"; readonly alterations: readonly Alteration[] }
  /** These are made on both in another way, not only by another amount. */
  | { readonly code: "keep/another-way"; readonly alterations: readonly Alteration[] }
  | { readonly code: "keep/cups-unlike"; readonly left: string | null; readonly right: string | null };

/**
 * One half kept for both, its cup version too, or the mean of the two.
 *
 * @returns the command that does it in one step. With another cup for both the planner might pick another base size; the one
 *          that was sewn is then set
 */
export function keepHalf(work: Work, keep: Half | "mean"): Result<Command, KeepFailure> {
  const { alterations, picks } = work;
  const { halfCups, ...others } = picks;
  if (halfCups === undefined && alterations.every(({ half }) => half === undefined))
    return fail({ code: "keep/halves-alike" });
  const kept = keep === "mean" ? meanOf(alterations) : ok(alterations.filter((a) => isMadeOn(a, keep)));
  if (!kept.ok) return kept;
  if (halfCups === undefined) return ok({ kind: "keepHalf", alterations: forBoth(kept.value), picks });
  const plan = planOf(work);
  const [left, right] = HALVES.map((half) =>
    plan.ok ? plan.value[half].sizing.cup.label : (halfCups[half] ?? picks.cup ?? null),
  );
  if (keep === "mean" && left !== right)
    return fail({ code: "keep/cups-unlike", left: left ?? null, right: right ?? null });
  const own = halfCups[keep === "mean" ? "left" : keep];
  const cup: Picks = own === undefined ? others : { ...others, cup: own };
  const command = (chosen: Picks) =>
    ({ kind: "keepHalf", alterations: forBoth(kept.value), picks: chosen }) satisfies Command;
  const next = planOf(applyCommand(work, command(cup)));
  const sewn = plan.ok ? plan.value.sizing.baseSize.label : null;
  const isSameSize = sewn === null || !next.ok || next.value.sizing.baseSize.label === sewn;
  return ok(command(isSameSize ? cup : { ...cup, baseSize: sewn }));
}

/** All for both halves, in the order they are made in; what an older file had twice is one of both amounts. */
function forBoth(alterations: readonly Alteration[]): readonly Alteration[] {
  return alterations.reduce<readonly Alteration[]>((done, alteration) => {
    const both = onHalves(alteration, undefined);
    const at = done.findIndex((a) => isSameThing(a, both));
    const before = done[at];
    if (before?.kind === "fit" && both.kind === "fit")
      return done.with(at, { ...before, amount: before.amount + both.amount });
    const id = idOnHalf(both.id, undefined);
    const isTaken = [...done, ...alterations].some((a) => a !== alteration && a.id === id);
    return [...done, isTaken || alteration.half === undefined ? both : { ...both, id }];
  }, []);
}

/** Every two of one thing on the two halves made one of their mean amounts. */
function meanOf(alterations: readonly Alteration[]): Result<readonly Alteration[], KeepFailure> {
  const apart = alterations.filter(({ half }) => half !== undefined);
  const otherOf = (one: Alteration): Alteration | undefined =>
    apart.find((a) => a.half !== one.half && isSameThing(a, one));
  const single = apart.filter((one) => otherOf(one) === undefined);
  if (single.length > 0) return fail({ code: "keep/on-one-half", alterations: single });
  const unlike: Alteration[] = [];
  const mean = alterations.flatMap((one): readonly Alteration[] => {
    if (one.half === undefined) return [one];
    const other = otherOf(one);
    if (one.half === "right" || other === undefined) return [];
    const both = meanOfTwo(one, other);
    if (both === null) unlike.push(one);
    return both === null ? [] : [both];
  });
  return unlike.length > 0 ? fail({ code: "keep/another-way", alterations: unlike }) : ok(mean);
}

const middle = (a: number, b: number): number => (a + b) / 2;

/** The left one with the mean of both amounts; null where they differ in anything else. */
function meanOfTwo(left: Alteration, right: Alteration): Alteration | null {
  const mean = withAmounts(left, right, middle);
  const leftAgain = withAmounts(right, left, (_, own) => own);
  if (mean === null || leftAgain === null) return null;
  return isSame({ ...leftAgain, id: "", half: "left" }, { ...left, id: "", half: "left" }) ? mean : null;
}

/** An alteration with amounts that come of its own and another's; null where the other is of another kind. */
function withAmounts(
  one: Alteration,
  other: Alteration,
  of: (own: number, others: number) => number,
): Alteration | null {
  switch (one.kind) {
    case "dartEnd":
      return other.kind !== one.kind
        ? null
        : { ...one, shorten: of(one.shorten, other.shorten), across: of(one.across, other.across) };
    case "dartMouth":
      return other.kind !== one.kind
        ? null
        : { ...one, inner: of(one.inner, other.inner), outer: of(one.outer, other.outer) };
    case "dartPlace":
      return other.kind !== one.kind ? null : { ...one, by: of(one.by, other.by) };
    case "dartPivot":
      return other.kind !== one.kind ? null : { ...one, share: of(one.share, other.share) };
    case "dartLegs":
      return other.kind !== one.kind ? null : { ...one, bow: of(one.bow, other.bow) };
    case "fit":
      return other.kind !== one.kind ? null : { ...one, amount: of(one.amount, other.amount) };
    case "dartSplit":
    case "dartGather":
    case "dartSeam":
      return other.kind !== one.kind ? null : one;
  }
}
