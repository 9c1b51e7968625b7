import { describe, expect, it } from "vitest";
import { fail, ok } from "../../../src/core/result";
import { memoryLibrary } from "../../../src/store/memoryLibrary";
import { run } from "../../../src/store/workStore";
import { beginSession } from "../../../src/ui/app/beginSession";
import { sampleWork } from "../../support/sampleWork";

const never = () => new Promise<never>(() => {});

describe("the session that the page begins with", () => {
  it("is on the library, where it answers", async () => {
    const library = memoryLibrary();
    const { store, session } = await beginSession(async () => ok(library), sampleWork);
    expect(store.getState().work.name).toBe(sampleWork.name);
    expect(session.state.getState().storage.state).toBe("saved");
    expect(await library.list()).toMatchObject({ ok: true, value: [{ name: sampleWork.name }] });
  });

  it("keeps nothing, and says so, where there is no library", async () => {
    const why = { code: "storage/unavailable", detail: "none" } as const;
    const { store, session } = await beginSession(async () => fail(why), sampleWork);
    expect(store.getState().work.name).toBe(sampleWork.name);
    expect(session.state.getState().storage.state).toBe("failed");
  });

  it.each(["list", "pageValue"] as const)("begins without the library where %s is never answered", async (method) => {
    const library = { ...memoryLibrary(), [method]: never };
    const { store, session } = await beginSession(async () => ok(library), sampleWork, 20);
    expect(session.state.getState().storage.state).toBe("failed");
    run(store, { kind: "setName", name: "Mine" });
    expect(store.getState().work.name).toBe("Mine");
    await session.flush();
    expect((await session.peek(session.state.getState().openId))?.name).toBe("Mine");
  });

  it("does not wait for what is cleared away, nor for what it is promised", async () => {
    const library = memoryLibrary();
    const first = await beginSession(async () => ok(library), sampleWork);
    await first.session.create({ ...sampleWork, name: "thrown away" });
    const old = first.session.state.getState().openId;
    await first.session.create({ ...sampleWork, name: "mine" });
    await library.bin(old, Date.now() - 31 * 24 * 60 * 60 * 1000);
    const slow = { ...library, remove: never };
    const { store, session } = await beginSession(async () => ok(slow), sampleWork, 2000);
    expect(session.state.getState().storage.state).toBe("saved");
    expect(store.getState().work.name).toBe("mine");
  });

  it("fails as the library fails by a fault of ours", async () => {
    const broken = {
      ...memoryLibrary(),
      list: () => {
        throw new RangeError("planted");
      },
    };
    await expect(beginSession(async () => ok(broken), sampleWork)).rejects.toThrow("planted");
  });
});
