/** What straps, facings and bindings come to. mm. */
import type { Half } from "../decisions/alteration";
import type { EdgeFinish, StrapKind } from "../decisions/dress";
import type { Part } from "../parts/part";
import type { Mm } from "../units";

export interface EdgeFigures {
  readonly edge: "neck" | "armhole";
  /** Of a strapped bodice, whose neck edge ends at the straps. */
  readonly at?: "front" | "back";
  /** Of armholes that differ. */
  readonly half?: Half;
  /** All round the finished edge; of armholes each. */
  readonly length: Mm;
  readonly finish: EdgeFinish | "lining";
  /** Bias strip to cut, each, where it is bound: length and cut width. */
  readonly strip: { readonly length: Mm; readonly width: Mm; readonly count: number } | null;
}

export interface StrapFigures {
  readonly kind: StrapKind;
  readonly width: Mm;
  /** Of the seams on cup and back that it is sewn to, as the bodice has them: a narrower strap is set in their middle. */
  readonly seamWidth: Mm;
  /** As she wants it: more than the width where its seams hold no more. */
  readonly asked: Mm;
  /** Finished, from seam to seam; of a tied one each end. */
  readonly length: Mm;
  /** Over the shoulder, from seam to seam. */
  readonly way: Mm;
  /** Whether what is worn under it is covered; null: nothing was said of it. */
  readonly coversBra: boolean | null;
  /** How wide it has to be to cover that; null: nothing was said of it. */
  readonly coversFrom: Mm | null;
  readonly elastic: { readonly length: Mm; readonly width: Mm } | null;
  /** Where it is sewn at the back, from the centre back along the edge. */
  readonly fromCentreBack: Mm;
}

/** By the shoulder that each goes over: one and the same where they are alike. */
export type BothStraps = Readonly<Record<Half, StrapFigures>>;

export interface EdgesDraft {
  readonly edges: readonly EdgeFigures[];
  /** null: none is drafted anew. */
  readonly strap: BothStraps | null;
  /** Bias strip of all bindings together, cut width by length. */
  readonly bias: readonly { readonly width: Mm; readonly length: Mm }[];
  /** null: nothing is faced. `depth`: as it could be made, of that asked for; `inOne`: neck and armhole by one facing. */
  readonly facing: { readonly asked: Mm; readonly depth: Mm; readonly inOne: boolean } | null;
  /** Finished, as it can be made, of that asked for; null: nothing is bound. */
  readonly binding: { readonly asked: Mm; readonly width: Mm } | null;
  readonly parts: readonly Part[];
}
