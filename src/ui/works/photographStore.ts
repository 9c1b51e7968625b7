/** What the page does with photographs before anybody looks at them; where their store cannot be had, nothing else is harmed. */
import type { PhotographInFile } from "../../document/photographsFile";
import { PHOTOGRAPHS } from "./photographsPart";

async function store() {
  await PHOTOGRAPHS.load();
  const part = PHOTOGRAPHS.get();
  return part.kind === "here" ? part.value : null;
}

export const photographStore = {
  /** Keeps what came with a file; those that are here already are kept once. */
  keep: async (photographs: readonly PhotographInFile[]): Promise<void> => {
    const found = await store();
    const kept = found?.openPhotographs();
    for (const one of photographs) {
      const photograph = found?.outOfFile(one) ?? null;
      if (photograph !== null) await kept?.add(null, photograph);
    }
    kept?.close();
  },
  /** A work was deleted for good. */
  removeWork: async (id: string): Promise<void> => {
    const kept = (await store())?.openPhotographs();
    await kept?.removeWork(id);
    kept?.close();
  },
};
