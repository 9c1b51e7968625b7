/** Pages of ink as a PDF file at true scale. Runs wherever plain JavaScript does: no document, no window. */
import { jsPDF } from "jspdf";
import { CoreBug } from "../core/result";
import type { EdgeCurve } from "../core/geometry/edgeCurve";
import type { Point } from "../core/geometry/point";
import type { Mm } from "../core/units";
import type { Ink, InkGroup, InkLine, InkPage, InkText } from "../drawing/ink";
import { INK_LOOK } from "../drawing/inkLook";
import { dashOf, inkInView, startOf } from "./inkBounds";
import { plainLetters } from "./plainLetters";
import { readTypeface, type Typeface } from "./typeface";

/** mm. A page of a PDF file is 14 400 points (5080 mm) at the longest; less what rounding may do. @source ISO 32000-1, annex C */
export const LONGEST_PAGE: Mm = 5079;

export interface PdfOptions {
  readonly title: string;
  /** Files of the typeface, TrueType; only the letters used go into the PDF. */
  readonly typefaces: { readonly regular: Uint8Array; readonly bold: Uint8Array };
  /** The day told as the day of making, yyyy-mm-dd. */
  readonly day: string;
  /** Called after each page. */
  readonly onPage?: (done: number, of: number) => void;
}

/** Points of 1/72 in to a mm. */
const POINTS = 72 / 25.4;

/** Decimals of coordinates in points: 0.0005 pt is 0.0002 mm. */
const DECIMALS = 3;

const LAST_YEAR = 2037;

/** Names by which the file knows its typefaces; six capitals and a plus say that only some letters are in. */
const REGULAR = "BODICE+SourceSans3-Regular";
const BOLD = "BODICE+SourceSans3-Bold";

/**
 * The pages as one PDF file, 1 mm to 1 mm. Curves stay curves; ink that lies wholly outside the window of its group is left
 * out; signs that the typeface lacks are replaced (plainLetters). It asks viewers not to scale when printing. The same
 * pages and options give the same bytes.
 *
 * @throws CoreBug if there is no page, or one is longer or wider than LONGEST_PAGE
 */
export function writePdf(pages: readonly InkPage[], options: PdfOptions): Uint8Array<ArrayBuffer> {
  const [first] = pages;
  if (first === undefined) throw new CoreBug("a file without pages");
  for (const { name, width, height } of pages) {
    if (Math.max(width, height) > LONGEST_PAGE) throw new CoreBug(`page ${name} is too long: ${width} by ${height} mm`);
  }

  const doc = new jsPDF({
    ...shapeOf(first),
    unit: "mm",
    compress: true,
    putOnlyUsedFonts: true,
    floatPrecision: DECIMALS,
  });
  const pen = new Pen(doc, options.typefaces);
  describe(doc, options);
  for (const [i, page] of pages.entries()) {
    if (i > 0) doc.addPage([page.width, page.height], shapeOf(page).orientation);
    pen.forget();
    for (const group of page.groups) drawGroup(doc, pen, group);
    doc.outline.add(null, pen.plain(page.name), { pageNumber: i + 1 });
    options.onPage?.(i + 1, pages.length);
  }
  return new Uint8Array(doc.output("arraybuffer"));
}

/** The library turns a page that is not given as what it is, upright or lying. */
const shapeOf = ({ width, height }: InkPage): { format: [Mm, Mm]; orientation: "p" | "l" } => ({
  format: [width, height],
  orientation: width > height ? "l" : "p",
});

function describe(doc: jsPDF, { title, day }: PdfOptions): void {
  doc.setCreationDate(stampOf(day));
  doc.setFileId(fileId(`${title}\n${day}`));
  // The list of information is a string of the basic plane.
  const plainTitle = plainLetters(title, (codePoint) => codePoint <= 0xffff);
  doc.setDocumentProperties({ title: plainTitle, creator: "Bodicewright" });
  doc.viewerPreferences({ PrintScaling: "None", DisplayDocTitle: true });
}

/** Noon of the day, without a zone of time; the library takes such a text until 2037 only, and then the date itself. */
function stampOf(day: string): string | Date {
  const [year = 0, month = 1, date = 1] = day.split("-").map(Number);
  return year <= LAST_YEAR ? `D:${day.replaceAll("-", "")}120000+00'00'` : new Date(year, month - 1, date, 12);
}

/**
 * 32 hexadecimal digits that follow from the text.
 *
 * @source FNV-1a with 32 bits, four times with other beginnings
 */
function fileId(text: string): string {
  return [0, 1, 2, 3]
    .map((round) => {
      let hash = 0x811c9dc5 ^ round;
      for (let i = 0; i < text.length; i += 1) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
      return (hash >>> 0).toString(16).padStart(8, "0");
    })
    .join("");
}

function drawGroup(doc: jsPDF, pen: Pen, group: InkGroup): void {
  const shown = inkInView(group, (text) => pen.widthOf(text));
  if (shown.length === 0) return;
  const { clip, dx, dy } = group;
  if (clip === null) {
    for (const ink of shown) pen.draw(ink, dx, dy);
    return;
  }
  doc.saveGraphicsState();
  doc.rect(clip.x, clip.y, clip.width, clip.height, null).clip().discardPath();
  for (const ink of shown) pen.draw(ink, dx, dy);
  doc.restoreGraphicsState();
  pen.forget();
}

/** Draws ink, and says a width, dash or colour again only where it changes. */
class Pen {
  readonly #doc: jsPDF;
  readonly #regular: Typeface;
  readonly #bold: Typeface;
  #width = "";
  #dash = "";
  #colour = "";

  constructor(doc: jsPDF, { regular, bold }: PdfOptions["typefaces"]) {
    this.#doc = doc;
    this.#regular = readTypeface(regular);
    this.#bold = readTypeface(bold);
    doc.addFileToVFS("regular.ttf", binaryOf(regular));
    doc.addFont("regular.ttf", REGULAR, "normal");
    doc.addFileToVFS("bold.ttf", binaryOf(bold));
    doc.addFont("bold.ttf", BOLD, "normal");
    doc.setLineJoin("round");
  }

  /** What was said before holds no longer, as on a new page. */
  forget(): void {
    this.#width = "";
    this.#dash = "";
    this.#colour = "";
  }

  plain(text: string): string {
    return plainLetters(text, this.#regular.has);
  }

  widthOf(ink: InkText<"sheet">): Mm {
    const face = this.#face(ink);
    return face.widthOf(plainLetters(ink.text, face.has), ink.size);
  }

  #face({ bold }: InkText<"sheet">): Typeface {
    return bold === true ? this.#bold : this.#regular;
  }

  draw(ink: Ink<"sheet">, dx: Mm, dy: Mm): void {
    if (ink.kind === "line") this.#line(ink, dx, dy);
    else this.#text(ink, dx, dy);
  }

  #line(ink: InkLine<"sheet">, dx: Mm, dy: Mm): void {
    const [first] = ink.edges;
    if (first === undefined) return;
    this.#look(ink);
    const steps = [{ op: "m", c: place(first.a, dx, dy) }, ...ink.edges.map((edge) => stepAlong(edge, dx, dy))];
    if (ink.closed) steps.push({ op: "h", c: [] });
    this.#doc.path(steps);
    if (ink.filled === true) this.#doc.fillStroke();
    else this.#doc.stroke();
  }

  #look(ink: InkLine<"sheet">): void {
    const { width, colour } = INK_LOOK[ink.role];
    const dash = dashOf(ink);
    if (this.#width !== String(width)) this.#doc.setLineWidth(width);
    if (this.#dash !== `[${dash.join()}]`) this.#doc.setLineDashPattern([...dash], 0);
    if (this.#colour !== colour) this.#doc.setDrawColor(colour).setFillColor(colour);
    this.#width = String(width);
    this.#dash = `[${dash.join()}]`;
    this.#colour = colour;
  }

  #text(ink: InkText<"sheet">, dx: Mm, dy: Mm): void {
    const text = plainLetters(ink.text, this.#face(ink).has);
    if (text.trim() === "") return;
    const points = Number((ink.size * POINTS).toFixed(DECIMALS));
    this.#doc
      .setFont(ink.bold === true ? BOLD : REGULAR, "normal")
      .setFontSize(points)
      .setTextColor(INK_LOOK[ink.role].colour);

    // Writing is always set from its start: the library would move it along the page, not along the turned line.
    const along = startOf(ink, this.widthOf(ink));
    const x = ink.at.x + dx + along * Math.cos(ink.turn);
    const y = ink.at.y + dy + along * Math.sin(ink.turn);
    // The library counts degrees against the clock.
    this.#doc.text(text, x, y, ink.turn === 0 ? {} : { angle: (-ink.turn * 180) / Math.PI });
    // Its text colour is the colour of filling.
    this.#colour = "";
  }
}

const place = ({ x, y }: Point<"sheet">, dx: Mm, dy: Mm): number[] => [x + dx, y + dy];

const stepAlong = ({ b, curve }: EdgeCurve<"sheet">, dx: Mm, dy: Mm): { op: string; c: number[] } =>
  curve === null
    ? { op: "l", c: place(b, dx, dy) }
    : { op: "c", c: [...place(curve.c1, dx, dy), ...place(curve.c2, dx, dy), ...place(b, dx, dy)] };

/** One character a byte; in parts, since a call takes only so many arguments. */
function binaryOf(bytes: Uint8Array): string {
  const PART = 8192;
  let text = "";
  for (let i = 0; i < bytes.length; i += PART) text += String.fromCharCode(...bytes.subarray(i, i + PART));
  return text;
}
