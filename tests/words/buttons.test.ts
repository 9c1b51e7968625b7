import type { Closure } from "../../src/core/decisions/pattern";
import { describe, expect, it } from "vitest";
import {
  buttonsBelowWords,
  buttonSheetWords,
  buttonsHint,
  narrowStandWords,
  widenStand,
  readButtons,
} from "../../src/words/buttons";
import { planOf, testWork } from "../support/works";

const { pieces } = planOf(testWork).left;
const buttoned: Closure = { place: "centreBack", belowWaist: 180, buttons: 9 };
const zipped: Closure = { place: "centreBack", belowWaist: 180 };
const names = pieces.map(({ name }) => name);

describe("words of buttons", () => {
  it("tell how far apart they are, and where they come too close", () => {
    const row = { along: [12, 72], spacing: 60, ends: [12, 12] } as const;
    expect(buttonsHint(row, "cm")).toBe(
      "60 mm from one to the next, the first 12 mm below the neck edge, the last 12 mm above the end of the opening. Leave it empty for a zip.",
    );
    // 60 mm is 2.36 in; 3/8 is 0.375.
    expect(buttonsHint(row, "in")).toContain("2 3/8 in from one to the next");
    expect(buttonsHint({ ...row, spacing: 14 }, "cm")).toContain("too close for most buttons");
    expect(buttonsHint(null, "cm")).toBe("Leave it empty for a zip.");
  });

  it("tell where those come that nothing marks", () => {
    expect(buttonsBelowWords([32.8, 138], "cm")).toEqual([
      "2 buttons come on the skirt, which is cut by its measures: mark them 33 mm and 138 mm below the waist seam.",
    ]);
    expect(buttonsBelowWords([50], "cm")).toEqual([
      "1 button comes on the skirt, which is cut by its measures: mark it 50 mm below the waist seam.",
    ]);
    expect(buttonsBelowWords([], "cm")).toEqual([]);
  });

  it("read a whole number from 2 to 20", () => {
    expect(["", "2", "20", "1", "21", "2.5", "x", "1e1"].map(readButtons)).toEqual([
      null,
      2,
      20,
      undefined,
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });

  it("call a stand narrow under 30 mm: a button of 15, and as much turned in", () => {
    expect(narrowStandWords(pieces, buttoned, {}, "cm")).toBe(
      "Only 15 mm at the centre seam: narrow for a button stand. Allow 30 mm or more.",
    );
    expect(narrowStandWords(pieces, buttoned, { centre: 15.9 }, "in")).toBe(
      "Only 5/8 in at the centre seam: narrow for a button stand. Allow 1 ¼ in or more.",
    );
    expect([widenStand("cm"), widenStand("in")]).toEqual(["Make it 30 mm", "Make it 1 ¼ in"]);
    expect(narrowStandWords(pieces, buttoned, { centre: 29.9 }, "cm")).not.toBeNull();
    expect(narrowStandWords(pieces, buttoned, { centre: 30 }, "cm")).toBeNull();
    expect(narrowStandWords(pieces, zipped, {}, "cm")).toBeNull();
    expect(narrowStandWords(pieces, { ...buttoned, place: "side" }, {}, "cm")).toBeNull();
  });

  it("say where the centre front has a seam that gets as much", () => {
    const cupped = planOf({ ...testWork, pattern: { ...testWork.pattern, style: "midriff" } }).left.pieces;
    expect(narrowStandWords(cupped, buttoned, {}, "cm")).toContain("The centre front seam then has as much.");
  });

  it("stand on the first page where a back is on the sheet", () => {
    const down = { along: [12, 72, 132], spacing: 60, ends: [12, 12] } as const;
    const said = buttonSheetWords(pieces, names, down, buttoned, { centre: 30 }, "cm");
    expect(said).toHaveLength(3);
    expect(said[0]).toBe(
      "The allowance at the centre back is the button stand: at least the width of your button, and the facing turned in besides.",
    );
    expect(said[1]).toBe(
      "3 buttons: 60 mm from one to the next, the first 12 mm below the neck edge, the last 12 mm above the end of the opening.",
    );
    expect(said[2]).toContain("buttonholes on the other, each begun 3 mm outside the centre line");
    expect(buttonSheetWords(pieces, names, down, buttoned, {}, "cm")[1]).toContain("Only 15 mm at the centre seam");
    expect(buttonSheetWords(pieces, names, down, buttoned, null, "cm")[0]).toContain(
      "Add a button stand beyond the centre back",
    );
    expect(buttonSheetWords(pieces, ["front", "frontBasque"], down, buttoned, {}, "cm")).toEqual([]);
    expect(buttonSheetWords(pieces, names, null, zipped, {}, "cm")).toEqual([]);
  });
});
