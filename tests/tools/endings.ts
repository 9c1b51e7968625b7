/**
 * Shows in a real browser that nothing typed is lost, whatever ends the page: `npm run endings -- --url http://…`, or
 * `--dist <folder>` of a built page. Prints what ended the page × what was typed × what remained, and what was left of keys
 * that were pressed shortly before a browser was killed.
 *
 * `--kills 40` how many times that is; `--seed 1` draws the moments; `--typed measure` and
 * `--ends "reload|killed"` take only what is so named; `--out file.md`; `--hands 2` pages at a time.
 */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium, type Browser, type BrowserContext, type Page } from "@playwright/test";
import { preview } from "vite";
import { launchKillable } from "../support/killable";
import { textOf } from "../support/poppler";
import {
  anotherStep,
  ELSEWHERE,
  goToStep,
  openAt,
  remained,
  remainedInCopy,
  type,
  typeAtOnce,
  TYPED,
  type Typed,
  type TypeOptions,
} from "../support/typing";
import { browserFlags, installedBrowser } from "./browser.mjs";

interface Scene {
  readonly browser: Browser;
  readonly context: BrowserContext;
  readonly page: Page;
  readonly url: string;
  readonly typed: Typed;
}

type Ending = (scene: Scene) => Promise<string>;

/** ms in which a page that rests has everything put by. */
const REST = 500;

const pause = (ms: number): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, ms);
  });

function argument(name: string): string | undefined {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? undefined : process.argv[at + 1];
}

async function said(page: Page, typed: Typed, expected: readonly string[]): Promise<string> {
  const { kept, instead } = await remained(page, typed, expected);
  if (kept !== "LOST") return kept;
  if (await remainedInCopy(page, typed, expected)) return "kept in a copy";
  return `**LOST** (${instead.map((one) => one.replace(/^.*?(?=Mouth)/, "") || "empty").join(", ")})`;
}

async function openAgain({ context, url }: Pick<Scene, "context" | "url">): Promise<Page> {
  const page = await context.newPage();
  await page.goto(url);
  return page;
}

/** Types in the page, lets something happen to it, and looks at the page that there is then. */
const after =
  (happens: (scene: Scene) => Promise<Page>): Ending =>
  async (scene) => {
    const expected = await type(scene.page, scene.typed);
    return said(await happens(scene), scene.typed, expected);
  };

async function crash(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const crashed = page.waitForEvent("crash");
  void session.send("Page.crash").catch(() => {});
  await crashed;
  await page.close();
}

const printed = async (page: Page): Promise<string> => textOf(await page.pdf()).replaceAll(/\s+/g, " ");

/** What is printed of a work where it was typed and entered. */
async function paperOf({ browser, url, typed }: Scene, keys: "none" | "entered"): Promise<string> {
  const context = await browser.newContext({ serviceWorkers: "block" });
  try {
    const page = await context.newPage();
    await openAt(page, url, typed);
    if (keys === "entered") {
      await type(page, typed);
      await page.keyboard.press("Tab");
      // A handle's keys are one step once they rest.
      await pause(1500);
    }
    return await printed(page);
  } finally {
    await context.close();
  }
}

const print: Ending = async (scene) => {
  const { page, typed } = scene;
  const expected = await type(page, typed);
  const paper = await printed(page);
  const kept = await said(page, typed, expected);
  const [without, entered] = [await paperOf(scene, "none"), await paperOf(scene, "entered")];
  if (without === entered) return `${kept}; no line of this sheet`;
  return `${kept}; ${paper === entered ? "on the paper" : "**NOT ON THE PAPER**"}`;
};

/** In the other field while the first is not left, or at once in the same. */
const secondPage =
  (where: "another field" | "the same field" | "the same field at once"): Ending =>
  async (scene) => {
    const { context, page, typed, url } = scene;
    const second = await context.newPage();
    const there = where === "another field" ? ELSEWHERE : typed;
    const keys: TypeOptions = where === "another field" ? {} : { keysOf: (spot) => spot.otherKeys };
    await openAt(second, url, there);
    if (where === "the same field at once") {
      const [mine, theirs] = await typeAtOnce(page, second, typed);
      await pause(REST);
      return bothOf(scene, second, { typed, text: mine }, { typed: there, text: theirs });
    }
    await page.bringToFront();
    const mine = await type(page, typed);
    await second.bringToFront();
    // What was typed over on purpose is not lost.
    const isSeen = where === "the same field" && (await remained(second, typed, mine)).kept !== "LOST";
    const theirs = await type(second, there, keys);
    if (isSeen) {
      await pause(REST);
      const left = (await remained(page, typed, theirs)).kept !== "LOST";
      const both = await bothOf(scene, second, null, { typed: there, text: theirs });
      return `first: seen in the second, then typed over${left ? "" : "; **LOST TRACK**: the first page still shows its own"}; ${both}`;
    }
    return bothOf(scene, second, { typed, text: mine }, { typed: there, text: theirs });
  };

interface Entry {
  readonly typed: Typed;
  readonly text: readonly string[];
}

/** Both pages are closed, and one opened. */
async function bothOf(scene: Scene, second: Page, first: Entry | null, other: Entry): Promise<string> {
  await scene.page.close();
  await second.close();
  const found: string[] = [];
  for (const [name, entry] of [
    ["first", first],
    ["second", other],
  ] as const) {
    if (entry === null) continue;
    const opened = await openAgain(scene);
    found.push(`${name}: ${await said(opened, entry.typed, entry.text)}`);
    // The work of a copy is the one that would be opened next.
    await opened.close();
  }
  return found.join("; ");
}

async function withProfile<T>(use: (profile: string) => Promise<T>): Promise<T> {
  const profile = mkdtempSync(join(tmpdir(), "bodicewright-endings-"));
  try {
    return await use(profile);
  } finally {
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  }
}

/** A page whose browser has given all its room away: it asks for that only once, when it is started. */
async function openFull(context: BrowserContext, url: string): Promise<{ page: Page; makeRoom: () => Promise<void> }> {
  const { origin } = new URL(url);
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 1 });
  return {
    page,
    makeRoom: async () => void (await session.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 1e9 })),
  };
}

const storageFull =
  (isStillFull: boolean): Ending =>
  ({ url, typed }) =>
    withProfile(async (profile) => {
      const first = await launchKillable(profile);
      const before = await first.context.newPage();
      await openAt(before, url, typed);
      await pause(REST);
      await first.context.close();
      const full = await launchKillable(profile);
      const { page } = await openFull(full.context, url);
      await openAt(page, url, typed, false);
      const expected = await type(page, typed);
      await pause(REST * 2);
      const isSaid = await page
        .getByText(/no room left/)
        .first()
        .isVisible();
      const isOffered = (await page.getByRole("button", { name: /^Download/ }).count()) > 0;
      await page.close();
      await full.context.close();
      const next = await launchKillable(profile);
      const { page: opened } = isStillFull ? await openFull(next.context, url) : { page: await next.context.newPage() };
      await opened.goto(url);
      const words = `${isSaid ? "said" : "**not said**"}, ${isOffered ? "download offered" : "no download beside it"}`;
      const found = `${await said(opened, typed, expected)}; ${words}`;
      await next.context.close();
      return found;
    });

const cleared: Ending = async (scene) => {
  const { context, page, typed, url } = scene;
  const session = await context.newCDPSession(page);
  const expected = await type(page, typed, {
    beforeLast: async () => {
      await pause(REST);
      await session.send("Storage.clearDataForOrigin", { origin: new URL(url).origin, storageTypes: "all" });
      await pause(REST);
    },
  });
  await pause(REST);
  await page.reload();
  return said(page, typed, expected);
};

const killed: Ending = ({ url, typed }) =>
  withProfile(async (profile) => {
    const first = await launchKillable(profile);
    const page = await first.context.newPage();
    await openAt(page, url, typed);
    const expected = await type(page, typed);
    await pause(300);
    await first.kill();
    const second = await launchKillable(profile);
    const found = await said(await openAgain({ context: second.context, url }), typed, expected);
    await second.context.close();
    return found;
  });

const another = async ({ page }: Scene): Promise<void> => {
  await page.getByRole("button", { name: "Works", exact: true }).click();
  const works = page.getByRole("region", { name: "Your works" });
  await works.getByRole("button", { name: /^Demo: Harbour/ }).click();
  await works.waitFor({ state: "hidden" });
};

const andBack = async (scene: Scene): Promise<Page> => {
  const { page } = scene;
  await another(scene);
  await page.getByRole("button", { name: "Works", exact: true }).click();
  const works = page.getByRole("region", { name: "Your works" });
  const rows = works.getByRole("listitem").filter({ hasNotText: "Harbour" });
  await rows.getByRole("button", { name: /^(?!Copy |Delete |Put in the bin: )/ }).click();
  await works.waitFor({ state: "hidden" });
  return page;
};

const fullThenRoom = storageFull(false);
const fullForGood = storageFull(true);
const OWN_BROWSER: ReadonlySet<Ending> = new Set([killed, fullThenRoom, fullForGood]);

const ENDINGS: Readonly<Record<string, Ending>> = {
  "Back, then Forward": after(async ({ page, typed }) => {
    await page.goBack();
    await page.getByRole("heading", { level: 2, name: anotherStep(typed.step), exact: true }).waitFor();
    await page.goForward();
    return page;
  }),
  "another address, then Back": after(async ({ page }) => {
    await page.goto("about:blank");
    await page.goBack();
    return page;
  }),
  "a step’s link": after(async ({ page, typed }) => {
    await goToStep(page, anotherStep(typed.step));
    return page;
  }),
  printing: print,
  "Undo, then Redo": async ({ page, typed }) => {
    const expected = await type(page, typed);
    const undo = page.getByRole("button", { name: "Undo", exact: true });
    const isOffered = await undo.isEnabled();
    await undo.click({ force: true });
    const isTakenBack = (await remained(page, typed, expected)).kept === "LOST";
    const redo = page.getByRole("button", { name: "Redo", exact: true });
    // What does not read is no step.
    if (await redo.isEnabled()) await redo.click();
    const found = await said(page, typed, expected);
    return isOffered && isTakenBack ? found : `${found}; ${isOffered ? "nothing to take back" : "no undo offered"}`;
  },
  reload: after(async ({ page }) => {
    await page.reload();
    return page;
  }),
  "tab closed": after(async (scene) => {
    await scene.page.close();
    return openAgain(scene);
  }),
  "another work opened, and back": after(andBack),
  "second tab, another field": secondPage("another field"),
  "second tab, the same field": secondPage("the same field"),
  "second tab, the same field at once": secondPage("the same field at once"),
  "page crashed 300 ms after": after(async (scene) => {
    await pause(300);
    await crash(scene.page);
    return openAgain(scene);
  }),
  "browser killed 300 ms after": killed,
  "storage full, then room again": fullThenRoom,
  "storage full, and still full": fullForGood,
  "site data cleared, one more key, reload": cleared,
};

/** One after the other by so many hands; gives what each came to, in order. */
async function byHands<A, B>(hands: number, jobs: readonly A[], work: (job: A) => Promise<B>): Promise<B[]> {
  const done: B[] = [];
  const waiting = [...jobs.entries()];
  const hand = async (): Promise<void> => {
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) done[next[0]] = await work(next[1]);
  };
  await Promise.all(Array.from({ length: hands }, hand));
  return done;
}

/** Browsers come and go on a busy machine: one that is gone is started anew. */
function browserAgain(): { readonly get: () => Promise<Browser>; readonly close: () => Promise<void> } {
  const executablePath = installedBrowser();
  const launch = (): Promise<Browser> =>
    chromium.launch({ args: browserFlags(), ...(executablePath === undefined ? {} : { executablePath }) });
  let current = launch();
  return {
    get: async () => {
      if (!(await current).isConnected()) current = launch();
      return current;
    },
    close: async () => (await current).close(),
  };
}

type Browsers = ReturnType<typeof browserAgain>;

async function cell(browsers: Browsers, url: string, ending: Ending, typed: Typed, isAgain = false): Promise<string> {
  try {
    const browser = await browsers.get();
    const context = await browser.newContext({
      serviceWorkers: "block",
      viewport: { width: 1280, height: 800 },
      locale: "en-GB",
      timezoneId: "Europe/London",
    });
    context.setDefaultTimeout(15_000);
    try {
      const page = await context.newPage();
      if (!OWN_BROWSER.has(ending)) await openAt(page, url, typed);
      return await ending({ browser, context, page, url, typed });
    } finally {
      await context.close();
    }
  } catch (error) {
    if (!isAgain) return cell(browsers, url, ending, typed, true);
    const [line] = (error instanceof Error ? error.message : String(error)).split("\n");
    return `could not be tried: ${line}`;
  }
}

const row = (cells: readonly string[]): string => `| ${cells.map((one) => one.replaceAll("|", "\\|")).join(" | ")} |`;
const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [row(head), row(head.map(() => "---")), ...rows.map(row)].join("\n");

// What a browser killed at a random moment leaves of keys pressed just before.

/** mulberry32 */
function drawn(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** How old a key was when all ended, ms: since it was sent, and since the page had dealt with it. */
interface KeyFate {
  readonly sent: number;
  readonly had: number;
  readonly kept: boolean;
}

const KILLS = ["browser", "pages", "crash"] as const;
type Kill = (typeof KILLS)[number];
const KILL_WORDS: Readonly<Record<Kill, string>> = {
  browser: "whole browser killed",
  pages: "renderer killed",
  crash: "page crashed",
};
const LETTERS = "abcdefghijklmnopqrstuvwxyz";

async function killOnce(profile: string, url: string, kill: Kill, random: () => number): Promise<readonly KeyFate[]> {
  const nameOf = (page: Page) => page.getByRole("textbox", { name: "Name of this work" });
  const first = await launchKillable(profile);
  const page = await first.context.newPage();
  await page.goto(url);
  await page.getByText("Saved here").waitFor();
  await page.waitForLoadState("networkidle");
  await nameOf(page).click();
  await page.keyboard.press("Control+a");
  const text = Array.from({ length: 14 }, () => LETTERS[Math.floor(random() * LETTERS.length)] ?? "a").join("");
  const times: { sent: number; had: number }[] = [];
  for (const letter of text) {
    const sent = Date.now();
    await page.keyboard.press(letter);
    times.push({ sent, had: Date.now() });
    await pause(20 + random() * 60);
  }
  await pause(Math.max(0, random() * 400 - 50));
  let killable = first;
  let time = Date.now();
  if (kill === "browser") {
    time = await first.kill();
    killable = await launchKillable(profile);
  } else {
    const crashed = page.waitForEvent("crash");
    if (kill === "pages") time = await first.killPages();
    else {
      const session = await first.context.newCDPSession(page);
      time = Date.now();
      void session.send("Page.crash").catch(() => {});
    }
    await crashed;
    await page.close();
  }
  const again = await openAgain({ context: killable.context, url });
  await nameOf(again).waitFor();
  // What was put by is brought in before the page is shown.
  const found = await nameOf(again).inputValue();
  await killable.context.close();
  let kept = 0;
  while (kept < text.length && found[kept] === text[kept]) kept += 1;
  return times.map(({ sent, had }, at) => ({ sent: time - sent, had: time - had, kept: at < kept }));
}

const AGES = [0, 25, 50, 75, 100, 150, 200, 300, 400, Infinity];

async function kills(url: string, count: number, seed: number): Promise<string> {
  const random = drawn(seed);
  const fates: Record<Kill, KeyFate[]> = { browser: [], pages: [], crash: [] };
  await withProfile(async (profile) => {
    for (let done = 0; done < count; done += 1) {
      // Half of them take the whole browser.
      const kill = done % 2 === 0 ? "browser" : done % 4 === 1 ? "pages" : "crash";
      try {
        const those = await killOnce(profile, url, kill, random);
        fates[kill].push(...those);
        const lost = those.filter(({ kept }) => !kept).map(({ had }) => had);
        const left = lost.length === 0 ? "nothing lost" : `lost are keys up to ${Math.max(...lost)} ms old`;
        process.stderr.write(`${done + 1} of ${count}, ${KILL_WORDS[kill]} ${those.at(-1)?.had} ms after: ${left}\n`);
      } catch (error) {
        process.stderr.write(`${done + 1} of ${count} could not be tried: ${String(error).split("\n")[0]}\n`);
      }
    }
  });
  const bins = AGES.slice(0, -1).map((from, at) => [from, AGES[at + 1] ?? Infinity] as const);
  const head = ["ms since the key", ...KILLS.map((kill) => KILL_WORDS[kill])];
  const rows = bins.map(([from, to]) => [
    to === Infinity ? `over ${from}` : `${from}–${to}`,
    ...KILLS.map((kill) => {
      const those = fates[kill].filter(({ had }) => had >= from && had < to);
      return those.length === 0 ? "none" : `${those.filter(({ kept }) => kept).length} of ${those.length} kept`;
    }),
  ]);
  const oldest = (of: "sent" | "had") =>
    KILLS.map((kill) => {
      const lost = fates[kill].filter(({ kept }) => !kept).map((fate) => fate[of]);
      return lost.length === 0 ? "none" : String(Math.max(...lost));
    });
  rows.push(["oldest key lost", ...oldest("had")], ["… since it was sent", ...oldest("sent")]);
  return table(head, rows);
}

// How long a key takes into storage.

/** ms from each key to the first sight of it in local storage and in the database; null where it was not seen. */
type Stored = readonly { readonly local: number | null; readonly database: number | null }[];

const KEYS_TIMED = 30;

async function timeToStorage(browser: Browser, url: string): Promise<string> {
  const context = await browser.newContext({ serviceWorkers: "block" });
  // The compiler of scripts names functions by it.
  await context.addInitScript({ content: "globalThis.__name = (one) => one;" });
  const page = await context.newPage();
  await page.goto(url);
  await page.getByText("Saved here").waitFor();
  await page.waitForLoadState("networkidle");
  const name = page.getByRole("textbox", { name: "Name of this work" });
  await name.click();
  await page.keyboard.press("Control+a");
  const stored: { local: number | null; database: number | null }[] = [];
  for (let at = 0; at < KEYS_TIMED; at += 1) {
    const letter = LETTERS[at % LETTERS.length] ?? "a";
    const watching = page.evaluate(watchOneKey, 1500);
    // It is listening once the page has answered something else.
    await page.evaluate(() => null);
    await page.keyboard.press(letter);
    stored.push(await watching);
  }
  await context.close();
  return storedTable(stored);
}

/** Runs in the page. Waits for a key, then looks again and again where the text of the field is to be found. */
function watchOneKey(patience: number): Promise<{ local: number | null; database: number | null }> {
  return new Promise((resolve) => {
    const onKey = ({ timeStamp }: KeyboardEvent): void => {
      let local: number | null = null;
      let database: number | null = null;
      const opening = indexedDB.open("bodicewright");
      const since = (): number => performance.now() - timeStamp;
      const text = (): string =>
        document.activeElement instanceof HTMLInputElement ? JSON.stringify(document.activeElement.value) : "";
      opening.addEventListener("success", () => {
        const db = opening.result;
        const look = (): void => {
          if (
            Array.from({ length: localStorage.length }, (_, at) =>
              localStorage.getItem(localStorage.key(at) ?? ""),
            ).some((kept) => kept?.includes(text()))
          )
            local ??= since();
          const asking = db.transaction("works").objectStore("works").getAll();
          asking.addEventListener("success", () => {
            if (JSON.stringify(asking.result).includes(text())) database ??= since();
            if (database === null && since() < patience) return void setTimeout(look, 0);
            db.close();
            resolve({ local, database });
          });
        };
        // The field has the letter once the key is dealt with.
        setTimeout(look, 0);
      });
    };
    window.addEventListener("keydown", onKey, { once: true, capture: true });
  });
}

function storedTable(stored: Stored): string {
  const line = (what: string, of: "local" | "database"): string[] => {
    const times = stored.flatMap((one) => one[of] ?? []).toSorted((a, b) => a - b);
    const quantile = (share: number): string =>
      times[Math.min(times.length - 1, Math.floor(share * times.length))]?.toFixed(0) ?? "–";
    return [what, `${times.length} of ${stored.length}`, quantile(0.5), quantile(0.9), quantile(1)];
  };
  return table(
    ["where", "keys seen there", "median", "9 of 10", "longest"],
    [line("left in local storage", "local"), line("in the database", "database")],
  );
}

// All of it.

async function served(): Promise<{ url: string; close: () => Promise<void> }> {
  const url = argument("url");
  if (url !== undefined) return { url: url.endsWith("/") ? url : `${url}/`, close: async () => {} };
  const outDir = argument("dist");
  if (outDir === undefined) throw new Error("say --url http://… or --dist <folder of a built page>");
  const server = await preview({ build: { outDir }, preview: { port: 4394, strictPort: false }, logLevel: "error" });
  return { url: server.resolvedUrls?.local[0] ?? "", close: () => server.close() };
}

async function main(): Promise<void> {
  const { url, close } = await served();
  const seed = Number(argument("seed") ?? 1);
  const count = Number(argument("kills") ?? 40);
  const [typedMeant, endsMeant] = [new RegExp(argument("typed") ?? ""), new RegExp(argument("ends") ?? "")];
  const browsers = browserAgain();
  const columns = TYPED.filter(({ name }) => typedMeant.test(name));
  const ends = Object.entries(ENDINGS).filter(([name]) => endsMeant.test(name));
  const jobs = ends.flatMap(([name, ending]) => columns.map((typed) => ({ name, ending, typed })));
  const cells = await byHands(Number(argument("hands") ?? 2), jobs, async ({ name, ending, typed }) => {
    const found = await cell(browsers, url, ending, typed);
    process.stderr.write(`${name} × ${typed.name}: ${found}\n`);
    return { name, typed: typed.name, found };
  });
  const rows = ends.map(([name]) => [
    name,
    ...columns.map((typed) => cells.find((one) => one.name === name && one.typed === typed.name)?.found ?? ""),
  ]);
  const text = [
    ...(cells.length > 0 ? [table(["what ended the page", ...columns.map(({ name }) => name)], rows)] : []),
    ...(count > 0
      ? [`Ended at a random moment (seed ${seed}, ${count} times); keys by their age:`, await kills(url, count, seed)]
      : []),
    ...(count > 0 ? ["ms from a key to where it is kept:", await timeToStorage(await browsers.get(), url)] : []),
  ].join("\n\n");
  await browsers.close();
  await close();
  const out = argument("out");
  if (out === undefined) process.stdout.write(`${text}\n`);
  else writeFileSync(out, `${text}\n`);
  if (cells.some(({ found }) => /LOST|NOT ON|not said|could not/.test(found))) process.exitCode = 1;
}

await main();
