import { act, screen, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import type { Work } from "../../../src/core/decisions/work";
import { tapesOf } from "../../../src/core/measures/tape";
import { run } from "../../../src/store/workStore";
import { ChartFit } from "../../../src/ui/envelope/ChartFit";
import { sampleWork } from "../../support/sampleWork";
import { renderWork, type Rendered } from "../renderWork";

async function opened(change: Partial<Work> = {}): Promise<Rendered> {
  const page = await renderWork(<ChartFit />, change);
  await page.user.click(screen.getByText("What this chart fits"));
  await screen.findByText(/^Whose bodies: soldiers/);
  return page;
}

const pictures = (): readonly string[] =>
  screen.getAllByRole("img").map((image) => image.getAttribute("aria-label") ?? "");
const withSizes = (sizes: Work["pattern"]["chart"]["sizes"]): Partial<Work> => ({
  pattern: { ...sampleWork.pattern, chart: { ...sampleWork.pattern.chart, sizes } },
});

describe("what the chart fits", () => {
  it("is folded away at first, and counts nothing", async () => {
    await renderWork(<ChartFit />);
    expect(screen.queryByRole("img")).toBeNull();
  });

  it("shows two pictures that say in words what they show", async () => {
    await opened();
    const [first, second] = pictures();
    expect(first).toMatch(
      /^Waist by bust\. .* This pattern runs from size 8 \(bust 80\.0 cm, waist 62\.0 cm\) to size 26 .* You: bust 93\.0 cm, waist 73\.8 cm\.$/,
    );
    expect(second).toMatch(/^Hip by waist\. .* You: waist 73\.8 cm, hip 98\.5 cm\.$/);
  });

  // Upper chest 860 is nearest the 14 of the sample (bust 920 less 50); its waist is 740, its hip 980.
  it("says where the chart lies beside her, and what it fits", async () => {
    await opened();
    expect(
      screen.getByText(
        "Your frame, size 14, was drawn for a body like yours at the waist and 0.5 cm less than yours at the hip.",
      ),
    ).toBeTruthy();
    // At bust 930 the sample's waist is 750.
    expect(
      screen.getByText(
        /^At your bust girth the chart’s waist is 1\.2 cm more than yours; it is further from \d+ of 100 surveyed women\.$/,
      ),
    ).toBeTruthy();
    expect(screen.getByText(/find a frame in this chart; about \d+ of 100 need no bust alteration/)).toBeTruthy();
  });

  it("lays a standard chart beside it, with how far it is to be trusted", async () => {
    const { user } = await opened();
    await user.selectOptions(
      screen.getByRole("combobox", { name: "Beside it" }),
      "European size designation (EN 13402-3)",
    );
    expect(pictures().every((words) => words.includes("The standard chart runs from size 76"))).toBe(true);
    expect(screen.getByText(/are from memory\. It is another chart/)).toBeTruthy();
    await user.selectOptions(screen.getByRole("combobox", { name: "Beside it" }), "no standard chart");
    expect(pictures().some((words) => words.includes("standard"))).toBe(false);
  });

  it("follows the unit and the measures", async () => {
    const { store } = await opened();
    act(() => run(store, { kind: "setUnit", unit: "in" }));
    expect(await screen.findByText("Bust, in")).toBeTruthy();
    expect(pictures()[0]).toMatch(/You: bust 36 5\/8 in, waist 29 in\.$/);
  });

  it("without measures tells of the chart alone", async () => {
    await opened({ tapes: tapesOf({}) });
    expect(screen.getByText("Not taken yet: bust, waist and hip. With them you are drawn in as well.")).toBeTruthy();
    expect(screen.getByText(/find a frame in this chart/)).toBeTruthy();
    expect(pictures().some((words) => words.includes("You:"))).toBe(false);
    expect(screen.queryByText(/^you, and how far/)).toBeNull();
  });

  it("without a chart, or with faults in it, shows the bodies and her alone", async () => {
    await opened(withSizes([]));
    expect(screen.getByText(/^Once the chart is filled in/)).toBeTruthy();
    expect(screen.queryByText(/find a frame/)).toBeNull();
    expect(pictures()[0]).toMatch(/Half of the surveyed women .* You: bust 93\.0 cm, waist 73\.8 cm\.$/);
  });

  it("names the sizes in the picture, and does not tell marks by colour alone", async () => {
    await opened();
    const picture = screen.getAllByRole("img")[0];
    expect(
      picture === undefined
        ? []
        : within(picture)
            .getAllByText(/^(8|26)$/)
            .map((element) => element.tagName),
    ).toEqual(["text", "text"]);
    for (const words of [
      "some surveyed bodies",
      "half of them lie inside",
      "nine in ten lie inside",
      "this pattern’s sizes",
    ])
      expect(screen.getByText(words)).toBeTruthy();
  });
});
