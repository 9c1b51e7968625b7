/** How a round skirt is drawn on the cloth with a string. */
import type { LengthUnit } from "../core/decisions/work";
import type { SectorPart } from "../core/parts/part";
import type { Mm } from "../core/units";
import { formatAmount, formatLength } from "./terms/length";
import { listWords } from "./terms/language";

export const STRAIGHT_GRAIN = "straight grain";
export const sideWords = (onFold: boolean): string => (onFold ? "fold" : "along the selvage");

/** "hem 71.5 cm": the string from the pin. */
export const radiusWords = (line: "waist" | "hem", radius: Mm, unit: LengthUnit): string =>
  `${line} ${formatLength(radius, unit)}`;

interface Sketched {
  readonly part: SectorPart;
  readonly radii: { readonly waist: Mm; readonly hem: Mm; readonly waistCut: Mm; readonly hemCut: Mm };
  readonly pin: { readonly along: Mm; readonly across: Mm };
}

const CUT = "Take the pin out, and cut along them, away from your hand.";

/** Steps in order, each a sentence. */
export function circleSteps({ part, radii, pin }: Sketched, unit: LengthUnit): readonly string[] {
  const { allowances, cut, foldSides, waistRadii, slash } = part;
  const long = (mm: Mm): string => formatLength(mm, unit);
  const beside =
    allowances.sides > 0 && slash === undefined
      ? `, and ${formatAmount(allowances.sides, unit)} outside each straight side that is sewn`
      : "";
  const isFolded = foldSides === 1;
  return [
    isFolded
      ? "Fold the cloth once along its length, right sides together."
      : "Lay the cloth out as its lay shows, the edge that is drawn at the left at your left.",
    isFolded
      ? `Push a pin in on the fold, ${long(pin.along)} below the top of its place in the lay.`
      : `Push a pin in ${long(pin.across)} from the left of its place in the lay and ${long(pin.along)} below its top.`,
    waistRadii === undefined
      ? `Tie a string to the pin and chalk to the string. Draw the waist at ${long(radii.waist)} and the hem at ${long(radii.hem)} from the pin.`
      : `Tie a string to the pin and chalk to the string. Draw the hem at ${long(radii.hem)} from the pin. The waist is not quite a circle, so that the hem hangs level: mark ${listWords(waistMarks(part, unit))}, and join the marks in an even curve.`,
    waistRadii === undefined
      ? `Draw the cutting lines at ${long(radii.waistCut)} and at ${long(radii.hemCut)} from the pin${beside}. ${CUT}`
      : `Draw the cutting lines ${formatAmount(allowances.inner, unit)} inside the waist and at ${long(radii.hemCut)} from the pin${beside}. ${CUT}`,
    ...(slash === undefined
      ? []
      : [
          `Cut it open from the hem to the waist ${isFolded ? "along the other fold" : "straight down from the pin"}: ${formatAmount(slash, unit)} of each edge goes into that seam.`,
        ]),
    ...(waistRadii !== undefined && foldSides === 0 && cut.count > 1
      ? ["Draw each second one as its mirror image: one is for your left half, one for your right."]
      : []),
  ];
}

/** Most places of the waist that are told. */
const MOST_MARKS = 5;
const DEGREES = 180 / Math.PI;

/** "23.1 cm on the fold", "22.6 cm at 45°": the sides and some between. */
function waistMarks({ waistRadii = [], foldSides }: SectorPart, unit: LengthUnit): readonly string[] {
  const count = Math.min(MOST_MARKS, waistRadii.length);
  const isFolded = foldSides === 1;
  return Array.from({ length: count }, (_, i) => {
    const mark = waistRadii[Math.round((i * (waistRadii.length - 1)) / Math.max(1, count - 1))];
    if (mark === undefined) return "";
    const where = i === 0 ? (isFolded ? "on the fold" : "on the first side") : `at ${Math.round(mark.at * DEGREES)}°`;
    return `${formatLength(mark.radius, unit)} ${where}`;
  });
}
