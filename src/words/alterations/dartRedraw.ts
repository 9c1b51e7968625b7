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
import { capital, centreWords, dartRefWords, dartWords } from "../terms/names";
import { listWords } from "../terms/language";

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
  const isSaid = (value: Mm): boolean => amount(value) !== amount(0);
  switch (alteration.kind) {
    case "dartEnd": {
      const moves: string[] = [];
      if (isSaid(alteration.shorten)) {
        moves.push(`${alteration.shorten > 0 ? "shorten" : "lengthen"} the ${dart} by ${amount(alteration.shorten)}`);
      }
      if (isSaid(alteration.across)) {
        const what = moves.length > 0 ? "its end" : `the end of the ${dart}`;
        moves.push(`move ${what} ${amount(alteration.across)} ${acrossWords(alteration.dart, alteration.across)}`);
      }
      if (moves.length === 0) moves.push(`leave the end of the ${dart} where it is`);
      const held = alteration.hold === "mouth" ? "its mouth held" : "its fullness held";
      return capital(`${moves.join(" and ")}, ${held}`);
    }
    case "dartMouth": {
      const by = alteration.inner + alteration.outer;
      if (!isSaid(by)) {
        return isSaid(alteration.outer)
          ? `Move the mouth of the ${dart} by ${amount(alteration.outer)}`
          : `Leave the mouth of the ${dart} where it is`;
      }
      return `${by > 0 ? "Widen" : "Narrow"} the ${dart} by ${amount(by)}`;
    }
    case "dartPlace": {
      const way = alteration.how === "offCentreSeam" ? `, taken off the ${centreWords(alteration.dart.piece)}` : "";
      if (!isSaid(alteration.by)) return `Leave the whole ${dart} where it is`;
      return `Move the whole ${dart} ${amount(alteration.by)} ${acrossWords(alteration.dart, alteration.by)}${way}`;
    }
  }
}

type Given = AlterationTrace["given"][number];

/** What a dart set free and where it goes, or what it takes and where that is let out: "30 mm off the side seam at its waist end". */
function givenWords(given: Given, seam: string, context: Context): string {
  const amount = small(given.amount, context);
  const takes = given.amount > 0;
  const way = takes ? "off" : "on to";
  switch (given.place) {
    case "centreSeam":
      return `${amount} ${way} the ${centreWords(given.piece)} at the ${seam}`;
    case "sideSeam":
      return `${amount} ${way} the side seam at the ${seam}`;
    case "otherDart":
      return `${amount} ${takes ? "into" : "out of"} the ${dartRefWords({ piece: given.piece, dart: "waistDart" })}`;
    case "underarm":
      return `${amount} ${way} the side seam at its underarm end`;
    case "waistEnd":
      return `${amount} ${way} the side seam at its waist end`;
    case "armholeEnd":
    case "neckEnd":
    case "centreEnd":
      return `${amount} ${way} the ${seam} at the ${placeWords(given.place, given.piece)}`;
  }
}

/** What several redraws of one dart give at one place, summed. */
function summed(all: readonly Given[]): readonly Given[] {
  const sums: Given[] = [];
  for (const given of all) {
    const at = sums.findIndex(({ place, piece }) => place === given.place && piece === given.piece);
    const before = sums[at];
    if (before === undefined) sums.push(given);
    else sums[at] = { ...before, amount: before.amount + given.amount };
  }
  return sums;
}

function givenMoves(all: readonly Given[], seam: string, context: Context): readonly string[] {
  const given = summed(all).filter((one) => drawn(one.amount, context));
  if (given.length === 0) return [];
  const words = listWords(given.map((one) => givenWords(one, seam, context)));
  return [`Counted in the points of this sheet already: ${words}.`];
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

function redrawAmount(alteration: DartRedraw, context: Context): string | null {
  const said = (value: Mm): string | null => (drawn(value, context) ? small(value, context) : null);
  switch (alteration.kind) {
    case "dartEnd": {
      const parts: string[] = [];
      if (drawn(alteration.shorten, context)) parts.push(small(alteration.shorten, context));
      if (drawn(alteration.across, context)) parts.push(`${small(alteration.across, context)} across`);
      return parts.length === 0 ? null : parts.join(" + ");
    }
    case "dartMouth":
      return said(alteration.inner + alteration.outer) ?? said(alteration.outer);
    case "dartPlace":
      return said(alteration.by);
  }
}

/** A redraw as it was made. */
export interface RedrawMade {
  readonly alteration: DartRedraw;
  readonly trace: AlterationTrace;
}

/** What is asked for and what goes with it; where the dart then lies is told where it is drawn. */
export function redrawSaid(made: RedrawMade, context: Context): Said {
  return { ...redrawsSaid([made], context), amount: redrawAmount(made.alteration, context) };
}

/** All that is asked for of one dart, in order, and once what goes with it. */
export function redrawsSaid(all: readonly RedrawMade[], context: Context): Required<Pick<Said, "text" | "moves">> {
  const seams = [...new Set(all.map(({ alteration }) => mouthSeamWords(alteration.dart)))];
  const given = seams.flatMap((seam) =>
    givenMoves(
      all.flatMap(({ alteration, trace }) => (mouthSeamWords(alteration.dart) === seam ? trace.given : [])),
      seam,
      context,
    ),
  );
  const notes = all.flatMap(({ trace }) => trace.notes.flatMap((note) => noteMove(note, context) ?? []));
  return {
    text: [...new Set(all.map(({ alteration }) => `${redrawTitle(alteration, context.unit)}.`))].join(" "),
    moves: [...given, ...new Set(notes)],
  };
}
