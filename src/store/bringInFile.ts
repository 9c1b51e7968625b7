/** Works out of a file: opened, or kept beside the others; what is here already, the very same, is not kept twice. */
import type { Work } from "../core/decisions/work";
import { writeWorkFile } from "../document/workFile";
import type { WorksRead } from "../document/worksFile";
import { broughtInSentence, entryName, sameWorkSentence, storageFailureSentence } from "../words/storage";
import { freshId } from "./freshId";
import { latestWork } from "./latestWork";
import { NEW_STAMP } from "./library";
import type { SessionParts } from "./sessionParts";
import type { WorkSwitch } from "./switchWork";

export async function bringInFile(
  parts: SessionParts,
  { afterSaving, openNew, openSaved }: WorkSwitch,
  file: WorksRead,
  fileName: string,
): Promise<void> {
  const { library, openWork, list, messages, now } = parts;
  await list.refresh();
  const [one, ...others] = file.works;
  if (one !== undefined && others.length === 0 && file.unreadable.length === 0) {
    const same = await keptAlike(parts, one.work);
    if (same === null) return afterSaving(() => openNew(one.work));
    messages.add(sameWorkSentence(one.work.name));
    if (same === openWork.id()) return;
    return afterSaving(async () => void (await openSaved(same)));
  }
  const unreadable = file.unreadable.length;
  let [added, same] = [0, 0];
  for (const { work, saved } of file.works) {
    if ((await keptAlike(parts, work)) !== null) {
      same += 1;
      continue;
    }
    const version = { id: freshId(), work, past: [], future: [], stamp: NEW_STAMP };
    const time = saved === undefined ? now() : Date.parse(saved);
    const done = await library.save({ saved: version, stamp: freshId(), time, isHistorySaved: false });
    if (!done.ok) {
      messages.add(storageFailureSentence(done.failure));
      break;
    }
    added += 1;
    await list.refresh();
  }
  messages.add(broughtInSentence(fileName, { added, same, unreadable, notKept: file.works.length - added - same }));
  await list.changed();
}

/** The id of a kept work that says the same in every part. */
async function keptAlike(parts: SessionParts, work: Work): Promise<string | null> {
  const text = writeWorkFile(work);
  for (const { id, name } of parts.state.getState().entries) {
    // The list has the open work by the name it was saved under.
    if (name !== entryName(work.name) && id !== parts.openWork.id()) continue;
    const kept = await latestWork(parts, id);
    if (kept.ok && writeWorkFile(kept.value) === text) return id;
  }
  return null;
}
