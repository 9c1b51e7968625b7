/** Lists that the document is held to, each counted by hand; which are asked for is common practice, no source. */
import { describe, expect, it } from "vitest";
import type { Alteration } from "../../../src/core/decisions/alteration";
import { LIMITS } from "../../../src/core/decisions/limits";
import { OWN_CORNERS } from "../../../src/core/decisions/ownPattern";
import { lengthsAskedOn, STYLE_NAMES } from "../../../src/core/decisions/pattern";
import { isBefore, phaseOfFit, PHASE_ORDER, rankOf } from "../../../src/core/decisions/tradeOrder";
import { isTrusted } from "../../../src/core/decisions/trusted";

describe("lengths that are asked for", () => {
  const everywhere = ["backWaistLength", "frontWaistLength"];
  const aboveTheArmhole = ["shoulderLength", "acrossBack", "acrossFront", "neckBaseGirth"];
  const always = ["bustPointWidth", "sideNeckToBustPoint", "height"];

  it("are those a style's pieces can be held against: shoulder and neck, or a band under the bust", () => {
    const asked = Object.fromEntries(STYLE_NAMES.map((style) => [style, new Set(lengthsAskedOn(style))]));
    const whole = new Set([...everywhere, ...aboveTheArmhole, ...always]);
    expect(asked).toEqual({
      sideDart: whole,
      princessArmhole: whole,
      princessShoulder: whole,
      midriff: new Set([...everywhere, ...always, "underBustGirth"]),
    });
  });
});

describe("corners that can be put right by hand", () => {
  it("are the 27 with a name and 100 without, from 00 to 99, none twice", () => {
    expect(OWN_CORNERS).toHaveLength(127);
    expect(new Set(OWN_CORNERS).size).toBe(127);
    expect(OWN_CORNERS.slice(0, 2)).toEqual(["centreNeck", "sideNeck"]);
    expect(OWN_CORNERS.slice(27).map((name) => Number(name.replace("corner", "")))).toEqual(
      Array.from({ length: 100 }, (_, at) => at),
    );
  });
});

describe("the trade's order of two", () => {
  const dart = { piece: "front", dart: "waistDart" } as const;
  const other = { piece: "back", dart: "waistDart" } as const;
  const end: Alteration = { kind: "dartEnd", id: "e", dart, shorten: 5, across: 0, hold: "mouth", giveBack: {} };
  const mouth: Alteration = { kind: "dartMouth", id: "m", dart, inner: 2, outer: 2, giveBack: {} };
  const place: Alteration = { kind: "dartPlace", id: "p", dart, by: 5, how: "redraw", giveBack: {} };
  const legs: Alteration = { kind: "dartLegs", id: "l", dart, bow: 2 };
  const length: Alteration = { kind: "fit", id: "1", fit: "lengthAboveBust", amount: 5 };
  const wedge: Alteration = { kind: "fit", id: "2", fit: "swayBack", amount: 5 };
  const edge: Alteration = { kind: "fit", id: "3", fit: "shoulderSlope", amount: 5 };

  it("goes through the phases, and on one dart from where it sits to how wide it is to where it ends", () => {
    const inOrder = [length, wedge, place, mouth, end, edge];
    expect(inOrder.map((a) => inOrder.map((b) => isBefore(a, b)))).toEqual(
      inOrder.map((_, a) => inOrder.map((__, b) => a < b)),
    );
  });

  it("is none between redraws of two darts, or a redraw and another thing made of its dart", () => {
    for (const one of [{ ...end, dart: other }, legs]) {
      expect(isBefore(place, one)).toBe(false);
      expect(isBefore(one, place)).toBe(false);
    }
  });

  it("ranks the phases from the first", () => {
    expect(PHASE_ORDER.map(rankOf)).toEqual([0, 1, 2, 3, 4, 5]);
    expect(phaseOfFit("bustPointLevel")).toBe("bust");
  });
});

describe("a reading that was doubted", () => {
  it("is trusted at the very value that was said to be right, and at no other", () => {
    expect(isTrusted({ waistGirth: 700 }, "waistGirth", 700)).toBe(true);
    expect(isTrusted({ waistGirth: 700 }, "waistGirth", 701)).toBe(false);
    expect(isTrusted({ waistGirth: 700 }, "hipGirth", 700)).toBe(false);
    expect(isTrusted(undefined, "waistGirth", 700)).toBe(false);
  });
});

describe("limits", () => {
  it("with two ends have them the right way round", () => {
    const ranges = [LIMITS.buttons, LIMITS.tiers, LIMITS.printerMargin];
    expect(ranges.map(({ least, most }) => [least, most])).toEqual([
      [2, 20],
      [2, 5],
      [5, 25],
    ]);
  });
});
