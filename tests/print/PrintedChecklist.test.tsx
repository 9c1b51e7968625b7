import { cleanup, render, screen, within } from "@testing-library/react";
import { afterEach, describe, expect, it } from "vitest";
import { checklistText } from "../../src/cli/text";
import { derivePlan } from "../../src/core/plan/derivePlan";
import type { Plan } from "../../src/core/plan/plan";
import { measuresOf, tapesOf } from "../../src/core/measures/tape";
import type { Work } from "../../src/core/decisions/work";
import { cssString, pageRule } from "../../src/print/pageRule";
import { PrintedChecklist } from "../../src/print/PrintedChecklist";
import { spreadOut } from "../../src/print/PieceDiagram";
import { tied } from "../../src/words/terms/setting";
import { checklistByPiece } from "../../src/words/checklist";
import { printCases } from "./printCases";

afterEach(cleanup);

function planOf(work: Work): Plan {
  const plan = derivePlan(work);
  if (!plan.ok) throw new Error(plan.failure.code);
  return plan.value;
}

function show(work: Work) {
  const plan = planOf(work);
  render(<PrintedChecklist work={work} plan={plan} />);
  return { plan, sheet: screen.getByRole("article", { name: "Alteration checklist" }) };
}

const textOf = (element: Element): string => (element.textContent ?? "").replaceAll("\u00A0", " ");

describe("PrintedChecklist", () => {
  it("opens with the names, the demo's warning and lines to fill in by hand", () => {
    const { sheet } = show(printCases.sample);
    expect(within(sheet).getByRole("heading", { level: 3 }).textContent).toBe(printCases.sample.name);
    expect(textOf(sheet)).toContain(printCases.sample.pattern.name);
    expect(textOf(sheet)).toContain("Invented demo");
    for (const label of ["Date", "Trial no.", "Cloth"]) expect(within(sheet).getByText(label)).toBeDefined();
  });

  it("draws a piece once, and both its halves only where they come out different", () => {
    const captions = (sheet: HTMLElement): readonly string[] =>
      [...sheet.querySelectorAll("figcaption")]
        .filter((caption) => textOf(caption).endsWith("half"))
        .map((caption) => `${textOf(caption.closest("section")?.querySelector("h5") ?? caption)}: ${textOf(caption)}`);
    const { plain } = printCases;
    const right = { kind: "fit", id: "r", fit: "armholeGape", amount: 12, half: "right" } as const;
    expect(captions(show({ ...plain, alterations: [] }).sheet)).toEqual([]);
    cleanup();
    // The back is the same on both.
    expect(captions(show({ ...plain, alterations: [right] }).sheet)).toEqual(["Front: Left half", "Front: Right half"]);
  });

  it("says what to leave out where a skirt takes the place of the basque, on the sheet as in the text", () => {
    const skirt = { kind: "circle", share: 0.5, length: 600 } as const;
    const said = (work: Work): readonly boolean[] =>
      [textOf(show(work).sheet), checklistText(work, planOf(work)).replaceAll(/\s+/g, " ")].map((text) =>
        text.includes(
          "The skirt of your dress takes the place of the front basque and back basque: leave out what is said of these here",
        ),
      );
    const { sample, plain } = printCases;
    expect(said({ ...sample, dress: { skirt } })).toEqual([true, true]);
    cleanup();
    expect(said({ ...sample, dress: {} })).toEqual([false, false]);
    cleanup();
    // A pattern that ends at the waist has none.
    expect(said({ ...plain, dress: { skirt } })).toEqual([false, false]);
  });

  it("calls no real work an invented demo", () => {
    const { sheet } = show(printCases.plain);
    expect(textOf(sheet)).not.toContain("Invented demo");
  });

  it("gives every job once, with a box to tick and its amount", () => {
    const { plan, sheet } = show(printCases.many);
    const walks = plan.checklist.filter(({ step }) => step.kind === "walk").length;
    const lines = checklistByPiece(plan, "cm")
      .filter(({ piece }) => piece !== null)
      .flatMap((group) => group.lines);
    const rows = [...sheet.querySelectorAll(".pc-job")];
    // Redraws stand in the line that draws their dart.
    expect(rows).toHaveLength(lines.length);
    rows.forEach((row, index) => {
      const line = lines[index];
      expect(row.querySelectorAll(".pc-tick")).toHaveLength(1);
      expect(textOf(row)).toContain(line?.text);
      expect(textOf(row.querySelector(".pc-amount") ?? row)).toBe(line?.amount ?? "");
    });
    expect(sheet.querySelectorAll("[data-walked] tbody .pc-tick")).toHaveLength(walks);
  });

  it("gives the jobs of short lists side by side, each with its amount, in their order", () => {
    const { plan, sheet } = show(printCases.plain);
    const pair = sheet.querySelector(".pc-pair");
    expect([...(pair?.querySelectorAll("h5") ?? [])].map(textOf)).toEqual(["Front", "Back"]);
    const lines = checklistByPiece(plan, "cm")
      .filter(({ piece }) => piece !== null)
      .flatMap((group) => group.lines);
    const jobs = [...(pair?.querySelectorAll(".pc-job") ?? [])];
    expect(jobs.map((job) => textOf(job.querySelector(".pc-amount") ?? job))).toEqual(
      lines.map(({ amount }) => amount ?? ""),
    );
    expect(jobs.every((job, at) => textOf(job).includes(lines[at]?.text ?? "no such job"))).toBe(true);
  });

  it("says how sure the sizes are and what to measure again, before the order of work", () => {
    const { sheet } = show(printCases.sample);
    const text = textOf(sheet);
    expect(text).toMatch(/How sureSize 14, likely/);
    expect(text).toContain("Measure the bust twice more before you cut:");
    expect(text.indexOf("How sure")).toBeLessThan(text.indexOf("Order of work"));
  });

  it("says what was measured and is not altered, with its sum, before the order of work; her bust point where it is traced", () => {
    const { sample } = printCases;
    const { sheet } = show({ ...sample, tapes: tapesOf({ ...measuresOf(sample.tapes), backWaistLength: 370 }) });
    const section = sheet.querySelector(".pc-not-altered");
    expect(section?.querySelector("h4")?.textContent).toBe("Measured, not altered");
    expect(textOf(section ?? sheet)).not.toMatch(/Your bust point lies/);
    expect(textOf(sheet)).toMatch(
      /bust line and bust point\. Mark your own bust point .* from the centre front and .* straight from the side neck point\./,
    );
    expect(textOf(sheet).indexOf("Measured, not altered")).toBeLessThan(textOf(sheet).indexOf("Order of work"));
  });

  it("draws the cuts of a bust alteration where one is made, and says how far they open", () => {
    const { sheet } = show(printCases.fuller);
    const cuts = [...sheet.querySelectorAll(".pc-cuts")];
    expect(cuts).toHaveLength(1);
    // 975 against the 920 of size 14: 55 in all.
    expect(cuts[0]?.getAttribute("aria-label")).toMatch(
      /^The front in small, cut and moved: Open 2[78] mm at the bust point; centre part 1[78] mm longer$/,
    );
    cleanup();
    expect(show(printCases.sample).sheet.querySelectorAll(".pc-cuts")).toHaveLength(0);
  });

  it("says on both halves' seams whose they are where the halves differ", () => {
    const { sheet } = show(printCases.halves);
    const seams = textOf(sheet.querySelector("[data-walked]") ?? sheet);
    expect(seams).toContain("(left half)");
    expect(seams).toContain("(right half)");
  });

  it("leaves the sums out of a sheet that one page holds", () => {
    expect(textOf(show(printCases.plain).sheet)).not.toContain("The sums behind the sizes");
    cleanup();
    expect(textOf(show(printCases.sample).sheet)).toContain("The sums behind the sizes");
  });

  it("names the phases of each piece in their order, each once", () => {
    const { sheet } = show(printCases.fuller);
    const front = sheet.querySelector(".pc-piece");
    const phases = [...(front?.querySelectorAll(".pc-phase") ?? [])].map(textOf);
    expect(phases).toEqual(["Trace", "Blend", "Bust", "Darts", "True and check"]);
  });

  it("draws each piece once, and says its amounts to those who cannot see it", () => {
    const { plan, sheet } = show(printCases.sample);
    const drawings = within(sheet).getAllByRole("img");
    expect(drawings).toHaveLength(plan.left.pieces.length);
    for (const drawing of drawings) expect(drawing.getAttribute("aria-label")).toMatch(/\d/);
  });

  it("says what does not hold before the order of work, and why an alteration is left out", () => {
    const { plan, sheet } = show(printCases.failing);
    expect(plan.checks.filter((check) => !check.ok).length).toBeGreaterThan(2);
    const text = textOf(sheet);
    const doubts = text.indexOf("Before you cut");
    expect(doubts).toBeGreaterThan(0);
    expect(doubts).toBeLessThan(text.indexOf("Order of work"));
    expect(text).toContain("Left out on the back: narrow the waist dart");
    expect(text).toMatch(/past the bust point; end it/);
    expect(text).not.toContain("checks on this plan hold");
  });

  it("warns of an opening too short to get into, in the cautions too", () => {
    const { sheet } = show(printCases.failing);
    expect(textOf(sheet)).toContain("It is too short to get into");
    cleanup();
    expect(textOf(show(printCases.sample).sheet)).not.toContain("too short to get into");
  });

  it("counts the checks where all hold, and keeps the cautions", () => {
    const { plan, sheet } = show(printCases.sample);
    expect(textOf(sheet)).toContain(`All ${plan.checks.length} checks on this plan hold.`);
    for (const caution of ["Getting in", "Pins on a body", "Scissors and rotary blade", "Iron", "Not medical advice"]) {
      expect(textOf(sheet)).toContain(caution);
    }
  });

  it("leaves a blank beside every girth, seam and dart to measure after", () => {
    const { plan, sheet } = show(printCases.sample);
    const walks = plan.checks.filter((check) => check.name === "seamsWalk").length;
    expect(sheet.querySelectorAll(".pc-measured")).toHaveLength(plan.levels.length + walks + plan.left.darts.length);
    const waist = within(sheet).getByRole("row", { name: /^Waist halves/ });
    expect(textOf(waist)).toContain("77.8 cm");
  });

  it("speaks inches alone where the wearer does", () => {
    const { sheet } = show(printCases.letter);
    expect(textOf(sheet)).not.toMatch(/\d (?:mm|cm)\b/);
    expect(sheet.querySelectorAll(".fraction").length).toBeGreaterThan(5);
  });
});

describe("amounts beside a drawing", () => {
  const label = (y: number, count = 1) => ({ y, lines: Array.from({ length: count }, () => "3 mm") });

  it("stay where they belong while there is room", () => {
    expect(spreadOut([label(50), label(10)], 10).map(({ y }) => y)).toEqual([10, 50]);
  });

  it("are pushed down where they would stand on each other, by what their lines need", () => {
    expect(spreadOut([label(10, 2), label(12), label(13)], 10).map(({ y }) => y)).toEqual([10, 25, 35]);
  });
});

describe("the page rule", () => {
  it("takes the paper of the work, with page numbers", () => {
    expect(pageRule("A4", "x")).toContain("size: A4;");
    expect(pageRule("Letter", "x")).toContain("size: letter;");
    expect(pageRule("A4", "x")).toContain('counter(page) " of " counter(pages)');
  });

  it("lets no name out of its string", () => {
    const name = `"; } body { display: none } </style><script> \\ \n é 😀`;
    const escaped = cssString(name);
    expect(escaped).toMatch(/^"(?:[A-Za-z0-9]|\\[0-9a-f]+ )*"$/);
    const read = escaped
      .slice(1, -1)
      .replaceAll(/\\([0-9a-f]+) /g, (_, code: string) => String.fromCodePoint(Number.parseInt(code, 16)));
    expect(read).toBe(name);
  });

  it("shortens a name too long for the foot line", () => {
    expect(pageRule("A4", "n".repeat(200))).toContain(`${"n".repeat(69)}\\2026 `);
  });
});

describe("tied", () => {
  it("ties numbers to their units and fractions, and nothing else", () => {
    expect(tied("take 5 mm in 2 places, 34 ½ in round, 2 3/8 in off, 12 line")).toBe(
      "take 5\u00A0mm in 2 places, 34\u00A0½\u00A0in round, 2\u00A03/8\u00A0in off, 12 line",
    );
  });
});
