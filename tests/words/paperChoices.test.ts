import { SHEET_FORMATS } from "../../src/core/decisions/paperChoice";
import { describe, expect, it } from "vitest";
import {
  allowanceRefusal,
  allowancesSummary,
  beforeCuttingSentence,
  fileAbout,
  formatWords,
  howToPrint,
  marginRefusal,
  paperFailureWords,
  previewSentence,
  progressWords,
  usualAllowancesSentence,
  usualEntry,
} from "../../src/words/paperChoices";

describe("papers", () => {
  // ISO 216 and ANSI/ASME Y14.1, to 1 mm and to an eighth of an inch; 297 mm is 11.69 in, 841 mm 33.11 in.
  it.each([
    ["A4", "A4 (21 × 29.7 cm)", "A4 (8 1/4 × 11 3/4 in)"],
    ["Letter", "Letter (21.6 × 27.9 cm)", "Letter (8 1/2 × 11 in)"],
    ["Tabloid", "Tabloid (27.9 × 43.2 cm)", "Tabloid (11 × 17 in)"],
    ["A0 roll", "A0 roll (84.1 cm wide)", "A0 roll (33 1/8 in wide)"],
    ["36 in roll", "36 in roll (91.4 cm wide)", "36 in roll (36 in wide)"],
  ] as const)("are told by their size: %s", (format, cm, inches) => {
    const plain = (text: string): string => text.replace("½", "1/2").replace("¼", "1/4").replace("¾", "3/4");
    expect(plain(formatWords(format, "cm"))).toBe(cm);
    expect(plain(formatWords(format, "in"))).toBe(inches);
  });

  it("of all kinds are printed at 100 %, the test square measured before anything is cut", () => {
    for (const format of SHEET_FORMATS) {
      const steps = howToPrint(format).join(" ");
      expect(steps).toContain("100 %");
      expect(steps).toMatch(/test square.*before you cut/);
    }
  });

  it("on a roll have nothing to join", () => {
    expect(howToPrint("A0 roll").join(" ")).not.toContain("join");
    expect(fileAbout("pdf", "A0 roll")).toContain("copy shop");
    expect(fileAbout("pdf", "A4")).toContain("to join");
  });
});

describe("what it comes to", () => {
  it("is told in whole centimetres or inches, to clear a table by", () => {
    expect(previewSentence(14, "A4", 724, 1063, "cm")).toBe(
      "14 pages with pieces, and a first page with this map. Joined they are about 72 × 106 cm.",
    );
    // 720 mm is 28.3 in, 1060 mm 41.7 in.
    expect(previewSentence(14, "Letter", 720, 1060, "in")).toContain("about 28 × 42 in");
    expect(previewSentence(1, "A3", 200, 300, "cm")).toContain(
      "1 page with pieces, and a first page with this map. The sheet is about 20 × 30 cm.",
    );
    expect(previewSentence(1, "A0 roll", 841, 1900, "cm")).toContain("The pieces take about 84 × 190 cm of it");
  });

  it("never says that it is done before it is", () => {
    expect(progressWords("writing", 0.999)).toBe("Writing the file: 99 %");
  });

  it("counts the checks that do not hold", () => {
    expect(beforeCuttingSentence(1)).toBe(
      "One check does not hold yet; the PDF says so too. Look at it before you cut.",
    );
    expect(beforeCuttingSentence(3)).toBe(
      "3 checks do not hold yet; the PDF says so too. Look at them before you cut.",
    );
  });
});

describe("allowances and edges", () => {
  it("refuse what nobody could cut or print", () => {
    expect(allowanceRefusal(80, "cm")).toBeNull();
    expect(allowanceRefusal(80.1, "cm")).toBe("An allowance can be 8.0 cm at the most.");
    expect([marginRefusal(5, "cm"), marginRefusal(25, "cm")]).toEqual([null, null]);
    expect(marginRefusal(4.9, "cm")).toBe("A white edge can be from 5 mm to 25 mm.");
    expect(marginRefusal(26, "in")).toMatch(/^A white edge can be from .* in to 1 in\.$/);
  });

  it("are the usual where the field is empty", () => {
    expect(usualEntry(15, "cm")).toBe("1.5");
    expect(usualEntry(30, "cm")).toBe("3");
    expect(usualAllowancesSentence("cm")).toContain("1.5 cm at seams and 3.0 cm at hems");
    expect(usualAllowancesSentence("in")).toContain("15 mm, about 5/8 in,");
  });

  it("say in their heading what is her own, and what could not be read", () => {
    expect([
      allowancesSummary(0, 0),
      allowancesSummary(1, 0),
      allowancesSummary(3, 0),
      allowancesSummary(3, 1),
    ]).toEqual([
      "Seam and hem allowances: the usual",
      "Seam and hem allowances: one of your own",
      "Seam and hem allowances: 3 of your own",
      "Seam and hem allowances: an entry is still to be put right",
    ]);
  });
});

describe("a piece that is too wide", () => {
  it.each([
    ["frontBasque-left", "The front basque"],
    ["front-12", "The front"],
    ["sideFront", "The side front"],
    ["x1", "A piece"],
  ])("is named by the start of its key: %s", (key, piece) => {
    expect(paperFailureWords({ code: "sheet/piece-too-wide", key, least: 950, width: 821 }, "cm").title).toBe(
      `${piece} is too wide for this roll.`,
    );
  });
});
