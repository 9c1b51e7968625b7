/** When something was, in words, as seen from now. */
import { dayWords } from "./days";
import { clockOf } from "./language";

/** How exactly a time is told. */
export type Exactness = "day" | "minute" | "second";

/** Writes a time (milliseconds since 1970); "" where it is none. */
export type MomentWriter = (time: number, exactness?: Exactness) => string;

/** ms. What is before it was never noted, what is after it no calendar has. */
const KNOWN = { after: 0, before: 8e15 };

/** ms */
const DAY = 24 * 60 * 60 * 1000;

/**
 * A day before today is told by its name, with the year where it was another; today always with the clock, of 24 hours.
 *
 * @param now  milliseconds since 1970
 * @param zone whose clock and calendar; without it, those of this device
 */
export function momentsFrom(now: number, zone?: string): MomentWriter {
  const partsOf = clockOf(zone);
  const read = (time: number) => {
    const part = partsOf(time);
    const minute = `${part["hour"]}:${part["minute"]}`;
    return { day: `${part["year"]}-${part["month"]}-${part["day"]}`, minute, second: `${minute}:${part["second"]}` };
  };
  const today = read(now).day;
  // By the calendar, since a day of a changing clock has not 24 hours.
  const yesterday = new Date(Date.parse(today) - DAY).toISOString().slice(0, 10);
  const [year] = today.split("-");
  return (time, exactness = "day") => {
    if (!(time > KNOWN.after && time < KNOWN.before)) return "";
    const { day, minute, second } = read(time);
    const clock = exactness === "second" ? second : minute;
    if (day === today) return `today, ${clock}`;
    const said =
      day === yesterday ? "yesterday" : dayWords(day, day.startsWith(`${year}-`) ? "without year" : "with year");
    return exactness === "day" ? said : `${said}, ${clock}`;
  };
}
