/** A dart redrawn, in words: what is asked for, what to do on the tissue, and where what it sets free is given back. */
import type { DartRedraw } from "../../core/decisions/alteration";
import type { AlterationNote, AlterationTrace } from "../../core/alterations/outcome/trace";
import { homeOf, liesAlongBust } from "../../core/pattern/dartNames";
import type { DartHome, DartRef } from "../../core/pattern/piece";
import type { LengthUnit } from "../../core/decisions/work";
import type { Mm } from "../../core/units";
import { placeWords } from "../terms/darts";
import { drawn, small, type Context, type Said } from "../terms/jobText";
import { formatAmount } from "../terms/length";
import { capital, centreWords, dartRefWords, dartWords, listWords } from "../terms/names";

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

/** What a dart set free and where it goes, or what it takes and where that is let out: the places told have it in them. */
function givenWords(given: Given, seam: string, context: Context): string {
  const amount = small(given.amount, context);
  const takes = given.amount > 0;
  const way = takes ? "off" : "on";
  switch (given.place) {
    case "centreSeam":
      return `${amount} ${way} at the ${centreWords(given.piece)} on the ${seam}`;
    case "sideSeam":
      return `${amount} ${way} at the side seam on the ${seam}`;
    case "otherDart":
      return `${amount} ${takes ? "into" : "out of"} the ${dartRefWords({ piece: given.piece, dart: "waistDart" })}`;
    case "underarm":
      return `${amount} ${way} at the underarm end of the side seam`;
    case "waistEnd":
      return `${amount} ${way} at the waist end of the side seam`;
    case "armholeEnd":
    case "neckEnd":
    case "centreEnd":
      return `${amount} ${way} along the ${seam}, at the ${placeWords(given.place, given.piece)}`;
  }
}

function givenMoves(all: readonly Given[], seam: string, context: Context): readonly string[] {
  const given = all.filter((one) => drawn(one.amount, context));
  if (given.length === 0) return [];
  const words = listWords(given.map((one) => givenWords(one, seam, context)));
  return [`In the places of this sheet already, so that the ${seam} fits: ${words}.`];
}

function noteMove(note: AlterationNote, context: Context): string | null {
  switch (note.code) {
    case "centreNowSeam":
      return `The ${centreWords(context.pieceName)} is no longer straight: cut it as a seam with an allowance, not on the fold.`;
    case "bustLoses":
      return drawn(note.amount, context)
        ? `This takes ${small(note.amount, context)} from the garment round the bust as well.`
        : null;
    case "armholeSmoothed":
      return "Draw the armhole smooth again.";
    // The places told have these in them; what a bust adjustment falls short by is told with it.
    case "legsTrued":
    case "bustShort":
    case "cupLengthened":
    case "centreLengthened":
      return null;
  }
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

/** What is asked for and what goes with it; where the dart then lies is told where it is drawn. */
export function redrawSaid({ given, notes }: AlterationTrace, alteration: DartRedraw, context: Context): Said {
  return {
    text: `${redrawTitle(alteration, context.unit)}.`,
    moves: [
      ...givenMoves(given, mouthSeamWords(alteration.dart), context),
      ...notes.flatMap((note) => noteMove(note, context) ?? []),
    ],
    amount: redrawAmount(alteration, context),
  };
}
