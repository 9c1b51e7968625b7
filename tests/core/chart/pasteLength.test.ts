/** One cell of a chart: what is written, and what it comes to by 10 mm a centimetre and 25.4 an inch. */
import { describe, expect, it } from "vitest";
import { readCell, unitOfCell, withoutFootnote } from "../../../src/core/chart/pasteLength";
import { figuresOf, isBlank, lengthNamed } from "../../../src/core/chart/pasteLengths";
import type { PastedUnit } from "../../../src/core/chart/pasteWords";
import type { ChartLength } from "../../../src/core/chart/sizeChart";

describe("a cell with one length", () => {
  it.each<readonly [string, PastedUnit, number]>([
    ["80", "cm", 800],
    ["80", "in", 2032],
    ["800", "mm", 800],
    ["62,5", "cm", 625],
    ["62.5 cm", "in", 625],
    ["625mm", "in", 625],
    ["31 1/2", "in", 800.1],
    ["31-1/2", "in", 800.1],
    ["31½", "in", 800.1],
    ['31½"', "cm", 800.1],
    ["80 cms", "in", 800],
    [" 80* ", "cm", 800],
    ["†80", "cm", 800],
    ["80¹", "cm", 800],
  ])("%j in %s is %d mm", (text, unit, value) => expect(readCell(text, unit)).toEqual({ value, range: null }));

  it.each(["", "–", "abc", "bust", "½ cm of cloth, half", "80 cm or so", "½ of it", "80 84", "80 –", "– 80", "-80"])(
    "%j is none",
    (text) => expect(readCell(text, "cm")).toBeNull(),
  );

  it("is none that is written longer than 40 characters", () => {
    expect(readCell(`80${" ".repeat(36)}cm`, "in")).toEqual({ value: 800, range: null });
    expect(readCell(`80${" ".repeat(37)}cm`, "in")).toBeNull();
    expect(readCell(`${" ".repeat(41)}80`, "cm")).toEqual({ value: 800, range: null });
  });
});

describe("a cell with a range", () => {
  const range = (from: number, to: number) => ({ value: (from + to) / 2, range: { from, to } });

  it.each<readonly [string, PastedUnit, number, number]>([
    ["86-90", "cm", 860, 900],
    ["86 – 90", "cm", 860, 900],
    ["86—90 cm", "in", 860, 900],
    ["86 cm - 90", "cm", 860, 900],
    ["86/90", "cm", 860, 900],
    ["86 / 90", "cm", 860, 900],
    ["86,5/90.5", "cm", 865, 905],
    ["860/900 mm", "cm", 860, 900],
    ["86 to 90", "cm", 860, 900],
    ["34 to 36 in", "cm", 863.6, 914.4],
    ['34-36"', "cm", 863.6, 914.4],
    ["31 1/2 - 33", "in", 800.1, 838.2],
    ["31-1/2-33", "in", 800.1, 838.2],
    // The widest that a size reaches: half as much again.
    ["60-90", "cm", 600, 900],
  ])("%j in %s", (text, unit, from, to) => {
    const wanted = range(from, to);
    expect(readCell(text, unit)).toEqual({ ...wanted, value: expect.closeTo(wanted.value, 1) });
  });

  it.each(
    "90-86|86-86|86/86|60-90.1|86-90-94|tomato 86|86 toto 90|about 86/90|86/90 cm 2|86/90/94|86-x|x-86|to|86 to".split(
      "|",
    ),
  )("%j is none", (text) => expect(readCell(text, "cm")).toBeNull());

  it.each(["86‐90", "86‑90", "86‒90", "86−90", "86 - 90 cms", "86cm-90cm", "860 mm to 90"])(
    "%j is one, whatever the stroke, each with its own unit",
    (text) => expect(readCell(text, "cm")).toEqual(range(860, 900)),
  );

  it.each(["34″-36″", "34”-36”", "34''-36''", "34-36 inches", "34 to 36 ins.", "34 in to 36 in.", "34-36′′"])(
    "%j is one in inches, the unit behind the second said for both",
    (text) => {
      const read = readCell(text, "cm");
      expect(read?.range).toEqual({ from: expect.closeTo(863.6, 9), to: expect.closeTo(914.4, 9) });
    },
  );

  it("whose first alone has a unit has the other in the chart's", () => {
    expect(readCell("34 in - 36", "in")?.range).toEqual({
      from: expect.closeTo(863.6, 9),
      to: expect.closeTo(914.4, 9),
    });
    expect(readCell("34 in - 36", "cm")).toBeNull();
  });

  it("keeps its middle to a tenth of a millimetre", () => {
    // 31½ in is 800.1, 32½ in 825.5 mm: 812.8 between them; 31 and 31½: 787.4 and 800.1, 793.75.
    expect(readCell("31½-32½", "in")?.value).toBe(812.8);
    expect(readCell("31-31½", "in")?.value).toBe(793.8);
  });
});

describe("a cell with one girth in two units", () => {
  it.each([
    ["80 cm (31½ in)", 800, 800.1],
    ["80 (31½)", 800, 800.1],
    ["80 [31 1/2]", 800, 800.1],
    ["31½/80", 800, 800.1],
    ['31 1/2" / 80 cm', 800, 800.1],
    ["80|31½", 800, 800.1],
    ["80 = 31½ inches", 800, 800.1],
    ["31½ in – 80", 800, 800.1],
    ["80 centimetres (31-1/2 ins.)", 800, 800.1],
    ["80cm(31½'')", 800, 800.1],
    ["80 - 31½", 800, 800.1],
    ["80 — 31½", 800, 800.1],
    ["80 ( 31½ )", 800, 800.1],
    ["80(31½)", 800, 800.1],
    ["80 centimeter (31½ inch)", 800, 800.1],
    ["80 centimetre (31½ in)", 800, 800.1],
    ["80 CMS (31½”)", 800, 800.1],
    ["80 cm (31½″)", 800, 800.1],
    ["80 cm (31½′′)", 800, 800.1],
    // 5/16 are 7.94 mm over 31 in, which is 787.4, 11/16 17.46: kept to a tenth.
    ["79.5 (31 5/16)", 795, 795.3],
    ["79,5 (31  5⁄16)", 795, 795.3],
    ["31 11/16 (80.5)", 805, 804.9],
    // Rounded to whole inches they are up to half an inch (13 mm with the rounding of the centimetres) apart.
    ["80 (31)", 800, 787.4],
    ["80 (32)", 800, 812.8],
    ["32 (80)", 800, 812.8],
  ])("%j is %d mm, or %d as inches have it", (text, cm, inch) => {
    expect(readCell(text, "cm")).toEqual({ value: cm, range: null });
    expect(readCell(text, "in")).toEqual({ value: inch, range: null });
    expect(readCell(text, "in", "cm")).toEqual({ value: cm, range: null });
    expect(readCell(text, "cm", "in")).toEqual({ value: inch, range: null });
    expect(readCell(text, "mm")).toEqual({ value: cm, range: null });
  });

  it.each([
    "80 [36]",
    "x80 (31½)",
    "80 (31½) x",
    "80 (36)",
    "80 (33)",
    "80 cm (33 in)",
    "80 in (31½ cm)",
    "80 cm / 36 in",
    "80 cm (82 cm)",
    "36 cm - 80 in",
  ])("%j is none: the two are not one girth", (text) => {
    expect(readCell(text, "cm")).toBeNull();
    expect(readCell(text, "in")).toBeNull();
  });

  it("two of one unit are a range", () =>
    expect(readCell("80 cm - 84 cm", "in")).toEqual({ value: 820, range: { from: 800, to: 840 } }));
});

describe("the unit of a cell", () => {
  it.each([
    ["80 cm", "cm"],
    ["80cms", "cm"],
    ["800 mm", "mm"],
    ["31 in", "in"],
    ["31 ins", "in"],
    ["31 inch", "in"],
    ["31½ INCHES", "in"],
    ['31"', "in"],
    ["31''", "in"],
    ["31′′", "in"],
    ["80 cm – 84 cm", "cm"],
    ["80 cm (31½ in)", null],
    ["80", null],
    ["cm", null],
    ["in 80", null],
    ["31.in", "in"],
    ["31″", "in"],
    ["31”", "in"],
    ["½in", "in"],
    ["31⅞ inches", "in"],
    ["31'", null],
    ["size in", null],
    ["", null],
  ])("%j: %s", (text, unit) => expect(unitOfCell(text)).toBe(unit));
});

describe("a mark that leads to a note", () => {
  it.each([
    [" * 80 ", "80"],
    ["**80", "80"],
    ["80 †‡", "80"],
    ["80²", "80"],
    ["80⁴", "80"],
    ["80⁷⁹", "80"],
    ["80(1)", "80(1)"],
    ["Hip (1) a", "Hip (1) a"],
    ["Hip (12)", "Hip (12)"],
    ["a * 80", "a 80"],
    ["Hip (1)", "Hip"],
    ["Hip [2] ", "Hip"],
    ["80 (31)", "80 (31)"],
    ["(1)", "(1)"],
    ["a *b", "a b"],
  ])("of %j leaves %j", (text, left) => expect(withoutFootnote(text).replace(/ +/, " ")).toBe(left));
});

describe("the name of a length", () => {
  it.each<readonly [string, ChartLength | null]>([
    ["Back waist length", "backWaistLength"],
    ["Nape to waist (cm)", "backWaistLength"],
    ["Back waist (nape to waist), in", "backWaistLength"],
    ["Front waist length", "frontWaistLength"],
    ["Side neck to waist, over bust", "frontWaistLength"],
    ["Shoulder length", "shoulderLength"],
    ["The shoulder seam", "shoulderLength"],
    ["Cross back", "acrossBack"],
    ["Back width*", "acrossBack"],
    ["Chest width", "acrossFront"],
    ["ACROSS FRONT", "acrossFront"],
    ["Neck", "neckBaseGirth"],
    ["Base of neck measurement", "neckBaseGirth"],
    ["Apex to apex inches", "bustPointWidth"],
    ["Bust points apart", "bustPointWidth"],
    ['Bust depth "', "sideNeckToBustPoint"],
    ["Under-bust", "underBustGirth"],
    ["Underbust girth millimetres", "underBustGirth"],
    ["Height¹", "height"],
    ["Body height", "height"],
    ["Back length", null],
    ["Waist", null],
    ["Height 2", null],
    ["½ shoulder", null],
    ["Shoulder to bust point", null],
    ["My shoulder", null],
    ["High neck", null],
    ["Shoulders", null],
    ["", null],
  ])("%j: %s", (text, length) => expect(lengthNamed(text)).toBe(length));

  const NAMES: readonly (readonly [ChartLength, readonly string[]])[] = [
    [
      "backWaistLength",
      ["back waist", "nape to waist", "back neck to waist", "neck to waist at back", "back waist, nape to waist"],
    ],
    ["frontWaistLength", ["front waist", "side neck to front waist", "side neck to waist over bust"]],
    ["shoulderLength", ["shoulder", "shoulder seam"]],
    ["acrossBack", ["across back", "cross back", "back width", "across back width"]],
    ["acrossFront", ["across front", "cross front", "across chest", "across front width", "chest width"]],
    ["neckBaseGirth", ["neck", "neck base", "base of neck", "neck girth", "neck base girth", "neck circumference"]],
    [
      "bustPointWidth",
      ["bust point width", "bust point to bust point", "bust points apart", "apex to apex", "bust separation"],
    ],
    ["sideNeckToBustPoint", ["bust depth", "side neck to bust point", "side neck point to bust point"]],
    ["underBustGirth", ["under bust", "underbust", "under bust girth"]],
    ["height", ["height", "body height"]],
  ];
  it.each(NAMES)("%s is named by itself alone", (measure, names) => {
    expect(names.map(lengthNamed)).toEqual(names.map(() => measure));
    expect(names.map((name) => lengthNamed(`left ${name}`))).toEqual(names.map(() => null));
    expect(names.map((name) => lengthNamed(`${name} left`))).toEqual(names.map(() => null));
  });

  it.each(
    [
      "mm|cm|cms|in|ins|inch|inches|millimetre|millimetres|millimeter|millimeters",
      'centimetre|centimetres|centimeter|centimeters|“″”|"|- length|measurement|(cm, in)',
    ].flatMap((units) => units.split("|")),
  )("with %j beside it is the same", (unit) => {
    expect(lengthNamed(`Shoulder ${unit}`)).toBe("shoulderLength");
    expect(lengthNamed(`${unit} shoulder`)).toBe("shoulderLength");
  });
});

describe("the figures of a length", () => {
  it.each(["", "-", "–", "—", "...", "--"])("%j is none printed", (text) => expect(isBlank(text)).toBe(true));
  it.each(["0", "- 5", "n/a", " "])("%j is something", (text) => expect(isBlank(text)).toBe(false));

  it("are taken where each is sure, and where there is one", () => {
    expect(figuresOf("backWaistLength", ["40", "–", "16 in"], "cm", "cm")).toEqual([400, null, 406.4]);
    expect(figuresOf("backWaistLength", ["40 (15¾)"], "cm", "in")).toEqual([400.1]);
    expect(figuresOf("backWaistLength", ["", "–"], "cm", "cm")).toBeNull();
    expect(figuresOf("backWaistLength", [], "cm", "cm")).toBeNull();
  });

  // A back waist of 24 to 60 cm can be; one of 28 to 50 is usual.
  it.each(["39-40", "abc", "23.9", "60.1"])("are none where one is %j", (text) =>
    expect(figuresOf("backWaistLength", ["40", text], "cm", "cm")).toBeNull(),
  );
  it.each(["24", "60"])("are taken where one is unusual, and can be: %s", (text) =>
    expect(figuresOf("backWaistLength", ["40", text], "cm", "cm")).toEqual([400, 10 * Number(text)]),
  );
});
