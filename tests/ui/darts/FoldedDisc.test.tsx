/** The folded disc: the wearer's own dart, and a shorter one tried on paper only. */
import { act, fireEvent, screen, within } from "@testing-library/react";
import { beforeEach, describe, expect, it } from "vitest";
import { DartsPanel } from "../../../src/ui/darts/DartsPanel";
import { dartIn, planOf, ref, testWork } from "../../support/works";
import { renderWork, viewNow } from "../renderWork";

const { drawn } = dartIn(planOf(testWork), "front", "waistDart");

async function show(change: Partial<typeof testWork> = {}) {
  const rendered = await renderWork(<DartsPanel />, { ...testWork, ...change });
  act(() => viewNow().setState({ selectedDart: ref("front", "waistDart") }));
  const disc = screen.getByRole("region", { name: "Why a wider dart is fuller" });
  const caption = (which: 0 | 1): { angle: number; height: number } => {
    const text = within(disc).getAllByRole("figure")[which]?.querySelector("figcaption")?.textContent ?? "";
    const [, angle, height] = /([\d.]+)° between legs of [\d.]+ cm stands (\d+) mm high/.exec(text) ?? [];
    return { angle: Number(angle), height: Number(height) };
  };
  return { ...rendered, disc, caption, slider: within(disc).getByRole("slider") };
}

/** Height of a cone of slant R from a disc less an angle, by Pythagoras over its rim. */
const cone = (degrees: number, slant: number): number => {
  const rim = slant * (1 - degrees / 360);
  return Math.sqrt(slant * slant - rim * rim);
};

describe("the folded disc", () => {
  let shown: Awaited<ReturnType<typeof show>>;
  beforeEach(async () => {
    shown = await show();
  });

  it("shows the wearer's own dart, printed and drawn, with the height its cone has", () => {
    for (const which of [0, 1] as const) {
      const { angle, height } = shown.caption(which);
      expect(angle).toBeCloseTo((drawn.angle * 180) / Math.PI, 1);
      expect(height).toBe(Math.round(cone(angle, 80)));
    }
  });

  it("stands higher for a shorter dart with the same mouth, and changes nothing of the plan", () => {
    const before = shown.work();
    const axis = Math.sqrt(drawn.legInner ** 2 - (drawn.intake / 2) ** 2);
    const half = Math.round(axis / 2);
    fireEvent.change(shown.slider, { target: { value: String(half) } });
    const { angle, height } = shown.caption(1);
    expect(angle).toBeCloseTo((2 * Math.atan(drawn.intake / 2 / (axis - half)) * 180) / Math.PI, 1);
    expect(height).toBe(Math.round(cone(angle, 80)));
    expect(height).toBeGreaterThan(shown.caption(0).height);
    expect(shown.work()).toBe(before);
  });

  it("draws both mouths alike, the shorter legs nearer the disc, and the cone to scale", () => {
    fireEvent.change(shown.slider, { target: { value: "60" } });
    const mouths = [...shown.disc.querySelectorAll(".disc-mouth")].map(
      (path) => (path.getAttribute("d") ?? "").match(/-?[\d.]+/g)?.map(Number) ?? [],
    );
    const width = ([left, , right]: readonly number[]): number => (right ?? NaN) - (left ?? NaN);
    expect(mouths).toHaveLength(2);
    expect(width(mouths[1] ?? [])).toBeCloseTo(width(mouths[0] ?? []), 1);
    expect(mouths[1]?.[1]).toBeLessThan((mouths[0]?.[1] ?? NaN) - 50);
    const boxes = [...shown.disc.querySelectorAll("svg")].map(
      (svg) => (svg.getAttribute("viewBox") ?? "").split(" ")[2],
    );
    expect(new Set(boxes).size).toBe(1);
    const [rim, top] =
      (shown.disc.querySelectorAll(".cone-seam")[1]?.getAttribute("d") ?? "").match(/-?[\d.]+/g)?.map(Number) ?? [];
    expect(rim).toBe(0);
    expect(-(top ?? NaN)).toBeCloseTo(
      cone(
        (2 * Math.atan(drawn.intake / 2 / (Math.sqrt(drawn.legInner ** 2 - (drawn.intake / 2) ** 2) - 60)) * 180) /
          Math.PI,
        80,
      ),
      3,
    );
  });
});

it("states the height at the bust radius she gives", async () => {
  const { caption } = await show({ bustRadius: 100 });
  expect(caption(1).height).toBe(Math.round(cone(caption(1).angle, 100)));
});
