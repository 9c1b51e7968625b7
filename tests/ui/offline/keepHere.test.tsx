import { act, render, screen } from "@testing-library/react";
import userEvent from "@testing-library/user-event";
import { beforeEach, describe, expect, it } from "vitest";
import type { Library } from "../../../src/store/library";
import { memoryLibrary } from "../../../src/store/memoryLibrary";
import { createWorkSession } from "../../../src/store/workSession";
import { beginGesture, createWorkStore, preview } from "../../../src/store/workStore";
import { Head } from "../../../src/ui/app/Head";
import { Messages } from "../../../src/ui/app/Messages";
import { keepHere, type Workers, type Version } from "../../../src/ui/offline/keepHere";
import { PartPlace } from "../../../src/ui/parts/PartPlace";
import { createLater } from "../../../src/ui/parts/later";
import { usePageState } from "../../../src/ui/session/pageState";
import { WorkSessionProvider } from "../../../src/ui/works/WorkSessionProvider";
import { sampleWork } from "../../support/sampleWork";
import { alone } from "../../support/surroundings";

class FakeVersion extends EventTarget implements Version {
  state = "installing";
  readonly told: unknown[] = [];

  readonly postMessage = (message: unknown): void => void this.told.push(message);

  readonly become = (state: string): void => {
    this.state = state;
    this.dispatchEvent(new Event("statechange"));
  };
}

class FakeVersions extends EventTarget {
  active: unknown = null;
  waiting: FakeVersion | null = null;
  installing: FakeVersion | null = null;

  readonly update = async (): Promise<void> => {};

  readonly come = (): FakeVersion => {
    this.installing = new FakeVersion();
    this.dispatchEvent(new Event("updatefound"));
    return this.installing;
  };
}

class FakeWorkers extends EventTarget implements Workers {
  readonly controller: unknown;
  readonly versions = new FakeVersions();
  beReady = (): void => {};
  readonly ready = new Promise<void>((resolve) => {
    this.beReady = resolve;
  });

  /** @param has whether the page lies on the device already */
  constructor(has: boolean) {
    super();
    this.controller = has ? {} : null;
    this.versions.active = this.controller;
    if (has) this.beReady();
  }

  readonly register = async (): Promise<FakeVersions> => this.versions;

  readonly change = (): void => void this.dispatchEvent(new Event("controllerchange"));
}

const settle = () =>
  act(async () => {
    await new Promise((resolve) => {
      setTimeout(resolve, 5);
    });
  });

const said = (): readonly string[] => [...document.querySelectorAll(".message p")].map((p) => p.textContent ?? "");

beforeEach(() => usePageState.setState(usePageState.getInitialState()));

async function open(workers: Workers, library: Library | null = memoryLibrary()) {
  const store = createWorkStore(sampleWork);
  const session = createWorkSession(store, alone({ library }), sampleWork);
  await session.start();
  let reloads = 0;
  let endRest = (): void => {};
  const rested = new Promise<void>((resolve) => {
    endRest = resolve;
  });
  render(
    <WorkSessionProvider store={store} session={session}>
      <Head />
      <Messages />
    </WorkSessionProvider>,
  );
  const reload = (): void => {
    reloads += 1;
  };
  const going = keepHere(workers, { store, session, reload, rest: () => rested });
  await settle();
  return { store, session, going, endRest, reloads: () => reloads, user: userEvent.setup() };
}

describe("a page that is kept on the device", () => {
  it("is told of once, by the side of what says that the work is saved, and remembered", async () => {
    const workers = new FakeWorkers(false);
    const { endRest, going } = await open(workers);
    expect(usePageState.getState().offline).toBe("no");
    workers.change();
    workers.beReady();
    await settle();
    expect(screen.getByText("Saved here · Works without a network from now on")).toBeTruthy();
    expect(said()).toEqual([]);
    await act(async () => {
      endRest();
      await going;
    });
    expect(screen.getByText("Saved here")).toBeTruthy();
    expect(usePageState.getState().offline).toBe("yes");
  });

  it("is not told of again on a later visit", async () => {
    await open(new FakeWorkers(true));
    expect(screen.getByText("Saved here")).toBeTruthy();
    expect(usePageState.getState().offline).toBe("yes");
  });

  it("goes on as ever where nothing can be kept", async () => {
    const { going } = await open({
      controller: null,
      ready: new Promise(() => {}),
      register: () => Promise.reject(new Error("not in a private window")),
      addEventListener: () => {},
    });
    await expect(going).resolves.toBeUndefined();
    expect(usePageState.getState().offline).toBe("no");
  });

  it("says of a part that does not come what is true of it", async () => {
    const lost = createLater(() => Promise.reject(new Error("not there")));
    const store = createWorkStore(sampleWork);
    const session = createWorkSession(store, alone(), sampleWork);
    render(
      <WorkSessionProvider store={store} session={session}>
        <PartPlace part={lost} name="The table">
          {() => null}
        </PartPlace>
      </WorkSessionProvider>,
    );
    await settle();
    expect(screen.getByRole("alert").textContent).toContain("See whether you are connected.");
    act(() => usePageState.setState({ offline: "yes" }));
    expect(screen.getByRole("alert").textContent).toMatch(/was kept on the device and is not there any more/);
  });
});

describe("a newer version", () => {
  it("is offered once it has all come, waits for a press, and is loaded when it is at work", async () => {
    const workers = new FakeWorkers(true);
    const { user, reloads } = await open(workers);
    const version = workers.versions.come();
    expect(said()).toEqual([]);
    await act(async () => version.become("installed"));
    expect(said()).toEqual(["A new version of Bodicewright is ready. Your work is saved before it is taken."]);
    expect([version.told, reloads()]).toEqual([[], 0]);
    await user.click(screen.getByRole("button", { name: "Take it now" }));
    await settle();
    expect([version.told, reloads()]).toEqual([["take over"], 0]);
    workers.change();
    expect(reloads()).toBe(1);
  });

  it("is offered where it has waited since an earlier visit, and can be left for later", async () => {
    const workers = new FakeWorkers(true);
    workers.versions.waiting = new FakeVersion();
    workers.versions.waiting.state = "installed";
    const { user, reloads } = await open(workers);
    await user.click(screen.getByRole("button", { name: /^Later: A new version/ }));
    expect(said()).toEqual([]);
    expect([workers.versions.waiting.told, reloads()]).toEqual([[], 0]);
    // It can still be had, under Works.
    act(() => usePageState.getState().takeNewVersion?.());
    await settle();
    expect(workers.versions.waiting.told).toEqual(["take over"]);
  });

  it("is no newer one on the first visit of all", async () => {
    const workers = new FakeWorkers(false);
    await open(workers);
    await act(async () => workers.versions.come().become("installed"));
    expect(said()).toEqual([]);
  });

  it("is taken only when what is typed is saved", async () => {
    const workers = new FakeWorkers(true);
    const library = memoryLibrary();
    const { store, session, user } = await open(workers, library);
    const version = workers.versions.come();
    await act(async () => version.become("installed"));
    act(() => preview(store, beginGesture(store, "keys"), [{ kind: "setName", name: "half ty" }]));
    await user.click(screen.getByRole("button", { name: "Take it now" }));
    await settle();
    expect(store.getState().gesture).toBeNull();
    const kept = await library.peek(session.state.getState().openId);
    expect(kept).toMatchObject({ ok: true, value: { name: "half ty" } });
    expect(version.told).toEqual(["take over"]);
  });

  it("waits where nothing can be saved, until she says so", async () => {
    const workers = new FakeWorkers(true);
    const { user } = await open(workers, null);
    const version = workers.versions.come();
    await act(async () => version.become("installed"));
    await user.click(screen.getByRole("button", { name: "Take it now" }));
    await settle();
    expect(version.told).toEqual([]);
    expect(said()).toEqual([expect.stringMatching(/could not be saved, so the new version waits/)]);
    await user.click(screen.getByRole("button", { name: "Take it all the same" }));
    expect(version.told).toEqual(["take over"]);
  });

  it("that was taken in another tab loads nothing here, and says so in place of the offer", async () => {
    const workers = new FakeWorkers(true);
    const { user, reloads } = await open(workers);
    await act(async () => workers.versions.come().become("installed"));
    act(() => workers.change());
    expect(said()).toEqual([expect.stringMatching(/was taken in another tab/)]);
    expect(reloads()).toBe(0);
    await user.click(screen.getByRole("button", { name: "Load it here too" }));
    await settle();
    expect(reloads()).toBe(1);
  });

  it("that was taken in another tab waits too where nothing can be saved", async () => {
    const workers = new FakeWorkers(true);
    const { user, reloads } = await open(workers, null);
    act(() => workers.change());
    await user.click(screen.getByRole("button", { name: "Load it here too" }));
    await settle();
    expect(reloads()).toBe(0);
    expect(said()).toEqual([expect.stringMatching(/could not be saved, so the new version waits/)]);
    await user.click(screen.getByRole("button", { name: "Take it all the same" }));
    expect(reloads()).toBe(1);
  });
});
