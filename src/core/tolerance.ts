/**
 * Every tolerance of the core, with its unit and its reason. No other file holds one.
 */

/** mm. Two points closer than this are one point: a tenth of the promised 0.001 mm of the geometry. */
export const SAME_POINT = 1e-4;

/** mm. What the curve routines (length, split, nearest, intersection) promise. */
export const CURVE_ACCURACY = 1e-3;

/** mm. Where iterations on lengths stop: well below what paper or a printer can show. */
export const SOLVER_ACCURACY = 1e-6;

/** Curve parameter (no unit). Where iterations on a parameter stop. */
export const PARAMETER_ACCURACY = 1e-12;

/** mm. Two seams, two dart legs or a girth and its claim agree when within this: a sewn line is no finer. */
export const SEWN_AGREEMENT = 1;

/** mm. A bust difference this small is left alone (common practice, no source: half an inch). */
export const BUST_LEFT_ALONE = 12;

/** mm. A bust point that is seen this far from where the measures put it is worth measuring again: one reading of a length is no better. */
export const BUST_POINT_AGREEMENT = 10;

/** Probability. Above it a pick is called borderline. */
export const BORDERLINE = 0.25;

/** Probability. From it on a pick is nearly sure, and no further reading is asked for it; and from it on it is likely. */
export const NEARLY_SURE = 0.9;
export const LIKELY = 0.7;

/** Probability. A reading that makes the best pick surer by less than this is not worth taking: chances are told no finer. */
export const WORTH_READING = 0.05;

/** mm at one side seam, half the band that holds the line nine times in ten. A wider one is worth another reading. */
export const LINE_BAND_WIDE = 3;

/** Sizes. How far beyond the printed range a blend may be continued by the nearest grade. */
export const EXTRAPOLATION_STEPS = 2;

/** mm. Edges shorter than this cannot be cut or sewn. */
export const SHORTEST_EDGE = 2;

/** Degrees. A seam corner smaller than this sews as a smooth line. */
export const SMOOTH_CORNER_DEGREES = 5;

/** Degrees. How square the centre line must be to the neck and the waist. */
export const SQUARE_CORNER_DEGREES = 1;

/** Degrees. How straight two corners must be together where two pieces are joined. */
export const JOINED_CORNER_DEGREES = 3;

/** mm. A dart should stop this far short of the bust point at the least, and at the most. */
export const DART_STOP_LEAST = 10;
export const DART_STOP_MOST = 60;

/** mm. Radius of the bust at which fullness is stated unless the wearer gives one. */
export const FULLNESS_RADIUS = 80;

/** mm of cone height. A smaller difference in fullness is not noticed when sewn (our own choice). */
export const FULLNESS_NOTICED = 2;

/** mm. A dart narrower than this cannot be sewn. */
export const NARROWEST_DART = 3;

/** mm. A dart shorter than this cannot be pressed flat. */
export const SHORTEST_DART = 25;

/** mm. Two estimates of an arc length that agree within this are believed; a hundredth of SOLVER_ACCURACY. */
export const LENGTH_AGREEMENT = 1e-8;

/** Curve parameter (no unit). A parameter this near to 0 or 1 is the end itself: 1e-6 mm on an edge of a metre. */
export const END_PARAMETER = 1e-9;

/** Share (no unit). Shares that miss 1 by less than this are whole: a tenth of the last digit a screen shows. */
export const SHARES_WHOLE = 1e-3;

/** Share of a value (no unit). What rounding may cost in a short sum: some fifty times the spacing of doubles. */
export const ROUNDING = 1e-14;

/** mm. Pieces of two curves shorter than this that still seem to meet are compared by iteration, not cut further. */
export const SHORTEST_CUT = 1e-2;

/** mm. Two lines nearer than this are drawn as one: the width of a pencil line. */
export const SAME_LINE = 0.5;

/** mm. What rounding may do to the coordinates of a few metres that a curve routine computes with. */
export const COORDINATE_NOISE = 1e-10;

/** mm. Where truing stops correcting a length: a tenth of what the curve routines promise, and it saves half the work. */
export const TRUING_ACCURACY = 1e-4;

/** mm. Seams and legs that differ by more than this are walked again at the end: half of what a fine pencil shows. */
export const WALKED_AGREEMENT = 0.05;

/** mm or degrees. Truing that moved less than this is not told: no ruler shows it. */
export const WORTH_NOTING = 0.1;

/** mm. Cutting lines are drawn as straight stretches that leave the true curve by no more than this: less than a line is wide. */
export const CUTTING_ACCURACY = 0.05;

/** Degrees. Where a cutting line turns by more it is a corner; the steps that stand for a curve turn by less. */
export const CUTTING_CORNER_DEGREES = 12;

/** mm. A page must leave this much both ways within its margins: a test square of four inches with its words. */
export const SMALLEST_WINDOW = 130;

/** Pages. More than these nobody cuts and sticks together; a whole bodice takes some twenty to forty (our own choice). */
export const MOST_PAGES = 150;
