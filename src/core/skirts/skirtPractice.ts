/** Numbers of the trade that skirts are drafted by. All of them common practice, no source. mm, and degrees where it says so. */
import type { Mm } from "../units";

/** A skirt's hip ease where nothing is said: to sit and to walk. */
export const USUAL_HIP_EASE: Mm = 50;

/** mm of each quarter's suppression: as much as the side seam takes before there is a dart. */
export const SIDE_TAKES: Mm = 22;
/** mm. A dart of less is not worth sewing: the side takes it too. */
export const DART_LEAST: Mm = 8;
/** mm. A dart wider than this makes a point: then there is one more of them, up to three. */
export const DART_MOST: Mm = 30;
export const DARTS_MOST = 3;
/** mm. What a seam between two panels may take in, both its edges together. */
export const PANEL_TAKES_MOST: Mm = 60;

/** From the waist to a dart's end: shorter in front, where the body is fullest higher up. */
export const DART_LENGTH = { front: 90, back: 130 } as const;
/** mm. A dart ends at least so far above the hip line. */
export const DART_ABOVE_HIP: Mm = 20;
/** mm. Where the waist is lowered at the centre for a level hem, the hip line stays at least so far below it (our own choice). */
export const HIP_BELOW_WAIST: Mm = 60;
/** mm. Below this a pleat is folded no deeper, and hangs free. */
export const PLEAT_LENGTH: Mm = 60;
/** mm. A pleat may take in twice what a dart may. */
export const PLEAT_MOST: Mm = 60;

/** Share of the finished quarter where darts stand that have no dart of the bodice to run on from, from the centre. */
export const DART_SHARES: readonly (readonly number[])[] = [[], [0.42], [0.36, 0.66], [0.3, 0.53, 0.76]];
/** Share of the quarter within which a dart may stand that runs on from the bodice. */
export const DART_PLACED = { least: 0.2, most: 0.75 } as const;
/** Share of the quarter where a seam between two panels starts. */
export const PANEL_SHARE = 0.45;

/** Degrees. How far the sides of an A-line lean out. */
export const USUAL_FLARE = 7;
/** Degrees. Beyond it the cloth below the hip hangs in folds at the side alone: a circle does that better. */
export const FLARE_MOST = 20;
/** Of the flare of a side, what each edge of a seam between two panels leans. */
export const PANEL_FLARE_SHARE = 0.5;

/** mm, all round. The hem of a skirt without a vent is at least so much more than the hip, to step. */
export const STEP_OVER_HIP: Mm = 100;
/** mm above the hem. */
export const USUAL_VENT: Mm = 200;
/** mm. How far the vent's underlap is cut out beyond the centre back. */
export const VENT_WIDTH: Mm = 50;
/** mm. How far the upper edge of the underlap runs down on its way out. */
export const VENT_SLANT: Mm = 20;
/** mm. A vent is at least so high. */
export const VENT_LEAST: Mm = 60;
/** mm. A vent ends at least so far below the hip and the opening. */
export const VENT_BELOW: Mm = 40;

/** From waist to knee, of the height; and where that is not known, a knee-length skirt all the same. */
export const TO_KNEE_OF_HEIGHT = 0.34;
/** From waist to knee, of the way from the waist to the floor. */
export const TO_KNEE_OF_FLOOR = 0.55;
export const USUAL_LENGTH: Mm = 580;
/** mm. A length that nobody measured is told no finer. */
export const USUAL_ROUNDED: Mm = 5;
export const LENGTH_RANGE = { least: 200, most: 1400 } as const;
/** mm. A fitted skirt reaches at least so far below the hip line. */
export const BELOW_HIP_LEAST: Mm = 60;
export const USUAL_PEPLUM_LENGTH: Mm = 160;
export const PEPLUM_RANGE = { least: 40, most: 400 } as const;

export const USUAL_RATIO = 1.5;
export const RATIO_RANGE = { least: 1, most: 4 } as const;
/** Ratios and shares are told to so many parts of one. */
export const RATIO_TOLD = 100;
/** mm. Widths of cloth that would do are told no finer. */
export const WIDTH_ROUNDED: Mm = 10;
export const USUAL_TIERS = 2;
/** mm. No width of cloth is cut narrower for a gathered skirt. */
export const PANEL_LEAST: Mm = 100;
/** mm. A tier is at least so deep. */
export const TIER_LEAST: Mm = 40;
/** Each tier deeper than the one above by a quarter. */
export const TIER_GROWS = 1.25;

export const USUAL_SHARE = 1;
export const USUAL_PEPLUM_SHARE = 0.5;
export const SHARE_RANGE = { least: 0.25, most: 2 } as const;

/** From this share on so much of the hem lies on the bias that it drops: it hangs a day before it is levelled. */
export const HANGS_FROM_SHARE = 0.5;

/** mm at each edge of the cloth, where nothing is cut. */
export const SELVAGE: Mm = 10;
