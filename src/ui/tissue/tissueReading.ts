/** What the tape door shows of a work: the places in their order, what the stand-in has there, and what came of the answers. */
import { TISSUE_LENGTHS, type TissueLength } from "../../core/decisions/tissue";
import type { Work } from "../../core/decisions/work";
import type { Nest, Piece, PieceName } from "../../core/pattern/piece";
import { planOf, printedNestOf } from "../../core/plan/planOf";
import { remember } from "../../core/remember";
import type { Mm } from "../../core/units";
import { measureTissue } from "../../core/tissue/tapeWays";

export interface TissuePlaceShown {
  readonly piece: PieceName;
  readonly length: TissueLength;
  /** What the stand-in has there. */
  readonly standIn: Mm;
}

export interface TissueReading {
  readonly sizes: readonly string[];
  /** Label of the size measured, and whether it is still in the chart. */
  readonly size: string;
  readonly pieces: readonly Piece[];
  readonly next: readonly Piece[];
  /** The most useful first. */
  readonly places: readonly TissuePlaceShown[];
}

const ORDER: readonly PieceName[] = [
  "front",
  "centreFront",
  "sideFront",
  "cup",
  "frontBand",
  "back",
  "backBand",
  "frontBasque",
  "backBasque",
];

const standInOf = remember(
  ["pattern", "tapes", "picks"],
  ({ pattern, tapes, picks }: Pick<Work, "pattern" | "tapes" | "picks">) => {
    const { tissue: _tissue, own: _own, ...plain } = pattern;
    return printedNestOf({ pattern: plain, tapes, picks });
  },
);

export function readTissue(work: Work, asked: string | null): TissueReading | null {
  const nest = standInOf(work);
  if (!nest.ok) return null;
  return readingOf(work, nest.value, asked);
}

function readingOf(work: Work, nest: Nest, asked: string | null): TissueReading {
  const plan = planOf(work);
  const base = plan.ok ? plan.value.sizing.baseSize.label : nest.labels[Math.floor(nest.labels.length / 2)];
  const size = work.pattern.tissue?.size ?? asked ?? base ?? "";
  const index = Math.max(0, nest.labels.indexOf(size));
  const pieces = nest.sizes[index] ?? [];
  const next = nest.sizes[index + 1] ?? [];
  const places = TISSUE_LENGTHS.flatMap((length) =>
    ORDER.flatMap((name) => {
      const of = (all: readonly Piece[]) => all.find((one) => one.name === name);
      const piece = of(pieces);
      const standIn = piece === undefined ? null : measureTissue(piece, length, of(next));
      return standIn === null ? [] : [{ piece: name, length, standIn }];
    }),
  );
  return { sizes: nest.labels, size, pieces, next, places };
}
