/** The words of the step Tissue: where the pieces come from. */

export const measuredOf = (measured: number, all: number): string => `(${measured} of ${all} measured)`;
