/** Alterations in words, and why one could not be made. */
import type { Alteration, DartEndAlteration } from "../../src/core/decisions/alteration";
import type { AlterationFailure } from "../../src/core/alterations/outcome/alterationFailure";
import { describe, expect, it } from "vitest";
import { acrossWords, mouthSeamWords } from "../../src/words/alterations/dartRedraw";
import { alterationTitle, alterationFailureSentence } from "../../src/words/planned";
import { ref } from "../support/works";

const end = (change: Partial<DartEndAlteration>): DartEndAlteration => ({
  kind: "dartEnd",
  id: "a",
  dart: ref("front", "waistDart"),
  shorten: 0,
  across: 0,
  hold: "mouth",
  giveBack: {},
  ...change,
});

describe("what is asked for", () => {
  const cases: readonly (readonly [string, Alteration])[] = [
    ["Shorten the waist dart by 15 mm, its mouth held", end({ shorten: 15 })],
    ["Lengthen the waist dart by 15 mm, its fullness held", end({ shorten: -15, hold: "fullness" })],
    ["Move the end of the waist dart 8 mm towards the side seam, its mouth held", end({ across: -8 })],
    [
      "Shorten the waist dart by 15 mm and move its end 8 mm towards the centre front, its mouth held",
      end({ shorten: 15, across: 8 }),
    ],
    ["Move the end of the side dart 5 mm up, its mouth held", end({ dart: ref("front", "sideDart"), across: 5 })],
    [
      "Widen the waist dart by 6 mm",
      { kind: "dartMouth", id: "b", dart: ref("back", "waistDart"), inner: 4, outer: 2, giveBack: {} },
    ],
    [
      "Narrow the waist dart by 6 mm",
      { kind: "dartMouth", id: "b", dart: ref("back", "waistDart"), inner: -4, outer: -2, giveBack: {} },
    ],
    [
      "Move the mouth of the waist dart by 4 mm",
      { kind: "dartMouth", id: "b", dart: ref("back", "waistDart"), inner: -4, outer: 4, giveBack: {} },
    ],
    [
      "Move the whole waist dart 7 mm towards the side seam",
      { kind: "dartPlace", id: "c", dart: ref("back", "waistDart"), by: -7, how: "redraw", giveBack: {} },
    ],
    [
      "Move the whole waist dart 7 mm towards the centre front, taken off the centre front",
      { kind: "dartPlace", id: "c", dart: ref("front", "waistDart"), by: 7, how: "offCentreSeam", giveBack: {} },
    ],
  ];
  it.each(cases)("%s", (title, alteration) => {
    expect(alterationTitle(alteration, "cm")).toBe(title);
  });

  it.each(["cm", "in"] as const)("names no move that reads as nothing in %s", (unit) => {
    const dart = ref("front", "waistDart");
    const own: readonly (readonly [string, Alteration])[] = [
      ["^Shorten the waist dart by [^ ]+ (?:mm|in), its mouth held$", end({ shorten: 25.4, across: -0.3 })],
      ["^Move the end of the waist dart [^ ]+ (?:mm|in) towards", end({ shorten: 0.4, across: 25.4 })],
      ["^Leave the end of the waist dart where it is", end({ shorten: 0.2, across: 0.2 })],
      ["^Move the mouth of", { kind: "dartMouth", id: "b", dart, inner: -5, outer: 5.2, giveBack: {} }],
      ["^Leave the mouth of", { kind: "dartMouth", id: "b", dart, inner: -0.2, outer: 0.3, giveBack: {} }],
      ["^Leave the whole waist dart", { kind: "dartPlace", id: "c", dart, by: 0.4, how: "redraw", giveBack: {} }],
    ];
    for (const [title, alteration] of own) {
      expect(alterationTitle(alteration, unit)).toMatch(new RegExp(title));
      expect(alterationTitle(alteration, unit)).not.toMatch(/\b0 (?:mm|in)/);
    }
  });

  it("in inches, to the sixteenth", () => {
    expect(alterationTitle(end({ shorten: 15.875 }), "in")).toBe("Shorten the waist dart by 5/8 in, its mouth held");
  });
});

it("says which way is across, and which seam a dart opens on", () => {
  expect(acrossWords(ref("back", "waistDart"), 1)).toBe("towards the centre back");
  expect(acrossWords(ref("front", "sideDart"), -1)).toBe("down");
  expect(mouthSeamWords(ref("front", "sideDart"))).toBe("side seam");
});

describe("why it could not be made", () => {
  const cases: readonly (readonly [AlterationFailure, string])[] = [
    [{ code: "alteration/too-short", most: 131.2 }, "131 mm is the most it can be shortened"],
    [{ code: "alteration/end-outside-piece", most: 101.2 }, "101 mm is the most that stays on it"],
    [{ code: "alteration/off-the-seam", most: 40 }, "40 mm is the most it can move"],
    [{ code: "alteration/dart-vanishes", smallest: 3, would: -20 }, "nothing narrower than 3 mm"],
    [{ code: "alteration/shares-not-whole", sum: 0.8 }, "80 %, not to 100 %"],
    [{ code: "alteration/no-such-dart", dart: ref("back", "sideDart") }, "no back side dart"],
    [{ code: "alteration/not-this-dart", dart: ref("back", "waistDart") }, "cannot be done with the back waist dart"],
    [
      { code: "alteration/bust-too-much", asked: -40, most: -24.6 },
      "24 mm is the most that can be taken out at the bust",
    ],
    [{ code: "alteration/bust-too-much", asked: 80, most: 42.9 }, "42 mm is the most that can be let in at the bust"],
    [{ code: "alteration/bust-too-much", asked: -40, most: -0.3 }, "Nothing can be taken out at the bust"],
  ];
  it.each(cases)("%o", (failure, words) => {
    expect(alterationFailureSentence(failure, "cm")).toContain(words);
  });
});
