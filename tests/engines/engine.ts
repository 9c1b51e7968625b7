/** What the whole job asks of a browser: the little that every engine can do, so that it is written once. */

export interface Place {
  readonly x: number;
  readonly y: number;
}

/** What is looked for on the page. */
export interface Sought {
  /** Inside which other one; of several, the first that is seen. */
  readonly within?: Sought;
  readonly role?: string;
  readonly label?: string | RegExp;
  readonly text?: string | RegExp;
  readonly css?: string;
  /** The accessible name, with a role. */
  readonly name?: string | RegExp;
  /** Which of several, from 0. */
  readonly at?: number;
}

/** What stands on the page where it was looked. */
export interface Seen {
  readonly text: string;
  readonly label: string;
  /** What stands in a field, or what is said of a slider. */
  readonly value: string;
  readonly isChecked: boolean;
  readonly isDisabled: boolean;
  /** Its middle, in the window. */
  readonly place: Place;
}

export type Finger = "mouse" | "touch";

/** A downloaded file, by the name that it was given. */
export interface Downloaded {
  readonly name: string;
  readonly file: string;
}

export interface Engine {
  readonly name: "chromium" | "firefox" | "webkit";
  readonly goTo: (address: string) => Promise<void>;
  readonly resize: (width: number, height: number) => Promise<void>;
  /** Calls a function of `inPage.ts` in the page. */
  readonly ask: (name: string, ...given: readonly unknown[]) => Promise<unknown>;
  /** Whether it can be touched. */
  readonly hasFinger: boolean;
  /** Down at the first place, through all others, up at the last. */
  readonly draw: (places: readonly Place[], finger: Finger) => Promise<void>;
  readonly type: (text: string) => Promise<void>;
  /** One key, with those held before it: "Control+Shift+z". */
  readonly press: (keys: string) => Promise<void>;
  /** Puts a file into a field, found by its selector. */
  readonly upload: (selector: string, file: string) => Promise<void>;
  readonly screenshot: () => Promise<Buffer>;
  /** The page as its printer gets it, where the engine can be asked for it. */
  readonly print: (() => Promise<Buffer>) | null;
  /** Where downloads come to lie. */
  readonly downloads: string;
  /** What the engine itself told of as an error. */
  readonly faults: () => readonly string[];
  readonly forgive: () => void;
  readonly close: () => Promise<void>;
}
