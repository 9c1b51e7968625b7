/** Where two versions of one work were changed differently. */
import type { SizeRow } from "../chart/sizeChart";
import type { MeasureName } from "../measures/measure";
import type { DartRef, SeamName } from "../pattern/piece";
import type { Alteration, Half } from "./alteration";
import type { DressPart } from "./dress";
import type { Ease, PrintedLength } from "./pattern";
import type { Observation, Trial } from "./trial";
import type { Picks } from "./decided";
import type { Work } from "./work";

/** The parts of a work that are one decision each. */
export type OneDecision = Exclude<
  keyof Work,
  | "tapes"
  | "trusted"
  | "pattern"
  | "easeWanted"
  | "picks"
  | "alterations"
  | "seen"
  | "allowances"
  | "dress"
  | "trials"
  | "standingLeft"
  | "unread"
>;

/** What of a work was changed differently; a part in a list is named by what it is found by. */
export type Collision =
  | { readonly of: OneDecision }
  /** The sets themselves: how many there are. */
  | { readonly of: "tapes" }
  /** The day of a set (0: the newest), or its readings of one measure. */
  | { readonly of: "taken"; readonly set: number }
  | { readonly of: "measure"; readonly set: number; readonly measure: MeasureName }
  /** Whether she said that a doubted reading is right. */
  | { readonly of: "trusted"; readonly measure: MeasureName }
  /** Another pattern altogether was put in by one side. */
  | { readonly of: "pattern" }
  | { readonly of: "patternName" | "draftedDifference" | "length" | "closure" | "style" | "strap" | "tissue" | "own" }
  | { readonly of: "patternEase" | "easeWanted"; readonly level: keyof Ease }
  /** Of one size by its label; null: of all sizes. */
  | { readonly of: "printedLength"; readonly measure: PrintedLength; readonly size: string | null }
  /** The list: its order, how many lines it has, or lines that cannot be told apart. */
  | { readonly of: "sizes" | "cups" }
  /** A line by its label as it was before; no column: the whole line, as where one side took it out. */
  | { readonly of: "size"; readonly label: string; readonly column: keyof SizeRow | null }
  | { readonly of: "cup"; readonly label: string; readonly column: "label" | "difference" | null }
  | { readonly of: "pick"; readonly pick: keyof Picks }
  /** Their order, or how many there are. */
  | { readonly of: "alterations" }
  /** As one of the two sides has it. */
  | { readonly of: "alteration"; readonly alteration: Alteration }
  | { readonly of: "allowance"; readonly seam: SeamName }
  /** A part of the rest of the dress. */
  | { readonly of: "dress"; readonly part: DressPart }
  /** Of one trial garment: one part, or all that is kept of it; no trial: together they are more than can be kept. */
  | { readonly of: "trial"; readonly trial: Trial | null; readonly part: keyof Trial | null }
  /** One line of a trial's record. */
  | { readonly of: "observation"; readonly trial: Trial; readonly observation: Observation }
  /** Of one dart; null: together they are more than can be kept. */
  | { readonly of: "seen"; readonly dart: (DartRef & { readonly half: Half }) | null }
  /** What was typed in one field; null: together they are more than can be kept. */
  | { readonly of: "unread"; readonly field: string | null };
