import { FIT_NAMES } from "../../src/core/decisions/fitNames";
import { describe, expect, it } from "vitest";
import { projectFiles, readProjectFile, sourceFiles } from "./source";
import { lengthsWritten, NO_LENGTHS, sentencesIn } from "./wordsRules";

describe("the texts of src", () => {
  it("hold no sentence in the core", () => {
    const core = sourceFiles().filter((file) => file.startsWith("src/core/"));
    expect(core.length).toBeGreaterThan(100);
    expect(core.flatMap((file) => sentencesIn(file, readProjectFile(file)))).toEqual([]);
  });

  it("have no length written out: each is told by a formatter, in the wearer's unit", () => {
    expect(sourceFiles().flatMap((file) => lengthsWritten(file, readProjectFile(file)))).toEqual([]);
  });

  it("still have every text that is let pass", () => {
    const all = sourceFiles().map(readProjectFile).join("\n");
    expect(NO_LENGTHS.filter(({ text }) => !all.includes(text))).toEqual([]);
  });

  it("tell every fit alteration in a file of its name", () => {
    const files = projectFiles();
    for (const layer of ["src/core/alterations/fit", "src/words/alterations"])
      expect(FIT_NAMES.filter((name) => !files.includes(`${layer}/${name}.ts`))).toEqual([]);
  });
});

describe("the scanner of lengths", () => {
  it.each([
    `export const a = "Draw a line 2 cm above the waist.";`,
    `export const a = "within 2mm of it";`,
    `export const a = "a 4-in square";`,
    "export const a = `gathers spread ${b} by 30 mm each`;",
    "export const a = `spread by ${30} mm`;",
    `export const a = "spread by 30" + " mm";`,
    `export const a = "5/8 in wide";`,
    `export const a = "1 ½ inches";`,
    `export const a = "½ in";`,
    `export const a = "2.5 cm";`,
    `export const a = "2,5 centimetres";`,
    `export const a = "half an inch";`,
    `export const a = "a quarter of an inch";`,
    `export const a = "to within a few millimetres";`,
    `export const a = "two centimeters up";`,
    `export const a = "34 ½″";`,
    `export const a = { hint: "up to 6 mm" };`,
    `export type A = "36 in";`,
  ])("sees one in %s", (source) => {
    expect(lengthsWritten("src/words/x.ts", source)).toHaveLength(1);
  });

  it.each([
    `export const A = () => <p>about 15 mm wide</p>;`,
    `export const A = () => <p>about {15} mm wide</p>;`,
    `export const A = () => <B hint="about 15 mm" />;`,
    "export const A = () => <B hint={`about 15 mm`} />;",
    `export const A = () => <p>{"about 15 mm"}</p>;`,
  ])("sees one in %s", (source) => {
    expect(lengthsWritten("src/ui/x.tsx", source)).toHaveLength(1);
  });

  it.each([
    "export const a = `${formatAmount(20, unit)} above the waist`;",
    "export const a = `${20 * scale}mm`;",
    `export const a = "size 12 inside the chart";`,
    `export const a = "page 3 of 12";`,
    `export const a = "Write it like 34 1/2.";`,
    `export const a = "Use cm, mm or in, or leave it out.";`,
    `export const a = "Keep to centimetres or to inches, never both.";`,
    `export const a = "v2in";`,
    `// 2 cm above the waist\nexport const a = 20;`,
    `export const a = ["36 in roll", "Write 88.5 in place of 88,5"];`,
  ])("sees none in %s", (source) => {
    expect(lengthsWritten("src/words/x.ts", source)).toEqual([]);
  });
});

describe("the scanner of sentences", () => {
  it.each([
    `export const a = "Draw the armhole anew.";`,
    "export const a = `Move ${b} to the ${c}`;",
    "export const a = `${b} is not the ${c}`;",
    `export const a = "cut it" + " off here";`,
    `export const a = fail("cut along the line");`,
    `throw new Error("cut along the line");`,
    `invariant("cut along the line", "piece");`,
  ])("sees one in %s", (source) => {
    expect(sentencesIn("src/core/x.ts", source)).toHaveLength(1);
  });

  it.each([
    `export const a = invariant(b, "point of a ring");`,
    "export const a = invariant(b, `${c}: the mouth of ${d}`);",
    "throw new CoreBug(`${a}: the curve from ${b} would be stretched`);",
    `throw new CoreBug("the curve " + name + " would be stretched");`,
    "export const a = `C${b} ${c} ${d}`;",
    `export const a = "alteration/not-on-this-style";`,
    `export const a = "A0 roll";`,
    `import { a } from "../geometry/point";`,
    `/** Draw the armhole anew from here. */\nexport const a = 1;`,
  ])("sees none in %s", (source) => {
    expect(sentencesIn("src/core/x.ts", source)).toEqual([]);
  });
});
