/** The measure sheet, as a reader has it: every measure, boxes to write in, and what was read last time. */
import { cleanup, render, screen, within } from "@testing-library/react";
import { afterEach, describe, expect, it, vi } from "vitest";
import { derivePlan } from "../../src/core/plan/derivePlan";
import { MEASURE_NAMES } from "../../src/core/measures/measure";
import type { Work } from "../../src/core/decisions/work";
import { blankWork } from "../../src/document/blank";
import { MeasureSheet } from "../../src/print/MeasureSheet";
import { measureWords } from "../../src/words/measures";
import { tapeNotes } from "../../src/words/tapeGuide";

afterEach(cleanup);

function show(work: Work, lastTime = true): HTMLElement {
  render(<MeasureSheet work={work} lastTime={lastTime} />);
  return screen.getByRole("article", { name: "Measure sheet" });
}

const textOf = (element: Element): string => (element.textContent ?? "").replaceAll("\u00A0", " ");
const rowsOf = (sheet: HTMLElement): readonly HTMLElement[] => within(sheet).getAllByRole("row").slice(1);
const rowOf = (sheet: HTMLElement, name: string): HTMLElement =>
  within(sheet).getByRole("row", { name: new RegExp(`^${name}`) });

/** 882 mm the mean of two readings, 34.72 in: to an eighth, 34 3/4. Waist 28 in exactly. */
const taken: Work = {
  ...blankWork("cm"),
  name: "Summer dress",
  tapes: [{ readings: { bustGirth: [881, 883], waistGirth: [711.2] } }],
};

describe("MeasureSheet", () => {
  it("works with nothing measured and no plan", () => {
    const work = blankWork("cm");
    expect(derivePlan(work).ok).toBe(false);
    const sheet = show(work);
    expect(within(sheet).getByRole("heading", { level: 3 }).textContent).toBe(work.name);
    expect(rowsOf(sheet)).toHaveLength(MEASURE_NAMES.length);
    expect(textOf(sheet)).not.toContain("last time");
  });

  it("has every measure in the order of the tape, drawn, named, told, with three boxes", () => {
    const sheet = show(blankWork("cm"));
    expect(rowsOf(sheet)).toHaveLength(14);
    rowsOf(sheet).forEach((row, index) => {
      const name = MEASURE_NAMES[index] ?? "height";
      const { name: iso, trade, where } = measureWords(name);
      expect(row.querySelectorAll(`svg[data-measure="${name}"]`)).toHaveLength(1);
      expect(textOf(within(row).getByRole("rowheader")).startsWith(iso)).toBe(true);
      expect(textOf(row)).toContain(trade ?? iso);
      expect(textOf(row)).toContain(where);
      expect(row.querySelectorAll(".ms-box > i")).toHaveLength(3);
    });
  });

  it("says once what holds for every measure, with the caution about pins, and that the sheet stays with her", () => {
    const sheet = show(blankWork("cm"));
    for (const { text } of tapeNotes("cm")) expect(textOf(sheet).split(text)).toHaveLength(2);
    expect(textOf(sheet)).toContain("Pins stay away from the skin");
    expect(textOf(sheet)).toContain("These notes stay with you.");
  });

  it("marks what no plan can do without", () => {
    const sheet = show(blankWork("cm"));
    const marked = [...sheet.querySelectorAll(".ms-need")].map((need) => need.closest("tr"));
    expect(marked).toEqual([rowOf(sheet, "Bust girth"), rowOf(sheet, "Waist girth")]);
  });

  it("gives in centimetres what was measured last time: the mean of the readings", () => {
    const sheet = show(taken);
    expect(textOf(rowOf(sheet, "Bust girth"))).toContain("last time 88.2 cm");
    expect(textOf(rowOf(sheet, "Waist girth"))).toContain("last time 71.1 cm");
    expect(textOf(sheet).split("last time")).toHaveLength(3);
    expect(within(sheet).getByRole("columnheader", { name: "First, cm" })).toBeDefined();
  });

  it("gives it in inches, with a line of 4 in to test the tape by", () => {
    const sheet = show({ ...taken, unit: "in", paper: "Letter" });
    expect(textOf(rowOf(sheet, "Bust girth"))).toContain("last time 34 ¾ in");
    expect(textOf(rowOf(sheet, "Waist girth"))).toContain("last time 28 in");
    expect(textOf(sheet)).not.toMatch(/\d (?:cm|mm)\b/);
    expect(sheet.querySelector('.ms-test i[data-unit="in"]')).not.toBeNull();
    expect(textOf(sheet)).toContain("4 in: lay your tape");
  });

  it("leaves it out where it is not wanted", () => {
    expect(textOf(show(taken, false))).not.toContain("last time");
  });

  it("is set for its paper, with its name and the pages counted at the foot", () => {
    const sheet = vi.spyOn(CSSStyleSheet.prototype, "replaceSync");
    const before = document.adoptedStyleSheets.length;
    show({ ...taken, paper: "Letter" });
    expect(document.adoptedStyleSheets).toHaveLength(before + 1);
    const rule = sheet.mock.lastCall?.[0] ?? "";
    expect(rule).toContain("size: letter");
    expect(rule).toContain("Measure\\20 sheet");
    expect(rule).not.toContain("checklist");
    expect(rule).toContain("counter(pages)");
    cleanup();
    expect(document.adoptedStyleSheets).toHaveLength(before);
  });

  it("calls a demo an invented one, and no real work so", () => {
    expect(textOf(show({ ...taken, invented: true }))).toContain("Invented demo");
    cleanup();
    expect(textOf(show(taken))).not.toContain("Invented demo");
  });
});
