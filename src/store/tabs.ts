/** What the pages of one browser tell each other: every save at once, and who is there. */
import { fieldsOf } from "./readSavedWork";

export type News =
  | { readonly kind: "saved"; readonly id: string; readonly stamp: string }
  | { readonly kind: "binned"; readonly id: string }
  /** Anything else about the list of works. */
  | { readonly kind: "list" };

type Letter =
  | { readonly kind: "news"; readonly from: string; readonly news: News }
  | { readonly kind: "who" }
  | { readonly kind: "here"; readonly from: string };

/** Null where it is none of ours: a page of another version may have other news. */
function readLetter(data: unknown): Letter | null {
  const { kind, from, news } = fieldsOf(data);
  if (kind === "who") return { kind };
  if (typeof from !== "string") return null;
  if (kind === "here") return { kind, from };
  const read = kind === "news" ? readNews(news) : null;
  return read === null ? null : { kind: "news", from, news: read };
}

function readNews(data: unknown): News | null {
  const { kind, id, stamp } = fieldsOf(data);
  if (kind === "list") return { kind };
  if (typeof id !== "string") return null;
  if (kind === "binned") return { kind, id };
  return kind === "saved" && typeof stamp === "string" ? { kind, id, stamp } : null;
}

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
  const send = (what: Letter): void => {
    try {
      // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a channel reaches its own origin alone
      channel?.postMessage(what);
    } catch {
      // The page is closing.
    }
  };
  channel?.addEventListener("message", ({ data }) => {
    const what = readLetter(data);
    if (what === null) return;
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
