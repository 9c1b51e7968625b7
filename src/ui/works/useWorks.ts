/** What the page can do with whole works: the ones kept in this browser, and files. */
import type { Pattern } from "../../core/decisions/pattern";
import { createContext, useContext } from "react";
import type { Work } from "../../core/decisions/work";
import { invariant } from "../../core/result";
import type { WorkEntry } from "../../store/library";
import type { Message, StorageState } from "../../store/sessionState";

export interface Works {
  readonly entries: readonly WorkEntry[];
  readonly openId: string;
  readonly storage: StorageState;
  /** A pattern with nothing on its envelope yet. */
  readonly blankPattern: Pattern;
  readonly open: (id: string) => void;
  readonly startBlank: () => void;
  readonly startDemo: (demo: Work) => void;
  readonly copy: (id: string) => void;
  readonly remove: (id: string) => void;
  readonly download: () => void;
  readonly openFile: (file: File) => Promise<void>;
  readonly messages: readonly Message[];
  readonly dismiss: (id: string) => void;
}

const WorksContext = createContext<Works | null>(null);
export const WorksProvider = WorksContext.Provider;

export function useWorks(): Works {
  return invariant(useContext(WorksContext), "WorksProvider above this component");
}
