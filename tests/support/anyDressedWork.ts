/** Random bodies and chains of alterations with any dress on them, every style and opening. */
import * as fc from "fast-check";
import { STYLE_NAMES } from "../../src/core/decisions/pattern";
import type { Work } from "../../src/core/decisions/work";
import { anyChainWork } from "./anyChainWork";
import { anyDress } from "./arbitraryDress";

/** mm. What a floor is measured at: front and back may differ from the side by so much. */
const FLOORS = { least: -25, most: 25 } as const;

const anyMeasures = fc.record({
  waistToHip: fc.integer({ min: 170, max: 235 }),
  side: fc.integer({ min: 920, max: 1120 }),
  front: fc.integer({ min: FLOORS.least, max: FLOORS.most }),
  back: fc.integer({ min: FLOORS.least, max: FLOORS.most }),
});

/** @param most alterations of the bodice */
export const anyDressedWork = (most: number): fc.Arbitrary<Work> =>
  fc.constantFrom(...STYLE_NAMES).chain((style) =>
    fc
      .record({
        work: anyChainWork(style),
        dress: anyDress,
        measures: fc.option(anyMeasures, { nil: undefined }),
        place: fc.constantFrom("centreBack" as const, "side" as const),
        belowWaist: fc.constantFrom(0, 80, 180, 250),
        buttons: fc.option(fc.integer({ min: 4, max: 12 }), { nil: undefined, freq: 5 }),
      })
      .map(({ work, dress, measures, place, belowWaist, buttons }): Work => {
        const own = measures === undefined ? {} : { measures: measuredOf(measures) };
        const closure = { place, belowWaist, ...(buttons === undefined ? {} : { buttons }) };
        return {
          ...work,
          alterations: work.alterations.slice(0, most),
          pattern: { ...work.pattern, closure },
          dress: { ...dress, ...own },
        };
      }),
  );

const measuredOf = ({
  waistToHip,
  side,
  front,
  back,
}: typeof anyMeasures extends fc.Arbitrary<infer T> ? T : never) => ({
  waistToHip,
  waistToFloorSide: side,
  waistToFloorFront: side + front,
  waistToFloorBack: side + back,
});
