/** What `pieces` answers: what is in a file of outlines, or the one line that says why it was not read. */
import { readOutlines } from "../core/outlines/readOutlines";
import { fail, ok, type Result } from "../core/result";
import { LARGEST_PATTERN_FILE, readPatternFile } from "../reading/readPatternFile";
import { readingFailureSentence } from "../words/reading";
import { oneLine } from "./layout";
import { PIECES_USAGE, readPiecesArguments } from "./piecesArgs";
import { piecesReport } from "./piecesReport";
import { piecesText } from "./piecesText";
import { workFrom } from "./planned";
import { readBytes } from "./readBytes";

/**
 * @param args the arguments after the script's own name
 * @returns what goes to standard output, or the one line for standard error
 */
export function answerPieces(args: readonly string[]): Result<string, string> {
  const result = answerTo(args);
  return result.ok ? result : fail(oneLine(result.failure));
}

function answerTo(args: readonly string[]): Result<string, string> {
  const command = readPiecesArguments(args);
  if (!command.ok) return command;
  if (command.value.kind === "help") return ok(PIECES_USAGE);
  const { file, json, known, chart } = command.value;
  const work = chart === null ? null : workFrom(chart);
  if (work?.ok === false) return work;
  const bytes = readBytes(file, LARGEST_PATTERN_FILE, "pattern");
  if (!bytes.ok) return fail(`${file}: ${bytes.failure}.`);
  const drawing = readPatternFile({ name: file, bytes: bytes.value });
  if (!drawing.ok) return fail(`${file}: ${readingFailureSentence(drawing.failure)}`);
  const reading = readOutlines({
    own: { file, drawing: drawing.value, pieces: [], ...(known === null || known === undefined ? {} : { known }) },
    labels: work?.value.pattern.chart.sizes.map(({ label }) => label) ?? [],
  });
  if (json) return ok(`${JSON.stringify(piecesReport(drawing.value, reading), null, 2)}\n`);
  return ok(piecesText(file, drawing.value, reading, work?.value.unit ?? "cm"));
}
