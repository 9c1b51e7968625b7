import { act, screen, waitFor } from "@testing-library/react";
import { describe, expect, it, vi } from "vitest";
import { tapesOf } from "../../../src/core/measures/tape";
import { run, undo } from "../../../src/store/workStore";
import { useSettledWork } from "../../../src/ui/session/useWork";
import { createLater } from "../../../src/ui/parts/later";
import { PartPlace } from "../../../src/ui/parts/PartPlace";
import { renderWork } from "../renderWork";

const Panel = () => <p>The panel itself</p>;

/** Fails as often as is said, then comes. */
function failing(times: number) {
  const load = vi.fn<() => Promise<() => React.JSX.Element>>();
  for (let at = 0; at < times; at += 1) load.mockRejectedValueOnce(new TypeError("Failed to fetch"));
  load.mockResolvedValue(Panel);
  return { load, part: createLater(load) };
}

const show = (part: ReturnType<typeof failing>["part"], inTurn = true) =>
  renderWork(
    <main>
      <PartPlace part={part} name="The table" inTurn={inTurn}>
        {(Shown) => <Shown />}
      </PartPlace>
      <button type="button">Elsewhere</button>
    </main>,
  );

const again = (): HTMLElement => screen.getByRole("button", { name: "Try again" });

describe("the place of a part", () => {
  it("says that it is being loaded, and then shows it", async () => {
    const { part } = failing(0);
    await show(part);
    expect(screen.getByRole("status").textContent).toBe("One moment…");
    expect(await screen.findByText("The panel itself")).toBeTruthy();
    expect(screen.queryByText("One moment…")).toBeNull();
  });

  it("shows at once what was fetched ahead", async () => {
    const { part } = failing(0);
    await part.fetchAhead();
    await show(part);
    expect(screen.getByText("The panel itself")).toBeTruthy();
  });

  it("waits for its turn", async () => {
    const { part, load } = failing(0);
    await show(part, false);
    expect(load).not.toHaveBeenCalled();
  });

  it("says what could not be loaded, and loads it once more when she asks", async () => {
    const { part, load } = failing(1);
    const { user } = await show(part);
    const said = await screen.findByRole("alert");
    expect(said.textContent).toContain("The table could not be loaded.");
    expect(said.textContent).toContain("Your work is kept");
    expect(screen.getByRole("button", { name: "Elsewhere" })).toBeTruthy();
    await user.click(again());
    expect(await screen.findByText("The panel itself")).toBeTruthy();
    expect(screen.queryByRole("alert")).toBeNull();
    expect(load).toHaveBeenCalledTimes(2);
    // The button that had the focus is gone.
    expect(document.activeElement).toBe(screen.getByRole("main"));
  });

  it("keeps the focus in its own place, though that is a small one of a step", async () => {
    const { part } = failing(1);
    const { user } = await renderWork(
      <main>
        <p>The rest of the step</p>
        <div data-testid="own">
          <PartPlace part={part} name="The guesses">
            {(Shown) => <Shown />}
          </PartPlace>
        </div>
      </main>,
    );
    await screen.findByRole("alert");
    again().focus();
    await user.keyboard("{Enter}");
    expect(await screen.findByText("The panel itself")).toBeTruthy();
    expect(document.activeElement).toBe(screen.getByTestId("own"));
  });

  it("offers the whole page again where trying once more did not help", async () => {
    const { part } = failing(2);
    const { user } = await show(part);
    await screen.findByRole("alert");
    expect(screen.queryByRole("button", { name: "Load the whole page again" })).toBeNull();
    await user.click(again());
    expect(await screen.findByRole("button", { name: "Load the whole page again" })).toBeTruthy();
    expect(document.activeElement).toBe(again());
    await user.click(again());
    expect(await screen.findByText("The panel itself")).toBeTruthy();
  });
});

describe("a part with a fault in it", () => {
  const Faulty = () => {
    const age = useSettledWork((work) => work.age);
    if (age === 99) throw new Error("a fault of ours");
    return <p>Age {age ?? "not said"}</p>;
  };
  const part = createLater(async () => Faulty);
  const renderFaulty = async () => {
    vi.spyOn(console, "error").mockImplementation(() => undefined);
    const rendered = await renderWork(
      <>
        <PartPlace part={part} name="The ledger">
          {(Shown) => <Shown />}
        </PartPlace>
        <p>The rest</p>
      </>,
      { tapes: tapesOf({}) },
    );
    await screen.findByText("Age not said");
    act(() => run(rendered.store, { kind: "setAge", age: 99 }));
    return rendered;
  };

  it("leaves the rest of the page alone, and says so in its place", async () => {
    const { work, user } = await renderFaulty();
    expect(screen.getByRole("alert").textContent).toContain("The ledger cannot be shown");
    expect(screen.getByText("The rest")).toBeTruthy();
    expect(work().age).toBe(99);
    expect(screen.queryByRole("button", { name: "Load the whole page again" })).toBeNull();
    await user.click(again());
    expect(screen.getByRole("alert")).toBeTruthy();
    expect(screen.getByRole("button", { name: "Load the whole page again" })).toBeTruthy();
  });

  it("is back by itself once what it failed at is undone", async () => {
    const { store } = await renderFaulty();
    act(() => undo(store));
    await waitFor(() => expect(screen.getByText("Age not said")).toBeTruthy());
    expect(screen.queryByRole("alert")).toBeNull();
  });
});
