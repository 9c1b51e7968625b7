/** What of a piece goes on strips: which of its lines changed, gathered strip by strip. */
import type { DartName, Piece } from "../pattern/piece";
import { SAME_POINT } from "../tolerance";
import { distance, type PiecePoint } from "../geometry/point";
import type { Mm } from "../units";
import { changedStretches, runOn, type Stretch } from "./changedStretches";
import { linesAlong, partAtCorners, partEvenly, ringLength } from "./ringParts";
import { sewnLegs, sewnRing, stretchOf, type SewnLine } from "./sewnLines";

/** How far a strip goes on along the line that did not move, so that the join can be seen, mm. */
const RUN_ON: Mm = 20;

/** A dart whose legs changed only this near to the seam is drawn on the strip of the seam. */
const NEAR_SEAM: Mm = 25;

/** A strip before its paper is cut: the wearer's own lines on it. */
export interface Draft {
  /** What it is of: seams by their lines, darts by their names. */
  readonly of: readonly DraftOf[];
  readonly seams: readonly SewnLine[];
  readonly legs: readonly SewnLine[];
}

export type DraftOf =
  | { readonly kind: "seam"; readonly lines: readonly SewnLine[] }
  | { readonly kind: "dart"; readonly dart: DartName };

export interface Changes {
  /** Of the stitch line all round: the share of its length that moved. */
  readonly share: number;
  readonly drafts: readonly Draft[];
}

/** Compares a piece with the printed one, seam by seam and dart by dart. */
export function changesOf(piece: Piece, printed: Piece): Changes {
  const ring = sewnRing(piece);
  const [printedRing, printedLegs] = [sewnRing(printed), sewnLegs(printed)];
  const total = ringLength(ring);
  let start = 0;
  const moved = ring.flatMap((line) => {
    const asPrinted = printedRing.filter(({ seam }) => seam === line.seam);
    const stretches = changedStretches(
      line,
      asPrinted.map(({ curve }) => curve),
    ).map(({ from, to }) => ({ from: from + start, to: to + start }));
    start += line.length;
    return stretches;
  });
  const legs = sewnLegs(piece).map((leg): MovedLeg => {
    const old = printedLegs.filter(({ dart }) => dart === leg.dart);
    return {
      leg,
      moved: changedStretches(
        leg,
        old.map(({ curve }) => curve),
      ),
    };
  });
  const share = moved.reduce((sum, { from, to }) => sum + to - from, 0) / total;
  return { share, drafts: draftsOf(piece, ring, runOn(moved, RUN_ON, total), legs) };
}

interface MovedLeg {
  readonly leg: SewnLine;
  readonly moved: readonly Stretch[];
}

function draftsOf(
  piece: Piece,
  ring: readonly SewnLine[],
  stretches: readonly Stretch[],
  legs: readonly MovedLeg[],
): readonly Draft[] {
  const parts = stretches.flatMap((stretch) => partAtCorners(ring, stretch, RUN_ON));
  const darts = piece.darts
    .map(({ name }) => name)
    .filter((name) => legs.some(({ leg, moved }) => leg.dart === name && moved.length > 0));
  const isNear = (dart: DartName): boolean =>
    legs.every(({ leg, moved }) => leg.dart !== dart || moved.every(({ to }) => to <= NEAR_SEAM)) &&
    legs.every(
      ({ leg, moved }) =>
        leg.dart !== dart || moved.length === 0 || parts.some((part) => touches(linesAlong(ring, part), leg.curve.a)),
    );
  const own = darts.filter((dart) => !isNear(dart));
  const ofDarts = own.map((dart): Draft => ({
    of: [{ kind: "dart", dart }],
    seams: linesAlong(ring, mouthStretch(ring, dart)),
    legs: legs.flatMap(({ leg }) => (leg.dart === dart ? [leg] : [])),
  }));
  const besides = parts.filter((part) => !own.some((dart) => covers(mouthStretch(ring, dart), part)));
  const near = legs.filter(({ leg }) => leg.dart !== null && darts.includes(leg.dart) && !own.includes(leg.dart));
  const ofSeams = besides.map((part): Draft => {
    const seams = linesAlong(ring, part);
    return ofSeam(
      seams,
      near.flatMap(({ leg, moved }) => (touches(seams, leg.curve.a) ? runOnLeg(leg, moved) : [])),
    );
  });
  return [...ofSeams, ...ofDarts];
}

const ofSeam = (seams: readonly SewnLine[], legs: readonly SewnLine[]): Draft => ({
  of: [{ kind: "seam", lines: seams }],
  seams,
  legs,
});

/** Two strips as one. */
export const together = (a: Draft, b: Draft): Draft => ({
  of: [...a.of, ...b.of],
  seams: [...a.seams, ...b.seams],
  legs: [...a.legs, ...b.legs],
});

const touches = (lines: readonly SewnLine[], at: PiecePoint): boolean =>
  lines.some(({ curve }) => distance(curve.a, at) <= SAME_POINT || distance(curve.b, at) <= SAME_POINT);

/** What moved of a leg, from the mouth, and a little beyond. */
const runOnLeg = (leg: SewnLine, moved: readonly Stretch[]): readonly SewnLine[] =>
  moved.length === 0 ? [] : [stretchOf(leg, 0, Math.min(leg.length, Math.max(...moved.map(({ to }) => to)) + RUN_ON))];

/** The mouth of a dart on the ring, with a little of the seam on either side. */
function mouthStretch(ring: readonly SewnLine[], dart: DartName): Stretch {
  let start = 0;
  let [from, to] = [Infinity, -Infinity];
  for (const line of ring) {
    if (line.dart === dart) [from, to] = [Math.min(from, start), Math.max(to, start + line.length)];
    start += line.length;
  }
  return { from: from - RUN_ON, to: to + RUN_ON };
}

/** Whether a part lies on a mouth's stretch: what changed of it lies within the mouth, so both are counted from one start of the ring. */
const covers = (mouth: Stretch, part: Stretch): boolean =>
  part.from >= mouth.from - SAME_POINT && part.to <= mouth.to + SAME_POINT;

/** A strip made into several that lie over each other by `RUN_ON`: a seam along its length, a dart along its legs. */
export function inParts({ of, seams, legs }: Draft, count: number): readonly Draft[] {
  if (of.some(({ kind }) => kind === "seam")) {
    return partEvenly({ from: 0, to: ringLength(seams) }, count, RUN_ON).map((part) => {
      const lines = openAlong(seams, part);
      return ofSeam(
        lines,
        legs.filter((leg) => touches(lines, leg.curve.a)),
      );
    });
  }
  return Array.from({ length: count }, (_, index) => ({
    of,
    seams: index === 0 ? seams : [],
    legs: legs.flatMap((leg) => {
      const part = partEvenly({ from: 0, to: leg.length }, count, RUN_ON)[index];
      return part === undefined ? [] : [stretchOf(leg, part.from, part.to)];
    }),
  }));
}

/** The lines along a stretch of an open chain. */
function openAlong(chain: readonly SewnLine[], { from, to }: Stretch): readonly SewnLine[] {
  let start = 0;
  return chain.flatMap((line) => {
    const [first, last] = [Math.max(0, from - start), Math.min(line.length, to - start)];
    start += line.length;
    return last - first > SAME_POINT ? [stretchOf(line, first, last)] : [];
  });
}
