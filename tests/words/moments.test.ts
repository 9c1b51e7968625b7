import { describe, expect, it } from "vitest";
import { momentsFrom } from "../../src/words/terms/moments";

const LONDON = "Europe/London";
const at = (moment: string): number => Date.parse(moment);

/** What is said in London of one moment, seen from another. */
const said = (moment: string, now: string, exactness?: "day" | "minute" | "second", zone = LONDON): string =>
  momentsFrom(at(now), zone)(at(moment), exactness);

describe("a moment", () => {
  it.each([
    ["2026-11-28T14:05:00Z", "2026-11-28T18:00:00Z", "today, 14:05"],
    ["2026-11-28T00:00:00Z", "2026-11-28T18:00:00Z", "today, 00:00"],
    ["2026-11-28T00:00:00Z", "2026-11-28T00:00:30Z", "today, 00:00"],
    ["2026-11-27T23:59:59Z", "2026-11-28T00:00:00Z", "yesterday"],
    ["2026-11-27T00:00:00Z", "2026-11-28T23:59:59Z", "yesterday"],
    ["2026-11-26T23:59:59Z", "2026-11-28T00:00:00Z", "26 November"],
    ["2026-11-03T09:30:00Z", "2026-11-28T18:00:00Z", "3 November"],
    ["2026-01-01T00:00:00Z", "2026-12-31T23:00:00Z", "1 January"],
    ["2025-12-31T23:59:59Z", "2026-11-28T18:00:00Z", "31 December 2025"],
  ])("%s, seen at %s, is “%s”", (moment, now, words) => {
    expect(said(moment, now)).toBe(words);
  });

  it("of the evening before the year changed is yesterday, and two days back has its year", () => {
    expect(said("2026-12-31T22:00:00Z", "2027-01-01T08:00:00Z")).toBe("yesterday");
    expect(said("2026-12-30T22:00:00Z", "2027-01-01T08:00:00Z")).toBe("30 December 2026");
  });

  it("goes by the clock of the place", () => {
    // 23:30 in London in summer is half past midnight by the clock there.
    expect(said("2026-07-14T23:30:00Z", "2026-07-15T10:00:00Z")).toBe("today, 00:30");
    expect(said("2026-07-14T23:30:00Z", "2026-07-15T10:00:00Z", "day", "UTC")).toBe("yesterday");
    expect(said("2026-07-14T23:30:00Z", "2026-07-15T10:00:00Z", "day", "Pacific/Auckland")).toBe("today, 11:30");
  });

  it("is yesterday's by the calendar where the clock was changed between", () => {
    // In London the clocks go back on 25 October 2026: that day has 25 hours, and 29 March has 23.
    expect(said("2026-10-24T23:30:00Z", "2026-10-26T00:10:00Z")).toBe("yesterday");
    expect(said("2026-03-28T00:30:00Z", "2026-03-29T23:30:00Z")).toBe("28 March");
    expect(said("2026-03-29T00:30:00Z", "2026-03-29T23:30:00Z")).toBe("yesterday");
  });

  it("is told as exactly as is asked", () => {
    const [moment, now] = ["2026-11-03T09:30:07Z", "2026-11-28T18:00:00Z"];
    expect(said(moment, now, "minute")).toBe("3 November, 09:30");
    expect(said(moment, now, "second")).toBe("3 November, 09:30:07");
    expect(said(now, now, "minute")).toBe("today, 18:00");
    expect(said(now, now, "second")).toBe("today, 18:00:00");
  });

  it("that lies ahead, by a clock that was wrong, has its date", () => {
    expect(said("2027-02-03T09:30:00Z", "2026-11-28T18:00:00Z")).toBe("3 February 2027");
  });

  it("that was never noted is not told", () => {
    const write = momentsFrom(at("2026-11-28T18:00:00Z"), LONDON);
    expect([0, -1, NaN, Infinity].map((time) => write(time))).toEqual(["", "", "", ""]);
  });
});
