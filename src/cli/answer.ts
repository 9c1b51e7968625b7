/** What the command line answers: the text to print, or the one line that says why there is none. */
import { readFileSync, statSync } from "node:fs";
import { derivePlan } from "../core/plan/derivePlan";
import { fail, ok, type Result } from "../core/result";
import { readWorkFile } from "../document/workFile";
import { planFailureWords } from "../words/plan";
import { workFileFailureSentence } from "../words/workFile";
import { readArguments, USAGE } from "./args";
import { planReport } from "./report";
import { checklistText } from "./text";

/** Bytes. No work comes near it. */
const LARGEST_FILE = 20_000_000;

function readText(file: string): Result<string, string> {
  try {
    const found = statSync(file);
    if (found.isDirectory()) return fail("it is a folder");
    if (!found.isFile() && !found.isFIFO()) return fail("it is not a file");
    if (found.size > LARGEST_FILE) return fail("it is far too large for a work file");
    return ok(readFileSync(file, "utf8"));
  } catch (error) {
    const code = error instanceof Error && "code" in error ? error.code : undefined;
    if (code === "ENOENT" || code === "ENOTDIR") return fail("there is no such file");
    if (code === "EACCES" || code === "EPERM") return fail("it may not be read");
    return fail("it cannot be read");
  }
}

/**
 * @param args the arguments after the script's own name
 * @returns what goes to standard output, or the one line for standard error
 */
export function answer(args: readonly string[]): Result<string, string> {
  const result = answerTo(args);
  return result.ok ? result : fail(oneLine(result.failure));
}

function answerTo(args: readonly string[]): Result<string, string> {
  const command = readArguments(args);
  if (!command.ok) return command;
  if (command.value.kind === "help") return ok(USAGE);
  const { file, json } = command.value;
  const text = readText(file);
  if (!text.ok) return fail(`${file}: ${text.failure}.`);
  const work = readWorkFile(text.value);
  if (!work.ok) return fail(`${file}: ${workFileFailureSentence(work.failure)}`);
  const plan = derivePlan(work.value);
  if (!plan.ok) {
    const words = planFailureWords(plan.failure, work.value.unit, work.value.pattern.chart.sizes.length);
    return fail(`${file}: ${words.title}. ${words.text}`);
  }
  return ok(
    json ? `${JSON.stringify(planReport(work.value, plan.value), null, 2)}\n` : checklistText(work.value, plan.value),
  );
}

/** One line, whatever the file or the argument was called. */
const oneLine = (text: string): string => text.replaceAll(/[\p{Cc}\p{Cf}\s]+/gu, " ").trim();
