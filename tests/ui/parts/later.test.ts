import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { fetchAhead } from "../../../src/ui/parts/fetchAhead";
import { alreadyHere, createLater } from "../../../src/ui/parts/later";

/** Something to load that is answered by hand. */
function byHand() {
  const asked: { give: (value: string) => void; refuse: () => void }[] = [];
  const load = (): Promise<string> =>
    new Promise((resolve, reject) => {
      asked.push({ give: resolve, refuse: () => reject(new Error("no connection")) });
    });
  return { asked, later: createLater(load) };
}

const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

describe("a part that is loaded later", () => {
  it("is asked for once, however many wait for it, and is here at once from then on", async () => {
    const { asked, later } = byHand();
    const heard = vi.fn<() => void>();
    later.subscribe(heard);
    const both = Promise.all([later.load(), later.load(), later.fetchAhead()]);
    await settled();
    expect(later.get()).toEqual({ kind: "waiting" });
    expect(asked).toHaveLength(1);
    asked[0]?.give("the table");
    await both;
    expect(later.get()).toEqual({ kind: "here", value: "the table" });
    expect(heard).toHaveBeenCalledTimes(1);
    await later.load();
    expect(asked).toHaveLength(1);
  });

  it("that failed is asked for once more by whoever waits for it", async () => {
    const { asked, later } = byHand();
    const first = later.load();
    await settled();
    asked[0]?.refuse();
    await first;
    expect(later.get()).toEqual({ kind: "failed" });
    const second = later.load();
    expect(later.get()).toEqual({ kind: "waiting" });
    await settled();
    asked[1]?.give("the table");
    await second;
    expect(later.get()).toEqual({ kind: "here", value: "the table" });
  });

  describe("of which nothing comes and nothing fails", () => {
    const LONG = 31_000;
    const passes = (ms: number): Promise<unknown> => vi.advanceTimersByTimeAsync(ms);
    beforeEach(() => {
      vi.useFakeTimers();
    });
    afterEach(() => {
      vi.useRealTimers();
    });

    it("is said to have failed after a while, and is asked for once more", async () => {
      const { asked, later } = byHand();
      const first = later.load();
      await passes(29_000);
      expect(later.get()).toEqual({ kind: "waiting" });
      await passes(2000);
      await first;
      expect(later.get()).toEqual({ kind: "failed" });
      const second = later.load();
      await passes(0);
      expect(asked).toHaveLength(2);
      // What the first failed with at last is no news of the second.
      asked[0]?.refuse();
      await passes(0);
      expect(later.get()).toEqual({ kind: "waiting" });
      asked[1]?.give("the table");
      await second;
      expect(later.get()).toEqual({ kind: "here", value: "the table" });
      expect(vi.getTimerCount()).toBe(0);
    });

    it("is shown where it comes after all, once", async () => {
      const { asked, later } = byHand();
      const heard = vi.fn<() => void>();
      void later.load();
      await passes(LONG);
      later.subscribe(heard);
      asked[0]?.give("the table");
      await passes(0);
      expect(later.get()).toEqual({ kind: "here", value: "the table" });
      expect(heard).toHaveBeenCalledTimes(1);
    });

    it("does not hold up the parts after it", async () => {
      const [stalled, next] = [byHand(), byHand()];
      void fetchAhead([stalled.later, next.later], new AbortController());
      await passes(LONG + 5000);
      expect(next.asked).toHaveLength(1);
      // Nobody waited for it: it has not failed for whoever comes.
      expect(stalled.later.get()).toEqual({ kind: "waiting" });
      next.asked[0]?.give("here");
      await passes(0);
    });
  });

  it("that failed while nobody waited for it has not failed for whoever comes", async () => {
    const { asked, later } = byHand();
    const ahead = later.fetchAhead();
    await settled();
    asked[0]?.refuse();
    await ahead;
    expect(later.get()).toEqual({ kind: "waiting" });
    void later.load();
    await settled();
    expect(asked).toHaveLength(2);
  });

  it("fails for whoever came to wait for it while it was fetched ahead", async () => {
    const { asked, later } = byHand();
    const ahead = later.fetchAhead();
    await settled();
    void later.load();
    asked[0]?.refuse();
    await ahead;
    expect(later.get()).toEqual({ kind: "failed" });
  });

  it("may have come with the page", () => {
    expect(alreadyHere("Tape").get()).toEqual({ kind: "here", value: "Tape" });
  });
});

describe("fetching ahead", () => {
  afterEach(() => void vi.unstubAllGlobals());

  function idleByHand() {
    const waiting: (() => void)[] = [];
    vi.stubGlobal("requestIdleCallback", (heard: () => void) => waiting.push(heard));
    return {
      waiting,
      idle: async () => {
        waiting.shift()?.();
        await settled();
      },
    };
  }

  it("takes one part after the other, each when the browser is idle, and goes on after one that failed", async () => {
    const { idle, waiting } = idleByHand();
    const [one, two, three] = [byHand(), byHand(), byHand()];
    void fetchAhead([one.later, two.later, three.later], new AbortController());
    await settled();
    expect(one.asked).toHaveLength(0);
    await idle();
    expect([one, two, three].map(({ asked }) => asked.length)).toEqual([1, 0, 0]);
    one.asked[0]?.refuse();
    await settled();
    expect(waiting).toHaveLength(1);
    await idle();
    two.asked[0]?.give("here");
    await settled();
    await idle();
    expect([one, two, three].map(({ asked }) => asked.length)).toEqual([1, 1, 1]);
  });

  it("fetches nothing while a finger is down, which would stop for it, and goes on once it is up", async () => {
    const { idle } = idleByHand();
    const [one, two] = [byHand(), byHand()];
    void fetchAhead([one.later, two.later], new AbortController());
    window.dispatchEvent(new MouseEvent("pointerdown", { buttons: 1 }));
    await idle();
    expect(one.asked).toHaveLength(0);
    window.dispatchEvent(new MouseEvent("pointerup", { buttons: 0 }));
    await settled();
    expect(one.asked).toHaveLength(1);
    one.asked[0]?.give("here");
    await settled();
    await idle();
    expect(two.asked).toHaveLength(1);
  });

  it("stops when it is told to", async () => {
    const { idle } = idleByHand();
    const [one, two] = [byHand(), byHand()];
    const going = new AbortController();
    void fetchAhead([one.later, two.later], going);
    await idle();
    going.abort();
    one.asked[0]?.give("here");
    await settled();
    await idle();
    expect(two.asked).toHaveLength(0);
  });
});

describe("a part beside one whose style is lost", () => {
  it("is loaded though the stylesheet of another one still does not come", async () => {
    const lost = document.head.appendChild(document.createElement("link"));
    lost.rel = "stylesheet";
    lost.dispatchEvent(new Event("error"));
    const { asked, later } = byHand();
    const loading = later.load();
    // It is asked for again, in vain.
    const again = document.head.querySelector("link");
    expect(again).not.toBe(lost);
    again?.dispatchEvent(new Event("error"));
    await settled();
    expect(asked).toHaveLength(1);
    asked[0]?.give("the table");
    await loading;
    expect(later.get()).toEqual({ kind: "here", value: "the table" });
    again?.remove();
  });

  it("is loaded though that stylesheet has been taken out of the page", async () => {
    const lost = document.head.appendChild(document.createElement("link"));
    lost.rel = "stylesheet";
    lost.dispatchEvent(new Event("error"));
    lost.remove();
    const { asked, later } = byHand();
    const loading = later.load();
    await settled();
    expect(asked).toHaveLength(1);
    asked[0]?.give("the table");
    await loading;
    expect(later.get()).toEqual({ kind: "here", value: "the table" });
  });
});
