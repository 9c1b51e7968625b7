/** What the page can do with whole works: the ones kept in this browser, and files. */
import { createContext, useContext } from "react";
import type { Work } from "../../core/decisions/work";
import { invariant } from "../../core/result";
import type { PhotographInFile } from "../../document/photographsFile";
import type { WorkEntry } from "../../store/library";
import type { Message, StorageState } from "../../store/sessionState";

export interface Works {
  readonly entries: readonly WorkEntry[];
  /** What lies in the bin. */
  readonly binned: readonly WorkEntry[];
  /** Whether the browser has promised to keep them; null where it was not asked or does not say. */
  readonly isLasting: boolean | null;
  readonly openId: string;
  readonly storage: StorageState;
  readonly open: (id: string) => void;
  readonly startBlank: () => void;
  readonly startDemo: (demo: Work) => void;
  /** Keeps a work that was made of another, and opens it. */
  readonly begin: (work: Work) => void;
  readonly copy: (id: string) => void;
  /** Puts a work in the bin. */
  readonly bin: (id: string) => void;
  readonly bringBack: (id: string) => void;
  readonly removeForGood: (id: string) => void;
  /** A kept work as it is now, to look at; null where it cannot be read. */
  readonly peek: (id: string) => Promise<Work | null>;
  /** What is not to be learnt from, by its keys. */
  readonly forgotten: () => Promise<readonly string[]>;
  /** @returns whether it could be kept */
  readonly forget: (keys: readonly string[]) => Promise<boolean>;
  readonly download: () => void;
  readonly downloadWith: (photographs: readonly PhotographInFile[]) => void;
  readonly downloadAll: () => void;
  readonly openFile: (file: File) => Promise<void>;
  readonly messages: readonly Message[];
  /** Says something until it is dismissed. */
  readonly tell: (text: string) => void;
  readonly dismiss: (id: string) => void;
}

const WorksContext = createContext<Works | null>(null);
export const WorksProvider = WorksContext.Provider;

export function useWorks(): Works {
  return invariant(useContext(WorksContext), "WorksProvider above this component");
}
