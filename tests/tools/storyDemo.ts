/**
 * Makes the demonstration of two trial garments and the dress begun from what they taught: `npm run story-demo`. It is invented,
 * and made by the same commands as the page gives.
 */
import { fileURLToPath } from "node:url";
import { writeFileSync } from "node:fs";
import type { Pattern } from "../../src/core/decisions/pattern";
import type { Alteration } from "../../src/core/decisions/alteration";
import { TRIAL_CHECKS, type Observation } from "../../src/core/decisions/trial";
import type { Work } from "../../src/core/decisions/work";
import { applyCommand, type Command } from "../../src/core/plan/commands";
import { keepHalf } from "../../src/core/plan/halfEdit";
import { invariant } from "../../src/core/result";
import { workFromBase } from "../../src/core/standing/fromBase";
import { readTrial } from "../../src/core/trial/readTrial";
import { answerCommand } from "../../src/core/trial/takeAnswer";
import { writeWorkFile } from "../../src/document/workFile";

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

const run = (work: Work, commands: readonly Command[]): Work => commands.reduce(applyCommand, work);

/** How far the dart from the side should go is tried both ways: longer by so much on either half. */
const longer = (half: "left" | "right", by: number): Alteration => ({
  kind: "dartEnd",
  id: `dartEnd-front-sideDart-${half}`,
  dart: { piece: "front", dart: "sideDart" },
  shorten: -by,
  across: 0,
  hold: "mouth",
  giveBack: {},
  half,
});

const FIRST = "siskin-first";
const SECOND = "siskin-second";

/** Both bust points lie where they were drawn. */
function bustPoints(trial: string): readonly Observation[] {
  return (["left", "right"] as const).map((half) => ({
    id: `${trial}-bust-${half}`,
    place: "bust",
    sign: "bustPoint",
    mark: { out: 0, down: 0 },
    half,
  }));
}

/** What the first toile shows: too much length over the small of the back, and the longer dart of the right runs too far. */
const SEEN: readonly Observation[] = [
  ...bustPoints(FIRST),
  {
    id: "siskin-line-1",
    place: "backAboveWaist",
    sign: "foldAcross",
    way: "pinched",
    amount: 7,
    changed: "pinned out",
  },
  { id: "siskin-line-2", place: "backHem", sign: "drops", way: "off", amount: 14 },
  {
    id: "siskin-line-3",
    place: "dartEnd",
    sign: "dartEnds",
    dart: { piece: "front", dart: "sideDart" },
    mark: { out: 14, down: 0 },
    half: "right",
  },
  { id: "siskin-line-4", place: "dartEnd", sign: "pointed", dart: { piece: "front", dart: "sideDart" }, half: "right" },
];

const GARMENT: readonly (readonly ["cloth" | "pinnedBy" | "bra" | "shoes", string])[] = [
  ["cloth", "calico, washed"],
  ["pinnedBy", "a friend"],
  ["bra", "the one for this dress"],
  ["shoes", "heels of 4 cm"],
];

const worn = (trial: string): readonly Command[] =>
  GARMENT.map(([of, text]) => ({ kind: "setTrialText", trial, of, text }));

/** First plan, a toile with two answers to one dart, what was seen, what was taken for it, a second toile that is right. */
export function story(): Work {
  const sewn = run(firstPlan(), [
    { kind: "putAlteration", alteration: longer("left", 10) },
    { kind: "putAlteration", alteration: longer("right", 24) },
    { kind: "beginTrial", id: FIRST, day: "2026-11-07" },
    ...worn(FIRST),
    { kind: "setToileLength", trial: FIRST, length: "bustGirth", value: 1016 },
    { kind: "setToileLength", trial: FIRST, length: "waistGirth", value: 811 },
    ...SEEN.map((observation): Command => ({ kind: "putObservation", trial: FIRST, observation })),
    { kind: "setTrialCheck", trial: FIRST, check: "hemLevel", is: false },
    ...(["centresUpright", "canSit", "canReach", "canBreathe"] as const).map((check): Command => ({
      kind: "setTrialCheck",
      trial: FIRST,
      check,
      is: true,
    })),
  ]);
  const trial = invariant(sewn.trials?.[0], "first trial");
  const read = readTrial(trial);
  const answer = invariant(read.ok ? read.value.answers[0] : undefined, "answer");
  const taken = run(sewn, [answerCommand(sewn, trial, answer, null)]);
  // The left dart was right from the first: what the right one has come to gives way to it.
  const kept = keepHalf(taken, "left");
  return run(taken, [
    ...(kept.ok ? [kept.value] : []),
    { kind: "setVerdict", trial: FIRST, verdict: "again" },
    {
      kind: "setTrialText",
      trial: FIRST,
      of: "because",
      text: "The left dart is right; the back is too long above the waist.",
    },
    { kind: "beginTrial", id: SECOND, day: "2026-11-21" },
    ...worn(SECOND),
    { kind: "setToileLength", trial: SECOND, length: "bustGirth", value: 1014 },
    { kind: "setToileLength", trial: SECOND, length: "waistGirth", value: 812 },
    ...bustPoints(SECOND).map((observation): Command => ({ kind: "putObservation", trial: SECOND, observation })),
    ...TRIAL_CHECKS.map((check): Command => ({ kind: "setTrialCheck", trial: SECOND, check, is: true })),
    { kind: "setVerdict", trial: SECOND, verdict: "keep" },
    { kind: "setTrialText", trial: SECOND, of: "because", text: "Nothing pulls or stands off, standing or sitting." },
    { kind: "setBase", trial: SECOND, isBase: true },
  ]);
}

/** Another dress of the same pattern, begun from the base that was kept. */
export function secondDress(): Work {
  const work = story();
  const base = invariant(work.trials?.[0], "base");
  return workFromBase(work, base, "Siskin dress begun from its base (invented)");
}

const inDemoData = (name: string): string => fileURLToPath(new URL(`../../demo-data/${name}`, import.meta.url));

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(inDemoData("siskin.json"), writeWorkFile(story()));
  writeFileSync(inDemoData("siskin-second.json"), writeWorkFile(secondDress()));
}
