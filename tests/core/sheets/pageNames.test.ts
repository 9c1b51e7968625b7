import { describe, expect, it } from "vitest";
import { pageName } from "../../../src/core/sheets/pageNames";
import { CoreBug } from "../../../src/core/result";

describe("pageName", () => {
  // As columns are lettered in spreadsheets (common practice, no source).
  it.each([
    [0, 0, "A1"],
    [1, 2, "B3"],
    [25, 0, "Z1"],
    [26, 0, "AA1"],
    [27, 9, "AB10"],
    [51, 0, "AZ1"],
    [52, 0, "BA1"],
    [701, 0, "ZZ1"],
    [702, 0, "AAA1"],
  ])("column %i, row %i is %s", (column, row, name) => {
    expect(pageName(column, row)).toBe(name);
  });

  it("knows no column before the first", () => {
    expect(() => pageName(-1, 0)).toThrow(CoreBug);
  });
});
