/** A database for tests where there is none: empty, and gone with `vi.unstubAllGlobals`. */
import * as fakeDatabase from "fake-indexeddb";
import { vi } from "vitest";

export function stubDatabase(): void {
  for (const [name, part] of Object.entries(fakeDatabase)) if (name.startsWith("IDB")) vi.stubGlobal(name, part);
  vi.stubGlobal("indexedDB", new fakeDatabase.IDBFactory());
}
