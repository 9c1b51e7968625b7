/** A dart redrawn, in words: what is asked for, what to do on the tissue, and where what it sets free is given back. */
import type { DartRedraw } from "../../core/decisions/alteration";
import type { AlterationNote, AlterationTrace } from "../../core/alterations/outcome/trace";
import { homeOf, liesAlongBust } from "../../core/pattern/dartNames";
import { isBasque } from "../../core/pattern/pieceGroups";
import type { DartHome, DartRef } from "../../core/pattern/piece";
import type { LengthUnit } from "../../core/decisions/work";
import type { Mm } from "../../core/units";
import { placeWords } from "../terms/darts";
import { drawn, small, type Context, type Said } from "../terms/jobText";
import { formatAmount } from "../terms/length";
import { capital, centreWords, dartRefWords, dartWords } from "../terms/names";

const SEAM_OF_HOME: Readonly<Record<DartHome, string>> = {
  waist: "waist seam",
  underBust: "under-bust seam",
  side: "side seam",
  french: "side seam",
  shoulder: "shoulder seam",
  armhole: "armhole",
  neck: "neck edge",
  centre: "centre front",
};

/** The seam a dart opens on: where its end moves towards when it is shortened. */
export const mouthSeamWords = (dart: DartRef): string => SEAM_OF_HOME[homeOf(dart.dart)];

/** Across a dart: towards the centre for darts that stand upright, up or down for those that lie along the bust line. */
export function acrossWords(dart: DartRef, across: Mm): string {
  if (liesAlongBust(dart.dart)) return across > 0 ? "up" : "down";
  return across > 0 ? `towards the ${centreWords(dart.piece)}` : "towards the side seam";
}

/** "Shorten the waist dart by 15 mm, its mouth held". */
export function redrawTitle(alteration: DartRedraw, unit: LengthUnit): string {
  const dart = dartWords(alteration.dart.dart);
  const amount = (value: Mm): string => formatAmount(Math.abs(value), unit);
  switch (alteration.kind) {
    case "dartEnd": {
      const moves: string[] = [];
      if (alteration.shorten !== 0) {
        moves.push(`${alteration.shorten > 0 ? "shorten" : "lengthen"} the ${dart} by ${amount(alteration.shorten)}`);
      }
      if (alteration.across !== 0) {
        const what = moves.length > 0 ? "its end" : `the end of the ${dart}`;
        moves.push(`move ${what} ${amount(alteration.across)} ${acrossWords(alteration.dart, alteration.across)}`);
      }
      if (moves.length === 0) moves.push(`leave the end of the ${dart} where it is`);
      const held = alteration.hold === "mouth" ? "its mouth held" : "its fullness held";
      return capital(`${moves.join(" and ")}, ${held}`);
    }
    case "dartMouth": {
      const by = alteration.inner + alteration.outer;
      if (by === 0) return capital(`move the mouth of the ${dart} by ${amount(alteration.outer)}`);
      return `${by > 0 ? "Widen" : "Narrow"} the ${dart} by ${amount(by)}`;
    }
    case "dartPlace": {
      const way = alteration.how === "offCentreSeam" ? `, taken off the ${centreWords(alteration.dart.piece)}` : "";
      return `Move the whole ${dart} ${amount(alteration.by)} ${acrossWords(alteration.dart, alteration.by)}${way}`;
    }
  }
}

type Given = AlterationTrace["given"][number];

/** What a dart set free and where it goes, or what it takes and where that is let out. */
function givenMove(given: Given, seam: string, context: Context): string {
  const amount = small(given.amount, context);
  const takes = given.amount > 0;
  const bodice = !isBasque(given.piece);
  switch (given.place) {
    case "centreSeam":
      return `${takes ? "Take" : "Add"} ${amount} ${takes ? "off" : "on"} at the ${centreWords(given.piece)} on the ${seam}, running out to nothing at the ${bodice ? "bust" : "hip"} line.`;
    case "sideSeam":
      return `${takes ? "Take" : "Add"} ${amount} ${takes ? "off" : "on"} at the side seam on the ${seam}, running out smoothly.`;
    case "otherDart":
      return `${takes ? "Widen" : "Narrow"} the ${dartRefWords({ piece: given.piece, dart: "waistDart" })} by ${amount}, half at each end of its mouth.`;
    case "underarm":
      return `${takes ? "Lower" : "Raise"} the underarm end of the side seam by ${amount}.`;
    case "waistEnd":
      return `${takes ? "Raise" : "Lower"} the waist end of the side seam by ${amount}.`;
    case "armholeEnd":
    case "neckEnd":
    case "centreEnd":
      return `${takes ? "Take" : "Add"} ${amount} ${takes ? "off" : "on"} along the ${seam}, at the ${placeWords(given.place, given.piece)}; the seam that it meets there keeps its length.`;
  }
}

function noteMove(note: AlterationNote, context: Context): string | null {
  switch (note.code) {
    case "centreNowSeam":
      return `The ${centreWords(context.pieceName)} is no longer straight: cut it as a seam with an allowance, not on the fold.`;
    case "bustLoses":
      return drawn(note.amount, context)
        ? `This takes ${small(note.amount, context)} from the garment round the bust as well.`
        : null;
    case "legsTrued":
      return drawn(note.amount, context)
        ? `True the legs: each moves ${small(note.amount, context)} along itself.`
        : null;
    case "armholeSmoothed":
      return "Draw the armhole smooth again.";
    // A bust adjustment's own.
    case "bustShort":
    case "cupLengthened":
      return null;
    case "centreLengthened":
      return drawn(note.amount, context)
        ? `The centre part is ${small(note.amount, context)} ${note.amount > 0 ? "longer" : "shorter"} after it.`
        : null;
  }
}

function heldMove(alteration: DartRedraw): string[] {
  if (alteration.kind !== "dartEnd") return [];
  const shorter = alteration.shorten > 0;
  if (alteration.hold === "mouth") {
    const fuller =
      alteration.shorten === 0
        ? ""
        : shorter
          ? " The dart stands wider open, so it makes more room."
          : " The dart closes up, so it makes less room.";
    return [`Leave the mouth as it is and draw both legs anew to the end.${fuller}`];
  }
  return [
    `Keep the angle between the legs, so that the room stays the same: the mouth becomes ${shorter ? "narrower" : "wider"}.`,
  ];
}

function mouthMoves(alteration: DartRedraw, context: Context): string[] {
  if (alteration.kind !== "dartMouth") return [];
  const [first, second] = liesAlongBust(alteration.dart.dart)
    ? (["upper", "lower"] as const)
    : (["inner", "outer"] as const);
  const move = (end: string, by: Mm): string[] =>
    drawn(by, context)
      ? [
          `Move the ${end} end of the mouth ${small(by, context)} ${by > 0 ? "away from" : "towards"} the dart's middle.`,
        ]
      : [];
  return [...move(first, alteration.inner), ...move(second, alteration.outer)];
}

function redrawAmount(alteration: DartRedraw, context: Context): string {
  switch (alteration.kind) {
    case "dartEnd": {
      const parts: string[] = [];
      if (drawn(alteration.shorten, context)) parts.push(small(alteration.shorten, context));
      if (drawn(alteration.across, context)) parts.push(`${small(alteration.across, context)} across`);
      return parts.length === 0 ? small(0, context) : parts.join(" + ");
    }
    case "dartMouth":
      return small(alteration.inner + alteration.outer, context);
    case "dartPlace":
      return small(alteration.by, context);
  }
}

/** The whole job. */
export function redrawSaid({ given, notes }: AlterationTrace, alteration: DartRedraw, context: Context): Said {
  const title = redrawTitle(alteration, context.unit);
  const towards =
    alteration.kind === "dartEnd" && drawn(alteration.shorten, context)
      ? [
          `Along its middle line, mark the new end ${small(alteration.shorten, context)} ${alteration.shorten > 0 ? "nearer to" : "further from"} the ${mouthSeamWords(alteration.dart)}${drawn(alteration.across, context) ? `, and from there ${small(alteration.across, context)} ${acrossWords(alteration.dart, alteration.across)}` : ""}.`,
        ]
      : [];
  return {
    text: `${title}.`,
    moves: [
      ...towards,
      ...heldMove(alteration),
      ...mouthMoves(alteration, context),
      ...given
        .filter((one) => drawn(one.amount, context))
        .map((one) => givenMove(one, mouthSeamWords(alteration.dart), context)),
      ...notes.flatMap((note) => noteMove(note, context) ?? []),
    ],
    amount: redrawAmount(alteration, context),
  };
}
