/** What the gallery shows and the kept outlines hold: one garment or one change of it, by a name that does not change. */
import type { SurgeryTrace } from "../../../src/core/surgery/cutAndMove";
import type { Part } from "../../../src/core/parts/part";
import type { PieceSet } from "../../../src/core/pattern/pieceSet";
import type { Result } from "../../../src/core/result";

export interface Shown {
  /** As they were; empty where nothing is compared. */
  readonly before: PieceSet;
  /** As they are: of a change, what it changed alone. */
  readonly pieces: PieceSet;
  /** Cuts and hinges of what was done. */
  readonly surgery: readonly SurgeryTrace[];
  /** Of a dress: what is cut beside the pieces of the bodice. */
  readonly parts: readonly Part[];
  /** Said beside the title. */
  readonly notes: readonly string[];
}

export interface Scene {
  /** Path-like: letters, digits, blanks and hyphens, the group first. */
  readonly key: string;
  /** For people. */
  readonly title: string;
  /** Whether its outline is kept as numbers: of what differs in amount alone, one is enough. */
  readonly isKept: boolean;
  /** Whether it shows more than the scene before it, which has less of the same. Absent: it does. */
  readonly isMore?: () => boolean;
  /** What is to be seen, or in words why there is nothing. */
  readonly make: () => Result<Shown, string>;
}

export const groupOfScene = ({ key }: Pick<Scene, "key">): string => key.slice(0, key.indexOf("/"));

export const SHOWN: Shown = { before: {}, pieces: {}, surgery: [], parts: [], notes: [] };
