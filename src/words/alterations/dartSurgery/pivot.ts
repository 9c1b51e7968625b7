/** A dart moved to another seam, whole or in part. */
import type { DartPivotAlteration } from "../../../core/decisions/alteration";
import type { AlterationTrace } from "../../../core/alterations/outcome/trace";
import { distance } from "../../../core/geometry/point";
import { homeOf } from "../../../core/pattern/dartNames";
import {
  pointOf,
  type Dart,
  type DartHome,
  type DartName,
  type Piece,
  type PieceName,
} from "../../../core/pattern/piece";
import { centreWords, dartWords, seamWords } from "../../terms/names";
import { legsDrawnOn, pivotWords, seamOf, type Told } from "./saidOfDart";
import { SHARE_ROUNDED } from "../../../core/tolerance";
import { percentWords, plural } from "../../terms/language";

export const pivotTitle = ({ dart, share, to }: DartPivotAlteration): string =>
  `Move ${shareWords(share)} ${dartWords(dart.dart)} ${homeWords(to, dart.piece)}`;

const SHARES: readonly (readonly [number, string])[] = [
  [1, "the whole"],
  [1 / 2, "half of the"],
  [1 / 3, "a third of the"],
  [2 / 3, "two thirds of the"],
  [1 / 4, "a quarter of the"],
  [3 / 4, "three quarters of the"],
];

const shareWords = (share: number): string =>
  SHARES.find(([of]) => Math.abs(of - share) < SHARE_ROUNDED)?.[1] ?? `${percentWords(share)} of the`;

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

/** "upper leg", "leg nearer the side seam": the one that ends nearest a place. */
function legWords(
  piece: Piece,
  dart: Dart,
  at: AlterationTrace["surgery"][number]["hinges"][number] | undefined,
): string {
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

export function pivotSteps(alteration: DartPivotAlteration, told: Told): readonly string[] {
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
    `Fold ${isWhole ? `the ${words.made}` : "each dart"} shut as it will be pressed and draw the ${[...seams].join(" and the ")} smooth over it; ${plural(seams.size, { one: "the seam measures", other: "both seams measure" })} what it did before.`.replace(
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
