/**
 * Makes the demonstration of two trial garments and the dress begun from what they taught: `npm run story-demo`. It is invented,
 * and made by the same commands as the page gives.
 */
import { fileURLToPath } from "node:url";
import { writeFileSync } from "node:fs";
import type { Pattern } from "../../src/core/decisions/pattern";
import type { Work } from "../../src/core/decisions/work";

const NAME = "Siskin bodice (invented)";

const SIZES = [
  ["8", 800, 632, 864],
  ["10", 840, 672, 904],
  ["12", 880, 712, 944],
  ["14", 920, 752, 984],
  ["16", 960, 792, 1024],
  ["18", 1000, 832, 1064],
  ["20", 1050, 882, 1114],
  ["22", 1100, 932, 1164],
  ["24", 1160, 992, 1224],
  ["26", 1220, 1052, 1284],
] as const;

const PATTERN: Pattern = {
  name: NAME,
  chart: {
    sizes: SIZES.map(([label, bust, waist, hip]) => ({ label, bust, waist, hip })),
    draftedDifference: 50,
    cups: [
      { label: "B", difference: 50 },
      { label: "C", difference: 75 },
      { label: "D", difference: 100 },
    ],
  },
  ease: { bust: 70, waist: 30, hip: 50 },
  length: "hip",
  closure: { place: "centreBack", belowWaist: 180 },
  style: "sideDart",
  strap: "wide",
};

/** What the envelope and the tape give, before anything is sewn. */
export function firstPlan(): Work {
  return {
    name: "Siskin bodice and its two trials (invented)",
    wearer: "Invented wearer",
    invented: true,
    unit: "cm",
    paper: "A4",
    tapes: [
      {
        taken: "2026-10-31",
        readings: {
          bustGirth: [944, 946],
          upperChestGirth: [870],
          underBustGirth: [806],
          waistGirth: [782],
          hipGirth: [1030],
          height: [1664],
          bustPointWidth: [206],
          sideNeckToBustPoint: [273],
          backWaistLength: [408],
          frontWaistLength: [440],
          neckBaseGirth: [376],
          shoulderLength: [122],
          acrossBack: [352],
          acrossFront: [334],
        },
      },
    ],
    pattern: PATTERN,
    easeWanted: {},
    picks: {},
    alterations: [],
    unread: {},
  };
}
