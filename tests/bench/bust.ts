/** Every woman of the survey of 1988 by the rule for base size, cup and bust: what is altered, and how far it ends. */
import type { SizeChart } from "../../src/core/chart/sizeChart";
import { outsideOf } from "../../src/core/sizing/pickSizing";
import { pickWay } from "../../src/core/sizing/pickWay";
import { TAPE_SPREAD } from "../../src/core/measures/repeatability";
import { BUST_LEFT_ALONE } from "../../src/core/tolerance";
import { inchChart, unevenChart } from "../support/charts";
import { women1988 } from "../support/surveys";
import { demoPatterns, tapedBy } from "../support/surveyTally";
import { print } from "./table";

export function benchBust(): void {
  const charts = new Map<string, SizeChart>([
    ...demoPatterns().map(({ name, chart }) => [name, chart] as const),
    ["in inches", inchChart],
    ["uneven steps", unevenChart],
  ]);
  print(
    "Surveyed women by the rule for base size, cup and bust; mm",
    [
      "chart",
      "on the chart",
      "ends over 12 off",
      "altered within 12",
      "wrong way",
      "full",
      "small",
      "outside the frame",
    ],
    [...charts].map(([name, chart]) => {
      const women = women1988.map(tapedBy).flatMap(({ bustGirth = NaN, upperChestGirth = NaN }) => {
        const girths = {
          bust: { value: bustGirth, spread: TAPE_SPREAD.bustGirth },
          upperChest: { value: upperChestGirth, spread: TAPE_SPREAD.upperChestGirth },
        };
        if (outsideOf(chart, girths) !== null) return [];
        const { offer, residual, alteration } = pickWay(chart, girths);
        const first = offer.index === 0;
        const last = offer.index === chart.sizes.length - 1;
        const outside = Math.max(0, first ? 0 : offer.from - upperChestGirth, last ? 0 : upperChestGirth - offer.to);
        return [{ residual, alteration, outside }];
      });
      const count = (is: (woman: (typeof women)[number]) => boolean): number => women.filter(is).length;
      return [
        name,
        women.length,
        count(({ residual, alteration }) => Math.abs(residual - alteration) > BUST_LEFT_ALONE),
        count(({ residual, alteration }) => alteration !== 0 && Math.abs(residual) <= BUST_LEFT_ALONE),
        count(({ residual, alteration }) => residual * alteration < 0),
        count(({ alteration }) => alteration > 0),
        count(({ alteration }) => alteration < 0),
        Math.round(Math.max(...women.map(({ outside }) => outside))),
      ];
    }),
  );
}
