/** An invented work for tests: an invented body and an invented pattern in ten sizes with three cup versions. */
import { tapesOf } from "../../src/core/measures/tape";
import type { SizeRow } from "../../src/core/chart/sizeChart";
import type { Work } from "../../src/core/decisions/work";

const STEP = 40;

/** Ten sizes, 8 to 26; every girth grows by 40 mm a size. */
const SIZES: readonly SizeRow[] = Array.from({ length: 10 }, (_, index) => ({
  label: String(8 + 2 * index),
  bust: 800 + STEP * index,
  waist: 620 + STEP * index,
  hip: 860 + STEP * index,
}));

export const sampleWork: Work = {
  name: "Sample bodice for an invented body",
  invented: true,
  unit: "cm",
  paper: "A4",
  tapes: tapesOf({
    bustGirth: 930,
    upperChestGirth: 860,
    underBustGirth: 790,
    waistGirth: 738,
    hipGirth: 985,
    bustPointWidth: 196,
    sideNeckToBustPoint: 270,
    backWaistLength: 412,
  }),
  pattern: {
    name: "Invented pattern 7, fitted bodice",
    chart: {
      sizes: SIZES,
      draftedDifference: 50,
      cups: [
        { label: "B", difference: 50 },
        { label: "C", difference: 75 },
        { label: "D", difference: 100 },
      ],
    },
    ease: { bust: 80, waist: 40, hip: 50 },
    length: "hip",
    closure: { place: "centreBack", belowWaist: 180 },
    style: "sideDart",
    strap: "wide",
  },
  easeWanted: {},
  picks: {},
  alterations: [
    {
      kind: "dartEnd",
      id: "end-1",
      dart: { piece: "front", dart: "waistDart" },
      shorten: 15,
      across: 0,
      hold: "fullness",
      giveBack: { sideSeam: 0.5, centreSeam: 0.5 },
    },
  ],
  unread: {},
};
