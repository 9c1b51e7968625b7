/** What front and back are told of an amount at the side seam adds up to what its title says. */
import { describe, expect, it } from "vitest";
import type { FitAlteration, Half } from "../../src/core/decisions/alteration";
import { checklistByPiece } from "../../src/words/checklist";
import { LENGTH, lengthOf } from "../follower/lengths";
import { sampleWork } from "../support/sampleWork";
import { planOf } from "../support/works";

const SIXTEENTH = 25.4 / 16;

/** The amount of the title and those of both edges, read back from the words; mm. */
function told(amount: number, half: Half | undefined, unit: "cm" | "in") {
  const fit: FitAlteration = {
    kind: "fit",
    id: "a",
    fit: "sideSeamWaist",
    amount,
    ...(half === undefined ? {} : { half }),
  };
  const groups = checklistByPiece(planOf({ ...sampleWork, unit, alterations: [fit] }), unit);
  const edges = (["front", "back"] as const).map((piece) => {
    const job = groups
      .find((group) => group.piece === piece)
      ?.lines.find(
        ({ text }) =>
          text.includes("the side seams in at the waist") || text.includes("the side seams out at the waist"),
      );
    const title = new RegExp(LENGTH).exec(job?.text ?? "")?.[0] ?? "";
    const edge =
      job?.moves.flatMap((move) => new RegExp(`(?:Mark|seam on by) (${LENGTH})`).exec(move)?.[1] ?? [])[0] ?? "";
    return { title: lengthOf(title), edge: lengthOf(edge), words: edge };
  });
  const [front, back] = edges;
  if (front === undefined || back === undefined) throw new Error("no edges");
  return { title: front.title, sum: front.edge + back.edge, words: edges.map(({ words }) => words) };
}

describe("what front and back are told at the side seam", () => {
  it.each([1, 2, 3, 4, 5, 6, 7])("of %i sixteenths on one half is the whole of them", (sixteenths) => {
    for (const way of [1, -1]) {
      const { title, sum } = told(way * sixteenths * SIXTEENTH, "left", "in");
      expect(title).toBeCloseTo(sixteenths * SIXTEENTH, 6);
      expect(sum).toBeCloseTo(title, 6);
    }
  });

  it.each([2, 3, 4, 5, 6, 7])("of %i sixteenths all round is half of them on the half", (sixteenths) => {
    const { title, sum } = told(sixteenths * SIXTEENTH, undefined, "in");
    expect(2 * sum).toBeCloseTo(title, 6);
  });

  it.each([3, 5, 7, 9])("of %i mm, which do not part evenly, adds up too", (mm) => {
    expect(told(mm, "right", "cm").sum).toBeCloseTo(mm, 6);
    expect(2 * told(mm, undefined, "cm").sum).toBeCloseTo(mm, 6);
  });

  it("is told to 1/32 in where sixteenths would not do", () => {
    expect(told(3 * SIXTEENTH, "left", "in").words).toEqual(["3/32 in", "3/32 in"]);
  });
});
