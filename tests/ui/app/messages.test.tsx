import { act, render, screen } from "@testing-library/react";
import { useLayoutEffect } from "react";
import userEvent from "@testing-library/user-event";
import { describe, expect, it } from "vitest";
import { createWorkSession } from "../../../src/store/workSession";
import { createWorkStore } from "../../../src/store/workStore";
import { Messages } from "../../../src/ui/app/Messages";
import { WorkSessionProvider } from "../../../src/ui/works/WorkSessionProvider";
import { sampleWork } from "../../support/sampleWork";
import { alone } from "../../support/surroundings";

describe("what the page says", () => {
  it("comes into a place that is there already, also what was said before the first drawing: so it is read out", async () => {
    const store = createWorkStore(sampleWork);
    const session = createWorkSession(store, alone(), sampleWork);
    await session.start();
    session.offer("one", "Something is ready.");
    const first: string[] = [];
    const Witness = () => {
      useLayoutEffect(() => void first.push(screen.getByRole("status").textContent ?? ""), []);
      return null;
    };
    render(
      <WorkSessionProvider store={store} session={session}>
        <Messages />
        <Witness />
      </WorkSessionProvider>,
    );
    expect(first).toEqual([""]);
    expect(screen.getByRole("status").textContent).toContain("Something is ready.");
  });

  it("is left for later only where there is something to be done", async () => {
    const store = createWorkStore(sampleWork);
    const session = createWorkSession(store, alone(), sampleWork);
    await session.start();
    render(
      <WorkSessionProvider store={store} session={session}>
        <Messages />
      </WorkSessionProvider>,
    );
    const take = { label: "Take it", run: () => undefined };
    act(() => {
      session.offer("one", "Something is ready.", take);
      session.offer("another", "Something went wrong.");
    });
    expect(screen.getByRole("button", { name: "Later: Something is ready." })).toBeTruthy();
    await userEvent.setup().click(screen.getByRole("button", { name: "Dismiss: Something went wrong." }));
    expect(screen.queryByText("Something went wrong.")).toBeNull();
    expect(screen.getByText("Something is ready.")).toBeTruthy();
  });
});
