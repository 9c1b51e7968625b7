/** Where nothing works: which of the wearer's numbers is too much, and the most of it that works. */
import type { Mm } from "../units";
import { aimAt, type Aim, type AsSewn } from "./pointedDartAim";
import { makeAnswer, type Way } from "./pointedDartAnswer";
import type { PointedDartContext, PointedDartFailure } from "./pointedDartTypes";

/** Halvings of a share: to a thousandth of what was asked. */
const HALVINGS = 10;

type Wanted = Pick<Aim, "stop" | "shorten" | "across" | "fullness">;

/** Looks at length, place and fullness one by one, the others as asked; then at all of them together. */
export function mostThatWorks(
  sewn: AsSewn,
  waysOf: (aim: Aim) => readonly Way[],
  aim: Aim,
  context: PointedDartContext,
): PointedDartFailure {
  const works = (wanted: Wanted): boolean => {
    const other = aimAt(sewn, wanted);
    return waysOf(other).some((way) => makeAnswer(sewn, way, other, context).ok);
  };
  const usual = waysOf(aim)[0];
  const made = usual === undefined ? null : makeAnswer(sewn, usual, aim, context);
  const because = made === null || made.ok ? null : made.failure.because;
  const fullnessAt = (share: number): Mm => sewn.fullness + share * (aim.fullness - sewn.fullness);
  const parts = [
    {
      what: "length",
      asked: aim.shorten,
      at: (share: number): Wanted => ({ ...aim, shorten: share * aim.shorten }),
      value: (share: number): Mm => share * aim.shorten,
    },
    {
      what: "aside",
      asked: aim.across,
      at: (share: number): Wanted => ({ ...aim, across: share * aim.across }),
      value: (share: number): Mm => share * aim.across,
    },
    {
      what: "fullness",
      asked: aim.fullness,
      at: (share: number): Wanted => ({ ...aim, fullness: fullnessAt(share) }),
      value: fullnessAt,
    },
  ] as const;
  for (const { what, asked, at, value } of parts) {
    if (works(at(0)))
      return {
        code: "pointedDart/too-much",
        what,
        asked,
        most: value(mostShare((share) => works(at(share)))),
        because,
      };
  }
  const all = (share: number): Wanted => ({
    stop: aim.stop,
    shorten: share * aim.shorten,
    across: share * aim.across,
    fullness: fullnessAt(share),
  });
  return {
    code: "pointedDart/together-too-much",
    share: works(all(0)) ? mostShare((share) => works(all(share))) : 0,
    because,
  };
}

/** The largest share that works, 0 working and 1 not; on the side that works. */
function mostShare(works: (share: number) => boolean): number {
  let [on, off] = [0, 1];
  for (let round = 0; round < HALVINGS; round += 1) {
    const middle = (on + off) / 2;
    if (works(middle)) on = middle;
    else off = middle;
  }
  return on;
}
