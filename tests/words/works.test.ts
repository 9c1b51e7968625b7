import { describe, expect, it } from "vitest";
import { daysLeftWords, workSaid } from "../../src/words/works";

describe("what is said of a work", () => {
  it.each([
    ["Anna", "yesterday", "for Anna, saved yesterday"],
    [null, "3 November", "saved 3 November"],
    ["  ", "3 November", "saved 3 November"],
    ["Anna", "", "for Anna"],
    [null, "", ""],
  ])("for %j, saved %j: “%s”", (wearer, when, words) => {
    expect(workSaid(wearer, when)).toBe(words);
  });

  it.each([
    [30, "30 days left"],
    [2, "2 days left"],
    [1, "1 day left"],
    [0, "goes when the page is next opened"],
    [-3, "goes when the page is next opened"],
  ])("of %i days in the bin: “%s”", (days, words) => {
    expect(daysLeftWords(days)).toBe(words);
  });
});
