/** A dart redrawn, in words: what to do on the tissue, and where what it sets free is given back. */
import { liesAlongBust } from "../../core/pattern/dartNames";
import { isBasque } from "../../core/pattern/pieceGroups";
import type { SlipNote, SlipTrace } from "../../core/plan/plan";
import type { DartRedraw } from "../../core/plan/work";
import type { Mm } from "../../core/units";
import { placeWords } from "../darts";
import { drawn, small, type Context, type Said } from "../jobText";
import { centreWords, dartRefWords } from "../names";
import { acrossWords, alterationTitle, mouthSeamWords } from "../slips";

type Given = SlipTrace["given"][number];

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

function noteMove(note: SlipNote, context: Context): string | null {
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
export function redrawSaid({ given, notes }: SlipTrace, alteration: DartRedraw, context: Context): Said {
  const title = alterationTitle(alteration, context.unit);
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
