/** What every sheet of an invented work says, so that nobody cuts by it for herself. */
export const INVENTED_SHEET = "Invented demo: no real person and no real pattern.";
