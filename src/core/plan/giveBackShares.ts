/** Shares in whole per cents, kept whole while one of them is changed. */
import type { GiveBack, GiveBackPlace } from "../decisions/alteration";

type Percents = Readonly<Partial<Record<GiveBackPlace, number>>>;

/** The shares in per cent, adding up to 100; where none is set, all at the usual place, which comes first. */
export function wholeShares(places: readonly GiveBackPlace[], shares: GiveBack): Percents {
  const sum = places.reduce((total, place) => total + (shares[place] ?? 0), 0);
  const [usual] = places;
  return Object.fromEntries(
    places.map((place) => [
      place,
      sum === 0 ? (place === usual ? 100 : 0) : Math.round(((shares[place] ?? 0) / sum) * 100),
    ]),
  );
}

/** One share set; the others keep their proportion to each other in what is left, and the last takes the rounding. */
export function sharesWith(
  places: readonly GiveBackPlace[],
  shares: GiveBack,
  place: GiveBackPlace,
  percent: number,
): GiveBack {
  const now = wholeShares(places, shares);
  const others = places.filter((other) => other !== place);
  const rest = others.reduce((total, other) => total + (now[other] ?? 0), 0);
  const next: Partial<Record<GiveBackPlace, number>> = { [place]: percent / 100 };
  let left = 100 - percent;
  others.forEach((other, index) => {
    const part = rest === 0 ? (index === 0 ? left : 0) : Math.round(((100 - percent) * (now[other] ?? 0)) / rest);
    const given = index === others.length - 1 ? left : Math.min(left, part);
    left -= given;
    next[other] = given / 100;
  });
  return next;
}
