/** What is to be printed of true-scale paper. It belongs to the work that is open, but nothing of it is saved. */
import type { PieceName } from "../../core/pattern/piece";
import { storeOfWork } from "../session/ofWork";

export interface Chosen {
  /** The wearer's own line (null), or a printed size by its label. */
  readonly size: string | null;
  /** All printed sizes, one in another, in place of a line. */
  readonly nested: boolean;
  /** Pieces that are not wanted: one that an alteration brings is wanted without being asked for. */
  readonly leftOut: readonly PieceName[];
  /** Pieces that the dress is cut without, and that are wanted all the same. */
  readonly replacedToo: readonly PieceName[];
  /** Parts of the dress that are not wanted, by their ids. */
  readonly partsLeftOut: readonly string[];
  /** Labels of printed sizes drawn in grey. */
  readonly under: readonly string[];
  readonly before: boolean;
  readonly allowances: boolean;
  /** For a toile: wide allowances where it may have to be let out. */
  readonly toile: boolean;
}

interface ChosenOfSheets extends Chosen {
  /** Whether the measure sheet tells what was measured before. */
  readonly lastTime: boolean;
}

export interface ChoicesState extends ChosenOfSheets {
  readonly choose: (chosen: Partial<ChosenOfSheets>) => void;
}

const FIRST: ChosenOfSheets = {
  size: null,
  nested: false,
  leftOut: [],
  replacedToo: [],
  partsLeftOut: [],
  under: [],
  before: false,
  allowances: true,
  toile: false,
  lastTime: true,
};

export const useChoices = storeOfWork<ChoicesState>((set) => ({
  ...FIRST,
  choose: (chosen) => set(chosen),
}));
