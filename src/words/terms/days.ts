/** Days as they are written out. */

const MONTHS = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
];

/** "25 November 2026" for 2026-11-25; the text itself where it is no day, and what is said of none. */
export function dayWords(day: string | undefined): string {
  if (day === undefined) return "a day not said";
  const [, year, month, date] = /^(\d{4})-(\d{2})-(\d{2})$/u.exec(day) ?? [];
  const name = MONTHS[Number(month) - 1];
  return year === undefined || name === undefined ? day : `${Number(date)} ${name} ${year}`;
}
