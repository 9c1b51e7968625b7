/** The ledger's notes and the Fit step in words. */
import { FIT_NAMES } from "../../src/core/decisions/fitNames";
import { describe, expect, it } from "vitest";
import { PHASE_ORDER } from "../../src/core/decisions/tradeOrder";
import { FIT_WORDS } from "../../src/words/alterations/index";
import { fitCount, fitHeading, fitUse, isFitFound } from "../../src/words/fitStep";
import { conflictNote, orderNote } from "../../src/words/order";
import { truedSentence } from "../../src/words/truing";

describe("orderNote", () => {
  it("says what it is made before, what the trade does and why", () => {
    expect(orderNote("length")).toBe(
      "Made before the length is changed: the trade does length first, because every other amount is measured at a level that a change of length moves.",
    );
    expect(new Set(PHASE_ORDER.map(orderNote)).size).toBe(PHASE_ORDER.length);
  });
});

describe("conflictNote", () => {
  it("names the seams by piece, and the other slip", () => {
    expect(conflictNote([{ piece: "front", seam: "side" }], "Widen by 5 mm")).toBe(
      "Also moves the side seam of the front: see “Widen by 5 mm”.",
    );
    expect(
      conflictNote(
        [
          { piece: "front", seam: "side" },
          { piece: "front", seam: "centre" },
          { piece: "back", seam: "side" },
          { piece: "back", seam: "centre" },
        ],
        "X",
      ),
    ).toBe(
      "Also moves the side seam of the front and the back, the centre front line and the centre back line: see “X”.",
    );
  });
});

describe("truedSentence", () => {
  it("says what was done to which line, where and by how much", () => {
    const change = { piece: "front", seam: "side", point: "sideWaist" } as const;
    expect(truedSentence({ ...change, what: "seamWalked", amount: -2 }, "cm")).toMatch(
      /^Front side seam: 2 mm evened out at the .*, so that it walks with its partner\.$/,
    );
    expect(truedSentence({ ...change, what: "seamSmoothed", point: null, amount: 1 }, "cm")).toBe(
      "Front side seam: drawn smooth.",
    );
    expect(
      truedSentence({ piece: "back", seam: "centre", what: "cornerSquared", point: "centreWaist", amount: 1.26 }, "cm"),
    ).toMatch(/^Centre back line: its end at the .* turned by 1\.3°, so that the corner is square\.$/);
    expect(truedSentence({ ...change, seam: "waist", what: "legsEqualled", point: null, amount: 1.5875 }, "in")).toBe(
      "Front waist seam: the legs of its dart brought to one length, 1/16 in each.",
    );
  });
});

describe("the Fit step", () => {
  it("finds by every word that was typed, in any order and case", () => {
    expect(isFitFound("lengthBelowBust", "FOLDS waist")).toBe(true);
    expect(isFitFound("lengthBelowBust", "folds zebra")).toBe(false);
    expect(FIT_NAMES.every((fit) => isFitFound(fit, FIT_WORDS[fit].name))).toBe(true);
  });

  it("counts what was found, and helps on where nothing was", () => {
    expect(fitCount(3)).toBe("3 found");
    expect(fitCount(0)).toMatch(/Try another word/);
  });

  it("gives each phase another heading", () => {
    expect(new Set(PHASE_ORDER.map(fitHeading)).size).toBe(PHASE_ORDER.length);
  });

  it("says how much is in use on which half, in the wearer’s unit", () => {
    const fit = { kind: "fit", id: "a", fit: "lengthBelowBust", amount: 12.7 } as const;
    expect(fitUse([fit], "in")).toBe("½ in");
    expect(
      fitUse(
        [
          { ...fit, amount: 8, half: "left" },
          { ...fit, amount: -5, half: "right" },
        ],
        "cm",
      ),
    ).toBe("8 mm left half, −5 mm right half");
  });
});
