/** Several pages on one work: what one saves the others show, and what two change nobody loses. */
import { describe, expect, it } from "vitest";
import type { Command } from "../../src/core/plan/commands";
import { beginGesture, cancelGesture, commitGesture, preview, redo, run, undo } from "../../src/store/workStore";
import { createTabs, type Channel, type News } from "../../src/store/tabs";
import { sampleWork } from "../support/sampleWork";
import { passes, type Page } from "../support/world";
import { idOn, named, namesOf, press, rename, textsOf, until, worldOfEachTest } from "./sessionPage";

const shared = worldOfEachTest();
const { open } = shared;
const wait = (ms: number): Promise<void> => passes(shared.world, ms);
/** Time to be saved, heard of and taken in. */
const settles = async (): Promise<void> => {
  for (let round = 0; round < 30; round += 1) await wait(10);
};

const waist = (value: number): Command => ({ kind: "setMeasure", measure: "waistGirth", value });
const hip = (value: number): Command => ({ kind: "setMeasure", measure: "hipGirth", value });
const sway = (amount: number): Command => ({
  kind: "putAlteration",
  alteration: { kind: "fit", id: "swayBack", fit: "swayBack", amount },
});
const waistOf = (page: Page): number | undefined => page.work().tapes[0]?.readings.waistGirth?.[0];
const hipOf = (page: Page): number | undefined => page.work().tapes[0]?.readings.hipGirth?.[0];
/** Works kept, by name. */
const keptNames = (): readonly string[] =>
  [...shared.world.shelf.works.values()].map(({ saved }) => saved.work.name).toSorted();
const keptOf = (page: Page) => shared.world.shelf.works.get(page.state().openId)?.saved.work;

const WAIST = 738;
const HIP = 985;

async function two(): Promise<readonly [Page, Page]> {
  const pages = [await open(), await open()] as const;
  expect(pages[0].state().openId).toBe(pages[1].state().openId);
  return pages;
}

describe("one page alone", () => {
  it("goes on saving the same work, whether it is new, opened or brought back", async () => {
    const page = await open();
    const first = page.state().openId;
    rename(page, "one");
    await settles();
    await until(shared.world, page.session.create(named("two")));
    rename(page, "two, again");
    await until(shared.world, page.session.open(first));
    rename(page, "one, at last");
    await until(shared.world, page.session.bin(first));
    press(page, "Bring it back");
    await settles();
    rename(page, "one, brought back");
    await settles();
    expect(page.state().openId).toBe(first);
    expect(namesOf(page).toSorted()).toEqual(["one, brought back", "two, again"]);
    expect(textsOf(page)).toEqual([]);
  });

  it("finds the work as it was left, with its history, when it is opened again", async () => {
    const page = await open();
    rename(page, "changed");
    await settles();
    page.close();
    const later = await open();
    expect(later.work().name).toBe("changed");
    undo(later.store);
    expect(later.work()).toEqual(sampleWork);
  });
});

describe("a save by another page", () => {
  it("is shown at once, in the list too, as if the page had been opened just now", async () => {
    const [mine, theirs] = await two();
    const { shown } = mine.state();
    rename(theirs, "theirs");
    // 80 ms until it is saved, some for the answers of the library.
    await wait(80);
    await wait(20);
    expect([mine.work().name, namesOf(mine)]).toEqual(["theirs", ["theirs"]]);
    expect(mine.state()).toMatchObject({ shown, storage: { state: "saved" }, messages: [] });
    undo(mine.store);
    expect(mine.work()).toEqual(sampleWork);
  });

  it("of another work than the open one changes the list alone", async () => {
    const [mine, theirs] = await two();
    await until(shared.world, theirs.session.create(named("another")));
    await settles();
    expect([mine.work(), namesOf(mine).toSorted()]).toEqual([sampleWork, [sampleWork.name, "another"].toSorted()]);
  });

  it("is taken in when a page that nobody looked at is looked at again", async () => {
    const [mine, theirs] = await two();
    mine.isHidden = true;
    rename(theirs, "theirs");
    await settles();
    expect(mine.work()).toEqual(sampleWork);
    mine.isHidden = false;
    await until(shared.world, mine.session.pageIsBack());
    expect([mine.work().name, namesOf(mine)]).toEqual(["theirs", ["theirs"]]);
  });

  it("is taken in at the next save where pages cannot hear each other", async () => {
    const [mine, theirs] = await two();
    shared.world.isChannelOpen = false;
    run(theirs.store, waist(700));
    await settles();
    expect(waistOf(mine)).toBe(WAIST);
    run(mine.store, hip(1000));
    await settles();
    expect([waistOf(mine), hipOf(mine)]).toEqual([700, 1000]);
    expect(keptOf(mine)).toEqual(mine.work());
    expect(hipOf(theirs)).toBe(HIP);
    await until(shared.world, theirs.session.pageIsBack());
    expect([waistOf(theirs), hipOf(theirs)]).toEqual([700, 1000]);
    expect([keptNames().length, textsOf(mine), textsOf(theirs)]).toEqual([1, [], []]);
  });
});

describe("changes on two pages that do not collide", () => {
  it("are both on both pages, whoever was first", async () => {
    const [mine, theirs] = await two();
    run(mine.store, waist(700));
    run(theirs.store, hip(1000));
    run(theirs.store, sway(10));
    await settles();
    for (const page of [mine, theirs]) {
      expect([waistOf(page), hipOf(page)]).toEqual([700, 1000]);
      expect(page.work().alterations.map(({ id }) => id)).toContain("swayBack");
      expect([textsOf(page), page.state().storage.state]).toEqual([[], "saved"]);
    }
    expect(mine.work()).toEqual(theirs.work());
    expect(keptOf(mine)).toEqual(mine.work());
    expect(keptNames()).toHaveLength(1);
    expect(shared.world.local.size).toBe(0);
  });

  it("are the very same change where both made it: no copy", async () => {
    const [mine, theirs] = await two();
    run(mine.store, waist(700));
    run(theirs.store, waist(700));
    await settles();
    expect([waistOf(mine), waistOf(theirs), keptNames()]).toEqual([700, 700, [sampleWork.name]]);
  });

  it("undone take back what was done here and leave what was done there", async () => {
    const [mine, theirs] = await two();
    shared.world.isChannelOpen = false;
    run(mine.store, waist(700));
    run(theirs.store, hip(1000));
    await settles();
    // Who saved later has taken in the other's: the first learns of it by looking.
    await until(shared.world, mine.session.pageIsBack());
    await until(shared.world, theirs.session.pageIsBack());
    for (const page of [mine, theirs]) expect([waistOf(page), hipOf(page)]).toEqual([700, 1000]);
    undo(theirs.store);
    expect([waistOf(theirs), hipOf(theirs)]).toEqual([700, HIP]);
    redo(theirs.store);
    expect([waistOf(theirs), hipOf(theirs)]).toEqual([700, 1000]);
    undo(theirs.store);
    await settles();
    expect([waistOf(theirs), hipOf(theirs)]).toEqual([700, HIP]);
    expect(keptOf(theirs)).toEqual(theirs.work());
  });

  it("are merged in the middle of typing, which goes on undisturbed", async () => {
    const [mine, theirs] = await two();
    const hand = beginGesture(mine.store, "keys");
    preview(mine.store, hand, [waist(7)], { field: "measure.waistGirth", text: "0.7" });
    run(theirs.store, hip(1000));
    await settles();
    expect([waistOf(mine), hipOf(mine)]).toEqual([7, 1000]);
    expect(mine.store.getState().gesture).toMatchObject({ hand, entry: { field: "measure.waistGirth", text: "0.7" } });
    expect([waistOf(theirs), hipOf(theirs)]).toEqual([7, 1000]);
    preview(mine.store, hand, [waist(70)], { field: "measure.waistGirth", text: "7" });
    expect([waistOf(mine), hipOf(mine)]).toEqual([70, 1000]);
    cancelGesture(mine.store, hand);
    // What was typed is taken back, and nothing else.
    expect([waistOf(mine), hipOf(mine)]).toEqual([WAIST, 1000]);
    await settles();
    expect([waistOf(theirs), hipOf(theirs)]).toEqual([WAIST, 1000]);
    expect([keptNames().length, textsOf(mine), textsOf(theirs)]).toEqual([1, [], []]);
  });

  it("are merged in the middle of a drag, which goes on undisturbed and is saved once it is let go", async () => {
    const [mine, theirs] = await two();
    const hand = beginGesture(mine.store, "drag");
    preview(mine.store, hand, [sway(5)]);
    run(theirs.store, hip(1000));
    await settles();
    expect(hipOf(mine)).toBe(1000);
    expect(mine.work().alterations).toContainEqual(expect.objectContaining({ id: "swayBack", amount: 5 }));
    expect(theirs.work().alterations.map(({ id }) => id)).not.toContain("swayBack");
    preview(mine.store, hand, [sway(8)]);
    expect(hipOf(mine)).toBe(1000);
    commitGesture(mine.store, hand);
    await settles();
    expect(theirs.work()).toEqual(mine.work());
    expect(theirs.work().alterations).toContainEqual(expect.objectContaining({ id: "swayBack", amount: 8 }));
    undo(mine.store);
    expect([hipOf(mine), mine.work().alterations.map(({ id }) => id)]).toEqual([1000, ["end-1"]]);
  });
});

describe("changes on two pages that collide", () => {
  const said = (name: string, what: string): string =>
    `“${name}” was changed in another tab too (${what}). What was changed here is kept beside it, as “${name} (copy)”.`;

  it("go on as two works, told apart by name, and each goes its own way", async () => {
    const [first, second] = await two();
    const id = first.state().openId;
    const { shown } = second.state();
    run(first.store, waist(700));
    await wait(1);
    run(second.store, waist(701));
    await settles();
    expect([first.state().openId, waistOf(first), first.work().name]).toEqual([id, 700, sampleWork.name]);
    expect(textsOf(first)).toEqual([]);
    expect([waistOf(second), second.work().name]).toEqual([701, `${sampleWork.name} (copy)`]);
    expect(textsOf(second)).toEqual([said(sampleWork.name, "measure")]);
    // It is the same work that is shown, not another in its place.
    expect([second.state().shown, second.state().openId === id]).toEqual([shown, false]);
    run(first.store, waist(710));
    run(second.store, hip(1000));
    await settles();
    expect([waistOf(first), hipOf(first)]).toEqual([710, HIP]);
    expect([waistOf(second), hipOf(second)]).toEqual([701, 1000]);
    expect(keptNames()).toEqual([sampleWork.name, `${sampleWork.name} (copy)`]);
    expect([namesOf(first).toSorted(), textsOf(second).length]).toEqual([keptNames(), 1]);
    expect(shared.world.local.size).toBe(0);
    // The undo of the copy takes back its own change, not its name.
    undo(second.store);
    undo(second.store);
    expect([waistOf(second), second.work().name]).toEqual([WAIST, `${sampleWork.name} (copy)`]);
  });

  it("name all that both changed", async () => {
    const [first, second] = await two();
    shared.world.isChannelOpen = false;
    run(first.store, waist(700));
    rename(first, "mine");
    await settles();
    run(second.store, waist(701));
    rename(second, "yours");
    await settles();
    expect(textsOf(second)).toEqual([
      "“mine” was changed in another tab too (name and measure). What was changed here is kept beside it, as “yours (copy)”.",
    ]);
    // Neither of what was saved as theirs nor of the copy is anything left over.
    expect(shared.world.local.size).toBe(0);
  });

  it("do not disturb typing that goes on", async () => {
    const [first, second] = await two();
    const hand = beginGesture(second.store, "keys");
    preview(second.store, hand, [waist(70)], { field: "measure.waistGirth", text: "7" });
    run(first.store, waist(700));
    await settles();
    const copies = [first, second].filter((page) => page.work().name.endsWith("(copy)"));
    expect(copies).toHaveLength(1);
    expect(second.store.getState().gesture?.hand).toBe(hand);
    preview(second.store, hand, [waist(705)], { field: "measure.waistGirth", text: "70.5" });
    commitGesture(second.store, hand);
    await settles();
    expect([waistOf(first), waistOf(second)]).toEqual([700, 705]);
    expect([keptOf(first), keptOf(second)]).toEqual([first.work(), second.work()]);
  });

  it("are the work that the next page opens with, which is the copy, made last", async () => {
    const [first, second] = await two();
    run(first.store, waist(700));
    await wait(1);
    run(second.store, waist(701));
    await settles();
    first.close();
    second.close();
    await settles();
    expect((await open()).work().name).toBe(`${sampleWork.name} (copy)`);
  });
});

describe("a work put in the bin on one page and open on another", () => {
  const BINNED = (name: string): string =>
    `“${name}”, which is open here, was put in the bin in another tab. It comes back as soon as you change it.`;
  const BACK = (name: string): string => `“${name}” lay in the bin. As you went on with it, it was taken out again.`;

  it("stays there, is said to lie in the bin, and comes back with the next key, which is said too", async () => {
    const [typing, deleting] = await two();
    await until(shared.world, deleting.session.bin(deleting.state().openId));
    await settles();
    expect(typing.work()).toEqual(sampleWork);
    expect(textsOf(typing)).toEqual([BINNED(sampleWork.name)]);
    expect(typing.state().binned.map(({ name }) => name)).toEqual([sampleWork.name]);
    run(typing.store, waist(700));
    await settles();
    expect(textsOf(typing).at(-1)).toBe(BACK(sampleWork.name));
    for (const page of [typing, deleting]) {
      expect(namesOf(page)).toContain(sampleWork.name);
      expect(page.state().binned).toEqual([]);
    }
    expect(waistOf(typing)).toBe(700);
    expect(keptOf(typing)).toEqual(typing.work());
  });

  it("comes back where it was typed into while it was put in the bin", async () => {
    const [typing, deleting] = await two();
    run(typing.store, waist(700));
    await until(shared.world, deleting.session.bin(deleting.state().openId));
    await settles();
    expect(keptOf(typing)).toEqual(typing.work());
    const isInBin = typing.state().binned.length > 0;
    // Whichever was first: what was typed is kept, and where it lies is said.
    expect(textsOf(typing)).toContain(isInBin ? BINNED(sampleWork.name) : BACK(sampleWork.name));
  });

  it("is brought back by the page it is open on, by a press", async () => {
    const [reading, deleting] = await two();
    await until(shared.world, deleting.session.bin(deleting.state().openId));
    await settles();
    press(reading, "Bring it back");
    await settles();
    expect([textsOf(reading), reading.state().binned, namesOf(reading)]).toMatchObject([[], [], expect.anything()]);
    expect(namesOf(reading)).toContain(sampleWork.name);
    expect(namesOf(deleting)).toContain(sampleWork.name);
  });

  it("removed for good it comes back with the next key, whole", async () => {
    const [typing, deleting] = await two();
    const id = typing.state().openId;
    await until(shared.world, deleting.session.bin(id));
    await until(shared.world, deleting.session.removeForGood(id));
    await settles();
    expect(shared.world.shelf.works.has(id)).toBe(false);
    run(typing.store, waist(700));
    await settles();
    expect(shared.world.shelf.works.get(id)?.saved.work).toEqual(typing.work());
    expect(shared.world.shelf.works.get(id)?.saved.past).toEqual([sampleWork]);
  });
});

describe("what was typed on pages that are gone", () => {
  const typeOn = (page: Page, command: Command): void => {
    const hand = beginGesture(page.store, "keys");
    preview(page.store, hand, [command], { field: "typed in", text: "…" });
  };

  it.each(["close", "kill"] as const)(
    "on one, its field never left (%s), is kept with what the other makes",
    async (end) => {
      const [gone, stays] = await two();
      typeOn(gone, waist(700));
      if (end === "kill") await wait(100);
      gone[end]();
      run(stays.store, hip(1000));
      await settles();
      stays.close();
      await settles();
      const next = await open();
      expect([waistOf(next), hipOf(next), keptNames()]).toEqual([700, 1000, [sampleWork.name]]);
      expect(shared.world.local.size).toBe(0);
    },
  );

  it("on both at once is kept, in one work where it does not collide", async () => {
    const [one, other] = await two();
    typeOn(one, waist(700));
    typeOn(other, hip(1000));
    one.close();
    other.close();
    await settles();
    const next = await open();
    expect([waistOf(next), hipOf(next), keptNames()]).toEqual([700, 1000, [sampleWork.name]]);
    expect(shared.world.local.size).toBe(0);
  });

  it("on both at once is kept, in two works where it does", async () => {
    const [one, other] = await two();
    typeOn(one, waist(700));
    typeOn(other, waist(701));
    one.close();
    other.close();
    await settles();
    await open();
    const waists = [...shared.world.shelf.works.values()].map(
      ({ saved }) => saved.work.tapes[0]?.readings.waistGirth?.[0],
    );
    expect(new Set(waists)).toEqual(new Set([700, 701]));
    expect(keptNames()).toEqual([sampleWork.name, `${sampleWork.name} (copy)`]);
    expect(shared.world.local.size).toBe(0);
  });

  it("and saved there is what a page that has not heard of it puts in the bin and brings back", async () => {
    const [gone, stale] = await two();
    stale.isHidden = true;
    run(gone.store, waist(700));
    await settles();
    gone.close();
    await settles();
    stale.isHidden = false;
    expect(waistOf(stale)).toBe(WAIST);
    const id = stale.state().openId;
    await until(shared.world, stale.session.bin(id));
    await settles();
    press(stale, "Bring it back");
    await settles();
    expect([stale.state().openId, waistOf(stale)]).toEqual([id, 700]);
    undo(stale.store);
    expect(waistOf(stale)).toBe(WAIST);
  });
});

describe("a copy of another work made on a stale page", () => {
  it("is made of what is kept now", async () => {
    const [mine, theirs] = await two();
    await until(shared.world, mine.session.create(named("other")));
    shared.world.isChannelOpen = false;
    run(theirs.store, waist(700));
    await settles();
    await until(shared.world, mine.session.copy(idOn(mine, sampleWork.name)));
    expect([mine.work().name, waistOf(mine)]).toEqual([`${sampleWork.name} (copy)`, 700]);
  });
});

describe("letters between pages", () => {
  interface Line {
    readonly channel: Channel;
    readonly sent: unknown[];
    readonly hear: (data: unknown) => void;
  }
  function line(): Line {
    const sent: unknown[] = [];
    const listeners: ((event: { readonly data: unknown }) => void)[] = [];
    return {
      sent,
      hear: (data) => listeners.forEach((listener) => listener({ data })),
      channel: {
        postMessage: (letter) => sent.push(letter),
        addEventListener: (_kind, listener) => listeners.push(listener),
        close: () => {},
      },
    };
  }

  it("that another version of the page sends, or anything else, are passed over", () => {
    const { channel, hear } = line();
    const heard: News[] = [];
    createTabs("own", channel, (news) => heard.push(news));
    for (const data of [null, 7, "news", {}, { kind: "news" }, { kind: "news", from: "x", news: { kind: "shouted" } }])
      hear(data);
    // Its own are no news.
    hear({ kind: "news", from: "own", news: { kind: "list" } });
    expect(heard).toEqual([]);
    hear({ kind: "news", from: "x", news: { kind: "saved", id: "a", stamp: "s" } });
    expect(heard).toEqual([{ kind: "saved", id: "a", stamp: "s" }]);
  });

  it("ask who is there, and answer that", async () => {
    const { channel, hear, sent } = line();
    const tabs = createTabs("own", channel, () => {});
    const asked = tabs.others();
    hear({ kind: "here", from: "x" });
    hear({ kind: "here", from: "y" });
    hear({ kind: "who" });
    expect(sent).toEqual([{ kind: "who" }, { kind: "here", from: "own" }]);
    await wait(200);
    expect(await asked).toEqual(new Set(["x", "y"]));
    hear({ kind: "here", from: "late" });
    expect(await asked).toEqual(new Set(["x", "y"]));
  });

  it("are missed by nobody where the browser has none, or the page is closing", async () => {
    const none = createTabs("own", null, () => {});
    none.tell({ kind: "list" });
    expect(await none.others()).toEqual(new Set());
    const closing = createTabs(
      "own",
      {
        ...line().channel,
        postMessage: () => {
          throw new DOMException("closed", "InvalidStateError");
        },
      },
      () => {},
    );
    closing.tell({ kind: "list" });
  });
});
