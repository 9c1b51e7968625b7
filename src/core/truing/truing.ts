/** One step of the last truing: gives the set back as it is where nothing is off, and notes what it changed. */
import type { TruingChange } from "./changes";
import type { PieceSet } from "../pattern/pieceSet";

export type Truing = (pieces: PieceSet, changes: TruingChange[]) => PieceSet;
