/** The ledger a put at a time: what stays the very same, where what is new comes to stand, and under which name. */
import { describe, expect, it } from "vitest";
import type { Alteration, DartEndAlteration, FitAlteration, Half } from "../../../src/core/decisions/alteration";
import { LIMITS } from "../../../src/core/decisions/limits";
import type { TakenAnswer } from "../../../src/core/decisions/trial";
import type { Work } from "../../../src/core/decisions/work";
import { applyCommand } from "../../../src/core/plan/commands";
import { idOnHalf, put, putOrTakeOut, split, takeOut } from "../../../src/core/plan/putAlteration";
import { ref } from "../../support/dartRef";
import { sampleWork } from "../../support/sampleWork";

const on = (half: Half | undefined): { readonly half?: Half } => (half === undefined ? {} : { half });
const fit = (name: FitAlteration["fit"], amount: number, half?: Half, id: string = name): FitAlteration => ({
  kind: "fit",
  id,
  fit: name,
  amount,
  ...on(half),
});
const end = (shorten: number, half?: Half, id = "end"): DartEndAlteration => ({
  kind: "dartEnd",
  id,
  dart: ref("front", "waistDart"),
  shorten,
  across: 0,
  hold: "mouth",
  giveBack: {},
  ...on(half),
});
const named = (ledger: readonly Alteration[]): readonly string[] => ledger.map(({ id }) => id);
const full = (count: number): readonly Alteration[] =>
  Array.from({ length: count }, (_, at) => fit("swayBack", at, at % 2 === 0 ? "left" : "right", `${at}`));

describe("a put", () => {
  it("of what stands so already leaves the very same ledger", () => {
    const ledger = [fit("swayBack", 4), end(3, "left"), end(5, "right", "other")];
    expect(put(ledger, fit("swayBack", 4))).toBe(ledger);
    expect(put(ledger, end(5, "right", "other"))).toBe(ledger);
    expect(put(ledger, end(5, "right", "another"))).toEqual([ledger[0], ledger[1], end(5, "right", "another")]);
  });

  it("stands where the trade has it: lengths, darts, widths, edges, the last of its own", () => {
    const ledger = [fit("swayBack", 1), end(2), fit("armholeDepth", 3)];
    expect(named(put(ledger, fit("chestWidth", 4)))).toEqual(["swayBack", "end", "chestWidth", "armholeDepth"]);
    expect(named(put(ledger, fit("lengthBasque", 4)))).toEqual(["lengthBasque", "swayBack", "end", "armholeDepth"]);
    expect(named(put([fit("swayBack", 1)], end(2)))).toEqual(["swayBack", "end"]);
    expect(named(put([], end(2)))).toEqual(["end"]);
  });

  it("is done up to the most that a work holds", () => {
    const [almost, whole] = [full(LIMITS.alterations - 1), full(LIMITS.alterations)];
    expect(put(almost, end(2))).toHaveLength(LIMITS.alterations);
    expect(put(whole, end(2))).toBe(whole);
    // In place of another it needs no room.
    expect(put([...almost, end(2)], end(7))).toHaveLength(LIMITS.alterations);
    expect(put([...almost, end(2, "left")], end(7))).toHaveLength(LIMITS.alterations);
    expect(put([...almost, end(2)], end(7, "left"))).toHaveLength(LIMITS.alterations);
    const both = [...full(LIMITS.alterations - 2), end(2)];
    expect(put(both, end(7, "left"))).toHaveLength(LIMITS.alterations);
  });

  it("on the half that had none stands at the other's place: the left first", () => {
    const [before, after] = [fit("swayBack", 1), fit("armholeDepth", 3)];
    expect(put([before, end(4, "right"), after], end(6, "left", "l"))).toEqual([
      before,
      end(6, "left", "l"),
      end(4, "right"),
      after,
    ]);
    expect(put([before, end(4, "left"), after], end(6, "right", "r"))).toEqual([
      before,
      end(4, "left"),
      end(6, "right", "r"),
      after,
    ]);
  });

  it("of an older file's three of one thing joins none of them", () => {
    const three = [end(1), end(4, "left", "l"), end(6, "right", "r")];
    expect(put(three, end(4, "right", "r"))).toEqual([end(1), end(4, "left", "l"), end(4, "right", "r")]);
    expect(put(three, end(9, "left", "l"))).toEqual([end(1), end(9, "left", "l"), end(6, "right", "r")]);
    // One for both beside one of a half, alike: they add up, and are no pair.
    const two = [end(4), end(6, "left", "l")];
    expect(put(two, end(4, "left", "l"))).toEqual([end(4), end(4, "left", "l")]);
  });

  it("that comes out alike goes by the shorter name, of two as long by the first", () => {
    const joined = (first: string, last: string) =>
      named(put([end(4, "left", first), end(6, "right", last)], end(4, "right", last)));
    expect(joined("aaa", "bb")).toEqual(["bb"]);
    expect(joined("aa", "bbb")).toEqual(["aa"]);
    expect(joined("aaa", "bbb")).toEqual(["aaa"]);
    expect(joined("aaaa-left", "bbb-right")).toEqual(["aaaa"]);
  });
});

describe("a name", () => {
  it("that another has is its own with its half, or with the first number that is free", () => {
    const x = fit("swayBack", 3, undefined, "x");
    expect(named(put([x], end(2, undefined, "x")))).toEqual(["x", "x-2"]);
    expect(named(put([x, fit("armholeDepth", 3, undefined, "x-2")], end(2, undefined, "x")))).toEqual([
      "x",
      "x-3",
      "x-2",
    ]);
    expect(named(put([x], end(2, "left", "x")))).toEqual(["x", "x-left"]);
    expect(named(put([x, fit("armholeDepth", 3, undefined, "x-left")], end(2, "left", "x")))).toEqual([
      "x",
      "x-left-2",
      "x-left",
    ]);
  });

  it("is never longer than a name may be", () => {
    const long = "x".repeat(LIMITS.text);
    const kept = named(put([fit("swayBack", 3, undefined, long)], end(2, undefined, long)));
    expect(kept).toEqual([long, `${"x".repeat(LIMITS.text - 4)}-2`]);
    // With its half it would be too long: it is cut, and so another one.
    const almost = "y".repeat(LIMITS.text - 2);
    const half = named(put([fit("swayBack", 3, undefined, almost)], end(2, "left", almost)));
    expect(half).toEqual([almost, `${almost}-l`]);
  });

  it("of a half is told by its end alone", () => {
    expect([idOnHalf("a-left", undefined), idOnHalf("b-right", undefined), idOnHalf("left-a", undefined)]).toEqual([
      "a",
      "b",
      "left-a",
    ]);
    expect([idOnHalf("a-right", "left"), idOnHalf("a", "right")]).toEqual(["a-left", "a-right"]);
  });
});

describe("what is taken out", () => {
  it("of an older file's two on one half leaves both amounts of a fit, and of a dart's the one that was that half's own", () => {
    expect(takeOut([end(4), end(6, "right", "r")], "end", "left")).toEqual([end(6, "right", "r")]);
    expect(takeOut([fit("swayBack", 4), fit("swayBack", 6, "right", "r")], "swayBack", "left")).toEqual([
      fit("swayBack", 10, "right", "r"),
    ]);
  });

  it("is all of one thing where nothing is put for both, its own half else; what is not there is none", () => {
    const three = [end(1), end(4, "left", "l"), end(6, "right", "r"), fit("swayBack", 3)];
    expect(putOrTakeOut(three, end(0))).toEqual([fit("swayBack", 3)]);
    expect(putOrTakeOut([end(4, "left", "l"), end(6, "right", "r")], end(0, "left"))).toEqual([end(6, "right", "r")]);
    const ledger = [fit("swayBack", 3)];
    expect(putOrTakeOut(ledger, end(0))).toEqual(ledger);
    expect(takeOut(ledger, "none", "left")).toEqual(ledger);
  });

  it("is not split where it is for one half, or has its like on one", () => {
    const older = [end(4), end(6, "right", "r")];
    expect(split(older, "end", "left")).toBe(older);
    const almost = [end(4), ...full(LIMITS.alterations - 2)];
    expect(split(almost, "end", "left")).toHaveLength(LIMITS.alterations);
  });
});

it("answers taken to a trial are the last sixty, whatever an older file had", () => {
  const answer = (half: Half, cause: "swayBack" | "roundBack"): TakenAnswer => ({
    causes: [cause],
    because: [],
    alterations: [],
    half,
  });
  const begun = applyCommand(sampleWork, { kind: "beginTrial", id: "t", day: "2026-11-20" });
  const trials = begun.trials?.map((trial) => ({
    ...trial,
    taken: Array.from({ length: LIMITS.observations }, (_, at) => answer("left", at === 0 ? "roundBack" : "swayBack")),
  }));
  const work: Work = { ...begun, ...(trials === undefined ? {} : { trials }) };
  const taken = applyCommand(work, {
    kind: "takeTrialAnswer",
    trial: "t",
    answer: answer("right", "swayBack"),
    alterations: [],
  }).trials?.[0]?.taken;
  expect(taken).toHaveLength(LIMITS.observations);
  expect([taken?.[0], taken?.at(-1)]).toEqual([answer("left", "swayBack"), answer("right", "swayBack")]);
});
