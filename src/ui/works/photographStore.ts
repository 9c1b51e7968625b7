/** What the page does with photographs before anybody looks at them; where their store cannot be had, nothing else is harmed. */
import type { PhotographInFile } from "../../document/photographsFile";
import { PHOTOGRAPHS } from "./photographsPart";

async function store() {
  await PHOTOGRAPHS.load();
  const part = PHOTOGRAPHS.get();
  return part.kind === "here" ? part.value : null;
}

export const photographStore = {
  /**
   * Keeps what came with a file; those that are here already are kept once.
   *
   * @returns how many could not be kept
   */
  keep: async (photographs: readonly PhotographInFile[]): Promise<number> => {
    const found = await store();
    const kept = found?.openPhotographs();
    let [saved, isOver] = [0, false];
    for (const one of photographs) {
      const photograph = isOver ? null : (found?.outOfFile(one) ?? null);
      if (photograph === null) continue;
      const done = await kept?.add(null, photograph);
      if (done?.ok === true) saved += 1;
      // A store that is full or keeps silent is not asked for each of them.
      else isOver = true;
    }
    kept?.close();
    return photographs.length - saved;
  },
  /** A work was deleted for good. */
  removeWork: async (id: string, heirs: ReadonlyMap<string, string>): Promise<void> => {
    const kept = (await store())?.openPhotographs();
    await kept?.removeWork(id, heirs);
    kept?.close();
  },
};
