/** What the wearer decided: the whole of the saved document, and nothing derived. */
import type { Mm } from "../units";
import type { Decided } from "./decided";
import type { PaperSize, SheetFormat } from "./paperChoice";
import type { Trial } from "./trial";

export type LengthUnit = "cm" | "in";

export interface Work extends Decided {
  readonly name: string;
  /** Whom it is made for, where that is said. */
  readonly wearer?: string;
  /** A scenario made up for showing, not a person. */
  readonly invented: boolean;
  /** The base that it was begun from, by the name of that work and the day of its trial. */
  readonly begunFrom?: { readonly name: string; readonly day?: string };
  readonly unit: LengthUnit;
  readonly paper: PaperSize;
  /** Trial garments, the newest first. */
  readonly trials?: readonly Trial[];
  /** What her body asked for in other garments and she leaves out of this one, by its key; in the order of the alphabet. */
  readonly standingLeft?: readonly string[];
  /** Paper for true-scale pieces, and the white edge her printer leaves; absent: the usual ones. */
  readonly sheetFormat?: SheetFormat;
  readonly printerMargin?: Mm;
  /** Entries that could not be read yet, as typed, by field: nothing typed is lost. */
  readonly unread: Readonly<Record<string, string>>;
}
