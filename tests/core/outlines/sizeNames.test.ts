/** Names of layers as files have them, each with the size that a reader would take it for. */
import { describe, expect, it } from "vitest";
import { pieceSaid, sizeNamed, sizeSaid } from "../../../src/core/outlines/sizeNames";

const NUMBERS = ["8", "10", "12", "14"];
const LETTERS = ["XS", "S", "M", "L", "XL", "2 XL"];

describe("a name", () => {
  it.each([
    ["12", "12"],
    [" 12 ", "12"],
    ["１２", "12"],
    ["Size 12", "12"],
    ["SIZE_12", "12"],
    ["12_outline", "12"],
    ["outline-12-a", "12"],
    ["T12", "12"],
    ["gr.12", "12"],
    ["Größe 12", "12"],
    ["front / 12", "12"],
    ["12 / front", "12"],
    ["10 / 12", "12"],
    ["112", null],
    ["12.5", null],
    ["12,5", null],
    ["outline", null],
    ["", null],
    ["10 12", null],
    ["size 12 of 14", "12"],
    ["8 or size 12", "12"],
    ["size 10 size 12", null],
  ])("%j names %j of numbers", (name, size) => {
    expect(sizeNamed(name, NUMBERS)).toBe(size);
  });

  it.each([
    ["xl", "XL"],
    ["2xl", "2 XL"],
    ["2 XL", "2 XL"],
    ["size 2 xl", "2 XL"],
    ["a 2 xl line", "2 XL"],
    ["size m", "M"],
    ["m line", "M"],
    // A single letter among several words may be anything.
    ["the m line", null],
    ["the xl line", "XL"],
    ["taglia m qui", "M"],
  ])("%j names %j of letters", (name, size) => {
    expect(sizeNamed(name, LETTERS)).toBe(size);
  });

  it("names none where labels are none, or have neither letters nor figures", () => {
    expect(sizeNamed("12", [])).toBeNull();
    expect(sizeNamed("12", ["–", "12"])).toBe("12");
    expect(sizeNamed("–", ["–"])).toBeNull();
    expect(sizeNamed("12 line", ["–"])).toBeNull();
    expect(sizeNamed("size –", ["–", "12"])).toBeNull();
  });

  it("names a label of several words only where they stand together and in order", () => {
    expect(sizeNamed("tall 12 line", ["12 tall"])).toBeNull();
    expect(sizeNamed("12 very tall", ["12 tall"])).toBeNull();
    expect(sizeNamed("line 12 tall here", ["12 tall", "12"])).toBe("12 tall");
    expect(sizeNamed("12,5 line", ["12,5", "12"])).toBe("12,5");
    expect(sizeNamed("line 1 there", ["1"])).toBe("1");
  });

  it("names the label that it is before one that stands in it, behind whatever word", () => {
    expect(sizeNamed("size 12", ["12", "size 12"])).toBe("size 12");
    expect(sizeNamed("Size_12", ["12", "size 12"])).toBe("size 12");
    expect(sizeNamed("the m line", ["M", "the m line"])).toBe("the m line");
    expect(sizeNamed("12 size 14", ["12", "14"])).toBe("14");
    expect(sizeNamed("12", ["12", "12 tall"])).toBe("12");
    expect(sizeNamed("__", NUMBERS)).toBeNull();
  });

  it("of the same surety by the innermost group alone", () => {
    expect(sizeNamed("12 / 10 12", NUMBERS)).toBeNull();
    expect(sizeNamed("12 / back", NUMBERS)).toBe("12");
  });
});

describe("what is written", () => {
  it.each([
    ["Size: 12", "12"],
    ["size=12", "12"],
    ["  SIZE  :  2 XL  ", "2 XL"],
    ["Size:12", "12"],
    ["Sample size: 12", null],
    ["Size 12", null],
    ["Size:", null],
    ["oversize: 12", null],
  ])("%j says the size %j", (text, size) => {
    expect(sizeSaid(text)).toBe(size);
  });

  it.each([
    ["Piece Name: Front", "Front"],
    ["piece: Back", "Back"],
    ["PIECENAME=Side Front ", "Side Front"],
    ["  Piece   name  :  Cup", "Cup"],
    ["Piece Name Front", null],
    ["One piece: Front", null],
    ["Piece name:", null],
  ])("%j says the piece %j", (text, piece) => {
    expect(pieceSaid(text)).toBe(piece);
  });
});
