import { describe, expect, it } from "vitest";
import { partOf, withOtherSign, withPart } from "../../../src/ui/fields/fractionText";

describe("the keys for the parts of an inch", () => {
  it.each([
    ["34", "3/8", "34 3/8"],
    ["34 1/2", "3/8", "34 3/8"],
    ["34½", "3/8", "34 3/8"],
    ["34.5", "3/8", "34 3/8"],
    ["34 ", "3/8", "34 3/8"],
    ['34 1/2"', "7/8", "34 7/8"],
    ["", "1/8", "1/8"],
    ["1/8", "5/8", "5/8"],
    ["-1", "1/4", "-1 1/4"],
    ["−1/2", "1/4", "−1/4"],
  ])("%s and %s are %s", (text, part, is) => {
    expect(withPart(text, part)).toBe(is);
  });

  it("take off what stands there already", () => {
    expect(withPart("34 1/2", "1/2")).toBe("34");
    expect(withPart("1/2", "1/2")).toBe("");
  });

  it("leave alone what is told in another unit", () => {
    expect(withPart("87.6 cm", "1/2")).toBe("87.6 cm");
  });

  it("know which one stands there", () => {
    expect(partOf("34 1/2")).toBe("1/2");
    expect(partOf("34 1 / 2")).toBe("1/2");
    expect(partOf("34")).toBeNull();
    expect(partOf("5 ft 4")).toBeNull();
  });
});

describe("the key for the other sign", () => {
  it.each([
    ["12", "−12"],
    ["−12", "12"],
    ["-12", "12"],
    ["", "−"],
    ["+5", "−5"],
  ])("makes %s %s", (text, is) => {
    expect(withOtherSign(text)).toBe(is);
  });
});
