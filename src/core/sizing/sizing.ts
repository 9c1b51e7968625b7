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
  /** Looked up by bust girth, for want of an upper chest or because the body has the drafted difference. */
  readonly byBust: boolean;
  /** Girth looked up, and the chart value of the pick, the wearer's own where she made one. */
  readonly lookedUp: Mm;
  readonly chartValue: Mm;
  /** The interval of the planner's own pick: from (included) to (not included). The ends of the chart reach half a step out. */
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
  /**
   * On the planner's own frame: d − what the picked version is drafted for (0 without an upper chest).
   * On another base size: body bust − the bust that base size and cup are drafted for.
   */
  readonly residual: Mm;
  /** Whole bust change made by alteration: 0 where the residual is left alone. */
  readonly alteration: Mm;
  readonly leftAlone: boolean;
  readonly chosenBy: "residual" | "wearer";
}

/** One whole way to cut this body from this chart. */
export interface Alternative {
  readonly baseSize: string;
  readonly cup: string | null;
  readonly residual: Mm;
  /** How far the upper chest lies from the base size's own. */
  readonly baseSizeMisfit: Mm;
  /** Whole moves of the waist and hip girth against the base size, at a quarter each. */
  readonly waistMove: Mm;
  readonly hipMove: Mm;
  readonly alterations: number;
  readonly largestMove: Mm;
  /** The ranking number: mm, base size misfit weighed most, side-seam moves least. */
  readonly cost: number;
  readonly picked: boolean;
}

export interface Sizing {
  readonly baseSize: BaseSizePick;
  readonly cup: CupPick;
  readonly bust: BustPick;
  /** Best first; always at least the pick and one more where the chart allows it. */
  readonly alternatives: readonly Alternative[];
}
