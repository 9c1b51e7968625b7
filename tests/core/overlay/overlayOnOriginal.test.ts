/** Strips of a work read from a file, laid by their crosses on the lines of that very file. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { overlayOf } from "../../../src/core/overlay/overlayOf";
import { withoutStrips } from "../../../src/words/overlay";
import { alteredLinnet, onOriginal } from "../../support/onOriginal";
import { planOf } from "../../support/works";

const file = readFileSync(new URL("../../../demo-data/linnet.svg", import.meta.url), "utf8");

/** mm. What the reading of a line may be off. */
const READ = 0.05;

describe("the overlay of pieces read from a file", () => {
  const laid = onOriginal(file);

  it("has a strip for the dart that was moved and one for the back's waist", () => {
    expect(laid.map(({ patch }) => patch.piece)).toEqual(expect.arrayContaining(["front", "back"]));
    const moved = laid.flatMap(({ patch }) => patch.of).some((of) => of.kind === "dart" && of.dart === "frenchDart");
    expect(moved).toBe(true);
  });

  it("lies with its crosses on the file's corners", () => {
    for (const { crosses } of laid) {
      expect(crosses.length).toBeGreaterThan(1);
      for (const { off } of crosses) expect(off).toBeLessThan(READ);
    }
  });

  it("lies with its printed line on the file's", () => {
    for (const { printed } of laid) {
      expect(printed.length).toBeGreaterThan(4);
      expect(Math.max(...printed.map(({ off }) => off))).toBeLessThan(READ);
    }
  });

  it("calls a piece without a name of ours by hers", () => {
    const plan = planOf(alteredLinnet(file));
    const { same } = overlayOf(plan, ["other1"], 277);
    expect(same).toEqual([{ piece: "other1", half: null, label: "collar" }]);
    expect(withoutStrips({ same, tooMuch: [], patches: [] })).toEqual(["As printed, nothing to lay on: the collar."]);
  });

  it("leaves it where the line is altered", () => {
    for (const { changed } of laid) expect(Math.max(...changed.map(({ off }) => off))).toBeGreaterThan(1);
  });
});
