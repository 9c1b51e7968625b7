/** PDF files read by pdf.js: the lines and the writing of a page as it finds them, in mm from the upper left corner. */
import { getDocument, OPS, type PDFDocumentProxy, type PDFPageProxy } from "pdfjs-dist/legacy/build/pdf.mjs";
import type { PathStep } from "./pathReader";

const MM = 25.4 / 72;

/** Kinds of step in a path of pdf.js, and how many numbers each takes. */
const KINDS = [
  ["M", 2],
  ["L", 2],
  ["C", 6],
  ["Q", 4],
  ["Z", 0],
] as const;

interface Look {
  readonly dash: readonly number[];
  readonly width: number;
  readonly colour: string;
}

export interface PdfLine extends Look {
  readonly steps: readonly PathStep[];
  readonly painted: "stroke" | "fillStroke" | "clip";
}

export interface PdfWriting {
  readonly text: string;
  /** On the foot of the first letter. */
  readonly x: number;
  readonly y: number;
  /** +x towards +y. */
  readonly turn: number;
  readonly width: number;
  readonly size: number;
}

// pdf.js takes its data over, so it gets a copy.
export const openPdf = (bytes: Uint8Array): Promise<PDFDocumentProxy> =>
  getDocument({ data: bytes.slice(), verbosity: 0 }).promise;

const heightOf = (page: PDFPageProxy): number => page.view[3] ?? 0;

export async function pdfLines(bytes: Uint8Array, pageNumber = 1): Promise<PdfLine[]> {
  const page = await (await openPdf(bytes)).getPage(pageNumber);
  const { fnArray, argsArray } = await page.getOperatorList();
  const height = heightOf(page);
  const lines: PdfLine[] = [];
  // What holds on a new page: a width of 1 pt, unbroken, black.
  let look: Look = { dash: [], width: MM, colour: "#000000" };
  const saved: Look[] = [];
  for (const [i, operator] of fnArray.entries()) {
    const args: unknown = argsArray[i];
    if (operator === OPS.save) saved.push(look);
    if (operator === OPS.restore) look = saved.pop() ?? look;
    if (operator === OPS.setDash)
      look = { ...look, dash: (args as [number[], number])[0].map((length) => length * MM) };
    if (operator === OPS.setLineWidth) look = { ...look, width: (args as [number])[0] * MM };
    if (operator === OPS.setStrokeRGBColor) look = { ...look, colour: (args as [string])[0] };
    if (operator !== OPS.constructPath) continue;
    const [paint, [data]] = args as [number, [Float32Array]];
    const painted =
      paint === OPS.stroke
        ? "stroke"
        : paint === OPS.fillStroke
          ? "fillStroke"
          : paint === OPS.endPath
            ? "clip"
            : undefined;
    if (painted === undefined) throw new Error(`a path painted by ${paint}`);
    lines.push({ steps: stepsOf([...data], height), ...look, painted });
  }
  return lines;
}

function stepsOf(data: readonly number[], height: number): PathStep[] {
  const steps: PathStep[] = [];
  for (let i = 0; i < data.length;) {
    const [command, count] = KINDS[data[i] ?? -1] ?? ["Q", 0];
    if (command === "Q") throw new Error(`an unknown step ${data[i]}`);
    const numbers = data.slice(i + 1, i + 1 + count).map((value, j) => (j % 2 === 0 ? value : height - value) * MM);
    steps.push({ command, numbers });
    i += 1 + count;
  }
  return steps;
}

export async function pdfWriting(bytes: Uint8Array, pageNumber = 1): Promise<PdfWriting[]> {
  const page = await (await openPdf(bytes)).getPage(pageNumber);
  const { items } = await page.getTextContent();
  const height = heightOf(page);
  return items.flatMap((item) => {
    if (!("str" in item) || item.str === "") return [];
    const [a, b, , , e, f] = item.transform as number[];
    if (a === undefined || b === undefined || e === undefined || f === undefined) return [];
    return [
      {
        text: item.str,
        x: e * MM,
        y: (height - f) * MM,
        turn: Math.atan2(-b, a) + 0,
        width: item.width * MM,
        size: Math.hypot(a, b) * MM,
      },
    ];
  });
}
