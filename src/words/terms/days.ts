/** Days as they are written out. */
import { dateWords } from "./language";

/** "25 November 2026" for 2026-11-25; the text itself where it is no day, and what is said of none. */
export function dayWords(day: string | undefined, year: "with year" | "without year" = "with year"): string {
  if (day === undefined) return "a day not said";
  const date = new Date(/^\d{4}-\d{2}-\d{2}$/u.test(day) ? `${day}T00:00:00Z` : Number.NaN);
  // Some platforms take the 31st of a shorter month for a day of the next.
  const isDay = !Number.isNaN(date.valueOf()) && date.toISOString().startsWith(day);
  return isDay ? dateWords(date, year) : day;
}
