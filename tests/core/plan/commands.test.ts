import type { Alteration, DartEndAlteration, DartRedraw, Half } from "../../../src/core/decisions/alteration";
import { measuresOf, tapesOf } from "../../../src/core/measures/tape";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { MEASURE_NAMES } from "../../../src/core/measures/measure";
import { applyCommand, type Command } from "../../../src/core/plan/commands";
import { answeredOf, redrawsOf, type DartAnswerKey, type SeenAtDart } from "../../../src/core/decisions/seenAtDart";
import { DART_NAMES } from "../../../src/core/pattern/dartNames";
import type { DartRef } from "../../../src/core/pattern/piece";
import { PIECE_ORDER } from "../../../src/core/pattern/pieceSet";
import { LIMITS } from "../../../src/core/decisions/limits";
import type { Work } from "../../../src/core/decisions/work";
import { blankPattern, blankWork } from "../../../src/document/blank";
import { parseWork, readWorkFile, writeWorkFile } from "../../../src/document/workFile";
import { anyCommandOn } from "../../support/arbitraryCommand";
import {
  anyAlteration,
  anyClosure,
  anyCup,
  anyDart,
  anyEase,
  anyGiveBack,
  anyHalf,
  anyPattern,
  anyPicks,
  anySeam,
  anySeenAtDart,
  anySize,
  anyText,
  anyWork,
} from "../../support/arbitraryWork";
import { sampleWork } from "../../support/sampleWork";
import { runsOf } from "../../support/share";

const [size] = sampleWork.pattern.chart.sizes;
if (size === undefined) throw new Error("the sample has no size");

const chartWith = (change: Partial<Work["pattern"]["chart"]>): Work => ({
  ...sampleWork,
  pattern: { ...sampleWork.pattern, chart: { ...sampleWork.pattern.chart, ...change } },
});
const patternWith = (change: Partial<Work["pattern"]>): Work => ({
  ...sampleWork,
  pattern: { ...sampleWork.pattern, ...change },
});

const end: DartEndAlteration = {
  kind: "dartEnd",
  id: "e",
  dart: { piece: "front", dart: "sideDart" },
  shorten: 20,
  across: 0,
  hold: "mouth",
  giveBack: { underarm: 1 },
};
const mouth: Alteration = { kind: "dartMouth", id: "m", dart: end.dart, inner: 2, outer: 3, giveBack: {} };
const place: Alteration = { kind: "dartPlace", id: "p", dart: end.dart, by: 5, how: "redraw", giveBack: {} };

/** One command of each kind and the work it makes of the sample. */
const CASES: readonly (readonly [Command, Work])[] = [
  [
    { kind: "setName", name: "Blue dress" },
    { ...sampleWork, name: "Blue dress" },
  ],
  [
    { kind: "setWearer", name: "An invented wearer" },
    { ...sampleWork, wearer: "An invented wearer" },
  ],
  [
    {
      kind: "setSeen",
      dart: end.dart,
      half: "right",
      seen: { pastBustPoint: 12, tooFarToSide: -4, pointed: "pointed" },
    },
    {
      ...sampleWork,
      seen: [
        {
          piece: "front",
          dart: "sideDart",
          half: "right",
          pastBustPoint: 12,
          tooFarToSide: -4,
          pointed: "pointed",
          sewn: redrawsOf(sampleWork.alterations, end.dart),
        },
      ],
    },
  ],
  [
    { kind: "setUnit", unit: "in" },
    { ...sampleWork, unit: "in" },
  ],
  [
    { kind: "setPaper", paper: "Letter" },
    { ...sampleWork, paper: "Letter" },
  ],
  [
    { kind: "setMeasure", measure: "bustGirth", value: 912.5 },
    { ...sampleWork, tapes: tapesOf({ ...measuresOf(sampleWork.tapes), bustGirth: 912.5 }) },
  ],
  [
    { kind: "setMeasure", measure: "acrossBack", value: 350 },
    { ...sampleWork, tapes: tapesOf({ ...measuresOf(sampleWork.tapes), acrossBack: 350 }) },
  ],
  [
    { kind: "setReading", measure: "bustGirth", at: 0, value: 931 },
    { ...sampleWork, tapes: tapesOf({ ...measuresOf(sampleWork.tapes), bustGirth: 931 }) },
  ],
  [
    { kind: "setTaken", set: 0, taken: "2026-11-25" },
    { ...sampleWork, tapes: sampleWork.tapes.map((set) => ({ ...set, taken: "2026-11-25" })) },
  ],
  [
    { kind: "setAge", age: 47 },
    { ...sampleWork, age: 47 },
  ],
  [
    { kind: "setTrusted", measure: "bustGirth", value: 930 },
    { ...sampleWork, trusted: { bustGirth: 930 } },
  ],
  [{ kind: "setPatternName", name: "Another" }, patternWith({ name: "Another" })],
  [{ kind: "setSizes", sizes: [size] }, chartWith({ sizes: [size] })],
  [{ kind: "setCups", cups: [] }, chartWith({ cups: [] })],
  [{ kind: "setDraftedDifference", value: 60 }, chartWith({ draftedDifference: 60 })],
  [
    { kind: "setPatternEase", ease: { bust: 1, waist: 2, hip: 3 } },
    patternWith({ ease: { bust: 1, waist: 2, hip: 3 } }),
  ],
  [{ kind: "setLength", length: "waist" }, patternWith({ length: "waist" })],
  [
    { kind: "setClosure", closure: { place: "side", belowWaist: 0 } },
    patternWith({ closure: { place: "side", belowWaist: 0 } }),
  ],
  [
    { kind: "setClosure", closure: { place: "centreBack", belowWaist: 180, buttons: 9 } },
    patternWith({ closure: { place: "centreBack", belowWaist: 180, buttons: 9 } }),
  ],
  [
    { kind: "setPattern", pattern: blankPattern() },
    { ...sampleWork, pattern: blankPattern() },
  ],
  [
    { kind: "setEaseWanted", ease: { waist: 25 } },
    { ...sampleWork, easeWanted: { waist: 25 } },
  ],
  [
    { kind: "setBustRadius", value: 95 },
    { ...sampleWork, bustRadius: 95 },
  ],
  [
    { kind: "setPick", picks: { baseSize: "14" } },
    { ...sampleWork, picks: { baseSize: "14" } },
  ],
  [
    { kind: "putAlteration", alteration: end },
    { ...sampleWork, alterations: [...sampleWork.alterations, end] },
  ],
  [
    { kind: "removeAlteration", id: "end-1" },
    { ...sampleWork, alterations: [] },
  ],
  [
    { kind: "setGiveBack", dart: { piece: "front", dart: "waistDart" }, giveBack: { otherDart: 1 } },
    {
      ...sampleWork,
      alterations: sampleWork.alterations.map((alteration) => ({ ...alteration, giveBack: { otherDart: 1 } })),
    },
  ],
  [
    { kind: "setAllowance", seam: "hem", value: 45 },
    { ...sampleWork, allowances: { hem: 45 } },
  ],
  [
    { kind: "setSheetFormat", format: "36 in roll" },
    { ...sampleWork, sheetFormat: "36 in roll" },
  ],
  [
    { kind: "setPrinterMargin", value: 6.4 },
    { ...sampleWork, printerMargin: 6.4 },
  ],
  [
    { kind: "setUnread", field: "bust", text: "9o" },
    { ...sampleWork, unread: { bust: "9o" } },
  ],
];

const run = (work: Work, ...commands: readonly Command[]): Work => commands.reduce(applyCommand, work);

describe("applyCommand", () => {
  it.each(CASES.map(([command, wanted]) => [command.kind, command, wanted] as const))(
    "%s changes that alone",
    (_, command, wanted) => {
      const before = structuredClone(sampleWork);
      expect(applyCommand(sampleWork, command)).toEqual(wanted);
      expect(sampleWork).toEqual(before);
      // The same again changes nothing, and says so by giving the very same work.
      const once = applyCommand(sampleWork, command);
      expect(applyCommand(once, command)).toBe(once);
    },
  );

  it("clears what was set, and leaves no empty place behind", () => {
    const cleared = run(
      sampleWork,
      { kind: "setMeasure", measure: "neckBaseGirth", value: 370 },
      { kind: "clearMeasure", measure: "neckBaseGirth" },
      { kind: "setEaseWanted", ease: { bust: 50 } },
      { kind: "clearEaseWanted", level: "bust" },
      { kind: "setBustRadius", value: 90 },
      { kind: "setBustRadius", value: null },
      { kind: "setPick", picks: { waist: 2.5 } },
      { kind: "clearPick", pick: "waist" },
      { kind: "setAllowance", seam: "neck", value: 6 },
      { kind: "setAllowance", seam: "side", value: 25 },
      { kind: "clearAllowance", seam: "neck" },
      { kind: "clearAllowance", seam: "side" },
      { kind: "setPrinterMargin", value: 12 },
      { kind: "setPrinterMargin", value: null },
      { kind: "setUnread", field: "hip", text: "?" },
      { kind: "clearUnread", field: "hip" },
    );
    expect(cleared).toStrictEqual(sampleWork);
  });

  it.each<Command>([
    { kind: "clearMeasure", measure: "neckBaseGirth" },
    { kind: "clearPick", pick: "cup" },
    { kind: "clearAllowance", seam: "armhole" },
    { kind: "setPrinterMargin", value: null },
    { kind: "clearUnread", field: "none" },
    { kind: "removeAlteration", id: "none" },
    { kind: "setGiveBack", dart: { piece: "back", dart: "waistDart" }, giveBack: { sideSeam: 1 } },
  ])("$kind of what is not there gives the very same work", (command) => {
    expect(applyCommand(sampleWork, command)).toBe(sampleWork);
  });

  it("adds to the ease wanted and to the picks, and keeps the others", () => {
    const work = run(
      sampleWork,
      { kind: "setEaseWanted", ease: { bust: 50 } },
      { kind: "setEaseWanted", ease: { hip: 40 } },
      { kind: "setPick", picks: { baseSize: "12", cup: "C" } },
      { kind: "setPick", picks: { cup: "D", hip: 3.25 } },
    );
    expect(work.easeWanted).toEqual({ bust: 50, hip: 40 });
    expect(work.picks).toEqual({ baseSize: "12", cup: "D", hip: 3.25 });
  });

  it("keeps one seam's allowance when another's is set or cleared, none being an allowance too", () => {
    const two = run(
      sampleWork,
      { kind: "setAllowance", seam: "hem", value: 40 },
      { kind: "setAllowance", seam: "armhole", value: 0 },
    );
    expect(two.allowances).toEqual({ hem: 40, armhole: 0 });
    expect(run(two, { kind: "clearAllowance", seam: "hem" }).allowances).toEqual({ armhole: 0 });
  });

  it("drops the picks with the pattern, whose sizes they name", () => {
    const work = run(
      sampleWork,
      { kind: "setPick", picks: { baseSize: "12" } },
      { kind: "setPattern", pattern: blankPattern() },
    );
    expect(work.picks).toEqual({});
    expect(work.alterations).toEqual(sampleWork.alterations);
  });
});

describe("putAlteration", () => {
  const orderOf = (...alterations: readonly Alteration[]): readonly string[] =>
    run(
      { ...sampleWork, alterations: [] },
      ...alterations.map((alteration): Command => ({ kind: "putAlteration", alteration })),
    ).alterations.map(({ id }) => id);

  it("keeps the trade's order on one dart: its place, its mouth, its end", () => {
    for (const order of [
      [end, mouth, place],
      [mouth, end, place],
      [place, end, mouth],
      [end, place, mouth],
    ]) {
      expect(orderOf(...order)).toEqual(["p", "m", "e"]);
    }
  });

  it("puts the first of another dart behind", () => {
    const other: Alteration = { ...place, id: "other", dart: { piece: "back", dart: "waistDart" } };
    expect(orderOf(end, other, mouth)).toEqual(["m", "e", "other"]);
  });

  it("replaces the one of the same kind on the same dart, in its place", () => {
    const again: Alteration = { ...mouth, id: "again", inner: 9 };
    expect(orderOf(place, mouth, end, again)).toEqual(["p", "again", "e"]);
  });
});

describe("what no work can hold", () => {
  it.each<[string, Command]>([
    ["no number", { kind: "setMeasure", measure: "bustGirth", value: Number.NaN }],
    ["an endless number", { kind: "setDraftedDifference", value: Number.POSITIVE_INFINITY }],
    ["a number beyond all bounds", { kind: "setPick", picks: { bustAlteration: -LIMITS.length - 1 } }],
    ["a girth that is no number", { kind: "setSizes", sizes: [{ ...size, hip: Number.NaN }] }],
    ["a share above the whole", { kind: "setGiveBack", dart: end.dart, giveBack: { sideSeam: 1.2 } }],
    ["a share below nothing", { kind: "putAlteration", alteration: { ...end, giveBack: { sideSeam: -0.1 } } }],
    ["an allowance below nothing", { kind: "setAllowance", seam: "side", value: -1 }],
    ["an allowance wider than any hem", { kind: "setAllowance", seam: "hem", value: LIMITS.allowance + 0.1 }],
    ["a printer that leaves no edge", { kind: "setPrinterMargin", value: LIMITS.printerMargin.least - 0.1 }],
    ["a printer that leaves no paper", { kind: "setPrinterMargin", value: LIMITS.printerMargin.most + 0.1 }],
    ["a field name that is a page", { kind: "setUnread", field: "x".repeat(LIMITS.text + 1), text: "" }],
  ])("is refused: %s", (_, command) => {
    expect(applyCommand(sampleWork, command)).toBe(sampleWork);
  });

  it("is cut where it is a long text or list", () => {
    const long = "x".repeat(LIMITS.unreadText + 1);
    expect(applyCommand(sampleWork, { kind: "setName", name: long }).name).toHaveLength(LIMITS.text);
    expect(applyCommand(sampleWork, { kind: "setPatternName", name: long }).pattern.name).toHaveLength(LIMITS.text);
    expect(applyCommand(sampleWork, { kind: "setUnread", field: "paste", text: long }).unread["paste"]).toHaveLength(
      LIMITS.unreadText,
    );
    const sizes = Array.from({ length: LIMITS.rows + 1 }, () => ({ ...size, label: long }));
    const { chart } = applyCommand(sampleWork, { kind: "setSizes", sizes }).pattern;
    expect(chart.sizes).toHaveLength(LIMITS.rows);
    expect(chart.sizes[0]?.label).toHaveLength(LIMITS.text);
  });

  it("keeps a pasted chart of a thousand characters as it was typed", () => {
    const text = "Size\tBust\tWaist\tHip\n".repeat(50);
    const work = applyCommand(sampleWork, { kind: "setUnread", field: "paste", text });
    expect(work.unread["paste"]).toBe(text);
    expect(parseWork(work)).toEqual({ ok: true, value: work });
  });

  it("stops at so many unread entries, and still changes those it has", () => {
    const fill = Array.from({ length: LIMITS.unread }, (_, at) => [`f${at}`, "?"] as const);
    const full: Work = { ...sampleWork, unread: Object.fromEntries(fill) };
    expect(applyCommand(full, { kind: "setUnread", field: "more", text: "?" })).toBe(full);
    expect(applyCommand(full, { kind: "setUnread", field: "f1", text: "!" }).unread["f1"]).toBe("!");
  });

  it("stops at so many alterations, and still changes those it has", () => {
    const full: Work = { ...sampleWork, alterations: Array.from({ length: LIMITS.alterations }, () => end) };
    expect(applyCommand(full, { kind: "putAlteration", alteration: mouth })).toBe(full);
    expect(
      applyCommand(full, { kind: "putAlteration", alteration: { ...end, shorten: 5 } }).alterations[0],
    ).toMatchObject({ shorten: 5 });
  });

  it("never comes about by commands, whatever they hold: every work reached is saved and read back", () => {
    const wild = fc
      .oneof({ weight: 4, arbitrary: fc.integer({ min: -9000, max: 9000 }) }, { weight: 1, arbitrary: fc.double() })
      .map((n) => n + 0);
    const text = fc.oneof(
      { weight: 4, arbitrary: anyText },
      { weight: 1, arbitrary: fc.string({ minLength: 190, maxLength: 260 }) },
    );
    const day = fc
      .date({ min: new Date("1996-01-01"), max: new Date("2096-12-31"), noInvalidDate: true })
      .map((date) => date.toISOString().slice(0, 10));
    const field = text.filter((name) => name !== "[object Object]");
    const of = <K extends Command["kind"]>(kind: K) => fc.constant(kind);
    const command: fc.Arbitrary<Command> = fc.oneof(
      fc.record({ kind: of("setName"), name: text }),
      fc.record({ kind: of("setMeasure"), measure: fc.constantFrom(...MEASURE_NAMES), value: wild }),
      fc.record({ kind: of("clearMeasure"), measure: fc.constantFrom(...MEASURE_NAMES) }),
      fc.record({
        kind: of("setReading"),
        measure: fc.constantFrom(...MEASURE_NAMES),
        at: fc.oneof(fc.integer({ min: 0, max: 6 }), wild),
        value: wild,
      }),
      fc.record({
        kind: of("removeReading"),
        measure: fc.constantFrom(...MEASURE_NAMES),
        at: fc.oneof(fc.integer({ min: 0, max: 3 }), wild),
      }),
      fc.record({
        kind: of("setTaken"),
        set: fc.integer({ min: 0, max: 2 }),
        taken: fc.oneof(day, text, fc.constant(null)),
      }),
      fc.record({ kind: of("newTape"), taken: fc.oneof(day, text) }),
      fc.record({ kind: of("removeTape"), set: fc.integer({ min: 0, max: 3 }) }),
      fc.record({ kind: of("setTrusted"), measure: fc.constantFrom(...MEASURE_NAMES), value: fc.option(wild) }),
      fc.record({ kind: of("setAge"), age: fc.option(wild) }),
      fc.record({ kind: of("setPatternName"), name: text }),
      fc.record({
        kind: of("setSizes"),
        sizes: fc.array(
          fc.tuple(anySize, text, wild).map(([row, label, bust]) => ({ ...row, label, bust })),
          { maxLength: 70 },
        ),
      }),
      fc.record({ kind: of("setCups"), cups: fc.array(anyCup, { maxLength: 70 }) }),
      fc.record({ kind: of("setDraftedDifference"), value: wild }),
      fc.record({ kind: of("setPatternEase"), ease: anyEase }),
      fc.record({
        kind: of("setClosure"),
        closure: fc
          .tuple(anyClosure, fc.option(wild))
          .map(([closure, buttons]) => (buttons === null ? closure : { ...closure, buttons })),
      }),
      fc.record({
        kind: of("setPattern"),
        pattern: fc.tuple(anyPattern, text).map(([pattern, name]) => ({ ...pattern, name })),
      }),
      fc.record({ kind: of("setEaseWanted"), ease: fc.record({ bust: wild }) }),
      fc.record({ kind: of("setBustRadius"), value: fc.option(wild) }),
      fc.record({
        kind: of("setPick"),
        picks: fc.tuple(anyPicks, wild).map(([picks, waist]) => ({ ...picks, waist })),
      }),
      fc.record({ kind: of("putAlteration"), alteration: anyAlteration }),
      fc.record({
        kind: of("setGiveBack"),
        dart: anyDart,
        giveBack: fc.oneof(anyGiveBack, fc.record({ sideSeam: wild })),
      }),
      fc.record({ kind: of("setWearer"), name: fc.option(text) }),
      fc.record({
        kind: of("setSeen"),
        dart: anyDart,
        half: anyHalf,
        seen: fc.option(fc.tuple(anySeenAtDart, wild).map(([seen, pastBustPoint]) => ({ ...seen, pastBustPoint }))),
      }),
      fc.record({ kind: of("setAllowance"), seam: anySeam, value: fc.oneof(fc.integer({ min: -5, max: 90 }), wild) }),
      fc.record({ kind: of("clearAllowance"), seam: anySeam }),
      fc.record({ kind: of("setPrinterMargin"), value: fc.option(fc.oneof(fc.integer({ min: 0, max: 30 }), wild)) }),
      fc.record({ kind: of("setUnread"), field, text }),
      fc.record({ kind: of("clearUnread"), field }),
    );
    fc.assert(
      fc.property(fc.array(command, { maxLength: 30 }), (commands) => {
        const work = run(blankWork(), ...commands);
        expect(readWorkFile(writeWorkFile(work))).toEqual({ ok: true, value: work });
      }),
    );
  }, 240_000);
});

describe("readings and sets", () => {
  const readings = (work: Work, set = 0) => work.tapes[set]?.readings.bustGirth;
  const read = (at: number, value: number): Command => ({ kind: "setReading", measure: "bustGirth", at, value });

  it("adds a reading after the last, puts one right, takes one out", () => {
    const three = run(sampleWork, read(1, 934), read(7, 938));
    expect(readings(three)).toEqual([930, 934, 938]);
    expect(readings(run(three, read(1, 936)))).toEqual([930, 936, 938]);
    const without = (at: number): Command => ({ kind: "removeReading", measure: "bustGirth", at });
    expect(readings(run(three, without(0)))).toEqual([934, 938]);
    expect(readings(run(three, without(0), without(0), without(0)))).toBeUndefined();
    expect(applyCommand(three, without(3))).toBe(three);
    expect(applyCommand(three, without(-1))).toBe(three);
  });

  it("keeps no more readings than a file can hold", () => {
    const full = run(sampleWork, ...Array.from({ length: 9 }, (_, at) => read(at + 1, 930 + at)));
    expect(readings(full)).toHaveLength(LIMITS.readings);
  });

  it("begins a set that stands on the earlier one until it is full", () => {
    const anew = run(
      sampleWork,
      { kind: "setTaken", set: 0, taken: "2026-03-01" },
      { kind: "newTape", taken: "2026-11-25" },
    );
    expect(anew.tapes.map(({ taken }) => taken)).toEqual(["2026-11-25", "2026-03-01"]);
    expect(measuresOf(anew.tapes)).toEqual(measuresOf(sampleWork.tapes));
    const taken = run(anew, read(0, 948));
    expect(measuresOf(taken.tapes)).toEqual({ ...measuresOf(sampleWork.tapes), bustGirth: 948 });
    expect(readings(taken, 1)).toEqual([930]);
    expect(run(taken, { kind: "removeTape", set: 0 }).tapes).toEqual(
      run(sampleWork, { kind: "setTaken", set: 0, taken: "2026-03-01" }).tapes,
    );
  });

  it("is never without a set", () => {
    expect(run(sampleWork, { kind: "removeTape", set: 0 }).tapes).toEqual([{ readings: {} }]);
  });

  it.each(["2026-02-29", "2100-02-29", "2026-13-01", "2026-04-31", "2026-11-00", "today", "25.11.2026", ""])(
    "takes no day %j",
    (taken) => {
      expect(applyCommand(sampleWork, { kind: "setTaken", set: 0, taken })).toBe(sampleWork);
      expect(applyCommand(sampleWork, { kind: "newTape", taken })).toBe(sampleWork);
    },
  );

  it.each(["2028-02-29", "2000-02-29", "2026-12-31", "2026-04-30"])("takes the day %s", (taken) => {
    expect(applyCommand(sampleWork, { kind: "setTaken", set: 0, taken }).tapes[0]?.taken).toBe(taken);
  });
});

describe("the wearer's name", () => {
  const name = (text: string | null): Command => ({ kind: "setWearer", name: text });

  it("is kept as typed, and no longer than a name may be", () => {
    expect(run(sampleWork, name(" An ")).wearer).toBe(" An ");
    expect(run(sampleWork, name("x".repeat(LIMITS.text + 1))).wearer).toBe("x".repeat(LIMITS.text));
  });

  it.each([null, "", "  "])("is gone with %j", (nothing) => {
    expect(run(sampleWork, name("An"), name(nothing))).toStrictEqual(sampleWork);
    expect(applyCommand(sampleWork, name(nothing))).toBe(sampleWork);
  });
});

describe("what is seen of darts", () => {
  const waist: DartRef = { piece: "front", dart: "waistDart" };
  const seen: SeenAtDart = { pastBustPoint: 10, tooFarToSide: 0, pointed: "right" };
  const sewn = redrawsOf(sampleWork.alterations, waist);
  const see = (dart: DartRef, half: Half, what: SeenAtDart | null): Command => ({
    kind: "setSeen",
    dart,
    half,
    seen: what,
  });

  it("is one thing for each dart and half, in one order whatever is said first", () => {
    const said = [
      see(waist, "right", seen),
      see({ piece: "back", dart: "waistDart" }, "left", seen),
      see(waist, "left", seen),
      see({ piece: "front", dart: "sideDart" }, "left", seen),
    ];
    const all = run(sampleWork, ...said);
    expect(all.seen?.map(({ piece, dart, half }) => `${half} ${piece} ${dart}`)).toEqual([
      "left front sideDart",
      "left front waistDart",
      "right front waistDart",
      "left back waistDart",
    ]);
    expect(run(sampleWork, ...said.toReversed())).toEqual(all);
    const again = run(all, see(waist, "right", { ...seen, pointed: "flat" }));
    expect(again.seen?.map(({ pointed }) => pointed)).toEqual(["right", "right", "flat", "right"]);
  });

  it("is taken back one by one, and with the last of it the list", () => {
    const two = run(sampleWork, see(waist, "left", seen), see(waist, "right", seen));
    const one = run(two, see(waist, "left", null));
    expect(one.seen).toEqual([{ ...waist, half: "right", ...seen, sewn }]);
    expect(applyCommand(one, see(waist, "left", null))).toBe(one);
    expect(run(one, see(waist, "right", null))).toStrictEqual(sampleWork);
  });

  it("holds no figure that no work can, and nothing else that was handed in", () => {
    for (const wrong of [Number.NaN, Infinity, LIMITS.length + 1])
      expect(applyCommand(sampleWork, see(waist, "left", { ...seen, pastBustPoint: wrong }))).toBe(sampleWork);
    const more = { ...waist, half: "right", note: "x" };
    expect(run(sampleWork, see(more, "left", { ...seen, ...more })).seen).toStrictEqual([
      { ...waist, half: "left", ...seen, sewn },
    ]);
  });

  it("stops at so many darts, and still changes those it has", () => {
    const every = PIECE_ORDER.flatMap((piece) => DART_NAMES.map((dart) => ({ piece, dart })));
    const full = run(sampleWork, ...every.map((dart) => see(dart, "left", seen)));
    expect(full.seen).toHaveLength(LIMITS.seen);
    expect(applyCommand(full, see({ piece: "strap", dart: "sideDart" }, "right", seen))).toBe(full);
    expect(
      run(full, see({ piece: "front", dart: "sideDart" }, "left", { ...seen, pointed: "flat" })).seen?.[0],
    ).toEqual({
      piece: "front",
      dart: "sideDart",
      half: "left",
      ...seen,
      pointed: "flat",
      sewn: redrawsOf(sampleWork.alterations, { piece: "front", dart: "sideDart" }),
    });
  });

  describe("with an answer taken", () => {
    const redraw = (shorten: number): DartRedraw => ({
      kind: "dartEnd",
      id: "dartEnd-front-waistDart",
      dart: waist,
      shorten,
      across: 0,
      hold: "mouth",
      giveBack: {},
    });
    const take = (answer: DartAnswerKey, shorten: number): Command => ({
      kind: "takeAnswer",
      dart: waist,
      half: "left",
      seen,
      answer,
      alterations: [redraw(shorten)],
    });
    const toile = run(sampleWork, { kind: "putAlteration", alteration: redraw(5) });
    const own = (work: Work): readonly Alteration[] => work.alterations.filter((a) => a.id === redraw(0).id);

    it("keeps what was seen, the redraws the toile was sewn with, and which was taken", () => {
      const taken = run(toile, take("sideSeam", 40));
      expect(own(taken)).toEqual([redraw(40)]);
      expect(taken.seen).toEqual([
        { ...waist, half: "left", ...seen, sewn: [redraw(5)], taken: { answer: "sideSeam", redraws: [redraw(40)] } },
      ]);
    });

    it("twice is once, and another one after it is that one alone", () => {
      const taken = run(toile, take("sideSeam", 40));
      expect(run(taken, take("sideSeam", 40))).toBe(taken);
      expect(run(taken, take("underarm", 30))).toEqual(run(toile, take("underarm", 30)));
    });

    it("stands until the dart is redrawn otherwise, or another thing is seen; what was seen stays", () => {
      const taken = run(toile, take("sideSeam", 40));
      expect(answeredOf(taken, waist, "left")?.taken?.answer).toBe("sideSeam");
      // A dart is redrawn alike on both halves.
      expect(answeredOf(taken, waist, "right")?.taken?.answer).toBe("sideSeam");
      const moved = run(taken, { kind: "putAlteration", alteration: redraw(41) });
      expect(answeredOf(moved, waist, "left")).toBeNull();
      expect(moved.seen?.[0]).toMatchObject({ ...seen, sewn: [redraw(5)] });
      const again = run(taken, see(waist, "left", { ...seen, pastBustPoint: 12 }));
      expect(answeredOf(again, waist, "left")).toBeNull();
      expect(again.seen?.[0]).toEqual({ ...waist, half: "left", ...seen, pastBustPoint: 12, sewn: [redraw(5)] });
    });
  });
});

describe("what the pattern says of lengths", () => {
  const put = (work: Work, label: string | null, value: number | null): Work =>
    applyCommand(work, { kind: "setPrintedLength", measure: "acrossBack", size: label, value });
  const said = (work: Work): unknown => work.pattern.lengths;

  it("is put for all sizes or for one, and taken out again without a trace", () => {
    const all = put(sampleWork, null, 345);
    const both = put(all, "12", 350);
    expect(said(both)).toEqual({ acrossBack: { all: 345, bySize: { "12": 350 } } });
    expect(said(put(both, null, null))).toEqual({ acrossBack: { bySize: { "12": 350 } } });
    expect(said(put(both, "12", null))).toEqual(said(all));
    expect(put(all, null, null)).toEqual(sampleWork);
    expect(put(both, "12", 350)).toBe(both);
  });

  it("goes with the labels of the chart", () => {
    const work = put(put(sampleWork, "12", 350), "14", 360);
    const { sizes } = work.pattern.chart;
    const renamed = sizes.map((row) => (row.label === "12" ? { ...row, label: "M" } : row));
    expect(said(applyCommand(work, { kind: "setSizes", sizes: renamed }))).toEqual({
      acrossBack: { bySize: { M: 350, "14": 360 } },
    });
    const without = sizes.filter(({ label }) => label !== "12");
    expect(said(applyCommand(work, { kind: "setSizes", sizes: without }))).toEqual({
      acrossBack: { bySize: { "14": 360 } },
    });
    expect(said(applyCommand(work, { kind: "setSizes", sizes: [] }))).toBeUndefined();
    expect(said(applyCommand(work, { kind: "setSizes", sizes: sizes.toReversed() }))).toEqual(said(work));
  });

  it("keeps within what a work can hold", () => {
    const full = Array.from({ length: LIMITS.rows + 5 }, (_, at) => `size ${at}`).reduce(
      (work, label) => put(work, label, 350),
      sampleWork,
    );
    expect(Object.keys(full.pattern.lengths?.acrossBack?.bySize ?? {})).toHaveLength(LIMITS.rows);
    expect(put(sampleWork, "x".repeat(LIMITS.text + 1), 350)).toBe(sampleWork);
    expect(put(sampleWork, null, 2 * LIMITS.length)).toBe(sampleWork);
  });
});

describe("picks of lines when the chart changes", () => {
  const rows = ["8", "10", "12", "14"].map((label, at) => ({
    label,
    bust: 800 + 40 * at,
    waist: 640 + 40 * at,
    hip: 880 + 40 * at,
  }));
  const [first, second, third, fourth] = rows;
  if (first === undefined || second === undefined || third === undefined || fourth === undefined)
    throw new Error("four rows");
  const before: Work = { ...chartWith({ sizes: rows }), picks: { baseSize: "10", waist: 1.4, hip: 3.5 } };
  const picksAfter = (sizes: typeof rows) => applyCommand(before, { kind: "setSizes", sizes }).picks;

  it("stay between the same two lines when a size is put in or taken out before them", () => {
    const smaller = { label: "6", bust: 760, waist: 600, hip: 840 };
    expect(picksAfter([smaller, ...rows])).toEqual({ baseSize: "10", waist: 2.4, hip: 4.5 });
    expect(picksAfter([second, third, fourth])).toEqual({ baseSize: "10", waist: expect.closeTo(0.4, 12), hip: 2.5 });
  });

  it("stay when figures or one label change", () => {
    expect(picksAfter([first, { ...second, waist: 690 }, third, fourth])).toEqual(before.picks);
    expect(picksAfter([first, { ...second, label: "10a" }, third, fourth])).toEqual(before.picks);
  });

  it("go when their two lines no longer lie side by side", () => {
    expect(picksAfter([first, second, { label: "11", bust: 860, waist: 700, hip: 940 }, third, fourth])).toEqual({
      baseSize: "10",
      hip: 4.5,
    });
    expect(picksAfter([first, second])).toEqual({ baseSize: "10" });
    // The last line alone: nothing that is left was renamed.
    expect(picksAfter([first, second, third])).toEqual({ baseSize: "10", waist: 1.4 });
  });
});

describe("a command that changes nothing", () => {
  const text = (work: Work): string => JSON.stringify(work);

  it("gives the very same work, and only such a command, whatever the work and the command", () => {
    const onAnyWork = fc
      .tuple(anyWork, anyWork)
      .chain(([work, other]) => fc.tuple(fc.constant(work), anyCommandOn(work, other)));
    fc.assert(
      fc.property(onAnyWork, ([work, command]) => {
        const before = text(work);
        const next = applyCommand(work, command);
        expect(text(work)).toBe(before);
        expect(next === work).toBe(text(next) === before);
        expect(next === work).toBe(writeWorkFile(next) === writeWorkFile(work));
      }),
      { numRuns: runsOf(1000) },
    );
  }, 240_000);

  /** A copy with its leaf at that place another (a number moved, a text longer, a switch the other way), or taken out. */
  function withAnotherLeaf(work: Work, at: number, isGone: boolean): Work {
    let count = 0;
    const another: unknown = JSON.parse(text(work), (_, value: unknown) => {
      if (typeof value === "object") return value;
      count += 1;
      if (count !== at) return value;
      if (isGone) return undefined;
      if (typeof value === "number") return value > 0 ? value / 2 : value + 0.5;
      return typeof value === "string" ? `${value}x`.slice(-20) : value === false;
    });
    const read = parseWork(another);
    return read.ok ? read.value : work;
  }

  /** Each: what it sets in a work to what another has, written out by hand. */
  const SETTERS: readonly ((from: Work) => readonly (readonly [Command, (into: Work) => Work])[])[] = [
    ({ name }) => [[{ kind: "setName", name }, (into) => ({ ...into, name })]],
    ({ age }) =>
      age === undefined
        ? [[{ kind: "setAge", age: null }, ({ age: _gone, ...rest }) => rest]]
        : [[{ kind: "setAge", age }, (into) => ({ ...into, age })]],
    ({ bustRadius }) =>
      bustRadius === undefined
        ? [[{ kind: "setBustRadius", value: null }, ({ bustRadius: _gone, ...rest }) => rest]]
        : [[{ kind: "setBustRadius", value: bustRadius }, (into) => ({ ...into, bustRadius })]],
    ({ printerMargin }) =>
      printerMargin === undefined
        ? [[{ kind: "setPrinterMargin", value: null }, ({ printerMargin: _gone, ...rest }) => rest]]
        : [[{ kind: "setPrinterMargin", value: printerMargin }, (into) => ({ ...into, printerMargin })]],
    ({ pattern }) => [[{ kind: "setPattern", pattern }, (into) => ({ ...into, pattern, picks: {} })]],
    ({ pattern: { name } }) => [
      [{ kind: "setPatternName", name }, (into) => ({ ...into, pattern: { ...into.pattern, name } })],
    ],
    ({ pattern: { ease } }) => [
      [{ kind: "setPatternEase", ease }, (into) => ({ ...into, pattern: { ...into.pattern, ease } })],
    ],
    ({ pattern: { closure } }) => [
      [{ kind: "setClosure", closure }, (into) => ({ ...into, pattern: { ...into.pattern, closure } })],
    ],
    ({ pattern: { chart } }) => [
      [
        { kind: "setCups", cups: chart.cups },
        ({ pattern, ...rest }) => ({ ...rest, pattern: { ...pattern, chart: { ...pattern.chart, cups: chart.cups } } }),
      ],
    ],
    ({ pattern: { chart } }) => [
      [
        { kind: "setSizes", sizes: chart.sizes },
        ({ pattern, ...rest }) => ({
          ...rest,
          pattern: { ...pattern, chart: { ...pattern.chart, sizes: chart.sizes } },
        }),
      ],
    ],
    ({ pattern: { chart } }) => [
      [
        { kind: "setDraftedDifference", value: chart.draftedDifference },
        ({ pattern, ...rest }) => ({
          ...rest,
          pattern: { ...pattern, chart: { ...pattern.chart, draftedDifference: chart.draftedDifference } },
        }),
      ],
    ],
    ({ easeWanted }) => [
      [
        { kind: "setEaseWanted", ease: easeWanted },
        (into) => ({ ...into, easeWanted: { ...into.easeWanted, ...easeWanted } }),
      ],
    ],
    ({ tapes }) => [
      [
        { kind: "setTaken", set: 0, taken: tapes[0]?.taken ?? null },
        ({ tapes: [newest, ...earlier], ...rest }) => {
          const { readings = {} } = newest ?? {};
          const { taken } = tapes[0] ?? {};
          return { ...rest, tapes: [taken === undefined ? { readings } : { taken, readings }, ...earlier] };
        },
      ],
    ],
    ({ tapes }) =>
      MEASURE_NAMES.flatMap((measure) =>
        (tapes[0]?.readings[measure] ?? []).slice(0, 1).map((value) => [
          { kind: "setMeasure", measure, value },
          ({ tapes: [newest, ...earlier], ...rest }) => ({
            ...rest,
            tapes: [{ ...newest, readings: { ...newest?.readings, [measure]: [value] } }, ...earlier],
          }),
        ]),
      ),
    ({ allowances = {} }) =>
      Object.entries(allowances).flatMap(([name, value]) =>
        SEAMS.filter((seam) => seam === name).map((seam) => [
          { kind: "setAllowance", seam, value },
          (into) => ({ ...into, allowances: { ...into.allowances, [seam]: value } }),
        ]),
      ),
    ({ unread }) =>
      Object.entries(unread).map(([field, typed]) => [
        { kind: "setUnread", field, text: typed },
        (into) => ({ ...into, unread: { ...into.unread, [field]: typed } }),
      ]),
    // With one alteration there is no question which of them it takes the place of.
    ({ alterations }) =>
      alterations.map((alteration) => [
        { kind: "putAlteration", alteration },
        (into) => ({ ...into, alterations: [alteration] }),
      ]),
  ];
  const SEAMS = ["centre", "neck", "shoulder", "armhole", "side", "waist", "hem", "princess"] as const;

  it("is none that changes a single figure or text of what is there, and that alone is changed", () => {
    fc.assert(
      fc.property(anyWork, anyAlteration, fc.nat(150), fc.boolean(), (some, alteration, at, isGone) => {
        // Picks of lines, and figures of a size, go with the chart; that is asked by itself.
        const { lengths: _gone, ...pattern } = some.pattern;
        const work: Work = { ...some, pattern, picks: {}, alterations: [alteration] };
        const another = withAnotherLeaf(work, at, isGone);
        fc.pre(another.alterations.every((put) => isOnTheSame(put, alteration)));
        const pairs = [
          [work, another],
          [another, work],
        ] as const;
        for (const [into, from] of pairs)
          for (const [command, set] of SETTERS.flatMap((setter) => setter(from))) {
            const wanted = set(into);
            const next = applyCommand(into, command);
            expect(next).toEqual(wanted);
            expect(next === into).toBe(writeWorkFile(wanted) === writeWorkFile(into));
          }
      }),
      { numRuns: runsOf(100) },
    );
  }, 240_000);

  const isOnTheSame = (a: Alteration, b: Alteration): boolean =>
    a.half === b.half &&
    (a.kind === "fit" || b.kind === "fit"
      ? a.kind === "fit" && b.kind === "fit"
      : JSON.stringify(a.dart) === JSON.stringify(b.dart));

  it("leaves what a command does not touch the very same object", () => {
    const other = { ...sampleWork, picks: { baseSize: "12" } };
    const next = run(
      other,
      { kind: "setUnit", unit: "in" },
      { kind: "setClosure", closure: { place: "side", belowWaist: 0 } },
    );
    expect(next.tapes).toBe(other.tapes);
    expect(next.picks).toBe(other.picks);
    expect(next.pattern.chart).toBe(other.pattern.chart);
    expect(next.alterations).toBe(other.alterations);
    const equalPattern = run(other, { kind: "setPattern", pattern: structuredClone(other.pattern) });
    expect(equalPattern.pattern).toBe(other.pattern);
  });

  it("is told by what is there, not by the order in which it was entered", () => {
    const { age: _none, ...rest } = sampleWork;
    const work: Work = { age: 47, ...rest, easeWanted: { hip: 40, bust: 50 } };
    expect(applyCommand(work, { kind: "setAge", age: 47 })).toBe(work);
    expect(applyCommand(work, { kind: "setEaseWanted", ease: { bust: 50, hip: 40 } })).toBe(work);
  });
});
