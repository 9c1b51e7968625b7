/** One tap that sets a dart, what was seen of it with an answer taken, and what is said of darts left out. */
import { act, screen } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import type { DartRef } from "../../../src/core/pattern/piece";
import type { Work } from "../../../src/core/decisions/work";
import { demoWorks } from "../../../src/document/demo";
import { undo } from "../../../src/store/workStore";
import { DartsPanel } from "../../../src/ui/darts/DartsPanel";
import { ref, withAlterations } from "../../support/works";
import { renderWork, viewNow } from "../renderWork";

const waist = ref("front", "waistDart");
const cupDart = ref("cup", "underBustDart");
const midriff = demoWorks().find(({ pattern }) => pattern.style === "midriff");
if (midriff === undefined) throw new Error("no midriff");

async function show(work: Work, dart: DartRef) {
  const rendered = await renderWork(<DartsPanel />, work);
  act(() => viewNow().setState({ selectedDart: dart }));
  return rendered;
}

describe("a dart that is not as it should be", () => {
  it("is set by one tap, as one step, and the words beside the folded disc agree", async () => {
    const wider = withAlterations({
      kind: "dartMouth",
      id: "m",
      dart: waist,
      inner: 6,
      outer: 6,
      giveBack: {},
    });
    const { user, store } = await show(wider, waist);
    expect(screen.getByText(/^Too sharp/)).toBeDefined();
    await user.click(screen.getByRole("button", { name: "Set it as your cup asks" }));
    expect(screen.getByText(/^As full as your cup asks/)).toBeDefined();
    expect(screen.getByText(/^It ends 2\d mm short of the bust point/)).toBeDefined();
    expect(screen.queryByRole("button", { name: /^Set it/ })).toBeNull();
    act(() => undo(store));
    expect(screen.getByText(/^Too sharp/)).toBeDefined();
  });

  it("has its end alone set, where it is full enough", async () => {
    const [first] = demoWorks();
    if (first === undefined) throw new Error("no demo");
    const { user, work } = await show(first, waist);
    expect(screen.getByText(/^Your bust point is \d+ mm higher and \d+ mm nearer the centre front/)).toBeDefined();
    await user.click(screen.getByRole("button", { name: "Set its end where it is usual" }));
    expect(work().alterations.map(({ kind }) => kind)).toEqual(["dartEnd"]);
    expect(screen.queryByRole("button", { name: /^Set its end/ })).toBeNull();
  });
});

describe("an answer to what is seen", () => {
  it("is marked as taken; another one takes its place; what was said stays in the fields; taken back, all is as it was", async () => {
    const { user, work } = await show(midriff, cupDart);
    await user.click(screen.getByText("Sewn, it comes out wrong"));
    const past = () => screen.getByRole("textbox", { name: "Its end lies past the bust point by" });
    const aside = () => screen.getByRole("textbox", { name: "It sits too far to the side by" });
    await screen.findByText(/^It is to end/);
    await user.clear(past());
    await user.type(past(), "6{Enter}");
    await user.clear(aside());
    await user.type(aside(), "13{Enter}");
    await user.click(screen.getByRole("radio", { name: /^pointed/ }));
    const fields = () => [past(), aside()].map((field) => (field instanceof HTMLInputElement ? field.value : ""));
    const before = fields();
    const texts = () => [...document.querySelectorAll(".answer h5")].map((title) => title.textContent);
    expect(texts()[0]).toMatch(/^First choice\. /);
    await user.click(screen.getAllByRole("button", { name: "Take this one" })[0] ?? document.body);
    expect(texts().filter((text) => text.startsWith("Taken. "))).toHaveLength(1);
    expect(fields()).toEqual(before);
    const first = work().alterations;
    await user.click(screen.getByRole("button", { name: "Take this one instead" }));
    expect(texts().filter((text) => text.startsWith("Taken. "))).toHaveLength(1);
    expect(work().alterations).not.toEqual(first);
    expect(work().alterations.filter(({ kind }) => kind === "dartEnd")).toHaveLength(1);
    expect(screen.getByText(/^As you took it from the toile, where it came out pointed/)).toBeDefined();
    await user.click(screen.getByRole("button", { name: "Take it back" }));
    expect(work().alterations).toEqual(midriff.alterations);
    expect(fields()).toEqual(before);
  });
});

it("says of a dart that is not looked at what was left out of it", async () => {
  const work = withAlterations({
    kind: "dartEnd",
    id: "end",
    dart: waist,
    shorten: 500,
    across: 0,
    hold: "mouth",
    giveBack: {},
  });
  await show(work, ref("front", "sideDart"));
  expect(screen.getByText(/^Left out on the front: shorten the waist dart/)).toBeDefined();
  expect(screen.getByRole("button", { name: /^Front waist dart/ }).textContent).toContain("to look at");
  act(() => viewNow().setState({ selectedDart: waist }));
  // There it stands beside the field.
  expect(screen.queryByText(/^Left out on the front/)).toBeNull();
});
