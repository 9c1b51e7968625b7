import { describe, expect, it } from "vitest";
import type { WorkEntry } from "../../../src/store/library";
import { namesakes, sameSaid, whenSaid } from "../../../src/ui/works/alike";
import { momentsFrom } from "../../../src/words/terms/moments";

const entry = (id: string, name: string, saved: string, wearer: string | null = null): WorkEntry => ({
  id,
  name,
  wearer,
  stamp: "1",
  saved: Date.parse(saved),
  binned: null,
});

const write = momentsFrom(Date.parse("2026-11-28T18:00:00Z"), "UTC");

describe("works of one name", () => {
  it("are told apart by the day where that is enough, else by the clock", () => {
    const said = whenSaid(
      [
        entry("a", "Blouse", "2026-11-03T10:00:00Z"),
        entry("b", "Blouse", "2026-11-04T10:00:00Z"),
        entry("c", "Dress", "2026-11-03T10:00:00Z"),
        entry("d", " dress", "2026-11-03T16:45:00Z"),
        entry("e", "Coat", "2026-11-03T10:00:00Z"),
        entry("f", "Coat", "2026-11-03T10:00:40Z"),
        entry("g", "Skirt", "2026-11-03T10:00:00Z"),
      ],
      write,
    );
    expect(Object.fromEntries(said)).toEqual({
      a: "3 November",
      b: "4 November",
      c: "3 November, 10:00",
      d: "3 November, 16:45",
      e: "3 November, 10:00:00",
      f: "3 November, 10:00:40",
      g: "3 November",
    });
  });

  it("for another wearer are no namesakes: the row says so already", () => {
    const entries = [
      entry("a", "Blouse", "2026-11-03T10:00:00Z", "Anna"),
      entry("b", "Blouse", "2026-11-03T10:00:00Z", "Berta"),
    ];
    expect(namesakes(entries).size).toBe(0);
    expect([...whenSaid(entries, write).values()]).toEqual(["3 November", "3 November"]);
  });
});

describe("works that are the very same", () => {
  const entries = ["a", "b", "c", "d"].map((id, at) => entry(id, "Blouse", `2026-11-0${4 - at}T10:00:00Z`));
  const when = whenSaid(entries, write);
  const said = (texts: Readonly<Record<string, string | undefined>>) =>
    Object.fromEntries(sameSaid(entries, when, ({ id }) => texts[id]));

  it("are named by where the other stands", () => {
    expect(said({ a: "x", b: "x", c: "y", d: "x" })).toEqual({
      b: "the same as the one above",
      d: "the same as the one saved 3 November",
    });
  });

  it("are not called so while nothing is known, or where anything differs", () => {
    expect(said({})).toEqual({});
    expect(said({ a: "x", b: undefined, c: "y" })).toEqual({});
  });
});
