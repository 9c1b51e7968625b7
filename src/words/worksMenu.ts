/** The words of the works menu as it is opened, and of what is said of the work itself. */

export const demonstration = "{lead} measures and pattern invented. Try anything; it is kept.";
export const demonstrationLead = "This is a demonstration,";

// InventedNote
export const startWithMyOwnMeasures = "Start with my own measures";

// WorksMenu
export const works = "Works";
export const yourWorks = "Your works";
export const listOfWorks = "The list of works";
