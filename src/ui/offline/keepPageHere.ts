import type { WorkSession } from "../../store/workSession";
import type { WorkStore } from "../../store/workStore";
import { keepHere } from "./keepHere";

/** ms for which it stands in the header that all of the page has come. */
const SAID_FOR = 20_000;

/** The page in a browser; over plain http there is nothing to keep it by. */
export async function keepPageHere(store: WorkStore, session: WorkSession): Promise<void> {
  if (!("serviceWorker" in navigator)) return;
  await keepHere(navigator.serviceWorker, {
    store,
    session,
    reload: () => window.location.reload(),
    rest: () =>
      new Promise((resolve) => {
        window.setTimeout(resolve, SAID_FOR);
      }),
  });
}
