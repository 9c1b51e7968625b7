/** How a round skirt is cut into sectors: in one, with its only seam at the opening, or at the sides too, and ever narrower. */
import type { Half } from "../decisions/alteration";
import type { Closure } from "../decisions/pattern";
import { radians, type Mm, type Radians } from "../units";
import type { CircleSeam } from "./skirtDraft";
import type { WaistMark } from "./waistArc";

/** The waist of each quarter from its centre to its side. */
export interface RoundQuarters {
  readonly leftFront: readonly WaistMark[];
  readonly rightFront: readonly WaistMark[];
  readonly rightBack: readonly WaistMark[];
  readonly leftBack: readonly WaistMark[];
  /** Of the hem, and the least of the waist. */
  readonly radius: Mm;
  readonly least: Mm;
  /** The waist is an arc of a circle. */
  readonly isRound: boolean;
  readonly areHalvesAlike: boolean;
  readonly opens: Closure["place"];
}

export interface Division {
  readonly shape: "whole" | "frontAndBack" | "frontAndHalfBacks" | "quarters";
  /** Each quarter cut into so many. */
  readonly into: 1 | 2 | 4 | 8;
  readonly seams: readonly CircleSeam[];
}

const QUARTERS: readonly CircleSeam[] = ["centreFront", "centreBack", "leftSide", "rightSide"];

/** With the fewest seams first. Seams at the sides meet the bodice's. */
export const divisionsOf = ({ place }: Closure): readonly Division[] => [
  { shape: "whole", into: 1, seams: [place === "side" ? "leftSide" : "centreBack"] },
  place === "side"
    ? { shape: "frontAndBack", into: 1, seams: ["leftSide", "rightSide"] }
    : { shape: "frontAndHalfBacks", into: 1, seams: ["centreBack", "leftSide", "rightSide"] },
  { shape: "quarters", into: 1, seams: QUARTERS },
  { shape: "quarters", into: 2, seams: [...QUARTERS, "between"] },
  { shape: "quarters", into: 4, seams: [...QUARTERS, "between"] },
  { shape: "quarters", into: 8, seams: [...QUARTERS, "between"] },
];

export interface Sector {
  readonly name: string;
  readonly half: Half | null;
  readonly count: number;
  readonly angle: Radians;
  /** From its first side to its last. */
  readonly marks: readonly WaistMark[];
  /** The same from its middle to its last side, where both halves of it are alike; else null. */
  readonly folded: readonly WaistMark[] | null;
  readonly isRound: boolean;
}

export function sectorsOf(quarters: RoundQuarters, { shape, into }: Division): readonly Sector[] {
  switch (shape) {
    case "whole":
      return [wholeOf(quarters)];
    case "frontAndBack":
      return [pairOf(quarters, "front"), pairOf(quarters, "back")];
    case "frontAndHalfBacks":
      return [pairOf(quarters, "front"), ...singles(quarters, "back", into)];
    case "quarters":
      return [...singles(quarters, "front", into), ...singles(quarters, "back", into)];
  }
}

function wholeOf(quarters: RoundQuarters): Sector {
  const { leftFront, rightFront, rightBack, leftBack, opens, isRound, areHalvesAlike } = quarters;
  const marks =
    opens === "side"
      ? chain([turned(leftFront), rightFront, turned(rightBack), leftBack])
      : chain([leftBack, turned(leftFront), rightFront, turned(rightBack)]);
  // Opposite the opening is its fold.
  const fromFold = areHalvesAlike && opens === "centreBack" ? chain([rightFront, turned(rightBack)]) : null;
  return sector(quarters, "circle", { marks, folded: isRound ? halved(marks) : fromFold });
}

function pairOf(quarters: RoundQuarters, side: "front" | "back"): Sector {
  const [left, right] =
    side === "front" ? [quarters.leftFront, quarters.rightFront] : [quarters.leftBack, quarters.rightBack];
  const marks = chain([turned(left), right]);
  return sector(quarters, `circle-${side}`, {
    marks,
    folded: quarters.areHalvesAlike ? right : quarters.isRound ? halved(marks) : null,
  });
}

function singles(quarters: RoundQuarters, side: "front" | "back", into: Division["into"]): readonly Sector[] {
  const [left, right] =
    side === "front" ? [quarters.leftFront, quarters.rightFront] : [quarters.leftBack, quarters.rightBack];
  const cut = (marks: readonly WaistMark[], half: Half | null): readonly Sector[] =>
    Array.from({ length: into }, (_, i) => {
      const steps = (marks.length - 1) / into;
      const part = marks.slice(i * steps, (i + 1) * steps + 1);
      const start = part[0]?.at ?? 0;
      const name = into === 1 ? `circle-${side}` : `circle-${side}-${i + 1}`;
      const from = part.map(({ at, radius }) => ({ at: radians(at - start), radius }));
      return { ...sector(quarters, name, { marks: from, folded: null }), half, count: half === null ? 2 : 1 };
    });
  return quarters.areHalvesAlike ? cut(left, null) : [...cut(left, "left"), ...cut(right, "right")];
}

const sector = (
  { isRound }: RoundQuarters,
  name: string,
  { marks, folded }: { readonly marks: readonly WaistMark[]; readonly folded: readonly WaistMark[] | null },
): Sector => ({ name, half: null, count: 1, angle: endOf(marks), marks, folded, isRound });

const endOf = (marks: readonly WaistMark[]): Radians => marks.at(-1)?.at ?? radians(0);

/** From its other end. */
function turned(marks: readonly WaistMark[]): readonly WaistMark[] {
  const whole = endOf(marks);
  return marks.toReversed().map(({ at, radius }) => ({ at: radians(whole - at), radius }));
}

const halved = (marks: readonly WaistMark[]): readonly WaistMark[] =>
  marks.map(({ at, radius }) => ({ at: radians(at / 2), radius }));

function chain(parts: readonly (readonly WaistMark[])[]): readonly WaistMark[] {
  const all: WaistMark[] = [];
  for (const part of parts) {
    const start = all.at(-1)?.at ?? 0;
    for (const { at, radius } of all.length === 0 ? part : part.slice(1)) all.push({ at: radians(start + at), radius });
  }
  return all;
}
