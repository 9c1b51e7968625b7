/** What the page says until it is dismissed, some of it with an answer to press. */
import { freshId } from "./freshId";
import type { Message, SessionStore } from "./sessionState";

export interface Messages {
  /** Gives the id to dismiss it by. */
  readonly add: (text: string, action?: Message["action"]) => string;
  readonly has: (id: string) => boolean;
  readonly dismiss: (id: string) => void;
}

export function createMessages(state: SessionStore): Messages {
  return {
    add: (text, action) => {
      const message = { id: freshId(), text, ...(action === undefined ? {} : { action }) };
      state.setState(({ messages }) => ({ messages: [...messages, message] }));
      return message.id;
    },
    has: (id) => state.getState().messages.some((message) => message.id === id),
    dismiss: (id) => state.setState(({ messages }) => ({ messages: messages.filter((message) => message.id !== id) })),
  };
}
