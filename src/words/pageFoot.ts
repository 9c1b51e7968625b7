/** What stands at the foot of every printed page. */

export const alterationChecklist = "Alteration checklist";

/** The numbers are the browser's. */
export const pageOf = "Page {page} of {pages}";
