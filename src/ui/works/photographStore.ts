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
    let lost = 0;
    for (const one of photographs) {
      const photograph = found?.outOfFile(one) ?? null;
      const done = photograph === null ? undefined : await kept?.add(null, photograph);
      if (done?.ok !== true) lost += 1;
    }
    kept?.close();
    return lost;
  },
  /** A work was deleted for good. */
  removeWork: async (id: string, heirs: ReadonlyMap<string, string>): Promise<void> => {
    const kept = (await store())?.openPhotographs();
    await kept?.removeWork(id, heirs);
    kept?.close();
  },
};
