/** Charts unlike the demo's, for tests that must hold on any: steps that grow unevenly, and one in whole inches. */
import type { SizeChart } from "../../src/core/chart/sizeChart";

const rows = (sizes: readonly (readonly [string, number, number, number])[]): SizeChart["sizes"] =>
  sizes.map(([label, bust, waist, hip]) => ({ label, bust, waist, hip }));

/** Bust, waist and hip each step in their own way, as where a maker changes its steps in the middle of the range. */
export const unevenChart: SizeChart = {
  sizes: rows([
    ["6", 770, 580, 840],
    ["8", 800, 605, 865],
    ["10", 825, 640, 905],
    ["12", 870, 670, 930],
    ["14", 905, 725, 985],
    ["16", 960, 760, 1020],
    ["18", 1000, 830, 1090],
    ["20", 1070, 880, 1130],
    ["22", 1120, 965, 1215],
    ["24", 1200, 1030, 1270],
  ]),
  draftedDifference: 50,
  cups: [
    { label: "B", difference: 50 },
    { label: "C", difference: 75 },
    { label: "D", difference: 100 },
  ],
};

const inch = (value: number): number => value * 25.4;

/** Whole and half inches, as old charts are printed; no cup versions. */
export const inchChart: SizeChart = {
  sizes: (
    [
      ["10", 32.5, 25, 34.5],
      ["12", 34, 26.5, 36],
      ["14", 36, 28, 38],
      ["16", 38, 30, 40],
      ["18", 40, 32, 42],
      ["20", 42, 34, 44],
      ["22", 44, 37, 46],
      ["24", 46, 39, 48],
    ] as const
  ).map(([label, bust, waist, hip]) => ({ label, bust: inch(bust), waist: inch(waist), hip: inch(hip) })),
  draftedDifference: 50,
  cups: [],
};
