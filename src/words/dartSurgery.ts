/** Dart surgery in words: what is asked for, and how it is done on the tissue, with no screen at hand. */
import type { SlipTrace } from "../core/alterations/outcome/trace";
import type {
  DartGatherAlteration,
  DartLegsAlteration,
  DartPivotAlteration,
  DartSeamAlteration,
  DartSplitAlteration,
  DartSurgery,
} from "../core/decisions/alteration";
import { homeOf } from "../core/pattern/dartNames";
import type { Dart, DartHome, DartName, Piece, PieceName } from "../core/pattern/piece";
import { pointOf } from "../core/pattern/piece";
import type { LengthUnit } from "../core/decisions/work";
import { distance } from "../core/geometry/point";
import { formatAmount, formatLength } from "./length";
import { centreWords, dartWords, seamWords } from "./names";

/** "Move half of the side dart to the armhole". */
export function dartSurgeryTitle(alteration: DartSurgery, unit: LengthUnit): string {
  const dart = dartWords(alteration.dart.dart);
  switch (alteration.kind) {
    case "dartPivot":
      return `Move ${shareWords(alteration.share)} ${dart} ${homeWords(alteration.to, alteration.dart.piece)}`;
    case "dartSplit":
      return `Split the ${dart} into ${alteration.into === 2 ? "two" : "three"}`;
    case "dartGather":
      return `Gather the ${dart}`;
    case "dartLegs":
      return `Bow the legs of the ${dart} ${alteration.bow < 0 ? "out " : ""}by ${formatAmount(Math.abs(alteration.bow), unit)}`;
    case "dartSeam":
      return `Join the ${dart} and the waist dart into a seam`;
  }
}

const SHARES: readonly (readonly [number, string])[] = [
  [1, "the whole"],
  [1 / 2, "half of the"],
  [1 / 3, "a third of the"],
  [2 / 3, "two thirds of the"],
  [1 / 4, "a quarter of the"],
  [3 / 4, "three quarters of the"],
];

/** A share is kept in whole percent, so a third is 33 of them. */
const SHARE_ROUNDED = 0.005;

const shareWords = (share: number): string =>
  SHARES.find(([of]) => Math.abs(of - share) < SHARE_ROUNDED)?.[1] ?? `${Math.round(share * 100)}% of the`;

function homeWords(home: DartHome, piece: PieceName): string {
  switch (home) {
    case "side":
      return "to the side seam";
    case "french":
      return "low on the side seam, as a French dart";
    case "waist":
      return "to the waist dart";
    case "underBust":
      return "to the under-bust dart";
    case "shoulder":
      return "to the shoulder";
    case "armhole":
      return "to the armhole";
    case "neck":
      return "to the neckline";
    case "centre":
      return `to the ${centreWords(piece)}`;
  }
}

/** What to do on the tissue, move by move. */
export function dartSurgerySteps(alteration: DartSurgery, trace: SlipTrace, unit: LengthUnit): readonly string[] {
  const piece = trace.before[alteration.dart.piece];
  const dart = piece?.darts.find(({ name }) => name === alteration.dart.dart);
  // Nothing was changed: there is nothing to do.
  if (piece === undefined || dart === undefined) return [];
  const told: Told = {
    trace,
    piece,
    dart,
    amount: (name) => formatAmount(trace.values[name] ?? 0, unit),
    length: (name) => formatLength(trace.values[name] ?? 0, unit),
  };
  switch (alteration.kind) {
    case "dartPivot":
      return pivotSteps(alteration, told);
    case "dartSplit":
      return splitSteps(alteration, told);
    case "dartGather":
      return gatherSteps(alteration, told);
    case "dartLegs":
      return legSteps(alteration, told);
    case "dartSeam":
      return seamSteps(alteration, told);
  }
}

interface Told {
  readonly trace: SlipTrace;
  /** The piece and the dart before. */
  readonly piece: Piece;
  readonly dart: Dart;
  /** A value of the trace as it is marked on paper, and as it is measured along a seam. */
  readonly amount: (name: string) => string;
  readonly length: (name: string) => string;
}

const seamOf = ({ dart, piece }: Told): string => seamWords(dart.seam, piece.name);

/** What the dart is turned about. */
const pivotWords = ({ aimsAt, name }: Dart): string =>
  aimsAt === null ? `the end of the ${dartWords(name)}` : "the bust point";

const legsDrawnOn = ({ dart }: Told, ...names: readonly DartName[]): string[] =>
  dart.aimsAt === null
    ? []
    : names.map(
        (name) =>
          `Draw both legs of the ${dartWords(name)} on to the bust point. If one is longer than the other, move each mouth end along its leg by half the difference.`,
      );

/** "upper leg", "leg nearer the side seam": the one that ends nearest a place. */
function legWords(piece: Piece, dart: Dart, at: SlipTrace["surgery"][number]["hinges"][number] | undefined): string {
  const isInner =
    at === undefined || distance(pointOf(piece, dart.inner), at) <= distance(pointOf(piece, dart.outer), at);
  switch (homeOf(dart.name)) {
    case "side":
    case "french":
    case "armhole":
    case "centre":
      return isInner ? "upper leg" : "lower leg";
    case "shoulder":
      return isInner ? "leg nearer the neck" : "leg nearer the armhole";
    case "neck":
      return isInner ? `leg nearer the ${centreWords(piece.name)}` : "leg nearer the shoulder";
    case "waist":
    case "underBust":
      return isInner ? `leg nearer the ${centreWords(piece.name)}` : "leg nearer the side seam";
  }
}

/** Where a new dart is marked, measured along the sewn seam from the end that is nearer at hand. */
function placeOnSeam(home: DartHome, { piece, length }: Told): string {
  switch (home) {
    case "side":
      return `Mark the new place on the side seam, ${length("fromStart")} down from the underarm`;
    case "french":
      return `Mark the new place on the side seam, ${length("fromEnd")} up from its lower end`;
    case "waist":
      return `Mark the new place on the waist seam, ${length("fromEnd")} from the ${centreWords(piece.name)}`;
    case "underBust":
      return `Mark the new place on the under-bust seam, ${length("fromEnd")} from the ${centreWords(piece.name)}`;
    case "shoulder":
      return `Mark the new place on the shoulder seam, ${length("fromStart")} from the neck`;
    case "armhole":
      return `Mark the new place on the armhole, ${length("fromEnd")} from the underarm`;
    case "neck":
      return `Mark the new place on the neck edge, ${length("fromStart")} from the ${centreWords(piece.name)}`;
    case "centre":
      return `Mark the new place on the ${centreWords(piece.name)} line, ${length("fromEnd")} down from the neck`;
  }
}

/** The dart of a set that the moved one has gone into, and whether it is a new one. */
function openedDart(
  { to, dart: ref }: DartPivotAlteration,
  { trace, piece, dart }: Told,
): { readonly name: DartName; readonly old: Dart | undefined } {
  const after = trace.after[ref.piece];
  const added = after?.darts.find(({ name }) => !piece.darts.some((d) => d.name === name));
  const old = piece.darts.find((d) => d !== dart && homeOf(d.name) === to && d.aimsAt === dart.aimsAt);
  return { name: added?.name ?? old?.name ?? dart.name, old: added === undefined ? old : undefined };
}

function pivotSteps(alteration: DartPivotAlteration, told: Told): readonly string[] {
  const { dart, piece, trace, amount } = told;
  const opened = openedDart(alteration, told);
  const about = pivotWords(dart);
  const [cut, closing] = trace.surgery[0]?.cuts ?? [];
  const words = { old: dartWords(dart.name), made: dartWords(opened.name) };
  const isWhole = !(trace.after[piece.name]?.darts.some(({ name }) => name === dart.name) ?? false);
  const cutAcross =
    opened.old === undefined
      ? [
          `${placeOnSeam(alteration.to, told)}. Draw a line from there to ${about}.`,
          `Cut along that line to within a hair of ${about}.`,
        ]
      : [`Cut the ${legWords(piece, opened.old, cut?.[0])} of the ${words.made} to within a hair of ${about}.`];
  const seams = new Set([
    seamWords(dart.seam, piece.name),
    seamWords(opened.old?.seam ?? seamAfter(told, opened.name), piece.name),
  ]);
  return [
    ...legsDrawnOn(told, dart.name, ...(opened.old === undefined ? [] : [opened.name])),
    ...cutAcross,
    `Cut the ${legWords(piece, dart, closing?.[0])} of the ${words.old} to within a hair of ${about} likewise, so that the part between the two cuts hangs on there.`,
    isWhole
      ? `Close the ${words.old}: swing that part about ${about} until the cut leg lies on the other. Tape it down.`
      : `Close ${amount("closed")} of the ${words.old} at its mouth, so that ${amount("left")} are left: swing that part about ${about}. Tape it down.`,
    opened.old === undefined
      ? `The first cut has opened to the ${words.made}, ${amount("opened")} wide. Put paper behind it.`
      : `The ${words.made} has become ${amount("opened")} wider. Put paper behind it.`,
    ...((trace.values.stop ?? 0) <= 0
      ? []
      : [
          `End the ${words.made} ${amount("stop")} short of ${about}, in the middle between its edges, and draw its legs from there to its mouth ends.`,
        ]),
    ...(isWhole || dart.aimsAt === null
      ? []
      : [`End the ${words.old} as far short of the bust point as before, in the middle of what is left of it.`]),
    ...(isWhole ? [`Draw the ${seamOf(told)} smooth where the ${words.old} has gone.`] : []),
    `Fold ${isWhole ? `the ${words.made}` : "each dart"} shut as it will be pressed and draw the ${[...seams].join(" and the ")} smooth over it; ${seams.size > 1 ? "both seams measure" : "the seam measures"} what it did before.`.replace(
      "both seams measure what it did",
      "both seams measure what they did",
    ),
    ...(alteration.to === "centre"
      ? [`The ${centreWords(piece.name)} is now a seam: cut it with an allowance, not on the fold.`]
      : []),
  ];
}

function seamAfter({ trace, piece }: Told, name: DartName): Dart["seam"] {
  return trace.after[piece.name]?.darts.find((dart) => dart.name === name)?.seam ?? "side";
}

function splitSteps({ into }: DartSplitAlteration, told: Told): readonly string[] {
  const { dart, amount } = told;
  const [about, words, seam] = [pivotWords(dart), dartWords(dart.name), seamOf(told)];
  return [
    ...legsDrawnOn(told, dart.name),
    `On the ${seam}, mark ${amount("aside")} to each side of the mouth of the ${words}. Draw a line from each mark to ${about}.`,
    `Cut along both lines and along both legs of the ${words}, each to within a hair of ${about}, so that a strip hangs there on each side.`,
    into === 2
      ? `Swing the two strips towards each other, each as far as the other, until the ${words} is shut. Tape them down.`
      : `Swing the two strips towards each other, each as far as the other, until a third of the mouth of the ${words} is left. Tape them down.`,
    `There are now ${into === 2 ? "two" : "three"} darts, each about ${amount("each")} wide, with ${amount("strip")} of seam between ${into === 2 ? "them" : "one and the next"}. Put paper behind the cuts.`,
    `End each ${amount("stop")} short of ${about}, in the middle between its edges, and draw its legs from there to its mouth ends.`,
    `Fold all of them shut as they will be pressed and draw the ${seam} smooth over them; it measures what it did before.`,
  ];
}

function gatherSteps(_alteration: DartGatherAlteration, told: Told): readonly string[] {
  const { dart, amount } = told;
  const [words, seam] = [dartWords(dart.name), seamOf(told)];
  return [
    `Leave out the legs and the end of the ${words}. Draw the ${seam} smooth over its open mouth, ${amount("mouth")} wide.`,
    "Mark where the gathers begin and end: 30 mm outside each end of the mouth (common practice, no source), so that they spread softly.",
    `Sew two gathering rows between the marks and draw them up by ${amount("mouth")}: the ${seam} then measures what it did before.`,
  ];
}

function legSteps({ bow }: DartLegsAlteration, told: Told): readonly string[] {
  const words = dartWords(told.dart.name);
  return [
    `Mark the middle of each leg of the ${words}. Square to the leg, set off ${told.amount("bow")} ${bow > 0 ? "into" : "out of"} the dart.`,
    "Draw each leg as one smooth curve from the mouth through that mark to the end of the dart, without an S in it.",
    "Trace one leg through onto the other, so that both are alike and sew together.",
  ];
}

function seamSteps(_alteration: DartSeamAlteration, told: Told): readonly string[] {
  const words = dartWords(told.dart.name);
  return [
    ...legsDrawnOn(told, told.dart.name, "waistDart"),
    `Cut the front in two along the legs, from the ${seamOf(told)} over the bust point to the waist: it becomes a centre front and a side front. What lies between the legs falls away.`,
    `On both pieces, draw the edge smooth over the bust point and straight into the ${seamOf(told)} and the waist.`,
    `Walk the two edges on each other, from the bust point up and from the bust point down. Lengthen the centre front at the bust line until they match, by ${told.amount("drop")} in all.`,
    `Notch both edges at the bust point, and mark which end was the ${words}. Both edges are seams now: give them an allowance.`,
  ];
}
