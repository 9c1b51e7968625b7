/** A work is made ready before it is shown, and what is on the page stays there meanwhile. */
import { expect, it } from "vitest";
import type { Work } from "../../src/core/decisions/work";
import { memoryLibrary } from "../../src/store/memoryLibrary";
import { createWorkSession } from "../../src/store/workSession";
import { createWorkStore, run } from "../../src/store/workStore";
import { sampleWork } from "../support/sampleWork";
import { alone } from "../support/surroundings";
import { named } from "./sessionPage";

it("a new work and a saved one are both prepared, each while the one before is shown", async () => {
  const store = createWorkStore(sampleWork);
  const seen: string[] = [];
  const prepare = async (work: Work): Promise<void> => {
    seen.push(`${work.name} while ${store.getState().work.name}`);
  };
  const session = createWorkSession(store, { ...alone({ library: memoryLibrary() }), prepare }, sampleWork);
  await session.start();
  seen.length = 0;
  await session.create(named("one"));
  const first = session.state.getState().openId;
  await session.create(named("other"));
  await session.open(first);
  expect(seen).toEqual([`one while ${sampleWork.name}`, "other while one", "one while other"]);
  expect(store.getState().work.name).toBe("one");
});

it("what is changed while another work is made ready is saved before that one is shown", async () => {
  const store = createWorkStore(sampleWork);
  const library = memoryLibrary();
  let change: (() => void) | null = null;
  const prepare = async (): Promise<void> => change?.();
  const session = createWorkSession(store, { ...alone({ library }), prepare }, sampleWork);
  await session.start();
  await session.create(named("one"));
  const first = session.state.getState().openId;
  change = () => {
    change = null;
    run(store, { kind: "setName", name: "one, changed" });
  };
  await session.create(named("other"));
  const kept = await library.load(first);
  expect(kept.ok && kept.value.work.name).toBe("one, changed");
});
