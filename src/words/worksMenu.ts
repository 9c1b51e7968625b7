/** The words of the works menu as it is opened, and of what is said of the work itself. */

export const demonstration = "{lead} measures and pattern invented. Try anything; it is kept.";
export const demonstrationLead = "This is a demonstration,";
