import { describe, expect, it } from "vitest";
import { MEASURE_NAMES } from "../../src/core/measures/measure";
import { readingsAgree } from "../../src/core/measures/repeatability";
import { figureLandmarks } from "../../src/drawing/tapeFigure";
import { landmarkWords, tapeGuide, tapeHelpWords, tapeNotes } from "../../src/words/tapeGuide";

/** Never said of a body. */
const UNKIND = /\b(?:fat|thin(?! layer)|big|abnormal|wrong body|flaw|flabby|ideal|normal)\b/i;

describe("tapeGuide", () => {
  it("says of every measure how the tape lies and who can take it, in whole sentences", () => {
    const guides = MEASURE_NAMES.map(tapeGuide);
    expect(new Set(guides.map(({ helpHow }) => helpHow)).size).toBe(MEASURE_NAMES.length);
    for (const { how, helpHow } of guides) {
      expect(how).toMatch(/^[A-Z].{15,}\.$/);
      expect(helpHow).toMatch(/^[A-Z].{15,}\.$/);
      expect(`${how} ${helpHow}`).not.toMatch(UNKIND);
    }
  });

  // Common practice, no source: one's own hands cannot reach these without moving what is measured.
  it.each(["acrossBack", "backWaistLength", "shoulderLength"] as const)(
    "asks for a helper with %s, and says what to do without",
    (measure) => {
      expect(tapeGuide(measure).help).toBe("helper");
      expect(tapeGuide(measure).helpHow.length).toBeGreaterThan(60);
    },
  );

  it("has words for each way of being helped", () => {
    expect(new Set((["alone", "mirror", "helper"] as const).map(tapeHelpWords)).size).toBe(3);
  });
});

describe("landmarkWords", () => {
  it("says how to find every point that is lettered", () => {
    const names = new Set(MEASURE_NAMES.flatMap((measure) => figureLandmarks(measure).map(({ name }) => name)));
    const words = [...names].map(landmarkWords);
    expect(new Set(words.map(({ name }) => name)).size).toBe(names.size);
    expect(new Set(words.map(({ find }) => find)).size).toBe(names.size);
    for (const { find } of words) expect(find).toMatch(/^[a-z].{15,}[^.]$/);
  });
});

describe("tapeNotes", () => {
  it("covers what to wear, how to stand, measuring twice, the tape itself and pins", () => {
    const said = tapeNotes("cm")
      .map(({ title, text }) => `${title} ${text}`)
      .join("\n");
    for (const about of [
      /bra/,
      /both feet/,
      /out/,
      /finger/,
      /Measure twice/,
      /between/,
      /ruler/,
      /Pins stay away from the skin/,
      /thread or narrow elastic/,
      /side neck/,
    ]) {
      expect(said).toMatch(about);
    }
    expect(said).not.toMatch(UNKIND);
  });

  it("asks for a third reading where the tape step asks for one", () => {
    const said = tapeNotes("cm").find(({ title }) => title === "Measure twice")?.text ?? "";
    const [usual, atShoulder] = (/([\d.]+) cm \(at the shoulder ([\d.]+) cm\)/.exec(said) ?? [])
      .slice(1)
      .map((cm) => Number(cm) * 10);
    for (const name of MEASURE_NAMES) {
      const limit = (name === "shoulderLength" ? atShoulder : usual) ?? 0;
      // Half as much agrees there, and half as much again does not.
      expect(readingsAgree(name, [500, 500 + limit / 2])).toBe(true);
      expect(readingsAgree(name, [500, 500 + 1.5 * limit])).toBe(false);
    }
  });

  it("speaks in one unit only", () => {
    const twice = (unit: "cm" | "in") => tapeNotes(unit).find(({ title }) => title === "Measure twice")?.text ?? "";
    expect(twice("cm")).toContain("2.5 cm");
    expect(twice("cm")).not.toContain("3/8");
    expect(twice("in")).toContain("1 in");
    expect(twice("in")).not.toMatch(/\b(?:cm|mm)\b/);
  });
});
