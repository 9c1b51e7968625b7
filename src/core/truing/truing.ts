/** One step of the last truing: gives the set back as it is where nothing is off, and notes what it changed. */
import type { PieceSet } from "../alterations/pieceSet";
import type { TruingChange } from "../plan/plan";

export type Truing = (pieces: PieceSet, changes: TruingChange[]) => PieceSet;
