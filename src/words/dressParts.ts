/** Parts of a dress as the cut list names them. */
import type { ClothName } from "../core/decisions/dress";
import type { LengthUnit } from "../core/decisions/work";
import { cutDepth, cutWidth, type Part, type PartGroup, type RectangleName } from "../core/parts/part";
import type { OtherNames } from "./terms/names";
import { formatAmount, formatLength } from "./terms/length";
import { capital, namedPieceWords } from "./terms/names";

const CLOTHS: Readonly<Record<ClothName, string>> = {
  main: "main cloth",
  lining: "lining",
  underlining: "underlining",
  interfacing: "interfacing",
};

export const clothName = (cloth: ClothName): string => CLOTHS[cloth];

const GROUPS: Readonly<Partial<Record<PartGroup, string>>> = {
  bodiceLining: "lining",
  skirtLining: "lining",
  underlining: "underlining",
};

const RECTANGLES: Readonly<Record<RectangleName, string>> = {
  tier: "tier",
  gathered: "gathered skirt",
  strap: "strap",
  tie: "tie",
  binding: "bias strip",
  elasticCasing: "casing for elastic",
  buttonStand: "strip for the button stand",
};

/** "Back lining", "Tier 2", "Skirt front, right". */
export function partName(part: Part, others: OtherNames): string {
  const half = part.half === null ? "" : `, ${part.half}`;
  const group = GROUPS[part.group];
  const of = group === undefined ? "" : ` ${group}`;
  switch (part.kind) {
    case "piece":
      return capital(`${namedPieceWords(part.piece.name, others)}${of}${half}`);
    case "rectangle":
      return capital(`${RECTANGLES[part.name]}${part.tier === undefined ? "" : ` ${part.tier}`}${of}${half}`);
    case "sector":
      return capital(`round skirt${ringWords(part.key)}${of}${half}`);
  }
}

/** Which share of a ring: of the front or the back, and of several the number of its own. */
function ringWords(key: string): string {
  const [, side = "", number = ""] = /-(front|back)(?:-(\d+))?/.exec(key) ?? [];
  return `${side === "" ? "" : `, ${side}`}${number === "" ? "" : ` ${number}`}`;
}

/** "1 on the fold", "2"; of halves that differ and are joined "1, opened out, one layer, right side up". */
export function cutWords(part: Part): string {
  const { onFold, count } = part.cut;
  if (part.kind === "piece" && part.otherHalf !== undefined) return `${count}, opened out, one layer, right side up`;
  return `${count}${onFold ? " on the fold" : ""}`;
}

/** What is measured out rather than printed; null: it goes through the true-scale paper. */
export function partMeasures(part: Part, unit: LengthUnit): string | null {
  const length = (mm: number): string => formatLength(mm, unit);
  switch (part.kind) {
    case "piece":
      return null;
    case "rectangle":
      return `${length(cutWidth(part))} by ${length(cutDepth(part))}`;
    case "sector":
      return `radii ${length(part.inner)} and ${length(part.outer)}, allowance ${formatAmount(part.allowances.inner, unit)}`;
  }
}

/** "14 parts, of main cloth and lining". */
export const cutListOutcome = (parts: readonly Part[]): string => `${parts.length} parts`;

export const stringAndPin = (name: string): string => `${name} with string and pin`;
