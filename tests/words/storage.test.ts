import { describe, expect, it } from "vitest";
import { LIMITS } from "../../src/core/decisions/limits";
import {
  conflictCopySentence,
  copyName,
  entryName,
  fileFailureSentence,
  storageFailureSentence,
  type StorageFailureLike,
} from "../../src/words/storage";
import type { WorkFileFailureLike } from "../../src/words/workFile";

const FILES: readonly WorkFileFailureLike[] = [
  { code: "file/not-json" },
  { code: "file/foreign" },
  { code: "file/newer", version: 3, known: 1 },
  { code: "file/damaged", places: ["pattern.chart.sizes.1.waist", "name"] },
  { code: "file/too-large", most: 8_000_000 },
  { code: "file/too-deep" },
  { code: "file/too-slow" },
  { code: "file/out-of-reach" },
];

describe("fileFailureSentence", () => {
  it("says what the file is, and that nothing was changed", () => {
    const sentences = FILES.map(fileFailureSentence);
    expect(new Set(sentences).size).toBe(FILES.length);
    for (const sentence of sentences) expect(sentence).toMatch(/ Nothing was changed\.$/);
    expect(sentences[2]).toContain("newer version of Bodicewright (3; this one reads up to 1)");
    expect(sentences[3]).toContain("damaged at pattern.chart.sizes.1.waist, name.");
    expect(sentences[4]).toContain("8 megabytes");
  });
});

describe("storageFailureSentence", () => {
  const sentence = (failure: StorageFailureLike): string => storageFailureSentence(failure);

  it("offers the way to keep the work where it cannot be saved", () => {
    for (const code of ["storage/unavailable", "storage/full", "storage/failed"] as const) {
      expect(sentence({ code })).toMatch(/[Dd]ownload the work to/);
    }
  });

  it("tells a damaged work from one of a newer version, and that neither was touched", () => {
    const damaged = sentence({ code: "storage/damaged", why: { code: "file/damaged", places: ["name"] } });
    const newer = sentence({ code: "storage/damaged", why: { code: "file/newer", version: 2, known: 1 } });
    expect(newer).not.toBe(damaged);
    expect(newer).toMatch(/newer version/);
    for (const text of [damaged, newer]) expect(text).toMatch(/left as it is/);
  });

  it("does not put one failure in the words of another", () => {
    const codes = ["storage/unavailable", "storage/full", "storage/failed", "storage/missing"] as const;
    expect(new Set(codes.map((code) => sentence({ code }))).size).toBe(codes.length);
  });
});

describe("entryName", () => {
  it("is the name, or says that there is none", () => {
    expect(["Summer", "", "  "].map(entryName)).toEqual(["Summer", "(no name)", "(no name)"]);
  });
});

describe("copyName", () => {
  it("is always a name that a work can have", () => {
    expect(copyName("Summer")).toBe("Summer (copy)");
    expect(copyName("x".repeat(LIMITS.text)).length).toBeLessThanOrEqual(LIMITS.text);
  });
});

describe("conflictCopySentence", () => {
  it("names both works, each by what the list calls it", () => {
    expect(conflictCopySentence("", " (copy)")).toBe(
      "“(no name)” was changed in another tab too. What was changed here is kept beside it, as “ (copy)”.",
    );
  });
});
