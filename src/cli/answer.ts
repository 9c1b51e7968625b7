/** What `plan` answers: the text to print, or the one line that says why there is none. */
import type { Work } from "../core/decisions/work";
import { fail, ok, type Result } from "../core/result";
import { writeWorkFile } from "../document/workFile";
import { readArguments, USAGE, type Command } from "./args";
import { oneLine } from "./layout";
import { plannedFor, workFrom } from "./planned";
import { planReport } from "./report";
import { checklistText } from "./text";
import { today } from "./today";
import { turnWork, withSeen } from "./turnWork";
import { checkOut, writeOut } from "./writeOut";

const STANDARD_OUTPUT = "-";

/**
 * @param args the arguments after the script's own name
 * @param day of a trial that begins, where none is given: yyyy-mm-dd
 * @returns what goes to standard output, or the one line for standard error
 */
export function answer(args: readonly string[], day = today()): Result<string, string> {
  const result = answerTo(args, day);
  return result.ok ? result : fail(oneLine(result.failure));
}

function answerTo(args: readonly string[], day: string): Result<string, string> {
  const command = readArguments(args);
  if (!command.ok) return command;
  switch (command.value.kind) {
    case "help":
      return ok(USAGE);
    case "plan":
      return printed(command.value);
    case "turn":
      return turned(command.value, day);
  }
}

function printed({ file, json, seen, widths }: Extract<Command, { kind: "plan" }>): Result<string, string> {
  const read = workFrom(file);
  if (!read.ok) return read;
  const work: Result<Work, string> = seen === undefined ? read : workWithSeen(read.value, seen);
  if (!work.ok) return work;
  const planned = plannedFor(work.value, file);
  if (!planned.ok) return planned;
  const { plan } = planned.value;
  return ok(
    json ? `${JSON.stringify(planReport(work.value, plan, widths), null, 2)}\n` : checklistText(work.value, plan),
  );
}

function workWithSeen(work: Work, seen: string): Result<Work, string> {
  const after = withSeen(work, seen);
  return after.ok ? ok(after.value.work) : after;
}

/** The next work is written whether it has a plan or not, as the page keeps it; what it lacks is told when it is planned. */
function turned({ file, turn, out }: Extract<Command, { kind: "turn" }>, day: string): Result<string, string> {
  if (out !== STANDARD_OUTPUT) {
    const free = checkOut(out, file);
    if (!free.ok) return fail(`${out}: ${free.failure}.`);
  }
  const work = workFrom(file);
  if (!work.ok) return work;
  const next = turnWork(work.value, turn, day);
  if (!next.ok) return fail(`${file}: ${next.failure}`);
  const text = writeWorkFile(next.value.work);
  if (out === STANDARD_OUTPUT) return ok(text);
  const written = writeOut(out, text);
  return written.ok ? ok(`${oneLine(out)}: ${next.value.done.join("; ")}.\n`) : fail(`${out}: ${written.failure}.`);
}
