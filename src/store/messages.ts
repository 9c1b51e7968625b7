/** What the page says until it is dismissed, some of it with answers to press. */
import { freshId } from "./freshId";
import type { Message, MessageAction, SessionStore } from "./sessionState";

export interface Messages {
  /** Gives the id to dismiss it by. */
  readonly add: (text: string, ...actions: readonly MessageAction[]) => string;
  /** The same, which is dismissed once what it is about is settled otherwise. */
  readonly addAbout: (about: string, text: string, ...actions: readonly MessageAction[]) => string;
  /** What can as well be left for later, in place of what was offered about it before. */
  readonly offer: (about: string, text: string, ...actions: readonly MessageAction[]) => void;
  readonly dismissAbout: (about: string) => void;
  readonly dismiss: (id: string) => void;
}

export function createMessages(state: SessionStore): Messages {
  const about = new Map<string, string>();
  const dismiss = (id: string): void =>
    state.setState(({ messages }) => ({ messages: messages.filter((message) => message.id !== id) }));
  const isAboutOne = (id: string): boolean => [...about.values()].includes(id);
  const put = (message: Omit<Message, "id">): string => {
    const id = freshId();
    // The same is not said twice over; of two things of one name it is no repetition.
    state.setState(({ messages }) => ({
      messages: [...messages.filter((one) => one.text !== message.text || isAboutOne(one.id)), { id, ...message }],
    }));
    return id;
  };
  const add: Messages["add"] = (text, ...actions) => put({ text, actions });
  const dismissAbout = (what: string): void => {
    dismiss(about.get(what) ?? "");
    about.delete(what);
  };
  return {
    add,
    addAbout: (what, text, ...actions) => {
      dismissAbout(what);
      const id = add(text, ...actions);
      about.set(what, id);
      return id;
    },
    offer: (what, text, ...actions) => {
      dismissAbout(what);
      about.set(what, put({ text, actions, isOffer: true }));
    },
    dismissAbout,
    dismiss,
  };
}
