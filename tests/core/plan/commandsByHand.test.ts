/** Commands at their limits, each by hand: days of the calendar, readings without a set, figures of sizes, what is seen of darts. */
import { describe, expect, it } from "vitest";
import type { Alteration, DartRedraw, Half } from "../../../src/core/decisions/alteration";
import { LIMITS } from "../../../src/core/decisions/limits";
import type { OwnPattern } from "../../../src/core/decisions/ownPattern";
import { redrawsOn, type SeenOfDart } from "../../../src/core/decisions/seenAtDart";
import type { Work } from "../../../src/core/decisions/work";
import { applyCommand, pickOn, relabelled, type Command } from "../../../src/core/plan/commands";
import { ref } from "../../support/dartRef";
import { sampleWork } from "../../support/sampleWork";

const testWork: Work = { ...sampleWork, alterations: [] };
const withAlterations = (...alterations: readonly Alteration[]): Work => ({ ...sampleWork, alterations });
const run = (work: Work, ...commands: readonly Command[]): Work => commands.reduce(applyCommand, work);
const isTaken = (command: Command, work: Work = testWork): boolean => applyCommand(work, command) !== work;

describe("a day", () => {
  const taken = (day: string): Command => ({ kind: "setTaken", set: 0, taken: day });
  const two = (count: number): string => String(count).padStart(2, "0");

  it("is one of the calendar, the last of each month among them", () => {
    const last = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    for (const [at, days] of last.entries()) {
      const day = (count: number): string => `2026-${two(at + 1)}-${two(count)}`;
      expect([day(0), day(1), day(days), day(days + 1)].map((one) => isTaken(taken(one)))).toEqual([
        false,
        true,
        true,
        false,
      ]);
    }
    expect(["2026-00-10", "2026-13-10"].map((day) => isTaken(taken(day)))).toEqual([false, false]);
  });

  it("in February is the 29th each fourth year, but for three of four hundredth ones", () => {
    const leap = ["1900", "2000", "2023", "2024", "2100", "2400"].map((year) => isTaken(taken(`${year}-02-29`)));
    expect(leap).toEqual([false, true, false, true, false, true]);
  });

  it.each(["12026-11-25", "x2026-11-25", "2026-11-255", "2026-11-25x", "2026-1-25", "2026-11-5", "226-11-25"])(
    "is written as yyyy-mm-dd and nothing else: %s",
    (day) => expect(isTaken(taken(day))).toBe(false),
  );

  it("is asked of trials and of sets alike", () => {
    const begun = applyCommand(testWork, { kind: "beginTrial", id: "t", day: "2026-11-25" });
    expect(begun.trials).toHaveLength(1);
    expect(isTaken({ kind: "beginTrial", id: "u", day: "2026-11-31" })).toBe(false);
    expect(isTaken({ kind: "setTrialDay", trial: "t", day: "2026-11-31" }, begun)).toBe(false);
    expect(isTaken({ kind: "setTrialDay", trial: "t", day: "2026-11-24" }, begun)).toBe(true);
    expect(isTaken({ kind: "setTrialDay", trial: "t", day: null }, begun)).toBe(true);
    expect(isTaken({ kind: "newTape", taken: "2026-11-31" })).toBe(false);
    expect(isTaken({ kind: "newTape", taken: "2026-11-30" })).toBe(true);
  });
});

describe("readings and sets", () => {
  it("are none where there is no set, and are the newest set's alone", () => {
    const bare: Work = { ...testWork, tapes: [] };
    expect(isTaken({ kind: "setMeasure", measure: "bustGirth", value: 900 }, bare)).toBe(false);
    const two: Work = {
      ...testWork,
      tapes: [{ readings: { bustGirth: [900, 904] } }, { taken: "2026-01-01", readings: { bustGirth: [880] } }],
    };
    const cleared = applyCommand(two, { kind: "clearMeasure", measure: "bustGirth" });
    expect(cleared.tapes).toEqual([{ readings: {} }, two.tapes[1]]);
    expect(applyCommand(two, { kind: "setMeasure", measure: "bustGirth", value: 910 }).tapes).toEqual([
      { readings: { bustGirth: [910] } },
      two.tapes[1],
    ]);
    expect(applyCommand(two, { kind: "setTaken", set: 1, taken: null }).tapes).toEqual([
      two.tapes[0],
      { readings: { bustGirth: [880] } },
    ]);
    expect(isTaken({ kind: "setTaken", set: 2, taken: "2026-01-02" }, two)).toBe(false);
    expect(isTaken({ kind: "removeTape", set: 2 }, two)).toBe(false);
    const few: Work = { ...testWork, tapes: Array.from({ length: LIMITS.tapes - 1 }, () => ({ readings: {} })) };
    expect(applyCommand(few, { kind: "newTape", taken: "2026-11-25" }).tapes).toHaveLength(LIMITS.tapes);
  });
});

describe("numbers and texts of a pattern", () => {
  const own = (at: number): OwnPattern => ({
    file: "a.svg",
    drawing: { format: "svg", unit: null, lines: [], points: [], writings: [], hiddenLayers: [] },
    pieces: [{ id: "p", name: "front", bustPoint: { size: "12", at: { x: at, y: 0 } } }],
  });

  it("are of a file's own units in its outlines, which may be small, and of millimetres elsewhere", () => {
    const set = (at: number): boolean => isTaken({ kind: "setOwnPattern", own: own(at) });
    const most = LIMITS.fileCoordinate;
    expect([LIMITS.length + 1, most, -most, most + 1, -most - 1].map(set)).toEqual([true, true, true, false, false]);
    const pattern = { ...testWork.pattern, own: own(most) };
    expect(isTaken({ kind: "setPattern", pattern })).toBe(true);
    const ease = { bust: LIMITS.length + 1, waist: 40, hip: 50 };
    expect(isTaken({ kind: "setPattern", pattern: { ...pattern, ease } })).toBe(false);
  });

  it("are cut where they are too long, its name, its sizes and its cups", () => {
    const long = "x".repeat(LIMITS.text + 1);
    const [size] = testWork.pattern.chart.sizes;
    if (size === undefined) throw new Error("no size");
    const chart = {
      ...testWork.pattern.chart,
      sizes: Array.from({ length: LIMITS.rows + 1 }, () => ({ ...size, label: long })),
      cups: Array.from({ length: LIMITS.rows + 1 }, () => ({ label: long, difference: 50 })),
    };
    const { pattern } = applyCommand(testWork, {
      kind: "setPattern",
      pattern: { ...testWork.pattern, name: long, chart },
    });
    expect([pattern.name.length, pattern.chart.sizes.length, pattern.chart.cups.length]).toEqual([
      LIMITS.text,
      LIMITS.rows,
      LIMITS.rows,
    ]);
    expect([pattern.chart.sizes[0], pattern.chart.cups[0]].map((row) => row?.label.length)).toEqual([
      LIMITS.text,
      LIMITS.text,
    ]);
    const { cups } = applyCommand(testWork, { kind: "setCups", cups: chart.cups }).pattern.chart;
    expect([cups.length, cups[0]?.label.length]).toEqual([LIMITS.rows, LIMITS.text]);
  });

  it("style, strap and length are each set by itself", () => {
    const work = run(
      testWork,
      { kind: "setStyle", style: "midriff" },
      { kind: "setStrap", strap: "thin" },
      { kind: "setLength", length: "waist" },
    );
    expect(work).toEqual({
      ...testWork,
      pattern: { ...testWork.pattern, style: "midriff", strap: "thin", length: "waist" },
    });
    expect(isTaken({ kind: "setStyle", style: "sideDart" })).toBe(false);
  });
});

describe("figures of a size", () => {
  const put = (work: Work, size: string | null, value: number | null): Work =>
    applyCommand(work, { kind: "setPrintedLength", measure: "acrossBack", size, value });
  const rows = (...labels: readonly string[]) =>
    labels.map((label, at) => ({ label, bust: 800 + 40 * at, waist: 620 + 40 * at, hip: 880 + 40 * at }));
  const said = (work: Work): unknown => work.pattern.lengths;

  it("are no more than sizes, and those that are there can still be changed or taken out", () => {
    const full = Array.from({ length: LIMITS.rows }, (_, at) => `${at}`).reduce(
      (work, label) => put(work, label, 350),
      testWork,
    );
    expect(put(full, "more", 350)).toBe(full);
    expect(put(full, "7", 360).pattern.lengths?.acrossBack?.bySize?.["7"]).toBe(360);
    expect(Object.keys(put(full, "7", null).pattern.lengths?.acrossBack?.bySize ?? {})).toHaveLength(LIMITS.rows - 1);
    expect(put(full, null, 340).pattern.lengths?.acrossBack?.all).toBe(340);
    expect(put(testWork, "more", null)).toBe(testWork);
    expect(put(testWork, "x".repeat(LIMITS.text), 350)).not.toBe(testWork);
  });

  it("go by their label: what the chart never had stays, what it lost goes, and other lengths stay as they were", () => {
    const chart = { ...testWork.pattern.chart, sizes: rows("a", "b", "c") };
    const lengths = {
      acrossBack: { all: 340, bySize: { a: 350, z: 355 } },
      backWaistLength: { bySize: { c: 400 } },
      shoulderLength: { all: 120 },
    };
    const work: Work = { ...testWork, pattern: { ...testWork.pattern, chart, lengths } };
    const after = (...labels: readonly string[]) =>
      said(applyCommand(work, { kind: "setSizes", sizes: rows(...labels) }));
    expect(after("b", "c")).toEqual({
      acrossBack: { all: 340, bySize: { z: 355 } },
      backWaistLength: { bySize: { c: 400 } },
      shoulderLength: { all: 120 },
    });
    expect(after("a", "b")).toEqual({
      acrossBack: { all: 340, bySize: { a: 350, z: 355 } },
      shoulderLength: { all: 120 },
    });
    // One line renamed takes its figure along; two at once are other lines.
    expect(after("a", "b", "d")).toEqual({ ...lengths, backWaistLength: { bySize: { d: 400 } } });
    expect(after("x", "b", "d")).toEqual({
      acrossBack: { all: 340, bySize: { z: 355 } },
      shoulderLength: { all: 120 },
    });
    const [kept] = [relabelled(lengths, rows("a", "b", "c"), rows("a", "m", "c"))];
    expect(kept).toBe(lengths);
  });

  it("a pick so far out that it could not be kept goes when it moves", () => {
    const on = (size: number) => pickOn("waist", size, rows("a", "b"), rows("z", "a", "b"));
    expect(on(LIMITS.length - 1)).toEqual({ waist: LIMITS.length });
    expect(on(LIMITS.length - 0.5)).toEqual({});
    // Of a chart of one line, or of none, there are no two to lie between.
    expect(pickOn("waist", 0.5, rows("a"), rows("b", "a"))).toEqual({});
    expect(pickOn("waist", 0.5, [], rows("b", "a"))).toEqual({});
    expect(pickOn("waist", 0, rows("a", "b", "c"), rows("c", "b"))).toEqual({});
  });
});

describe("what is seen of a dart", () => {
  const dart = ref("front", "waistDart");
  const redraw = (shorten: number, half?: Half): DartRedraw => ({
    kind: "dartEnd",
    id: half === undefined ? "end" : `end-${half}`,
    dart,
    shorten,
    across: 0,
    hold: "mouth",
    giveBack: {},
    ...(half === undefined ? {} : { half }),
  });
  const seen = { pastBustPoint: 10, tooFarToSide: 0, pointed: "right" } as const;
  const see = (more: Partial<typeof seen> | { readonly tooFarToSide: number } | { readonly pastBustPoint: number }) =>
    ({ kind: "setSeen", dart, half: "left", seen: { ...seen, ...more } }) satisfies Command;

  it("is another thing by each of its parts", () => {
    const work = applyCommand(withAlterations(redraw(5)), see({}));
    expect(applyCommand(work, see({}))).toBe(work);
    expect(applyCommand(work, see({ tooFarToSide: 1 })).seen?.[0]?.tooFarToSide).toBe(1);
    expect(applyCommand(work, see({ pastBustPoint: 11 })).seen?.[0]?.pastBustPoint).toBe(11);
  });

  it("is of the toile as it was sewn then; an older file's of the ledger as it stands", () => {
    const older: SeenOfDart = { ...dart, half: "left", ...seen };
    const work: Work = { ...withAlterations(redraw(5)), seen: [older] };
    expect(applyCommand(work, see({ tooFarToSide: 1 })).seen).toEqual([
      { ...older, tooFarToSide: 1, sewn: [redraw(5)] },
    ]);
    const taken = applyCommand(work, {
      kind: "takeAnswer",
      dart,
      half: "left",
      seen,
      answer: "sideSeam",
      alterations: [redraw(9)],
    });
    expect(taken.seen).toEqual([{ ...older, sewn: [redraw(5)], taken: { answer: "sideSeam", redraws: [redraw(9)] } }]);
  });

  it("is answered on its half alone where that is asked, and on no other dart", () => {
    const back: Alteration = { ...redraw(3), id: "back", dart: ref("back", "waistDart") };
    const command = (alone: boolean): Command => ({
      kind: "takeAnswer",
      dart,
      half: "left",
      ...(alone ? { alone: true as const } : {}),
      seen,
      answer: "underarm",
      alterations: [redraw(9)],
    });
    const work = withAlterations(redraw(5), back);
    const alone = applyCommand(work, command(true));
    expect(redrawsOn(alone.alterations, dart, "left").map((one) => (one.kind === "dartEnd" ? one.shorten : 0))).toEqual(
      [9],
    );
    expect(
      redrawsOn(alone.alterations, dart, "right").map((one) => (one.kind === "dartEnd" ? one.shorten : 0)),
    ).toEqual([5]);
    expect(alone.alterations).toContain(back);
    const both = applyCommand(work, command(false));
    expect(both.alterations).toEqual([back, redraw(9)]);
    expect(both.seen?.map(({ half }) => half)).toEqual(["left"]);
  });

  it("leaves the dart as it is on the other half where one half is redrawn", () => {
    const replace = (half: Half | undefined, ...alterations: readonly DartRedraw[]): Command => ({
      kind: "replaceRedraws",
      dart,
      ...(half === undefined ? {} : { half }),
      alterations,
    });
    const work = withAlterations(redraw(5, "left"), redraw(7, "right"));
    expect(applyCommand(work, replace("left")).alterations).toEqual([redraw(7, "right")]);
    expect(applyCommand(work, replace(undefined)).alterations).toEqual([]);
    expect(applyCommand(work, replace(undefined, redraw(2))).alterations).toEqual([redraw(2)]);
    expect(applyCommand(withAlterations(redraw(5)), replace("right")).alterations).toEqual([
      { ...redraw(5), half: "left" },
    ]);
  });

  it("is given back alike by all of its redraws, on the half that is said", () => {
    const give = (half?: Half): Command => ({
      kind: "setGiveBack",
      dart,
      ...(half === undefined ? {} : { half }),
      giveBack: { sideSeam: 1 },
    });
    const work = withAlterations(redraw(5, "left"), redraw(7, "right"));
    const shares = (of: Work) => of.alterations.map((one) => ("giveBack" in one ? one.giveBack : null));
    expect(shares(applyCommand(work, give()))).toEqual([{ sideSeam: 1 }, { sideSeam: 1 }]);
    expect(shares(applyCommand(work, give("right")))).toEqual([{}, { sideSeam: 1 }]);
    const gather: Alteration = { kind: "dartGather", id: "g", dart };
    expect(applyCommand(withAlterations(gather), give()).alterations).toEqual([gather]);
    const share = (sideSeam: number): Command => ({ kind: "setGiveBack", dart, giveBack: { sideSeam } });
    expect([-0.01, 0, 1, 1.01].map((one) => isTaken(share(one), work))).toEqual([false, true, true, false]);
  });
});

describe("what could not be read", () => {
  const unread = (field: string, text = "?"): Command => ({ kind: "setUnread", field, text });

  it("is kept under names of usual length, and no more of them than a work holds", () => {
    expect([LIMITS.text, LIMITS.text + 1].map((long) => isTaken(unread("x".repeat(long))))).toEqual([true, false]);
    const almost: Work = {
      ...testWork,
      unread: Object.fromEntries(Array.from({ length: LIMITS.unread - 1 }, (_, at) => [`${at}`, "?"])),
    };
    expect(isTaken(unread("one more"), almost)).toBe(true);
    expect(isTaken(unread("0", "!"), { ...almost, unread: { ...almost.unread, last: "?" } })).toBe(true);
    expect(isTaken(unread("more"), { ...almost, unread: { ...almost.unread, last: "?" } })).toBe(false);
  });

  it("of standing alterations is left out up to as many as a ledger holds", () => {
    const keys = (count: number): Work => ({
      ...testWork,
      standingLeft: Array.from({ length: count }, (_, at) => `k${at}`),
    });
    const leave: Command = { kind: "leaveStanding", key: "more", isLeft: true };
    expect(isTaken(leave, keys(LIMITS.alterations - 1))).toBe(true);
    expect(isTaken(leave, keys(LIMITS.alterations))).toBe(false);
  });
});
