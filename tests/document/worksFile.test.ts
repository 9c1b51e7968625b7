import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CURRENT_VERSION } from "../../src/document/upgrades";
import { writeWorkFile } from "../../src/document/workFile";
import { readAnyFile, readWorksFile, writeWorksFile } from "../../src/document/worksFile";
import { anyWork } from "../support/arbitraryWork";
import { sampleWork } from "../support/sampleWork";

const anyEntry = fc.record(
  {
    work: anyWork,
    saved: fc
      .date({ min: new Date("2020-01-01"), max: new Date("2090-01-01"), noInvalidDate: true })
      .map((at) => at.toISOString()),
  },
  { requiredKeys: ["work"] },
);

const fileOf = (works: unknown, version: unknown = CURRENT_VERSION): string =>
  JSON.stringify({ bodicewright: "works", version, works });

describe("a file of works", () => {
  it("reads back as the works that were written, in their order", () => {
    fc.assert(
      fc.property(fc.array(anyEntry, { maxLength: 5 }), (works) => {
        const text = writeWorksFile(works);
        expect(readWorksFile(text)).toEqual({ ok: true, value: { works, unreadable: [] } });
        expect(readAnyFile(text)).toEqual(readWorksFile(text));
        expect(writeWorksFile(structuredClone(works))).toBe(text);
      }),
      { numRuns: 60 },
    );
  }, 240_000);

  it("is the same text for equal works, and laid out to be read", () => {
    const shuffled = { ...sampleWork, unread: { b: "2", a: "1" } };
    const other = {
      ...Object.fromEntries(Object.entries(shuffled).toReversed()),
      ...shuffled,
      unread: { a: "1", b: "2" },
    };
    expect(writeWorksFile([{ work: shuffled }])).toBe(writeWorksFile([{ work: other }]));
    expect(writeWorksFile([])).toBe(
      `{\n  "bodicewright": "works",\n  "version": ${CURRENT_VERSION},\n  "works": []\n}\n`,
    );
  });

  it("gives those that can be read, and names the others", () => {
    const works = [
      { work: sampleWork, saved: "2026-11-25T10:00:00.000Z" },
      { work: { name: "Torn", unit: 7 } },
      5,
      { work: sampleWork, saved: "lately" },
    ];
    const read = readWorksFile(fileOf(works));
    expect(read).toMatchObject({
      ok: true,
      value: {
        works: [{ work: sampleWork, saved: "2026-11-25T10:00:00.000Z" }, { work: sampleWork }],
        unreadable: [
          { at: 1, name: "Torn", failure: { code: "file/damaged" } },
          { at: 2, name: null, failure: { code: "file/damaged", places: ["work"] } },
        ],
      },
    });
    expect(read.ok && read.value.works[1]).toStrictEqual({ work: sampleWork });
  });

  it("of an older version brings every work up to date", () => {
    const old = { ...sampleWork, picks: { frame: "12" } };
    expect(readWorksFile(fileOf([{ work: old }], 4))).toEqual({
      ok: true,
      value: { works: [{ work: { ...sampleWork, picks: { baseSize: "12" } } }], unreadable: [] },
    });
  });

  it.each([
    ["file/not-json", "{"],
    ["file/foreign", "[]"],
    ["file/foreign", fileOf({})],
    ["file/foreign", fileOf([], "1")],
    ["file/foreign", writeWorkFile(sampleWork)],
    ["file/newer", fileOf([], CURRENT_VERSION + 1)],
    ["file/too-deep", "[".repeat(50)],
  ])("is not: %s", (code, text) => {
    expect(readWorksFile(text)).toMatchObject({ ok: false, failure: { code } });
  });
});

describe("whatever she opens", () => {
  it("may be a single work", () => {
    expect(readAnyFile(writeWorkFile(sampleWork))).toEqual({
      ok: true,
      value: { works: [{ work: sampleWork }], unreadable: [] },
    });
    expect(readAnyFile(`\uFEFF${writeWorkFile(sampleWork)}`).ok).toBe(true);
  });

  it.each([
    ["file/not-json", "hello"],
    ["file/foreign", '{"bodicewright":"chart"}'],
    ["file/foreign", "null"],
    ["file/damaged", '{"bodicewright":"work","version":6,"work":{}}'],
    ["file/too-large", JSON.stringify({ bodicewright: "work", version: 6, work: { name: "x".repeat(8_000_000) } })],
  ])("is refused with %s", (code, text) => {
    expect(readAnyFile(text)).toMatchObject({ ok: false, failure: { code } });
  });

  it("never throws", () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.json(),
          fc.jsonValue().map((works) => fileOf(works)),
          fc.array(fc.jsonValue()).map((works) => fileOf(works)),
        ),
        (text) => {
          expect(typeof readAnyFile(text).ok).toBe("boolean");
        },
      ),
    );
  });
});
