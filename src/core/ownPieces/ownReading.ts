/** What the outlines of a file come to as pieces of a pattern, and what is still missing. */
import type { FilePlace } from "../decisions/fileDrawing";
import type { OwnPieceSaid } from "../decisions/ownPattern";
import type { OutlineReading } from "../outlines/outlineReading";
import type { DartName, OtherPiece, Piece, PieceName, PointName, SeamName } from "../pattern/piece";
import type { Mm } from "../units";

/** The pieces of some sizes, all with the same points and edges; on the stitch line, in the piece frame. */
export interface TracedNest {
  /** In the order of the chart: only sizes of which every piece is there. */
  readonly sizes: readonly { readonly label: string; readonly pieces: readonly Piece[] }[];
  /** Label of the cup version; null where the chart has none. */
  readonly cup: string | null;
  /** Her own words for pieces without a name of ours. */
  readonly labels: Readonly<Partial<Record<OtherPiece, string>>>;
}

/** A corner as it is taken, on one size of a piece. */
export interface ReadCorner {
  readonly name: PointName;
  readonly at: FilePlace;
  readonly by: "her" | "form" | "other size" | "level";
}

export interface ReadDart {
  readonly name: DartName;
  readonly inner: FilePlace;
  readonly outer: FilePlace;
  readonly apex: FilePlace;
  readonly by: "her" | "outline" | "inner lines";
}

export type PieceProblem =
  | { readonly code: "own/corner-missing"; readonly corner: PointName; readonly size: string }
  | { readonly code: "own/seam-too-long"; readonly seam: SeamName; readonly size: string }
  | { readonly code: "own/allowance-too-wide"; readonly seam: SeamName; readonly size: string }
  | { readonly code: "own/dart-no-end"; readonly dart: DartName; readonly size: string }
  | { readonly code: "own/no-bust-point"; readonly size: string }
  | { readonly code: "own/sizes-unlike"; readonly size: string }
  | { readonly code: "own/crosses-itself"; readonly size: string };

export interface PieceReading {
  readonly id: string;
  /** What she said, with what the reading proposes in its place where she said nothing. */
  readonly said: OwnPieceSaid &
    Required<Pick<OwnPieceSaid, "name" | "extent" | "turns" | "turnedOver" | "line" | "centreOnFold">>;
  readonly sizes: readonly {
    readonly size: string;
    readonly corners: readonly ReadCorner[];
    readonly darts: readonly ReadDart[];
    readonly bustPoint: FilePlace | null;
    /** Furthest that the piece leaves the line of the file, mm. */
    readonly deviation: Mm;
  }[];
  readonly problems: readonly PieceProblem[];
}

/** What the plan needs and does not have, in the order to do it; each says where. */
export type Missing =
  | { readonly code: "missing/scale" }
  /** More is drawn than was looked at, and something is still to be found. */
  | { readonly code: "missing/too-much" }
  | { readonly code: "missing/sizes" }
  | { readonly code: "missing/outlines"; readonly widest: Mm | null }
  | { readonly code: "missing/piece"; readonly piece: PieceName }
  | { readonly code: "missing/piece-twice"; readonly piece: PieceName }
  | { readonly code: "missing/corner"; readonly piece: PieceName; readonly corner: PointName }
  | { readonly code: "missing/bust-point"; readonly piece: PieceName }
  | { readonly code: "missing/second-size" }
  /** What is sewn together differs by so much in that size: the first longer than the other, or shorter; mm. */
  | {
      readonly code: "own/seams-unlike";
      readonly piece: PieceName;
      readonly other: PieceName;
      readonly seam: SeamName;
      readonly size: string;
      readonly by: Mm;
    }
  /** A girth of the pieces, less that of the chart's body of that size, is no garment's; mm. */
  | {
      readonly code: "own/girth-unlike";
      readonly piece: PieceName;
      readonly level: "bust" | "waist" | "hip";
      readonly size: string;
      readonly by: Mm;
    }
  | { readonly code: "missing/problem"; readonly piece: PieceName; readonly problem: PieceProblem };

export interface OwnReading {
  readonly outlines: OutlineReading;
  readonly pieces: readonly PieceReading[];
  readonly missing: readonly Missing[];
  /** null as long as something that the plan needs is missing. */
  readonly nest: TracedNest | null;
}
