/** The words of the printed checklist and of the sheets beside it. */

// AlterationSketchDrawing
export const sketchOf = (piece: string, what: string): string =>
  `The ${piece} in small, where it is cut and how it lies after${what}`;

// BeforeCutting
export const takeCare = "Take care";

// BustCutsDrawing
export const bustCutsOf = (piece: string, moved: string): string => `The ${piece} in small, cut and moved: ${moved}`;

// HowSure
export const howSure = "How sure";

// Notes
export const notes = "Notes";

// OrderOfWork
export const amount = "Amount";
export const orderOfWork = "Order of work";
export const whichLineIsDrawn =
  "All lines are stitch lines. If your tissue prints cutting lines, the side seam amounts are the same from one cutting line to the next, but draw the stitch line in before you place darts, walk seams or measure. In the drawings your line is heavy, the size traced dashed, its neighbours dotted.";

// PieceDiagram
export const onThe = "on the";
export const diagramOf = (piece: string, said: string): string => `The ${piece} in small, with its amounts: ${said}`;

// PrintedChecklist
export const alterationChecklist = "Alteration checklist";

// PrintedDress
export const pattern = (name: string): string => `Pattern: ${name}`;
export const date = "Date";
export const cloth = "Cloth";

// SheetHeading
export const pieces = "Pieces:";
export const neckShoulderArmhole = "neck, shoulder, armhole";
export const notInOrder = " Not in the order of work: see below.";
export const trialNo = "Trial no.";
export const frame = "Frame";
export const cupAndBust = "Cup and bust";
export const asDrafted = "as drafted";
export const onTheLine = (lower: string): string => `on the ${lower} line`;

// Sums
export const theSumsBehindTheSizes = "The sums behind the sizes";
export const cup = "Cup";
export const bustAlteration = "Bust alteration";

// Verify
export const verifyTitle = "All pieces together: walk the seams, then measure";
export const what = "What";
export const wanted = "Wanted";
export const measured = "Measured";
export const mayDifferBy = (allowed: string): string => `May differ by ${allowed}.`;
export const toBeWrittenIn = "to be written in";

// WorkName
export const forWearer = (wearer: string): string => ` for ${wearer}`;
