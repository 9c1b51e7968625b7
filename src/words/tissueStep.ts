/** The words of the step Tissue: where the pieces come from. */

export const measuredOf = (measured: number, all: number): string => `(${measured} of ${all} measured)`;

// TapeDoor
export const noPiecesYet = "The pieces to measure appear here once there is a size chart on Envelope.";
export const moreLengths = "More lengths";
export const nextBest = "Next best:";
export const forgetThem = "Forget them";
export const measureAlongSize = "Measure along the line of size";
export const notInTheChart = (label: string): string => `${label}, not in the chart`;
export const whereTheTapeIsLaid = "Where the tape is laid";

// TissueStep
export const yourTissue = "Your tissue";
export const byTapeOnTheTissue = "By tape on the tissue";
export const needsChart = "needs the size chart on Envelope";
export const nothingMeasuredYet = "nothing measured yet";
export const measuredAlongSize = (count: number, size: string): string => `${count} measured along size ${size}`;
export const fromAFile = "From a file";
export const svgOrDxf = "SVG or DXF";
export const piecesFromAFile = "Pieces from a file";
