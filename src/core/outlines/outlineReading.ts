/** What the lines of a file come to, before any of it is named: its scale, its sizes, its closed outlines. */
import type { FilePlace, FileUnit } from "../decisions/fileDrawing";
import type { LineFeature, LineMeaning } from "../decisions/ownPattern";
import type { EdgeCurve } from "../geometry/edgeCurve";
import type { SheetPoint } from "../geometry/point";
import type { Mm } from "../units";

/** A closed line that may be the square printed to test the scale. */
export interface TestSquare {
  readonly outline: string;
  readonly at: FilePlace;
  /** mm, by the scale as it is known. */
  readonly width: Mm;
  readonly height: Mm;
  /** What such a square measures, where one of the usual ones is near; mm. */
  readonly usual: { readonly width: Mm; readonly height: Mm } | null;
}

/** How long one unit of the file is, and what proves it. */
export interface Scale {
  /** mm in a unit; null: it has to be asked for. */
  readonly mm: Mm | null;
  readonly by: "known" | "file" | "square" | null;
  /** What the file says, whether it is gone by or not. */
  readonly said: FileUnit | null;
  readonly squares: readonly TestSquare[];
  /** mm in a unit by her own length, where she gave one. */
  readonly known: Mm | null;
  /** Two of these differ by more than the tolerance. */
  readonly disagree: boolean;
}

/** Lines of one value of the feature that they are sorted by. */
export interface SortedLines {
  readonly value: string;
  /** For a swatch: how the first of them looks. */
  readonly colour: string;
  readonly dash: string;
  readonly width: number;
  readonly count: number;
  /** Together, mm. */
  readonly length: Mm;
  readonly meaning: LineMeaning;
  readonly saidBy: "her" | "name" | "order" | "form";
}

/** A closed outline of one size, joined of the lines of that size and those that all sizes share. */
export interface ClosedOutline {
  /** The same as long as the lines it is joined of are. */
  readonly id: string;
  /** Label of the size; null: of all sizes, or not known. */
  readonly size: string | null;
  /** On the sheet, in mm: y down. */
  readonly edges: readonly EdgeCurve<"sheet">[];
  /** The widest gap that was joined, mm. */
  readonly widestGap: Mm;
}

/** A line that closes nothing. */
export interface OpenLine {
  readonly id: string;
  readonly size: string | null;
  readonly edges: readonly EdgeCurve<"sheet">[];
  readonly layer: string;
}

export interface Mark {
  readonly at: SheetPoint;
  readonly size: string | null;
  readonly layer: string;
  /** A point of the file, two short lines that cross, a small circle, or a writing that says "bust point" where it stands. */
  readonly form: "point" | "cross" | "circle" | "writing";
}

export interface SheetWriting {
  readonly at: SheetPoint;
  readonly text: string;
}

/** Outlines of several sizes that are one piece, and all that lies inside. */
export interface OutlineGroup {
  /** Id of its largest outline. */
  readonly id: string;
  /** Outline ids by size; "" where the size is not known. */
  readonly outlines: Readonly<Record<string, string>>;
  /** mm to add to each size's outline so that all lie in one another, where sizes were laid side by side. */
  readonly shift: Readonly<Record<string, { readonly x: Mm; readonly y: Mm }>>;
  readonly inner: readonly OpenLine[];
  readonly innerClosed: readonly string[];
  readonly marks: readonly Mark[];
  readonly writings: readonly SheetWriting[];
  /** Name that the file itself gives the piece, as of its block or its group; "" where it gives none. */
  readonly nameInFile: string;
  readonly isSquare: boolean;
  /** The sewing line drawn inside each outline, by size; absent: none is drawn. */
  readonly sewing?: Readonly<Record<string, string>>;
  /** A rectangle round the sheet. */
  readonly isFrame?: true;
}

export interface OutlineReading {
  readonly scale: Scale;
  readonly sortedBy: LineFeature;
  /** Other features that would part the lines, with how many kinds each. */
  readonly features: readonly { readonly feature: LineFeature; readonly values: number }[];
  readonly lines: readonly SortedLines[];
  /** Ends nearer than this were joined, mm. */
  readonly joinWithin: Mm;
  readonly outlines: readonly ClosedOutline[];
  /** Lines of a size that close nothing, with the gap that is left open, mm. */
  readonly unclosed: readonly { readonly line: OpenLine; readonly gap: Mm }[];
  readonly groups: readonly OutlineGroup[];
  /** More is drawn than was looked at: the smallest outlines, or those that turn oftener than any piece, are in no group. */
  readonly isCut?: true;
}
