/** Works that try the printed sheet: both papers, both units, nothing to do, a great deal to do, names too long. */
import type { Alteration } from "../../src/core/decisions/alteration";
import { measuresOf, tapesOf } from "../../src/core/measures/tape";
import type { Work } from "../../src/core/decisions/work";
import type { DartRef } from "../../src/core/pattern/piece";
import { sampleWork } from "../support/sampleWork";

const DARTS: readonly DartRef[] = [
  { piece: "front", dart: "waistDart" },
  { piece: "front", dart: "sideDart" },
  { piece: "back", dart: "waistDart" },
  { piece: "frontBasque", dart: "waistDart" },
  { piece: "backBasque", dart: "waistDart" },
];

/** All kinds of alteration on every dart. */
const MANY: readonly Alteration[] = DARTS.flatMap((dart, index): Alteration[] => {
  const giveBack = dart.dart === "sideDart" ? { waistEnd: 1 } : { sideSeam: 1 };
  return [
    { kind: "dartPlace", id: `place-${index}`, dart, by: 6, how: "redraw", giveBack },
    { kind: "dartEnd", id: `end-${index}`, dart, shorten: 12, across: 4, hold: "mouth", giveBack },
    { kind: "dartMouth", id: `mouth-${index}`, dart, inner: 2, outer: 3, giveBack },
  ];
});

const fuller: Work = {
  ...sampleWork,
  name: "Fuller bust",
  tapes: tapesOf({ ...measuresOf(sampleWork.tapes), bustGirth: 975 }),
  pattern: { ...sampleWork.pattern, chart: { ...sampleWork.pattern.chart, cups: [] } },
};

export const printCases = {
  sample: sampleWork,
  letter: { ...sampleWork, paper: "Letter", unit: "in" },
  fuller,
  smaller: {
    ...fuller,
    name: "Smaller bust",
    unit: "in",
    tapes: tapesOf({ ...measuresOf(sampleWork.tapes), bustGirth: 895 }),
    alterations: [],
  },
  plain: {
    ...sampleWork,
    name: "Nothing to alter",
    invented: false,
    tapes: tapesOf({ bustGirth: 920, upperChestGirth: 870, waistGirth: 740, hipGirth: 980 }),
    pattern: { ...sampleWork.pattern, length: "waist" },
    alterations: [],
  },
  halves: {
    ...sampleWork,
    name: "Halves that differ",
    alterations: [
      { kind: "fit", id: "shoulder", fit: "shoulderSlope", amount: 8, half: "right" },
      { kind: "fit", id: "waist", fit: "sideSeamWaist", amount: 6, half: "left" },
    ],
  },
  many: { ...fuller, name: "A great deal to alter", alterations: MANY },
  failing: {
    ...fuller,
    name: "A bodice whose maker gave it a very long name indeed, for the wedding of a cousin in the second week of a wet September, third trial",
    unit: "in",
    paper: "Letter",
    pattern: {
      ...sampleWork.pattern,
      name: "Invented pattern with a name that goes on and on until it no longer fits on one line of any paper",
      closure: { place: "side", belowWaist: 0 },
    },
    alterations: [
      {
        kind: "dartEnd",
        id: "past",
        dart: { piece: "front", dart: "waistDart" },
        shorten: -70,
        across: 0,
        hold: "mouth",
        giveBack: {},
      },
      {
        kind: "dartMouth",
        id: "gone",
        dart: { piece: "back", dart: "waistDart" },
        inner: -30,
        outer: -30,
        giveBack: { sideSeam: 1 },
      },
    ],
  },
} satisfies Readonly<Record<string, Work>>;
