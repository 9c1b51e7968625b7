/** Tables with single spaces between their cells: how each line is cut, as one reads it who knows what a size chart is. */
import { describe, expect, it } from "vitest";
import { cutSpaced, isSizeName } from "../../../src/core/chart/pasteSpaced";

/** The cells of each line with strokes between them, behind the number of the line. */
function cut(text: string): readonly string[] | string {
  const spaced = cutSpaced(text);
  if ("fault" in spaced) return spaced.fault.code;
  return spaced.lines.map((line) => `${line[0]?.line}: ${line.map((cell) => cell.text).join("|")}`);
}

const ALONG = "Bust 80 84 88\nWaist 62 66 70\nHip 86 90 94";
const ALONG_CUT = ["2: Bust|80|84|88", "3: Waist|62|66|70", "4: Hip|86|90|94"];

describe("sizes along the top", () => {
  it.each([
    ["UK Size 8 10 12", "1: UK Size|8|10|12"],
    ["8 10 12", "1: |8|10|12"],
    ["XS S M", "1: |XS|S|M"],
    ["Size A B C", "1: Size A B C"],
    ["Size 8 10 12w", "1: Size|8|10|12w"],
    ["US 4 6 8", "1: US|4|6|8"],
    ["Size 8* 10 –", "1: Size|8*|10|–"],
    ["Height 164 166 168", "1: Height|164|166|168"],
    ["Height 164 166", "1: Height 164 166"],
    ["Cut from 150 cm cloth", "1: Cut from 150cm cloth"],
    ["Body measurements in cm", "1: Body measurements in cm"],
    ["Old men 8 10 12", "1: Old men|8|10|12"],
    ["4 of 8", "1: 4 of 8"],
  ])("under %j", (first, wanted) => expect(cut(`${first}\n${ALONG}`)).toEqual([wanted, ...ALONG_CUT]));

  it.each(["8 10", "Size 8 10 12 14", "UK 8 10"])("under %j it is not certain whose they are", (first) =>
    expect(cut(`${first}\n${ALONG}`)).toBe("paste/labels-uncertain"),
  );

  it("with sizes named once as they should be, others of another number are left out", () =>
    expect(cut(`Size 8 10 12\n${ALONG}\nUS 4 6`)).toEqual(["1: Size|8|10|12", ...ALONG_CUT]));

  it("of another number in one line than in the others", () =>
    expect(cut("Size 8 10\nBust 80 84\nWaist 62\nHip 86 90")).toBe("paste/labels-uncertain"));

  it("with headings of several words, and values that are none", () =>
    expect(cut("To fit bust 80 84 –\nBack waist length 40 41 42\nFull hip 86 90 94")).toEqual([
      "1: To fit bust|80|84|–",
      "2: Back waist length|40|41|42",
      "3: Full hip|86|90|94",
    ]));
});

describe("sizes down the side", () => {
  it.each([
    [
      "Size Bust Waist Full hip\n8 80 62 86\n10 84 66 90",
      ["1: Size|Bust|Waist|Full hip", "2: 8|80|62|86", "3: 10|84|66|90"],
    ],
    ["Bust Waist Hip\n8 80 62 86", ["1: size|Bust|Waist|Hip", "2: 8|80|62|86"]],
    ["Bust Waist Hip\n80 62 86", ["1: Bust|Waist|Hip", "2: 80|62|86"]],
    ["UK size Full bust The waist Hip\n8 80 62 86", ["1: UK size|Full bust|The waist|Hip", "2: 8|80|62|86"]],
    ["Size Bust Waist Hip\ncm cm cm\n8 80 62 86", ["1: Size|Bust|Waist|Hip", "2: |cm|cm|cm", "3: 8|80|62|86"]],
    ["Size Bust Waist Hip\nin cm cm cm\n8 80 62 86", ["1: Size|Bust|Waist|Hip", "2: in|cm|cm|cm", "3: 8|80|62|86"]],
    ["Size Bust Waist Hip\ncm to fit\n8 80 62 86", ["1: Size|Bust|Waist|Hip", "2: cm to fit", "3: 8|80|62|86"]],
    ["Size Bust Waist Hip\ncm\n8 80 62 86", ["1: Size|Bust|Waist|Hip", "2: cm", "3: 8|80|62|86"]],
    ["Size Bust Waist Hip\ncm 1 cm\n8 80 62 86", ["1: Size|Bust|Waist|Hip", "2: cm|1cm", "3: 8|80|62|86"]],
    ["Size Bust Waist Hip\ncm cm\n8 80 62 86", ["1: Size|Bust|Waist|Hip", "2: cm|cm", "3: 8|80|62|86"]],
    [
      "The chart\nSize Bust Waist Hip\n8 80 62 86\nTaken on the body",
      ["1: The chart", "2: Size|Bust|Waist|Hip", "3: 8|80|62|86", "4: Taken on the body"],
    ],
    ["Size Bust Finished bust Waist Hip\n8 80 90 62 86", ["1: Size|Bust|Finished bust|Waist|Hip", "2: 8|80|90|62|86"]],
    ["Size Bust Bust finished Waist Hip\n8 80 90 62 86", ["1: Size|Bust|Bust finished|Waist|Hip", "2: 8|80|90|62|86"]],
    [
      "Size Bust Waist Hip\n8 80 62 86\nSize Bust in Waist in Hip in\n8 31 24 33",
      ["1: Size|Bust|Waist|Hip", "2: 8|80|62|86", "3: Size|Bust in|Waist in|Hip in", "4: 8|31|24|33"],
    ],
    ["Size Bust Bust Waist Hip\n8 80 90 62 86", "paste/headings-uncertain"],
    ["Size Bust Waist Hip\n8 62 80 86", "paste/headings-uncertain"],
    ["Size Bust Waist Hip\n8 80 62 60", "paste/headings-uncertain"],
    ["Size Bust Waist Hip\n8 80 62 62", "paste/headings-uncertain"],
    // A waist is 0.45 of bust and hip at the least.
    ["Size Bust Waist Hip\n8 100 45 90", ["1: Size|Bust|Waist|Hip", "2: 8|100|45|90"]],
    ["Size Bust Waist Hip\n8 100 44.9 90", "paste/headings-uncertain"],
    // Of the two ways to part these the one goes whose finished girths are no smaller than the body's.
    ["Size Bust Finished bust Waist Hip\n8 80 80 62 86", "paste/headings-uncertain"],
    ["Size Bust Finished bust Waist Hip\n8 80 79 62 86", ["1: Size|Bust Finished|bust|Waist|Hip", "2: 8|80|79|62|86"]],
    ["Size Bust Waist Hip\n8 80 62\n10 84 66 90", "paste/headings-uncertain"],
    ["Size Bust Waist Hip\n8 80 62 86\n10 84 66", "paste/headings-uncertain"],
    ["Size Bust Waist Hip\n8 80", "paste/headings-uncertain"],
    ["Size Bust Waist Hip", "paste/headings-uncertain"],
    ["Size Bust Back Front Waist Hip\n8 80 40 62 86", "paste/headings-uncertain"],
    ["Size Bust Waist Hip\n8 36 80 62 86 94 99", "paste/headings-uncertain"],
  ])("%j", (text, wanted) => expect(cut(text)).toEqual(wanted));

  it.each([
    // Headings that no size goes under, or that say two things at once, are none.
    ["Size Bust Waist Hip cm\n8 80 62 86", ["1: Size|Bust|Waist|Hip cm", "2: 8|80|62|86"]],
    ["Size Bust cm Waist cm Hip cm\n8 80 62 86", ["1: Size|Bust cm|Waist cm|Hip cm", "2: 8|80|62|86"]],
    ["Size High bust Bust Waist Hip\n8 76 80 62 86", ["1: Size|High bust|Bust|Waist|Hip", "2: 8|76|80|62|86"]],
    ["Size Bust Waist Hip Height\n8 80 62 86 164", ["1: Size|Bust|Waist|Hip|Height", "2: 8|80|62|86|164"]],
    ["Bust Waist Hip Height\n8 80 62 86 164", ["1: size|Bust|Waist|Hip|Height", "2: 8|80|62|86|164"]],
    [
      "Size Bust in Bust cm Waist in Waist cm Hip in Hip cm\n8 31 80 24 62 34 86",
      ["1: Size|Bust in|Bust cm|Waist in|Waist cm|Hip in|Hip cm", "2: 8|31|80|24|62|34|86"],
    ],
    ["Size Bust cm Bust cm Waist Hip\n8 80 81 62 86", "paste/headings-uncertain"],
    ["Size Bust Waist Hip\nSize Bust Waist Hip\n8 80 62 86", "paste/headings-uncertain"],
    [
      "Size Bust Waist Hip Height Colour\n8 80 62 86 164 5",
      ["1: Size|Bust|Waist|Hip|Height|Colour", "2: 8|80|62|86|164|5"],
    ],
    ["UK US Bust Waist Hip\n8 4 80 62 86", ["1: UK|US|Bust|Waist|Hip", "2: 8|4|80|62|86"]],
    // Rows of fewer than three values are notes.
    ["Size Bust Waist Hip\n8 80 62 86\nsee page 4", ["1: Size|Bust|Waist|Hip", "2: 8|80|62|86", "3: see|page|4"]],
    // What is sewn is no smaller than what is worn, in every row.
    ["Size Hip Finished hip Waist Bust\n8 86 96 62 80\n10 90 89 66 84", "paste/headings-uncertain"],
  ])("parted: %j", (text, wanted) => expect(cut(text)).toEqual(wanted));

  it("of a line with more than 40 words nothing is made", () => {
    const words = (count: number) => `Size Bust Waist Hip ${"round ".repeat(count - 4).trim()}`;
    expect(cut(`${words(41)}\n8 80 62 86`)).toBe("paste/headings-uncertain");
    expect(cut(`${words(40)}\n8 80 62 86`)).toEqual([
      `1: Size|Bust|Waist|Hip ${"round ".repeat(36).trim()}`,
      "2: 8|80|62|86",
    ]);
  });
});

describe("what stays one cell", () => {
  it.each([
    ["31 1/2", "31-1/2"],
    ["31 ½", "31½"],
    ["31 11/16", "31-11/16"],
    ['31" (80)', '31"(80)'],
    ["80 cm", "80cm"],
    ["31½ inches", "31½inches"],
    ['31 "', '31"'],
    ["80 *", "80*"],
    ["86 – 90", "86-90"],
    ["86 to 90", "86-90"],
    ["80 (31½)", "80(31½)"],
    ["80 cm (31½ in)", "80cm(31½in)"],
    ['31 1/2" / 80 cm', '31-1/2"/80cm'],
    ["31 1/3", "31-1/3"],
    ["31 3/4", "31-3/4"],
    ["31 7/8", "31-7/8"],
    ["31 31/32", "31-31/32"],
    ["31 ¾", "31¾"],
    ["80 cms", "80cms"],
    ["800 mm", "800mm"],
    ["31 inch", "31inch"],
    ["31 in", "31in"],
    ["31 in.", "31in."],
    ["31 ins.", "31ins."],
    ["31½ in", "31½in"],
    ["31 ″", "31″"],
    ["31 ”", "31”"],
    ["80 ‡§", "80‡§"],
    ["31½ †", "31½†"],
    ["86 - 90", "86-90"],
    ["86 — 90", "86-90"],
    ["33½ to 34", "33½-34"],
    ["80 ( 31½)", "80(31½)"],
    ["80 cms ( 31)", "80cms(31)"],
    ['31" / 80', '31"/80'],
    ["31½ / 80", "31½/80"],
    ["80 cm / 31½ in.", "80cm/31½in."],
    ["*80", "*80"],
    ["½", "½"],
    ["--", "--"],
    ["80\u2009cm", "80cm"],
    ["80\u00a0cm", "80cm"],
    ["80\u202fcm", "80cm"],
  ])("%j", (value, one) =>
    expect(cut(`Bust ${value} 84\nWaist 62 66`)).toEqual([`1: Bust|${one}|84`, "2: Waist|62|66"]),
  );

  it.each(["31 1/5", "31 1/25", "80 meal", "80 inn", "80 /", "80 (x)", "80 to x", "80 - x", "80 *x"])(
    "%j does not",
    (value) => {
      const spaced = cutSpaced(`Bust ${value}`);
      expect("lines" in spaced && (spaced.lines[0]?.length ?? 0)).not.toBe(2);
    },
  );

  it("each cell is counted in its line", () => {
    const along = cutSpaced(`Size 8 10 12\nof the body\n${ALONG}`);
    expect("lines" in along && along.lines.map((line) => line.map(({ line: at, cell }) => [at, cell]))).toEqual([
      [1, 2, 3, 4].map((cell) => [1, cell]),
      [[2, 1]],
      ...[3, 4, 5].map((at) => [1, 2, 3, 4].map((cell) => [at, cell])),
    ]);
    const down = cutSpaced("a chart\nBust Waist Hip\n8 80 62 86");
    expect("lines" in down && down.lines.map((line) => line.map(({ line: at, cell }) => [at, cell]))).toEqual([
      [[1, 1]],
      ...[2, 3].map((at) => [1, 2, 3, 4].map((cell) => [at, cell])),
    ]);
  });

  // Each of these took hours.
  it.each(["8 ".repeat(9_000), "8".repeat(18_000), `8 below ${"8½ ".repeat(6_000)}`])(
    "a line of numbers is cut, however long it is",
    (text) => expect(cutSpaced(text)).toHaveProperty("lines"),
  );

  it.each([
    // Two girths and a word more make a line of headings; a number makes it none, and so does a girth too few.
    ["Bust Waist\n80 62 86", ["1: Bust|Waist", "2: 80|62|86"]],
    ["Bust Waist Hip 2\n8 80 62 86", ["1: Bust|Waist|Hip|2", "2: 8|80|62|86"]],
    ["Size Bust Back\n8 80 40", ["1: Size|Bust|Back", "2: 8|80|40"]],
    ["Size 8 10 12\nUK 4 6 8", ["1: Size|8|10|12", "2: UK|4|6|8"]],
    ["Bust", ["1: Bust"]],
    ["80 84 Bust", ["1: 80|84|Bust"]],
    ["Bust Bust Size\n8 80 62", ["1: Bust|Bust|Size", "2: 8|80|62"]],
  ])("%j is cut at every space", (text, wanted) => expect(cut(text)).toEqual(wanted));

  it.each([
    ["Body 8 10", "1: Body 8 10"],
    ["Body 8 10 12", "1: Body|8|10|12"],
    ["Body 8 10 12 14", "1: Body 8 10 12 14"],
    ["Length 40 41 x", "1: Length 40 41 x"],
    ["Cloth 140 150 –", "1: Cloth|140|150|–"],
    ["Old 8 10", "1: Old 8 10"],
    ["– – –", "1: – – –"],
  ])("over the girths %j names no sizes for certain", (first, wanted) =>
    expect(cut(`${first}\n${ALONG}`)).toEqual([wanted, ...ALONG_CUT]),
  );

  it("text without any girth is cut at every space", () =>
    expect(cut("hello  big\u00a0world\n\n8 9")).toEqual(["1: hello|big|world", "3: 8|9"]));
});

describe("the name of a size", () => {
  it.each(["8", "10w", "UK12", "12/14", "38-40", "S", "xl", "XXXXL", "2XL", "3x", "12X", "OS", "m", "EUR38", "8."])(
    "%j",
    (word) => expect(isSizeName(word)).toBe(true),
  );
  it.each(["", "Bust", "X", "XXXXXL", "SM", "AUST8", "8*", "-8", "x8x x", "SS", "boss"])("no %j", (word) =>
    expect(isSizeName(word)).toBe(false),
  );
});
