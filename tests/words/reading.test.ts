import { describe, expect, it } from "vitest";
import { readingFailureSentence, type ReadingFailureLike } from "../../src/words/reading";

describe("why a file of outlines is not read", () => {
  const failures: readonly ReadingFailureLike[] = [
    { code: "reading/too-large", bytes: 500_000_000, most: 40_000_000 },
    ...(["pdf", "picture", "packed", "binaryDxf", "dwg", "unknown"] as const).map(
      (format) => ({ code: "reading/other-format", format }) as const,
    ),
    { code: "reading/cut-short" },
    { code: "reading/damaged", line: 1234 },
    ...(["lines", "looks", "marks", "objects", "letters", "copies"] as const).map(
      (of) => ({ code: "reading/too-many", of, count: 100_000, most: 6000 }) as const,
    ),
    { code: "reading/endless", name: "front" },
    { code: "reading/too-deep", most: 500 },
    { code: "reading/out-of-reach", most: 1e7 },
    { code: "reading/empty" },
  ];

  it.each(failures.map((failure) => [JSON.stringify(failure), readingFailureSentence(failure)]))(
    "is a sentence of its own: %s",
    (_failure, said) => {
      expect(said).toMatch(/^[A-Z].*[A-Za-z]\.$/u);
      expect(failures.filter((other) => readingFailureSentence(other) === said)).toHaveLength(1);
    },
  );

  it("has its numbers", () => {
    expect(readingFailureSentence({ code: "reading/too-many", of: "lines", count: 100_000, most: 6000 })).toBe(
      "This drawing has 100,000 lines; 6,000 are the most that is read. Leave out what is not of the pattern, and save it again.",
    );
    expect(readingFailureSentence({ code: "reading/too-large", bytes: 500_000_000, most: 40_000_000 })).toBe(
      "This file has 500 megabytes; 40 are the most that is read.",
    );
    expect(readingFailureSentence({ code: "reading/damaged", line: 1234 })).toContain("line 1,234");
    expect(readingFailureSentence({ code: "reading/endless", name: "front" })).toContain("“front”");
  });
});
