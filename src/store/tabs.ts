/** What the pages of one browser tell each other: every save at once, and who is there. */
import * as z from "zod/mini";

const news = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("saved"), id: z.string(), stamp: z.string() }),
  z.object({ kind: z.literal("binned"), id: z.string() }),
  /** Anything else about the list of works. */
  z.object({ kind: z.literal("list") }),
]);
export type News = z.infer<typeof news>;

const letter = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("news"), from: z.string(), news }),
  z.object({ kind: z.literal("who") }),
  z.object({ kind: z.literal("here"), from: z.string() }),
]);

/** What letters go through; the browser's own `BroadcastChannel` is one. */
export interface Channel {
  postMessage(letter: unknown): void;
  addEventListener(kind: "message", heard: (event: { readonly data: unknown }) => void): void;
  close(): void;
}

export interface Tabs {
  /** The name of this page, which no other has. */
  readonly own: string;
  readonly tell: (what: News) => void;
  /** The other pages that answer. */
  readonly others: () => Promise<ReadonlySet<string>>;
}

/** ms in which a page that is there answers. */
const ANSWER = 120;

/** @param channel null where the browser has none: pages then notice each other's saves only when they save or come to the fore */
export function createTabs(own: string, channel: Channel | null, heard: (what: News) => void): Tabs {
  const asking = new Set<Set<string>>();
  const send = (what: z.infer<typeof letter>): void => {
    try {
      channel?.postMessage(what);
    } catch {
      // The page is closing.
    }
  };
  channel?.addEventListener("message", ({ data }) => {
    const read = letter.safeParse(data);
    // A page of another version may have other news.
    if (!read.success) return;
    const { data: what } = read;
    if (what.kind === "who") send({ kind: "here", from: own });
    else if (what.kind === "here") for (const answers of asking) answers.add(what.from);
    else if (what.from !== own) heard(what.news);
  });
  return {
    own,
    tell: (what) => send({ kind: "news", from: own, news: what }),
    others: async () => {
      const answers = new Set<string>();
      if (channel === null) return answers;
      asking.add(answers);
      send({ kind: "who" });
      await new Promise((resolve) => {
        setTimeout(resolve, ANSWER);
      });
      asking.delete(answers);
      return answers;
    },
  };
}

/** The browser's own channel, where it has one. */
export function pageChannel(): Channel | null {
  try {
    return new BroadcastChannel("bodicewright");
  } catch {
    return null;
  }
}
