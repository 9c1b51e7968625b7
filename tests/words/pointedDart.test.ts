/** What is said of a pointed dart: sums that add up as shown, the warning the right way round, and what works where it does not. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { DartAnswer, NaiveShortening, PointedDartAnswers, SeamTerm } from "../../src/core/pointedDart/pointedDart";
import type { DartFigures } from "../../src/core/dart/dartFigures";
import { piecePoint } from "../../src/core/geometry/point";
import { radiansFromDegrees } from "../../src/core/units";
import {
  answerFullness,
  answerNotes,
  answerSum,
  answerTitle,
  bustPointOffSentence,
  naiveFigures,
  naiveWarning,
  pointedDartAim,
  pointedDartFailureSentence,
  pointedDartQuestions,
} from "../../src/words/pointedDart";
import { anyAmount } from "../support/amounts";
import { ref } from "../support/works";

const waist = ref("front", "waistDart");
const side = ref("front", "sideDart");

const figures = (degrees: number, fullness: number, intake: number): DartFigures => ({
  apex: piecePoint(80, 260),
  inner: piecePoint(60, 400),
  outer: piecePoint(100, 400),
  legInner: 120,
  legOuter: 120,
  intake,
  angle: radiansFromDegrees(degrees),
  fullness,
  end: { along: 20, across: 0 },
});

const sumOf = (mouth: number, given: readonly SeamTerm[], smoothed: number): readonly SeamTerm[] => [
  { kind: "before", amount: 396 },
  { kind: "mouth", amount: mouth, from: 40, to: 40 - mouth },
  ...given,
  { kind: "smoothed", amount: smoothed },
  { kind: "after", amount: 396 },
];

/** An invented answer: from 40 mm to 24 mm, all of it at the side seam. */
const answer: DartAnswer = {
  key: "sideSeam",
  alterations: [{ kind: "dartPlace", id: "p", dart: waist, by: 15, how: "redraw", giveBack: { sideSeam: 1 } }],
  figures: { before: figures(14.25, 22.3, 40), after: figures(11.4, 20, 24), wantedFullness: 20 },
  freed: 16,
  given: [{ place: "sideSeam", amount: 16 }],
  sum: sumOf(16, [{ kind: "given", place: "sideSeam", amount: -16 }], 0),
  fullnessOff: 0,
  bustLoses: 0,
  basqueDartOff: 0,
  notes: [],
  cost: 21,
};

const naive: NaiveShortening = {
  alterations: [{ kind: "dartEnd", id: "e", dart: waist, shorten: 30, across: 0, hold: "mouth", giveBack: {} }],
  shorten: 30,
  figures: { before: figures(14.36, 22.4, 30), after: figures(19.19, 25.8, 30) },
};

const answers: PointedDartAnswers = {
  answers: [answer],
  naive,
  wantedFullness: 20,
  shorten: 40,
  across: 15,
  stop: 20,
  bustPointSeen: piecePoint(80, 240),
  bustPointOff: 4,
};

describe("what is asked", () => {
  it("goes by how the dart lies", () => {
    expect(pointedDartQuestions(waist).aside.label).toBe("It sits too far to the side by");
    expect(pointedDartQuestions(side).aside.label).toBe("It sits too low by");
    expect(pointedDartQuestions(waist).pointed.choices.map(({ value }) => value)).toEqual(["pointed", "right", "flat"]);
  });

  it("cautions against a pin on the body", () =>
    expect(pointedDartQuestions(waist).how).toContain("not a pin against the body"));
});

describe("an answer", () => {
  it("has its title, by what is done and where the rest goes", () => {
    expect(answerTitle(answer, waist)).toBe("Redraw it nearer the centre front; the side seam takes what is left over");
    expect(answerTitle({ ...answer, alterations: [], freed: -3 }, waist)).toBe(
      "Redraw it where it is; the side seam gives what is needed",
    );
    expect(answerTitle({ ...answer, key: "sharedWithOther" }, waist)).toBe(
      "Redraw it nearer the centre front; the side seam and the back waist dart share what is left over",
    );
    expect(answerTitle({ ...answer, key: "offCentre" }, waist)).toContain("Bring the whole front to the centre");
    expect(answerTitle({ ...answer, key: "sharedAtEnds" }, side)).toBe(
      "Redraw it higher; the side seam takes what is left over, half at the underarm and half at the waist",
    );
  });

  it("says where it ends and how full it is", () => {
    expect(pointedDartAim(answers, waist, "cm")).toBe(
      "It is to end 20 mm short of the bust point you marked: 40 mm shorter and 15 mm towards the centre front from where it was sewn.",
    );
    expect(pointedDartAim({ ...answers, shorten: 0.2, across: 0 }, waist, "cm")).toBe(
      "It is to end 20 mm short of the bust point you marked: where it ends now.",
    );
    expect(answerFullness(answer, "pointed", "cm")).toBe(
      "Fullness 20 mm, softer than on the toile, where it was 22 mm.",
    );
    expect(answerFullness(answer, "right", "cm")).toBe("Fullness 20 mm, as on the toile (22 mm).");
  });

  it("shows its sum", () => {
    expect(answerSum(answer, waist, "cm")).toEqual([
      "The mouth goes from 40 mm to 24 mm: 16 mm set free.",
      "Side seam, at the waist: 16 mm taken in.",
      "The finished waist seam of half the bodice: 39.6 cm before, 39.6 cm after.",
    ]);
  });

  const taken = /: (\d+) mm (set free|taken in|let out|taken up)\.$|the other (\d+) mm\.$/;

  it("its sum adds up as shown, to the millimetre, whatever is shared", () => {
    fc.assert(
      fc.property(anyAmount(1, 30), anyAmount(0.1, 0.9), anyAmount(-0.7, 0.7), (mouth, share, smoothed) => {
        const given = mouth + smoothed;
        const parts: readonly SeamTerm[] = [
          { kind: "given", place: "sideSeam", amount: -given * share },
          { kind: "given", place: "otherDart", amount: -given * (1 - share) },
        ];
        const lines = answerSum({ ...answer, sum: sumOf(mouth, parts, smoothed) }, waist, "cm");
        const numbers = lines.flatMap((line) => {
          const found = taken.exec(line);
          return found === null ? [] : [Number(found[1] ?? found[3])];
        });
        const [free = NaN, ...rest] = numbers;
        const gone = rest.reduce((sum, one) => sum + one, 0);
        const other = lines.some((line) => line.includes("the other")) ? (rest.at(-1) ?? 0) : 0;
        // What rounding makes up goes either way.
        expect([gone, gone - 2 * other]).toContain(free);
      }),
    );
  });

  it("tells what it brings with it", () => {
    expect(answerNotes(answer, waist, "cm")).toEqual([]);
    expect(
      answerNotes({ ...answer, bustLoses: 30, basqueDartOff: 6, notes: [{ code: "centreNowSeam" }] }, waist, "cm"),
    ).toEqual([
      "The whole bust girth loses 30 mm of its ease: see that you can spare it.",
      "The centre front is then a seam and can no longer be cut on the fold.",
      "At the waist it then meets the seam 6 mm nearer the centre front than the basque's dart: move that one alike if the two are to run on.",
    ]);
  });
});

describe("the usual mistake", () => {
  it("shortened, the mouth held: more pointed, not less", () => {
    expect(naiveWarning(naive, 20, "pointed", "cm")).toBe(
      // 22.4 and 25.8 mm are told as 22 and 26.
      "Shortened by 30 mm with its mouth held it would become 4.8° wider and 4 mm fuller: more pointed, not less.",
    );
    expect(naiveFigures(naive, "cm")).toBe("19.2° wide, 26 mm full");
  });

  it("where it came out too flat, says how far past what is wanted it would go", () => {
    // 25.8 mm of fullness, 30 and then 23 wanted.
    expect(naiveWarning(naive, 30, "flat", "cm")).toContain("4 mm fuller: 4 mm less than the 30 mm wanted.");
    expect(naiveWarning(naive, 23, "right", "cm")).toContain("3 mm more than the 23 mm wanted.");
    expect(naiveWarning(naive, 26, "flat", "cm")).toContain("near enough to the 26 mm wanted.");
  });

  it("lengthened, the mouth held: flatter", () => {
    const { before, after } = naive.figures;
    expect(
      naiveWarning({ ...naive, shorten: -30, figures: { before: after, after: before } }, 20, "flat", "cm"),
    ).toContain("4.8° narrower and 4 mm less full: flatter");
  });
});

it("says that measures are to be taken again only where the bust point lies farther off than a tape is out", () => {
  expect(bustPointOffSentence({ ...answers, measured: true }, "cm")).toBeNull();
  expect(bustPointOffSentence({ bustPointOff: 42.6, measured: true }, "cm")).toContain(
    "43 mm from where your measures put it",
  );
  expect(bustPointOffSentence({ bustPointOff: 42.6, measured: false }, "cm")).toContain("43 mm from the pattern's");
});

describe("where there is no answer", () => {
  it("names the number, and the most of it that works, rounded down", () => {
    const failure = {
      code: "pointedDart/too-much",
      what: "length",
      asked: 170,
      most: 131.98,
      because: { code: "alteration/too-short", most: 132 },
    } as const;
    expect(pointedDartFailureSentence(failure, "cm")).toBe(
      "The end cannot be shortened by 170 mm; 131 mm is the most that works.",
    );
    expect(pointedDartFailureSentence({ ...failure, asked: -170, most: -80.4 }, "cm")).toContain(
      "lengthened by 170 mm; 80 mm",
    );
    expect(pointedDartFailureSentence({ ...failure, what: "aside", asked: 90, most: 70.2 }, "cm")).toContain(
      "moved across by 90 mm; 70 mm",
    );
    expect(pointedDartFailureSentence({ ...failure, what: "fullness", asked: 70, most: 48.3 }, "cm")).toContain(
      "48 mm is the nearest that can",
    );
  });

  it("gives the reason where the reason names no most of its own", () => {
    const because = { code: "alteration/not-given-back", left: 7 } as const;
    expect(pointedDartFailureSentence({ code: "pointedDart/together-too-much", share: 0.508, because }, "cm")).toMatch(
      /50 % of all three can be had.*7 mm would be left over/,
    );
  });

  it("says which dart it cannot be asked of", () => {
    expect(
      pointedDartFailureSentence({ code: "pointedDart/not-this-dart", dart: ref("back", "waistDart") }, "cm"),
    ).toContain("the back waist dart");
    expect(pointedDartFailureSentence({ code: "pointedDart/no-such-dart", dart: ref("front", "neckDart") }, "cm")).toBe(
      "This pattern has no front neck dart.",
    );
  });
});
