import type { DartName, DartRef, PieceName } from "../../src/core/pattern/piece";

/** A dart by its piece and its name. */
export const ref = (piece: PieceName, dart: DartName): DartRef => ({ piece, dart });
