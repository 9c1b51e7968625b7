/** Words of getting in and of upper edges: what they tell is rounded so that it will do. */
import { describe, expect, it } from "vitest";
import type { ClosureReading } from "../../src/core/opening/gettingIn";
import { draftEdges } from "../../src/core/edges/draftEdges";
import type { StrapFigures } from "../../src/core/edges/edgesDraft";
import { setOf } from "../../src/core/pattern/pieceSet";
import {
  closureOutcome,
  levelMarkWords,
  missingWords,
  openingWords,
  showingWords,
  zipSoldWords,
} from "../../src/words/dressClosure";
import { notionWords } from "../../src/words/notions";
import {
  coverNotes,
  coverWords,
  edgeLimitWords,
  strapFigureWords,
  strapNotes,
  strapSeamWords,
} from "../../src/words/dressEdges";
import { invariant } from "../../src/core/result";
import { planOf, testWork } from "../support/works";

const reading: ClosureReading = {
  ways: [],
  passes: false,
  opening: 400,
  comesApart: false,
  leastOpening: 460.2,
  zip: { cm: { length: 510, unit: "cm" }, in: { length: 508, unit: "in" } },
  endsAt: { cm: null, in: null },
  levelMarks: [],
};
const zipped = { place: "centreBack", belowWaist: 0 } as const;

describe("an opening", () => {
  it("longer than the zips sold says where it ends for the longest, rounded down", () => {
    const long: ClosureReading = {
      ...reading,
      passes: true,
      opening: 600,
      leastOpening: 555,
      zip: { cm: { length: 600, unit: "cm" }, in: { length: 609.6, unit: "in" } },
      endsAt: { cm: 575, in: 584.6 },
    };
    expect(zipSoldWords(long, zipped, "cm")).toContain("end the opening 57.5 cm from the top, for a zip of 60 cm.");
    // 584.6 is 23.016 in.
    expect(zipSoldWords(long, zipped, "in")).toContain("end the opening 23 in from the top, for a zip of 24 in.");
    expect(closureOutcome(zipped, long, "cm")).toBe("centre back; lets you in");
    // Of the inches one is long enough as it is.
    const one = { ...long, opening: 579, endsAt: { cm: 575, in: null } };
    expect(zipSoldWords(one, zipped, "cm")).toMatch(
      /^Buy a zip of 24 in, the next longer sold, and shorten it from below\. Or end the opening 57\.5 cm from the top/,
    );
    const zip = { what: "zip", count: 1, length: 600, width: null, sold: long.zip, endsAt: long.endsAt } as const;
    expect(notionWords(zip, "cm").amount).toBe("60 cm, the opening ended 57.5 cm from the top");
    expect(notionWords({ ...zip, endsAt: one.endsAt }, "cm").amount).toMatch(
      /57\.5 cm from the top; or 24 in for it as it is$/,
    );
    expect(notionWords({ ...zip, sold: { cm: null, in: null }, length: null }, "cm").amount).toContain("lets you in");
  });

  it("that is buttoned has no tapes to be marked", () => {
    const marked: ClosureReading = { ...reading, levelMarks: [{ at: "waist", from: 410 }] };
    expect(levelMarkWords(marked, { ...zipped, buttons: 8 }, "cm")).not.toMatch(/zip|tape/);
    expect(levelMarkWords(marked, zipped, "cm")).toMatch(/^Mark both tapes alike/);
  });

  it("too short says by how much, rounded up, and warns", () => {
    expect(openingWords(reading, "cm")).toMatch(
      /^The opening is 40\.0 cm long: too short by 61 mm\. 46\.1 cm is the least/,
    );
    expect(openingWords(reading, "cm")).toContain("Do not force it");
    // 460.2 is 18.118 in, so the next eighth, 18 1/8; and 60.2 is 2.37 in, so the next sixteenth, 2 3/8.
    expect(openingWords(reading, "in")).toContain("too short by 2 3/8 in. 18 1/8 in is the least");
    expect(openingWords({ ...reading, leastOpening: null }, "cm")).toContain("no opening in this seam lets you in");
  });

  it("names the zip, and what to do where none is sold", () => {
    expect(zipSoldWords(reading, zipped, "cm")).toMatch(/^For the least opening: buy a zip of 51 cm or 20 in/);
    expect(zipSoldWords({ ...reading, passes: true }, zipped, "in")).toMatch(/^Buy a zip of 20 in or 51 cm/);
    const none = { ...reading, passes: true, zip: { cm: null, in: null } };
    expect(zipSoldWords(none, zipped, "cm")).toContain("off the roll");
    expect(zipSoldWords(none, { ...zipped, buttons: 8 }, "cm")).toBeNull();
    // Buttons are for a centre back.
    expect(zipSoldWords(none, { ...zipped, place: "side", buttons: 8 }, "cm")).toContain("off the roll");
    expect(zipSoldWords({ ...none, comesApart: true }, zipped, "cm")).toBeNull();
  });
});

describe("a cloth that shows through", () => {
  const advice = { recommended: "lining", chosen: "lining", isThere: false, showing: ["side", "hem"] } as const;

  it("has each seam named with how it is finished, alike ones together", () => {
    const finishes = [
      { of: "side", by: "frenchSeam" },
      { of: "princess", by: "narrow" },
      { of: "darts", by: "narrow" },
    ] as const;
    expect(showingWords({ ...advice, finishes })).toBe(
      "What shows through: side seams as French seams; princess seams and darts sewn twice and trimmed close.",
    );
    expect(showingWords({ ...advice, finishes: [] })).toBeNull();
  });

  it("says where its lining is missing", () => {
    expect(missingWords({ ...advice, finishes: [] })).toContain("no lining yet");
    expect(missingWords({ ...advice, isThere: true, finishes: [] })).toBeNull();
  });
});

describe("upper edges", () => {
  const pieces = setOf(planOf({ ...testWork, pattern: { ...testWork.pattern, style: "midriff" } }).left.pieces);
  const drafted = (straps: Parameters<typeof draftEdges>[0]["straps"], facingDepth?: number, bindingWidth?: number) =>
    draftEdges({
      edges: {
        ...(facingDepth === undefined ? {} : { facingDepth }),
        ...(bindingWidth === undefined ? {} : { bindingWidth, neck: "binding" as const }),
      },
      straps,
      bodice: [pieces, pieces],
      isLined: false,
      closure: zipped,
      allowances: {},
    });

  it("a strap other than its seams is told of", () => {
    const strap = (width: number) => invariant(drafted({ kind: "plain", width, braStrap: 15 }).strap, "strap").left;
    expect(strapSeamWords(strap(40), "cm")).toBeNull();
    expect(strapSeamWords(strap(12), "cm")).toContain("40 mm wide: sew it in their middle");
    expect(strapSeamWords(strap(60), "cm")).toContain("hold no wider strap");
    expect(coverWords(strap(12), "cm")).toBe("It does not cover the strap under it: that takes 25 mm.");
    expect(coverWords(strap(30), "cm")).toBe("It covers the strap under it.");
    const tied = invariant(drafted({ kind: "tied" }).strap, "strap").left;
    expect(strapFigureWords(tied, "cm")).toContain("each tie");
  });

  it("straps are told once where they are alike, and of each half in what they differ", () => {
    const one: StrapFigures = {
      kind: "plain",
      width: 20,
      seamWidth: 20,
      asked: 20,
      length: 400,
      way: 410,
      coversBra: true,
      coversFrom: 20,
      elastic: null,
      fromCentreBack: 97,
    };
    const told = (right: StrapFigures) =>
      strapNotes({ left: one, right }, "cm").map(({ text, isDoubt }) => [text, isDoubt]);
    const plain = "20 mm wide, 40.0 cm long; its middle sewn 9.7 cm from the centre back along the edge.";
    const covers = "It covers the strap under it.";
    expect(told(one)).toEqual([
      [plain, false],
      [covers, false],
    ]);
    expect(told({ ...one, length: 410 })).toEqual([
      [`Left half: ${plain}`, false],
      ["Right half: 20 mm wide, 41.0 cm long; its middle sewn 9.7 cm from the centre back along the edge.", false],
      [covers, false],
    ]);
    // What is told of one alone is told of that.
    expect(told({ ...one, seamWidth: 24, coversBra: false }).slice(1)).toEqual([
      [
        "Right half: its seams on cup and back are 24 mm wide: sew it in their middle, and finish the edge on either side.",
        false,
      ],
      ["Left half: it covers the strap under it.", false],
      ["Right half: it does not cover the strap under it: that takes 20 mm.", true],
    ]);
    expect(coverNotes({ left: one, right: { ...one, coversBra: false } }, "cm")).toEqual([
      "Left half: it covers the strap under it.",
      "Right half: it does not cover the strap under it: that takes 20 mm.",
    ]);
    expect(coverNotes({ left: one, right: one }, "cm")).toEqual([covers]);
    const silent = { ...one, coversBra: null, coversFrom: null };
    expect(coverNotes({ left: silent, right: silent }, "cm")).toEqual([]);
  });

  it("what can't be had is told as it is made", () => {
    expect(edgeLimitWords(drafted(null, 45), "cm")).toEqual([]);
    expect(edgeLimitWords(drafted(null, 10), "cm")).toEqual([
      "Facings can be 25 mm deep at the least here: so they are drawn.",
    ]);
    expect(edgeLimitWords(drafted(null, 400), "cm")[0]).toMatch(/^Facings can be \d+ mm deep at the most here/);
    expect(edgeLimitWords(drafted(null, undefined, 90), "cm")).toEqual([
      "Bindings can be 40 mm wide at the most here: so they are drawn.",
    ]);
  });
});
