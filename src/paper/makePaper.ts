/** True-scale paper from a plan: what it would be, and the file itself. Runs in a worker; nothing here knows a page. */
import type { TruePiece } from "../core/cutting/truePiece";
import { must, ok, type Result } from "../core/result";
import { FORMATS } from "../core/sheets/formats";
import type { Mm } from "../core/units";
import { coverInk, coverPage, mapInk, type CoverKey, type CoverWords } from "../drawing/coverPage";
import type { InkPage } from "../drawing/ink";
import { sheetMap, tiledPages } from "../drawing/sheetPages";
import { planDoubts } from "../words/doubts";
import { ALL_CHECKS_HOLD, allowanceWords, INVENTED_SHEET, joiningSteps, NO_ALLOWANCES, SHEET_KIND } from "../words/sheets";
import { blendWords, dayWords } from "../words/truePaper";
import { writeDxf } from "./dxf";
import { writePdf } from "./pdf";
import type { PaperFailure, PaperFile, PaperMade, PaperPreview, PaperProgress, PaperRequest } from "./request";
import { layOut, OVERLAP, piecesToLay, truePiecesFor, type LaidSheet } from "./sheets";
import { writeSvg } from "./svg";

export interface Typefaces {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

interface Prepared {
  readonly sheet: LaidSheet;
  readonly pieces: readonly TruePiece[];
}

/** Writing on the map of the preview, mm of the sheet. */
const MAP_WRITING: Mm = 26;
/** Room above a roll for what stands on the first page of tiled sheets. */
const ROLL_HEAD: Mm = 190;
const ROLL_HEAD_WIDTH: Mm = 260;

/** What would be printed. */
export function previewPaper(request: PaperRequest): Result<PaperPreview, PaperFailure> {
  const prepared = prepare(request);
  if (!prepared.ok) return prepared;
  const { layout, outlines } = prepared.value.sheet;
  const map = sheetMap(layout, outlines, OVERLAP, MAP_WRITING);
  const page = { name: "Map", width: layout.width, height: layout.height, groups: [{ id: "map", label: "Map of the pages", dx: 0, dy: 0, clip: null, ink: map }] };
  return ok({ pages: layout.tiles.length, map: page });
}

/** The file asked for. `onProgress` is called between the stages, and for every page of a PDF. */
export function makePaper(
  request: PaperRequest,
  file: PaperFile,
  typefaces: Typefaces,
  onProgress: (progress: PaperProgress) => void,
): Result<PaperMade, PaperFailure> {
  onProgress({ stage: "pieces", share: 0 });
  const prepared = prepare(request, () => onProgress({ stage: "layout", share: 0.15 }));
  if (!prepared.ok) return prepared;
  onProgress({ stage: "writing", share: 0.5 });
  const made = write(request, prepared.value, file, typefaces, (done, of) => onProgress({ stage: "writing", share: 0.5 + (0.5 * done) / of }));
  return ok(made);
}

function prepare(request: PaperRequest, onLaying: () => void = () => undefined): Result<Prepared, PaperFailure> {
  const pieces = truePiecesFor(request);
  if (!pieces.ok) return pieces;
  onLaying();
  const sheet = layOut(piecesToLay(request, pieces.value), request);
  return sheet.ok ? ok({ sheet: sheet.value, pieces: pieces.value }) : sheet;
}

function write(
  request: PaperRequest,
  { sheet, pieces }: Prepared,
  file: PaperFile,
  typefaces: Typefaces,
  onPage: (done: number, of: number) => void,
): PaperMade {
  const { work, plan, choices, day } = request;
  const title = `${work.name}: ${SHEET_KIND[choices.kind].toLowerCase()}`;
  const fileName = `${fileWords(work.name)}-${choices.kind === "overlay" ? "overlay" : "pieces"}.${file}`;
  const text = (made: string): Uint8Array<ArrayBuffer> => new Uint8Array(new TextEncoder().encode(made));
  switch (file) {
    case "svg":
      return { bytes: text(writeSvg(wholeSheet(sheet, choices.margin), { title })), fileName, mediaType: "image/svg+xml", pages: 1 };
    case "dxf": {
      const options = { style: work.name, sizeName: choices.size ?? blendWords(plan), day };
      return { bytes: text(writeDxf(pieces, options)), fileName, mediaType: "image/vnd.dxf", pages: 1 };
    }
    case "pdf": {
      const pages = pagesOf(request, sheet);
      return { bytes: writePdf(pages, { title, typefaces, onPage, day }), fileName, mediaType: "application/pdf", pages: pages.length };
    }
  }
}

/** Letters, digits and hyphens of a name, for a file. */
const fileWords = (name: string): string => {
  const plain = name.normalize("NFKD").replaceAll(/[^A-Za-z0-9]+/gu, "-").replaceAll(/^-|-$/gu, "").toLowerCase();
  return plain === "" ? "bodice" : plain.slice(0, 60);
};

/** The pages of the PDF: the map and the tiles; or the one page of a roll. */
export function pagesOf(request: PaperRequest, sheet: LaidSheet): readonly InkPage[] {
  const { work, choices } = request;
  const { width, height } = FORMATS[choices.format];
  const [words, key] = [coverWords(request, sheet), coverKey(request)];
  if (height === null) return [rollPage(sheet, width, choices.margin, words, key)];
  const paper = { width, height };
  const cover = coverPage(paper, choices.margin, words, key, (box) => mapInk(box, sheet.layout, sheet.outlines, OVERLAP));
  return [cover, ...tiledPages(sheet.layout, sheet.pieces, { paper, margin: choices.margin, overlap: OVERLAP, name: work.name })];
}

function coverWords({ work, plan, choices, day }: PaperRequest, { layout }: LaidSheet): CoverWords {
  const { failing } = planDoubts(plan, work.unit);
  return {
    kind: SHEET_KIND[choices.kind],
    name: work.name,
    about: [
      `Pattern: ${work.pattern.name}. ${choices.size === null ? blendWords(plan) : `Printed size ${choices.size}`}.`,
      `Made on ${dayWords(day)}.${work.invented ? ` ${INVENTED_SHEET}` : ""}`,
      ...(choices.kind === "overlay" ? [] : [choices.allowances ? allowanceWords(plan, choices.pieces, work.allowances ?? {}, work.unit) : NO_ALLOWANCES]),
    ],
    failing: choices.size === null ? failing : [],
    notes: choices.size === null && failing.length === 0 ? [ALL_CHECKS_HOLD(plan.checks.length)] : [],
    steps: joiningSteps(choices.format, layout.tiles.length, work.unit),
  };
}

const coverKey = ({ plan, choices }: PaperRequest): CoverKey => ({
  before: choices.before && choices.size === null,
  printed: choices.under.flatMap((label) => {
    const size = plan.nest.labels.indexOf(label);
    return size < 0 || label === choices.size ? [] : [{ label, size }];
  }),
});

/** The one page of a roll: what a first page says above, the pieces below. */
function rollPage({ layout, pieces }: LaidSheet, width: Mm, margin: Mm, words: CoverWords, key: CoverKey): InkPage {
  const box = { x: margin, y: margin, width: Math.min(ROLL_HEAD_WIDTH, width - 2 * margin), height: ROLL_HEAD };
  const { ink, end } = coverInk({ ...box, height: 1000 }, words, key);
  const tile = must(layout.tiles[0], "tile of a roll");
  const [dx, dy] = [margin - tile.x, end + 12 - tile.y];
  return {
    name: "Roll",
    width,
    height: end + 12 + layout.height + margin,
    groups: [
      { id: "about", label: words.kind, dx: 0, dy: 0, clip: null, ink },
      ...pieces.map((piece) => ({ id: piece.key, label: piece.label, dx, dy, clip: null, ink: piece.ink })),
    ],
  };
}

/** All pieces on one sheet without pages. */
function wholeSheet({ layout, pieces }: LaidSheet, margin: Mm): InkPage {
  return {
    name: "Sheet",
    width: layout.width + 2 * margin,
    height: layout.height + 2 * margin,
    groups: pieces.map((piece) => ({ id: piece.key, label: piece.label, dx: margin, dy: margin, clip: null, ink: piece.ink })),
  };
}
