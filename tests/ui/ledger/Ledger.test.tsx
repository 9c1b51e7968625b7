/** The ledger: slips lit and taken out, and checks in words. */
import { act, cleanup, screen, within } from "@testing-library/react";
import userEvent from "@testing-library/user-event";
import { afterEach, describe, expect, it } from "vitest";
import { Ledger } from "../../../src/ui/ledger/Ledger";
import { ref, testWork, withAlterations } from "../../support/works";
import { renderWork, viewNow } from "../renderWork";

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
    const planned = screen.getByRole("button", { name: /Lengthen the waist dart/, pressed: false });
    await userEvent.click(planned);
    expect(viewNow().getState()).toMatchObject({
      litAlteration: "a",
      selectedDart: { piece: "front", dart: "waistDart" },
    });
    await userEvent.click(screen.getByRole("button", { name: /Lengthen the waist dart/, pressed: true }));
    expect(viewNow().getState().litAlteration).toBeNull();
  });

  it("takes a slip out, and its doubt goes with it", async () => {
    const { work } = await renderWork(<Ledger />, pastTheBustPoint);
    await userEvent.click(screen.getByRole("button", { name: /^Take out:/ }));
    expect(work().alterations).toEqual([]);
    expect(screen.queryByText(/past the bust point/)).toBeNull();
    expect(screen.getByRole("heading", { name: /Checks all hold/ })).toBeDefined();
  });
});

describe("alterations", () => {
  it("stand in the order of the work, with piece, amount, what and why", async () => {
    await renderWork(<Ledger />, { ...pastTheBustPoint, picks: { bustAlteration: 30 } });
    const titles = screen
      .getAllByRole("button", { pressed: false })
      .map((planned) => planned.querySelector(".slip-title")?.textContent);
    expect(titles).toEqual([
      "Waist: 30 % from 14 to 16",
      expect.stringMatching(/^Hip: \d+ % from 16 to 18$/),
      "Full bust adjustment",
      "Lengthen the waist dart by 40 mm, its mouth held",
    ]);
    for (const planned of screen.getAllByRole("button", { pressed: false })) {
      for (const part of [".slip-piece", ".slip-amount", ".slip-title", ".slip-why"]) {
        expect(planned.querySelector(part)?.textContent).toMatch(/\w/);
      }
    }
    // What the picks ask for cannot be taken out here, only what she did herself.
    expect(screen.getAllByRole("button", { name: /^Take out:/ })).toHaveLength(1);
  });

  it("light up when their place is touched on the table", async () => {
    await renderWork(<Ledger />, pastTheBustPoint);
    act(() => viewNow().getState().lightAlteration("blend-waist"));
    expect(screen.getByRole("button", { pressed: true }).textContent).toContain("Waist: 30 %");
  });

  it("that could not be made say why, with the most that works", async () => {
    await renderWork(
      <Ledger />,
      withAlterations({
        kind: "dartEnd",
        id: "a",
        dart: ref("front", "waistDart"),
        shorten: 900,
        across: 0,
        hold: "mouth",
        giveBack: {},
      }),
    );
    expect(screen.getByText(/^Left out\. .*too short to sew; \d+ mm is the most/)).toBeDefined();
  });
});

describe("checks", () => {
  const checkOf = (claim: string): HTMLElement => {
    const item = screen.getByText(claim, { exact: false }).closest("li");
    if (item === null) throw new Error(`no check “${claim}”`);
    return item;
  };

  it("say in words which hold, not by colour alone", async () => {
    await renderWork(<Ledger />, pastTheBustPoint);
    expect(checkOf("The two legs of a dart are equally long").textContent).toContain("✓");
    expect(checkOf("The two legs of a dart are equally long").textContent).toContain(": holds");
    expect(checkOf("A dart ends short of the bust point").textContent).toContain("!");
    expect(checkOf("A dart ends short of the bust point").textContent).toContain(": does not hold");
  });

  it("set out what was measured, what it should be and how near, once asked", async () => {
    await renderWork(<Ledger />, testWork);
    const girths = checkOf("The pieces measure what the plan says");
    expect(within(girths).queryByRole("table")).toBeNull();
    await userEvent.click(within(girths).getByText("3 measured"));
    const rows = within(girths)
      .getAllByRole("row")
      .map((row) => [...row.querySelectorAll("td")].map((cell) => cell.textContent));
    // Waist 752 and hip 1034 on the tape, with the pattern's ease of 40 and 50.
    expect(rows).toContainEqual(["front and back, waist", "79.2 cm", "79.2 cm ± 0.05 mm"]);
    expect(rows).toContainEqual([expect.stringContaining("hip"), "108.4 cm", "108.4 cm ± 0.05 mm"]);
    const ends = checkOf("A dart ends short of the bust point");
    await userEvent.click(within(ends).getByText("2 measured"));
    expect(
      within(ends)
        .getAllByRole("row")
        .map((row) => row.lastElementChild?.textContent),
    ).toEqual(["should be", "10 mm to 60 mm", "10 mm to 60 mm"]);
  });
});
