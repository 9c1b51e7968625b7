/**
 * The way from the plan to the printed text: read back by its columns, it has every job of the plan, in its group and
 * phase, every alteration that is made, and of those left out only why.
 */
import type { Alteration } from "../../src/core/decisions/alteration";
import { STYLE_NAMES, type StyleName } from "../../src/core/decisions/pattern";
import type { Work } from "../../src/core/decisions/work";
import { COLUMNS } from "../../src/cli/layout";
import { checklistText } from "../../src/cli/text";
import { measuresOf, tapesOf } from "../../src/core/measures/tape";
import { derivePlan } from "../../src/core/plan/derivePlan";
import type { DartRef } from "../../src/core/pattern/piece";
import type { ChecklistItem, Plan } from "../../src/core/plan/plan";
import { checklistByPiece, checklistLine, groupTitle, type ChecklistLine } from "../../src/words/checklist";
import { refusedSentence } from "../../src/words/doubts";
import { alterationTitle } from "../../src/words/planned";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyChainWork } from "../support/anyChainWork";
import { planOf, testWork } from "../support/works";

/** Plans of each style. */
const RUNS = 15;
/** ms. A busy machine is slow. */
const PATIENCE = 240_000;

/** How sure the picks are takes the longest to tell and has tests of its own: without measures it is not told. */
const textOf = (work: Work, plan: Plan): string => checklistText({ ...work, tapes: tapesOf({}) }, plan);

/** One of each alteration, as the document has it. */
function eachOnce(alterations: readonly Alteration[]): readonly Alteration[] {
  const what = (alteration: Alteration): string =>
    alteration.kind === "fit"
      ? `${alteration.fit} ${alteration.half ?? ""}`
      : `${alteration.kind} ${alteration.dart.piece} ${alteration.dart.dart}`;
  return alterations.filter((one, i) => alterations.findIndex((other) => what(other) === what(one)) === i);
}

const anyPrinted = (style: StyleName): fc.Arbitrary<Work> =>
  anyChainWork(style).map((work) => ({ ...work, alterations: eachOnce(work.alterations) }));

interface PrintedJob {
  readonly phase: string;
  readonly text: string;
  readonly moves: readonly string[];
  readonly amount: string;
}

/** Amounts stand in the last columns; one that is too long for them under the words, set out to the right. */
const AMOUNTS = 17;

type Sections = readonly (readonly [string, readonly string[]])[];

/** The sections of the text, by the titles that are underlined. */
function sectionsOf(text: string): Sections {
  const lines = text.split("\n");
  const starts = lines.flatMap((line, i) => (/^-+$/.test(lines[i + 1] ?? "") && line !== "" ? [i] : []));
  return starts.map((start, i) => [lines[start] ?? "", lines.slice(start + 2, starts[i + 1])]);
}

/** The jobs of one section, put together again from the lines they are broken into. */
function jobsIn(lines: readonly string[]): readonly PrintedJob[] {
  const jobs: { phase: string; text: string[]; moves: string[][]; amount: string }[] = [];
  let phase = "";
  for (const line of lines.filter((one) => one !== "")) {
    const [words, right] = [line.slice(0, COLUMNS - AMOUNTS).trimEnd(), line.slice(COLUMNS - AMOUNTS).trim()];
    const job = jobs.at(-1);
    if (/^\S/.test(line)) phase = line;
    else if (words.startsWith("  [ ] ")) jobs.push({ phase, text: [words.slice(6)], moves: [], amount: right });
    else if (job === undefined) throw new Error(`no job before: ${line}`);
    else if (/^ {6}[a-z] /.test(words)) job.moves.push([words.slice(8)]);
    else if (/^ {17,}/.test(line)) job.amount = line.trim();
    else (job.moves.at(-1) ?? job.text).push(words.trim());
  }
  return jobs.map(({ text, moves, ...job }) => ({
    ...job,
    text: text.join(" "),
    moves: moves.map((move) => move.join(" ")),
  }));
}

const PHASES = ["Trace", "Blend", "Length", "Bust", "Darts", "Widths", "Shoulders and edges", "True and check"];

/** What is printed other than the lines of a group say, in their order. */
function wrongPrint(work: Work, plan: Plan, sections: Sections): readonly string[] {
  const printed = sections.filter(([title]) => title.startsWith("ORDER OF WORK: "));
  const groups = checklistByPiece(plan, work.unit);
  const titles = groups.map((group) => `ORDER OF WORK: ${groupTitle(group).toUpperCase()}`);
  return [
    ...(titles.join() === printed.map(([title]) => title).join() ? [] : [`sections ${titles.join()}`]),
    ...groups.flatMap(({ lines }, i) => {
      const jobs = jobsIn(printed[i]?.[1] ?? []);
      const told = (text: string, moves: readonly string[], amount: string | null): string =>
        JSON.stringify([text, moves, amount ?? ""]);
      const asked = lines.map(({ text, moves, amount }) => told(text, moves, amount));
      const is = jobs.map(({ text, moves, amount }) => told(text, moves, amount));
      const phases = jobs.map(({ phase }) => PHASES.indexOf(phase));
      return [
        ...asked.filter((one) => !is.includes(one)).map((one) => `not printed: ${one}`),
        ...(asked.join() === is.join()
          ? []
          : [`${titles[i] ?? ""}: ${is.length} jobs printed in another order than the ${asked.length} asked`]),
        ...(phases.every((phase, at) => phase >= 0 && phase >= (phases[at - 1] ?? 0))
          ? []
          : [`phases ${phases.join()}`]),
      ];
    }),
  ];
}

/** One of the wearer's redraws of a dart. */
function isRedrawOf({ step }: ChecklistItem, dart: DartRef): boolean {
  if (step.kind !== "alteration" || step.planned.what.kind !== "alteration") return false;
  const { alteration } = step.planned.what;
  const isRedraw = ["dartEnd", "dartMouth", "dartPlace"].includes(alteration.kind);
  return isRedraw && "dart" in alteration && alteration.dart.piece === dart.piece && alteration.dart.dart === dart.dart;
}

const HALVES = { left: "On the left half: ", right: "On the right half: " };

/** A fit of one half alone says so in its title. */
const saysItsHalf = ({ step }: ChecklistItem): boolean =>
  step.kind === "alteration" && step.planned.what.kind === "alteration" && "half" in step.planned.what.alteration;

/** Jobs of the plan that stand in no line of their group or in two, and lines that are of no job. */
function wrongGroups(
  { checklist, left }: Plan,
  work: Work,
  groups: ReturnType<typeof checklistByPiece>,
): readonly string[] {
  const own = ({ piece, step, amount }: ChecklistItem): ChecklistLine =>
    checklistLine({ piece, step, amount }, left.pieces, work.unit, tracedIn(checklist));
  // What was asked of a dart stands in the line that draws it, before what it comes to.
  const said = (item: ChecklistItem): ChecklistLine => {
    const { step } = item;
    if (step.kind !== "dart") return own(item);
    const asked = checklist.filter(
      (one) => isRedrawOf(one, step.dart) && (one.half ?? item.half ?? one.half) === (item.half ?? one.half),
    );
    const line = own(item);
    return {
      ...line,
      text: [...new Set(asked.map((one) => own(one).text)), line.text].join(" "),
      moves: [...line.moves, ...new Set(asked.flatMap((one) => own(one).moves))],
    };
  };
  const isSaid = (item: ChecklistItem): boolean =>
    !checklist.some(
      ({ step, half }) =>
        step.kind === "dart" && isRedrawOf(item, step.dart) && (half ?? item.half ?? half) === (item.half ?? half),
    ) && !(item.step.kind === "places" && own(item).moves.length === 0);
  return groups.flatMap(({ piece, lines }) => {
    const items = checklist
      .filter((item) => (item.step.kind === "walk" ? piece === null : item.piece === piece))
      .filter(isSaid);
    const open = [...lines];
    const wrong = items.flatMap((item) => {
      const line = said(item);
      const half = item.half === undefined || saysItsHalf(item) ? "" : HALVES[item.half];
      const isOf =
        (text: string) =>
        (one: ChecklistLine): boolean =>
          JSON.stringify(one) === JSON.stringify({ ...line, text });
      const at = open.findIndex(isOf(`${half}${line.text}`));
      if (at >= 0) {
        open.splice(at, 1);
        return [];
      }
      // Word for word alike on both halves, two jobs stand in one line with no half.
      const isOther = (other: ChecklistItem): boolean =>
        other !== item && other.half !== item.half && isOf(line.text)(said(other));
      return half !== "" && items.some(isOther) && lines.some(isOf(line.text))
        ? []
        : [`no line for ${half}${line.text}`];
    });
    const shared = open.filter(
      (one) => items.filter((item) => JSON.stringify(said(item)) === JSON.stringify(one)).length !== 2,
    );
    return [...wrong, ...shared.map(({ text }) => `a line of no job: ${text}`)];
  });
}

const tracedIn = (checklist: readonly ChecklistItem[]): string | undefined =>
  checklist.flatMap(({ step }) => (step.kind === "trace" ? [step.size] : []))[0];

/** Made ones that are not printed, and those left out that are, or of which it is not said once why. */
function wrongAlterations(work: Work, plan: Plan, sections: Sections): readonly string[] {
  const failing = sections
    .filter(([title]) => title === "BEFORE YOU CUT")
    .map(([, lines]) => said(lines))
    .join(" ");
  const jobs = sections
    .filter(([title]) => title.startsWith("ORDER OF WORK: "))
    .flatMap(([title, lines]) => jobsIn(lines).map((job) => ({ ...job, title })));
  // That some were left out is said by why each was.
  const counted = failing.includes("could not be made as asked") ? ["left out and counted besides"] : [];
  const each = plan.ledger.flatMap((planned) => {
    if (planned.what.kind !== "alteration") return [];
    const { alteration } = planned.what;
    const title = `${alterationTitle(alteration, work.unit)}.`;
    const piece = alteration.kind === "fit" ? null : alteration.dart.piece;
    const isOn = (heading: string): boolean => piece === null || heading.endsWith(`: ${PIECE_TITLES[piece]}`);
    const isDart = ["dartEnd", "dartMouth", "dartPlace"].includes(alteration.kind);
    const times = jobs.filter((job) => {
      const text = job.text.replace(/^On the (?:left|right) half: /, "");
      return (isDart ? text.includes(title) : text === title) && isOn(job.title);
    }).length;
    if (planned.outcome.ok) return times > 0 || isNothing(plan, planned.id) ? [] : [`made and not printed: ${title}`];
    const why = refusedSentence(planned, work.unit) ?? "";
    const saidTimes = failing.split(why).length - 1;
    return [
      ...(times === 0 ? [] : [`left out and printed: ${title}`]),
      ...(saidTimes === 1 ? [] : [`${saidTimes} times: ${why}`]),
    ];
  });
  return [...counted, ...each];
}

/** Running text again, from the lines of a list. */
const said = (lines: readonly string[]): string => lines.map((line) => line.trim()).join(" ");

/** Asked for nothing, it is no job. */
const isNothing = ({ checklist, ledger }: Plan, id: string): boolean => {
  const what = ledger.find((planned) => planned.id === id)?.what;
  if (what?.kind !== "alteration") return false;
  const { alteration } = what;
  const isListed = checklist.some(({ step }) => step.kind === "alteration" && step.planned.id === id);
  return !isListed && Object.values(alteration).every((value) => typeof value !== "number" || value === 0);
};

const PIECE_TITLES: Readonly<Record<string, string>> = {
  front: "FRONT",
  centreFront: "CENTRE FRONT",
  sideFront: "SIDE FRONT",
  cup: "CUP",
  frontBand: "FRONT BAND",
  back: "BACK",
  backBand: "BACK BAND",
  frontBasque: "FRONT BASQUE",
  backBasque: "BACK BASQUE",
  strap: "STRAP",
};

describe.each(STYLE_NAMES)("the text of any chain on the style %s", { timeout: PATIENCE }, (style) => {
  it("has every job of the plan in its place, and of alterations left out only why", () => {
    let [made, left] = [0, 0];
    fc.assert(
      fc.property(anyPrinted(style), (work) => {
        const derived = derivePlan(work);
        if (!derived.ok) return;
        const plan = derived.value;
        const sections = sectionsOf(textOf(work, plan));
        expect([
          ...wrongGroups(plan, work, checklistByPiece(plan, work.unit)),
          ...wrongPrint(work, plan, sections),
          ...wrongAlterations(work, plan, sections),
        ]).toEqual([]);
        for (const { outcome } of plan.ledger.filter(({ source }) => source === "wearer")) {
          if (outcome.ok) made += 1;
          else left += 1;
        }
      }),
      { numRuns: RUNS },
    );
    expect(Math.min(made, left)).toBeGreaterThan(RUNS / 2);
  });
});

it("tells what was measured and is not altered, as the printed sheet does", () => {
  const length = 300;
  const work: Work = { ...testWork, tapes: tapesOf({ ...measuresOf(testWork.tapes), neckBaseGirth: length }) };
  const sections = new Map(sectionsOf(checklistText(work, planOf(work))));
  const lines = (sections.get("MEASURED, NOT ALTERED") ?? []).join(" ").replaceAll(/\s+/g, " ");
  expect(lines).toContain("Your neck base 30.0 cm");
  expect(lines).toContain("Nothing here alters it: see to it at the fitting.");
});
