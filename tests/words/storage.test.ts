import { describe, expect, it } from "vitest";
import { LIMITS } from "../../src/core/decisions/limits";
import {
  backFromBinSentence,
  BIN_WORDS,
  binnedElsewhereSentence,
  binnedSentence,
  BRING_BACK_WORDS,
  broughtInSentence,
  conflictCopySentence,
  COPY_WORDS,
  copyName,
  DAMAGED_WORDS,
  entryName,
  fileFailureSentence,
  fileRefusedSentence,
  leftOutSentence,
  salvagedName,
  salvagedSentence,
  sameWorkSentence,
  SAVED_AFRESH_WORDS,
  SAVING_WORDS,
  storageFailureSentence,
  UNSAVED_WORDS,
  type StorageFailureLike,
} from "../../src/words/storage";
import type { WorkFileFailureLike } from "../../src/words/workFile";

const FILES: readonly WorkFileFailureLike[] = [
  { code: "file/not-json" },
  { code: "file/foreign" },
  { code: "file/newer", version: 3, known: 1 },
  { code: "file/damaged", places: ["pattern.chart.sizes.1.waist", "name"] },
  { code: "file/too-large", most: 8_000_000 },
  { code: "file/too-deep" },
  { code: "file/too-slow" },
  { code: "file/out-of-reach" },
];

describe("fileFailureSentence", () => {
  it("says what the file is, and that nothing was changed", () => {
    const sentences = FILES.map(fileFailureSentence);
    expect(new Set(sentences).size).toBe(FILES.length);
    for (const sentence of sentences) expect(sentence).toMatch(/ Nothing was changed\.$/);
    expect(sentences[2]).toContain("newer version of Bodicewright (3; this one reads up to 1)");
    expect(sentences[3]).toContain("damaged at pattern.chart.sizes.1.waist, name.");
    expect(sentences[4]).toContain("8 megabytes");
  });
});

describe("storageFailureSentence", () => {
  const sentence = (failure: StorageFailureLike): string => storageFailureSentence(failure);
  const UNSAVED = [
    "storage/unavailable",
    "storage/full",
    "storage/failed",
    "storage/silent",
    "storage/unanswered",
  ] as const;

  it("offers the way to keep the work where it cannot be saved", () => {
    for (const code of UNSAVED) expect(sentence({ code })).toMatch(/[Dd]ownload the work to/);
  });

  it("says what can be done about it besides, where anything can", () => {
    expect(sentence({ code: "storage/full" })).toMatch(/empty the bin under Works/);
    expect(sentence({ code: "storage/unanswered" })).toMatch(/load the page again/);
    expect(sentence({ code: "storage/silent" })).toMatch(/tried again by itself/);
  });

  it("never calls saved what is not", () => {
    for (const code of UNSAVED) expect(sentence({ code })).not.toContain(SAVING_WORDS.saved);
  });

  it("tells a damaged work from one of a newer version, and that neither was touched", () => {
    const damaged = sentence({ code: "storage/damaged", why: { code: "file/damaged", places: ["name"] } });
    const newer = sentence({ code: "storage/damaged", why: { code: "file/newer", version: 2, known: 1 } });
    expect(newer).not.toBe(damaged);
    expect(newer).toMatch(/newer version/);
    for (const text of [damaged, newer]) expect(text).toMatch(/left as it is/);
  });

  it("does not put one failure in the words of another", () => {
    const codes = [...UNSAVED, "storage/missing"] as const;
    expect(new Set(codes.map((code) => sentence({ code }))).size).toBe(codes.length);
  });
});

describe("entryName", () => {
  it("is the name, or says that there is none", () => {
    expect(["Summer", "", "  "].map(entryName)).toEqual(["Summer", "(no name)", "(no name)"]);
  });
});

describe("copyName", () => {
  it("is always a name that a work can have", () => {
    expect(copyName("Summer")).toBe("Summer (copy)");
    expect(copyName("x".repeat(LIMITS.text)).length).toBeLessThanOrEqual(LIMITS.text);
  });
});

describe("conflictCopySentence", () => {
  it("names both works, each by what the list calls it", () => {
    expect(conflictCopySentence("", " (copy)", [])).toBe(
      "“(no name)” was changed in another tab too. What was changed here is kept beside it, as “ (copy)”.",
    );
  });

  it("names what both changed, as a list", () => {
    expect(
      conflictCopySentence("Summer", "Summer (copy)", ["the name", "waist girth", "the order of the alterations"]),
    ).toBe(
      "“Summer” was changed in another tab too (the name, waist girth and the order of the alterations). What was changed here is kept beside it, as “Summer (copy)”.",
    );
  });
});

describe("words of the bin", () => {
  it("name the work, by what the list calls it, and say what becomes of it", () => {
    expect(binnedSentence("")).toBe("“(no name)” was put in the bin. It stays there for 30 days.");
    expect(binnedElsewhereSentence("Summer")).toBe(
      "“Summer”, which is open here, was put in the bin in another tab. It comes back as soon as you change it.",
    );
    expect(backFromBinSentence("Summer")).toBe(
      "“Summer” lay in the bin. As you went on with it, it was taken out again.",
    );
  });

  it("follow on from why a work could not be put there", () => {
    expect(BIN_WORDS.notBinned).toMatch(/^So .*\.$/);
  });
});

describe("words of a damaged work", () => {
  it("give what was read a name that a work can have, and that tells it apart", () => {
    expect(salvagedName("Summer")).toBe("Summer (what could be read)");
    expect(salvagedName("x".repeat(LIMITS.text)).length).toBeLessThanOrEqual(LIMITS.text);
  });

  it("name five places that could not be read, and count the others", () => {
    const places = ["a", "b", "c", "d", "e", "f", "g"];
    const named = (lost: readonly string[]): string | undefined =>
      / Not readable: (.*)\.$/.exec(salvagedSentence(lost))?.[1];
    expect(named(places.slice(0, 1))).toBe("a");
    expect(named(places.slice(0, 5))).toBe("a, b, c, d, e");
    expect(named(places)).toBe("a, b, c, d, e and 2 more");
  });

  it("say that the damaged one is still there", () => {
    expect(salvagedSentence(["name"])).toContain("the damaged one was left as it is");
  });
});

describe("words of copies and files", () => {
  it("count what came of a file, one and many, and say nothing of what did not come", () => {
    const said = (added: number, same: number, unreadable: number, notKept = 0): string =>
      broughtInSentence("f.json", { added, same, unreadable, notKept });
    expect(said(1, 0, 0)).toBe("f.json: 1 work brought in.");
    expect(said(2, 0, 0)).toBe("f.json: 2 works brought in.");
    expect(said(0, 0, 0)).toBe("f.json: no new work.");
    expect(said(2, 1, 1)).toBe("f.json: 2 works brought in; 1 was here already, the very same; 1 could not be read.");
    expect(said(0, 3, 0)).toBe("f.json: no new work; 3 were here already, the very same.");
    expect(said(1, 0, 0, 1)).toBe("f.json: 1 work brought in; 1 could not be saved here and was left out.");
    expect(said(2, 0, 0, 3)).toBe("f.json: 2 works brought in; 3 could not be saved here and were left out.");
  });

  it("name the works that are left out, and the one that is here already", () => {
    expect(leftOutSentence(["Summer", "", "Winter"])).toBe(
      "Left out of the file, since it could not be read: “Summer”, “(no name)” and “Winter”.",
    );
    expect(sameWorkSentence("")).toBe(
      "“(no name)” is here already, the very same, so it was opened and not added again.",
    );
  });

  it("name the file that is refused", () => {
    expect(fileRefusedSentence("f.json", { code: "file/foreign" })).toBe(
      "f.json: This is a file of something else, not a saved work. Nothing was changed.",
    );
  });
});

describe("all that is said of storage", () => {
  it("ends as a sentence, and what is pressed does not", () => {
    const sentences = [
      SAVED_AFRESH_WORDS,
      UNSAVED_WORDS.text,
      DAMAGED_WORDS.nothing,
      COPY_WORDS.reminder,
      BIN_WORDS.notBinned,
      salvagedSentence(["name"]),
    ];
    for (const one of sentences) expect(one).toMatch(/^[A-Z“].*\.$/);
    const labels = [
      UNSAVED_WORDS.goOn,
      BRING_BACK_WORDS,
      BIN_WORDS.removeForGood,
      DAMAGED_WORDS.open,
      DAMAGED_WORDS.download,
      COPY_WORDS.all,
    ];
    for (const one of labels) expect(one).toMatch(/^[A-Z][^.]*$/);
    expect(new Set(labels).size).toBe(labels.length);
  });
});
