import { cleanup, render, screen, within } from "@testing-library/react";
import { afterEach, describe, expect, it } from "vitest";
import { TRIAL_PLACES } from "../../src/core/decisions/trial";
import { derivePlan } from "../../src/core/plan/derivePlan";
import type { Work } from "../../src/core/decisions/work";
import { TrialRecord } from "../../src/print/TrialRecord";
import { printCases } from "./printCases";

afterEach(cleanup);

function show(work: Work): HTMLElement {
  const plan = derivePlan(work);
  if (!plan.ok) throw new Error(plan.failure.code);
  render(<TrialRecord work={work} plan={plan.value} />);
  return screen.getByRole("article", { name: "Trial record" });
}

const textOf = (element: Element): string => (element.textContent ?? "").replaceAll("\u00A0", " ");

/** What a toile can show, as it is ringed. */
const SIGNS = [
  "fold across",
  "fold along",
  "drag lines to",
  "gapes",
  "tight",
  "stands off in a point",
  "too flat",
  "leans forward",
  "leans back",
  "rides up",
  "drops",
  "too far out",
  "too far in",
  "slips",
  "cuts in",
  "dart ends here",
  "bust point here",
  "does not meet",
  "overlaps",
];

describe("TrialRecord", () => {
  it("opens with lines to fill in by hand and what the toile was cut by", () => {
    const sheet = show(printCases.sample);
    const blanks = [...sheet.querySelectorAll(".pc-by-hand .pc-blank")].map(textOf);
    expect(blanks).toEqual(["Day", "Trial no.", "Cloth", "Pinned by", "Bra", "Shoes"]);
    expect(textOf(sheet)).toContain("Frame 14; cup B");
    expect(textOf(sheet)).toContain("Left and right halves are cut alike.");
  });

  it("says whose left it is: before the wearer her right half is at the left, behind her the left one", () => {
    const sheet = show(printCases.sample);
    const named = [...sheet.querySelectorAll(".tr-halves")].map((row) => [...row.children].map(textOf));
    expect(named).toEqual([
      ["Your right half", "Your left half"],
      ["Your left half", "Your right half"],
    ]);
    const drawn = [...sheet.querySelectorAll("svg")].map((svg) =>
      [...svg.querySelectorAll("[data-half]")].map((half) => [
        half.getAttribute("data-half"),
        half.getAttribute("transform"),
      ]),
    );
    expect(drawn).toEqual([
      [
        ["right", "scale(-1 1)"],
        ["left", null],
      ],
      [
        ["left", "scale(-1 1)"],
        ["right", null],
      ],
    ]);
  });

  it("names what is done to one half alone, and draws the halves apart", () => {
    const sheet = show(printCases.halves);
    expect(textOf(sheet)).toContain("The halves differ:");
    expect(textOf(sheet)).toMatch(/by 8 mm, on the right half only\./);
    expect(textOf(sheet)).toMatch(/at the waist, 6 mm, on the left half only\./);
    const [front] = sheet.querySelectorAll("svg");
    const outlines = [...(front?.querySelectorAll("[data-half]") ?? [])].map((half) =>
      half.querySelector(".tr-outline")?.getAttribute("d"),
    );
    expect(outlines).toHaveLength(2);
    expect(outlines[0]).not.toBe(outlines[1]);
  });

  it("offers in each row what can be seen, how it is told, which half, and room to write", () => {
    const sheet = show(printCases.letter);
    const rows = within(sheet).getAllByRole("row").slice(1);
    expect(rows.length).toBeGreaterThanOrEqual(4);
    for (const [index, row] of rows.entries()) {
      const [number, ...cells] = [...row.children];
      expect(number?.textContent).toBe(String(index + 1));
      const words = cells.map((cell) => [...cell.querySelectorAll("span")].map((one) => textOf(one).trim()));
      expect(words).toEqual([
        [],
        SIGNS,
        ["pinched", "let out", "off by", "cannot say"],
        [],
        ["both", "left", "right"],
        [],
      ]);
    }
    expect(within(sheet).getAllByRole("columnheader").map(textOf)).toEqual([
      "Line",
      "Place",
      "What is seen",
      "How told",
      "How much, in",
      "Half",
      "What I changed",
    ]);
  });

  it("numbers every place of a bodice to the hip on its drawing, each half by itself", () => {
    const sheet = show(printCases.sample);
    const numbers = [...sheet.querySelectorAll(".tr-number text")].map((one) => Number(one.textContent));
    // A bodice that hangs from its shoulders has no straps.
    const wanted = TRIAL_PLACES.flatMap((place, index) => (place === "strap" ? [] : [index + 1]));
    expect([...new Set(numbers)].toSorted((a, b) => a - b)).toEqual(wanted);
    const count = (place: (typeof TRIAL_PLACES)[number]): number =>
      numbers.filter((number) => number === TRIAL_PLACES.indexOf(place) + 1).length;
    // Two halves; a side and a waist dart in front and one behind; once where both halves meet.
    expect([count("frontArmhole"), count("dartEnd"), count("betweenBusts"), count("closureWaist")]).toEqual([
      2, 6, 1, 1,
    ]);
  });

  it("asks first for both bust points and for lengths as sewn, with the plan's beside them", () => {
    const sheet = show(printCases.sample);
    const points = [...sheet.querySelectorAll(".tr-points p")].map(textOf);
    expect(points.slice(0, 2)).toEqual(["your left halfOut  mmDown  mm", "your right halfOut  mmDown  mm"]);
    const lengths = [...sheet.querySelectorAll(".tr-lengths p")].map(textOf);
    expect(lengths.map((text) => text.replace(/ +plan [\d.]+ cm$/u, ""))).toEqual([
      "Bust",
      "Waist",
      "Hip",
      "Centre front",
      "Centre back",
      "Shoulder seam",
    ]);
    // Body 738 and an ease of the pattern's own, as the plan says of its waist.
    const plan = derivePlan(printCases.sample);
    if (!plan.ok) throw new Error(plan.failure.code);
    const waist = plan.value.levels.find(({ level }) => level === "waist")?.finished ?? 0;
    expect(lengths[1]).toContain(`plan ${(waist / 10).toFixed(1)} cm`);
  });

  it("lists what both halves were sewn with", () => {
    expect(textOf(show(printCases.sample))).toMatch(/Sewn with: Front: shorten the waist dart by 15 mm, /u);
  });

  it("asks for sitting, reaching and breathing only with every pin out, as the caution has it", () => {
    const sheet = show(printCases.sample);
    const moving = within(sheet).getByRole("heading", { name: "Basted, every pin out" }).parentElement;
    const standing = within(sheet).getByRole("heading", { name: "Standing at ease, pinned shut" }).parentElement;
    for (const what of ["Can sit", "Can reach forwards and raise both arms", "Can breathe in deeply"]) {
      expect(textOf(moving ?? sheet)).toContain(what);
      expect(textOf(standing ?? sheet)).not.toContain(what);
    }
    expect(textOf(sheet)).toContain("Do not sit, reach or undress until every one is out");
    expect(textOf(sheet)).toContain("A helper.");
    expect(textOf(sheet)).toMatch(/Slits\. Lift the cloth well off the body/u);
  });

  it("draws smaller, then leaves out rows, where more is told above them, so that it stays on one page", () => {
    const holds = (work: Work): readonly [number, number] => {
      const sheet = show(work);
      const drawing = sheet.querySelector(".tr-figures svg")?.getAttribute("height") ?? "";
      const rows = within(sheet).getAllByRole("row").length - 1;
      cleanup();
      return [rows, Number.parseFloat(drawing)];
    };
    const plain: Work = { ...printCases.sample, name: "Bodice", paper: "A4", alterations: [] };
    const fits = ["swayBack", "roundBack", "shoulderSlope", "forwardShoulder", "armholeGape", "necklineGape"] as const;
    const told = (half?: "left" | "right"): Work["alterations"] =>
      fits.map((fit) => ({
        kind: "fit",
        id: `${fit} ${half}`,
        fit,
        amount: 6,
        ...(half === undefined ? {} : { half }),
      }));
    const [rows, drawing] = holds(plain);
    const [rowsOfSix, drawnSmaller] = holds({ ...plain, alterations: told() });
    expect([rows, drawing, rowsOfSix]).toEqual([5, 70, 5]);
    // Six alterations fill two lines of the page or three, of 3.9 mm each.
    expect(70 - drawnSmaller).toBeGreaterThanOrEqual(2 * 3.9);
    const [fewer, least] = holds({ ...plain, alterations: [...told("left"), ...told("right")] });
    expect(fewer).toBeLessThanOrEqual(5);
    expect(least).toBeLessThan(drawnSmaller);
  });

  it("speaks of straps where the toile has them", () => {
    const { pattern } = printCases.plain;
    const strapped = show({ ...printCases.plain, pattern: { ...pattern, style: "midriff" } });
    expect(textOf(strapped)).toContain("Straps stay on the shoulders");
    const numbers = [...strapped.querySelectorAll(".tr-number text")].map((one) => one.textContent);
    expect(numbers).toContain(String(TRIAL_PLACES.indexOf("strap") + 1));
    // Cut to the waist, with no shoulder of its own.
    for (const place of ["neckPoint", "shoulder", "frontHip", "backHem", "closureHip"] as const)
      expect(numbers).not.toContain(String(TRIAL_PLACES.indexOf(place) + 1));
    cleanup();
    expect(textOf(show({ ...printCases.sample, alterations: [] }))).toContain("Shoulder seams on the shoulders");
  });
});
