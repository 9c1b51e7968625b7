import { describe, expect, it } from "vitest";
import type { Collision } from "../../src/core/decisions/collision";
import { collisionWords } from "../../src/words/collisions";

const dart = { piece: "front", dart: "waistDart" } as const;

describe("what two versions of a work hold differently", () => {
  const cases: readonly (readonly [string, Collision])[] = [
    ["the name", { of: "name" }],
    ["the wearer’s name", { of: "wearer" }],
    ["the waist", { of: "measure", set: 0, measure: "waistGirth" }],
    ["the waist of measuring 3 of those kept", { of: "measure", set: 2, measure: "waistGirth" }],
    ["the day of the newest measuring", { of: "taken", set: 0 }],
    ["the chart’s size 12", { of: "size", label: "12", column: null }],
    ["the chart’s size 12, its finished hip", { of: "size", label: "12", column: "finishedHip" }],
    ["a size of the chart that has no name, its bust", { of: "size", label: " ", column: "bust" }],
    ["the chart’s cup version DD, its difference", { of: "cup", label: "DD", column: "difference" }],
    ["the chart’s cup version DD, its name", { of: "cup", label: "DD", column: "label" }],
    ["the pattern’s ease at the hip", { of: "patternEase", level: "hip" }],
    ["the ease you want at the bust", { of: "easeWanted", level: "bust" }],
    ["the pattern’s back waist length", { of: "printedLength", measure: "backWaistLength", size: null }],
    ["the pattern’s back waist length in size 12", { of: "printedLength", measure: "backWaistLength", size: "12" }],
    ["the cup picked", { of: "pick", pick: "cup" }],
    [
      "the alteration: sway back",
      { of: "alteration", alteration: { kind: "fit", id: "a", fit: "swayBack", amount: 12 } },
    ],
    [
      "the alteration: shoulder slope, right half",
      { of: "alteration", alteration: { kind: "fit", id: "a", fit: "shoulderSlope", amount: 6, half: "right" } },
    ],
    [
      "the alteration: front waist dart, its legs",
      { of: "alteration", alteration: { kind: "dartLegs", id: "a", dart, bow: 2 } },
    ],
    ["the order of the alterations", { of: "alterations" }],
    ["whether the bust is right", { of: "trusted", measure: "bustGirth" }],
    ["the allowance of the hem", { of: "allowance", seam: "hem" }],
    ["the allowance of the centre seams", { of: "allowance", seam: "centre" }],
    ["what is seen of the front waist dart, left half", { of: "seen", dart: { ...dart, half: "left" } }],
    ["what is seen of the darts", { of: "seen", dart: null }],
    ["an entry that cannot be read yet", { of: "unread", field: "measure.waistGirth" }],
  ];

  it.each(cases)("is named: %s", (words, collision) => {
    expect(collisionWords(collision)).toBe(words);
  });
});
