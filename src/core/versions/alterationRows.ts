/** Alterations of two versions side by side, by what they alter and on which half. */
import { fitOf } from "../alterations/fit/index";
import { isSameThing, type Alteration, type Half } from "../decisions/alteration";
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

/** As it is on one half: of an amount for both halves together half of it. */
function onHalf(alteration: Alteration, half: Half): Alteration {
  const isShared = alteration.half === undefined && alteration.kind === "fit" && fitOf(alteration.fit).isWhole === true;
  return isShared ? { ...alteration, amount: alteration.amount / 2, half } : { ...alteration, half };
}

const found = (list: readonly Alteration[], thing: Alteration, half: Half): Alteration | null =>
  list.find((one) => isSameThing(one, thing) && (one.half ?? half) === half) ?? null;

/** What it says, whoever made it. */
const said = (alteration: Alteration | null): unknown => alteration && { ...alteration, id: "", half: null };

/** The same of both halves in one row, else one of each; in the trade's order. */
export function alterationRows(before: readonly Alteration[], after: readonly Alteration[]): readonly AlterationRow[] {
  const things = [...after, ...before].filter(
    (thing, index, all) => all.findIndex((one) => isSameThing(one, thing)) === index,
  );
  return things
    .toSorted((a, b) => placeInOrder(a) - placeInOrder(b))
    .flatMap((thing): readonly AlterationRow[] => {
      const [was, is] = [before, after].map((list) => list.find((one) => isSameThing(one, thing)) ?? null);
      const isForBoth = [was, is].every((one) => one === null || one === undefined || one.half === undefined);
      if (isForBoth) return [rowOf(null, was ?? null, is ?? null)];
      return (["left", "right"] as const).flatMap((half) => {
        const [from, to] = [before, after].map((list) => {
          const one = found(list, thing, half);
          return one === null ? null : onHalf(one, half);
        });
        return from == null && to == null ? [] : [rowOf(half, from ?? null, to ?? null)];
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
  const own = (list: readonly Alteration[]): readonly Alteration[] => list.filter((one) => (one.half ?? half) === half);
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
      return rowOf(half, from && onHalf(from, half), to && onHalf(to, half));
    });
}
