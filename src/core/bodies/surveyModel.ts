/**
 * The body survey as fitted: made by `npm run fit-bodies` from tests/reference-data/women-1988.csv (1988 survey of women of
 * the US Army, public domain), never by hand. Logarithms of millimetres, as the survey measured them.
 */
import type { MeasureName } from "../measures/measure";

export const SURVEY = {
  /** Women measured, and those that the fit stands on; every fourth was held back to judge it. */
  women: 2208,
  fitted: 1656,
  /** Years: from, to, and above which only few were measured. */
  ages: { least: 18, most: 50, few: 39 },
  measures: ["bustGirth", "upperChestGirth", "underBustGirth", "waistGirth", "hipGirth", "height", "bustPointWidth", "sideNeckToBustPoint", "backWaistLength", "frontWaistLength", "neckBaseGirth", "shoulderLength", "acrossBack"] satisfies readonly MeasureName[] as readonly MeasureName[],
  freedom: 25,
  middle: [6.80551893, 6.78454343, 6.64142347, 6.5798163, 6.87094993, 7.39512493, 5.21318591, 5.58449707, 5.9038577, 5.96688036, 5.8455152, 4.97208047, 5.8608818],
  /** The lower triangle of the scatter. */
  scatter: [
    [0.00463035],
    [0.00360782, 0.00342251],
    [0.00380924, 0.00325373, 0.00405552],
    [0.00487326, 0.00406556, 0.00458181, 0.00686871],
    [0.00294554, 0.00254641, 0.00266064, 0.00376463, 0.00365553],
    [0.0005567, 0.0006225, 0.0006278, 0.00060123, 0.00078143, 0.00142132],
    [0.00311436, 0.00225055, 0.00252639, 0.00317656, 0.00196773, 0.00064912, 0.00738449],
    [0.00354083, 0.00259433, 0.00262761, 0.00370831, 0.00256162, 0.00088975, 0.00281529, 0.00660551],
    [0.00045736, 0.00038595, 0.00061792, 0.00014735, 0.00054986, 0.00120634, 0.00025677, 0.00104002, 0.0042734],
    [0.00121025, 0.0010123, 0.0011666, 0.00075388, 0.00083557, 0.00101287, 0.0010397, 0.00185282, 0.00281048, 0.00374867],
    [0.00188798, 0.00174726, 0.00174667, 0.00241547, 0.00153517, 0.00067589, 0.00134145, 0.00148467, 0.00054449, 0.00057327, 0.00212041],
    [0.00036789, 0.00067361, 0.00035116, 0.00028488, 0.00051392, 0.00100616, 0.00054062, 0.00143387, 0.001256, 0.00109016, 0.00040009, 0.00546547],
    [0.00312309, 0.00299892, 0.00277484, 0.00344743, 0.0021489, 0.0006242, 0.00152404, 0.00248236, 0.00078744, 0.00097653, 0.00161734, 0.00143285, 0.00541097],
  ],
  /** mm. All but one in a hundred lie above, and all but one in a hundred below. */
  nearlyAll: {
    bustGirth: { least: 785, most: 1074 },
    upperChestGirth: { least: 777, most: 1029 },
    underBustGirth: { least: 673, most: 915 },
    waistGirth: { least: 609, most: 905 },
    hipGirth: { least: 843, most: 1126 },
    height: { least: 1486, most: 1782 },
    bustPointWidth: { least: 149, most: 224 },
    sideNeckToBustPoint: { least: 220, most: 325 },
    backWaistLength: { least: 315, most: 429 },
    frontWaistLength: { least: 336.25, most: 455.95000000000005 },
    neckBaseGirth: { least: 312, most: 387 },
    shoulderLength: { least: 120, most: 170 },
    acrossBack: { least: 295, most: 418 },
  } satisfies Partial<Record<MeasureName, { readonly least: number; readonly most: number }>>,
} as const;
