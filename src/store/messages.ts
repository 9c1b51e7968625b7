/** What the page says until it is dismissed, some of it with answers to press. */
import { freshId } from "./freshId";
import type { MessageAction, SessionStore } from "./sessionState";

export interface Messages {
  /** Gives the id to dismiss it by. */
  readonly add: (text: string, ...actions: readonly MessageAction[]) => string;
  /** The same, which is dismissed once what it is about is settled otherwise. */
  readonly addAbout: (about: string, text: string, ...actions: readonly MessageAction[]) => string;
  readonly dismissAbout: (about: string) => void;
  readonly dismiss: (id: string) => void;
}

export function createMessages(state: SessionStore): Messages {
  const about = new Map<string, string>();
  const dismiss = (id: string): void =>
    state.setState(({ messages }) => ({ messages: messages.filter((message) => message.id !== id) }));
  const add: Messages["add"] = (text, ...actions) => {
    const id = freshId();
    // The same is not said twice over.
    state.setState(({ messages }) => ({
      messages: [...messages.filter((message) => message.text !== text), { id, text, actions }],
    }));
    return id;
  };
  return {
    add,
    addAbout: (what, text, ...actions) => {
      const id = add(text, ...actions);
      about.set(what, id);
      return id;
    },
    dismissAbout: (what) => {
      dismiss(about.get(what) ?? "");
      about.delete(what);
    },
    dismiss,
  };
}
