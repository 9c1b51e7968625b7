import { measuresOf, tapesOf } from "../../src/core/measures/tape";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { LIMITS } from "../../src/core/decisions/limits";
import type { Work } from "../../src/core/decisions/work";
import { blankPattern, blankWork } from "../../src/document/blank";
import { demoWorks } from "../../src/document/demo";
import { CURRENT_VERSION } from "../../src/document/upgrades";
import { parseWork, readWorkFile, writeWorkFile } from "../../src/document/workFile";
import { anyWork } from "../support/arbitraryWork";
import { sampleWork } from "../support/sampleWork";

const fileOf = (work: unknown, version: unknown = CURRENT_VERSION): string =>
  JSON.stringify({ bodicewright: "work", version, work });

describe("a work file", () => {
  it("reads back as the work that was written, whatever the work", () => {
    fc.assert(
      fc.property(anyWork, (work) => {
        expect(readWorkFile(writeWorkFile(work))).toEqual({ ok: true, value: work });
      }),
    );
  }, 240_000);

  it.each([blankWork(), sampleWork, ...demoWorks()].map((work) => [work.name, work] as const))(
    "keeps the work “%s”",
    (_, work) => {
      expect(readWorkFile(writeWorkFile(work))).toEqual({ ok: true, value: work });
    },
  );

  it("keeps how many buttons close it, and none where there is a zip", () => {
    const buttoned: Work = {
      ...sampleWork,
      pattern: { ...sampleWork.pattern, closure: { place: "centreBack", belowWaist: 180, buttons: 9 } },
    };
    expect(readWorkFile(writeWorkFile(buttoned))).toEqual({ ok: true, value: buttoned });
    expect(writeWorkFile(buttoned)).toContain('"buttons": 9');
    expect(writeWorkFile(sampleWork)).not.toContain("buttons");
  });

  it("names itself and its version, and is laid out to be read", () => {
    const text = writeWorkFile(blankWork());
    expect(
      text.startsWith('{\n  "bodicewright": "work",\n  "version": 9,\n  "work": {\n    "name": "My bodice",\n'),
    ).toBe(true);
    expect(text.endsWith("}\n")).toBe(true);
  });

  it("is the same text for equal works, in whatever order their parts were entered", () => {
    const one: Work = {
      ...sampleWork,
      tapes: tapesOf({ bustGirth: 920, waistGirth: 740 }),
      unread: { a: "x", b: "y" },
    };
    const other = {
      ...Object.fromEntries(Object.entries(sampleWork).toReversed()),
      tapes: tapesOf({ waistGirth: 740, bustGirth: 920 }),
      unread: { b: "y", a: "x" },
    };
    const parsed = parseWork(other);
    expect(parsed.ok && writeWorkFile(parsed.value)).toBe(writeWorkFile(one));
    expect(
      writeWorkFile({ ...one, tapes: tapesOf({ waistGirth: 740, bustGirth: 920 }), unread: { b: "y", a: "x" } }),
    ).toBe(writeWorkFile(one));
  });

  it("is read with the byte order mark that some editors leave", () => {
    expect(readWorkFile(`\uFEFF${writeWorkFile(sampleWork)}`)).toEqual({ ok: true, value: sampleWork });
  });

  it.each(["", "hello", "{", "{'a': 1}", '{"bodicewright":"work",'])("is not %j", (text) => {
    expect(readWorkFile(text)).toEqual({ ok: false, failure: { code: "file/not-json" } });
  });

  it.each([
    ["null", "null"],
    ["a list", "[1, 2]"],
    ["a number", "7"],
    ["another object", '{"name":"x"}'],
    ["another kind of ours", '{"bodicewright":"chart","version":1,"work":{}}'],
    ["no version", '{"bodicewright":"work","work":{}}'],
    ["a version in words", fileOf(sampleWork, "1")],
    ["version 0", fileOf(sampleWork, 0)],
    ["half a version", fileOf(sampleWork, 1.5)],
  ])("is told from a foreign file: %s", (_, text) => {
    expect(readWorkFile(text)).toEqual({ ok: false, failure: { code: "file/foreign" } });
  });

  it("of a newer version is told so, whatever is in it", () => {
    const failure = { code: "file/newer", version: CURRENT_VERSION + 1, known: CURRENT_VERSION };
    expect(readWorkFile(fileOf({ anything: true }, CURRENT_VERSION + 1))).toEqual({ ok: false, failure });
  });

  const damaged = (change: (work: Record<string, unknown>) => void): unknown => {
    const work: Record<string, unknown> = structuredClone({ ...sampleWork });
    change(work);
    return work;
  };
  const long = "x".repeat(LIMITS.text + 1);

  it.each<[string, unknown]>([
    ["work", undefined],
    ["work", "a text"],
    ["name", damaged((work) => delete work["name"])],
    ["name", damaged((work) => Object.assign(work, { name: long }))],
    ["unit", damaged((work) => Object.assign(work, { unit: "ell" }))],
    [
      "tapes.0.readings.bustGirth.0",
      damaged((work) => Object.assign(work, { tapes: [{ readings: { bustGirth: ["92"] } }] })),
    ],
    [
      "tapes.0.readings.bustGirth.0",
      damaged((work) => Object.assign(work, { tapes: [{ readings: { bustGirth: [LIMITS.length + 1] } }] })),
    ],
    [
      "tapes.0.readings.bustGirth.0",
      damaged((work) => Object.assign(work, { tapes: [{ readings: { bustGirth: [Number.NaN] } }] })),
    ],
    [
      "tapes.0.readings.bustGirth",
      damaged((work) => Object.assign(work, { tapes: [{ readings: { bustGirth: [] } }] })),
    ],
    [
      "tapes.0.readings.bustGirth",
      damaged((work) =>
        Object.assign(work, {
          tapes: [{ readings: { bustGirth: Array.from({ length: LIMITS.readings + 1 }, () => 900) } }],
        }),
      ),
    ],
    ["tapes.0.readings", damaged((work) => Object.assign(work, { tapes: [{ readings: { collar: [400] } }] }))],
    ["tapes.0.taken", damaged((work) => Object.assign(work, { tapes: [{ taken: "2026-02-30", readings: {} }] }))],
    ["tapes.0.taken", damaged((work) => Object.assign(work, { tapes: [{ taken: "yesterday", readings: {} }] }))],
    ["tapes", damaged((work) => Object.assign(work, { tapes: [] }))],
    [
      "tapes",
      damaged((work) =>
        Object.assign(work, { tapes: Array.from({ length: LIMITS.tapes + 1 }, () => ({ readings: {} })) }),
      ),
    ],
    ["age", damaged((work) => Object.assign(work, { age: -1 }))],
    ["work", damaged((work) => Object.assign(work, { more: 1 }))],
    [
      "pattern.chart.sizes.1.waist",
      damaged((work) => Object.assign(work, { pattern: withSizes([size("a"), { ...size("b"), waist: null }]) })),
    ],
    [
      "pattern.chart.sizes",
      damaged((work) =>
        Object.assign(work, {
          pattern: withSizes(Array.from({ length: LIMITS.rows + 1 }, (_, at) => size(String(at)))),
        }),
      ),
    ],
    [
      "alterations.0.giveBack.sideSeam",
      damaged((work) =>
        Object.assign(work, { alterations: [{ ...sampleWork.alterations[0], giveBack: { sideSeam: 1.5 } }] }),
      ),
    ],
    [
      "alterations.0.giveBack.sideSeam",
      damaged((work) =>
        Object.assign(work, { alterations: [{ ...sampleWork.alterations[0], giveBack: { sideSeam: -0.1 } }] }),
      ),
    ],
    [
      "alterations",
      damaged((work) =>
        Object.assign(work, {
          alterations: Array.from({ length: LIMITS.alterations + 1 }, () => sampleWork.alterations[0]),
        }),
      ),
    ],
    ["pattern.chart.cups", damaged((work) => Object.assign(work, { pattern: withCups(LIMITS.rows + 1) }))],
    [
      "unread",
      damaged((work) =>
        Object.assign(work, {
          unread: Object.fromEntries(Array.from({ length: LIMITS.unread + 1 }, (_, at) => [`f${at}`, "x"])),
        }),
      ),
    ],
    ["unread.chart", damaged((work) => Object.assign(work, { unread: { chart: "x".repeat(LIMITS.unreadText + 1) } }))],
    ...[1, 21, 7.5, "8"].map((buttons): [string, unknown] => [
      "pattern.closure.buttons",
      damaged((work) =>
        Object.assign(work, {
          pattern: { ...sampleWork.pattern, closure: { place: "centreBack", belowWaist: 180, buttons } },
        }),
      ),
    ]),
    [
      "alterations.0.kind",
      damaged((work) => Object.assign(work, { alterations: [{ ...sampleWork.alterations[0], kind: "pleat" }] })),
    ],
    ["allowances.hem", damaged((work) => Object.assign(work, { allowances: { hem: LIMITS.allowance + 1 } }))],
    ["allowances.hem", damaged((work) => Object.assign(work, { allowances: { hem: -1 } }))],
    ["allowances", damaged((work) => Object.assign(work, { allowances: { cuff: 10 } }))],
    ["sheetFormat", damaged((work) => Object.assign(work, { sheetFormat: "A5" }))],
    ["printerMargin", damaged((work) => Object.assign(work, { printerMargin: LIMITS.printerMargin.least - 1 }))],
    ["printerMargin", damaged((work) => Object.assign(work, { printerMargin: LIMITS.printerMargin.most + 1 }))],
    ["bustRadius", damaged((work) => Object.assign(work, { bustRadius: null }))],
  ])("says that it is damaged at %s", (place, work) => {
    expect(readWorkFile(fileOf(work))).toEqual({ ok: false, failure: { code: "file/damaged", places: [place] } });
  });

  it("names the first few damaged places, each once", () => {
    const read = readWorkFile(fileOf({ ...sampleWork, name: 1, unit: 2, paper: 3, invented: 4 }));
    expect(read).toEqual({ ok: false, failure: { code: "file/damaged", places: ["name", "invented", "unit"] } });
  });

  it("never throws, whatever the text", () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.json(),
          fc.jsonValue().map((work) => fileOf(work)),
        ),
        (text) => {
          expect(typeof readWorkFile(text).ok).toBe("boolean");
        },
      ),
    );
  });
});

const size = (label: string) => ({ label, bust: 900, waist: 700, hip: 950 });
const withSizes = (sizes: readonly unknown[]) => ({ ...blankPattern(), chart: { ...blankPattern().chart, sizes } });

const withCups = (count: number) => {
  const { chart, ...pattern } = blankPattern();
  return {
    ...pattern,
    chart: { ...chart, cups: Array.from({ length: count }, (_, at) => ({ label: String(at), difference: 50 })) },
  };
};

describe("blankWork", () => {
  it("holds no measures, sizes or alterations, and says that nothing in it is invented", () => {
    const work = blankWork();
    expect(measuresOf(work.tapes)).toEqual({});
    expect(work.pattern.chart.sizes).toEqual([]);
    expect(work.alterations).toEqual([]);
    expect(work.invented).toBe(false);
  });

  it("takes the paper that goes with the unit", () => {
    expect([blankWork("cm").paper, blankWork("in").paper]).toEqual(["A4", "Letter"]);
  });
});
