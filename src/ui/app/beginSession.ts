/** The session that the page begins with. Whatever the browser's database does, the page does not wait for it for ever. */
import type { Work } from "../../core/decisions/work";
import type { Result } from "../../core/result";
import type { Library, StorageFailure } from "../../store/library";
import { createWorkSession, type WorkSession } from "../../store/workSession";
import { pageSurroundings } from "./pageSurroundings";
import { createWorkStore, type WorkStore } from "../../store/workStore";

/** ms. A database that has opened and then says nothing for so long is left alone. */
const PATIENCE = 8000;

export interface Begun {
  readonly store: WorkStore;
  readonly session: WorkSession;
}

/**
 * @param open  opens the library; it has its own patience
 * @param first the work a first visit opens
 */
export async function beginSession(
  open: () => Promise<Result<Library, StorageFailure>>,
  first: Work,
  patience: number = PATIENCE,
): Promise<Begun> {
  const library = await open();
  const begun = sessionOn(library.ok ? library.value : library.failure, first);
  if (await isInTime(begun.session.start(), patience)) return begun;
  // Nothing that the one left behind may still do is seen on the page: its store is another.
  const without = sessionOn({ code: "storage/unanswered" }, first);
  await without.session.start();
  return without;
}

function sessionOn(library: Library | StorageFailure, first: Work): Begun {
  const store = createWorkStore(first);
  return { store, session: createWorkSession(store, pageSurroundings(library), first) };
}

/** False where it is not done after so many ms; rejects as it does. */
async function isInTime(going: Promise<void>, patience: number): Promise<boolean> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<boolean>((resolve) => {
    timer = setTimeout(() => resolve(false), patience);
  });
  try {
    return await Promise.race([going.then(() => true), late]);
  } finally {
    clearTimeout(timer);
  }
}
