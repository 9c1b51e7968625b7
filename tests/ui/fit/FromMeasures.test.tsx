/** What the measures ask for, above what is seen: taken by a tap or a key, as one step, and gone. */
import { act, screen, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { tapesOf } from "../../../src/core/measures/tape";
import { undo } from "../../../src/store/workStore";
import { BlendStep } from "../../../src/ui/blend/BlendStep";
import { FitStep } from "../../../src/ui/fit/FitStep";
import { testWork } from "../../support/works";
import { renderWork } from "../renderWork";

/** Size 12 of the test chart, cup B, with its own lengths but for the back, 20 mm shorter, and the bust points, 36 nearer. */
const body = {
  bustGirth: 880,
  upperChestGirth: 830,
  waistGirth: 700,
  hipGirth: 940,
  shoulderLength: 124,
  neckBaseGirth: 400,
  sideNeckToBustPoint: 265,
};
const work = { ...testWork, tapes: tapesOf({ ...body, backWaistLength: 390, bustPointWidth: 154 }) };
const TITLE = "Shorten the bodice below the bust by 20 mm";

const panel = (): HTMLElement => screen.getByRole("region", { name: "From your measures" });
const rows = (): readonly (string | null)[] =>
  within(within(panel()).getByRole("list", { name: "Proposed" }))
    .getAllByRole("button")
    .map((button) => button.getAttribute("aria-label"));

describe("From your measures", () => {
  it("says what, why and the sum, in the trade's order", async () => {
    await renderWork(<FitStep />, work);
    expect(rows()).toEqual([`Take: ${TITLE}`, "Take: Redraw the ends of the bust darts 18 mm nearer the centre"]);
    const [first] = within(panel()).getAllByRole("listitem");
    expect(first?.textContent).toContain(
      "Your back waist length 39.0 cm, our draft’s 41.0 cm; your bust depth agrees.",
    );
    const sum = within(first ?? panel())
      .getByText("Why 20 mm?")
      .closest("details");
    expect(sum?.open).toBe(false);
    expect(sum?.textContent).toContain("our draft’s figure41.0 cmyours39.0 cmapart−20 mm");
  });

  it("is taken by a tap, as one step of undo, and is gone", async () => {
    const { user, work: now, store } = await renderWork(<FitStep />, work);
    await user.click(screen.getByRole("button", { name: `Take: ${TITLE}` }));
    expect(now().alterations).toEqual([
      { kind: "fit", id: "fit-lengthBelowBust", fit: "lengthBelowBust", amount: -20 },
    ]);
    expect(rows()).not.toContain(`Take: ${TITLE}`);
    // Nothing is under the hand any more: the heading has the focus.
    expect(document.activeElement?.textContent).toBe("From your measures");
    act(() => undo(store));
    expect(now().alterations).toEqual([]);
    expect(rows()).toContain(`Take: ${TITLE}`);
  });

  it("is taken by keys, both darts in one step", async () => {
    const { user, work: now, store } = await renderWork(<FitStep />, work);
    act(() => screen.getByRole("button", { name: /^Take: Redraw/ }).focus());
    await user.keyboard("{Enter}");
    expect(now().alterations).toMatchObject([{ kind: "dartEnd" }, { kind: "dartEnd" }]);
    expect(store.getState().past).toHaveLength(1);
  });

  it("changes what stands, and takes nothing by itself", async () => {
    const standing = { kind: "fit", id: "mine", fit: "lengthBelowBust", amount: -12 } as const;
    const tapes = tapesOf({ ...body, backWaistLength: 390 });
    const { user, work: now } = await renderWork(<FitStep />, { ...work, tapes, alterations: [standing] });
    expect(now().alterations).toEqual([standing]);
    expect(panel().textContent).toContain("You have −12 mm; your measures now ask for −20 mm.");
    await user.click(
      screen.getByRole("button", { name: "Change −12 mm to −20 mm: shorten the bodice below the bust by 20 mm" }),
    );
    expect(now().alterations).toEqual([{ ...standing, amount: -20 }]);
  });

  it("says what is off and not altered here, and folds away what agrees", async () => {
    await renderWork(<FitStep />, work);
    const list = within(panel()).getByRole("list", { name: "Not altered here" });
    expect(list.textContent).toContain("Your neck base 40.0 cm, our draft’s 37.0 cm. Nothing here alters it");
    const folded = within(panel()).getByText(/agree/, { selector: "summary" });
    expect(folded.textContent).toBe("1 agrees: shoulder length");
    expect(folded.closest("details")?.open).toBe(false);
  });

  it("says where measures are taken that it could go by, where none were", async () => {
    const { bustGirth, upperChestGirth, waistGirth, hipGirth } = body;
    await renderWork(<FitStep />, {
      ...testWork,
      tapes: tapesOf({ bustGirth, upperChestGirth, waistGirth, hipGirth }),
    });
    expect(panel().textContent).toContain("Take lengths and widths on Tape");
    expect(within(panel()).queryByRole("button")).toBeNull();
  });

  it("tells amounts in the wearer's unit", async () => {
    await renderWork(<FitStep />, { ...work, unit: "in" });
    expect(rows()[0]).toBe("Take: Shorten the bodice below the bust by 13/16 in");
  });
});

describe("Blend", () => {
  it("names what the measures ask for, a line each, and leads to Fit", async () => {
    await renderWork(<BlendStep />, work);
    expect(
      within(panel())
        .getAllByRole("listitem")
        .map((item) => item.textContent),
    ).toEqual([TITLE, "Redraw the ends of the bust darts 18 mm nearer the centre"]);
    expect(within(panel()).getByRole("link").getAttribute("href")).toBe("#fit");
  });

  it("says nothing where they ask for nothing", async () => {
    await renderWork(<BlendStep />, { ...testWork, tapes: tapesOf({ ...body, neckBaseGirth: 370 }) });
    expect(screen.queryByRole("region", { name: "From your measures" })).toBeNull();
  });
});
