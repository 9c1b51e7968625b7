/** What the page says until it is dismissed, some of it with answers to press. */
import { freshId } from "./freshId";
import type { MessageAction, SessionStore } from "./sessionState";

export interface Messages {
  /** Gives the id to dismiss it by. */
  readonly add: (text: string, ...actions: readonly MessageAction[]) => string;
  readonly dismiss: (id: string) => void;
}

export function createMessages(state: SessionStore): Messages {
  return {
    add: (text, ...actions) => {
      const id = freshId();
      state.setState(({ messages }) => ({ messages: [...messages, { id, text, actions }] }));
      return id;
    },
    dismiss: (id) => state.setState(({ messages }) => ({ messages: messages.filter((message) => message.id !== id) })),
  };
}
