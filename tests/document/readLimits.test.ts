import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkText, DEEPEST, holdsTooMuch, LARGEST_WORK } from "../../src/document/readLimits";
import { CURRENT_VERSION } from "../../src/document/upgrades";
import { parseWork, readWorkFile } from "../../src/document/workFile";
import { LIMITS } from "../../src/core/decisions/limits";
import { FIT_NAMES } from "../../src/core/decisions/fitNames";
import { MEASURE_NAMES } from "../../src/core/measures/measure";
import type { Work } from "../../src/core/decisions/work";
import { sampleWork } from "../support/sampleWork";

const ok = { ok: true, value: null };
const tooDeep = { ok: false, failure: { code: "file/too-deep", most: DEEPEST } };

/** Depth as the engine itself finds it. */
const depthOf = (value: unknown): number =>
  typeof value === "object" && value !== null ? 1 + Math.max(0, ...Object.values(value).map(depthOf)) : 0;

/** One thing within another, as deep as it comes, with texts of brackets beside. */
const anyNest: fc.Arbitrary<unknown> = fc
  .array(
    fc.constantFrom<(inner: unknown) => unknown>(
      (inner) => [inner, "]"],
      (inner) => ({ "[": inner, b: "{" }),
    ),
    {
      maxLength: 60,
      size: "max",
    },
  )
  .map((wraps) => wraps.reduce<unknown>((inner, wrap) => wrap(inner), 1));

describe("checkText", () => {
  it("counts bytes as they are in a file", () => {
    const encoder = new TextEncoder();
    fc.assert(
      fc.property(fc.string({ unit: "grapheme", maxLength: 200 }), (text) => {
        const quoted = JSON.stringify(text);
        const bytes = encoder.encode(quoted).length;
        expect(checkText(quoted, bytes)).toEqual(ok);
        expect(checkText(quoted, bytes - 1)).toEqual({
          ok: false,
          failure: { code: "file/too-large", most: bytes - 1 },
        });
      }),
    );
  });

  it("counts lists and records within one another, but no brackets in texts", () => {
    fc.assert(
      fc.property(anyNest, fc.string(), (value, text) => {
        const whole = [value, `${text}[[[[{{{{"\\`, { [`]}${text}`]: 1 }];
        expect(checkText(JSON.stringify(whole)).ok).toBe(depthOf(whole) <= DEEPEST);
      }),
    );
    const nested = (depth: number): string => "[".repeat(depth) + "]".repeat(depth);
    expect(checkText(nested(DEEPEST))).toEqual(ok);
    expect(checkText(nested(DEEPEST + 1))).toEqual(tooDeep);
    expect(checkText(`"${"[".repeat(999)}\\"${"[".repeat(999)}"`)).toEqual(ok);
    expect(checkText(`"\\\\"${"[".repeat(999)}`)).toEqual(tooDeep);
  });

  it("comes before a work file is parsed", () => {
    expect(readWorkFile("[".repeat(1_000_000))).toEqual(tooDeep);
    expect(readWorkFile(" ".repeat(LARGEST_WORK + 1))).toMatchObject({ failure: { code: "file/too-large" } });
  });
});

/** As full as a work can be. */
const fullest: Work = {
  ...sampleWork,
  tapes: Array.from({ length: LIMITS.tapes }, () => ({
    taken: "2026-11-25",
    readings: Object.fromEntries(
      MEASURE_NAMES.map((name) => [name, Array.from({ length: LIMITS.readings }, () => 900)]),
    ),
  })),
  pattern: {
    ...sampleWork.pattern,
    chart: {
      draftedDifference: 50,
      sizes: Array.from({ length: LIMITS.rows }, (_, at) => ({
        label: String(at),
        bust: 1,
        waist: 1,
        hip: 1,
        finishedBust: 1,
        finishedWaist: 1,
        finishedHip: 1,
      })),
      cups: Array.from({ length: LIMITS.rows }, (_, at) => ({ label: String(at), difference: 1 })),
    },
  },
  alterations: Array.from({ length: LIMITS.alterations }, (_, at) => ({
    kind: "dartEnd",
    id: String(at),
    dart: { piece: "front", dart: "waistDart" },
    shorten: 1,
    across: 1,
    hold: "mouth",
    giveBack: {
      centreSeam: 0,
      sideSeam: 0,
      otherDart: 0,
      underarm: 0,
      waistEnd: 0,
      armholeEnd: 0,
      neckEnd: 0,
      centreEnd: 1,
    },
  })),
  unread: Object.fromEntries(Array.from({ length: LIMITS.unread }, (_, at) => [`field ${at}`, "?"])),
};

describe("what the schema is asked", () => {
  it("is any work that keeps the limits", () => {
    expect(holdsTooMuch(fullest)).toBe(false);
    expect(parseWork(fullest)).toEqual({ ok: true, value: fullest });
  });

  const MANY = 100_000;
  const rows = Array.from({ length: MANY }, (_, at) => ({ label: at, fit: FIT_NAMES[0] }));
  const record = Object.fromEntries(rows.map((row) => [`k${row.label}`, row]));
  const { pattern } = sampleWork;
  it.each<[string, object]>([
    ["pattern", { pattern: { ...pattern, chart: { ...pattern.chart, sizes: rows } } }],
    ["alterations", { alterations: rows }],
    ["unread", { unread: record }],
    ["picks", { picks: record }],
    ["tapes", { tapes: [{ readings: record }] }],
    ["work", record],
  ])("is nothing hostile: %s with 100 000 wrong rows is refused at once", (place, part) => {
    const text = JSON.stringify({ bodicewright: "work", version: CURRENT_VERSION, work: { ...sampleWork, ...part } });
    // With so many the schema would be busy for seconds: it is never asked.
    expect(holdsTooMuch({ ...sampleWork, ...part })).toBe(true);
    expect(readWorkFile(text)).toEqual({ ok: false, failure: { code: "file/damaged", places: [place] } });
  });
});
