/** Comparisons of two versions, part by part and whole, where what differs was put there by hand. */
import { describe, expect, it } from "vitest";
import type { Alteration, Half } from "../../../src/core/decisions/alteration";
import type { Trial } from "../../../src/core/decisions/trial";
import type { Work } from "../../../src/core/decisions/work";
import { tapesOf } from "../../../src/core/measures/tape";
import { compareVersions, reasonsFor } from "../../../src/core/versions/compareVersions";
import { backInCopy, branchFrom, sewnAsNow, versionsOf } from "../../../src/core/versions/versionsOf";
import { planOf, ref, testWork, withAlterations } from "../../support/works";

const compared = (from: Work, to: Work) =>
  compareVersions({ decided: from, plan: planOf(from) }, { decided: to, plan: planOf(to) });
const picked = (picks: Work["picks"]): Work => ({ ...testWork, picks });
const bow = (amount: number, half?: Half): Alteration => ({
  kind: "dartEnd",
  id: `end ${half ?? ""}`,
  dart: ref("front", "waistDart"),
  shorten: amount,
  across: 0,
  hold: "mouth",
  giveBack: {},
  ...(half === undefined ? {} : { half }),
});

describe("two versions", () => {
  it("tell size, cup and bust of each", () => {
    const made = compared(
      picked({ baseSize: "12", cup: "C" }),
      picked({ baseSize: "14", cup: "B", bustAlteration: 18 }),
    );
    expect(made.baseSize).toEqual({ before: "12", after: "14" });
    expect(made.cups).toEqual([{ half: null, before: "C", after: "B" }]);
    expect(made.bust).toEqual({ before: 0, after: 18 });
  });

  it("tell the cups of the halves apart where they differ in either", () => {
    const uneven = picked({ baseSize: "12", cup: "B", halfCups: { right: "D" } });
    const even = picked({ baseSize: "12", cup: "B" });
    expect(compared(even, uneven).cups).toEqual([
      { half: "left", before: "B", after: "B" },
      { half: "right", before: "B", after: "D" },
    ]);
  });

  it("tell an ease that is wanted otherwise, the pattern's as none", () => {
    const wanted = (easeWanted: Work["easeWanted"]): Work => ({ ...testWork, easeWanted });
    expect(compared(wanted({ bust: 90, waist: 45 }), wanted({ bust: 90, hip: 60 })).ease).toEqual([
      { level: "waist", before: 45, after: null },
      { level: "hip", before: null, after: 60 },
    ]);
  });

  it("tell a level that one of them has not, without a difference", () => {
    const short: Work = { ...testWork, pattern: { ...testWork.pattern, length: "waist" } };
    const [full, less] = [planOf(testWork), planOf(short)];
    const rows = compareVersions({ decided: testWork, plan: full }, { decided: short, plan: less }).levels;
    expect(rows.map(({ level, by }) => [level, by])).toEqual([
      ["bust", 0],
      ["waist", 0],
      ["hip", null],
    ]);
    expect(rows[2]).toEqual({ level: "hip", before: full.levels[2], after: null, by: null });
    expect(compared(short, testWork).levels[2]).toMatchObject({ before: null, by: null });
    expect(compared(short, short).levels.map(({ level }) => level)).toEqual(["bust", "waist"]);
  });

  // Half a millimetre reads as nothing.
  it("tell measures that are other by what can be read, or that only one has", () => {
    const tape = (readings: Parameters<typeof tapesOf>[0]): Work => ({ ...testWork, tapes: tapesOf(readings) });
    const before = { bustGirth: 905, waistGirth: 752, hipGirth: 1034, upperChestGirth: 832, acrossBack: 350 };
    const after = { bustGirth: 905, waistGirth: 752.4, hipGirth: 1034.5, upperChestGirth: 831.5, shoulderLength: 120 };
    expect(compared(tape(before), tape(after)).measures.toSorted((a, b) => a.measure.localeCompare(b.measure))).toEqual(
      [
        { measure: "acrossBack", before: 350, after: null },
        { measure: "hipGirth", before: 1034, after: 1034.5 },
        { measure: "shoulderLength", before: null, after: 120 },
        { measure: "upperChestGirth", before: 832, after: 831.5 },
      ],
    );
  });
});

describe("darts of two versions", () => {
  const told = (from: Work, to: Work) =>
    compared(from, to).darts.map(({ ref: { piece, dart }, half, isChanged }) =>
      [piece, dart, ...(half === null ? [] : [half]), ...(isChanged ? ["changed"] : [])].join(" "),
    );
  const rest = ["back waistDart", "frontBasque waistDart", "backBasque waistDart"];

  it("stand in one row each where the halves are alike, changed or not", () => {
    expect(told(testWork, testWork)).toEqual(["front waistDart", "front sideDart", ...rest]);
    expect(told(testWork, withAlterations(bow(10)))).toEqual(["front waistDart changed", "front sideDart", ...rest]);
  });

  it("stand in a row for each half where they are not, and in one where both came out alike", () => {
    const [left, both] = [withAlterations(bow(10, "left")), withAlterations(bow(10, "left"), bow(4, "right"))];
    expect(told(testWork, left)).toEqual([
      "front waistDart left changed",
      "front waistDart right",
      "front sideDart",
      ...rest,
    ]);
    expect(told(left, both)).toEqual([
      "front waistDart left",
      "front waistDart right changed",
      "front sideDart",
      ...rest,
    ]);
    expect(told(left, testWork)[0]).toBe("front waistDart left changed");
  });

  it("that one of the versions has not stand after those of the newer", () => {
    const pivoted = withAlterations({
      kind: "dartPivot",
      id: "p",
      dart: ref("front", "sideDart"),
      to: "shoulder",
      share: 1,
    });
    expect(new Set(told(testWork, pivoted))).toEqual(
      new Set(["front waistDart", "front shoulderDart changed", ...rest, "front sideDart changed"]),
    );
    expect(told(testWork, pivoted).at(-1)).toBe("front sideDart changed");
    const rows = compared(testWork, pivoted).darts.filter(({ isChanged }) => isChanged);
    expect(rows.map(({ before, after }) => [before === null, after === null])).toEqual([
      [true, false],
      [false, true],
    ]);
    const onLeft = withAlterations({
      kind: "dartPivot",
      id: "p",
      dart: ref("front", "sideDart"),
      to: "shoulder",
      share: 1,
      half: "left",
    });
    // On the left the side dart went and a shoulder dart came; on the right all is as it was.
    const uneven = told(testWork, onLeft);
    expect(uneven.filter((one) => one.startsWith("front side"))).toEqual([
      "front sideDart left changed",
      "front sideDart right",
    ]);
    expect(uneven.filter((one) => one.startsWith("front shoulder"))).toEqual(["front shoulderDart left changed"]);
    // Gone on the left only in the older version: the row of the right half stands at the end.
    const back = told(onLeft, onLeft);
    expect(back.filter((one) => one.startsWith("front side"))).toEqual(["front sideDart right"]);
    expect(back.at(-1)).toBe("front sideDart right");
  });

  it("have their fullness told at one radius, the smaller: by the cone of their own angle", () => {
    // An end 60 mm further down leaves legs longer than the bust radius of 80 still; both are told at 80.
    const [row] = compared(testWork, withAlterations(bow(60))).darts;
    const cone = (angle: number): number => 80 * Math.sqrt(1 - (1 - angle / (2 * Math.PI)) ** 2);
    expect(row?.before?.fullness).toBeCloseTo(cone(row?.before?.angle ?? 0), 6);
    expect(row?.after?.fullness).toBeCloseTo(cone(row?.after?.angle ?? 0), 6);
    const narrow: Work = { ...testWork, bustRadius: 60 };
    const [less] = compared(testWork, narrow).darts;
    expect(less?.before?.fullness).toBeCloseTo((cone(less?.before?.angle ?? 0) * 60) / 80, 6);
    expect(less?.isChanged).toBe(false);
  });

  it.each(["legInner", "legOuter", "intake", "fullness"] as const)("are changed by %s alone", (figure) => {
    const plan = planOf(testWork);
    const by = (amount: number) => {
      const half = {
        ...plan.left,
        darts: plan.left.darts.map((dart) => ({
          ...dart,
          drawn: { ...dart.drawn, [figure]: dart.drawn[figure] + amount },
        })),
      };
      const to = { ...plan, left: half, right: half };
      const made = compareVersions({ decided: testWork, plan }, { decided: testWork, plan: to });
      return made.darts.every(({ isChanged }) => isChanged);
    };
    // Fullness follows from angle and radius, whatever is drawn.
    expect([by(0.4), by(0.6), by(-0.6)]).toEqual(figure === "fullness" ? [false, false, false] : [false, true, true]);
  });

  it.each([
    ["apex", "x"],
    ["apex", "y"],
    ["inner", "x"],
    ["inner", "y"],
  ] as const)("are changed by where %s lies along %s", (point, axis) => {
    const plan = planOf(testWork);
    const by = (amount: number) => {
      const half = {
        ...plan.left,
        darts: plan.left.darts.map((dart) => {
          const place = dart.drawn[point];
          return { ...dart, drawn: { ...dart.drawn, [point]: { ...place, [axis]: place[axis] + amount } } };
        }),
      };
      const to = { ...plan, left: half, right: half };
      const made = compareVersions({ decided: testWork, plan }, { decided: testWork, plan: to });
      return made.darts.every(({ isChanged }) => isChanged);
    };
    expect([by(0.4), by(0.6), by(-0.6)]).toEqual([false, true, true]);
  });
});

const trial = (id: string, more: Partial<Trial> = {}): Trial => ({ id, sewn: testWork, observations: [], ...more });

describe("reasons for a change", () => {
  const fold = { id: "fold" };
  const taken = (alterations: readonly string[], half?: Half) => ({
    causes: [],
    because: ["fold"],
    alterations,
    ...(half === undefined ? {} : { half }),
  });
  const [first, second] = [taken(["sway"], "left"), taken(["bust", "slope"])];
  const trials = [
    trial("three"),
    trial("two", { observations: [{ id: "other" }, fold], taken: [first, second] }),
    trial("one", { taken: [first] }),
  ];

  it("are the answers that name it, with their half, number and the lines of their own trial, the oldest first", () => {
    expect(reasonsFor(trials, [2, -1], ["sway", "none"])).toEqual([
      { trial: trials[2], number: 1, taken: first, half: "left", because: [] },
      { trial: trials[1], number: 2, taken: first, half: "left", because: [fold] },
    ]);
    expect(reasonsFor(trials, [2, 0], ["slope"])).toEqual([
      { trial: trials[1], number: 2, taken: second, half: null, because: [fold] },
    ]);
  });

  it("are none of the newer version itself, nor of before the older", () => {
    expect(reasonsFor(trials, [2, 1], ["sway"]).map(({ number }) => number)).toEqual([1]);
    expect(reasonsFor(trials, [1, 0], ["sway"]).map(({ number }) => number)).toEqual([2]);
    expect(reasonsFor(trials, [0, -1], ["sway"])).toEqual([]);
  });
});

describe("versions of a work", () => {
  const sewn: Work = { ...testWork, picks: { baseSize: "14" } };
  const { name: _name, invented: _invented, unit: _unit, paper: _paper, unread: _unread, ...decided } = sewn;
  const [one, two] = [trial("one", { sewn: decided }), trial("two", { sewn: withAlterations(bow(10)) })];
  const work: Work = { ...testWork, trials: [two, one], unread: { bust: "9o" } };

  it("have a key each, and are numbered from the oldest", () => {
    expect(versionsOf(work)).toEqual([
      { key: "now", trial: null, number: null, decided: work },
      { key: "trial-two", trial: two, number: 2, decided: two.sewn },
      { key: "trial-one", trial: one, number: 1, decided: one.sewn },
    ]);
    expect(versionsOf(testWork)).toEqual([{ key: "now", trial: null, number: null, decided: testWork }]);
  });

  it("are sewn as is decided now where one says the same, the newest of them", () => {
    expect(sewnAsNow(work)).toBeNull();
    expect(sewnAsNow(testWork)).toBeNull();
    expect(sewnAsNow({ ...sewn, trials: [two, one] })).toBe(one);
    const twice = trial("three", { sewn: decided });
    expect(sewnAsNow({ ...sewn, trials: [two, twice, one] })).toBe(twice);
  });

  it("go on in a work of their own with the trials up to theirs, or all of them, and nothing half typed", () => {
    const branch = branchFrom(work, one);
    expect([branch.picks, branch.trials, branch.unread]).toEqual([{ baseSize: "14" }, [one], {}]);
    expect(branchFrom(work, two).trials).toEqual([two, one]);
    const copy = backInCopy(work, one);
    expect([copy.picks, copy.trials, copy.unread, copy.name]).toEqual([{ baseSize: "14" }, [two, one], {}, "Test"]);
    expect([work.picks, work.unread]).toEqual([{}, { bust: "9o" }]);
  });
});
