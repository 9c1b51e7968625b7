/** A file of all works together, and whatever of ours is opened: one work or many. */
import * as z from "zod/mini";
import type { Work } from "../core/decisions/work";
import { fail, ok, type Result } from "../core/result";
import { drawingsOnce } from "./drawingsOnce";
import { isWithPhotographs, photographsIn, type PhotographInFile } from "./photographsFile";
import { checkText, LARGEST_WORKS } from "./readLimits";
import { CURRENT_VERSION } from "./upgrades";
import { parseFile, readWorkData, workInOrder, type WorkFileFailure } from "./workFile";

export interface WorkInFile {
  readonly work: Work;
  /** When it was last saved, as an instant of ISO 8601 in universal time. */
  readonly saved?: string;
  /** Of its trials, where they were saved with it. */
  readonly photographs?: readonly PhotographInFile[];
}

interface UnreadableWork {
  /** Which of the file, counted from 0. */
  readonly at: number;
  /** Its name, where that much can be read. */
  readonly name: string | null;
  readonly failure: WorkFileFailure;
}

export interface WorksRead {
  readonly works: readonly WorkInFile[];
  /** Those that cannot be read bar none of the others. */
  readonly unreadable: readonly UnreadableWork[];
}

/** More works than a file within its size can hold whole. */
const MOST_WORKS = 20_000;

const instant = z.iso.datetime();
const envelope = z.object({
  bodicewright: z.literal("works"),
  version: z.int().check(z.gte(1)),
  works: z.array(z.unknown()).check(z.maxLength(MOST_WORKS)),
});
const entry = z.object({ saved: z.optional(z.unknown()), work: z.optional(z.unknown()) });
const named = z.object({ name: z.string() });
const kind = z.object({ bodicewright: z.string() });

/** The text of a file of works. The same works in the same order give the same text. */
export function writeWorksFile(works: readonly WorkInFile[]): string {
  const entries = works.map(({ work, saved }) => ({
    ...(saved === undefined ? {} : { saved }),
    work: drawingsOnce(workInOrder(work)),
  }));
  return `${JSON.stringify({ bodicewright: "works", version: CURRENT_VERSION, works: entries }, null, 2)}\n`;
}

/** Reads a file of works, whatever it is. */
export function readWorksFile(text: string): Result<WorksRead, WorkFileFailure> {
  const json = parseFile(text, LARGEST_WORKS);
  return json.ok ? readWorksData(json.value) : json;
}

/** Reads a file of one work or of many: one that holds a single work which cannot be read is refused as that work is. */
export function readAnyFile(text: string): Result<WorksRead, WorkFileFailure> {
  const json = parseFile(text, LARGEST_WORKS);
  if (!json.ok) return json;
  const found = kind.safeParse(json.value);
  if (found.success && found.data.bodicewright === "works") return readWorksData(json.value);
  const photographs = photographsIn(json.value);
  // What is no file of many works is held to the size of one, unless photographs are what makes it large.
  const checked = isWithPhotographs(json.value) ? ok(null) : checkText(text);
  if (!checked.ok) return checked;
  const work = readWorkData(json.value);
  if (!work.ok) return work;
  const one = photographs.length === 0 ? { work: work.value } : { work: work.value, photographs };
  return ok({ works: [one], unreadable: [] });
}

function readWorksData(data: unknown): Result<WorksRead, WorkFileFailure> {
  const found = envelope.safeParse(data);
  if (!found.success) return fail({ code: "file/foreign" });
  const { version, works } = found.data;
  if (version > CURRENT_VERSION) return fail({ code: "file/newer", version, known: CURRENT_VERSION });
  const read: WorkInFile[] = [];
  const unreadable: UnreadableWork[] = [];
  for (const [at, one] of works.entries()) {
    const { saved, work } = entry.safeParse(one).data ?? {};
    const result = readWorkData({ bodicewright: "work", version, work });
    if (!result.ok) {
      unreadable.push({ at, name: named.safeParse(work).data?.name ?? null, failure: result.failure });
      continue;
    }
    // When it was saved is told where it can be, and no work is lost for it.
    const when = instant.safeParse(saved);
    read.push(when.success ? { work: result.value, saved: when.data } : { work: result.value });
  }
  return ok({ works: read, unreadable });
}
