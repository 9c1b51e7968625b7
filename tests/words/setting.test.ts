import { describe, expect, it } from "vitest";
import { inchesTied, partedAtFractions } from "../../src/words/terms/setting";

describe("a text in parts", () => {
  it("has each part of an inch by itself", () => {
    expect(partedAtFractions("2 11/16 in, 5/8 in and 3/32 in")).toEqual([
      "2 ",
      "11/16",
      " in, ",
      "5/8",
      " in and ",
      "3/32",
      " in",
    ]);
  });

  it.each(["size 14/16", "6/8", "9/10", "on 3/4/2026", "2 ½ in", "31/7"])("leaves %s as it is", (text) => {
    expect(partedAtFractions(text)).toEqual([text]);
  });
});

describe("inches", () => {
  it("keep their fraction and their unit in one line, and nothing else is kept together", () => {
    expect(inchesTied("0 in, 2 11/16 in, 34 ½ in to 38 mm in 2 places")).toBe(
      "0\u00A0in, 2\u00A011/16\u00A0in, 34\u00A0½\u00A0in to 38 mm in 2 places",
    );
    expect(inchesTied("12 inches")).toBe("12 inches");
  });
});
