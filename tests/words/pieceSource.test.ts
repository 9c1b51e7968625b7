/** Whatever the pieces come from, the sheets say it, and say nothing that is not so. */
import { describe, expect, it } from "vitest";
import { cutFromWords, measuredOnTissue, piecesSentences, sourceWords } from "../../src/words/pieceSource";
import { testWork } from "../support/works";
import { sheetAbout } from "../../src/words/paperChoices";

const pattern = {
  style: "midriff" as const,
  tissue: {
    size: "12",
    pieces: { back: { waistDartMouth: 30 }, cup: { sideLength: 90, waistDartMouth: 40 } },
  },
};

describe("what the pieces are", () => {
  it("names what was measured, piece by piece, and calls the rest the stand-in's", () => {
    expect(measuredOnTissue(pattern, "fitted")).toBe(
      "Measured on your tissue along size 12: cup (under-bust dart’s mouth, side seam) and back (under-bust dart’s mouth). The rest is the stand-in’s.",
    );
    expect(measuredOnTissue(pattern, "standIn")).toBeNull();
    expect(measuredOnTissue(pattern, "own")).toBeNull();
  });

  it("stands on the sheet with the amounts, with what is measured on the pieces", () => {
    const told = (source: "standIn" | "fitted" | "own") =>
      piecesSentences(
        {
          nest: { source, labels: ["10", "12"], sizes: [], traced: [true, false] },
          levels: [],
          drafted: { bust: 80, waist: 50, hip: 60 },
          isEaseMeasured: false,
        },
        { unit: "cm", pattern: { ...testWork.pattern, ...pattern } },
      );
    expect(told("standIn")).toEqual(["Stand-in, drafted from the chart."]);
    expect(told("fitted")).toEqual(["Stand-in, fitted to your tissue.", measuredOnTissue(pattern, "fitted")]);
    expect(told("own")).toEqual(["Your own, size 10."]);
  });

  it.each(["pieces", "overlay"] as const)("calls only a draft a draft where %s are cut", (kind) => {
    const of = (source: "standIn" | "fitted" | "own") =>
      `${cutFromWords(kind, pattern, source).join(" ")} ${sheetAbout(kind, source)}`;
    expect(of("standIn")).toContain("own draft");
    expect(of("standIn")).not.toContain("measured");
    expect(of("fitted")).toContain("own draft");
    expect(of("fitted")).toContain("The rest is the stand-in’s.");
    expect(of("own")).not.toContain("draft");
    expect(of("own")).toContain("our own pieces");
  });

  it("is one word each", () => {
    expect((["standIn", "fitted", "own"] as const).map(sourceWords)).toEqual([
      "Stand-in",
      "Stand-in, fitted to your tissue",
      "Your own pieces",
    ]);
  });
});
