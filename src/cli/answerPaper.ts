/** What `paper` answers: the file written and one line that says so, or the one line that says why there is none. */
import { isPrintedAmong, printedParts, replacedPieces, type PrintedGroup } from "../core/cutting/trueParts";
import { dressOf } from "../core/dress/dressOf";
import { fail, ok, type Result } from "../core/result";
import { FORMATS } from "../core/sheets/formats";
import { makePaper } from "../paper/makePaper";
import { dressOnPaper, type PaperFile, type PaperRequest } from "../paper/request";
import { overlayFor, truePiecesFor } from "../paper/sheets";
import { paperFailureWords, USUAL_MARGIN } from "../words/paperChoices";
import { oneLine } from "./layout";
import { PAPER_USAGE, PARTS_NAMED, readPaperArguments, type PaperCommand, type PartsNamed } from "./paperArgs";
import { plannedFrom, type Planned } from "./planned";
import { checklistText } from "./text";
import { readTypefaces } from "./typefaces";
import { checkOut, writeOut } from "./writeOut";
import * as say from "../words/doors/paperDoor";

const STANDARD_OUTPUT = "-";

/**
 * @param args the arguments after the script's own name
 * @param today yyyy-mm-dd
 * @returns what goes to standard output: a line on what was written, or, where that is asked for, the very file; or the
 *          one line for standard error
 */
export function answerPaper(args: readonly string[], today: string): Result<string | Uint8Array, string> {
  const result = answerTo(args, today);
  return result.ok ? result : fail(oneLine(result.failure));
}

function answerTo(args: readonly string[], today: string): Result<string | Uint8Array, string> {
  const command = readPaperArguments(args);
  if (!command.ok) return command;
  if (command.value.kind === "help") return ok(PAPER_USAGE);
  const { file, out } = command.value;
  if (out !== STANDARD_OUTPUT) {
    const free = checkOut(out, file);
    if (!free.ok) return fail(`${out}: ${free.failure}.`);
  }
  const planned = plannedFrom(file);
  if (!planned.ok) return planned;
  const made = madeOf(command.value, planned.value, today);
  if (!made.ok) return made;
  if (out === STANDARD_OUTPUT) return ok(made.value.content);
  const written = writeOut(out, made.value.content);
  return written.ok ? ok(`${oneLine(out)}: ${made.value.said}.\n`) : fail(`${out}: ${written.failure}.`);
}

interface Made {
  readonly content: string | Uint8Array;
  /** How much of it there is. */
  readonly said: string;
}

function madeOf(command: PaperCommand, planned: Planned, today: string): Result<Made, string> {
  const { as, file } = command;
  if (as === "checklist") {
    const content = checklistText(planned.work, planned.plan);
    return ok({ content, said: say.linesCounted(content.trimEnd().split("\n").length) });
  }
  const request = requestFor(command, planned, today);
  if (!request.ok) return request;
  const made = makePaper(request.value, as, as === "pdf" ? readTypefaces() : NO_TYPEFACES, () => undefined);
  if (!made.ok) {
    const { title, remedy } = paperFailureWords(made.failure, planned.work.unit);
    return fail(`${file}: ${title} ${remedy}`);
  }
  return ok({ content: made.value.bytes, said: saidOf(as, request.value, made.value.pages) });
}

/** Only a PDF carries them. */
const NO_TYPEFACES = { regular: new Uint8Array(), bold: new Uint8Array() };

/** The groups of parts that a name of the command line stands for. */
const PARTS_OF: Readonly<Record<PartsNamed, readonly PrintedGroup[]>> = {
  bodice: [],
  skirt: ["skirt"],
  lining: ["bodiceLining", "skirtLining", "underlining"],
  facings: ["facing"],
  straps: ["strap"],
};

/** What the page asks for when nothing there has been changed, but for what the command says otherwise. */
export function requestFor(
  { paper, size, allSizes, parts, allowances, toile, overlay, day }: PaperCommand,
  { work, plan }: Planned,
  today: string,
): Result<PaperRequest, string> {
  const { labels, sizes } = plan.nest;
  if (size !== null && !labels.includes(size)) return fail(say.noSuchSize(size, labels.join(", ")));
  const printed = allSizes ? plan.printed : null;
  const pieces = size === null ? (printed ?? plan.left.pieces) : (sizes[labels.indexOf(size)] ?? []);
  const derived = work.dress === undefined || overlay || size !== null || allSizes ? null : dressOf(work);
  const dress = derived?.ok === true ? dressOnPaper(derived.value) : null;
  const all = printedParts(dress?.parts ?? [], () => false);
  const has = (name: PartsNamed): boolean =>
    name === "bodice" || all.some(({ group }) => PARTS_OF[name].includes(group));
  const missing = parts?.find((name) => !has(name));
  if (missing !== undefined) return fail(say.noSuchPartHere(missing, PARTS_NAMED.filter(has).join(", ")));
  const isWanted = (name: PartsNamed): boolean => parts === null || parts.includes(name);
  const wanted = all
    .filter(({ group }) => PARTS_NAMED.some((name) => isWanted(name) && PARTS_OF[name].includes(group)))
    .map(({ id }) => id);
  const replaced = replacedPieces(plan, dress?.parts ?? []);
  return ok({
    work,
    plan,
    day: day ?? today,
    choices: {
      kind: overlay ? "overlay" : "pieces",
      format: paper ?? work.sheetFormat ?? work.paper,
      margin: work.printerMargin ?? USUAL_MARGIN,
      size,
      pieces: pieces
        .map(({ name }) => name)
        .filter((name) => dress === null || (isWanted("bodice") && !replaced.includes(name))),
      ...(dress === null
        ? {}
        : {
            parts: printedParts(dress.parts, isPrintedAmong(dress.parts, wanted, isWanted("bodice") ? undefined : []))
              .map(({ id }) => id)
              .filter((id) => wanted.includes(id)),
          }),
      under: [],
      before: false,
      allowances: allowances && !overlay && !allSizes,
      ...(toile ? { toile: true as const } : {}),
      ...(allSizes ? { nested: true as const } : {}),
    },
    ...(dress === null ? {} : { dress }),
  });
}

function saidOf(as: PaperFile, request: PaperRequest, pages: number): string {
  const { kind, format } = request.choices;
  const parts =
    kind === "overlay" ? say.stripsCounted(overlayFor(request).patches.length) : say.piecesCounted(piecesIn(request));
  if (as !== "pdf") return parts;
  return FORMATS[format].height === null ? say.onOnePage(parts, format) : say.onPages(parts, pages, format);
}

function piecesIn(request: PaperRequest): number {
  if (request.choices.nested === true) return request.choices.pieces.length;
  const pieces = truePiecesFor(request);
  return pieces.ok ? pieces.value.length : 0;
}
