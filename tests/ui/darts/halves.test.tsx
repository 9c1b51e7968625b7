/** A dart tried another way on the other half: from its panel and from the ledger, and one of the two kept. */
import { act, cleanup, screen } from "@testing-library/react";
import { afterEach, describe, expect, it } from "vitest";
import type { DartEndAlteration, FitAlteration } from "../../../src/core/decisions/alteration";
import { DartsPanel } from "../../../src/ui/darts/DartsPanel";
import { FitStep } from "../../../src/ui/fit/FitStep";
import { Ledger } from "../../../src/ui/ledger/Ledger";
import { renderWork, viewNow } from "../renderWork";
import { ref, withAlterations } from "../../support/works";

const shortened: DartEndAlteration = {
  kind: "dartEnd",
  id: "dartEnd-front-waistDart",
  dart: ref("front", "waistDart"),
  shorten: 10,
  across: 0,
  hold: "mouth",
  giveBack: {},
};
const width: FitAlteration = { kind: "fit", id: "fit-backWidth", fit: "backWidth", amount: 12 };

afterEach(cleanup);

const amounts = (alterations: readonly unknown[]) =>
  alterations.map((one) => JSON.parse(JSON.stringify(one, ["half", "shorten", "amount"])));

describe("the darts panel", () => {
  it("brings another way on the other half: its field has the keys, and what is typed is for that half alone", async () => {
    const { user, work } = await renderWork(<DartsPanel />, withAlterations(shortened));
    act(() => viewNow().setState({ selectedDart: ref("front", "waistDart") }));
    await user.click(screen.getByRole("button", { name: "Try another way on your right half" }));
    expect(viewNow().getState().half).toBe("right");
    expect(document.activeElement).toBe(screen.getByLabelText("Shorten by"));
    await user.clear(screen.getByLabelText("Shorten by"));
    await user.type(screen.getByLabelText("Shorten by"), "25{Enter}");
    expect(amounts(work().alterations)).toEqual([
      { half: "left", shorten: 10 },
      { half: "right", shorten: 25 },
    ]);
    expect(screen.getByRole("radio", { name: "right" })).toHaveProperty("checked", true);
    // Asked for both again, what is on the half she looks at is on both.
    await user.click(screen.getByRole("radio", { name: "both" }));
    expect(amounts(work().alterations)).toEqual([{ shorten: 25 }]);
  });

  it("gathers a dart on one half alone", async () => {
    const { user, work } = await renderWork(<DartsPanel />, withAlterations(shortened));
    act(() => viewNow().setState({ selectedDart: ref("front", "waistDart") }));
    await user.click(screen.getByRole("radio", { name: "left" }));
    await user.click(screen.getByText("Make something else of it"));
    await user.click(screen.getByRole("radio", { name: "gathers" }));
    expect(work().alterations.map(({ kind, half }) => [kind, half])).toEqual(
      expect.arrayContaining([["dartGather", "left"]]),
    );
  });
});

describe("the ledger", () => {
  it("splits a slip for the other half, and takes her to what is to be changed", async () => {
    const { user, work } = await renderWork(
      <>
        <Ledger />
        <FitStep />
      </>,
      withAlterations(width),
    );
    await user.click(screen.getByRole("button", { name: /^Try another way on your right half: / }));
    expect(window.location.hash).toBe("#fit");
    // Of 12 mm over the whole back each half has 6.
    expect(amounts(work().alterations)).toEqual([
      { half: "left", amount: 6 },
      { half: "right", amount: 6 },
    ]);
    const field = document.activeElement;
    expect(field?.getAttribute("inputmode")).toBe("text");
    await user.clear(screen.getByRole("textbox", { name: /on that half/ }));
    await user.type(screen.getByRole("textbox", { name: /on that half/ }), "2{Enter}");
    expect(amounts(work().alterations)).toEqual([
      { half: "left", amount: 6 },
      { half: "right", amount: 2 },
    ]);
    await user.click(screen.getByRole("button", { name: "The mean of both" }));
    expect(amounts(work().alterations)).toEqual([{ amount: 8 }]);
  });

  it("says of every slip which half it is for, and keeps the one that is right, or refuses a mean by name", async () => {
    const { user, work } = await renderWork(<Ledger />, withAlterations({ ...shortened, half: "right" }));
    expect(screen.getByText("right half")).toBeDefined();
    await user.click(screen.getByRole("button", { name: "The mean of both" }));
    expect(screen.getByRole("alert").textContent).toMatch(/^There is no mean of what only one half has: shorten the/);
    await user.click(screen.getByRole("button", { name: "The right is right" }));
    expect(amounts(work().alterations)).toEqual([{ shorten: 10 }]);
    expect(screen.queryByRole("button", { name: "The left is right" })).toBeNull();
  });
});
