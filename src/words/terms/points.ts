/** What points of a piece are called on the printed tissue. */
import { DART_NAMES, opensUpright } from "../../core/pattern/dartNames";
import { isNumbered, type DartName, type PieceName, type PointName } from "../../core/pattern/piece";
import { centreWords, dartWords } from "./names";

/** Of a piece: "end of the shoulder", "upper end of the side dart's mouth". */
export function tissueWords(point: PointName, piece: PieceName): string {
  const centre = centreWords(piece);
  switch (point) {
    case "centreNeck":
      return `${centre} at the neck`;
    case "sideNeck":
      return "neck end of the shoulder";
    case "shoulderTip":
      return "armhole end of the shoulder";
    case "armholeTouch":
      return "hollow of the armhole";
    case "strapInner":
      return "neck end of the strap’s seam";
    case "strapOuter":
      return "armhole end of the strap’s seam";
    case "princessTop":
      return "top of the princess seam";
    case "underarm":
      return "underarm";
    case "sideBust":
      return "side at the bust line";
    case "sideUnderBust":
      return "side at the under-bust";
    case "sideWaist":
      return "side at the waist";
    case "sideHip":
      return "side at the hip line";
    case "sideHem":
      return "side at the hem";
    case "centreHem":
      return `${centre} at the hem`;
    case "centreHip":
      return `${centre} at the hip line`;
    case "centreWaist":
      return `${centre} at the waist`;
    case "underBustCentre":
      return `${centre} at the under-bust`;
    case "centreBust":
      return `${centre} at the bust line`;
    case "princessBust":
      return "bust mark of the princess seam";
    case "princessWaist":
      return "foot of the princess seam";
    case "strapFrontInner":
      return "front end, inner edge";
    case "strapFrontOuter":
      return "front end, outer edge";
    case "strapBackInner":
      return "back end, inner edge";
    case "strapBackOuter":
      return "back end, outer edge";
    case "bustPoint":
      return "pattern’s bust point";
    case "neckCorner":
      return "corner of the neckline";
    case "neckPeak":
      return "peak of the neckline";
    default:
      return mouthWords(point);
  }
}

/** The ends of a dart's mouth: the upper and the lower one, or that nearer the centre and the other. */
function mouthWords(point: PointName): string {
  const dart = DART_NAMES.find((name) => point === `${name}Inner` || point === `${name}Outer`);
  if (dart === undefined) return isNumbered(point) ? `corner ${Number(point.slice(-2)) + 1}` : "corner";
  const [first, second] = endWords(dart);
  return `mouth of the ${dartWords(dart)}, ${point.endsWith("Inner") ? first : second}`;
}

/** What the ends of a dart's mouth are called, the inner one first. */
export const endWords = (dart: DartName): readonly [string, string] =>
  opensUpright(dart) ? ["upper end", "lower end"] : ["inner end", "outer end"];
