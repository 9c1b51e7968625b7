/**
 * From the body survey to a dressmaker's tape. Where the survey's tape ran elsewhere, or its women were measured in another
 * way than others, a figure is taken midway between the two authorities, and half of what they are apart is added to the
 * doubt. Of all this the survey itself can prove nothing; the shifts are our own choice, each with what it stands on.
 */
import { MEASURE_NAMES, type MeasureName } from "../measures/measure";
import { invariant } from "../result";
import type { Mm } from "../units";
import type { BodyModel } from "./bodyModel";
import { entry, type Matrix } from "../statistics/linear";
import { SURVEY } from "./surveyModel";

export interface Bridge {
  /** What a dressmaker's tape reads more than the survey's, on the body in the middle of the survey. */
  readonly shift: Mm;
  /** One standard deviation of that. */
  readonly doubt: Mm;
  /** Of the doubt, what back and front lengths share: how low the waist was taken. */
  readonly ofWaistLevel?: Mm;
}

const NONE: Bridge = { shift: 0, doubt: 0 };

export const BRIDGES: Readonly<Partial<Record<MeasureName, Bridge>>> = {
  // Horizontal at mid-armhole, on average 20 mm under the bust; the trade's, above the breast, 50 (common practice).
  upperChestGirth: { shift: -30, doubt: 15 },
  // The survey's tape may lie on the bra.
  underBustGirth: { shift: 0, doubt: 5 },
  // Young soldiers: leaner at the waist than others of the same bust. How much is our own guess.
  waistGirth: { shift: 20, doubt: 30 },
  // The survey of 2012 has 28 mm more at the same bust and height.
  hipGirth: { shift: 14, doubt: 14 },
  // A caliper, straight across; a tape lies on the body.
  bustPointWidth: { shift: 5, doubt: 5 },
  // The survey's point at the side of the neck is a muscle's edge, the trade's the base of the neck.
  sideNeckToBustPoint: { shift: 0, doubt: 5 },
  // The survey's waist is the narrowest place, and lies high: 369 mm at a height of 1640, where the trade draws 410.
  backWaistLength: { shift: 20, doubt: 20, ofWaistLevel: 20 },
  // Put together from two lengths of the survey: 385 mm at bust 880, where the trade draws 432.
  frontWaistLength: { shift: 23, doubt: 22, ofWaistLevel: 20 },
  // 342 mm at bust 880 here, 361 in 2012, 370 in the trade.
  neckBaseGirth: { shift: 14, doubt: 14 },
  // 145 mm here, 135 in 2012, 122 in the trade.
  shoulderLength: { shift: -11, doubt: 11 },
  // From arm crease to arm crease: 352 mm here, 365 in 2012 at the same bust and height; the trade agrees with this one.
  acrossBack: { shift: 6, doubt: 6 },
};

/** Across front for each unit of across back, and its doubt as a share (the proportion of the block; our own choice). */
const ACROSS_FRONT = { share: 0.94, doubt: 0.05 };

const scatter: Matrix = SURVEY.measures.map((_, row) =>
  SURVEY.measures.map((__, column) =>
    invariant(invariant(SURVEY.scatter[Math.max(row, column)], "row")[Math.min(row, column)], "entry"),
  ),
);

/** The women of the survey, as it measured them. */
export const SURVEYED_BODIES: BodyModel = {
  measures: SURVEY.measures,
  middle: SURVEY.middle,
  scatter,
  freedom: SURVEY.freedom,
};

/** Bodies as a dressmaker's tape would measure them: the survey's, bridged, with the across front by proportion. */
export const TAPED_BODIES: BodyModel = bridged();

function bridged(): BodyModel {
  const shares = SURVEY.measures.map((name, at) => {
    const { shift, doubt, ofWaistLevel = 0 } = BRIDGES[name] ?? NONE;
    const middle = Math.exp(invariant(SURVEY.middle[at], "middle"));
    return { shift: Math.log1p(shift / middle), doubt: doubt / middle, level: ofWaistLevel / middle };
  });
  const share = (at: number) => invariant(shares[at], "bridge");
  const moved = scatter.map((row, i) =>
    row.map(
      (value, j) => value + share(i).level * share(j).level + (i === j ? share(i).doubt ** 2 - share(i).level ** 2 : 0),
    ),
  );
  const middle = SURVEY.middle.map((value, at) => value + share(at).shift);
  const back = SURVEY.measures.indexOf("acrossBack");
  const acrossFront = moved.map((row) => invariant(row[back], "entry"));
  return reordered({
    measures: [...SURVEY.measures, "acrossFront"],
    middle: [...middle, invariant(middle[back], "across back") + Math.log(ACROSS_FRONT.share)],
    scatter: [
      ...moved.map((row, at) => [...row, invariant(acrossFront[at], "entry")]),
      [...acrossFront, entry(moved, back, back) + ACROSS_FRONT.doubt ** 2],
    ],
    freedom: SURVEY.freedom,
  });
}

/** The same model, all measures in our usual order. */
function reordered(model: BodyModel): BodyModel {
  const from = MEASURE_NAMES.map((name) => model.measures.indexOf(name));
  return {
    measures: MEASURE_NAMES,
    middle: from.map((at) => invariant(model.middle[at], "middle")),
    scatter: from.map((row) => from.map((column) => entry(model.scatter, row, column))),
    freedom: model.freedom,
  };
}
