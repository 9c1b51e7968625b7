import { existsSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { CURRENT_VERSION, upgradeWork, UPGRADES, type Upgrades } from "../../src/document/upgrades";
import { readWorkFile } from "../../src/document/workFile";
import { sampleWork } from "../support/sampleWork";

const asObject = (work: unknown): object => {
  if (typeof work !== "object" || work === null) throw new TypeError("no object");
  return work;
};

/** Two steps as they might be: the name was once called title, and a first version had no paper. */
const STEPS: Upgrades = {
  1: (work) => ({ ...asObject(work), paper: "A4" }),
  2: (work) => {
    const { title, ...rest } = { title: undefined, ...asObject(work) };
    return { ...rest, name: title };
  },
};

const { name, paper, ...rest } = sampleWork;
const first = { ...rest, title: name };
const fileOf = (work: unknown, version: number): string => JSON.stringify({ bodicewright: "work", version, work });

describe("upgradeWork", () => {
  it("takes every step from the version of the file on, in order, once", () => {
    const noting: Upgrades = {
      1: (work) => `${String(work)} one`,
      2: (work) => `${String(work)} two`,
      3: (work) => `${String(work)} three`,
    };
    expect(upgradeWork("work", 1, 3, noting)).toBe("work one two");
    expect(upgradeWork("work", 2, 4, noting)).toBe("work two three");
    expect(upgradeWork("work", 3, 3, noting)).toBe("work");
  });
});

describe("reading an older file", () => {
  it.each([
    [1, first],
    [2, { ...first, paper }],
    [3, sampleWork],
  ])("of version %d gives the work of today", (version, work) => {
    expect(readWorkFile(fileOf(work, version), STEPS, 3)).toEqual({ ok: true, value: sampleWork });
  });

  it("holds what the steps made to the schema", () => {
    expect(readWorkFile(fileOf(first, 2), STEPS, 3)).toEqual({
      ok: false,
      failure: { code: "file/damaged", places: ["paper"] },
    });
  });

  it("says that a work is damaged which no step can bring up to date", () => {
    expect(readWorkFile(fileOf(null, 1), STEPS, 3)).toEqual({
      ok: false,
      failure: { code: "file/damaged", places: ["work"] },
    });
  });
});

describe("UPGRADES", () => {
  const versions = Array.from({ length: CURRENT_VERSION - 1 }, (_, index) => index + 1);

  it("has a step from each version before the current one, and no other", () => {
    expect(
      Object.keys(UPGRADES)
        .map(Number)
        .toSorted((a, b) => a - b),
    ).toEqual(versions);
  });

  it("has a test for every step, by its version", () => {
    const untested = Object.keys(UPGRADES).filter(
      (version) => !existsSync(new URL(`upgrade${version}.test.ts`, import.meta.url)),
    );
    expect(untested).toEqual([]);
  });
});
