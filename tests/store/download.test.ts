/** Files that are handed out can be opened again, however much there is to hand out. */
import { describe, expect, it } from "vitest";
import { LARGEST_WORKS } from "../../src/document/readLimits";
import { readAnyFile } from "../../src/document/worksFile";
import { downloadsOf, downloadsOfAll } from "../../src/store/download";
import { sampleWork } from "../support/sampleWork";

const DAY = Date.UTC(2026, 10, 29);

describe("a file that is handed out", () => {
  it("is one, by the name of the work, or by the day", () => {
    expect(downloadsOf({ ...sampleWork, name: "My bodice, 2" }).map(({ name }) => name)).toEqual([
      "my-bodice-2.bodice.json",
    ]);
    expect(downloadsOfAll([{ work: sampleWork }], DAY).map(({ name }) => name)).toEqual([
      "bodicewright-works-2026-11-29.json",
    ]);
  });

  it("is several where one were larger than what is read: each opens, and together they hold all", () => {
    // Thirty photographs of 2.6 million characters are 78 million: more than the 64 that are read.
    const data = "A".repeat(2_600_000);
    const photographs = Array.from({ length: 30 }, (_, added) => ({
      trial: "t1",
      added,
      type: "image/jpeg" as const,
      data,
    }));
    const files = downloadsOf(sampleWork, photographs);
    expect(files.map(({ name }) => name.replace(/^.*(?=-\d\.)/u, ""))).toEqual(["-1.bodice.json", "-2.bodice.json"]);
    const read = files.map(({ text }) => readAnyFile(text));
    expect(read.map((one) => one.ok && one.value.works[0]?.work)).toEqual([sampleWork, sampleWork]);
    expect(
      read.flatMap((one) => (one.ok ? (one.value.works[0]?.photographs ?? []) : [])).map((one) => one.added),
    ).toEqual(photographs.map(({ added }) => added));
    expect(Math.max(...files.map(({ text }) => text.length))).toBeLessThanOrEqual(LARGEST_WORKS);
  }, 120_000);

  it("of works is several too, none of them left out; one that is too large by itself is handed out all the same", () => {
    // An unread field holds whatever stood in it.
    const large = (name: string) => ({
      work: { ...sampleWork, name, unread: { "tape.0.bustGirth": name.repeat(7_000_000) } },
    });
    const files = downloadsOfAll(["a", "b", "c", "d", "e", "f", "g", "h", "i", "j"].map(large), DAY);
    expect(files.map(({ name }) => name)).toEqual([
      "bodicewright-works-2026-11-29-1.json",
      "bodicewright-works-2026-11-29-2.json",
    ]);
    const works = files.flatMap(({ text }) => (JSON.parse(text) as { works: { work: { name: string } }[] }).works);
    expect(works.map(({ work }) => work.name).join("")).toBe("abcdefghij");
    expect(downloadsOfAll([large("abcdefghijk")], DAY)).toHaveLength(1);
  }, 120_000);
});
