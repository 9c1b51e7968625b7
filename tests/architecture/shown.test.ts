import { beforeAll, describe, expect, it } from "vitest";
import { madeByHand, NOT_SHOWN, NOT_WORDS, shownIn } from "./shownRules";
import { readProjectFile, sourceFiles } from "./source";

/** The rooms that show something, or print it. The core has its own scan; documents and readers say nothing. */
const SHOWING = /^src\/(?:ui|print|paper|drawing|cli|store|main)\b/;
const LANGUAGE = "src/words/terms/language.ts";

describe("another language", () => {
  const files = sourceFiles();
  const showing = files.filter((file) => SHOWING.test(file));
  const saying = files.filter((file) => (SHOWING.test(file) || file.startsWith("src/words/")) && file !== LANGUAGE);
  const shown: string[] = [];
  const made: string[] = [];

  // File by file, so that both scans read one tree.
  beforeAll(() => {
    for (const file of saying) {
      const source = readProjectFile(file);
      if (SHOWING.test(file)) shown.push(...shownIn(file, source).map((text) => `${file}: ${text}`));
      made.push(...madeByHand(file, source).map((what) => `${file}: ${what}`));
    }
  });

  it("would be one folder: no text that is read stands outside the words", () => {
    expect(showing.length).toBeGreaterThan(300);
    expect(shown).toEqual([]);
  });

  it("would be one room for numbers, days, lists and plurals", () => {
    expect(made).toEqual([]);
  });

  it("has the page name it as the room does", () => {
    expect(readProjectFile("index.html")).toContain('<html lang="en-GB">');
    expect(readProjectFile(LANGUAGE)).toContain('LOCALE = "en-GB"');
  });

  it("lets nothing pass that is not there any more", () => {
    const gone = [...NOT_SHOWN, ...NOT_WORDS].filter(({ file }) => !files.some((one) => file.test(one)));
    expect(gone).toEqual([]);
  });
});

describe("the scan of what is read", () => {
  it.each([
    "const A = () => <p>Cancel</p>;",
    'const A = () => <p>{"Cancel"}</p>;',
    'const A = (b: boolean) => <p>{b ? "Close" : null}</p>;',
    "const A = (b: string) => <p>{`Take ${b}`}</p>;",
    'const A = () => <button aria-label="Close" />;',
    "const A = (b: string) => <button title={`Take out: ${b}`} />;",
    'const A = (b: boolean) => <Field label={b ? "Waist" : "Hip"} />;',
    'const A = () => <PartPlace part={B} name="Guesses" />;',
    'const a = "Take it again";',
    "const a = (b: string) => `Nothing of ${b} was changed`;",
    'const a = fail("no such file");',
  ])("sees one in %s", (source) => {
    expect(shownIn("src/ui/x.tsx", source)).toHaveLength(1);
  });

  it.each([
    "const A = () => <p>{say.cancel}</p>;",
    'const A = () => <p className="note doubt">{" "}· 2 ×</p>;',
    'const A = () => <button aria-label={say.takeOutOf(title)} type="button" name="half" />;',
    'invariant(a, "point of a ring");',
    'throw new CoreBug("no such point");',
    'import { a } from "a b";',
    'type A = "test square";',
    'const a = "dress.skirt.hem";',
  ])("sees none in %s", (source) => {
    expect(shownIn("src/ui/x.tsx", source)).toEqual([]);
  });
});

describe("the scan of what is made by hand", () => {
  it.each([
    "const a = (b: number) => `${b.toFixed(1)} cm`;",
    "const a = (b: number) => b.toLocaleString();",
    "const a = (b: Date) => b.toLocaleDateString();",
    'const a = new Intl.ListFormat("en-GB");',
    'const a = (b: number) => `${b} ${b === 1 ? "line" : "lines"}`;',
    'const a = (b: string[]) => (b.length === 1 ? "it" : `all ${b.length}`);',
  ])("sees one in %s", (source) => {
    expect(madeByHand("src/words/x.ts", source)).toHaveLength(1);
  });

  it.each([
    "const a = (b: number) => Number(b.toFixed(2));",
    "const a = (b: number) => fixedDecimals(b, 1);",
    'const a = (b: number) => plural(b, { one: "line", other: "lines" });',
    'const a = (b: number) => (b % 2 === 1 ? "odd" : "even");',
    "const a = (b: number) => (b === 1 ? 2 : 3);",
  ])("sees none in %s", (source) => {
    expect(madeByHand("src/words/x.ts", source)).toEqual([]);
  });
});
