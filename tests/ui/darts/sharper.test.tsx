/** The first demo as a first visit shows it: a dart shortened by 25 mm with its mouth held, by the figures on the page. */
import { act, screen, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { demoWorks } from "../../../src/document/demo";
import { undo } from "../../../src/store/workStore";
import { DartsPanel } from "../../../src/ui/darts/DartsPanel";
import { ref } from "../../support/works";
import { renderWork, viewNow } from "../renderWork";

/** Height of a cone of slant R from a disc less an angle, by Pythagoras over its rim; mm and degrees. */
const cone = (degrees: number, slant: number): number => {
  const rim = slant * (1 - degrees / 360);
  return Math.sqrt(slant * slant - rim * rim);
};

const RADIANS = Math.PI / 180;

// A waist dart is the longer, so it takes more of the same to show.
describe("typing an amount in Shorten", () => {
  it.each([
    ["waistDart", 40],
    ["sideDart", 25],
  ] as const)("on the front %s, by %d, widens its angle, makes it fuller, and says too sharp", async (name, by) => {
    const [first] = demoWorks();
    if (first === undefined) throw new Error("no demo");
    const { store, user } = await renderWork(<DartsPanel />, first);
    act(() => viewNow().setState({ selectedDart: ref("front", name) }));
    const figure = (row: string, column: string): number => {
      const at = screen.getAllByRole("columnheader").findIndex((header) => header.textContent === column);
      const cells = [...screen.getByRole("row", { name: new RegExp(`^${row}`) }).querySelectorAll("th, td")];
      return Number.parseFloat(cells[at]?.textContent ?? "");
    };
    const drawn = (row: string): number => {
      const cells = within(screen.getByRole("row", { name: new RegExp(`^${row}`) })).getAllByRole("cell");
      return Number.parseFloat(cells.at(-1)?.textContent ?? "");
    };
    const [mouth, angle] = [drawn("Mouth"), drawn("Angle")];
    expect(screen.getByText(/^As full as your cup asks/)).toBeDefined();

    const field = screen.getByRole("textbox", { name: "Shorten by" });
    await user.clear(field);
    await user.type(field, `${by}{Enter}`);

    // Half the mouth over the axis is the tangent of half the angle, before and after.
    const axis = mouth / 2 / Math.tan((angle / 2) * RADIANS);
    const wider = (2 * Math.atan(mouth / 2 / (axis - by))) / RADIANS;
    expect(drawn("Mouth")).toBe(mouth);
    // The mouth is shown to 1 mm and the angle to 0.1 degrees, and the axis is no better known than that.
    expect(Math.abs(drawn("Angle") - wider)).toBeLessThan(0.4);
    expect(wider).toBeGreaterThan(angle + 2);
    // Fullness is stated at 80 mm, and no further out than the legs reach.
    const leg = mouth / 2 / Math.sin((wider / 2) * RADIANS);
    expect(Math.abs(drawn("Fullness") - cone(wider, Math.min(80, leg)))).toBeLessThan(1);
    const fuller = Number(/^Too sharp: (\d+) mm fuller/.exec(screen.getByText(/^Too sharp/).textContent)?.[1]);
    expect(Math.abs(fuller - (drawn("Fullness") - figure("Fullness", "your cup asks")))).toBeLessThanOrEqual(1);

    act(() => undo(store));
    expect(drawn("Angle")).toBe(angle);
    expect(screen.queryByText(/^Too sharp/)).toBeNull();
  });
});
