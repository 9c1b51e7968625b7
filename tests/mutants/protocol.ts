/** What is said between the run of mutants and its workers. */
import type { Mutant } from "./listMutants";

/** Functions of core files that were reached: a number a function, as a text of 0 and 1 would be, packed. */
export type Reached = Record<string, string>;

export interface MeasuredTest {
  readonly name: string;
  /** Of the processor. */
  readonly ms: number;
  readonly reached: Reached;
  /** What it is not asked for: it took too long, or it fails without a mutant. */
  readonly left?: "slow" | "failing" | undefined;
}

export interface MeasuredFile {
  readonly file: string;
  readonly hash: string;
  /** What its own text and those of the core's files that it loads were, each by a digest. */
  readonly sources: Readonly<Record<string, string>>;
  /** Loading it and collecting its tests. */
  readonly ms: number;
  readonly reached: Reached;
  readonly tests: readonly MeasuredTest[];
  readonly failed?: string | undefined;
}

export interface Asked {
  readonly file: string;
  /** All of its tests, or those at these places. */
  readonly tests: readonly number[] | "all";
  /** How many tests it has without a mutant. */
  readonly count: number;
  readonly ms: number;
}

export type Outcome =
  | { readonly end: "killed"; readonly by: string; readonly why: string }
  | { readonly end: "timeout"; readonly by: string }
  | { readonly end: "survived"; readonly asked: number };

export type Job =
  | { readonly kind: "measure"; readonly file: string }
  | { readonly kind: "try"; readonly mutant: Mutant; readonly asked: readonly Asked[] };

export type Answer =
  | { readonly kind: "measured"; readonly measured: MeasuredFile }
  | { readonly kind: "tried"; readonly outcome: Outcome; readonly ms: number };
