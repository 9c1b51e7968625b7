/** Saving what an earlier page could not save before it closed. */
import { writeWorkFile } from "../document/workFile";
import { nameConflictCopy } from "./conflictCopy";
import type { SessionParts } from "./sessionParts";

export async function restoreBackups(parts: SessionParts): Promise<void> {
  const { library, backup, status } = parts;
  for (const left of backup.takeAll()) {
    const saved = await library.load(left.id);
    // It may have been saved after all.
    if (saved.ok && writeWorkFile(saved.value.work) === writeWorkFile(left.work)) continue;
    const done = await library.save(left);
    if (!done.ok) {
      status.failed(done.failure);
      backup.write(left);
    } else if (done.value.id !== left.id) await nameConflictCopy(parts, { ...left, ...done.value });
  }
}
