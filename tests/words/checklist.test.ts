import type { Alteration, DartRedraw } from "../../src/core/decisions/alteration";
import type { AlterationTrace } from "../../src/core/alterations/outcome/trace";
import { describe, expect, it } from "vitest";
import { derivePlan } from "../../src/core/plan/derivePlan";
import { piecePoint } from "../../src/core/geometry/point";
import type { ChecklistItem, ChecklistStep, CutLine, Plan, PlannedAlteration } from "../../src/core/plan/plan";
import type { Work } from "../../src/core/decisions/work";
import { radians } from "../../src/core/units";
import { checklistByPiece, checklistLine, checklistSentence } from "../../src/words/checklist";
import { refusedSentence } from "../../src/words/doubts";
import { alterationTitle } from "../../src/words/planned";
import { sampleWork } from "../support/sampleWork";

const sentence = (step: ChecklistStep, piece: ChecklistItem["piece"] = "front"): string =>
  checklistSentence(checklistLine({ piece, step, amount: 0 }, [], "cm"));

function planOf(work: Work): Plan {
  const plan = derivePlan(work);
  if (!plan.ok) throw new Error(plan.failure.code);
  return plan.value;
}

const walk = (ease: number): string =>
  sentence({ kind: "walk", seam: "shoulder", first: ["back"], second: ["front"], ease }, "back");

const cutLine = (over: Partial<CutLine>): CutLine => ({
  piece: "front",
  level: "waist",
  between: ["12", "14"],
  share: 0.4,
  offset: 3,
  alterationMove: 0,
  at: piecePoint(0, 0),
  ...over,
});

function wearersOwn(alteration: DartRedraw, trace: Partial<AlterationTrace> = {}): ChecklistStep {
  const planned: PlannedAlteration = {
    id: "s",
    source: "wearer",
    phase: "darts",
    piece: alteration.dart.piece,
    what: { kind: "alteration", alteration },
    outcome: {
      ok: true,
      value: {
        piece: alteration.dart.piece,
        surgery: [],
        values: {},
        before: {},
        after: {},
        moved: [],
        seam: "waist",
        seamBefore: 0,
        seamUngiven: 0,
        seamAfter: 0,
        given: [],
        notes: [],
        ...trace,
      },
    },
  };
  return { kind: "alteration", planned };
}

describe("checklist words", () => {
  it("says where the new side seam lies from a printed line, and how far along", () => {
    const words = sentence({ kind: "blend", cutLine: cutLine({}), from: "bust", taken: 0 });
    expect(words).toContain(
      "3 mm outside the waist end of the 12 line (40 % of the way from the 12 line to the 14 line)",
    );
    expect(words).toContain("from the traced line at the bust");
  });

  it("says inside for a line within the printed one, and keeps to a line where there is nothing to move", () => {
    expect(sentence({ kind: "blend", cutLine: cutLine({ offset: -4 }), from: "bust", taken: 0 })).toContain(
      "4 mm inside the waist end of the 12 line",
    );
    const same = checklistLine(
      {
        piece: "front",
        step: { kind: "blend", cutLine: cutLine({ offset: 0.01, share: 0.001 }), from: "bust", taken: 0 },
        amount: 0,
      },
      [],
      "cm",
    );
    expect(same.text).toContain("mark the side seam on the 12 line.");
    expect(same.amount).toBe("on 12");
    expect(
      sentence({ kind: "blend", cutLine: cutLine({ offset: 10, share: 0.999 }), from: "bust", taken: 0 }),
    ).toContain("on the 14 line.");
  });

  it("opens for a fuller bust and laps for a smaller one, each with its own drop", () => {
    const fuller = sentence({ kind: "bust", spread: 12, whole: 24, drop: 11, hinge: 82 });
    expect(fuller).toMatch(/Full bust adjustment: open .* 12 mm .*24 mm round/);
    expect(fuller).toContain("lower the part below by 11 mm");
    expect(fuller).toContain("on to the armhole, 82 mm from the underarm, measured straight");
    const smaller = sentence({ kind: "bust", spread: -6, whole: -12, drop: -7, hinge: 82 });
    expect(smaller).toMatch(/Small bust adjustment: lap .* 6 mm .*12 mm round/);
    expect(smaller).toContain("Fold 7 mm out of the centre part");
    expect(smaller).not.toContain("-");
  });

  it("sets out beside a princess bodice's bust job the amount that the piece itself changes by", () => {
    const amount = (piece: ChecklistItem["piece"]) =>
      checklistLine({ piece, step: { kind: "bust", spread: -7, whole: -14, drop: -6, hinge: 0 }, amount: 7 }, [], "cm")
        .amount;
    expect([amount("centreFront"), amount("sideFront")]).toEqual(["6 mm", "7 mm"]);
  });

  it("says how to shorten a dart, what is held and where the freed amount goes", () => {
    const dart = { piece: "front", dart: "waistDart" } as const;
    const words = sentence(
      wearersOwn(
        { kind: "dartEnd", id: "a", dart, shorten: 15, across: 5, hold: "fullness", giveBack: {} },
        {
          given: [
            { place: "sideSeam", piece: "front", amount: 2 },
            { place: "otherDart", piece: "back", amount: -3 },
            { place: "centreSeam", piece: "front", amount: 0.01 },
          ],
          notes: [{ code: "centreNowSeam" }],
        },
      ),
    );
    expect(words).toContain("Shorten the waist dart by 15 mm and move its end 5 mm towards the centre front");
    expect(words).toContain("its fullness held");
    expect(words).toContain("2 mm off the side seam at the waist seam and 3 mm out of the back waist dart.");
    expect(words).toContain("not on the fold");
    expect(words).not.toContain("bust line");
  });

  it("has the side seam of a band drawn when both its ends are marked", () => {
    const words = sentence(
      { kind: "blend", cutLine: cutLine({ piece: "frontBand" }), from: "underBust", taken: 0 },
      "frontBand",
    );
    expect(words).toContain("When its under-bust end is put too, draw the side seam between the two");
    expect(words.match(/draw the side seam/gi)).toHaveLength(1);
  });

  it("tells once what comes of a narrower dart at the side seam, with what the size alone would ask for", () => {
    const taken = (by: number, offset = 3): string =>
      sentence({ kind: "blend", cutLine: cutLine({ offset }), from: "bust", taken: by });
    expect(taken(5)).toContain(
      "2 mm inside the waist end of the 12 line (3 mm outside it by your size, less 5 mm set free by narrower darts)",
    );
    expect(taken(-2)).toContain(
      "5 mm outside the waist end of the 12 line (3 mm outside it by your size, and 2 mm taken by wider darts)",
    );
    expect(taken(3)).toContain("on the 12 line (3 mm outside it");
  });

  it("puts points from where they are printed, and says by what the piece is laid", () => {
    const words = sentence({
      kind: "places",
      places: [
        { point: "underarm", from: "underarm", out: 1.2, down: -4.9 },
        { point: "sideWaist", from: "sideWaist", out: 27.3, down: 0.2 },
        { point: "centreBust", from: "centreBust", out: 0, down: 0.4 },
        { point: "armholeDartInner", from: "underarm", out: -20, down: -56.4 },
      ],
      lengths: [{ seam: "side", from: "underarm", to: "sideBust", length: 41.2 }],
      stayed: ["centreNeck", "shoulderTip"],
    });
    expect(words).toContain(
      "grain on grain, centre front at the neck and armhole end of the shoulder where they are printed",
    );
    expect(words).toContain("Underarm: 1 mm outwards and 5 mm up.");
    expect(words).toContain("Side at the waist: 27 mm outwards.");
    expect(words).not.toContain("Centre front at the bust line:");
    expect(words).toContain(
      "Mouth of the armhole dart, upper end: 20 mm inwards and 56 mm up from the printed underarm.",
    );
    expect(words).toContain(
      "Draw the side seam from the underarm to the side at the bust line in a smooth line 41 mm long.",
    );
  });

  it("speaks of up and down on a side dart", () => {
    const dart = { piece: "front", dart: "sideDart" } as const;
    const place = sentence(wearersOwn({ kind: "dartPlace", id: "a", dart, by: -8, how: "redraw", giveBack: {} }));
    expect(place).toBe("Move the whole side dart 8 mm down.");
    const mouth = sentence(wearersOwn({ kind: "dartMouth", id: "a", dart, inner: 2, outer: -5, giveBack: {} }));
    expect(mouth).toContain("Narrow the side dart by 3 mm");
  });

  it("names each leg of an uneven dart, and an end past the bust point", () => {
    const figures = {
      apex: piecePoint(95, 250),
      inner: piecePoint(80, 420),
      outer: piecePoint(110, 420),
      legInner: 96,
      legOuter: 92,
      intake: 30,
      angle: radians(0.2),
      fullness: 20,
      end: { along: -5, across: 0 },
    };
    const words = sentence({
      kind: "dart",
      dart: { piece: "front", dart: "waistDart" },
      figures,
      places: {
        inner: { point: "waistDartInner", from: "waistDartInner", out: 2, down: 0 },
        outer: { point: "waistDartOuter", from: "waistDartOuter", out: 0, down: 0.1 },
        apex: { point: "waistDartApex", from: "waistDartApex", out: -3, down: 20 },
      },
      isByOwnPoint: true,
      isBySight: false,
      isMovedAlready: false,
      late: false,
    });
    expect(words).toContain("mouth 30 mm wide, inner leg 96 mm, outer leg 92 mm long");
    expect(words).toContain("5 mm past your own bust point");
    expect(words).toContain(
      "Its mouth, from where it is printed: inner end 2 mm outwards; outer end where it is printed.",
    );
    expect(words).toContain("Its end, from where it is printed: 3 mm inwards and 20 mm down.");
  });

  it("tells a dart that was slid as a check of where it lies, counted from where it is printed", () => {
    const slid: Work = {
      ...sampleWork,
      pattern: { ...sampleWork.pattern, style: "sideDart" },
      alterations: [{ kind: "fit", id: "a", fit: "bustPointLevel", amount: 20 }],
    };
    const front = checklistByPiece(planOf(slid), "cm").find(({ piece }) => piece === "front");
    const line = front?.lines.find(({ text }) => text.includes("the side dart, all the above included"));
    expect(line?.text).toMatch(/^Check the side dart, all the above included: mouth /);
    expect(line?.moves.find((move) => move.startsWith("Its end"))).toMatch(
      /^Its end, from where it is printed: .*20 mm down/,
    );
    expect(line?.moves.find((move) => move.startsWith("Its mouth"))).toMatch(/^Its mouth, from where it is printed: /);
  });

  it("sums in one line what several redraws of a dart give back", () => {
    const dart = { piece: "front", dart: "sideDart" } as const;
    const twice: Work = {
      ...sampleWork,
      pattern: { ...sampleWork.pattern, style: "sideDart" },
      alterations: [
        { kind: "dartMouth", id: "a", dart, inner: -3, outer: -3, giveBack: { waistEnd: 1 } },
        { kind: "dartMouth", id: "b", dart, inner: -2, outer: -2, giveBack: { waistEnd: 1 } },
      ],
    };
    const lines = checklistByPiece(planOf(twice), "cm").flatMap((group) => group.lines);
    const counted = lines.flatMap(({ moves }) => moves.filter((move) => move.startsWith("Counted in")));
    // 6 mm and 4 mm narrower.
    expect(counted).toEqual(["Counted in the points of this sheet already: 10 mm off the side seam at its waist end."]);
  });

  it("traces each half from its own cup version, and turns that of the right front over", () => {
    const uneven: Work = {
      ...sampleWork,
      pattern: { ...sampleWork.pattern, style: "sideDart" },
      picks: { cup: "B", halfCups: { right: "D" } },
    };
    const [front] = checklistByPiece(planOf(uneven), "cm");
    const [left, right] = (front?.lines ?? []).filter(({ text }) => text.includes("Trace the")).map(({ text }) => text);
    expect(left).toMatch(
      /^On the left half: Trace the \d+ line of the front, cup version B, .* Trace it as printed, and write left on it. On the cloth, tack one line along the grain\./,
    );
    expect(right).toMatch(
      /^On the right half: Trace the \d+ line of the front, cup version D, .* Trace it turned over, and write right on it. On the cloth, tack two lines along the grain\./,
    );
  });

  it("has her own bust point marked where its piece is traced, by the measures taken", () => {
    const own = { fromCentre: 84, fromSideNeck: 295, fromPrinted: { out: -11, down: 21 }, isMoved: false };
    const traced = (over: Partial<typeof own> | { fromSideNeck: null }, piece: ChecklistItem["piece"] = "front") =>
      sentence({ kind: "trace", size: "14", cup: null, isTwice: false, own: { ...own, ...over } }, piece);
    expect(traced({})).toContain(
      "Mark your own bust point 8.4 cm from the centre front and 29.5 cm straight from the side neck point.",
    );
    expect(traced({})).not.toContain("anew");
    expect(traced({ isMoved: true })).toContain("Mark it anew there");
    // A cup has no side neck point.
    expect(traced({ fromSideNeck: null }, "cup")).toContain(
      "8.4 cm from the centre front and 21 mm lower than the pattern’s.",
    );
    const groups = checklistByPiece(planOf(sampleWork), "cm");
    const marking = groups.filter(({ lines }) => lines.some(({ text }) => text.includes("Mark your own bust point")));
    expect(marking.map(({ piece }) => piece)).toEqual(["front"]);
  });

  it("says which seam is eased, and that the others are equal", () => {
    expect(walk(6)).toContain("The back is 6 mm longer: that is eased in.");
    expect(walk(0)).toContain("They must come out equal.");
  });

  it("says why an alteration is left out, with the most that works", () => {
    const alteration: Alteration = {
      kind: "dartMouth",
      id: "a",
      dart: { piece: "back", dart: "waistDart" },
      inner: -30,
      outer: -30,
      giveBack: {},
    };
    const planned: PlannedAlteration = {
      id: "a",
      source: "wearer",
      phase: "darts",
      piece: "back",
      what: { kind: "alteration", alteration },
      outcome: { ok: false, failure: { code: "alteration/dart-vanishes", smallest: 4, would: -20 } },
    };
    expect(refusedSentence(planned, "cm")).toMatch(/^Left out on the back: narrow the waist dart by 60 mm\. .*4 mm/);
  });
});

describe("the order of work of a plan", () => {
  const plan = planOf(sampleWork);
  const groups = checklistByPiece(plan, "cm");

  it("goes piece by piece, with the seams walked last", () => {
    expect(groups.map((group) => group.piece)).toEqual(["front", "back", "frontBasque", "backBasque", null]);
    expect(groups.at(-1)?.lines.every((line) => line.text.startsWith("Walk "))).toBe(true);
  });

  it("keeps every job once, in the order of the phases on each piece", () => {
    // Redraws are told with the drawing of their dart.
    const told = plan.checklist.filter(({ step }) => {
      const isRedraw = step.kind === "alteration" && step.planned.what.kind === "alteration";
      return !(isRedraw && step.planned.what.alteration.kind.startsWith("dart"));
    });
    expect(groups.flatMap((group) => group.lines)).toHaveLength(told.length);
    for (const { source, what } of plan.ledger) {
      if (source !== "wearer" || what.kind !== "alteration") continue;
      const title = `${alterationTitle(what.alteration, "cm")}.`;
      const texts = groups.flatMap(({ lines }) => lines.map(({ text }) => text));
      expect(texts.filter((text) => text.includes(title))).not.toEqual([]);
    }
    const order = ["trace", "widthsTraced", "length", "bust", "darts", "widths", "edges", "truing"];
    for (const { lines } of groups) {
      const ranks = lines.map((line) => order.indexOf(line.phase));
      expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));
      expect(ranks).not.toContain(-1);
    }
  });

  it.each(["cm", "in"] as const)("never prints a minus sign, an unset value or another unit in %s", (unit) => {
    for (const line of checklistByPiece(plan, unit).flatMap((group) => group.lines)) {
      const words = `${checklistSentence(line)} ${line.amount ?? ""}`;
      expect(words).not.toMatch(/undefined|null|NaN|[-−]\d/);
      expect(words).not.toMatch(unit === "in" ? /\d (?:mm|cm)\b/ : /″|\d in\b/);
    }
  });
});

describe("the order of work where there is little to say", () => {
  it("marks nothing where the waist stays on the size traced", () => {
    const onBaseSize = planOf({ ...sampleWork, alterations: [], picks: { baseSize: "14", waist: 3 } });
    const lines = checklistByPiece(onBaseSize, "cm")[0]?.lines ?? [];
    expect(lines.map(({ text }) => text)).toContain(
      "At the waist the side seam stays on the traced 14 line: nothing to mark.",
    );
    const between = checklistByPiece(planOf({ ...sampleWork, alterations: [] }), "cm")[0]?.lines ?? [];
    expect(between.map(({ text }) => text).join(" ")).not.toContain("nothing to mark");
  });

  it("says a job of both halves once where it reads alike, and apart where it does not", () => {
    const plan = planOf({
      ...sampleWork,
      alterations: [{ kind: "fit", id: "a", fit: "sideSeamWaist", amount: 6, half: "left" }],
    });
    const texts = checklistByPiece(plan, "cm").flatMap(({ lines }) => lines.map(({ text }) => text));
    expect(texts.filter((text) => /^On the (?:left|right) half: Level with/.test(text))).toEqual([]);
    expect(texts.filter((text) => text.startsWith("Level with the side of the traced waist line"))).toHaveLength(4);
    expect(new Set(checklistByPiece(plan, "cm")[0]?.lines.map(({ text }) => text)).size).toBe(
      checklistByPiece(plan, "cm")[0]?.lines.length,
    );
  });

  it("says what is made on both halves apart where its lengths are not the same on both", () => {
    const plan = planOf({
      ...sampleWork,
      alterations: [
        { kind: "fit", id: "a", fit: "forwardShoulder", amount: 8, half: "left" },
        { kind: "fit", id: "b", fit: "lengthAboveBust", amount: 7 },
      ],
    });
    const linesOf = (name: string) => checklistByPiece(plan, "cm").find(({ piece }) => piece === name)?.lines ?? [];
    const longer = (name: string): string[] =>
      linesOf(name)
        .filter(({ text }) => text.includes("Lengthen the bodice above the bust by 7 mm."))
        .map((line) => checklistSentence(line));
    const down = longer("back").map((text) => / (\d+) mm straight below/.exec(text)?.[1]);
    expect(longer("back").map((text) => text.slice(0, 12))).toEqual(["On the left ", "On the right"]);
    expect(new Set(down).size).toBe(2);
    // Both in one line would be true of one half only.
    expect(down.every((length) => Number(length) > 20)).toBe(true);
  });
});
