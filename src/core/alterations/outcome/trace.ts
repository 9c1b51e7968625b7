/** What an alteration leaves behind of itself, for the ledger, the table and the printed steps. */
import type { GiveBackPlace } from "../../decisions/alteration";
import type { PiecePoint } from "../../geometry/point";
import type { PieceName, SeamName } from "../../pattern/piece";
import type { PieceSet } from "../../pattern/pieceSet";
import type { SurgeryTrace } from "../../surgery/cutAndMove";
import type { Mm, Radians } from "../../units";

/** What one alteration did, for the ledger and for the table. */
export interface AlterationTrace {
  readonly piece: PieceName;
  /** The cuts and moves it is made of, in order; none where a line was only redrawn. */
  readonly surgery: readonly SurgeryTrace[];
  /** Lengths that its words name, by the name they carry there. */
  readonly values: Readonly<Record<string, Mm>>;
  /** The pieces it changed, just before and just after. */
  readonly before: PieceSet;
  readonly after: PieceSet;
  readonly moved: readonly { readonly piece: PieceName; readonly from: PiecePoint; readonly to: PiecePoint }[];
  readonly seam: SeamName | null;
  /** Sewn length of the seam before, after the dart alone, and after giving back. */
  readonly seamBefore: Mm;
  readonly seamUngiven: Mm;
  readonly seamAfter: Mm;
  /** Amount taken (positive) or added (negative) at each place, on the half. */
  readonly given: readonly { readonly place: GiveBackPlace; readonly piece: PieceName; readonly amount: Mm }[];
  readonly notes: readonly AlterationNote[];
}

export type AlterationNote =
  | { readonly code: "centreNowSeam" }
  | { readonly code: "bustLoses"; readonly amount: Mm }
  | { readonly code: "legsTrued"; readonly amount: Mm }
  | { readonly code: "armholeSmoothed"; readonly turned: Radians }
  | { readonly code: "centreLengthened"; readonly amount: Mm }
  /** How much lower the under-bust seam lies at the dart. */
  | { readonly code: "cupLengthened"; readonly amount: Mm }
  /** Of a bust change that was asked for, what could be made; both whole, negative: taken out. */
  | { readonly code: "bustShort"; readonly asked: Mm; readonly made: Mm };
