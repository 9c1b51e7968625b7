import { describe, expect, it } from "vitest";
import { seamNameWords } from "../../src/words/truePaper";

const back = { name: "back", half: null, seams: [] } as const;
const centre = { seam: "centre", edges: [] } as const;

describe("what a seam is called on its piece, the longest first, for where there is room", () => {
  it("is its name", () => {
    expect(seamNameWords({ ...centre, opens: null }, back)).toEqual(["centre back seam"]);
  });

  it("tells how it opens, in the least room that alone", () => {
    expect(seamNameWords({ ...centre, opens: "buttons" }, back)).toEqual([
      "centre back seam: opens, buttons",
      "centre back seam",
      "opens, buttons",
    ]);
    expect(seamNameWords({ ...centre, opens: "zip" }, back).at(-1)).toBe("opens, zip");
  });

  it("of a lining is left open at the closure, whatever that is", () => {
    expect(seamNameWords({ ...centre, opens: "free" }, back)[0]).toBe("centre back seam: left open at the closure");
  });
});
