/**
 * Every tolerance of the program, with its unit and its reason: how near two things must be to count as one, and what is too
 * little to be made, marked or told. No other file holds one, and each has one name.
 */

// Points and curves.

/** mm. Two points closer than this are one point: a tenth of the promised 0.001 mm of the geometry. */
export const SAME_POINT = 1e-4;

/** mm. What the curve routines (length, split, nearest, intersection) promise. */
export const CURVE_ACCURACY = 1e-3;

/** mm. Two estimates of an arc length that agree within this are believed; a hundredth of SOLVER_ACCURACY. */
export const LENGTH_AGREEMENT = 1e-8;

/** mm. Pieces of two curves shorter than this that still seem to meet are compared by iteration, not cut further. */
export const SHORTEST_CUT = 1e-2;

/** mm. What rounding may do to the coordinates of a few metres that a curve routine computes with. */
export const COORDINATE_NOISE = 1e-10;

/** Curve parameter (no unit). A parameter this near to 0 or 1 is the end itself: 1e-6 mm on an edge of a metre. */
export const END_PARAMETER = 1e-9;

/** Curve parameter (no unit). Where iterations on a parameter stop. */
export const PARAMETER_ACCURACY = 1e-12;

/** Sine of an angle (no unit). Lines that turn by less run along each other and have no place where they meet. */
export const LINES_PARALLEL = 1e-9;

// Computing.

/** mm. Where iterations on lengths stop: well below what paper or a printer can show. */
export const SOLVER_ACCURACY = 1e-6;

/** Rounds. How often a correction that makes things worse is halved: to a 256th; what still swings then has no answer near by. */
export const NEARER_MOST_SHARINGS = 8;

/** Rounds. Halvings of a length: from ten metres they reach far below SOLVER_ACCURACY. */
export const NEARER_MOST_HALVINGS = 60;

/** Share of a value (no unit). What rounding may cost in a short sum: some fifty times the spacing of doubles. */
export const ROUNDING = 1e-14;

/** Share (no unit). Shares that miss 1 by less than this are whole: a tenth of the last digit a screen shows. */
export const SHARES_WHOLE = 1e-3;

/** Determinant of mm per mm (no unit). Two seams whose lengths answer so alike to a moved corner run along each other. */
export const SEAMS_PARALLEL = 0.01;

// What is sewn together.

/** mm. Two seams, two dart legs or the two sides of a strap agree when within this: what walking leaves, half of what a fine pencil shows. */
export const SEWN_AGREEMENT = 0.05;

/** mm. The centre seams of two halves that are not alike agree when within this: over so long a seam it is eased in unseen. */
export const HALVES_AGREE = 0.5;

/** mm. Centres that are set apart by no more, by the way, are drawn to one length; more would be an alteration of its own (our own choice). */
export const HALVES_TRUED = 6;

/** mm. A hem is level when it is as far from the floor all round to within this: no chalk and no eye is finer. */
export const HEM_LEVEL = 2;

/** mm. A girth agrees with its claim when within this: nothing but what truing leaves stands between them, and no pencil shows it. */
export const GIRTH_AGREEMENT = 0.05;

/** mm. What is measured by hand on paper or tissue agrees when within this: a ruler and a sewn line are no finer. */
export const HAND_AGREEMENT = 1;

/** mm. Two lines nearer than this are drawn as one: the width of a pencil line. */
export const SAME_LINE = 0.5;

/** mm. Edges shorter than this cannot be cut or sewn. */
export const SHORTEST_EDGE = 2;

/** Degrees. A seam corner smaller than this sews as a smooth line. */
export const SMOOTH_CORNER_DEGREES = 5;

/** Radians. A line of several cubics that turns by less at a bend runs smooth there: half a degree, which nobody draws. */
export const SMOOTH_BEND = 0.009;

/** Share (no unit). Of a handle, over which it is seen where a line goes on to: so little that what bends the line does not show in it. */
export const HANDLE_STEP = 1e-4;

/** Degrees. Corners that differ by less were drawn alike: numbers read and worked out differ by rounding. */
export const DRAWN_ALIKE_DEGREES = 0.01;

/** Degrees. How square the centre line must be to the neck and the waist. */
export const SQUARE_CORNER_DEGREES = 1;

/** Degrees. How straight two corners must be together where two pieces are joined. */
export const JOINED_CORNER_DEGREES = 3;

/** mm. No point of a bodice lies further from where its centre line begins: what does was drawn by mistake. */
export const FURTHEST_POINT = 3000;

// Measured on the tissue.

/** mm. What a length taken by tape on tissue is good to: a printed line is half a millimetre wide, folds and the tape's end shift it (our own choice). */
export const TISSUE_TAPE = 2;

/** mm. An answer is met by the pieces when within this: no pencil shows it. */
export const TISSUE_MET = 0.05;

/** mm. Where bringing pieces to answers stops: a fiftieth of what they are held to. */
export const TISSUE_SOLVED = 1e-3;

/** mm. An answer that the others, taken exactly, leave less room than this says no more than they do: one and a half times what a tape is good to. */
export const TISSUE_ROOM = 3;

/** Share of a spread (no unit). An answer further than this from what the others leave it contradicts them: of a few dozen right ones hardly any does (our own choice). */
export const TISSUE_CONTRADICTS = 3.7;

/** mm, one standard deviation. Others say what an answer ought to be where they do so to within this, one and a half times a tape's doubt (our own choice). */
export const TISSUE_FORETOLD = 3;

/** mm, squared. Such a doubt of what is taken exactly lets it be factored: a hundredth of a millimetre, which no pencil shows. */
export const TISSUE_NEARLY_EXACT = 1e-4;

/** Share of a square (no unit). What rounding leaves of a row that says nothing beside those before it: a millionth of a millionth is its own error, and a thousand times that is safe. */
export const TISSUE_RIDGE = 1e-9;

/** Share of the side seam (no unit). A dart to the bust that opens lower than this is no side dart (our own choice). */
export const TISSUE_LOW_DART = 0.55;

/** Share (no unit). Two answers that bear on each other by more are named together where one of them is not met (our own choice). */
export const TISSUE_BEARS_ON = 0.25;

/** Share of a spread (no unit). A row of which less is left beside those before it says nothing new: what differences are good to. */
export const TISSUE_NOTHING_NEW = 1e-3;

/** mm. How far the seam eases of patterns lie from ours, one standard deviation (our own choice). */
export const SEAM_EASE_DOUBT = 3;

/** mm. And the least width between the armholes: where the armhole comes nearest lies elsewhere on other drafts (our own choice). */
export const TISSUE_ACROSS = 5;

/** mm. What a finished girth that the chart prints is good to: it is rounded (our own choice). */
export const PRINTED_GIRTH_DOUBT = 1.5;

/** mm. A length that an answer brought no further from the stand-in's than this is called the same: no tape shows it. */
export const TISSUE_SAME = 0.5;

// Seams drawn anew.

/** mm. Where truing stops correcting a length: a tenth of what the curve routines promise, and it saves half the work. */
export const TRUING_ACCURACY = 1e-4;

/** mm. Seams and legs that differ by more than this are walked again at the end: half of what a fine pencil shows. */
export const WALKED_AGREEMENT = 0.05;

/** mm. Truing moves a corner by a few millimetres; what it would have to move further was not drawn to be sewn together (our own choice). */
export const TRUED_AT_MOST = 60;

/** Rounds. Of alterations that cannot be trued, so many are sought out one by one; then all that follow are left out (our own choice). */
export const UNTRUED_SOUGHT = 3;

/** mm or degrees. Truing that moved less than this is not told: no ruler shows it. */
export const WORTH_NOTING = 0.1;

/** mm. Two halves of a seam whose controls lie this near to one straight line are joined by a straight line: no line is drawn as fine. */
export const STRAIGHT_SEAM = 0.02;

/** mm. A single curve may pass the corner that it replaces this far off: no line is drawn as fine. */
export const ONE_CURVE = 0.02;

/** mm. A dart that is to open this near to where another was joined up opens just there: a stretch of seam so short is not worth a curve (our own choice). */
export const AT_SEAM_CORNER = 6;

/** mm. Girths along a bust line led one way or another that differ by less are one: no tape shows it. */
export const SAME_GIRTH = 0.01;

/** mm. A facing's lower line may be off its depth by this: nobody draws or cuts it finer. */
export const FACING_FOLLOWS = 0.5;

/** mm. A facing's lower line is drawn through points no nearer to each other: nearer ones would only make it waver. */
export const FACING_POINTS_APART = 25;

// Darts and fullness.

/** mm. A dart should stop this far short of the bust point, along its axis, at the least: nearer to it, it stands off as a point. */
export const DART_STOP_LEAST = 10;

/** mm. A dart should stop this far short of the bust point, along its axis, at the most: further off, its fullness falls beside the bust. */
export const DART_STOP_MOST = 60;

/**
 * mm. A dart's axis that passes the bust point by no more points at it (common practice, no source): one reading of where
 * the bust point lies is no better.
 */
export const DART_ASIDE_USUAL = 10;

/** mm. A dart's axis should pass the bust point by no more than this, about an inch: its room falls beside the bust (our own choice). */
export const DART_ASIDE_MOST = 25;

/** mm. A dart narrower than this cannot be sewn. */
export const NARROWEST_DART = 3;

/** mm. A dart shorter than this cannot be pressed flat. */
export const SHORTEST_DART = 25;

/** mm. Radius of the bust at which fullness is stated unless the wearer gives one. */
export const FULLNESS_RADIUS = 80;

/** mm of cone height. A smaller difference in fullness is not noticed when sewn (our own choice). */
export const FULLNESS_NOTICED = 2;

/**
 * Degrees. The planner lets in no more at a bust than leaves side and waist darts at this angle: the mouth is then a seventh
 * wider than the legs are long, and nothing deeper is sewn as one dart (our own choice; common practice, no source).
 */
export const BUST_DART_WIDEST_DEGREES = 70;

/** mm of cone height. A dart set as the cup asks comes this near to the fullness asked: what is told is no finer. */
export const SET_TO_FULLNESS = 1;

/** Degrees. And this near to its angle: a protractor on paper is no finer. */
export const SET_TO_DEGREES = 1;

// The front sewn shut, as a surface.

/** Share of its spread squared (no unit). Triangles and clouds of points flatter than this lie on a line; a round cloud has 1/4. */
export const FLATTEST = 1e-3;

/** Share of a triangle (no unit). How far outside it a point still counts as on it: what rounding leaves between neighbours. */
export const ON_TRIANGLE = 1e-6;

// Sizes, and how sure they are.

/** mm. A bust difference this small is left alone (common practice, no source: half an inch). */
export const BUST_LEFT_ALONE = 12;

/** mm. What a length that the pattern prints is good to: it is rounded, and drawn by a hand (our own choice). */
export const PRINTED_DOUBT = 5;

/** mm. What a length of our own draft is good to, where the pattern prints none: patterns are drafted so far apart (our own choice). */
export const DRAFTED_DOUBT = 8;

/** Share (no unit). A length as short as a shoulder is so much surer where the pattern prints it (our own choice). */
export const SHORT_SHARE = 0.5;

/** Share of the tape's spread (no unit). A reading that far out may still be of a body just as the pattern's: nineteen of twenty are nearer. */
export const AGREE_WITHIN = 2;

/** Share (no unit). A wedge that gives less of itself where a measure runs is not reckoned up by it (our own choice). */
export const LEAST_GAIN = 0.25;

/** mm. What a proposal changes a girth of the garment by is told above this (our own choice). */
export const GIRTH_TOLD = 5;

/** mm. An alteration that stands is told to differ from what the measures ask for only above this, and less of one is not worth a cut (our own choice). */
export const STANDS_BY = 3;

/** mm of harm. Two ways to cut a body that are nearer to each other are a tie: the weights of harm are known no better (our own choice). */
export const HARM_TIE = 2;

/** mm of harm. Two ways that differ by less harm alike: what rounding leaves of equal sums. */
export const HARM_ALIKE = 1e-6;

/** mm. A girth known to less than this is taken as known exactly: no tape is read as finely. */
export const SPREAD_WORTH_WEIGHING = 0.5;

/** mm. Along a girth, a change of the pick is found to this: a tenth of what is told. */
export const PICK_CHANGES_TO = 0.05;

/** mm. A bust point that is seen this far from where the measures put it is worth measuring again: one reading of a length is no better. */
export const BUST_POINT_AGREEMENT = 10;

/** mm. A marked bust point further than this from the measured one is to be measured again before a dart goes by it (our own choice). */
export const BUST_POINT_REMEASURED = 25;

/** Sizes. How far beyond the printed range a blend may be continued by the nearest grade. */
export const EXTRAPOLATION_STEPS = 2;

/** Probability. Above it a pick is called borderline. */
export const BORDERLINE = 0.25;

/** Probability. From it on a pick is nearly sure, and no further reading is asked for it. */
export const NEARLY_SURE = 0.9;

/** Probability. From it on a pick is called likely. */
export const LIKELY = 0.7;

/** Probability. Two neighbouring stretches of the upper chest that differ by less are not cut finer: so it adds to far less than chances are told to. */
export const CHANCE_OF_A_CELL = 5e-3;

/** Probability. A way that is less likely than this is left out: it is told nowhere. */
export const NEVER = 1e-9;

/** Probability. A reading that makes the best pick surer by less than this is not worth taking: chances are told no finer. */
export const WORTH_READING = 0.05;

/** mm. The spread of a girth that is known exactly: none, and yet not 0, by which nothing can be divided. */
export const KNOWN_EXACTLY = Number.EPSILON;

/** mm at one side seam, half the band that holds the line nine times in ten. A wider one is worth another reading. */
export const LINE_BAND_WIDE = 3;

// Entries.

/** mm. What amounts and entries are kept to, so that a field shows what is there. */
export const KEPT_TO = 0.1;

/** mm. A girth printed in centimetres and in inches is one girth when within this: charts round to whole and to half ones. */
export const BOTH_UNITS_AGREEMENT = 13;

/** mm. What a sewn seam may be out by in an answer: half of what amounts are kept to. */
export const SEAM_KEPT = KEPT_TO / 2;

/** mm. What reading an entry back may add to it: half of what entries are kept to. */
export const READ_BACK = KEPT_TO / 2;

/** Marks of a tape (no unit). A length this near to a mark is on it: what inches and logarithms leave of a whole number. */
export const ON_A_MARK = 1e-6;

// What is told.

/** mm. An amount smaller than this reads as nothing where amounts are told in whole millimetres. */
export const READS_AS_NOTHING = 0.5;

/** mm round the whole body. A change of the bust girth is told only above this: a tape is read no finer. */
export const GIRTH_WORTH_TELLING = 1;

/** mm. Girths of two bodies that are apart by less are called the same: no tape is good to it. */
export const ALIKE_BY_TAPE = 5;

/** mm. An opening that lets through less than this more than it must is told to be tried first: bodies and cloth do not give alike (our own choice). */
export const OPENING_NEAR = 30;

/** Share of the way between two lines (no unit). Nearer than this to a line is the line itself: no pencil is finer. */
export const ON_THE_LINE = 0.005;

/** Share (no unit). Nearer than this to a share that has a name is that share: shares are kept in whole percent, so a third is 33 of them. */
export const SHARE_ROUNDED = 0.005;

// Cutting and paper.

/** mm. How near curves are followed where it is asked what an opening lets through: far below what a tape can tell of a body. */
export const OPENING_ACCURACY = 0.1;

/** mm. Cutting lines are drawn as straight stretches that leave the true curve by no more than this: less than a line is wide. */
export const CUTTING_ACCURACY = 0.05;

/** Degrees. Where a cutting line turns by more it is a corner; the steps that stand for a curve turn by less. */
export const CUTTING_CORNER_DEGREES = 12;

/** mm. A point of the cutting line this near the fold is on it: less than the cutting line leaves its curve by. */
export const ON_FOLD = 0.02;

/** Radians. Words that run straight up or down to within this are read upwards: which way they lean is rounding. */
export const NEARLY_UPRIGHT = 0.01;

/** mm. A page must leave this much both ways within its margins: a test square of four inches with its words. */
export const SMALLEST_WINDOW = 130;

/** Pages. More than these nobody cuts and sticks together; a whole bodice takes some twenty to forty (our own choice). */
export const MOST_PAGES = 150;

// Linings.

/** mm. An edge set back from the shell's lies as far inside it as is wanted, to within this: less than a pencil line is wide. */
export const SET_BACK_WITHIN = 0.05;

/** mm. Ends left free beside a zip are not sewn to each other: front and back may differ by so much in what is free. */
export const FREE_ENDS_ALIKE = 0.2;

/** mm. Truing moves a corner of a lining by tenths; where it moves one further, there was no room for what was drawn (our own choice). */
export const LINING_TRUED_AT_MOST = 6;

// Strips to lay on the tissue.

/** mm. Printed points nearer than this to each other would be taken for one another, so only one of them is told. */
export const TWINS = 3;

/** mm. The printed sizes' own levels lie within this of the frame's; a level further off was moved. */
export const LEVEL_KEPT = 10;

/** Degrees. A seam that turns by more at a corner goes on another strip: round less of one a strip holds little bare paper (our own choice). */
export const STRIP_CORNER_DEGREES = 35;

/** mm. How near the points stay to a curve for which paper or a place for the title is sought: the width of a pencil line. */
export const PLACED_ACCURACY = 0.5;

/** mm. How near the points stay to a curve that words are kept clear of: well within the room that is left round words. */
export const WORDS_ACCURACY = 0.2;

// Files of outlines.

/** mm. Places of a file are kept to this: what other programs write is no finer, and a fiftieth of what outlines are kept to. */
export const FILE_STEP = 1e-3;

/** Share (no unit). A page whose height and width are scaled alike within this is drawn in proportion: sizes are written with few digits. */
export const SCALED_ALIKE = 1e-3;

/** Share of half its chord (no unit). An arc of a polyline less high than this is straight: on a chord of a metre half a thousandth of a mm. */
export const STRAIGHT_BULGE = 1e-6;

/** Radians. An arc that stops this near to where it began is a whole turn: files write angles with some six digits. */
export const WHOLE_TURN = 1e-5;

/** Share of its size (no unit). How near cubics stay to a spline that they cannot follow exactly, one of weights or of a higher degree. */
export const SPLINE_FOLLOWED = 1e-7;

// Outlines read from a file.

/** mm. Curves are fitted to a drawn line as near as this: no line is drawn as fine, and it leaves room to the 0.05 mm that is promised. */
export const FITTED_WITHIN = 0.02;

/** Degrees. Two curves that meet turning by no more are one seam drawn in two: what rounding a file to tenths leaves. */
export const FOLLOWED_TURN_DEGREES = 3;

/** mm. Straight stretches that leave the curve they would stand for by more are meant to be straight (our own choice). */
export const FOLLOWED_SAGITTA = 0.15;

/** mm. Long straight stretches that leave a curve by no more stand for it: what is usual where curves are written as stretches. */
export const STRETCHES_STAND_FOR = 0.06;

/** Degrees. Long straight stretches that stand for a curve turn by less at each joint. */
export const LONG_TURN_DEGREES = 2;

/** mm. A princess seam that stands off its straight way by less has no fullest place (our own choice). */
export const SEAM_FULL_LEAST = 8;

/** mm. How far from a mark its name is written. */
export const NAMED_BESIDE = 15;

/** Degrees. Straight stretches that turn by more at once stand for no curve. */
export const FOLLOWED_CORNER_DEGREES = 20;

/** Share of a length (no unit). Edges of two sizes that end nearer than this to the same share of a seam are the same edge. */
export const SHARES_ALIKE = 0.1;

/** mm. A dart's leg that stops this near to the line is meant to end on it. */
export const LEG_MEETS_LINE = 3;

/** mm. Two legs whose ends come this near meet there. */
export const LEGS_MEET = 1.5;

/** mm. Both halves of a piece that was drawn whole are alike to this: what drawing and tracing leave. */
export const MIRRORED_WITHIN = 1.5;

/** mm. A stitch line found inside a cutting line is followed as near as this: half of what fitting it may then leave. */
export const TAKEN_INSIDE_WITHIN = 0.01;

/** mm. A length on the tissue that is so far from the stand-in's is asked for once more: patterns of one style hardly differ by more (our own choice). */
export const TISSUE_UNUSUAL = 40;

/** mm. Seams of her pieces that are sewn together differ by no more beyond their usual ease: else they were misread (our own choice). */
export const SEWN_UNLIKE = 15;

// Lines of a file.

/** mm. Ends of a file's lines that lie this near are one place: what files round their numbers to. */
export const JOINED_EXACTLY = 0.02;

/** mm. Lines of very many short stretches are followed as near as this: no nearer are their ends told apart. */
export const LINE_THINNED = 0.02;

/** mm. How far apart ends may lie that are joined, where she says nothing: the width of a printed line (our own choice). */
export const JOINED_WITHIN = 0.5;

/** Share (no unit). Two proofs of a scale that differ by more contradict each other: half a millimetre in ten centimetres. */
export const SCALES_AGREE = 0.005;

/** Share (no unit). A rectangle whose sides differ by less may be a square that tests the scale. */
export const SQUARE_SIDES = 0.01;

/** Sine of an angle (no unit). A corner within half a degree or so of a right one is one. */
export const SQUARE_CORNER = 0.01;

/** mm. How near points stay to a line of a file where only its form and place are asked. */
export const OUTLINE_LOOKED_AT = 0.2;

/** Degrees. Lines that turn by less where they cross go straight on there, each by itself. */
export const STRAIGHT_ON_DEGREES = 8;

/** Share (no unit). Ends of the sides of a square, of the whole drawing: its scale is not known yet. */
export const SQUARE_ENDS = 2e-4;

/** Share (no unit). What ought to close and is left open by less of its own length is an outline that is broken, not a mark. */
export const NEARLY_CLOSED = 0.05;

/** Share (no unit). How far from round a circle may be that marks a place, and how far from square a cross. */
export const ROUND = 0.2;

/** mm. Two short lines whose middles lie this near are a cross. */
export const CROSS_MIDDLES = 1;

/** Share (no unit). Logarithm of how unlike in length the two lines of a cross may be: one twice the other. */
export const CROSS_ARMS = 0.7;

/** Degrees. Where an outline of a file turns by more it has a corner: curves that were written as many short lines turn by less at each. */
export const OUTLINE_CORNER_DEGREES = 15;

/** mm. A corner pointed at is the line's own corner where that lies so near: a finger is no finer. */
export const CORNER_POINTED_AT = 4;

/** mm. A centre line that leaves its straight way by less is straight, and stands upright. */
export const CENTRE_STRAIGHT = 0.5;

/** mm. A mark as near as this to where a front's darts lead is taken for its bust point (our own choice). */
export const BUST_POINT_MARKED = 45;

/** mm. What an amount of cloth read off a toile is good to, one standard deviation: a pinch, a slit, a mark (common practice, no source). */
export const CLOTH_READ = 5;

/** mm. Less cloth than this on one half is left alone: it is less than can be pinned twice alike (our own choice). */
export const CLOTH_WORTH_ALTERING = 4;
