/** The words of a plan as plain text. */
import { plural } from "../terms/language";

// text
export const neckShoulderArmhole = (label: string): string => `${label} (neck, shoulder, armhole)`;
export const howSure = "How sure";
export const beforeYouCut = "Before you cut";
export const failingHead = (count: number): string =>
  plural(count, { one: "One thing does not hold:", other: `${count} things do not hold:` });
export const orderOfWork = (text: string): string => `Order of work: ${text}`;
export const measureAfter = "Measure after";
export const takeCare = "Take care";
export const alterationChecklist = "ALTERATION CHECKLIST";
