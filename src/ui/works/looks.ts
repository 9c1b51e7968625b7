/** What is found by looking into kept works: their fronts in small, and whether two are the very same. One at a time, when idle. */
import type { Work } from "../../core/decisions/work";
import { writeWorkFile } from "../../document/workFile";
import type { FrontDrawing } from "../../drawing/frontDrawing";
import type { WorkEntry } from "../../store/library";

export interface Look {
  /** All that the work says. */
  readonly text?: string;
  readonly front?: FrontDrawing | "noPieces" | "unreadable";
}

type Wanted = keyof Look;
type Kept = Pick<WorkEntry, "id" | "stamp">;

export interface Looks {
  readonly of: (kept: Kept) => Look | undefined;
  /** Puts it in the queue; gives what takes it out again, where nobody looks at it any more. */
  readonly want: (kept: Kept, what: Wanted) => () => void;
  readonly subscribe: (heard: () => void) => () => void;
  /** Counts what was found. */
  readonly found: () => number;
}

export interface LooksInto {
  readonly peek: (id: string) => Promise<Work | null>;
  /** What draws a front, which may have to be loaded first; null where it cannot be. */
  readonly drawer: () => Promise<((work: Work) => FrontDrawing | null) | null>;
  /** Resolves when nothing else is to be done. */
  readonly idle: () => Promise<void>;
}

export function createLooks({ peek, drawer, idle }: LooksInto): Looks {
  const known = new Map<string, Look>();
  const waiting = new Map<string, { readonly kept: Kept; readonly what: Wanted }>();
  const listeners = new Set<() => void>();
  let found = 0;
  let isLooking = false;

  const look = async (id: string, what: Wanted): Promise<Look> => {
    const draw = what === "front" ? await drawer() : null;
    if (what === "front" && draw === null) return {};
    const work = await peek(id);
    if (work === null) return { front: "unreadable" };
    if (draw === null) return { text: writeWorkFile(work) };
    return { front: draw(work) ?? "noPieces" };
  };
  const lookIntoAll = async (): Promise<void> => {
    isLooking = true;
    for (;;) {
      await idle();
      const next = waiting.entries().next();
      if (next.done === true) break;
      const [job, { kept, what }] = next.value;
      waiting.delete(job);
      // A work that cannot be looked into is like one that nobody has looked into.
      const seen = await look(kept.id, what).catch((): Look => ({}));
      known.set(keyOf(kept), { ...known.get(keyOf(kept)), ...seen });
      found += 1;
      for (const heard of listeners) heard();
    }
    isLooking = false;
  };
  return {
    of: (kept) => known.get(keyOf(kept)),
    want: (kept, what) => {
      const job = `${keyOf(kept)} ${what}`;
      const seen = known.get(keyOf(kept));
      if (seen?.[what] === undefined && seen?.front !== "unreadable") {
        waiting.set(job, { kept, what });
        if (!isLooking) void lookIntoAll();
      }
      return () => void waiting.delete(job);
    },
    subscribe: (heard) => {
      listeners.add(heard);
      return () => void listeners.delete(heard);
    },
    found: () => found,
  };
}

const keyOf = ({ id, stamp }: Kept): string => `${id} ${stamp}`;
