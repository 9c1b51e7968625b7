/** A saved work that cannot be read: what of it can, and the record as it lies. */
import type { Work } from "../core/decisions/work";
import { DAMAGED_WORDS, salvagedName, salvagedSentence, storageFailureSentence } from "../words/storage";
import type { StorageFailure } from "./library";
import { fieldsOf } from "./readSavedWork";
import type { MessageAction } from "./sessionState";
import type { SessionParts } from "./sessionParts";

/** What can be done about it, where anything can. The record itself is never touched. */
export function damagedActions(
  parts: SessionParts,
  failure: StorageFailure,
  openNew: (work: Work) => Promise<void>,
): readonly MessageAction[] {
  if (failure.code !== "storage/damaged") return [];
  const { queue, give } = parts;
  const { id } = failure;
  const download = {
    label: DAMAGED_WORDS.download,
    run: () => void withRaw(parts, id, async (raw) => give({ name: `${id}.record.json`, text: textOf(raw) })),
  };
  if (failure.why.code === "file/newer") return [download];
  const open = {
    label: DAMAGED_WORDS.open,
    run: () => void queue(() => withRaw(parts, id, (raw) => openReadable(parts, raw, openNew))),
  };
  return [open, download];
}

async function withRaw(
  { library, messages }: SessionParts,
  id: string,
  action: (raw: unknown) => Promise<void>,
): Promise<void> {
  const raw = await library.raw(id);
  if (raw.ok) return action(raw.value);
  messages.add(storageFailureSentence(raw.failure));
}

async function openReadable(
  { messages, salvage }: SessionParts,
  raw: unknown,
  openNew: (work: Work) => Promise<void>,
): Promise<void> {
  const { work, version } = fieldsOf(raw);
  const salvaged = typeof version === "number" ? await salvage(work, version) : null;
  if (salvaged === "notLoaded") return void messages.add(DAMAGED_WORDS.notLoaded);
  if (salvaged === null) return void messages.add(DAMAGED_WORDS.nothing);
  await openNew({ ...salvaged.work, name: salvagedName(salvaged.work.name) });
  messages.add(salvagedSentence(salvaged.lost));
}

/** What no text can hold is left out: whoever looks at it wants the rest. */
function textOf(raw: unknown): string {
  const above: unknown[] = [];
  return (
    JSON.stringify(
      raw,
      function leaveOut(this: unknown, _key, value: unknown) {
        while (above.length > 0 && above.at(-1) !== this) above.pop();
        if (typeof value === "bigint") return String(value);
        if (typeof value !== "object" || value === null) return value;
        if (above.includes(value)) return null;
        above.push(value);
        return value;
      },
      2,
    ) ?? ""
  );
}
