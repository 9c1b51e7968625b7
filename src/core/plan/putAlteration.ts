/** The ledger's order and its halves: of one thing there is one alteration for both halves of the body, or one for each at the most. */
import {
  HALVES,
  isMadeOn,
  isSameKind,
  isSameThing,
  onHalves,
  otherHalf,
  type Alteration,
  type Half,
} from "../decisions/alteration";
import { LIMITS } from "../decisions/limits";
import { isBefore } from "../decisions/tradeOrder";
import { isSame } from "../same";

type Ledger = readonly Alteration[];

/**
 * Replaces the alteration of the same kind on the same thing, or puts a new one in its place in the trade's order.
 *
 * One for both halves takes the place of those for one half; one for a half, where there is one for both, leaves that on the
 * other half. What comes out alike on both is one for both again. An older file may have one for both *and* one on a half: each
 * is then replaced by itself.
 */
export function put(ledger: Ledger, alteration: Alteration): Ledger {
  const { half } = alteration;
  const at = ledger.findIndex((a) => isSameKind(a, alteration));
  if (at >= 0 && isSame(ledger[at], alteration)) return ledger;
  if (at >= 0) return joined(ledger.with(at, ownId(ledger.toSpliced(at, 1), alteration)), alteration);
  const same = ledger.filter((a) => isSameThing(a, alteration));
  const [first] = same;
  if (half === undefined && first !== undefined)
    return ledger.flatMap((a) => {
      if (a === first)
        return [
          ownId(
            ledger.filter((one) => !same.includes(one)),
            alteration,
          ),
        ];
      return same.includes(a) ? [] : [a];
    });
  if (ledger.length >= LIMITS.alterations) return ledger;
  if (half === undefined || first === undefined) {
    const before = ledger.findIndex((a) => isBefore(alteration, a));
    return ledger.toSpliced(before < 0 ? ledger.length : before, 0, ownId(ledger, alteration));
  }
  const whole = same.length === 1 && first.half === undefined;
  const other = whole ? onHalves(first, otherHalf(half)) : (same.find((a) => a.half !== undefined) ?? first);
  const own = ownId(ledger, alteration);
  const pair = half === "left" ? [own, other] : [other, own];
  return joined(ledger.toSpliced(ledger.indexOf(whole ? first : other), 1, ...pair), alteration);
}

/** What is for both halves made one for each, alike until one is put; the one on `half` is another, under an id of its own. */
export function split(ledger: Ledger, id: string, half: Half): Ledger {
  const found = ledger.find((a) => a.id === id);
  if (found === undefined || found.half !== undefined || ledger.length >= LIMITS.alterations) return ledger;
  if (ledger.some((a) => a !== found && isSameThing(a, found))) return ledger;
  const other = onHalves(found, otherHalf(half));
  const own = ownId(ledger, onHalves(found, half));
  return ledger.flatMap((a) => (a !== found ? [a] : half === "left" ? [own, other] : [other, own]));
}

/** Puts an alteration; one of no amount is taken out, on the half that it is for. */
export function putOrTakeOut(ledger: Ledger, alteration: Alteration): Ledger {
  if (!isNothing(alteration)) return put(ledger, alteration);
  const same = ledger.filter((a) => isSameThing(a, alteration));
  return same.reduce((left, { id }) => takeOut(left, id, alteration.half), ledger);
}

/** Whether an alteration asks for nothing. */
export function isNothing(alteration: Alteration): boolean {
  switch (alteration.kind) {
    case "dartEnd":
      return alteration.shorten === 0 && alteration.across === 0;
    case "dartMouth":
      return alteration.inner === 0 && alteration.outer === 0;
    case "dartPlace":
      return alteration.by === 0;
    case "dartPivot":
      return alteration.share === 0;
    case "dartLegs":
      return alteration.bow === 0;
    case "fit":
      return alteration.amount === 0;
    case "dartSplit":
    case "dartGather":
    case "dartSeam":
      return false;
  }
}

/** Takes an alteration out by its id, of one half alone where that is said: one for both then stays on the other half. */
export function takeOut(ledger: Ledger, id: string, half?: Half): Ledger {
  const found = ledger.find((a) => a.id === id);
  if (found === undefined || half === undefined) return ledger.filter((a) => a.id !== id);
  if (!isMadeOn(found, half)) return ledger;
  const others = ledger.filter((a) => a !== found);
  if (found.half !== undefined) return others;
  const left = onHalves(found, otherHalf(half));
  const there = others.find((a) => isSameKind(a, left));
  if (there === undefined) return ledger.map((a) => (a === found ? left : a));
  // Of an older file's two on one half one is left, of both amounts.
  return others.map((a) =>
    a === there && a.kind === "fit" && left.kind === "fit" ? { ...a, amount: a.amount + left.amount } : a,
  );
}

/**
 * The ledger with two for one half each made one for both again, where they are alike and it makes no difference: nothing
 * between them in the order is made on the half of the one that moves.
 */
function joined(ledger: Ledger, of: Alteration): Ledger {
  const same = ledger.filter((a) => isSameThing(a, of));
  const [first, last] = same;
  if (same.length !== 2 || first === undefined || last === undefined) return ledger;
  if (same.some((a) => a.half === undefined) || !isSame(bare(first), bare(last))) return ledger;
  const between = ledger.slice(ledger.indexOf(first) + 1, ledger.indexOf(last));
  const stays = [first, last].find((_, at) => {
    const { half } = at === 0 ? last : first;
    return half !== undefined && !between.some((a) => isMadeOn(a, half));
  });
  if (stays === undefined) return ledger;
  const others = ledger.filter((a) => !same.includes(a));
  const one = ownId(others, { ...onHalves(stays, undefined), id: idOnHalf(shorter(first.id, last.id), undefined) });
  return ledger.flatMap((a) => (a === stays ? [one] : same.includes(a) ? [] : [a]));
}

const bare = (alteration: Alteration): Alteration => ({ ...onHalves(alteration, undefined), id: "" });

const shorter = (a: string, b: string): string => (b.length < a.length ? b : a);

/** The usual id of what is made on one half, or on both, by the id that it has. */
export const idOnHalf = (id: string, half: Half | undefined): string => {
  const known = HALVES.find((one) => id.endsWith(`-${one}`));
  const both = known === undefined ? id : id.slice(0, -known.length - 1);
  return half === undefined ? both : `${both}-${half}`;
};

/** The alteration under its own id, or, where another one has that, under one that says its half. */
function ownId(others: Ledger, alteration: Alteration): Alteration {
  const isFree = (id: string): boolean => others.every((a) => a.id !== id);
  if (isFree(alteration.id)) return alteration;
  const { half } = alteration;
  const named = idOnHalf(alteration.id, half);
  const counted = others.map((_, at) => `${named.slice(0, LIMITS.text - 4)}-${at + 2}`);
  return { ...alteration, id: [named.slice(0, LIMITS.text), ...counted].find(isFree) ?? alteration.id };
}
