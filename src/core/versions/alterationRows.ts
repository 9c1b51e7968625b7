/** Alterations of two versions side by side, by what they alter and on which half. */
import { HALVES, isMadeOn, isSameThing, onHalves, type Alteration, type Half } from "../decisions/alteration";
import { placeInOrder } from "../decisions/tradeOrder";
import { isSame } from "../same";
import { READS_AS_NOTHING } from "../tolerance";
import type { Mm } from "../units";

export interface AlterationRow {
  /** On one half alone, where the halves are not told alike; amounts are then that half's. */
  readonly half: Half | null;
  /** null: not there. */
  readonly before: Alteration | null;
  readonly after: Alteration | null;
  /** After less before, where one amount tells it all; mm. */
  readonly by: Mm | null;
  readonly isChanged: boolean;
}

/** With what is there more than once as one for each half: an older file may have one for both and one for a half besides. */
function eachOnce(list: readonly Alteration[]): readonly Alteration[] {
  return list.flatMap((one): readonly Alteration[] => {
    const twins = list.filter((other) => isSameThing(one, other));
    const [first] = twins;
    if (twins.length === 1) return [one];
    return one === first ? HALVES.flatMap((half) => summed(twins, half)) : [];
  });
}

function summed(twins: readonly Alteration[], half: Half): readonly Alteration[] {
  const own = twins.filter((one) => isMadeOn(one, half)).map((one) => onHalves(one, half));
  const [first] = own;
  if (first?.kind !== "fit") return first === undefined ? [] : [first];
  return [{ ...first, amount: own.reduce((sum, one) => (one.kind === "fit" ? sum + one.amount : sum), 0) }];
}

const firstOf = (list: readonly Alteration[], thing: Alteration): Alteration | null =>
  list.find((one) => isSameThing(one, thing)) ?? null;

const found = (list: readonly Alteration[], thing: Alteration, half: Half): Alteration | null =>
  list.find((one) => isSameThing(one, thing) && isMadeOn(one, half)) ?? null;

/** What it says, whoever made it. */
const said = (alteration: Alteration | null): unknown => alteration && { ...alteration, id: "", half: null };

/** The same of both halves in one row, else one of each; in the trade's order. */
export function alterationRows(was: readonly Alteration[], is: readonly Alteration[]): readonly AlterationRow[] {
  const [before, after] = [eachOnce(was), eachOnce(is)];
  const things = [...after, ...before].filter(
    (thing, index, all) => all.findIndex((one) => isSameThing(one, thing)) === index,
  );
  return things
    .toSorted((a, b) => placeInOrder(a) - placeInOrder(b))
    .flatMap((thing): readonly AlterationRow[] => {
      const [first, last] = [firstOf(before, thing), firstOf(after, thing)];
      const isForBoth = [first, last].every((one) => one === null || one.half === undefined);
      if (isForBoth) return [rowOf(null, first, last)];
      return HALVES.flatMap((half) => {
        const [from, to] = [found(before, thing, half), found(after, thing, half)];
        return from === null && to === null
          ? []
          : [rowOf(half, from && onHalves(from, half), to && onHalves(to, half))];
      });
    });
}

const rowOf = (half: Half | null, before: Alteration | null, after: Alteration | null): AlterationRow => ({
  half,
  before,
  after,
  by: difference(before, after),
  isChanged: !isSame(said(before), said(after)),
});

/** What of it is one amount; null where it takes more than one to tell. */
function amountOf(alteration: Alteration): Mm | null {
  switch (alteration.kind) {
    case "fit":
      return alteration.amount;
    case "dartEnd":
      return Math.abs(alteration.across) <= READS_AS_NOTHING ? alteration.shorten : null;
    case "dartPlace":
      return alteration.by;
    case "dartLegs":
      return alteration.bow;
    case "dartMouth":
      return alteration.inner + alteration.outer;
    default:
      return null;
  }
}

function difference(before: Alteration | null, after: Alteration | null): Mm | null {
  const [was, is] = [before, after].map((one) => (one === null ? 0 : amountOf(one)));
  return was == null || is == null ? null : is - was;
}

/** Rows of what is made on one half (null: on both); what is for both in either version keeps its amount for both. */
export function rowsOnHalf(
  before: readonly Alteration[],
  after: readonly Alteration[],
  half: Half | null,
): readonly AlterationRow[] {
  if (half === null) return alterationRows(before, after);
  const own = (list: readonly Alteration[]): readonly Alteration[] =>
    eachOnce(list).filter((one) => isMadeOn(one, half));
  const [was, is] = [own(before), own(after)];
  const things = [...is, ...was].filter(
    (thing, index, all) => all.findIndex((one) => isSameThing(one, thing)) === index,
  );
  return things
    .toSorted((a, b) => placeInOrder(a) - placeInOrder(b))
    .map((thing) => {
      const [from, to] = [found(was, thing, half), found(is, thing, half)];
      const isForBoth = [from, to].every((one) => one === null || one.half === undefined);
      if (isForBoth) return rowOf(null, from, to);
      return rowOf(half, from && onHalves(from, half), to && onHalves(to, half));
    });
}
