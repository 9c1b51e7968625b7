/**
 * The language of all that is said: its name, and how it writes numbers, days, lists and plurals, as the platform knows it.
 * Whoever writes the sentences of src/words in another language begins here.
 */

/** As the platform calls it (BCP 47); the page's own markup names it too. */
const LOCALE = "en-GB";

/** Formatters are slow to make and quick to use: each is made once, when it is first asked for. */
const made = new Map<string, Intl.NumberFormat>();

/** No groups of thousands: a length is read into a field as it is printed. */
function decimals(least: number, most: number): Intl.NumberFormat {
  const key = `${least} ${most}`;
  const known = made.get(key);
  if (known !== undefined) return known;
  const format = new Intl.NumberFormat(LOCALE, {
    minimumFractionDigits: least,
    maximumFractionDigits: most,
    useGrouping: false,
  });
  made.set(key, format);
  return format;
}

/** Rounded first: platforms differ in where they round a half that has no exact binary fraction. */
const roundedTo = (value: number, digits: number): number => Number(value.toFixed(digits));

/** With so many decimals: "16.0". A minus is the caller's. */
export const fixedDecimals = (value: number, digits: number): string =>
  decimals(digits, digits).format(roundedTo(value, digits));

/** With as many decimals as it takes, so many at the most: "2.5", "16". A minus is the caller's. */
export const upToDecimals = (value: number, digits: number): string =>
  decimals(0, digits).format(roundedTo(value, digits));

let grouped: Intl.NumberFormat | undefined;

/** A large count, in groups as they are read: "100,000". */
export function manyWords(count: number): string {
  grouped ??= new Intl.NumberFormat(LOCALE, { maximumFractionDigits: 0 });
  return grouped.format(Math.round(count));
}

/** "50 %": whole, and parted from its sign as the lengths are from their units, which the platform does not do in English. */
export const percentWords = (share: number, round: (value: number) => number = Math.round): string =>
  `${round(share * 100)} %`;

/** What of a word there is for each kind of number that a language tells apart. English knows one, and all others. */
export type Forms = Readonly<Partial<Record<Intl.LDMLPluralRule, string>> & { readonly other: string }>;

let rules: Intl.PluralRules | undefined;

/** The form that goes with a count: `plural(count, { one: "piece", other: "pieces" })`. */
export function plural(count: number, forms: Forms): string {
  rules ??= new Intl.PluralRules(LOCALE);
  return forms[rules.select(count)] ?? forms.other;
}

/** The count and its form: "1 piece", "3 pieces". */
export const counted = (count: number, forms: Forms): string => `${count} ${plural(count, forms)}`;

const lists: { and?: Intl.ListFormat; or?: Intl.ListFormat } = {};

/** "the front", "the front and the back", "the front, the back and the front basque". */
export const listWords = (items: readonly string[]): string =>
  (lists.and ??= new Intl.ListFormat(LOCALE, { type: "conjunction" })).format(items);

/** "the front", "the front or the back". */
export const orWords = (items: readonly string[]): string =>
  (lists.or ??= new Intl.ListFormat(LOCALE, { type: "disjunction" })).format(items);

const days: { withYear?: Intl.DateTimeFormat; alone?: Intl.DateTimeFormat } = {};

/** A day of a document is the same day everywhere. */
const DAY = { day: "numeric", month: "long", timeZone: "UTC" } as const;

/** "25 November 2026", or without its year: "25 November". */
export function dateWords(date: Date, year: "with year" | "without year" = "with year"): string {
  if (year === "without year") return (days.alone ??= new Intl.DateTimeFormat(LOCALE, DAY)).format(date);
  return (days.withYear ??= new Intl.DateTimeFormat(LOCALE, { ...DAY, year: "numeric" })).format(date);
}

/** Reads the parts of a time by the clock and the calendar of a zone; without one, of this device. A clock has 24 hours. */
export function clockOf(zone?: string): (time: number) => Readonly<Partial<Record<string, string>>> {
  const format = new Intl.DateTimeFormat(LOCALE, {
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
    hour: "2-digit",
    minute: "2-digit",
    second: "2-digit",
    hourCycle: "h23",
    ...(zone === undefined ? {} : { timeZone: zone }),
  });
  return (time) => Object.fromEntries(format.formatToParts(time).map(({ type, value }) => [type, value]));
}
