/** Which of two seams lies folded: by the order they are sewn in (common practice, no source). */
import { describe, expect, it } from "vitest";
import { foldedFirst } from "../../../src/core/allowance/corners";

describe("of two seams at a corner", () => {
  it.each([
    ["hem", "side", "hem"],
    ["side", "hem", "hem"],
    ["princess", "waist", "princess"],
    ["underBust", "side", "underBust"],
    ["shoulder", "armhole", "shoulder"],
    ["shoulder", "neck", "shoulder"],
    ["armhole", "side", "side"],
    ["waist", "side", "side"],
    ["waist", "centre", "waist"],
    ["neck", "centre", "centre"],
    ["armhole", "neck", "neck"],
  ] as const)("%s and %s: %s is sewn first and lies folded", (one, other, first) => {
    expect(foldedFirst(one, other)).toBe(first);
  });

  it("none does where they are one seam, or the end of a strap", () => {
    expect(foldedFirst("side", "side")).toBeNull();
    expect(foldedFirst("strap", "neck")).toBeNull();
    expect(foldedFirst("neck", "strap")).toBeNull();
  });
});
