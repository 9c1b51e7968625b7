/** Copies on the wearer's own disk, and files of many works brought in again. */
import { describe, expect, it } from "vitest";
import { fail } from "../../src/core/result";
import { writeWorkFile } from "../../src/document/workFile";
import { readAnyFile, writeWorksFile } from "../../src/document/worksFile";
import { memoryLibrary } from "../../src/store/memoryLibrary";
import { createWorkSession } from "../../src/store/workSession";
import { createWorkStore, run } from "../../src/store/workStore";
import { sampleWork } from "../support/sampleWork";
import { alone } from "../support/surroundings";
import { newWorld, openPage, passes } from "../support/world";
import { FULL, idOn, named, press, pageOfEachTest, until } from "./sessionPage";

const page = pageOfEachTest();
const { work, state, rename, names, texts, idOf, rest, nextPage } = page;

const DAY = 24 * 60 * 60 * 1000;
const own = (name: string) => ({ ...named(name), invented: false });
const given = () => page.page.given;
const REMINDER =
  "You have worked here for a month without a copy on your own disk. A browser can lose what it keeps: save a copy now.";

describe("a reminder", () => {
  const later = async (days: number): Promise<void> => {
    page.world.now += days * DAY;
    await nextPage();
  };

  it("comes after a month of work without a copy, with the way to make one, and is gone once it is taken up", async () => {
    await page.session.create(own("mine"));
    await later(29);
    expect(texts()).toEqual([]);
    await later(2);
    expect(state().messages.map(({ text, actions }) => [text, actions.map(({ label }) => label)])).toEqual([
      [REMINDER, ["Download all my works"]],
    ]);
    press(page.page, "Download all my works");
    await page.session.flush();
    expect(given()).toHaveLength(1);
    expect(texts()).toEqual([]);
    await later(40);
    // Nothing was changed since the copy.
    expect(texts()).toEqual([]);
  });

  it("is not said again for a month where it is passed over", async () => {
    await page.session.create(own("mine"));
    await later(31);
    expect(texts()).toEqual([REMINDER]);
    await later(0);
    expect(texts()).toEqual([]);
    await later(29);
    expect(texts()).toEqual([]);
    await later(2);
    expect(texts()).toEqual([REMINDER]);
  });

  it("counts from the first change after the last copy", async () => {
    await page.session.create(own("mine"));
    page.world.now += 20 * DAY;
    await page.session.download();
    page.world.now += 5 * DAY;
    rename("mine, changed");
    await rest();
    await later(29);
    expect(texts()).toEqual([]);
    await later(2);
    expect(texts()).toEqual([REMINDER]);
  });

  it("goes on for one work though another has been copied since", async () => {
    await page.session.create(own("mine"));
    page.world.now += 5 * DAY;
    await page.session.create(own("another"));
    await page.session.download();
    await later(27);
    expect(texts()).toEqual([REMINDER]);
    // Once both are in a copy there is nothing to remind of.
    await page.session.open(idOf("mine"));
    await page.session.download();
    await later(60);
    expect(texts()).toEqual([]);
  });

  it("is for none in the bin", async () => {
    await page.session.create(own("thrown away"));
    page.world.now += 20 * DAY;
    await page.session.bin(state().openId);
    await later(11);
    expect(texts()).not.toContain(REMINDER);
  });

  it("is for a work that was left out of a copy", async () => {
    await page.session.create(own("hurt"));
    page.library.damaged.add(state().openId);
    await page.session.create(own("next"));
    await page.session.downloadAll();
    page.library.damaged.clear();
    await later(31);
    // The one that could not be read was in no file.
    expect(texts()).toContain(REMINDER);
    await page.session.downloadAll();
    await later(60);
    expect(texts()).not.toContain(REMINDER);
  });

  it("goes by the one time that an older version kept, until all are in a copy", async () => {
    await page.session.create(own("mine"));
    await page.session.downloadAll();
    await page.library.setPageValue("uncopied-since", String(page.world.now));
    await page.session.download();
    await later(31);
    expect(texts()).toEqual([REMINDER]);
    await page.session.downloadAll();
    await later(60);
    expect(texts()).toEqual([]);
  });

  it("comes on a page that stays open for months, when it is looked at again", async () => {
    await page.session.create(own("mine"));
    page.world.now += 31 * DAY;
    expect(texts()).toEqual([]);
    await page.session.pageIsBack();
    expect(texts()).toEqual([REMINDER]);
    await page.session.pageIsBack();
    expect(texts()).toEqual([REMINDER]);
  });

  it("forgets no work where what is known of them could not be read for once", async () => {
    await page.session.create(own("mine"));
    page.world.now += 20 * DAY;
    const { pageValue, changePageValue } = page.library;
    page.library.pageValue = async () => fail(FULL);
    page.library.changePageValue = async () => fail(FULL);
    await page.session.create(own("another"));
    await page.session.download();
    expect(await page.session.forget(["a"])).toBe(false);
    Object.assign(page.library, { pageValue, changePageValue });
    await later(11);
    expect(texts()).toEqual([REMINDER]);
  });

  it("knows of both copies where two tabs take one each in the same breath", async () => {
    await page.session.create(own("mine"));
    await page.session.create(own("another"));
    const theirs = await openPage(page.world, sampleWork, page.library);
    expect(theirs.work().name).toBe("another");
    await until(page.world, page.session.open(idOf("mine")));
    const kept = async (): Promise<readonly string[]> => {
      const answer = await page.library.pageValue("uncopied-since");
      return answer.ok ? Object.keys(JSON.parse(answer.value ?? "{}")) : ["not read"];
    };
    expect(await kept()).toHaveLength(2);
    await until(page.world, Promise.all([page.session.download(), theirs.session.download()]));
    expect(await kept()).toEqual([]);
  });

  it("still knows of a work that another tab began while all that were there were handed out", async () => {
    await page.session.create(own("mine"));
    const theirs = await openPage(page.world, sampleWork, page.library);
    const { list } = page.library;
    page.library.list = async () => {
      page.library.list = list;
      const then = await list();
      await theirs.session.create(own("begun meanwhile"));
      return then;
    };
    await until(page.world, page.session.downloadAll());
    const kept = await page.library.pageValue("uncopied-since");
    expect(kept.ok && Object.keys(JSON.parse(kept.value ?? "{}"))).toEqual([idOn(theirs, "begun meanwhile")]);
  });

  it("takes the work that was handed out for copied, not the one that is opened meanwhile", async () => {
    await page.session.create(own("mine"));
    await page.session.create(own("another"));
    const { list } = page.library;
    // Its first answer takes long.
    page.library.list = async () => {
      page.library.list = list;
      for (let turn = 0; turn < 2000; turn += 1) await Promise.resolve();
      return list();
    };
    const going = page.session.download();
    await page.session.open(idOf("mine"));
    await going;
    const kept = await page.library.pageValue("uncopied-since");
    expect(kept.ok && Object.keys(JSON.parse(kept.value ?? "{}"))).toEqual([idOf("mine")]);
  });

  it.each(["not a number", "[]", '{"x":"soon"}', "null"])(
    "takes %s, which nobody can read, for nothing",
    async (kept) => {
      await page.library.setPageValue("uncopied-since", kept);
      await later(60);
      expect(texts()).toEqual([]);
    },
  );

  it("is not for demos", async () => {
    expect(sampleWork.invented).toBe(true);
    rename("played with");
    await rest();
    await later(60);
    expect(texts()).toEqual([]);
  });

  it("is not for what was only looked at", async () => {
    await page.session.create(own("mine"));
    await page.session.downloadAll();
    await later(60);
    await page.session.open(idOf("mine"));
    await later(60);
    expect(texts()).toEqual([]);
  });
});

describe("all works as one file", () => {
  it("holds each as it is kept, the open one as it stands, and none of the bin", async () => {
    await page.session.create(own("one"));
    await page.session.create(own("thrown away"));
    await page.session.bin(state().openId);
    await page.session.open(idOf("one"));
    const saved = page.world.now;
    rename("one, changed this moment");
    page.world.now = Date.UTC(2026, 4, 6, 7, 8, 9);
    await page.session.downloadAll();
    expect(given().map(({ name }) => name)).toEqual(["bodicewright-works-2026-05-06.json"]);
    const read = readAnyFile(given()[0]?.text ?? "");
    const { works, unreadable } = read.ok ? read.value : { works: [], unreadable: [] };
    expect(unreadable).toEqual([]);
    expect(works.map((one) => one.work).toSorted((a, b) => a.name.localeCompare(b.name))).toEqual(
      [work(), sampleWork].toSorted((a, b) => a.name.localeCompare(b.name)),
    );
    expect(saved - Date.parse(works.find((one) => one.work.name === sampleWork.name)?.saved ?? "")).toBeLessThan(5000);
  });

  it("is told where one file cannot hold it, and not where it can", async () => {
    await page.session.download();
    expect(texts()).toEqual([]);
    const data = "A".repeat(2_600_000);
    await page.session.download(
      Array.from({ length: 30 }, (_, added) => ({ trial: "t1", added, type: "image/jpeg" as const, data })),
    );
    expect(given()).toHaveLength(3);
    expect(texts()).toEqual([
      "Too much for one file: it is in 2. Keep them all; the browser may ask before the second.",
    ]);
  });

  it("leaves out what cannot be read, and names it", async () => {
    await page.session.create(own("hurt"));
    page.library.damaged.add(state().openId);
    await page.session.create(own("next"));
    await page.session.downloadAll();
    expect(given()[0]?.text).not.toContain('"hurt"');
    expect(texts()).toEqual(["Left out of the file, since it could not be read: “hurt”."]);
  });

  it("brought in on another computer has every work, when it was saved, and keeps none twice", async () => {
    await page.session.create(own("one"));
    page.world.now += DAY;
    await page.session.create({ ...own("two"), wearer: "Ada" });
    await page.session.downloadAll();
    const file = readAnyFile(given()[0]?.text ?? "");
    const savedThen = new Map(state().entries.map((entry) => [entry.name, entry.saved]));

    const world = newWorld();
    world.now = page.world.now + 100 * DAY;
    const there = await openPage(world, own("already there"), memoryLibrary(world.shelf));
    await there.session.bringIn(file, "works.json");
    const entries = there.state().entries;
    expect(entries.map(({ name }) => name).toSorted()).toEqual(
      ["already there", "one", sampleWork.name, "two"].toSorted(),
    );
    for (const { name, saved, wearer } of entries.filter(({ name: of }) => of !== "already there")) {
      expect(saved).toBe(savedThen.get(name));
      expect(wearer).toBe(name === "two" ? "Ada" : null);
    }
    expect(there.work().name).toBe("already there");
    expect(there.state().messages.map(({ text }) => text)).toEqual(["works.json: 3 works brought in."]);

    await there.session.bringIn(file, "works.json");
    expect(there.state().entries).toHaveLength(4);
    expect(there.state().messages.at(-1)?.text).toBe("works.json: no new work; 3 were here already, the very same.");
  });
});

describe("bringing in a file", () => {
  const bring = (text: string): Promise<void> => page.session.bringIn(readAnyFile(text), "f.json");

  it("of a work that is here already, the very same, opens that one and says so", async () => {
    await page.session.create(own("mine"));
    const id = state().openId;
    await page.session.create(own("next"));
    await bring(writeWorkFile(own("mine")));
    expect([state().openId, names().length]).toEqual([id, 3]);
    expect(texts()).toEqual(["“mine” is here already, the very same, so it was opened and not added again."]);
    await bring(writeWorkFile(own("mine")));
    // Said once, however often it is opened.
    expect([state().openId, names().length, texts().length]).toEqual([id, 3, 1]);
  });

  it("of a work that differs in anything adds it beside its namesake", async () => {
    await page.session.create(own("mine"));
    await bring(writeWorkFile({ ...own("mine"), age: 40 }));
    expect(work().age).toBe(40);
    expect(names().filter((name) => name === "mine")).toHaveLength(2);
    expect(texts()).toEqual([]);
  });

  it("goes by the work as it is on the page, though that is not saved", async () => {
    await page.session.create(own("mine"));
    page.library.refusal = FULL;
    rename("mine, unsaved");
    await rest();
    await bring(writeWorkFile(own("mine, unsaved")));
    expect(texts()).toEqual(["“mine, unsaved” is here already, the very same, so it was opened and not added again."]);
  });

  it("of several keeps what can be read, counts the rest, and opens none of them", async () => {
    const text = writeWorksFile([{ work: own("one") }, { work: own("two") }, { work: sampleWork }]);
    await bring(text.replace('"name": "two"', '"name": 2'));
    expect(work()).toEqual(sampleWork);
    expect(names().toSorted()).toEqual(["one", sampleWork.name].toSorted());
    expect(texts()).toEqual(["f.json: 1 work brought in; 1 was here already, the very same; 1 could not be read."]);
  });

  it("that holds one work twice keeps it once", async () => {
    await bring(writeWorksFile([{ work: own("one") }, { work: own("one") }]));
    expect(names().filter((name) => name === "one")).toHaveLength(1);
    expect(texts()).toEqual(["f.json: 1 work brought in; 1 was here already, the very same."]);
  });

  it("stops where there is no room, says what came of it, and changes nothing else", async () => {
    const { save } = page.library;
    page.library.save = (request) => (request.saved.work.name === "two" ? Promise.resolve(fail(FULL)) : save(request));
    await bring(writeWorksFile([{ work: own("one") }, { work: own("two") }, { work: own("three") }]));
    expect(names().toSorted()).toEqual(["one", sampleWork.name].toSorted());
    expect(texts()).toEqual([
      expect.stringMatching(/no room left/),
      "f.json: 1 work brought in; 2 could not be saved here and were left out.",
    ]);
    expect(state().storage).toMatchObject({ state: "saved" });
    expect(work()).toEqual(sampleWork);
  });
});

describe("the browser’s promise not to clear what is kept", () => {
  it.each([true, false, null])("is asked for once, with the first work of her own, and shown (%s)", async (promise) => {
    let asked = 0;
    const store = createWorkStore(sampleWork);
    // Whether it is promised already can be known without asking.
    const persist = async (isAsking: boolean): Promise<boolean | null> => {
      if (isAsking) asked += 1;
      return isAsking ? promise : null;
    };
    const around = { ...alone({ library: memoryLibrary() }), collisionWords: async () => [], persist };
    const session = createWorkSession(store, around, sampleWork);
    await session.start();
    run(store, { kind: "setName", name: "a demo played with" });
    await session.flush();
    expect([asked, session.state.getState().isLasting]).toEqual([0, null]);
    await session.create(own("mine"));
    expect([asked, session.state.getState().isLasting]).toEqual([1, promise]);
    run(store, { kind: "setName", name: "mine, changed" });
    await session.flush();
    expect(asked).toBe(1);
  });

  it("is not asked for where nothing is kept", async () => {
    let asked = 0;
    const store = createWorkStore(own("mine"));
    const persist = async (): Promise<boolean> => {
      asked += 1;
      return true;
    };
    const session = createWorkSession(store, { ...alone(), collisionWords: async () => [], persist }, own("mine"));
    await session.start();
    run(store, { kind: "setName", name: "changed" });
    await session.flush();
    await passes(page.world, 1000);
    expect([asked, session.state.getState().isLasting]).toEqual([0, null]);
  });
});
