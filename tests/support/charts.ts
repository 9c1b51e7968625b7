/** Charts of other kinds than the demos', made up for the tests: in inches, and with steps of every width. */
import type { SizeChart } from "../../src/core/chart/sizeChart";

const INCH = 25.4;

/** In inches, its steps growing from 1 to 2, with four cups. */
export const inchChart: SizeChart = {
  sizes: [31.5, 32.5, 33.5, 34.5, 36, 37.5, 39, 41, 43, 45, 47, 49].map((bust, index) => ({
    label: String(4 + 2 * index),
    bust: bust * INCH,
    waist: (bust - 8) * INCH,
    hip: (bust + 2) * INCH,
  })),
  draftedDifference: 2 * INCH,
  cups: [
    { label: "A", difference: INCH },
    { label: "B", difference: 2 * INCH },
    { label: "C", difference: 3 * INCH },
    { label: "D", difference: 4 * INCH },
  ],
};

/** No two steps alike, cups uneven, and none at the drafted difference. */
export const unevenChart: SizeChart = {
  sizes: [780, 815, 842, 890, 925, 985, 1020, 1080, 1115, 1190, 1260].map((bust, index) => ({
    label: String(index + 1),
    bust,
    waist: bust - 180,
    hip: bust + 60,
  })),
  draftedDifference: 40,
  cups: [
    { label: "small", difference: 35 },
    { label: "medium", difference: 60 },
    { label: "large", difference: 95 },
  ],
};
