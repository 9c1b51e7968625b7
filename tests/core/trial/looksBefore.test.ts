/** Which earlier trials are read with one, and what has been altered since each: by hand, on records of a line. */
import { describe, expect, it } from "vitest";
import type { FitAlteration } from "../../../src/core/decisions/alteration";
import type { Decided } from "../../../src/core/decisions/decided";
import type { TakenAnswer, Trial } from "../../../src/core/decisions/trial";
import { looksBefore } from "../../../src/core/trial/looksBefore";
import { line, sewnAs, toile } from "../../support/trials";

const sewn = sewnAs("sideDart");
const fit = (id: string, amount: number): FitAlteration => ({ kind: "fit", id, fit: "swayBack", amount });
const decided = (...alterations: readonly FitAlteration[]): Decided => ({ ...sewn, alterations });
const trial = (id: string, own: Decided, more: Partial<Trial> = {}): Trial => ({
  ...toile("sideDart", [line("bust", "tight")], { id, ...more }),
  sewn: own,
});
const answer = (causes: readonly string[], alterations: readonly string[], half?: "left" | "right"): TakenAnswer => ({
  causes,
  because: [],
  alterations,
  ...(half === undefined ? {} : { half }),
});

/** Of each trial looked at: how many lines, and the causes altered since. */
const told = (one: Trial, trials: readonly Trial[]) =>
  looksBefore(one, trials).map(({ lines, checks, altered }) => [
    lines.length,
    checks,
    altered.map(({ rule, halves }) => [rule.name, halves]),
  ]);

const BOTH = ["left", "right"];

describe("the trials before one", () => {
  it("are those behind it in the list, and none where it is not in it", () => {
    const [now, before] = [trial("now", decided()), trial("before", decided(), { checks: { hemLevel: true } })];
    expect(told(now, [now, before])).toEqual([[1, { hemLevel: true }, []]]);
    expect(told(before, [now, before])).toEqual([]);
    expect(told(now, [before])).toEqual([]);
    expect(told(now, [])).toEqual([]);
  });

  it("are two at the most", () => {
    const all = ["a", "b", "c", "d"].map((id) => trial(id, decided()));
    for (const [at, one] of all.entries()) expect(told(one, all)).toHaveLength(Math.min(2, 3 - at));
  });

  it("have been altered by what was taken since, of the nearest first", () => {
    const first = trial("1", decided(), { taken: [answer(["swayBack"], ["sway"])] });
    const second = trial("2", decided(fit("sway", 12)), { taken: [answer(["neckGapes-left", "roundBack"], ["neck"])] });
    const third = trial("3", decided(fit("sway", 12), fit("neck", 8)));
    const neck = ["neckGapes", ["left"]];
    expect(told(third, [third, second, first])).toEqual([
      [1, {}, [neck, ["roundBack", BOTH]]],
      [1, {}, [neck, ["roundBack", BOTH], ["swayBack", BOTH]]],
    ]);
  });

  it("of an answer tried on one half, on that half; of a cause that is no row, none", () => {
    const taken = [answer(["armholeGapes", "narrowBack-right", "no such", "no-left", "left"], ["a"], "left")];
    const before = trial("1", decided(), { taken });
    expect(told(trial("2", decided(fit("a", 8))), [trial("2", decided(fit("a", 8))), before])[0]?.[2]).toEqual([
      ["armholeGapes", ["left"]],
      ["narrowBack", ["right"]],
    ]);
  });

  it("have nothing altered since where the same was sewn again", () => {
    const before = trial("1", decided(), { taken: [answer(["swayBack"], ["sway"])] });
    const now = trial("2", decided());
    expect(told(now, [now, before])).toEqual([[1, {}, []]]);
  });
});

describe("a garment that was changed by anything but answers is another one", () => {
  const taken = [answer(["swayBack"], ["sway"])];
  const isRead = (before: Decided, after: Decided, own: readonly TakenAnswer[] = taken): boolean => {
    const now = trial("2", after);
    return looksBefore(now, [now, trial("1", before, { taken: own })]).length > 0;
  };

  it("by an alteration put, changed or taken out", () => {
    expect(isRead(decided(), decided(fit("sway", 12)))).toBe(true);
    expect(isRead(decided(fit("sway", 5)), decided(fit("sway", 12)))).toBe(true);
    expect(isRead(decided(fit("sway", 5)), decided())).toBe(true);
    expect(isRead(decided(fit("own", 5)), decided(fit("own", 5), fit("sway", 9)))).toBe(true);
    expect(isRead(decided(), decided(fit("own", 12)))).toBe(false);
    expect(isRead(decided(fit("own", 5)), decided())).toBe(false);
    expect(isRead(decided(fit("own", 5)), decided(fit("own", 6)))).toBe(false);
    expect(isRead(decided(), decided(fit("sway", 12)), [])).toBe(false);
  });

  it("by another pattern, ease or picks; of an answer for the bust the picks are its own", () => {
    expect(isRead(decided(), { ...decided(), pattern: { ...sewn.pattern, style: "midriff" } })).toBe(false);
    expect(isRead(decided(), { ...decided(), picks: { baseSize: "14" } })).toBe(false);
    expect(isRead(decided(), { ...decided(), picks: { bustAlteration: 20 } }, [answer(["fullBust"], ["bust"])])).toBe(
      true,
    );
    expect(
      isRead(decided(), { ...decided(), picks: { halfCups: {} } }, [answer(["fullBust-left"], ["halfCups"])]),
    ).toBe(true);
  });

  it("and what lies behind that is not read either", () => {
    const [one, two, three] = [trial("1", decided()), trial("2", decided()), trial("3", decided(fit("own", 4)))];
    expect(looksBefore(three, [three, two, one])).toEqual([]);
    expect(looksBefore(two, [three, two, one])).toHaveLength(1);
  });
});
