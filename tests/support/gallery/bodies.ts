/** The bodies and the pattern of the gallery. Picks are fixed: what is shown is how pieces are drawn, not how sizes are picked. */
import type { Picks } from "../../../src/core/decisions/decided";
import type { StyleName } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import { tapesOf } from "../../../src/core/measures/tape";
import type { Measures } from "../../../src/core/measures/measure";
import type { CupVersion, SizeRow } from "../../../src/core/chart/sizeChart";
import { invariant } from "../../../src/core/result";
import { testWork } from "../works";

/** As wide as drafts are tried at all, the worked size among them: bust, waist, hip. */
const ROWS = [
  [700, 540, 770],
  [780, 606, 846],
  [840, 660, 902],
  [880, 700, 940],
  [930, 752, 988],
  [1000, 828, 1054],
  [1100, 940, 1150],
  [1250, 1108, 1290],
  [1550, 1440, 1570],
] as const;

const chart = {
  ...testWork.pattern.chart,
  sizes: ROWS.map(([bust, waist, hip], index): SizeRow => ({ label: String(index + 1), bust, waist, hip })),
  cups: [
    { label: "A", difference: 25 },
    { label: "B", difference: 50 },
    { label: "C", difference: 75 },
    { label: "E", difference: 125 },
  ],
};

export const CUPS: readonly CupVersion[] = chart.cups;
/** Between others that are kept. */
export const CUP_BETWEEN = "C";
/** The cup that the draft itself is made for. */
const DRAFTED = "B";
const WORKED_BUST = 880;

interface GalleryBody {
  readonly name: string;
  readonly base: SizeRow;
  readonly picks: Pick<Picks, "waist" | "hip">;
  readonly measures: Measures;
  /** Between others that are kept. */
  readonly isBetween?: true;
}

const row = (index: number): SizeRow => invariant(chart.sizes[index], "size");
const last = chart.sizes.length - 1;
const worked = chart.sizes.findIndex(({ bust }) => bust === WORKED_BUST);

/** Measured as the chart has it: nothing is left to alter. */
const ofSize = (name: string, index: number): GalleryBody => ({ name, base: row(index), picks: {}, measures: {} });

const WORKED = ofSize("worked size", worked);

export const BODIES: readonly GalleryBody[] = [
  ofSize("smallest", 0),
  { ...ofSize("small", 1), isBetween: true },
  WORKED,
  { ...ofSize("large", last - 2), isBetween: true },
  ofSize("largest", last),
  {
    name: "thick waist, low wide bust",
    base: row(worked),
    picks: { waist: worked + 1.4, hip: worked - 0.6 },
    measures: { bustPointWidth: 212, sideNeckToBustPoint: 288 },
  },
  {
    name: "thin waist, wide hip, high close bust",
    base: row(worked + 2),
    picks: { waist: worked + 0.5, hip: worked + 3.3 },
    measures: { bustPointWidth: 184, sideNeckToBustPoint: 264 },
  },
];

const patterns = new Map<StyleName, Work["pattern"]>();

/** The very same object for one style: what was drafted for it is remembered. */
function patternOf(style: StyleName): Work["pattern"] {
  const known = patterns.get(style);
  if (known !== undefined) return known;
  const made = { ...testWork.pattern, chart, style };
  patterns.set(style, made);
  return made;
}

const works = new Map<string, Work>();

/** The work of a body in a style and a cup, with nothing altered; the very same object for the same. */
export function workOf(style: StyleName, body: GalleryBody = WORKED, cup = DRAFTED): Work {
  const key = [style, body.name, cup].join("/");
  const work = works.get(key) ?? newWork(style, body, cup);
  works.set(key, work);
  return work;
}

function newWork(style: StyleName, { base, picks, measures }: GalleryBody, cup: string): Work {
  const { difference } = invariant(
    CUPS.find(({ label }) => label === cup),
    cup,
  );
  return {
    ...testWork,
    pattern: patternOf(style),
    tapes: tapesOf({
      bustGirth: base.bust - chart.draftedDifference + difference,
      upperChestGirth: base.bust - chart.draftedDifference,
      waistGirth: base.waist,
      hipGirth: base.hip,
      height: 1680,
      ...measures,
    }),
    picks: { baseSize: base.label, cup, bustAlteration: 0, ...picks },
  };
}
