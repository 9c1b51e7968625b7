/** Commands of every kind on a work, many of them such as change nothing. */
import { TISSUE_LENGTHS } from "../../src/core/decisions/tissue";
import * as fc from "fast-check";
import { MEASURE_NAMES } from "../../src/core/measures/measure";
import type { Command } from "../../src/core/plan/commands";
import { isRedraw, type DartRedraw } from "../../src/core/decisions/alteration";
import { PRINTED_LENGTHS } from "../../src/core/decisions/pattern";
import { DART_ANSWER_KEYS } from "../../src/core/decisions/seenAtDart";
import { SHEET_FORMATS } from "../../src/core/decisions/paperChoice";
import type { Work } from "../../src/core/decisions/work";
import { TOILE_LENGTHS, TRIAL_CHECKS } from "../../src/core/decisions/trial";
import {
  anyAlteration,
  anyDart,
  anyGiveBack,
  anyHalf,
  anyObservation,
  anySeam,
  anySeenAtDart,
  anyText,
} from "./arbitraryWork";

type EveryKind = { readonly [K in Command["kind"]]: fc.Arbitrary<Extract<Command, { kind: K }>> };

/**
 * @param work  what the command is for; values are equal copies of what it has as often as
 * @param other values of this one
 */
export function anyCommandOn(work: Work, other: Work): fc.Arbitrary<Command> {
  const copy = structuredClone(work);
  const from = <T>(part: (work: Work) => T): fc.Arbitrary<T> => fc.constantFrom(copy, other).map(part);
  const kind = <K extends Command["kind"]>(name: K): fc.Arbitrary<K> => fc.constant(name);
  const measure = fc.constantFrom(...MEASURE_NAMES);
  const reading = from(({ tapes }) => tapes[0]?.readings ?? {}).chain((readings) =>
    fc.constantFrom(900, ...Object.values(readings).flat()),
  );
  const at = fc.nat(3);
  const alterations = [...copy.alterations, ...other.alterations];
  const alteration = alterations.length === 0 ? anyAlteration : fc.constantFrom(...alterations);
  const redraws = alterations.filter(isRedraw);
  const id = alteration.map((one) => one.id);
  const dart = redraws.length === 0 ? anyDart : fc.constantFrom(...redraws.map((redraw) => redraw.dart));
  const giveBack = fc.oneof(anyGiveBack, ...redraws.map((redraw) => fc.constant(redraw.giveBack)));
  const field = fc
    .oneof(anyText, fc.constantFrom("none", ...Object.keys(copy.unread)))
    .filter((f) => f !== "[object Object]");
  const trial = from(({ trials = [] }) => trials[0]?.id ?? "no trial");
  const noRedraws: readonly DartRedraw[] = [];

  const kinds: EveryKind = {
    setName: fc.record({ kind: kind("setName"), name: from(({ name }) => name) }),
    setWearer: fc.record({
      kind: kind("setWearer"),
      name: fc.oneof(
        fc.constantFrom(null, "", " "),
        from(({ wearer }) => wearer ?? null),
      ),
    }),
    setUnit: fc.record({ kind: kind("setUnit"), unit: from(({ unit }) => unit) }),
    setPaper: fc.record({ kind: kind("setPaper"), paper: from(({ paper }) => paper) }),
    setReading: fc.record({ kind: kind("setReading"), measure, at, value: reading }),
    removeReading: fc.record({ kind: kind("removeReading"), measure, at }),
    setMeasure: fc.record({ kind: kind("setMeasure"), measure, value: reading }),
    clearMeasure: fc.record({ kind: kind("clearMeasure"), measure }),
    setTaken: fc.record({ kind: kind("setTaken"), set: at, taken: from(({ tapes }) => tapes[0]?.taken ?? null) }),
    newTape: fc.record({ kind: kind("newTape"), taken: fc.constant("2026-11-25") }),
    removeTape: fc.record({ kind: kind("removeTape"), set: at }),
    setAge: fc.record({ kind: kind("setAge"), age: from(({ age }) => age ?? null) }),
    setPatternName: fc.record({ kind: kind("setPatternName"), name: from(({ pattern }) => pattern.name) }),
    setSizes: fc.record({ kind: kind("setSizes"), sizes: from(({ pattern }) => pattern.chart.sizes) }),
    setCups: fc.record({ kind: kind("setCups"), cups: from(({ pattern }) => pattern.chart.cups) }),
    setDraftedDifference: fc.record({
      kind: kind("setDraftedDifference"),
      value: from(({ pattern }) => pattern.chart.draftedDifference),
    }),
    setPatternEase: fc.record({ kind: kind("setPatternEase"), ease: from(({ pattern }) => pattern.ease) }),
    setLength: fc.record({ kind: kind("setLength"), length: from(({ pattern }) => pattern.length) }),
    setClosure: fc.record({ kind: kind("setClosure"), closure: from(({ pattern }) => pattern.closure) }),
    setPrintedLength: fc.record({
      kind: kind("setPrintedLength"),
      measure: fc.constantFrom(...PRINTED_LENGTHS),
      size: from(({ pattern }) => pattern.chart.sizes[0]?.label ?? null),
      value: from(({ pattern }) => Object.values(pattern.lengths ?? {})[0]?.all ?? null),
    }),
    setTissueLength: fc.record({
      kind: kind("setTissueLength"),
      piece: fc.constantFrom("front", "back"),
      length: fc.constantFrom(...TISSUE_LENGTHS),
      size: from(({ pattern }) => pattern.chart.sizes[0]?.label ?? "10"),
      value: from(({ pattern }) => pattern.tissue?.pieces.front?.waistDartMouth ?? null),
    }),
    setTissueSize: fc.record({
      kind: kind("setTissueSize"),
      size: from(({ pattern }) => pattern.chart.sizes[0]?.label ?? "10"),
    }),
    setOwnPattern: fc.record({ kind: kind("setOwnPattern"), own: from(({ pattern }) => pattern.own ?? null) }),
    setPattern: fc.record({ kind: kind("setPattern"), pattern: from(({ pattern }) => pattern) }),
    setStyle: fc.record({ kind: kind("setStyle"), style: from(({ pattern }) => pattern.style) }),
    setStrap: fc.record({ kind: kind("setStrap"), strap: from(({ pattern }) => pattern.strap) }),
    setEaseWanted: fc.record({ kind: kind("setEaseWanted"), ease: from(({ easeWanted }) => easeWanted) }),
    clearEaseWanted: fc.record({
      kind: kind("clearEaseWanted"),
      level: fc.constantFrom("bust", "waist", "hip"),
    }),
    setTrusted: fc.record({
      kind: kind("setTrusted"),
      measure: fc.constantFrom(...MEASURE_NAMES),
      value: fc.option(reading),
    }),
    setBustRadius: fc.record({ kind: kind("setBustRadius"), value: from(({ bustRadius }) => bustRadius ?? null) }),
    setPick: fc.record({ kind: kind("setPick"), picks: from(({ picks }) => picks) }),
    clearPick: fc.record(
      {
        kind: kind("clearPick"),
        pick: fc.constantFrom("baseSize", "cup", "halfCups", "waist", "hip", "bustAlteration"),
        half: anyHalf,
      },
      { requiredKeys: ["kind", "pick"] },
    ),
    putAlteration: fc.record({ kind: kind("putAlteration"), alteration }),
    removeAlteration: fc.record(
      { kind: kind("removeAlteration"), id, half: anyHalf },
      { requiredKeys: ["kind", "id"] },
    ),
    splitAlteration: fc.record({ kind: kind("splitAlteration"), id, half: anyHalf }),
    keepHalf: fc.record({
      kind: kind("keepHalf"),
      alterations: from((one) => one.alterations),
      picks: from(({ picks }) => picks),
    }),
    replaceRedraws: fc.record(
      {
        kind: kind("replaceRedraws"),
        dart,
        half: anyHalf,
        alterations: fc.oneof(fc.constantFrom(noRedraws, redraws), fc.subarray(redraws)),
      },
      { requiredKeys: ["kind", "dart", "alterations"] },
    ),
    takeAnswer: fc.record(
      {
        kind: kind("takeAnswer"),
        dart: fc.oneof(anyDart, dart),
        half: anyHalf,
        alone: fc.constant(true as const),
        seen: anySeenAtDart,
        answer: fc.constantFrom(...DART_ANSWER_KEYS),
        alterations: fc.oneof(fc.constantFrom(noRedraws, redraws), fc.subarray(redraws)),
      },
      { requiredKeys: ["kind", "dart", "half", "seen", "answer", "alterations"] },
    ),
    moveAlteration: fc.record({ kind: kind("moveAlteration"), id, before: fc.option(id) }),
    setGiveBack: fc.record(
      { kind: kind("setGiveBack"), dart, half: anyHalf, giveBack },
      { requiredKeys: ["kind", "dart", "giveBack"] },
    ),
    setSeen: fc.oneof(
      fc.record({ kind: kind("setSeen"), dart: anyDart, half: anyHalf, seen: fc.option(anySeenAtDart) }),
      from(({ seen = [] }) => seen).chain((list) =>
        fc.record({
          kind: kind("setSeen"),
          dart: fc.oneof(anyDart, ...list.map(({ piece, dart: name }) => fc.constant({ piece, dart: name }))),
          half: anyHalf,
          seen: fc.option(
            fc.oneof(
              anySeenAtDart,
              ...list.map(({ pastBustPoint, tooFarToSide, pointed }) =>
                fc.constant({ pastBustPoint, tooFarToSide, pointed }),
              ),
            ),
          ),
        }),
      ),
    ),
    beginTrial: fc.record({
      kind: kind("beginTrial"),
      id: fc.constantFrom("trial-a", "trial-b"),
      day: fc.constantFrom("2026-11-25", "2026-02-29"),
    }),
    removeTrial: fc.record({ kind: kind("removeTrial"), trial }),
    setTrialDay: fc.record({ kind: kind("setTrialDay"), trial, day: fc.constantFrom(null, "2026-11-26") }),
    setTrialText: fc.record({
      kind: kind("setTrialText"),
      trial,
      of: fc.constantFrom("cloth", "pinnedBy", "bra", "shoes", "because"),
      text: fc.oneof(anyText, fc.constantFrom(null, " ")),
    }),
    setToileLength: fc.record({
      kind: kind("setToileLength"),
      trial,
      length: fc.constantFrom(...TOILE_LENGTHS),
      value: fc.constantFrom(null, -1, 420),
    }),
    putObservation: fc.record({ kind: kind("putObservation"), trial, observation: anyObservation }),
    removeObservation: fc.record({ kind: kind("removeObservation"), trial, id: anyObservation.map((one) => one.id) }),
    setTrialCheck: fc.record({
      kind: kind("setTrialCheck"),
      trial,
      check: fc.constantFrom(...TRIAL_CHECKS),
      is: fc.constantFrom(null, true, false),
    }),
    takeTrialAnswer: fc.record({
      kind: kind("takeTrialAnswer"),
      trial,
      answer: fc.record({
        causes: fc.constant(["swayBack"]),
        because: fc.constant(["seen-1"]),
        alterations: fc.constant(["fit-swayBack"]),
      }),
      alterations: fc.array(alteration, { maxLength: 2 }),
    }),
    setVerdict: fc.record({
      kind: kind("setVerdict"),
      trial,
      verdict: fc.constantFrom(null, "keep", "again"),
    }),
    setBase: fc.record({ kind: kind("setBase"), trial, isBase: fc.boolean() }),
    returnToTrial: fc.record({ kind: kind("returnToTrial"), trial }),
    setDress: fc.constantFrom<Extract<Command, { kind: "setDress" }>>(
      {
        kind: "setDress",
        part: "skirt",
        value: { kind: "tiers", tiers: [{ depth: 200 }, { ratio: 1.6 }], ratio: 1.5 },
      },
      { kind: "setDress", part: "skirt", value: { kind: "aLine", panels: 4, length: 620, flare: 6 } },
      { kind: "setDress", part: "skirt", value: null },
      { kind: "setDress", part: "lining", value: { skirt: true, bodice: true, hipEase: 60 } },
      { kind: "setDress", part: "neckline", value: { shape: "scoop", deeper: 20 } },
      { kind: "setDress", part: "zip", value: "lapped" },
      { kind: "setDress", part: "measures", value: { waistToHip: 205 } },
      { kind: "setDress", part: "cloths", value: { main: { width: 1400, shrinkage: 3 } } },
      { kind: "setDress", part: "opacity", value: null },
    ),
    leaveStanding: fc.record({
      kind: kind("leaveStanding"),
      key: fc.constantFrom("swayBack", "shoulderSlope left"),
      isLeft: fc.boolean(),
    }),
    setAllowance: fc.record({
      kind: kind("setAllowance"),
      seam: anySeam,
      value: from(({ allowances = {} }) => Object.values(allowances)[0] ?? 15),
    }),
    clearAllowance: fc.record({ kind: kind("clearAllowance"), seam: anySeam }),
    setSheetFormat: fc.record({
      kind: kind("setSheetFormat"),
      format: fc.oneof(
        fc.constantFrom(...SHEET_FORMATS),
        from(({ sheetFormat }) => sheetFormat ?? "A4"),
      ),
    }),
    setPrinterMargin: fc.record({
      kind: kind("setPrinterMargin"),
      value: from(({ printerMargin }) => printerMargin ?? null),
    }),
    setUnread: field.chain((name) =>
      fc.record({
        kind: kind("setUnread"),
        field: fc.constant(name),
        text: fc.oneof(
          anyText,
          from(({ unread }) => unread[name] ?? ""),
        ),
      }),
    ),
    clearUnread: fc.record({ kind: kind("clearUnread"), field }),
  };
  return fc.oneof(...Object.values(kinds));
}
