/** What `plan` answers: the text to print, or the one line that says why there is none. */
import { fail, ok, type Result } from "../core/result";
import { readArguments, USAGE } from "./args";
import { oneLine } from "./layout";
import { plannedFrom } from "./planned";
import { planReport } from "./report";
import { checklistText } from "./text";

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
  const planned = plannedFrom(file);
  if (!planned.ok) return planned;
  const { work, plan } = planned.value;
  return ok(json ? `${JSON.stringify(planReport(work, plan), null, 2)}\n` : checklistText(work, plan));
}
