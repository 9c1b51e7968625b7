/** The ledger: slips lit and taken out, and checks in words. */
import { cleanup, screen } from "@testing-library/react";
import userEvent from "@testing-library/user-event";
import { afterEach, describe, expect, it } from "vitest";
import { useViewState } from "../../../src/ui/app/viewState";
import { Ledger } from "../../../src/ui/ledger/Ledger";
import { ref, withAlterations } from "../../support/works";
import { renderWork } from "../renderWork";

afterEach(cleanup);

const pastTheBustPoint = withAlterations({
  kind: "dartEnd",
  id: "a",
  dart: ref("front", "waistDart"),
  shorten: -40,
  across: 0,
  hold: "mouth",
  giveBack: {},
});

describe("Ledger", () => {
  it("tells the blend once for all its pieces, and the wearer's slip", async () => {
    await renderWork(<Ledger />, pastTheBustPoint);
    expect(screen.getAllByText(/^Waist: 30 % from 14 to 16$/)).toHaveLength(1);
    expect(screen.getByText(/Lengthen the waist dart by 40 mm/)).toBeDefined();
  });

  it("says in words which dart runs past the bust point", async () => {
    await renderWork(<Ledger />, pastTheBustPoint);
    expect(screen.getByText(/front waist dart runs \d+ mm past the bust point/)).toBeDefined();
  });

  it("lights a slip and chooses its dart, and puts the light out again", async () => {
    await renderWork(<Ledger />, pastTheBustPoint);
    const slip = screen.getByRole("button", { name: /Lengthen the waist dart/, pressed: false });
    await userEvent.click(slip);
    expect(useViewState.getState()).toMatchObject({ litSlip: "a", selectedDart: { piece: "front", dart: "waistDart" } });
    await userEvent.click(screen.getByRole("button", { name: /Lengthen the waist dart/, pressed: true }));
    expect(useViewState.getState().litSlip).toBeNull();
  });

  it("takes a slip out, and its doubt goes with it", async () => {
    const { work } = await renderWork(<Ledger />, pastTheBustPoint);
    await userEvent.click(screen.getByRole("button", { name: /^Take out:/ }));
    expect(work().alterations).toEqual([]);
    expect(screen.queryByText(/past the bust point/)).toBeNull();
    expect(screen.getByRole("heading", { name: /Checks all hold/ })).toBeDefined();
  });
});
