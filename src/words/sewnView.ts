/** The words of the front, sewn. */

// SewnFront
export const seeItSewn = "See it sewn";
export const sewing = "Sewing…";
export const theFrontSewn = "The front, sewn";
export const sewnView = "The sewn view";
