import { fireEvent, render, screen } from "@testing-library/react";
import userEvent from "@testing-library/user-event";
import { describe, expect, it } from "vitest";
import { draftMeasuresFor } from "../../../src/core/draft/draftMeasures";
import { draftFrontBlock } from "../../../src/core/draft/frontBlock";
import { piecePoint } from "../../../src/core/geometry/point";
import { pointOf, type Piece } from "../../../src/core/pattern/piece";
import { sideDartFront } from "../../../src/core/style/sideDartStyle";
import { SewnView } from "../../../src/ui/sewn/SewnView";

const measures = draftMeasuresFor(
  { label: "x", bust: 880, waist: 700, hip: 940 },
  { sizes: [], draftedDifference: 50, cups: [] },
  { bust: 80, waist: 40, hip: 50 },
);

function drafted(): Piece {
  const made = sideDartFront(draftFrontBlock(measures), 50);
  if (!made.ok) throw new Error(made.failure.code);
  return made.value;
}

/** The waist dart alone, its mouth 30 mm level and its end straight above: angle 2 arctan(15 / length). */
function withWaistDart(length: number): readonly Piece[] {
  const front = drafted();
  const [inner, outer] = [pointOf(front, "waistDartInner"), pointOf(front, "waistDartOuter")];
  const [x, y] = [(inner.x + outer.x) / 2, (inner.y + outer.y) / 2];
  const points = {
    ...front.points,
    waistDartInner: { at: piecePoint(x - 15, y), level: "waist" as const },
    waistDartOuter: { at: piecePoint(x + 15, y), level: "waist" as const },
    waistDartApex: { at: piecePoint(x, y - length), level: "bust" as const },
  };
  return [{ ...front, points, darts: front.darts.filter(({ name }) => name === "waistDart") }];
}

const turned = (): HTMLElement => screen.getByRole("slider", { name: "Sewn front" });
const said = (element = turned()): string => element.getAttribute("aria-valuetext") ?? "";

describe("the sewn front", () => {
  // By hand: 2 arctan(15/120) is 14.25°; 1 − 14.25/360 is 0.9604; twice its arcsine is 147.6°.
  it("says how it is turned and how pointed its dart is", () => {
    render(<SewnView front={withWaistDart(120)} label="Sewn front" />);
    expect(said()).toBe("Turned 40° to the right. The waist dart ends in a point of 148°.");
  });

  it.each([
    ["{ArrowRight}", "Turned 45° to the right."],
    ["{ArrowLeft}", "Turned 35° to the right."],
    ["{ArrowDown}{ArrowDown}", "Turned 30° to the right."],
    ["{PageDown}{PageDown}", "Turned 20° to the left."],
    ["{PageUp}{PageUp}{PageUp}", "Turned 90° to the right."],
    ["{End}", "Turned 90° to the right."],
    ["{End}{Home}", "Turned 90° to the left."],
    ["x", "Turned 40° to the right."],
  ])("turns by %s", async (keys, sentence) => {
    const user = userEvent.setup();
    render(<SewnView front={withWaistDart(120)} label="Sewn front" />);
    turned().focus();
    await user.keyboard(keys);
    expect(said()).toContain(sentence);
  });

  it("turns under a finger, and stays when the finger is gone", () => {
    render(<SewnView front={withWaistDart(120)} label="Sewn front" />);
    fireEvent.pointerDown(turned(), { pointerId: 1, isPrimary: true, button: 0, clientX: 100 });
    fireEvent.pointerMove(turned(), { pointerId: 1, clientX: 50 });
    expect(said()).toContain("Turned 10° to the right.");
    fireEvent.pointerUp(turned(), { pointerId: 1 });
    fireEvent.pointerMove(turned(), { pointerId: 1, clientX: 300 });
    expect(said()).toContain("Turned 10° to the right.");
  });

  it("leaves a second finger alone", () => {
    render(<SewnView front={withWaistDart(120)} label="Sewn front" />);
    fireEvent.pointerDown(turned(), { pointerId: 2, isPrimary: false, button: 0, clientX: 100 });
    fireEvent.pointerMove(turned(), { pointerId: 2, clientX: 150 });
    expect(said()).toContain("Turned 40° to the right.");
  });

  it("has a button for each usual view and shows which one it is", async () => {
    const user = userEvent.setup();
    render(<SewnView front={withWaistDart(120)} label="Sewn front" />);
    expect(screen.getByRole("button", { name: "Three-quarter", pressed: true })).toBeDefined();
    await user.click(screen.getByRole("button", { name: "Front" }));
    expect(said()).toContain("Seen from the front.");
    expect(screen.getByRole("button", { name: "Front", pressed: true })).toBeDefined();
    await user.click(screen.getByRole("button", { name: "Side" }));
    expect(said()).toContain("Turned 90° to the right.");
  });

  it("shows a second front beside it with the same turn", async () => {
    const user = userEvent.setup();
    render(<SewnView front={withWaistDart(60)} compareWith={withWaistDart(120)} label="Sewn front" />);
    const [drawn, wanted] = ["drawn", "your cup asks"].map((which) =>
      screen.getByRole("slider", { name: `Sewn front, as ${which}` }),
    );
    // By hand: 2 arctan(15/60) is 28.07°; 1 − 28.07/360 is 0.9220; twice its arcsine is 134.5°.
    expect(said(drawn)).toMatch(/ends in a point of 13[45]°/);
    expect(said(wanted)).toContain("ends in a point of 148°");
    drawn?.focus();
    await user.keyboard("{ArrowRight}");
    expect(said(wanted)).toContain("Turned 45° to the right.");
  });

  it("says so where no dart ends in a point", () => {
    const plain = drafted();
    render(<SewnView front={[{ ...plain, darts: [] }]} label="Sewn front" />);
    expect(said()).toContain("No dart ends in a point");
  });
});
