import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { plainLetters } from "../../src/paper/plainLetters";
import { readTypeface } from "../../src/paper/typeface";
import { TYPEFACES } from "../support/inkPages";

const isAscii = (codePoint: number): boolean => codePoint >= 0x20 && codePoint < 0x7f;

describe("plain letters", () => {
  it.each([
    ["plain text, 12 cm", "plain text, 12 cm"],
    ["Łódź façade Ærø Straße", "Lodz facade AEro Strasse"],
    ["e\u0301 and é", "e and e"],
    ["“quotes” ‘single’ – dash", "\"quotes\" 'single' - dash"],
    ["34½″", '34 1/2"'],
    ["½″ ⅝ 5′", "1/2\" 5/8 5'"],
    ["12¾ in, 2 × −3°", "12 3/4 in, 2 x -3 deg"],
    ["34 ½", "34 1/2"],
    ["x² №5", "x2 No5"],
    ["Жанна Щ юлія", "Zhanna Shch iuliia"],
    ["Ελένη Ψ", "Eleni Ps"],
    ["☐ lining", "[ ] lining"],
    ["岡 👗 👩‍👧", "? ? ??"],
    ["a\tb\nc\u00A0d", "a b c d"],
    ["soft\u00ADhyphen\u200B joined\uFE0F", "softhyphen joined"],
    ["ﬁt", "fit"],
    ["", ""],
  ])("writes %j as %j", (text, plain) => {
    expect(plainLetters(text, isAscii)).toBe(plain);
  });

  it("leaves alone what can be written", () => {
    expect(plainLetters("Łódź “x” 34½″ Ж", () => true)).toBe("Łódź “x” 34½″ Ж");
  });

  it("gives only what can be written, whatever is asked", () => {
    fc.assert(
      fc.property(
        fc.string({ unit: "binary" }),
        fc.constantFrom(isAscii, readTypeface(TYPEFACES.regular).has),
        (text, canWrite) => {
          expect(Array.from(plainLetters(text, canWrite)).every((sign) => canWrite(sign.codePointAt(0) ?? 0))).toBe(
            true,
          );
        },
      ),
    );
  });

  it("writes names in Latin, Greek and Cyrillic letters as they are in the embedded typeface, others as boxes", () => {
    const { has } = readTypeface(TYPEFACES.regular);
    expect(plainLetters("Żółć Őrsé İpek Ελένη Жанна Ґалина", has)).toBe("Żółć Őrsé İpek Ελένη Жанна Ґалина");
    expect(plainLetters("岡 שרה", has)).toBe("□ □□□");
  });

  it("leaves out what even a question mark cannot stand for", () => {
    expect(plainLetters("aЖb", (codePoint) => codePoint === 97)).toBe("a");
  });
});
