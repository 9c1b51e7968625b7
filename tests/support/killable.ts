/** A browser with a profile on the disk, that can be ended as a crash or a loss of power ends one. */
import { chromium, type BrowserContext } from "@playwright/test";
import { browserFlags, installedBrowser } from "../tools/browser.mjs";

export interface Killable {
  readonly context: BrowserContext;
  /** Ends all of its processes at once; nothing of it can do anything any more. Gives the time when it began to. */
  readonly kill: () => Promise<number>;
  /** Ends what draws and runs its pages; the browser goes on. */
  readonly killPages: () => Promise<number>;
}

/** @param profile the folder of its profile, which the next one may begin with again */
export async function launchKillable(profile: string): Promise<Killable> {
  const executablePath = installedBrowser();
  const context = await chromium.launchPersistentContext(profile, {
    args: browserFlags(),
    // Else each page would be fetched once more for it while its time is taken.
    serviceWorkers: "block",
    viewport: { width: 1280, height: 800 },
    locale: "en-GB",
    timezoneId: "Europe/London",
    ...(executablePath === undefined ? {} : { executablePath }),
  });
  const browser = context.browser();
  if (browser === null) throw new Error("the browser does not say what it is");
  const session = await browser.newBrowserCDPSession();
  const processes = async () => (await session.send("SystemInfo.getProcessInfo")).processInfo;
  const closed = new Promise<void>((resolve) => {
    context.on("close", () => resolve());
  });
  const end = (ids: readonly number[]): number => {
    const time = Date.now();
    for (const id of ids) {
      try {
        process.kill(id, "SIGKILL");
      } catch {
        // It went with the one before.
      }
    }
    return time;
  };
  return {
    context,
    kill: async () => {
      const all = await processes();
      // The one that starts the others first.
      const time = end([...idsOf(all, "browser"), ...idsOf(all, null)]);
      await closed;
      return time;
    },
    killPages: async () => end(idsOf(await processes(), "renderer")),
  };
}

/** @param type null: all */
const idsOf = (all: readonly { readonly type: string; readonly id: number }[], type: string | null): number[] =>
  all.filter((one) => type === null || one.type === type).map(({ id }) => id);
