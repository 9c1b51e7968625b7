/** True-scale paper from a plan: what it would be, and the file itself. Runs in a worker; nothing here knows a page. */
import { dayWords } from "../words/terms/days";
import { buttonRowOn, buttonsOnSkirt, isKeyOf, isSkirted } from "../core/cutting/trueParts";
import type { TruePiece } from "../core/cutting/truePiece";
import { drawnPieces } from "../core/parts/halfParts";
import { fail, invariant, ok, type Result } from "../core/result";
import { FORMATS, type PaperFormat } from "../core/sheets/formats";
import { TEST_INCH } from "../core/sheets/testSquares";
import type { Mm } from "../core/units";
import { coverInk, coverPages, mapInk, type CoverKey, type CoverWords } from "../drawing/coverPage";
import type { InkPage } from "../drawing/ink";
import { sheetMap, tiledPages } from "../drawing/sheetPages";
import { testSquare } from "../drawing/testSquare";
import { planDoubts } from "../words/doubts";
import { buttonRowOf, buttonsBelowWords, buttonSheetWords } from "../words/buttons";
import {
  ALL_CHECKS_HOLD,
  OLD_OVERLAY_KIND,
  pieceListWords,
  allowanceWords,
  joiningSteps,
  missingLettersWords,
  NO_ALLOWANCES,
  TACKING_WORDS,
  TOILE_WORDS,
  NO_FACINGS,
  opensWords,
  SHEET_KIND,
  type Paged,
} from "../words/sheets";
import { cutFromWords } from "../words/pieceSource";
import { oldOverlaySteps, OVERLAY_CAUTION, OVERLAY_STEPS, withoutStrips } from "../words/overlay";
import { blendWords } from "../words/truePaper";
import { writeDxf } from "./dxf";
import { LONGEST_PAGE, writePdf } from "./pdf";
import {
  allowancesFor,
  type PaperFailure,
  type PaperFile,
  type PaperMade,
  type PaperPreview,
  type PaperProgress,
  type PaperRequest,
} from "./request";
import {
  layOut,
  layStrips,
  nestToLay,
  OVERLAP,
  overlayFor,
  piecesToLay,
  sizeKey,
  stripsToLay,
  truePiecesFor,
  type Laid,
  type LaidSheet,
} from "./sheets";
import { writeSvg } from "./svg";
import { INVENTED_SHEET } from "../words/invented";
import * as say from "../words/trueFile";

export interface Typefaces {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

/** Writing on the map of the preview, mm of the sheet. */
const MAP_WRITING: Mm = 26;
/** Above the pieces on a roll stands what the first page says of tiled sheets, this wide. */
const ROLL_HEAD_WIDTH: Mm = 300;
/** A drawing file has no pages: its pieces lie side by side on a sheet this wide, more where one of them is wider. */
const DRAWING: PaperFormat = { width: 1200, height: null };
const DRAWING_MARGIN: Mm = 10;

/** What is asked for, ready to be laid. */
interface Wanted {
  readonly laid: readonly Laid[];
  /** What no strip can show, and why. */
  readonly notes: readonly string[];
  /** The pieces and how often each is cut; none of an overlay. */
  readonly pieces: readonly TruePiece[];
}

/** What would be printed. */
export function previewPaper(request: PaperRequest): Result<PaperPreview, PaperFailure> {
  const wanted = wantedBy(request);
  if (!wanted.ok) return wanted;
  const sheet = layOnPaper(request, wanted.value.laid);
  if (!sheet.ok) return sheet;
  const { layout, outlines, joined } = sheet.value;
  const map = sheetMap(layout, outlines, joined ? OVERLAP : 0, MAP_WRITING);
  const page = {
    name: "Map",
    width: layout.width,
    height: layout.height,
    groups: [{ id: "map", label: say.pagesMap, dx: 0, dy: 0, clip: null, ink: map }],
  };
  const before =
    FORMATS[request.choices.format].height === null ? 0 : coverOf(request, sheet.value, wanted.value).length;
  return ok({ pages: layout.tiles.length, before, notes: wanted.value.notes, map: page });
}

/** The file asked for. `onProgress` is called between the stages, and for every page of a PDF. */
export function makePaper(
  request: PaperRequest,
  file: PaperFile,
  typefaces: Typefaces,
  onProgress: (progress: PaperProgress) => void,
): Result<PaperMade, PaperFailure> {
  const { work, plan, choices, day } = request;
  const title = `${nameOf(work.name)}: ${SHEET_KIND[choices.kind].toLowerCase()}`;
  const fileName = `${fileWords(work.name)}-${request.old === undefined ? "" : "changes-"}${choices.kind}.${file}`;
  onProgress({ stage: "pieces", share: 0 });
  if (file === "dxf") {
    // Strips to lay on tissue are no pieces of a pattern: the standard has nothing for them.
    if (choices.kind === "overlay") return fail({ code: "paper/overlay-no-dxf" });
    const pieces = choices.nested === true ? allSizesFor(request) : truePiecesFor(request);
    if (!pieces.ok) return pieces;
    if (pieces.value.length === 0) return fail({ code: "sheet/nothing-to-lay" });
    onProgress({ stage: "writing", share: 0.5 });
    const made = writeDxf(pieces.value, {
      style: work.name,
      sizeName: choices.size ?? blendWords(plan),
      day,
      ...(choices.toile === true ? { toile: true } : {}),
    });
    return ok({ bytes: bytesOf(made), fileName, mediaType: "image/vnd.dxf", pages: 1 });
  }
  const wanted = wantedBy(request);
  if (!wanted.ok) return wanted;
  onProgress({ stage: "layout", share: 0.15 });
  if (file === "svg") {
    const sheet = layOut(wanted.value.laid, DRAWING, DRAWING_MARGIN);
    if (!sheet.ok) return sheet;
    onProgress({ stage: "writing", share: 0.5 });
    return ok({
      bytes: bytesOf(writeSvg(wholeSheet(sheet.value, DRAWING_MARGIN), { title })),
      fileName,
      mediaType: "image/svg+xml",
      pages: 1,
    });
  }
  const sheet = layOnPaper(request, wanted.value.laid);
  if (!sheet.ok) return sheet;
  const pages = pagesOf(request, sheet.value, wanted.value);
  const length = Math.max(...pages.map(({ height }) => height));
  if (length > LONGEST_PAGE) return fail({ code: "paper/roll-too-long", length, most: LONGEST_PAGE });
  onProgress({ stage: "writing", share: 0.5 });
  const bytes = writePdf(pages, {
    title,
    typefaces,
    day,
    onPage: (done, of) => onProgress({ stage: "writing", share: 0.5 + (0.5 * done) / of }),
  });
  return ok({ bytes, fileName, mediaType: "application/pdf", pages: pages.length });
}

const layOnPaper = ({ choices }: PaperRequest, laid: readonly Laid[]): Result<LaidSheet, PaperFailure> =>
  (choices.kind === "overlay" ? layStrips : layOut)(laid, FORMATS[choices.format], choices.margin);

function wantedBy(request: PaperRequest): Result<Wanted, PaperFailure> {
  if (request.choices.kind === "overlay") {
    const overlay = overlayFor(request);
    if (overlay.patches.length === 0 && request.choices.pieces.length > 0) {
      return fail(
        overlay.tooMuch.length > 0
          ? { code: "paper/overlay-too-much", pieces: overlay.tooMuch.map(({ piece }) => piece) }
          : { code: "paper/nothing-changed" },
      );
    }
    return ok({ laid: stripsToLay(request, overlay), notes: withoutStrips(overlay), pieces: [] });
  }
  if (request.choices.nested === true) {
    const base = truePiecesFor(baseSizeOf(request));
    return base.ok ? ok({ laid: nestToLay(request, base.value), notes: [], pieces: base.value }) : base;
  }
  const pieces = truePiecesFor(request);
  return pieces.ok ? ok({ laid: piecesToLay(request, pieces.value), notes: [], pieces: pieces.value }) : pieces;
}

/** The base size's line stands for all of them. */
const baseSizeOf = (request: PaperRequest): PaperRequest => ({
  ...request,
  choices: { ...request.choices, size: request.plan.sizing.baseSize.label, allowances: false },
});

/** Every piece in every printed size, each called by its size. */
function allSizesFor(request: PaperRequest): Result<readonly TruePiece[], PaperFailure> {
  const made: TruePiece[] = [];
  for (const [index, size] of request.plan.nest.labels.entries()) {
    const pieces = truePiecesFor({ ...request, choices: { ...request.choices, size, allowances: false } });
    if (!pieces.ok) return pieces;
    made.push(
      ...pieces.value.map((piece) => ({ ...piece, key: sizeKey(piece.name, request.plan.nest.labels, index) })),
    );
  }
  return ok(made);
}

const bytesOf = (text: string): Uint8Array<ArrayBuffer> => new Uint8Array(new TextEncoder().encode(text));

/** Letters, digits and hyphens of a name, for a file. */
const fileWords = (name: string): string => {
  const plain = name
    .normalize("NFKD")
    .replaceAll(/[^A-Za-z0-9]+/gu, "-")
    .replaceAll(/^-|-$/gu, "")
    .toLowerCase();
  return plain === "" ? "bodice" : plain.slice(0, 60);
};

/** The pages of the PDF: what is to be said, the map and the tiles; or the one page of a roll. */
function pagesOf(request: PaperRequest, sheet: LaidSheet, wanted: Wanted): readonly InkPage[] {
  const { work, choices } = request;
  const { width, height } = FORMATS[choices.format];
  if (height === null) {
    const [words, key] = [coverWords(request, sheet, wanted), coverKey(request, "roll")];
    return [rollPage(sheet, width, choices.margin, words, key)];
  }
  const paper = { width, height };
  const overlap = sheet.joined ? OVERLAP : 0;
  return [
    ...coverOf(request, sheet, wanted),
    ...tiledPages(sheet.layout, sheet.pieces(), {
      paper,
      margin: choices.margin,
      overlap,
      name: nameOf(work.name),
      wearer: work.wearer,
      joined: sheet.joined,
    }),
  ];
}

/** What comes before the pages with pieces. */
function coverOf(request: PaperRequest, sheet: LaidSheet, wanted: Wanted): readonly InkPage[] {
  const { format, margin } = request.choices;
  const { width, height } = FORMATS[format];
  const key = coverKey(request, sheet.joined && sheet.layout.tiles.length > 1 ? "joined" : "single");
  return coverPages({ width, height: height ?? 0 }, margin, coverWords(request, sheet, wanted), key, (box) =>
    mapInk(box, sheet.layout, sheet.outlines, sheet.joined ? OVERLAP : 0),
  );
}

/** A work can be without a name. */
const nameOf = (name: string): string => (name.trim() === "" ? "Bodice" : name);

const isButtoned = ({ drills }: TruePiece): boolean => drills.some(({ what }) => what === "button");

function coverWords(request: PaperRequest, { layout }: LaidSheet, { notes, pieces }: Wanted): CoverWords {
  const { work, plan, choices, day, old } = request;
  const { failing } = planDoubts(plan, work.unit);
  const isOverlay = choices.kind === "overlay";
  const allowances = allowancesFor(request);
  const all =
    choices.size === null ? plan.left.pieces : (plan.nest.sizes[plan.nest.labels.indexOf(choices.size)] ?? []);
  const own = all.filter(({ name }) => choices.pieces.includes(name));
  const dressParts = choices.size === null && choices.nested !== true ? (request.dress?.parts ?? []) : [];
  const row =
    dressParts.length > 0
      ? buttonRowOn(plan, dressParts, work.pattern.closure)
      : buttonRowOf(all, work.pattern.closure);
  // One in another, sizes have no marks.
  const buttoned = choices.nested === true ? [] : pieces.filter(isButtoned).map(({ name }) => name);
  const parts = drawnPieces(dressParts)
    .filter((part) => pieces.some(({ key }) => isKeyOf(key, part)))
    .map(({ piece }) => piece);
  return {
    kind: old === undefined ? SHEET_KIND[choices.kind] : OLD_OVERLAY_KIND,
    name: nameOf(work.name),
    about: [
      say.sheetOf(
        work.wearer,
        work.pattern.name,
        choices.nested === true
          ? say.allPrintedSizes
          : choices.size === null
            ? blendWords(plan)
            : say.printedSize(choices.size),
      ),
      `${say.madeOn(dayWords(day))}${work.invented ? ` ${INVENTED_SHEET}` : ""}`,
      ...(isOverlay
        ? []
        : [
            pieceListWords(pieces),
            opensWords(work, isSkirted(dressParts)),
            allowances === null ? NO_ALLOWANCES : allowanceWords([...own, ...parts], allowances, work.unit),
            ...(choices.toile === true && allowances !== null ? [TOILE_WORDS] : []),
            ...(pieces.some(({ tacking }) => tacking.length > 0) ? [TACKING_WORDS] : []),
            ...buttonSheetWords(all, buttoned, row, work.pattern.closure, allowances, work.unit),
            ...(buttoned.length === 0
              ? []
              : buttonsBelowWords(buttonsOnSkirt(plan, dressParts, work.pattern.closure), work.unit)),
          ]),
    ],
    failing: choices.size === null ? failing : [],
    notes: [
      ...(old === undefined ? cutFromWords(choices.kind, work.pattern, plan.nest.source) : []),
      ...(isOverlay || hasItsFinish(request) ? [] : [NO_FACINGS]),
      ...(choices.size === null && failing.length === 0 ? [ALL_CHECKS_HOLD(plan.checks.length)] : []),
      ...missingLettersWords([work.name, work.wearer ?? "", work.pattern.name]),
      ...notes,
    ],
    steps: isOverlay
      ? [...(old === undefined ? OVERLAY_STEPS : oldOverlaySteps(old.called)), OVERLAY_CAUTION]
      : joiningSteps(choices.format, layout.tiles.length, work.unit),
  };
}

/** Whether facings are drawn, or a lining or a binding takes their place. */
const hasItsFinish = ({ dress }: PaperRequest): boolean =>
  dress?.parts.some(({ group }) => group === "facing" || group === "bodiceLining" || group === "binding") === true;

const coverKey = ({ plan, choices, old }: PaperRequest, paged: Paged): CoverKey => ({
  paged,
  overlay: choices.kind === "overlay",
  ...(old === undefined ? {} : { old: true as const }),
  before: choices.kind === "pieces" && choices.before && choices.size === null,
  printed: (choices.kind === "pieces" ? choices.under : []).flatMap((label) => {
    const size = plan.nest.labels.indexOf(label);
    return size < 0 || label === choices.size ? [] : [{ label, size }];
  }),
});

/** The one page of a roll: what a first page says above, the pieces below. */
function rollPage({ layout, pieces }: LaidSheet, width: Mm, margin: Mm, words: CoverWords, key: CoverKey): InkPage {
  const box = { x: margin, y: margin, width: Math.min(ROLL_HEAD_WIDTH, width - 2 * margin), height: 2000 };
  const { pages: said, end } = coverInk(box, words, key);
  const ink = said.flat();
  const tile = invariant(layout.tiles[0], "tile of a roll");
  const [dx, dy] = [margin - tile.x, end + 12 - tile.y];
  return {
    name: "Roll",
    width,
    height: end + 12 + layout.height + margin,
    groups: [
      { id: "about", label: words.kind, dx: 0, dy: 0, clip: null, ink },
      ...pieces().map((piece) => ({ id: piece.key, label: piece.label, dx, dy, clip: null, ink: piece.ink })),
    ],
  };
}

/** All pieces on one sheet without pages, and below them the test squares, in a group of their own. */
function wholeSheet({ layout, pieces }: LaidSheet, margin: Mm): InkPage {
  const foot = margin + layout.height + margin;
  return {
    name: "Sheet",
    width: layout.width + 2 * margin,
    height: foot + TEST_INCH + margin,
    groups: [
      ...pieces()
        .flatMap((piece) => piece.parts ?? [piece])
        .map(({ key, label, ink }) => ({ id: key, label, dx: margin, dy: margin, clip: null, ink })),
      { id: "test-square", label: say.testSquares, dx: 0, dy: 0, clip: null, ink: testSquare(margin, foot) },
    ],
  };
}
