/** What a session has around it in a browser. */
import { pageStorage } from "../../store/backup";
import type { Library, StorageFailure } from "../../store/library";
import type { Surroundings } from "../../store/sessionParts";
import { pageChannel } from "../../store/tabs";
import { photographStore } from "../works/photographStore";
import type { Work } from "../../core/decisions/work";
import { PLAN_AHEAD } from "../works/planAheadPart";
import { COLLISIONS } from "../works/collisionsPart";
import { SALVAGE } from "../works/salvagePart";
import { offerFile } from "../works/offerFile";

export const pageSurroundings = (library: Library | StorageFailure): Surroundings => ({
  library,
  storage: pageStorage(),
  channel: pageChannel(),
  now: () => Date.now(),
  isHidden: () => document.visibilityState === "hidden",
  removed: (id, heirs) => void photographStore.removeWork(id, heirs),
  give: offerFile,
  prepare: planAhead,
  persist,
  collisionWords: async (collisions) => {
    await COLLISIONS.load();
    const words = COLLISIONS.get();
    return words.kind === "here" ? collisions.map(words.value) : [];
  },
  salvage: async (work, version) => {
    await SALVAGE.load();
    const salvageWork = SALVAGE.get();
    return salvageWork.kind === "here" ? salvageWork.value(work, version) : "notLoaded";
  },
});

/** Works out the plan of a work that is about to be shown, step by step, where what plans is here yet. */
async function planAhead(work: Work): Promise<void> {
  const steps = PLAN_AHEAD.get();
  if (steps.kind !== "here") return;
  for (const step of steps.value(work)) {
    try {
      step();
    } catch {
      // Where the work is shown the same fault is found again, and told.
      return;
    }
    await new Promise((resolve) => {
      setTimeout(resolve);
    });
  }
}

/** Over plain http browsers keep things, but promise nothing. */
async function persist(asks: boolean): Promise<boolean | null> {
  if (!("storage" in navigator) || !("persist" in navigator.storage)) return null;
  try {
    return await (asks ? navigator.storage.persist() : navigator.storage.persisted());
  } catch {
    return null;
  }
}
