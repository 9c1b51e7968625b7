/**
 * Has all of the page kept on the device, so that it works without a network, and offers its newer versions. None is ever forced on
 * her: it waits until she takes it here, or until no tab is open any more.
 */
import { VERSION_WORDS } from "../../words/offline";
import type { WorkSession } from "../../store/workSession";
import { endGesture, type WorkStore } from "../../store/workStore";
import { usePageState } from "../session/pageState";
import { TAKE } from "./take";

/** What of the browser's service workers is used: a version that comes in, what is known of all, and who keeps them. */
export interface Version {
  readonly state: string;
  postMessage(message: unknown, transfer: Transferable[]): void;
  addEventListener(kind: "statechange", heard: () => void): void;
}

interface Versions {
  readonly active: unknown;
  readonly waiting: Version | null;
  readonly installing: Version | null;
  update(): Promise<unknown>;
  addEventListener(kind: "updatefound", heard: () => void): void;
}

export interface Workers {
  readonly controller: unknown;
  readonly ready: Promise<unknown>;
  register(file: string, options: { readonly scope: string }): Promise<Versions>;
  addEventListener(kind: "controllerchange", heard: () => void): void;
}

export interface KeptPage {
  readonly store: WorkStore;
  readonly session: Pick<WorkSession, "state" | "flush" | "download" | "offer">;
  /** Loads the page again. */
  readonly reload: () => void;
  /** Resolves when what was said has stood there long enough. */
  readonly rest: () => Promise<void>;
}

/** What messages of versions are about: a newer one takes the place of what was said before. */
const VERSION = "version";

export async function keepHere(workers: Workers, page: KeptPage): Promise<void> {
  try {
    await keep(workers, page);
  } catch {
    // The browser lets nothing be kept, as in some private windows: the page is as good with a network.
  }
}

async function keep(workers: Workers, page: KeptPage): Promise<void> {
  const { session, reload } = page;
  /** Whether files kept on the device are at work on this page. */
  let isKept = workers.controller !== null;
  let isTaking = false;

  /** Goes on once all is saved, or where she says so all the same. */
  const onceSaved = (go: () => void) => (): void => {
    void saved(page).then((isSaved) => {
      if (isSaved) return go();
      session.offer(
        VERSION,
        VERSION_WORDS.unsaved,
        { label: VERSION_WORDS.download, run: () => void session.download() },
        { label: VERSION_WORDS.allTheSame, run: go },
      );
    });
  };

  const offer = (waiting: Version): void => {
    const take = onceSaved(() => {
      isTaking = true;
      waiting.postMessage(TAKE, []);
    });
    usePageState.setState({ takeNewVersion: take });
    session.offer(VERSION, VERSION_WORDS.ready, { label: VERSION_WORDS.take, run: take });
  };

  workers.addEventListener("controllerchange", () => {
    if (isTaking) return reload();
    if (!isKept) {
      isKept = true;
      return;
    }
    const load = onceSaved(reload);
    usePageState.setState({ takeNewVersion: load });
    session.offer(VERSION, VERSION_WORDS.elsewhere, { label: VERSION_WORDS.load, run: load });
  });

  const registration = await workers.register("./offlineWorker.js", { scope: "./" });
  const isFirst = registration.active === null;
  const watch = (coming: Version | null): void => {
    const look = (): void => {
      if (coming?.state === "installed" && registration.active !== null) offer(coming);
    };
    coming?.addEventListener("statechange", look);
    look();
  };
  watch(registration.waiting);
  watch(registration.installing);
  registration.addEventListener("updatefound", () => watch(registration.installing));
  lookForVersions(registration);

  await workers.ready;
  if (isFirst) {
    usePageState.setState({ offline: "new" });
    await page.rest();
  }
  usePageState.setState({ offline: "yes" });
}

/** What is typed is made a step and saved. Says whether it is safe. */
async function saved({ store, session }: KeptPage): Promise<boolean> {
  endGesture(store);
  await session.flush();
  return session.state.getState().storage.state === "saved";
}

/** ms. A page that is open for days asks now and then whether there is a newer one. */
const NOW_AND_THEN = 60 * 60 * 1000;

function lookForVersions(registration: Versions): void {
  let last = Date.now();
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden" || Date.now() - last < NOW_AND_THEN) return;
    last = Date.now();
    // Without a network there is none to be had.
    registration.update().catch(() => {});
  });
}
