/** A step before it has its place: what is done on which parts. */
import type { ClosureReading } from "../opening/gettingIn";
import type { Part, PartGroup } from "../parts/part";
import type { PieceName } from "../pattern/piece";
import type { Mm } from "../units";
import type { SewingStep, SewingStepName, SewingWay, SewnSeam } from "./sewingStep";

export interface StepDraft {
  readonly name: SewingStepName;
  readonly at?: number;
  readonly way?: SewingWay;
  readonly parts: readonly string[];
  readonly seams: readonly SewnSeam[];
  readonly marks?: ClosureReading["levelMarks"];
  readonly lower?: NonNullable<SewingStep["lower"]>;
  readonly allowance: Mm | null;
}

interface StepMore {
  readonly seams?: readonly SewnSeam[];
  readonly allowance?: Mm;
  readonly at?: number;
  readonly way?: SewingWay | undefined;
}

export const step = (
  name: SewingStepName,
  parts: readonly string[],
  { seams = [], allowance, at, way }: StepMore = {},
): StepDraft => ({
  name,
  ...(at === undefined ? {} : { at }),
  ...(way === undefined ? {} : { way }),
  parts,
  seams,
  allowance: allowance ?? null,
});

/** The step where there is a seam to be sewn in it, else nothing. */
export const stepOfSeams = (
  name: SewingStepName,
  parts: readonly Part[],
  seams: readonly SewnSeam[],
  more: Omit<StepMore, "seams"> = {},
): readonly StepDraft[] => (seams.length === 0 ? [] : [step(name, keysAlong(parts, seams), { seams, ...more })]);

/** A seam of parts that have no piece: rectangles, rings, strips. */
export const plainSeam = (length: Mm, count = 1): SewnSeam => ({ seam: null, pieces: [], half: null, length, count });

export const keysOf = (parts: readonly Part[]): readonly string[] => parts.map(({ key }) => key);

export const inGroup = (parts: readonly Part[], ...groups: readonly PartGroup[]): readonly Part[] =>
  parts.filter(({ group }) => groups.includes(group));

export const pieceNameOf = (part: Part): PieceName | null => (part.kind === "piece" ? part.piece.name : null);

/** Of these parts those whose piece a seam runs along. */
function keysAlong(parts: readonly Part[], seams: readonly SewnSeam[]): readonly string[] {
  const names = new Set(seams.flatMap(({ pieces }) => pieces));
  return keysOf(
    parts.filter((part) => {
      const name = pieceNameOf(part);
      return name !== null && names.has(name);
    }),
  );
}
