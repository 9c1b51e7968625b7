/** One turn of a trial garment without a screen: what was seen put down, an answer taken, a half kept, a trial closed or begun. */
import type { Half } from "../core/decisions/alteration";
import { LIMITS } from "../core/decisions/limits";
import { TOILE_LENGTHS, TRIAL_CHECKS, type Observation, type Trial } from "../core/decisions/trial";
import type { Work } from "../core/decisions/work";
import { applyCommand, type Command } from "../core/plan/commands";
import { keepHalf } from "../core/plan/halfEdit";
import { fail, ok, type Result } from "../core/result";
import { readTrial } from "../core/trial/readTrial";
import { answerCommand } from "../core/trial/takeAnswer";
import { canTryOnHalf, isToTake } from "../core/trial/takenNow";
import { readSeenFile, type SeenFile } from "../document/seenFile";
import { keepFailureSentence } from "../words/halves";
import { planFailureWords } from "../words/plan";
import { dayWords } from "../words/terms/days";
import type { Turn } from "./args";
import { readBytes } from "./readBytes";
import * as say from "../words/doors/planDoor";

/** The newest trial that is not closed; null where none is open. */
export const openTrial = ({ trials = [] }: Work): Trial | null =>
  trials.find(({ verdict }) => verdict === undefined) ?? null;

const NONE_OPEN = say.noTrialOpen;

interface Turned {
  readonly work: Work;
  /** What was done, for one line. */
  readonly done: readonly string[];
}

type Step = (work: Work) => Result<Turned, string>;

/**
 * @param today of a trial that begins, where the turn says no day: yyyy-mm-dd
 * @returns the work after the turn, and what was done; or why nothing was
 */
export function turnWork(
  work: Work,
  { seen, take, keepHalf: kept, close, begin }: Turn,
  today: string,
): Result<Turned, string> {
  const steps: readonly (Step | null)[] = [
    seen === null ? null : (before) => withSeen(before, seen),
    take === null ? null : (before) => withAnswer(before, take.answer, take.half),
    kept === null ? null : (before) => withHalf(before, kept),
    close === null ? null : (before) => closed(before, close),
    begin === null ? null : (before) => begun(before, begin.day ?? today),
  ];
  let turned: Turned = { work, done: [] };
  for (const step of steps) {
    if (step === null) continue;
    const next = step(turned.work);
    if (!next.ok) return next;
    turned = { work: next.value.work, done: [...turned.done, ...next.value.done] };
  }
  return ok(turned);
}

/** Bytes. */
const LARGEST_SEEN = 1_000_000;

/** The work with the lines of a file in its open trial. */
export function withSeen(work: Work, file: string): Result<Turned, string> {
  const bytes = readBytes(file, LARGEST_SEEN, say.recordFile);
  if (!bytes.ok) return fail(`${file}: ${bytes.failure}.`);
  const read = readSeenFile(Buffer.from(bytes.value).toString("utf8"));
  if (!read.ok) {
    const where = read.failure.code === "file/damaged" ? ` at ${read.failure.places.join(", ")}` : "";
    return fail(say.noRecord(file, where));
  }
  const trial = openTrial(work);
  if (trial === null) return fail(`${file}: ${NONE_OPEN}.`);
  const { observations, checks, measured } = read.value;
  const of = { trial: trial.id };
  const lines = withIds(trial.observations, observations);
  const due = new Set([...trial.observations, ...lines].map(({ id }) => id)).size;
  if (due > LIMITS.observations) return fail(say.recordTooLong(file, LIMITS.observations, due));
  const commands: readonly Command[] = [
    ...lines.map((observation): Command => ({ kind: "putObservation", ...of, observation })),
    ...TRIAL_CHECKS.flatMap((check): readonly Command[] =>
      checks[check] === undefined ? [] : [{ kind: "setTrialCheck", ...of, check, is: checks[check] }],
    ),
    ...TOILE_LENGTHS.flatMap((length): readonly Command[] =>
      measured[length] === undefined ? [] : [{ kind: "setToileLength", ...of, length, value: measured[length] }],
    ),
  ];
  return ok({ work: commands.reduce(applyCommand, work), done: [say.putDown(lines.length)] });
}

/** A line without an id of its own is a new one. */
function withIds(there: readonly Observation[], lines: SeenFile["observations"]): readonly Observation[] {
  const known = new Set([...there, ...lines].map(({ id }) => id));
  return lines.map(({ id, ...line }) => ({ ...line, id: id ?? freshName("seen", known) }));
}

/** "seen-1", or the first after it that is not taken; it is taken then. */
function freshName(word: string, known: Set<string | undefined>): string {
  let at = 1;
  while (known.has(`${word}-${at}`)) at += 1;
  known.add(`${word}-${at}`);
  return `${word}-${at}`;
}

function withAnswer(work: Work, number: number, half: Half | null): Result<Turned, string> {
  const trial = openTrial(work);
  if (trial === null) return fail(`${NONE_OPEN}.`);
  const read = readTrial(trial, work.trials);
  if (!read.ok) {
    const { title, text } = planFailureWords(read.failure, work.unit, trial.sewn.pattern.chart.sizes.length);
    return fail(say.toileFails(title, text));
  }
  const { answers } = read.value;
  const answer = answers[number - 1];
  if (answer === undefined) {
    const there = answers.length === 0 ? say.nothingAnswered : say.answersCounted(answers.length);
    return fail(say.noSuchAnswer(number, there));
  }
  if (!isToTake(answer)) return fail(say.mendedByHand(number));
  if (half !== null && !canTryOnHalf(trial, answer)) return fail(say.notOnOneHalf(number));
  const on = half === null ? "" : say.triedOnHalf(half);
  return ok({
    work: applyCommand(work, answerCommand(work, trial, answer, half)),
    done: [say.answerTaken(number, dayWords(trial.day), on)],
  });
}

function withHalf(work: Work, keep: Half | "mean"): Result<Turned, string> {
  const kept = keepHalf(work, keep);
  if (!kept.ok) return fail(keepFailureSentence(kept.failure, work.unit));
  return ok({
    work: applyCommand(work, kept.value),
    done: [keep === "mean" ? say.givenTheMean : say.givenWhatOneHas(keep)],
  });
}

function closed(work: Work, { verdict, isBase }: NonNullable<Turn["close"]>): Result<Turned, string> {
  const trial = openTrial(work);
  if (trial === null) return fail(`${NONE_OPEN}.`);
  const after = applyCommand(work, { kind: "setVerdict", trial: trial.id, verdict });
  return ok({
    work: isBase ? applyCommand(after, { kind: "setBase", trial: trial.id, isBase }) : after,
    done: [say.trialClosed(dayWords(trial.day), isBase ? say.keptAsBase : "")],
  });
}

/** One trial at a time: of two that are open nobody could tell which is meant. */
function begun(work: Work, day: string): Result<Turned, string> {
  const open = openTrial(work);
  if (open !== null) return fail(say.trialStillOpen(dayWords(open.day)));
  if ((work.trials?.length ?? 0) >= LIMITS.trials) return fail(say.tooManyTrials(LIMITS.trials));
  const id = freshName("trial", new Set((work.trials ?? []).map((one) => one.id)));
  return ok({ work: applyCommand(work, { kind: "beginTrial", id, day }), done: [say.trialBegun(dayWords(day))] });
}
