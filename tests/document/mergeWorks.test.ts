/** Two versions of a work made one. What is expected follows from the three works alone: who changed what since the base. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { SizeRow } from "../../src/core/chart/sizeChart";
import type { Alteration } from "../../src/core/decisions/alteration";
import type { Collision } from "../../src/core/decisions/collision";
import { LIMITS } from "../../src/core/decisions/limits";
import type { Trial } from "../../src/core/decisions/trial";
import type { Work } from "../../src/core/decisions/work";
import { applyCommand, type Command } from "../../src/core/plan/commands";
import { blankPattern } from "../../src/document/blank";
import { mergeWorks, rebaseHistory, rebaseSteps } from "../../src/document/mergeWorks";
import { parseWork, writeWorkFile } from "../../src/document/workFile";
import { anyCommandOn } from "../support/arbitraryCommand";
import { anySize, anyWork } from "../support/arbitraryWork";
import { sampleWork } from "../support/sampleWork";
import { runsOf } from "../support/share";

const run = (work: Work, ...commands: readonly Command[]): Work => commands.reduce(applyCommand, work);

/** What is said to be the same, whatever the order in which it was entered. */
const text = (work: Work): string => writeWorkFile(work);

/** Changes of single lines of the chart: a figure, one more size, one less. */
function lineEdit({ pattern: { chart } }: Work): fc.Arbitrary<Command> {
  const { sizes } = chart;
  const set = (rows: readonly SizeRow[]): Command => ({ kind: "setSizes", sizes: rows });
  const added = fc
    .tuple(fc.nat(sizes.length), anySize, fc.constantFrom("new 1", "new 2"))
    .map(([at, row, label]) => set(sizes.toSpliced(at, 0, { ...row, label })));
  if (sizes.length === 0) return added;
  const at = fc.nat(sizes.length - 1);
  return fc.oneof(
    added,
    at.map((gone) => set(sizes.toSpliced(gone, 1))),
    fc
      .tuple(at, fc.integer({ min: 500, max: 503 }))
      .map(([here, waist]) => set(sizes.map((row, index) => (index === here ? { ...row, waist } : row)))),
  );
}

interface Three {
  readonly base: Work;
  readonly mine: Work;
  readonly theirs: Work;
}

const changed = (base: Work, other: Work): fc.Arbitrary<Work> =>
  fc
    .array(fc.oneof({ weight: 6, arbitrary: anyCommandOn(base, other) }, { weight: 1, arbitrary: lineEdit(base) }), {
      maxLength: 8,
    })
    .map((commands) => run(base, ...commands));

/** Two works that went apart; the other one often comes from a file, and shares nothing. */
const anyThree: fc.Arbitrary<Three> = fc
  .tuple(anyWork, anyWork, anyWork)
  .chain(([base, one, other]) =>
    fc.tuple(
      fc.constant(base),
      fc.oneof({ weight: 9, arbitrary: changed(base, one) }, { weight: 1, arbitrary: fc.constant(one) }),
      fc.oneof({ weight: 9, arbitrary: changed(base, other) }, { weight: 1, arbitrary: fc.constant(other) }),
      fc.boolean(),
    ),
  )
  .map(([base, mine, theirs, isShared]) => ({ base, mine, theirs: isShared ? theirs : structuredClone(theirs) }));

const areOwn = (list: readonly string[]): boolean => new Set(list).size === list.length;

/** Everything a work says, each by what it is found by. */
function facts(work: Work): ReadonlyMap<string, string> {
  const {
    tapes,
    pattern,
    easeWanted,
    picks,
    alterations,
    seen = [],
    allowances = {},
    trusted = {},
    trials = [],
    standingLeft = [],
    unread,
    ...single
  } = work;
  const { chart, ease, name, lengths = {}, ...kind } = pattern;
  const found: (readonly [string, unknown])[] = [
    ...Object.entries(single),
    ["tapes", tapes.length],
    ...tapes.flatMap(({ taken, readings }, set) => [
      [`taken ${set}`, taken] as const,
      ...Object.entries(readings).map(([measure, list]) => [`measure ${set} ${measure}`, list] as const),
    ]),
    ["patternName", name],
    ...Object.entries(kind),
    ...Object.entries(ease).map(([at, mm]) => [`patternEase ${at}`, mm] as const),
    ["draftedDifference", chart.draftedDifference],
    ...Object.entries(lengths).flatMap(([measure, { all, bySize = {} }]) => [
      ...(all === undefined ? [] : [[`printedLength ${measure}`, all] as const]),
      ...Object.entries(bySize).map(([size, mm]) => [`printedLength ${measure} in ${size}`, mm] as const),
    ]),
    ...chart.sizes.flatMap(({ label, ...figures }) =>
      Object.entries(figures).map(([column, mm]) => [`size ${label} / ${column}`, mm] as const),
    ),
    ...chart.cups.map(({ label, difference }) => [`cup ${label} / difference`, difference] as const),
    ...Object.entries(easeWanted).map(([at, mm]) => [`easeWanted ${at}`, mm] as const),
    ...Object.entries(picks).map(([pick, value]) => [`pick ${pick}`, value] as const),
    ...alterations.map((one) => [`alteration ${one.id}`, one] as const),
    ...seen.map(({ piece, dart, half, ...what }) => [`seen ${piece} ${dart} ${half}`, what] as const),
    ...Object.entries(allowances).map(([seam, mm]) => [`allowance ${seam}`, mm] as const),
    ...Object.entries(trusted).map(([measure, mm]) => [`trusted ${measure}`, mm] as const),
    ...trials.flatMap(factsOfTrial),
    ...standingLeft.map((key) => [`standingLeft ${key}`, true] as const),
    ...Object.entries(unread).map(([field, typed]) => [`unread ${field}`, typed] as const),
  ];
  return new Map(found.map(([key, value]) => [key, sortedJson(value)]));
}

/** Its parts, and each line, length, tick and answer by itself. */
function factsOfTrial(trial: Trial): readonly (readonly [string, unknown])[] {
  const { observations, measured = {}, checks = {}, taken = [], ...parts } = trial;
  const fact = (part: string, what: string, value: unknown) => [`trial ${trial.id} / ${part} ${what}`, value] as const;
  return [
    ...Object.entries(parts).map(([part, value]) => fact(part, "", value)),
    ...observations.map((one) => fact("observations", one.id, one)),
    ...Object.entries(measured).map(([length, mm]) => fact("measured", length, mm)),
    ...Object.entries(checks).map(([check, is]) => fact("checks", check, is)),
    ...taken.map((one) => fact("taken", sortedJson(one), true)),
  ];
}

const sortedJson = (value: unknown): string =>
  JSON.stringify(value, (_, part: unknown) =>
    typeof part === "object" && part !== null && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).toSorted(([a], [b]) => (a < b ? -1 : 1)))
      : part,
  );

const placeOf = (one: Alteration): string =>
  one.kind === "fit" ? `${one.fit} ${one.half}` : `${one.kind} ${one.dart.piece} ${one.dart.dart}`;

/** Whether a collision names a fact. */
function names(collision: Collision, key: string, { base, mine, theirs }: Three): boolean {
  const begins = (...starts: readonly string[]): boolean => starts.some((start) => key.startsWith(start));
  switch (collision.of) {
    case "tapes":
      return begins("tapes", "taken ", "measure ");
    case "taken":
      return key === `taken ${collision.set}`;
    case "measure":
      return key === `measure ${collision.set} ${collision.measure}`;
    case "pattern":
      return (
        begins("pattern", "size ", "cup ", "pick ", "printedLength ") ||
        ["draftedDifference", "length", "closure", "style", "strap"].includes(key)
      );
    case "patternEase":
    case "easeWanted":
      return key === `${collision.of} ${collision.level}`;
    // What a pick lies between may be no neighbours any more: then one side's pattern stands, picks and all.
    case "sizes":
      return (
        begins("pattern", "size ", "cup ", "pick ", "printedLength ") ||
        ["draftedDifference", "length", "closure", "style", "strap"].includes(key)
      );
    case "printedLength":
      return key === `printedLength ${collision.measure}${collision.size === null ? "" : ` in ${collision.size}`}`;
    case "cups":
      return begins("cup ");
    case "size":
    case "cup":
      // A line renamed has all its figures under another label.
      return begins(
        `${collision.of} ${collision.label} / ${collision.column === "label" ? "" : (collision.column ?? "")}`,
      );
    case "pick":
      return key === `pick ${collision.pick}`;
    case "alterations":
      return begins("alteration ");
    case "alteration": {
      const place = placeOf(collision.alteration);
      const twins = [base, mine, theirs]
        .flatMap(({ alterations }) => alterations)
        .filter((one) => one.id === collision.alteration.id || placeOf(one) === place);
      return twins.some(({ id }) => key === `alteration ${id}`);
    }
    case "allowance":
      return key === `allowance ${collision.seam}`;
    case "trusted":
      return key === `trusted ${collision.measure}`;
    case "seen":
      return collision.dart === null
        ? begins("seen ")
        : key === `seen ${collision.dart.piece} ${collision.dart.dart} ${collision.dart.half}`;
    case "trial": {
      const { trial, part } = collision;
      if (trial === null) return begins("trial ");
      // A trial is a base only as long as it is kept.
      const parts = part === "base" ? ["base", "verdict"] : [part ?? ""];
      return begins(...parts.map((one) => `trial ${trial.id} / ${one}`));
    }
    case "observation":
      return key === `trial ${collision.trial.id} / observations ${collision.observation.id}`;
    case "unread":
      return collision.field === null ? begins("unread ") : key === `unread ${collision.field}`;
    default:
      return key === collision.of;
  }
}

const labelsOf = ({ pattern }: Work): readonly string[] => pattern.chart.sizes.map(({ label }) => label);

const cupsOf = ({ pattern }: Work): readonly string[] => pattern.chart.cups.map(({ label }) => label);
const isRenamed = (before: readonly string[], after: readonly string[]): boolean =>
  before.length === after.length && after.some((label) => !before.includes(label));

/** Facts that go by where a line stands; asked by themselves below. */
const goesByLines = (key: string): boolean => key === "pick waist" || key === "pick hip";

describe("mergeWorks, whatever the works", () => {
  it("takes what was changed by one side alone", () => {
    fc.assert(
      fc.property(anyWork, anyWork, fc.boolean(), (base, other, isCopy) => {
        const again = isCopy ? structuredClone(base) : base;
        expect(mergeWorks(base, other, again)).toEqual({ work: other, collisions: [] });
        expect(mergeWorks(base, again, other)).toEqual({ work: other, collisions: [] });
        expect(mergeWorks(base, other, isCopy ? structuredClone(other) : other)).toEqual({
          work: other,
          collisions: [],
        });
      }),
    );
  });

  it("has every change in the result, or names it, and leaves the rest as it was", () => {
    fc.assert(
      fc.property(anyThree, (three) => {
        const { base, mine, theirs } = three;
        const { work, collisions } = mergeWorks(base, mine, theirs);
        const [before, own, other, result] = [base, mine, theirs, work].map(facts);
        if (before === undefined || own === undefined || other === undefined || result === undefined)
          throw new Error("four");
        const isSameChart = [mine, theirs, work].every((one) => labelsOf(one).join("\n") === labelsOf(base).join("\n"));
        // Lines renamed, or that cannot be told apart, go by their place.
        const areLinesOwn = [labelsOf, cupsOf].every((of) =>
          [base, mine, theirs].every((one) => areOwn(of(one)) && !isRenamed(of(base), of(one))),
        );
        for (const key of new Set([before, own, other, result].flatMap((map) => [...map.keys()]))) {
          if (goesByLines(key) && !isSameChart) continue;
          if (!areLinesOwn && /^(?:size |cup |printedLength \w+ in )/.test(key)) continue;
          const [b, m, t, r] = [before, own, other, result].map((map) => map.get(key));
          const named = collisions.filter((one) => names(one, key, three));
          if (named.length > 0 && r === t) continue;
          const isTwinKept =
            key.startsWith("alteration ") &&
            r === undefined &&
            work.alterations.some(
              (one) => m?.replace(/"id":"[^"]*"/, "") === sortedJson(one).replace(/"id":"[^"]*"/, ""),
            );
          if (isTwinKept) continue;
          expect({ key, value: r, named: named.length }).toEqual({ key, value: m === b ? t : m, named: named.length });
          expect(m === b || t === b || m === t).toBe(true);
        }
      }),
      { numRuns: runsOf(600) },
    );
  }, 240_000);

  it("names nothing that only one side has changed", () => {
    fc.assert(
      fc.property(anyThree, (three) => {
        const { base, mine, theirs } = three;
        const [before, own, other] = [base, mine, theirs].map(facts);
        const isChanged = (collision: Collision, now: ReadonlyMap<string, string> | undefined): boolean =>
          [...new Set([...(before?.keys() ?? []), ...(now?.keys() ?? [])])].some(
            (key) => names(collision, key, three) && before?.get(key) !== now?.get(key),
          );
        // Orders, and lines that cannot be told apart, are no facts.
        const lists = ({ pattern, picks, alterations, trials }: Work): string =>
          sortedJson([pattern, picks, alterations, trials]);
        for (const one of mergeWorks(base, mine, theirs).collisions) {
          // A pick that goes by lines collides with the lines themselves, too.
          const isByLines = one.of === "pick" && (one.pick === "waist" || one.pick === "hip");
          const isOfOrder =
            isByLines ||
            one.of === "alterations" ||
            one.of === "trial" ||
            one.of === "sizes" ||
            one.of === "cups" ||
            one.of === "pattern";
          expect([one, isChanged(one, own) || (isOfOrder && lists(mine) !== lists(base))]).toEqual([one, true]);
          expect([one, isChanged(one, other) || (isOfOrder && lists(theirs) !== lists(base))]).toEqual([one, true]);
        }
      }),
      { numRuns: runsOf(600) },
    );
  }, 240_000);

  it("gives a work that can be saved, and changes none of those it was given", () => {
    fc.assert(
      fc.property(anyThree, ({ base, mine, theirs }) => {
        const before = JSON.stringify([base, mine, theirs]);
        expect(parseWork(mergeWorks(base, mine, theirs).work)).toMatchObject({ ok: true });
        expect(JSON.stringify([base, mine, theirs])).toBe(before);
      }),
      { numRuns: runsOf(300) },
    );
  }, 240_000);

  it("is the same the other way round where nothing collides, but for the order of what both have added", () => {
    const unordered = (work: Work): unknown => {
      const { sizes, cups } = work.pattern.chart;
      const sorted = (list: readonly unknown[]) => list.map(sortedJson).toSorted();
      const pattern = { ...work.pattern, chart: { ...work.pattern.chart, sizes: sorted(sizes), cups: sorted(cups) } };
      return { ...work, pattern, alterations: sorted(work.alterations.map((one) => ({ ...one, id: "" }))) };
    };
    let asked = 0;
    fc.assert(
      fc.property(anyThree, ({ base, mine, theirs }) => {
        const one = mergeWorks(base, mine, theirs);
        const other = mergeWorks(base, theirs, mine);
        expect(one.collisions.length === 0).toBe(other.collisions.length === 0);
        if (one.collisions.length > 0) return;
        asked += 1;
        expect(unordered(one.work)).toEqual(unordered(other.work));
      }),
      { numRuns: runsOf(600) },
    );
    expect(asked).toBeGreaterThan(50);
  }, 240_000);

  it("keeps what is not merged the very same object", () => {
    const mine = run(sampleWork, { kind: "setName", name: "Mine" });
    const theirs = structuredClone(run(sampleWork, { kind: "setUnit", unit: "in" }));
    const { work } = mergeWorks(sampleWork, mine, theirs);
    expect(work.pattern).toBe(mine.pattern);
    expect(work.alterations).toBe(mine.alterations);
    expect(mergeWorks(sampleWork, mine, sampleWork).work).toBe(mine);
    expect(mergeWorks(sampleWork, sampleWork, theirs).work).toBe(theirs);
  });
});

/** Commands that have nothing to do with one another. */
const GROUPS: readonly (readonly Command[])[] = [
  [{ kind: "setName", name: "Another" }],
  [{ kind: "setWearer", name: "Somebody invented" }],
  [{ kind: "setUnit", unit: "in" }],
  [{ kind: "setPaper", paper: "Letter" }],
  [{ kind: "setAge", age: 61 }],
  [{ kind: "setMeasure", measure: "waistGirth", value: 744 }],
  [{ kind: "clearMeasure", measure: "bustPointWidth" }],
  [{ kind: "setReading", measure: "height", at: 0, value: 1702 }],
  [{ kind: "setTaken", set: 0, taken: "2026-11-25" }],
  [{ kind: "setPatternName", name: "Another pattern" }],
  [{ kind: "setDraftedDifference", value: 60 }],
  [{ kind: "setPatternEase", ease: { bust: 80, waist: 44, hip: 50 } }],
  [{ kind: "setPatternEase", ease: { bust: 90, waist: 40, hip: 50 } }],
  [{ kind: "setLength", length: "waist" }],
  [{ kind: "setClosure", closure: { place: "side", belowWaist: 100 } }],
  [{ kind: "setStyle", style: "midriff" }],
  [{ kind: "setStrap", strap: "thin" }],
  [{ kind: "setEaseWanted", ease: { bust: 70 } }],
  [{ kind: "setEaseWanted", ease: { hip: 10 } }],
  [{ kind: "setBustRadius", value: 75 }],
  [{ kind: "setPick", picks: { cup: "D" } }],
  [{ kind: "setPick", picks: { baseSize: "14" } }],
  [{ kind: "setPick", picks: { waist: 2.5 } }],
  [{ kind: "removeAlteration", id: "end-1" }],
  [{ kind: "putAlteration", alteration: { kind: "fit", id: "sway", fit: "swayBack", amount: 12 } }],
  [{ kind: "putAlteration", alteration: { kind: "fit", id: "long", fit: "lengthBelowBust", amount: -8 } }],
  [
    {
      kind: "setSeen",
      dart: { piece: "front", dart: "shoulderDart" },
      half: "left",
      seen: { pastBustPoint: 9, tooFarToSide: 0, pointed: "flat" },
    },
  ],
  [
    {
      kind: "setSeen",
      dart: { piece: "front", dart: "shoulderDart" },
      half: "right",
      seen: { pastBustPoint: 4, tooFarToSide: 2, pointed: "right" },
    },
  ],
  [{ kind: "setAllowance", seam: "hem", value: 40 }],
  [{ kind: "setAllowance", seam: "side", value: 25 }],
  [{ kind: "setSheetFormat", format: "A0 roll" }],
  [{ kind: "setPrinterMargin", value: 8 }],
  [{ kind: "setUnread", field: "a", text: "?" }],
  [{ kind: "setUnread", field: "b", text: "!" }],
];

describe("changes of different things", () => {
  it("never collide, and both are in the result", () => {
    const sides = fc
      .shuffledSubarray([...GROUPS], { minLength: 2 })
      .chain((groups) =>
        fc.nat(groups.length).map((at) => [groups.slice(0, at).flat(), groups.slice(at).flat()] as const),
      );
    fc.assert(
      fc.property(sides, ([first, second]) => {
        const eases = [first, second].filter((list) => list.some(({ kind }) => kind === "setPatternEase"));
        // One after the other the two set whole eases; apart each changes one level.
        fc.pre(
          eases.length < 2 &&
            ![first, second].some((list) => list.filter(({ kind }) => kind === "setPatternEase").length > 1),
        );
        const { work, collisions } = mergeWorks(sampleWork, run(sampleWork, ...first), run(sampleWork, ...second));
        expect(collisions).toEqual([]);
        expect(text(work)).toBe(text(run(sampleWork, ...first, ...second)));
      }),
      { numRuns: runsOf(500) },
    );
  }, 240_000);

  it("may be levels of the pattern's ease", () => {
    const mine = run(sampleWork, { kind: "setPatternEase", ease: { bust: 80, waist: 44, hip: 50 } });
    const theirs = run(sampleWork, { kind: "setPatternEase", ease: { bust: 90, waist: 40, hip: 50 } });
    const merged = mergeWorks(sampleWork, mine, theirs);
    expect(merged.collisions).toEqual([]);
    expect(merged.work.pattern.ease).toEqual({ bust: 90, waist: 44, hip: 50 });
  });
});

const sizesOf = ({ pattern }: Work): readonly SizeRow[] => pattern.chart.sizes;
const setSizes = (change: (rows: readonly SizeRow[]) => readonly SizeRow[]): Work =>
  run(sampleWork, { kind: "setSizes", sizes: change(sizesOf(sampleWork)) });
const edited = (label: string, part: Partial<SizeRow>) => (rows: readonly SizeRow[]) =>
  rows.map((row) => (row.label === label ? { ...row, ...part } : row));

describe("the chart", () => {
  it("takes figures of one line from both sides, and the label that one of them gave it", () => {
    const mine = setSizes(edited("12", { label: "12 (S)", waist: 705 }));
    const theirs = setSizes(edited("12", { hip: 950, finishedBust: 990 }));
    const { work, collisions } = mergeWorks(sampleWork, mine, theirs);
    expect(collisions).toEqual([]);
    expect(sizesOf(work)[2]).toEqual({ label: "12 (S)", bust: 880, waist: 705, hip: 950, finishedBust: 990 });
    expect(sizesOf(work)).toHaveLength(10);
  });

  it("takes what the pattern says of a size along with the line that the other side renamed", () => {
    const said = run(sampleWork, { kind: "setPrintedLength", measure: "backWaistLength", size: "12", value: 410 });
    const renamed = setSizes(edited("12", { label: "ZZ" }));
    for (const [mine, theirs] of [
      [said, renamed],
      [renamed, said],
    ] as const) {
      const { work, collisions } = mergeWorks(sampleWork, mine, theirs);
      expect(collisions).toEqual([]);
      expect(sizesOf(work)[2]?.label).toBe("ZZ");
      expect(work.pattern.lengths).toEqual({ backWaistLength: { bySize: { ZZ: 410 } } });
    }
  });

  it("names the figure that both changed, by the line's label as it was, and has theirs", () => {
    const mine = setSizes(edited("12", { label: "12a", waist: 705 }));
    const theirs = setSizes(edited("12", { waist: 695 }));
    const { work, collisions } = mergeWorks(sampleWork, mine, theirs);
    expect(collisions).toEqual([{ of: "size", label: "12", column: "waist" }]);
    expect(sizesOf(work)[2]).toMatchObject({ label: "12a", waist: 695 });
  });

  it("takes lines put in by either side, in the order of the sizes where they lie in one gap", () => {
    const added = (bust: number, label: string) => (rows: readonly SizeRow[]) =>
      [...rows, { label, bust, waist: bust - 180, hip: bust + 60 }].toSorted((a, b) => a.bust - b.bust);
    const mine = setSizes(added(1200, "28"));
    const theirs = setSizes((rows) => added(1240, "30")(added(760, "6")(rows)));
    for (const [one, other] of [
      [mine, theirs],
      [theirs, mine],
    ] as const) {
      const { work, collisions } = mergeWorks(sampleWork, one, other);
      expect(collisions).toEqual([]);
      expect(labelsOf(work)).toEqual(["6", "8", "10", "12", "14", "16", "18", "20", "22", "24", "26", "28", "30"]);
    }
  });

  it("names a line that one took out and the other changed", () => {
    const without = setSizes((rows) => rows.filter(({ label }) => label !== "12"));
    const changedLine = setSizes(edited("12", { waist: 705 }));
    const collision = { of: "size", label: "12", column: null };
    const kept = mergeWorks(sampleWork, without, changedLine);
    expect(kept.collisions).toEqual([collision]);
    expect(labelsOf(kept.work)).toContain("12");
    const gone = mergeWorks(sampleWork, changedLine, without);
    expect(gone.collisions).toEqual([collision]);
    expect(labelsOf(gone.work)).not.toContain("12");
  });

  it("has no two lines of one name that neither side had", () => {
    const mine = setSizes(edited("12", { label: "L" }));
    const theirs = setSizes((rows) => [...rows, { label: "L", bust: 1300, waist: 1100, hip: 1400 }]);
    const { work, collisions } = mergeWorks(sampleWork, mine, theirs);
    expect(collisions).toEqual([{ of: "sizes" }]);
    expect(sizesOf(work)).toEqual(sizesOf(theirs));
  });

  it("goes by place where lines have no names of their own yet", () => {
    const blank = setSizes((rows) => rows.map((row) => ({ ...row, label: "" })));
    const set = (at: number, part: Partial<SizeRow>): Work =>
      run(blank, { kind: "setSizes", sizes: sizesOf(blank).with(at, { ...sizesOf(blank)[at]!, ...part }) });
    const { work, collisions } = mergeWorks(blank, set(1, { label: "10" }), set(2, { waist: 1 }));
    expect(collisions).toEqual([]);
    expect(sizesOf(work).slice(1, 3)).toMatchObject([{ label: "10" }, { waist: 1 }]);
    const longer = run(blank, { kind: "setSizes", sizes: sizesOf(blank).slice(1) });
    expect(mergeWorks(blank, set(1, { label: "10" }), longer).collisions).toEqual([{ of: "sizes" }]);
  });

  it("holds no more lines than it can", () => {
    const many = (letter: string) => (rows: readonly SizeRow[]) => [
      ...rows,
      ...Array.from({ length: 40 }, (_, at) => ({ label: `${letter}${at}`, bust: 2000, waist: 1800, hip: 2100 })),
    ];
    const theirs = setSizes(many("t"));
    const { work, collisions } = mergeWorks(sampleWork, setSizes(many("m")), theirs);
    expect(collisions).toEqual([{ of: "sizes" }]);
    expect(work).toBe(theirs);
  });

  it("moves a pick of lines along with lines that the other side put in", () => {
    const base = run(sampleWork, { kind: "setPick", picks: { waist: 1.5, hip: 2.25 } });
    const smaller = { label: "6", bust: 760, waist: 580, hip: 820 };
    const mine = run(base, { kind: "setSizes", sizes: [smaller, ...sizesOf(base)] });
    expect(mine.picks).toEqual({ waist: 2.5, hip: 3.25 });
    const theirs = run(base, { kind: "setPick", picks: { waist: 1.75 } });
    for (const { work, collisions } of [mergeWorks(base, mine, theirs), mergeWorks(base, theirs, mine)]) {
      expect(collisions).toEqual([]);
      expect(work.picks).toEqual({ waist: 2.75, hip: 3.25 });
      expect(labelsOf(work)[0]).toBe("6");
    }
  });

  it("never parts the lines that a pick lies between unsaid", () => {
    const between = { label: "11", bust: 860, waist: 680, hip: 920 };
    const parted = setSizes((rows) => rows.toSpliced(2, 0, between));
    const picked = run(sampleWork, { kind: "setPick", picks: { waist: 1.5 } });
    const theirPick = mergeWorks(sampleWork, parted, picked);
    expect(theirPick).toEqual({ work: picked, collisions: [{ of: "sizes" }] });
    const theirChart = mergeWorks(sampleWork, picked, parted);
    expect(theirChart).toEqual({ work: parted, collisions: [{ of: "pick", pick: "waist" }] });
  });

  it("is never mixed of two patterns", () => {
    const other = { ...blankPattern(), name: "Another", chart: { ...blankPattern().chart, sizes: [] } };
    const mine = run(sampleWork, { kind: "setPattern", pattern: other });
    const theirs = run(setSizes(edited("12", { waist: 701 })), { kind: "setPick", picks: { waist: 1 } });
    expect(mergeWorks(sampleWork, mine, theirs)).toEqual({ work: theirs, collisions: [{ of: "pattern" }] });
    const elsewhere = run(sampleWork, { kind: "setUnit", unit: "in" });
    expect(mergeWorks(sampleWork, mine, elsewhere)).toEqual({ work: { ...mine, unit: "in" }, collisions: [] });
  });
});

describe("alterations", () => {
  const fit = (name: "swayBack" | "backWidth" | "lengthBelowBust" | "roundBack", amount: number, id: string = name) =>
    ({ kind: "fit", id, fit: name, amount }) as const;
  const put = (...list: readonly Alteration[]): Command[] =>
    list.map((alteration) => ({ kind: "putAlteration", alteration }));
  const base = run(sampleWork, ...put(fit("lengthBelowBust", 10), fit("swayBack", 8), fit("backWidth", 6)));
  const ids = (work: Work): readonly string[] => work.alterations.map(({ id }) => id);

  it("added by either side are both there, each in its place in the trade's order", () => {
    expect(ids(base)).toEqual(["lengthBelowBust", "swayBack", "end-1", "backWidth"]);
    const mine = run(sampleWork, ...put(fit("backWidth", 6), fit("lengthBelowBust", 10)));
    const theirs = run(sampleWork, ...put(fit("swayBack", 8)));
    for (const { work, collisions } of [mergeWorks(sampleWork, mine, theirs), mergeWorks(sampleWork, theirs, mine)]) {
      expect(collisions).toEqual([]);
      expect(ids(work)).toEqual(ids(base));
    }
  });

  it("moved by one side and added to by the other keep both", () => {
    const mine = run(base, { kind: "moveAlteration", id: "backWidth", before: "lengthBelowBust" });
    const theirs = run(base, ...put(fit("roundBack", 5)));
    expect(ids(theirs)).toEqual(["lengthBelowBust", "roundBack", "swayBack", "end-1", "backWidth"]);
    const { work, collisions } = mergeWorks(base, mine, theirs);
    expect(collisions).toEqual([]);
    expect(ids(work)).toEqual(["backWidth", "lengthBelowBust", "roundBack", "swayBack", "end-1"]);
  });

  it("put in different orders collide, and stand in theirs", () => {
    const mine = run(base, { kind: "moveAlteration", id: "backWidth", before: "lengthBelowBust" });
    const theirs = run(base, { kind: "moveAlteration", id: "lengthBelowBust", before: null });
    const { work, collisions } = mergeWorks(base, mine, theirs);
    expect(collisions).toEqual([{ of: "alterations" }]);
    expect(ids(work)).toEqual(ids(theirs));
  });

  it("changed by one side and taken out by the other are named", () => {
    const mine = run(base, ...put(fit("swayBack", 15)));
    const theirs = run(base, { kind: "removeAlteration", id: "swayBack" });
    const gone = mergeWorks(base, mine, theirs);
    expect(gone.collisions).toEqual([{ of: "alteration", alteration: fit("swayBack", 15) }]);
    expect(ids(gone.work)).not.toContain("swayBack");
    const kept = mergeWorks(base, theirs, mine);
    expect(kept.collisions).toEqual([{ of: "alteration", alteration: fit("swayBack", 15) }]);
    expect(kept.work.alterations).toContainEqual(fit("swayBack", 15));
  });

  it("of one kind added by both are one, and named where they are not alike", () => {
    const mine = run(sampleWork, ...put(fit("swayBack", 8, "m")));
    const alike = mergeWorks(sampleWork, mine, run(sampleWork, ...put(fit("swayBack", 8, "t"))));
    expect(alike.collisions).toEqual([]);
    expect(ids(alike.work)).toEqual(["t", "end-1"]);
    const unlike = mergeWorks(sampleWork, mine, run(sampleWork, ...put(fit("swayBack", 9, "t"))));
    expect(unlike.collisions).toEqual([{ of: "alteration", alteration: fit("swayBack", 9, "t") }]);
    expect(ids(unlike.work)).toEqual(["t", "end-1"]);
  });

  it("are no more than a work can hold", () => {
    const many = (letter: string): Work => ({
      ...sampleWork,
      alterations: Array.from({ length: LIMITS.alterations - 20 }, (_, at) => ({
        kind: "dartGather",
        id: `${letter}${at}`,
        dart: { piece: letter === "m" ? "front" : "back", dart: "sideDart" },
      })),
    });
    const theirs = many("t");
    const { work, collisions } = mergeWorks(sampleWork, many("m"), theirs);
    expect(collisions).toEqual([{ of: "alterations" }]);
    expect(work.alterations).toEqual(theirs.alterations);
  });
});

describe("readings", () => {
  it("of different measures go together, of one collide", () => {
    const mine = run(
      sampleWork,
      { kind: "setMeasure", measure: "waistGirth", value: 744 },
      { kind: "setMeasure", measure: "hipGirth", value: 990 },
    );
    const theirs = run(
      sampleWork,
      { kind: "setMeasure", measure: "waistGirth", value: 741 },
      { kind: "clearMeasure", measure: "bustPointWidth" },
    );
    const { work, collisions } = mergeWorks(sampleWork, mine, theirs);
    expect(collisions).toEqual([{ of: "measure", set: 0, measure: "waistGirth" }]);
    expect(work.tapes[0]?.readings).toMatchObject({ waistGirth: [741], hipGirth: [990] });
    expect(work.tapes[0]?.readings).not.toHaveProperty("bustPointWidth");
  });

  it("of sets that were begun on both sides collide as a list", () => {
    const mine = run(sampleWork, { kind: "newTape", taken: "2026-11-25" });
    const theirs = run(sampleWork, { kind: "setMeasure", measure: "waistGirth", value: 741 });
    expect(mergeWorks(sampleWork, mine, theirs)).toEqual({ work: theirs, collisions: [{ of: "tapes" }] });
  });
});

describe("rebaseHistory", () => {
  it("puts a change under every step, and the step's own value stands where they collide", () => {
    const first = run(sampleWork, { kind: "setName", name: "First" });
    const second = run(first, { kind: "setMeasure", measure: "waistGirth", value: 744 });
    const theirs = run(
      second,
      { kind: "setUnit", unit: "in" },
      { kind: "setMeasure", measure: "waistGirth", value: 750 },
      { kind: "setMeasure", measure: "hipGirth", value: 999 },
    );
    const rebased = rebaseHistory(second, [sampleWork, first, second], theirs);
    expect(rebased.map(({ name, unit }) => [name, unit])).toEqual([
      [sampleWork.name, "in"],
      ["First", "in"],
      ["First", "in"],
    ]);
    expect(rebased.map(({ tapes }) => tapes[0]?.readings.waistGirth)).toEqual([[738], [738], [750]]);
    expect(rebased.map(({ tapes }) => tapes[0]?.readings.hipGirth)).toEqual([[999], [999], [999]]);
    expect(rebased[2]).toEqual(theirs);
  });

  it("leaves a history alone under which nothing has changed", () => {
    const steps = [sampleWork];
    expect(rebaseHistory(sampleWork, steps, structuredClone(sampleWork))).toBe(steps);
  });

  it("leaves each step of a history what it keeps of entries that could not be read", () => {
    const step = { ...run(sampleWork, { kind: "setName", name: "First" }), unread: { "row.1": "8o", "row.2": "" } };
    const theirs = run(sampleWork, { kind: "setUnread", field: "waist", text: "7o" }, { kind: "setUnit", unit: "in" });
    const [one, two] = rebaseSteps(sampleWork, [step, { ...sampleWork, unread: {} }], theirs);
    expect([one?.unit, one?.unread]).toEqual(["in", { "row.1": "8o", "row.2": "" }]);
    expect([two?.unit, two?.unread]).toEqual(["in", {}]);
  });

  it("is mergeWorks for each step, but for whose value stands, and what steps share they share after it", () => {
    fc.assert(
      fc.property(anyThree, ({ base, mine, theirs }) => {
        fc.pre(text(base) !== text(theirs));
        const [one, again] = rebaseHistory(base, [mine, structuredClone(mine)], theirs);
        expect(again).toBe(one);
        const merged = mergeWorks(base, mine, theirs);
        expect(one).toEqual(merged.collisions.length === 0 ? merged.work : one);
        if (one === undefined) throw new Error("no step");
        expect(parseWork(one).ok).toBe(true);
      }),
      { numRuns: runsOf(200) },
    );
  }, 240_000);

  it("shares among two hundred steps what they do not change", () => {
    const steps = Array.from({ length: 200 }, (_, at) =>
      structuredClone(run(sampleWork, { kind: "setName", name: `Step ${at}` })),
    );
    const theirs = run(sampleWork, { kind: "setPatternName", name: "Theirs" });
    const rebased = rebaseHistory(sampleWork, steps, theirs);
    expect(new Set(rebased.map(({ pattern }) => pattern)).size).toBe(1);
    expect(rebased[150]).toEqual({ ...theirs, name: "Step 150" });
  });
});
