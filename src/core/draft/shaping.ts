/** How the difference between bust and waist is shared between the side seams and the waist darts of the block. */
import type { DraftMeasures } from "./draftMeasures";
import type { Mm } from "../units";

export interface Shaping {
  /** Half garment at bust level, and the shares of back and front in it. */
  readonly half: Mm;
  readonly backShare: Mm;
  readonly frontShare: Mm;
  /** Each side seam comes in by this much (negative: goes out) from bust to waist. */
  readonly side: Mm;
  /** Intake of each waist dart, front and back. */
  readonly dart: Mm;
  /** Finished waist of the half front and half back. */
  readonly frontWaist: Mm;
  readonly backWaist: Mm;
  /** Heights below the nape. */
  readonly underarm: Mm;
  /** Where the armholes come in furthest. */
  readonly across: Mm;
  readonly bustLine: Mm;
  readonly underBustLine: Mm;
  readonly waistLine: Mm;
  /** The front's side neck point, in the frame of both pieces. */
  readonly frontSideNeck: { readonly x: Mm; readonly y: Mm };
  readonly bustPointX: Mm;
}

/** The front is drafted wider than the back by twice this. */
const FRONT_OVER_BACK: Mm = 5;
/**
 * The front is drafted longer than the tape from the side neck over the bust to the waist by this; the back is not. A
 * textbook's front (memory) rises 24 mm over its back at bust 880; what bodies measure would make it 4 (432 mm less 410, less
 * the 18 by which the side neck lies above the nape).
 */
const FRONT_LENGTH_EASE: Mm = 18;
const USUAL_SIDE: Mm = 18;
const NARROWEST_DRAFTED_DART: Mm = 6;
/** Share of a small difference that goes to each side seam, so that a straight figure still gets a dart. */
const SMALL_SIDE_SHARE = 0.17;
/** Without a sleeve the underarm is drafted higher than the armhole depth of a textbook (common practice: 5 to 15 mm). */
const RAISED_UNDERARM: Mm = 5;
/** Where the armholes come in furthest, as a share of the depth. */
const ACROSS_HEIGHT = 0.55;
/** Share of the way from bust to waist where the under-bust line lies. */
const UNDER_BUST = 0.41;
/** The side seam's bust level lies at least this far below the underarm, so that the two stay apart. */
const UNDERARM_TO_BUST_LEAST: Mm = 10;

/** Shaping of one size. Formulas of the project's own demo draft; the shares are common practice, no source. */
export function shapingOf(m: DraftMeasures): Shaping {
  const half = (m.bust + m.ease.bust) / 2;
  const backShare = half / 2 - FRONT_OVER_BACK;
  const frontShare = half / 2 + FRONT_OVER_BACK;
  const difference = half - (m.waist + m.ease.waist) / 2;
  const side =
    difference - 2 * USUAL_SIDE >= 2 * USUAL_SIDE
      ? USUAL_SIDE
      : Math.min(difference * SMALL_SIDE_SHARE, (difference - 2 * NARROWEST_DRAFTED_DART) / 2);
  const dart = (difference - 2 * side) / 2;
  const underarm = m.scyeDepth - RAISED_UNDERARM;
  const across = ACROSS_HEIGHT * m.scyeDepth + 2.5;
  const frontSideNeck = {
    x: m.neckBaseGirth / 5 - 5,
    y: m.backWaistLength - m.frontWaistLength - FRONT_LENGTH_EASE,
  };
  const bustPointX = m.bustPointWidth / 2;
  const aside = bustPointX - frontSideNeck.x;
  const bustPointY = frontSideNeck.y + Math.sqrt(m.sideNeckToBustPoint ** 2 - aside ** 2);
  const bustLine = Math.max(bustPointY, underarm + UNDERARM_TO_BUST_LEAST);
  return {
    half,
    backShare,
    frontShare,
    side,
    dart,
    frontWaist: frontShare - side - dart,
    backWaist: backShare - side - dart,
    underarm,
    across,
    bustLine,
    underBustLine: bustLine + UNDER_BUST * (m.backWaistLength - bustLine),
    waistLine: m.backWaistLength,
    frontSideNeck,
    bustPointX,
  };
}
