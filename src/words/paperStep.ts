/** The words of the step Paper: what is printed, on what, and how it is made. */
import { plural } from "./terms/language";

export const checklistDoubts = (count: number): string =>
  `${plural(count, { one: "One check does not hold yet", other: `${count} checks do not hold yet` })}; the sheet says so too. Look at ${plural(count, { one: "it", other: "them" })} before you cut.`;
