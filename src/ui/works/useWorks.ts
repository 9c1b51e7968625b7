/** What the page can do with whole works: the ones kept in this browser, and files. */
import { createContext, useContext } from "react";
import type { Pattern, Work } from "../../core/plan/work";
import { must } from "../../core/result";

export interface WorkEntry {
  readonly id: string;
  readonly name: string;
}

export interface PageMessage {
  readonly id: string;
  readonly text: string;
  readonly action?: { readonly label: string; readonly run: () => void };
}

export interface StorageWords {
  readonly state: "saved" | "saving" | "failed";
  readonly words: string;
}

export interface Works {
  readonly entries: readonly WorkEntry[];
  readonly openId: string;
  readonly storage: StorageWords;
  /** A pattern with nothing on its envelope yet. */
  readonly blankPattern: Pattern;
  readonly open: (id: string) => void;
  readonly startBlank: () => void;
  readonly startDemo: (demo: Work) => void;
  readonly copy: (id: string) => void;
  readonly remove: (id: string) => void;
  readonly download: () => void;
  readonly openFile: (file: File) => Promise<void>;
  readonly messages: readonly PageMessage[];
  readonly dismiss: (id: string) => void;
}

const WorksContext = createContext<Works | null>(null);
export const WorksProvider = WorksContext.Provider;

export function useWorks(): Works {
  return must(useContext(WorksContext), "WorksProvider above this component");
}
