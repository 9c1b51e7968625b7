/** The words of the folds of the step Dress: their fields and choices. */
import { fixedDecimals } from "./terms/language";

// ClosureFold
export const opensAtThe = "Opens at the";
export const openingRunsBelowTheWaist = "Opening runs below the waist seam by";
export const zip = "Zip";

// ClothFold
export const orYourOwnWidth = "or your own width";
export const shrinksInTheWashBy = "shrinks in the wash by";
export const iHaveThisMuch = "I have this much";
export const oneWay = "Nap, or a print with an up and a down: all one way";
export const laidFoldedCutDouble = "Laid folded, cut double";
export const widthOfThe = (text: string): string => `Width of the ${text}`;
export const noneYet = "none yet";

// ClothLaid
export const part = "part";
export const fromTheCutEnd = "from the cut end";
export const fromTheFold = "from the fold";
export const fromTheLeftSelvage = "from the left selvage";

// ClothTable
export const width = "width";
export const toBuy = "to buy";
export const area = "area";
export const squareMetres = (value: number): string => `${fixedDecimals(value, 2)} m²`;
export const yours = " (yours)";

// CutListFold
export const cut = "cut";
export const asCut = "as cut";
export const byItsPattern = "by its pattern";

// DressChecksFold
export const holds = ": holds";
export const doesNotHold = ": does not hold";

// DressStep
export const dress = "Dress";

// LiningFold
export const whatIsLined = "What is lined";
export const moreEaseInLining = "More ease in the bodice’s lining";
export const liningEaseAtHip = "Ease of the lining at the hip";
export const liningHem = "Hem of the lining, all round";
export const shorterThanTheSkirtBy = "Shorter than the skirt by";
export const freeBelowZip = "Free below the zip’s end";
export const freeBesideZip = "Free beside the closure, each side";
export const liningWaistTaken = "Its waist is taken in by";
export const liningComesTo = "What the skirt’s lining comes to";

// MeasuresFold
export const noMoreThan = (length: string): string => `No more than ${length}.`;
export const noLessThan = (length: string): string => `No less than ${length}.`;

// NecklineFold
export const pinchOut = "Pinch out what would stand off";
export const elasticAtTheBackEnd = "Elastic at the back end";
export const deeperAtTheCentreFront = "Deeper at the centre front";
export const widerAlongTheShoulder = "Wider along the shoulder";
export const deeperAtTheCentreBack = "Deeper at the centre back";
export const neckline = "Neckline";
export const asThePattern = "as the pattern";
export const straps = "Straps";
export const strapFinishedWidth = "Strap, finished width";
export const strapWornUnderIt = "Strap worn under it";
export const strapLonger = "Longer than the way over the shoulder";
export const neckEdge = "Neck edge";
export const upperEdge = "Upper edge";
export const finishedByA = (name: string): string => `${name} finished by a`;
export const depthOfFacings = "Depth of facings";
export const bindingFinishedWidth = "Binding, finished width";

// Remnant
export const clothYouHave = (text: string): string => `The ${text} that you have`;

// SewingFolds
export const allowance = "Allowance";
export const notions = "Notions";

// SkirtFold
export const goToTape = "Go to Tape";
export const pocketsInTheSideSeams = "Pockets in the side seams";
export const tierDeep = "deep";
export const tierWidths = "widths";
export const tierTimes = "times";
export const shapeOfTheSkirt = "Shape of the skirt";
export const whatTheSkirtComesTo = "What the skirt comes to";
export const lengthOfThePeplum = "Length of the peplum";
export const waistToHemSide = "Waist to hem, side";
export const eachGatheredTimes = "Each gathered, times";
export const gatheredTimesTheWaist = "Gathered, times the waist";
export const easeAtTheHip = "Ease at the hip";
export const flareOfEachSide = "Flare of each side";
export const ventAboveTheHem = "Vent above the hem";
export const noVent = "0: none.";
export const hemTurnedUp = "Hem turned up";
export const panelsAllRound = "Panels all round";
export const waistDarts = "Waist darts";
export const cutFrom = "Cut from";
export const shutIntoTheFlare = "shut into the flare";
export const howMuchOfACircle = "How much of a circle";
export const perCentOfCircle = "Or per cent of a full circle";
export const eachDeeperByAQuarter = "each deeper by a quarter";
export const allAlike = "all alike";
export const tiers = "Tiers";
export const depths = "Depths";
export const eachTierByItself = "Each tier by itself";

// UnderFold
export const asRecommended = (under: string): string => `as recommended: ${under}`;
export const heldToTheLight = "Held to the light";
export const underItGoes = "Under it goes";
