/** A page by itself: nobody else is there, nothing is left over, and what is handed out is only counted. */
import { salvageWork } from "../../src/document/salvageWork";
import type { Library } from "../../src/store/library";
import type { Download } from "../../src/store/download";
import type { Surroundings } from "../../src/store/sessionParts";

export interface AloneOptions {
  readonly library?: Library | null;
  readonly given?: Download[];
  /** What the browser answers when it is asked not to clear what is kept. */
  readonly promise?: boolean | null;
}

/** Without a library nothing is kept. */
export const alone = ({ library = null, given = [], promise = null }: AloneOptions = {}): Surroundings => ({
  library: library ?? { code: "storage/unavailable", detail: "a test without" },
  storage: null,
  channel: null,
  now: () => Date.now(),
  isHidden: () => false,
  give: (file) => void given.push(file),
  persist: async () => promise,
  salvage: async (work, version) => salvageWork(work, version),
  collisionWords: async () => [],
});
