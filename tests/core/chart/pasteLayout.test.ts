/** Which column of a table holds what, as one reads it who knows size charts: cells are cut at tabs, "·" stands for nothing. */
import { describe, expect, it } from "vitest";
import { cutCells, type PastedCell } from "../../../src/core/chart/pasteCells";
import { findLayout } from "../../../src/core/chart/pasteLayout";
import type { TypedUnit } from "../../../src/core/measures/length";

const texts = (cells: readonly PastedCell[]): string => cells.map(({ text }) => (text === "" ? "·" : text)).join(" ");

interface Told {
  readonly kind: string;
  readonly columns: string;
  readonly units: string;
  readonly sizes: readonly string[];
  readonly lengths: string;
  readonly ignored: readonly string[];
}

/** A table with a stroke for each tab; what is told of it, or the code of what is amiss. */
function told(lines: readonly string[], exact = false, unit: TypedUnit = "cm"): Told | string {
  const found = findLayout(cutCells(lines.map((line) => line.replaceAll("|", "\t")).join("\n")).lines, unit, exact);
  if ("fault" in found) return found.fault.code;
  const { kind, columns, units, lengths, sizes, ignored } = found.layout;
  const list = (some: readonly (string | null)[]): string => some.map((one) => one ?? "·").join(" ");
  return {
    kind,
    columns: list(columns),
    units: list(units),
    lengths: list(lengths),
    sizes: sizes.map(texts),
    ignored: ignored.map(({ cell, column, length }) => `${cell.text}: ${column ?? "·"} ${length ?? "·"}`),
  };
}
const plain = (kind: string, columns: string, sizes: readonly string[], more: Partial<Told> = {}): Told => {
  const none = columns.replaceAll(/\S+/g, "·");
  return { kind, columns, units: none, lengths: none, sizes, ignored: [], ...more };
};
const unitsOf = (...lines: readonly string[]): string => {
  const found = told(lines);
  return typeof found === "string" ? found : found.units;
};
const columnsOf = (...lines: readonly string[]): string => {
  const found = told(lines);
  return typeof found === "string" ? found : found.columns;
};

const HEAD = "Size|Bust|Waist|Hip";
const EIGHT = "8|80|62|86";
const TEN = "10|84|66|90";
const DOWN = [HEAD, EIGHT, TEN];
const SIZES = ["8 80 62 86", "10 84 66 90"];
const LABELLED = "label bust waist hip";

describe("sizes down the side", () => {
  it("stand under headings, whatever stands over them", () => {
    expect(told(DOWN)).toEqual(plain("headings", LABELLED, SIZES));
    expect(told(["Our chart", "", ...DOWN, "Cut on the fold"])).toEqual(
      plain("headings", LABELLED, [...SIZES, "Cut on the fold"]),
    );
    expect(told(["Size|Colour|Bust|Waist|Hip|Shoulder", "8|red|80|62|86|12"])).toEqual(
      plain("headings", "label · bust waist hip ·", ["8 red 80 62 86 12"], {
        lengths: "· · · · · shoulderLength",
        ignored: ["Colour: · ·", "Shoulder: · shoulderLength"],
      }),
    );
  });

  it("are named by a first column without a heading, where no other names them", () => {
    expect(columnsOf("|Bust|Waist|Hip", EIGHT)).toBe(LABELLED);
    expect(columnsOf("|Size|Bust|Waist|Hip", "a|8|80|62|86")).toBe("· label bust waist hip");
    expect(columnsOf("Name it|Bust|Waist|Hip", EIGHT)).toBe("· bust waist hip");
    expect(columnsOf("Bust||Waist|Hip", "80|x|62|86")).toBe("bust · waist hip");
  });

  it("have the unit of a title, of ten words at most, before that of a note", () => {
    expect(unitsOf("Body, cm", ...DOWN)).toBe("cm cm cm cm");
    expect(unitsOf("All of these are what a body measures, cm", ...DOWN)).toBe("cm cm cm cm");
    expect(unitsOf("All of these here are what a body measures, in cm", ...DOWN)).toBe("· · · ·");
    expect(unitsOf(...DOWN, "in cm")).toBe("cm cm cm cm");
    expect(unitsOf("inches", ...DOWN, "in cm")).toBe("in in in in");
    expect(unitsOf("cm", "inches", ...DOWN)).toBe("· · · ·");
    expect(unitsOf("cm", "of bodies", "cm", ...DOWN)).toBe("cm cm cm cm");
  });

  it("have the units of a line under the headings, each its own before that", () => {
    expect(told([HEAD, "|cm|cm|cm", EIGHT])).toEqual(
      plain("headings", LABELLED, ["8 80 62 86"], { units: "cm cm cm cm" }),
    );
    expect(unitsOf(HEAD, "|in|cm|cm", EIGHT)).toBe("· in cm cm");
    expect(unitsOf("Size|Bust (in)|Waist|Hip", "|cm|cm|cm", EIGHT)).toBe("· in cm cm");
    // A line with anything else is none of units, nor an empty one.
    expect(told([HEAD, "|cm|cm|x", EIGHT])).toMatchObject({ sizes: ["· cm cm x", "8 80 62 86"], units: "· · · ·" });
    expect(unitsOf("mm", HEAD, "|in||", EIGHT)).toBe("mm in mm mm");
  });

  it("have one heading's unit for all where no other is named", () => {
    expect(unitsOf("Size|Bust (cm)|Waist|Hip", EIGHT)).toBe("cm cm cm cm");
    expect(unitsOf("Size|Bust (cm)|Waist in|Hip", EIGHT)).toBe("· cm in ·");
  });

  it("are of garments where a title says so, the last that says which", () => {
    expect(columnsOf("Finished garment", ...DOWN)).toBe("label finishedBust finishedWaist finishedHip");
    expect(columnsOf("Finished garment", "of a body", ...DOWN)).toBe(LABELLED);
    expect(columnsOf("of a body", "Finished garment", "by size", ...DOWN)).toBe(
      "label finishedBust finishedWaist finishedHip",
    );
    // Of a garment there are no lengths of a body.
    expect(told(["Size|Bust|Waist|Hip|Shoulder", "8|80|62|86|12"])).toMatchObject({
      lengths: "· · · · shoulderLength",
    });
    expect(told(["Finished", "Size|Bust|Waist|Hip|Shoulder", "8|80|62|86|12"])).toMatchObject({ lengths: "· · · · ·" });
  });

  it("are of bodies and garments by what stands over some headings", () => {
    const both = ["Size|Bust|Waist|Hip|Bust|Hip", "8|80|62|86|90|96"];
    expect(columnsOf("|Body|||Finished garment|", ...both)).toBe("label bust waist hip finishedBust finishedHip");
    expect(unitsOf("|Body, cm|||Garment, inches|", ...both)).toBe("· cm cm cm in in");
    // Where it has a number, or only a first cell, it is none over headings.
    expect(columnsOf("|Body 1|||Finished garment|", ...both)).toBe("paste/column-several");
    expect(columnsOf("Finished garment|||||", ...both)).toBe("paste/column-several");
    expect(columnsOf("Finished garment|||", ...DOWN)).toBe("label finishedBust finishedWaist finishedHip");
    expect(columnsOf("|Finished garment|Body|", ...DOWN)).toBe("label finishedBust waist hip");
  });

  it("of several tables are put beside those of the first, by their names", () => {
    const second = ["Finished garment", HEAD, "10|94|76|100", "8|90|72|96"];
    expect(told([...DOWN, ...second])).toEqual(
      plain("headings", `${LABELLED} finishedBust finishedWaist finishedHip`, [
        "8 80 62 86 90 72 96",
        "10 84 66 90 94 76 100",
      ]),
    );
    // Wherever the names stand.
    expect(told(["Colour|Size|Bust|Waist|Hip", "red|8|80|62|86", "red|10|84|66|90", ...second])).toMatchObject({
      columns: `· ${LABELLED} finishedBust finishedWaist finishedHip`,
      sizes: ["red 8 80 62 86 90 72 96", "red 10 84 66 90 94 76 100"],
    });
    // One that the second leaves out has nothing there.
    expect(told([...DOWN, ...second.slice(0, 3)])).toMatchObject({
      sizes: ["8 80 62 86 · · ·", "10 84 66 90 94 76 100"],
    });
    expect(told([...DOWN, "Finished garment", HEAD, "12|94|76|100"])).toBe("paste/labels-uncertain");
    expect(told([...DOWN, "Finished garment", "Bust|Waist|Hip", "94|76|100"])).toBe("paste/labels-uncertain");
    expect(told([HEAD, EIGHT, EIGHT, ...second])).toBe("paste/labels-uncertain");
    expect(told([...DOWN, HEAD, "10|94|76|100", "10|90|72|96"])).toBe("paste/labels-uncertain");
    expect(told([...DOWN, "Finished garment", HEAD, "10|94|76", "8|90|72|96"])).toBe("paste/headings-uncertain");
    expect(told([HEAD, "8|80|62", ...second])).toBe("paste/headings-uncertain");
    // A table of three and one of two tables more.
    expect(
      columnsOf(
        "Size|Bust cm|Waist cm",
        "8|80|62",
        "Size|Hip|Waist finished",
        "8|86|72",
        "Size|Bust in|Waist in",
        "8|31|24",
      ),
    ).toBe("label bust waist hip finishedWaist · ·");
  });
});

describe("one girth by several columns", () => {
  it("is the bust's, not the chest's beside it; a chest alone is the bust", () => {
    expect(columnsOf("Size|Chest|Bust|Waist|Hip", "8|78|80|62|86")).toBe("label · bust waist hip");
    expect(columnsOf("Size|Chest|Waist|Hip", EIGHT)).toBe(LABELLED);
    expect(columnsOf("Size|Finished chest|Chest|Waist|Hip", "8|90|80|62|86")).toBe("label finishedBust bust waist hip");
  });

  it("is the one in the unit wanted, else the first", () => {
    const both = ["Size|Bust in|Bust cm|Waist|Hip", "8|31|80|62|86"];
    expect(columnsOf(...both)).toBe("label · bust waist hip");
    expect(told(both, false, "in")).toMatchObject({ columns: "label bust · waist hip" });
    const metric = ["Size|Bust mm|Bust cm|Waist|Hip", "8|800|80|62|86"];
    expect(told(metric, false, "in")).toMatchObject({ columns: "label bust · waist hip" });
    expect(columnsOf("Size|Bust|Bust cm|Waist|Hip", "8|78|80|62|86")).toBe("paste/column-several");
  });

  it("is one where they print the same, and else nobody's", () => {
    expect(told(["Size|Bust|Bust|Waist|Hip", "8|80|80|62|86", "10|84|84|66|90"])).toMatchObject({
      columns: "label bust · waist hip",
      ignored: ["Bust: bust ·"],
    });
    expect(columnsOf("Size|Bust|Bust|Waist|Hip", "8|80|80|62|86", "10|84|85|66|90")).toBe("paste/column-several");
    expect(columnsOf("Size|Bust A|Bust B|Waist|Hip", "8|80|82|62|86")).toBe("paste/bust-by-cup");
    expect(columnsOf("Size|Bust A|Bust A|Bust|Waist|Hip", "8|80|80|80|62|86")).toBe("label bust · · waist hip");
    // Names of sizes: the first.
    expect(columnsOf("UK|US|Bust|Waist|Hip", "8|4|80|62|86")).toBe("label · bust waist hip");
  });
});

describe("sizes along the top", () => {
  const GIRTHS = ["Bust|80|84", "Waist|62|66", "Hip|86|90"];

  it("stand over their girths", () => {
    expect(told(["Size|8|10", ...GIRTHS])).toEqual(plain("transposed", LABELLED, SIZES));
    expect(told(GIRTHS)).toEqual(plain("transposed", "bust waist hip", ["80 62 86", "84 66 90"]));
    expect(told(["Size|8|10", ...GIRTHS, "Shoulder|12|12.5", "Colour|red|blue"])).toMatchObject({
      columns: "label bust waist hip · ·",
      lengths: "· · · · shoulderLength ·",
      sizes: ["8 80 62 86 12 red", "10 84 66 90 12.5 blue"],
      ignored: ["Shoulder: · shoulderLength", "Colour: · ·"],
    });
  });

  it("are as many as the longest line of girths has", () => {
    expect(told(["Size|8|10|12", "Bust|80|84", "Waist|62|66|70", "Hip|86|90|94"])).toMatchObject({
      sizes: ["8 80 62 86", "10 84 66 90", "12 · 70 94"],
    });
    // With cells that an empty one leaves no trace of, all are as long.
    expect(told(["Size|8|10|12", "Bust|80|84", "Waist|62|66|70", "Hip|86|90|94"], true)).toBe("paste/labels-uncertain");
    expect(told(["Size|8|10", ...GIRTHS], true)).toMatchObject({ sizes: SIZES });
  });

  it("have units in a column of their own, or in their headings, or in a title", () => {
    expect(told(["Size||8|10", "Bust|cm|80|84", "Waist|cm|62|66", "Hip|mm|860|900"])).toEqual(
      plain("transposed", LABELLED, ["8 80 62 860", "10 84 66 900"], { units: "· cm cm mm" }),
    );
    expect(unitsOf("Size|8|10", "Bust in|80|84", "Waist|62|66", "Hip cm|86|90")).toBe("· in · cm");
    expect(unitsOf("Inches", "Size|8|10", ...GIRTHS)).toBe("in in in in");
    expect(unitsOf("Size, cm|8|10", ...GIRTHS)).toBe("cm cm cm cm");
    const withUnits = ["Bust|cm|80|84", "Waist|cm|62|66", "Hip|cm|86|90"];
    expect(told(["Size|cm|8|10", ...withUnits])).toMatchObject({ columns: LABELLED, sizes: SIZES });
    expect(told(["Size|6|8|10", ...withUnits])).toBe("paste/labels-uncertain");
    // Not all of them units: cells like others.
    expect(told(["Size|7|8|10", "Bust|cm|80|84", "Waist|60|62|66", "Hip|cm|86|90"])).toMatchObject({
      sizes: ["7 cm 60 cm", "8 80 62 86", "10 84 66 90"],
    });
  });

  it("are of garments from where a line says so on", () => {
    expect(columnsOf("Size|8|10", ...GIRTHS, "Finished garment", "Bust|90|94")).toBe(`${LABELLED} finishedBust`);
    expect(columnsOf("Finished garment|8|10", ...GIRTHS)).toBe("label finishedBust finishedWaist finishedHip");
    expect(columnsOf("Finished garment", "Size|8|10", ...GIRTHS, "Body", "Bust|78|82")).toBe(
      "label finishedBust finishedWaist finishedHip bust",
    );
  });

  it("are named once, in words before countries", () => {
    const labelsOf = (...lines: readonly string[]): string => {
      const found = told([...lines, ...GIRTHS]);
      return typeof found === "string" ? found : found.sizes.map((size) => size.split(" ")[0]).join(" ");
    };
    expect(labelsOf("US|4|6", "Size|8|10")).toBe("8 10");
    expect(labelsOf("Size|8|10", "US|4|6")).toBe("8 10");
    expect(labelsOf("US|4|6", "EU|34|36")).toBe("4 6");
    expect(labelsOf("Size|8|10", "US size|4|6")).toBe("8 10");
    expect(labelsOf("|8|10")).toBe("8 10");
    expect(labelsOf("8|10")).toBe("8 10");
    expect(labelsOf("Chart|8|10")).toBe("8 10");
    expect(labelsOf("Sizes", "|8|10")).toBe("8 10");
    expect(columnsOf("|8|of us|12", ...GIRTHS)).toBe("· bust waist hip");
    // Below the girths a line of numbers is none of names.
    expect(columnsOf(...GIRTHS, "8|10")).toBe("bust waist hip ·");
    expect(columnsOf("Body", "Size|8|10", ...GIRTHS)).toBe(LABELLED);
  });

  it("are not certain where a line has another number of them", () => {
    expect(told(["Size|8|10|12", ...GIRTHS])).toBe("paste/labels-uncertain");
    expect(told(["Size|8", ...GIRTHS])).toBe("paste/labels-uncertain");
    expect(told(["Size|8||12", "Bust|80|84|88", "Waist|62|66|70", "Hip|86|90|94"])).toBe("paste/labels-uncertain");
    expect(told(["8|10|12", ...GIRTHS])).toBe("paste/labels-uncertain");
    expect(told(["Size|8|10", ...GIRTHS, "Size|8|10"])).toMatchObject({ columns: LABELLED });
    expect(told(["Size|8|10", ...GIRTHS, "Size|8|12"])).toBe("paste/labels-uncertain");
    // A length with more figures than sizes is not certain.
    expect(told(["Size|8|10", ...GIRTHS, "Shoulder|12|12.5|13"])).toMatchObject({ lengths: "· · · · uncertain" });
    expect(told(["Size|8|10", ...GIRTHS, "Shoulder|12"])).toMatchObject({ lengths: "· · · · shoulderLength" });
    expect(told(["Size|8|10", ...GIRTHS, "Shoulder|12"], true)).toMatchObject({ lengths: "· · · · uncertain" });
  });
});

describe("a table without headings", () => {
  const LABELS = "label bust waist hip";
  it("goes by how many columns it has", () => {
    expect(told(["80|62|86", "84|66|90"])).toEqual(plain("counted", "bust waist hip", ["80 62 86", "84 66 90"]));
    expect(told([EIGHT, TEN])).toEqual(plain("counted", LABELS, SIZES));
    expect(told(["8|80|62|86|90|72|96"])).toMatchObject({
      columns: `${LABELS} finishedBust finishedWaist finishedHip`,
    });
    expect(told(["80|62"])).toBe("paste/no-columns");
    expect(told(["8|80|62|86|90"])).toBe("paste/no-columns");
    expect(told(["a|b|c"])).toBe("paste/no-columns");
    expect(told(["one", EIGHT, "80|62"])).toMatchObject({ sizes: ["8 80 62 86", "80 62"] });
  });

  it("has the unit that stands over it, in a line of one cell", () => {
    expect(told(["Taken in cm", EIGHT])).toEqual(plain("counted", LABELS, ["8 80 62 86"], { units: "cm cm cm cm" }));
    expect(unitsOf("Taken|in cm", EIGHT)).toBe("· · · ·");
    expect(unitsOf("cm", "inches", EIGHT)).toBe("· · · ·");
    expect(unitsOf(EIGHT, "cm")).toBe("· · · ·");
  });

  it("is not understood where it names a girth all the same", () => {
    expect(told(["The bust first", EIGHT])).toBe("paste/headings-uncertain");
    expect(told([EIGHT, "and the hip"])).toBe("paste/headings-uncertain");
  });
});
