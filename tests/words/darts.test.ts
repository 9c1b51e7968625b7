/** Darts in words, on plans whose figures are known. */
import { describe, expect, it } from "vitest";
import type { PlannedDart } from "../../src/core/plan/plan";
import { judgeDartEnd } from "../../src/core/dart/dartEndReading";
import { radiansFromDegrees } from "../../src/core/units";
import {
  dartHandleName,
  dartHandleValue,
  deepNote,
  discSentence,
  endWords,
  placeWords,
  stopNote,
  stopSentence,
  truingSentence,
  verdictSentence,
} from "../../src/words/terms/darts";
import { dartIn, planOf, ref, testWork } from "../support/works";

const dart = dartIn(planOf(testWork), "front", "waistDart");
const wanted = dart.wanted ?? dart.drawn;

const withFigures = (change: Partial<PlannedDart["drawn"]>, more: Partial<PlannedDart> = {}): PlannedDart => ({
  ...dart,
  ...more,
  drawn: { ...dart.drawn, ...change },
});

describe("verdicts", () => {
  it("says as full as asked, and by how little it differs", () => {
    const even = withFigures({ fullness: wanted.fullness }, { verdict: "asWanted" });
    expect(verdictSentence(even, "cm")).toBe("As full as your cup asks.");
    const little = withFigures({ fullness: wanted.fullness - 1 }, { verdict: "asWanted" });
    expect(verdictSentence(little, "cm")).toBe("As full as your cup asks: 1 mm less full, too little to notice.");
  });

  it("says too sharp by how much fuller, too flat by how much less full, in the wearer's unit", () => {
    const sharp = withFigures({ fullness: wanted.fullness + 13 }, { verdict: "tooSharp" });
    expect(verdictSentence(sharp, "cm")).toContain("Too sharp: 13 mm fuller");
    expect(verdictSentence(sharp, "in")).toContain("Too sharp: ½ in fuller");
    const flat = withFigures({ fullness: wanted.fullness - 5 }, { verdict: "tooFlat" });
    expect(verdictSentence(flat, "cm")).toContain("Too flat: 5 mm less full");
  });

  it("asks nothing of a dart that serves no bust", () => {
    expect(verdictSentence({ ...dart, wanted: null }, "cm")).toContain("serves no bust");
  });
});

describe("where a dart ends", () => {
  const usualStop = { least: 15, most: 25 };
  const ended = (along: number, across: number): PlannedDart =>
    withFigures({ end: { along, across } }, { usualStop, endJudged: judgeDartEnd({ along, across }, usualStop) });

  it("says how far short, and what is usual", () => {
    const said = stopSentence(ended(20, 9), "cm");
    expect(said).toBe("It ends 20 mm short of the bust point; 15 mm to 25 mm short is usual (common practice).");
  });

  it("asks for a dart past the bust point to be shortened", () => {
    const said = stopSentence(ended(-12, 0), "cm");
    expect(said).toContain("It ends 12 mm past the bust point: shorten it.");
  });

  it("says to which side of its line the bust point lies, in the wearer's terms", () => {
    expect(stopSentence(ended(20, 12), "cm")).toBe(
      "It ends 20 mm short of the bust point, which lies 12 mm nearer the centre front than its line; 10 mm beside at the most is usual (common practice).",
    );
    expect(stopSentence(ended(5, -22), "cm")).toBe(
      "It ends 5 mm short of the bust point, which lies 22 mm nearer the side than its line; 15 mm to 25 mm short and 10 mm beside at the most is usual (common practice).",
    );
    const side = { ...ended(30, 12), ref: ref("front", "sideDart") };
    expect(stopSentence(side, "cm")).toContain("which lies 12 mm above its line");
    expect(stopSentence({ ...side, drawn: { ...side.drawn, end: { along: 30, across: -11 } } }, "cm")).toContain(
      "which lies 11 mm below its line",
    );
  });

  it("says nothing of a dart that serves no bust", () => {
    expect(stopSentence(withFigures({ end: null }, { usualStop: null }), "cm")).toBeNull();
    expect(stopNote(withFigures({ end: null }, { usualStop: null }), "cm")).toBeNull();
  });

  it.each([
    [14, "ends 14 mm short"],
    [15, "nothing"],
    [25, "nothing"],
    [26, "ends 26 mm short"],
  ])("on paper says of an end %d mm short: %s", (short, words) => {
    const note = stopNote(ended(short, 0), "cm");
    expect(note ?? "nothing").toContain(words);
  });
});

describe("truing", () => {
  it("says which mouth end goes out along its leg and which comes in", () => {
    const said = truingSentence({ ...dart, truing: { inner: 2, outer: -2 } }, "cm");
    expect(said).toContain(
      "the mouth end nearer the centre front is carried 2 mm out along its leg, the mouth end nearer the side seam 2 mm in",
    );
    const other = truingSentence({ ...dart, truing: { inner: -2, outer: 2 } }, "cm");
    expect(other).toContain(
      "the mouth end nearer the side seam is carried 2 mm out along its leg, the mouth end nearer the centre front 2 mm in",
    );
  });

  it("says nothing of what no pencil shows", () => {
    expect(truingSentence({ ...dart, truing: { inner: 0.3, outer: -0.3 } }, "cm")).toBeNull();
  });
});

it("names the ends of a dart as they lie on the piece", () => {
  expect(endWords("waistDart", "back", "inner")).toBe("mouth end nearer the centre back");
  expect(endWords("sideDart", "front", "inner")).toBe("upper mouth end");
  expect(endWords("sideDart", "front", "outer")).toBe("lower mouth end");
  expect(endWords("sideDart", "front", "apex")).toBe("end");
});

it("says on a handle which dart and end it is, and the figures", () => {
  const figures = withFigures({
    intake: 40,
    angle: radiansFromDegrees(16.25),
    fullness: 23.6,
    end: { along: 20, across: 3 },
  });
  expect(dartHandleName(ref("front", "waistDart"), "apex")).toBe("front waist dart, end");
  expect(dartHandleValue({ ...figures, ref: ref("front", "waistDart") }, "apex", "cm")).toBe(
    "20 mm short of the bust point. Mouth 40 mm, angle 16.3°, fullness 24 mm",
  );
  expect(dartHandleValue({ ...figures, ref: ref("front", "waistDart") }, "inner", "cm")).toBe(
    "Mouth 40 mm, angle 16.3°, fullness 24 mm",
  );
});

it("names where width is taken, the other dart being on the other half", () => {
  expect(placeWords("otherDart", "front")).toBe("back waist dart");
  expect(placeWords("otherDart", "back")).toBe("front waist dart");
  expect(placeWords("centreSeam", "back")).toBe("centre back seam");
});

it("says what a folded disc shows", () => {
  expect(discSentence({ angle: radiansFromDegrees(19.19), leg: 91, height: 25.8 }, "cm")).toBe(
    "19.2° between legs of 9.1 cm stands 26 mm high",
  );
});

it("speaks of a dart too deep to be sewn as one, and not of one that is not", () => {
  expect(deepNote(withFigures({ angle: radiansFromDegrees(50) }))).toContain("50.0° wide");
  expect(deepNote(withFigures({ angle: radiansFromDegrees(45) }))).toBeNull();
});
