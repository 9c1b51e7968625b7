/** What is let out all round is shared by the four edges of the two side seams. */
export const QUARTER = 1 / 4;
