/** What is typed and not left, where another page or the want of room comes in between. */
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Command } from "../../src/core/plan/commands";
import { fail } from "../../src/core/result";
import type { Library } from "../../src/store/library";
import { memoryLibrary } from "../../src/store/memoryLibrary";
import { beginGesture, isGoingOn, preview, run, undo, type Hand } from "../../src/store/workStore";
import { sampleWork } from "../support/sampleWork";
import { newWorld, openPage, passes, type Page, type World } from "../support/world";

let world: World;
beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
  world = newWorld();
});
afterEach(() => {
  vi.useRealTimers();
});

const settles = async (): Promise<void> => {
  for (let round = 0; round < 30; round += 1) await passes(world, 10);
};

const waist = (value: number): Command => ({ kind: "setMeasure", measure: "waistGirth", value });
const hip = (value: number): Command => ({ kind: "setMeasure", measure: "hipGirth", value });
const waistOf = (page: Page): number | undefined => page.work().tapes[0]?.readings.waistGirth?.[0];
const textIn = ({ store }: Page): string | undefined => store.getState().gesture?.entry?.text;

function typeWaist({ store }: Page, value: number, hand: Hand = beginGesture(store, "keys")): Hand {
  preview(store, hand, [waist(value)], { field: "measure.waist", text: String(value / 10) });
  return hand;
}

describe("a field that stands typed in two pages", () => {
  it("shows what was typed over it in the other, and goes on from there", async () => {
    const [mine, theirs] = [await openPage(world, sampleWork), await openPage(world, sampleWork)];
    const before = waistOf(mine);
    typeWaist(mine, 777);
    await settles();
    expect(waistOf(theirs)).toBe(777);
    typeWaist(theirs, 788);
    await settles();
    expect([waistOf(mine), textIn(mine)]).toEqual([788, undefined]);
    typeWaist(mine, 799);
    await settles();
    expect([waistOf(mine), waistOf(theirs), world.shelf.works.size]).toEqual([799, 799, 1]);
    undo(mine.store);
    undo(mine.store);
    undo(mine.store);
    expect(waistOf(mine)).toBe(before);
  });

  it("shows it too where the other put it back as it was, or gave a size yet another name", async () => {
    const [mine, theirs] = [await openPage(world, sampleWork), await openPage(world, sampleWork)];
    const { sizes } = sampleWork.pattern.chart;
    const named = (label: string): Command => ({
      kind: "setSizes",
      sizes: sizes.map((size, at) => (at === 0 ? { ...size, label } : size)),
    });
    const before = waistOf(mine) ?? NaN;
    typeWaist(mine, 777);
    await settles();
    typeWaist(theirs, before);
    await settles();
    expect([waistOf(mine), textIn(mine)]).toEqual([before, undefined]);

    preview(mine.store, beginGesture(mine.store, "keys"), [named("first")], { field: "size", text: "first" });
    await settles();
    run(theirs.store, named("other"));
    await settles();
    expect([mine.work(), textIn(mine)]).toEqual([theirs.work(), undefined]);
    expect(mine.work().pattern.chart.sizes.map(({ label }) => label)).toEqual([
      "other",
      ...sizes.slice(1).map(({ label }) => label),
    ]);
  });

  it("is left alone where the other page changed something else, whatever of it that page had heard", async () => {
    const [mine, theirs] = [await openPage(world, sampleWork), await openPage(world, sampleWork)];
    const hand = typeWaist(mine, 770);
    await settles();
    // They save a hip with the waist as it stood in the middle of being typed.
    const other = beginGesture(theirs.store, "keys");
    preview(theirs.store, other, [hip(1010)]);
    typeWaist(mine, 777, hand);
    await settles();
    expect([isGoingOn(mine.store, hand), textIn(mine), waistOf(mine)]).toEqual([true, "77.7", 777]);
    expect([waistOf(theirs), theirs.work()]).toEqual([777, mine.work()]);
    expect(world.shelf.works.size).toBe(1);
  });
});

describe("what a page left while there was no room", () => {
  /** It can be read, and takes nothing more. */
  const fullLibrary = (): Library => ({
    ...memoryLibrary(world.shelf),
    save: async () => fail({ code: "storage/full", detail: "no room" }),
  });
  const saved = (id: string): number | undefined =>
    world.shelf.works.get(id)?.saved.work.tapes[0]?.readings.waistGirth?.[0];

  it("is shown by the next even if there is none yet, goes on there, and is saved once there is", async () => {
    const first = await openPage(world, sampleWork);
    const { openId } = first.state();
    const before = waistOf(first);
    first.close();

    const full = await openPage(world, sampleWork, fullLibrary());
    typeWaist(full, 777);
    await settles();
    full.kill();
    expect(saved(openId)).toBe(before);

    const stillFull = await openPage(world, sampleWork, fullLibrary());
    expect([stillFull.state().openId, waistOf(stillFull)]).toEqual([openId, 777]);
    expect(stillFull.state().storage.state).toBe("failed");
    run(stillFull.store, hip(1010));
    await settles();
    stillFull.close();
    expect(world.local.size).toBe(1);

    const withRoom = await openPage(world, sampleWork);
    await settles();
    expect([saved(openId), world.shelf.works.size, world.local.size]).toEqual([777, 1, 0]);
    expect(world.shelf.works.get(openId)?.saved.work.tapes[0]?.readings.hipGirth?.[0]).toBe(1010);
    undo(withRoom.store);
    expect(waistOf(withRoom)).toBe(777);
    undo(withRoom.store);
    expect(waistOf(withRoom)).toBe(before);
  });

  it("is left where it is if there is no room to leave it anew", async () => {
    const first = await openPage(world, sampleWork);
    const { openId } = first.state();
    first.close();
    const full = await openPage(world, sampleWork, fullLibrary());
    typeWaist(full, 777);
    await settles();
    full.kill();
    world.isLocalFull = true;
    const next = await openPage(world, sampleWork, fullLibrary());
    expect(waistOf(next)).toBe(777);
    next.kill();
    expect(world.local.size).toBe(1);
    world.isLocalFull = false;
    await openPage(world, sampleWork);
    await settles();
    expect(saved(openId)).toBe(777);
  });
});
