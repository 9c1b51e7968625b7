/** Random bodies and chains of alterations on foreign nests, and the plan made of them. */
import * as fc from "fast-check";
import { ownPieces } from "../../../src/core/nest/ownPieces";
import type { DartRef } from "../../../src/core/pattern/piece";
import type { Alteration } from "../../../src/core/decisions/alteration";
import type { Pattern } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import { tapesOf } from "../../../src/core/measures/tape";
import { planOn } from "../../../src/core/plan/derivePlan";
import { anyAmount } from "../amounts";
import { anyFit, anyOnDart } from "../anyChainWork";
import { testWork } from "../works";
import { chartOf, tracedOf } from "./asTraced";
import { foreignNest } from "./foreignNest";
import type { ForeignNest, ForeignOptions } from "./foreignTypes";

export interface ForeignWork {
  readonly foreign: ForeignNest;
  readonly work: Work;
}

/** The pattern that a foreign nest is printed as; its own outlines are given to the plan beside it. */
const patternOf = (foreign: ForeignNest): Pattern => ({
  ...testWork.pattern,
  chart: chartOf(foreign),
  ease: foreign.ease,
  style: foreign.style,
  length: foreign.options.basque ? "hip" : "waist",
});

export const dartsOf = (foreign: ForeignNest): readonly DartRef[] =>
  tracedOf(foreign).sizes[0]?.pieces.flatMap((piece) =>
    piece.darts.map(({ name }) => ({ piece: piece.name, dart: name })),
  ) ?? [];

/** A body of just a size of the chart, the bust as full as it is drafted for. */
export function bodyOfSize(
  { chart }: ForeignNest,
  size: number,
  more = { bust: 0, out: 0, waist: 0, hip: 0 },
): Work["tapes"] {
  const row = chart[size] ?? { bust: 900, waist: 720, hip: 960 };
  const bust = row.bust + more.bust;
  return tapesOf({
    bustGirth: bust,
    upperChestGirth: bust - 50 - more.out,
    waistGirth: row.waist + more.waist,
    hipGirth: row.hip + more.hip,
  });
}

export const workOn = (
  foreign: ForeignNest,
  tapes: Work["tapes"],
  alterations: readonly Alteration[] = [],
): ForeignWork => ({
  foreign,
  work: { ...testWork, tapes, pattern: patternOf(foreign), alterations },
});

export const planOfForeign = ({ foreign, work }: ForeignWork): ReturnType<typeof planOn> =>
  planOn(ownPieces(tracedOf(foreign), work.pattern), work);

/** Chains of up to so many alterations on nests of any seed. */
export const anyForeignWork = (options: Omit<ForeignOptions, "seed">, most = 6): fc.Arbitrary<ForeignWork> =>
  fc.nat(400).chain((seed) => {
    const foreign = foreignNest({ ...options, seed });
    const darts = dartsOf(foreign);
    const [first, ...rest] = darts;
    const onDarts = first === undefined ? anyFit : fc.constantFrom(first, ...rest).chain(anyOnDart);
    return fc
      .record({
        size: fc.nat(foreign.chart.length - 1),
        more: fc.record({
          bust: anyAmount(-15, 15),
          out: anyAmount(-25, 60),
          waist: anyAmount(-40, 60),
          hip: anyAmount(-40, 60),
        }),
        alterations: fc.array(fc.oneof({ weight: 3, arbitrary: anyFit }, { weight: 2, arbitrary: onDarts }), {
          maxLength: most,
        }),
      })
      .map(({ size, more, alterations }) =>
        workOn(
          foreign,
          bodyOfSize(foreign, size, more),
          alterations.map((a, index) => ({ ...a, id: `${index}-${a.id}` })),
        ),
      );
  });
