/** What straps, facings and bindings come to. mm. */
import type { EdgeFinish } from "../decisions/dress";
import type { Part } from "../parts/part";
import type { Mm } from "../units";

export interface EdgeFigures {
  readonly edge: "neck" | "armhole";
  /** All round the finished edge; of armholes each. */
  readonly length: Mm;
  readonly finish: EdgeFinish | "lining";
  /** Bias strip to cut, each, where it is bound: length and cut width. */
  readonly strip: { readonly length: Mm; readonly width: Mm; readonly count: number } | null;
}

export interface StrapFigures {
  readonly width: Mm;
  /** Finished, from seam to seam; of a tied one each end. */
  readonly length: Mm;
  /** Whether what is worn under it is covered; null: nothing was said of it. */
  readonly coversBra: boolean | null;
  readonly elastic: { readonly length: Mm; readonly width: Mm } | null;
  /** Where it is sewn at the back, from the centre back along the edge. */
  readonly fromCentreBack: Mm;
}

export interface EdgesDraft {
  readonly edges: readonly EdgeFigures[];
  readonly strap: StrapFigures | null;
  /** Bias strip of all bindings together, cut width by length. */
  readonly bias: readonly { readonly width: Mm; readonly length: Mm }[];
  readonly parts: readonly Part[];
}
