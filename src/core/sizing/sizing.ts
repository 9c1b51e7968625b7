/** The picks: base size, cup version, and how sure each one is. */
import type { Mm } from "../units";

/** A girth, or a difference of two, as far as it is known. */
export interface Taken {
  readonly value: Mm;
  /** One standard deviation. */
  readonly spread: Mm;
}

/** How near a pick is to the next one. */
export interface PickMargin {
  /** Tape error that would change the pick. */
  readonly margin: Mm;
  /** Label of the next choice on the nearer side, if there is one. */
  readonly runnerUp: string | null;
  /** One standard deviation of what was looked up; 0 where nothing was. */
  readonly spread: Mm;
  /** Probability that the true value lies past the nearer bound, the value looked up being good to `spread`. */
  readonly probability: number;
  readonly borderline: boolean;
}

export interface BaseSizePick extends PickMargin {
  readonly label: string;
  readonly index: number;
  readonly chosenBy: "upperChest" | "bust" | "wearer";
  /** Index the planner picks by itself, whatever the wearer set. */
  readonly found: number;
  /** Looked up by the bust girth, for want of an upper chest. */
  readonly byBust: boolean;
  /** Girth looked up, and the chart value of the pick, the wearer's own where she made one. */
  readonly lookedUp: Mm;
  readonly chartValue: Mm;
  /** Where no other size is nearer to the planner's own pick: from (included) to (not included). The ends reach half a step out. */
  readonly from: Mm;
  readonly to: Mm;
  /** Past the end of the chart by this much, 0 inside. */
  readonly beyond: Mm;
}

export interface CupPick extends PickMargin {
  /** null: the pattern has no cup versions. */
  readonly label: string | null;
  readonly chosenBy: "difference" | "none" | "wearer";
  /** Bust − upper chest of the wearer; null without an upper-chest girth. */
  readonly difference: Mm | null;
  /** What the picked version is drafted for. */
  readonly drafted: Mm;
}

export interface BustPick {
  readonly difference: Mm | null;
  /** The bust that base size and cup are drafted for. */
  readonly drafted: Mm;
  /** Body bust less that: what the garment lacks, negative where it has too much. */
  readonly residual: Mm;
  /** Whole bust change asked for: 0 where the residual is left alone, or what the wearer set. */
  readonly asked: Mm;
  /** What is made of it: the most that the draft allows where that is less; 0 where it cannot be made as she set it. */
  readonly alteration: Mm;
  readonly leftAlone: boolean;
  readonly chosenBy: "residual" | "wearer";
}

/** One whole way to cut this body from this chart. */
export interface Alternative {
  readonly baseSize: string;
  readonly cup: string | null;
  /** Body bust less what base size and cup are drafted for, and what is altered of it. */
  readonly residual: Mm;
  readonly alteration: Mm;
  /** How far the upper chest lies from the base size's own. */
  readonly baseSizeMisfit: Mm;
  /** Whole moves of the waist and hip girth against the base size, at a quarter each. */
  readonly waistMove: Mm;
  readonly hipMove: Mm;
  readonly alterations: number;
  readonly largestMove: Mm;
  /** Expected harm (`harm.ts`), which ranks them. */
  readonly harm: number;
  readonly picked: boolean;
}

export interface Sizing {
  readonly baseSize: BaseSizePick;
  readonly cup: CupPick;
  readonly bust: BustPick;
  /** The planner's own way first, then by their harm; always at least what is cut and one more where the chart allows it. */
  readonly alternatives: readonly Alternative[];
}
