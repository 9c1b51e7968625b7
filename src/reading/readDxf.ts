/** A DXF file as plain lines: every block inserted, curves kept as curves. */
import type { FileDrawing, FileUnit } from "../core/decisions/fileDrawing";
import type { Result } from "../core/result";
import { MM_PER_CM, MM_PER_INCH } from "../core/units";
import { SCALED_ALIKE } from "../core/tolerance";
import { after, IDENTITY, mapped, moving, scaling, turning, type Affine } from "./affine";
import { drawingBuilder, STEPS, type DrawingBuilder, type Look } from "./drawingBuilder";
import { dxfSections, numberAt, textAt, type DxfRecord, type DxfSections } from "./dxfRecords";
import { entityStrokes, inserted, planeOf, polylineStrokes } from "./dxfShapes";
import { blockNameIn, layerNameIn, layersIn, penOf, PLAIN_PEN, type DxfLayer, type Pen } from "./dxfTables";
import { lineOf, paragraphOf, writtenAt } from "./dxfWriting";
import { refusable, refuse, type ReadingFailure } from "./readingFailure";
import { mappedStroke, type Stroke } from "./stroke";

interface Block {
  readonly name: string;
  readonly head: DxfRecord;
  readonly entities: readonly DxfRecord[];
}

/** All that comes from what inserts an entity. */
interface Setting {
  readonly map: Affine;
  /** Layer and pen of what inserts it. */
  readonly layer: string;
  readonly pen: Pen;
  readonly off: boolean;
  /** Names of the blocks around it, outermost first. */
  readonly blocks: readonly string[];
}

interface Reader {
  readonly builder: DrawingBuilder;
  readonly layers: ReadonlyMap<string, DxfLayer>;
  readonly blocks: ReadonlyMap<string, Block>;
  /** mm in a unit, where it is known before the drawing is read. */
  readonly unit: number | null;
}

const MOST_NESTED = 200;

/**
 * Points that only say that the line is bent there; they lie on its own points.
 *
 * @source ASTM D6673, from memory
 */
const CURVE_POINTS = "3";

/** y grows upward in DXF. */
const TURNED_OVER: Affine = { ...IDENTITY, d: -1 };

/**
 * The drawing in the file's own units, y down. A block without an insert is drawn once where nothing else is, as in files
 * whose pieces are blocks and no more. Hatching, dimensions and pictures are left; so is what lies on a sheet's layout.
 */
export const readDxf = (text: string): Result<FileDrawing, ReadingFailure> =>
  refusable(() => {
    const sections = dxfSections(text);
    const builder = drawingBuilder();
    const blocks = blocksIn(sections);
    const unit = headerUnit(sections);
    const reader = { builder, layers: layersIn(sections.tables), blocks, unit };
    const top = { map: TURNED_OVER, layer: "0", pen: PLAIN_PEN, off: false, blocks: [] };
    const isDrawn = drawAll(sections.entities, top, reader);
    if (!isDrawn) for (const block of blocks.values()) if (!block.name.startsWith("*")) drawBlock(block, top, reader);
    return builder.drawing("dxf", unitOf(unit, builder.texts()));
  });

/** mm, by the number of $INSUNITS. */
const UNITS: Readonly<Record<number, number>> = {
  1: MM_PER_INCH,
  2: 12 * MM_PER_INCH,
  4: 1,
  5: MM_PER_CM,
  6: 1000,
  8: MM_PER_INCH / 1e6,
  9: MM_PER_INCH / 1000,
  10: 36 * MM_PER_INCH,
  13: 1 / 1000,
  14: 100,
};

/** Whether a file measures in metres or in feet says nothing of how long its unit is, so $MEASUREMENT is not gone by. */
function headerUnit({ header }: DxfSections): number | null {
  const said = header.get("$INSUNITS");
  return said === undefined ? null : (UNITS[Number(said)] ?? null);
}

/** @source ASTM D6673, from memory: "Units: METRIC" are mm, "Units: ENGLISH" inches */
const WRITTEN = /^units?\s?[:=]\s?(metric|english|imperial|mm|millimet(?:er|re)s?|cm|in|inch(?:es)?)$/iu;

function writtenUnit(texts: readonly string[]): number | null | "several" {
  const found = new Set(
    texts.flatMap((text) => {
      const [, said] = WRITTEN.exec(text.replaceAll(/\s+/gu, " ").trim()) ?? [];
      if (said === undefined) return [];
      if (/^cm$/iu.test(said)) return [MM_PER_CM];
      return [/^m/iu.test(said) ? 1 : MM_PER_INCH];
    }),
  );
  const [unit = null] = found;
  return found.size > 1 ? "several" : unit;
}

/** Where the header says one thing and the writing another, neither counts. */
function unitOf(header: number | null, texts: readonly string[]): FileUnit | null {
  const written = writtenUnit(texts);
  if (written === "several") return null;
  if (header === null) return written === null ? null : { mm: written, saidBy: "text" };
  if (written !== null && Math.abs(written / header - 1) > SCALED_ALIKE) return null;
  return { mm: header, saidBy: "header" };
}

function blocksIn({ blocks }: DxfSections): ReadonlyMap<string, Block> {
  const found = new Map<string, Block>();
  let open: { name: string; head: DxfRecord; entities: DxfRecord[] } | null = null;
  for (const record of blocks) {
    if (record.type === "BLOCK") {
      open = { name: blockNameIn(record), head: record, entities: [] };
      if (!found.has(open.name.toLowerCase())) found.set(open.name.toLowerCase(), open);
    } else if (record.type === "ENDBLK") {
      open = null;
    } else {
      open?.entities.push(record);
    }
  }
  return found;
}

/** @returns whether there was anything to draw, lines or blocks */
function drawAll(records: readonly DxfRecord[], setting: Setting, reader: Reader): boolean {
  let isDrawn = false;
  for (let i = 0; i < records.length; i += 1) {
    const record = records[i];
    if (record === undefined) continue;
    reader.builder.spend(STEPS.element);
    const vertices: DxfRecord[] = [];
    if (record.type === "POLYLINE") {
      for (i += 1; records[i]?.type === "VERTEX"; i += 1) {
        const vertex = records[i];
        if (vertex !== undefined) vertices.push(vertex);
      }
      if (records[i]?.type !== "SEQEND") i -= 1;
    }
    // Layouts of sheets are not the drawing itself.
    if (numberAt(record, 67) === 1) continue;
    isDrawn = draw(record, vertices, setting, reader) || isDrawn;
  }
  return isDrawn;
}

function draw(record: DxfRecord, vertices: readonly DxfRecord[], setting: Setting, reader: Reader): boolean {
  const { builder } = reader;
  const own = layerNameIn(record) || "0";
  const name = own === "0" ? setting.layer : own;
  const layer = reader.layers.get(name.toLowerCase());
  const pen = penOf(record, layer?.pen ?? PLAIN_PEN, setting.pen);
  const isUnseen = numberAt(record, 60) === 1;
  const off = setting.off || isUnseen || layer?.off === true || layer?.frozen === true;
  const where = { layer: layer?.name ?? name, group: groupOf(setting.blocks), off };
  if (record.type === "INSERT") {
    insert(record, { ...setting, layer: name, pen, off: setting.off || isUnseen || layer?.frozen === true }, reader);
    return true;
  }
  if (record.type === "POINT") {
    builder.point(where, mapped(setting.map, inserted(record)), where.layer === CURVE_POINTS);
    return true;
  }
  if (record.type === "TEXT" || record.type === "ATTRIB") {
    builder.writing(
      where,
      mapped(after(setting.map, planeOf(record, numberAt(record, 30))), writtenAt(record)),
      lineOf(record),
    );
    return false;
  }
  if (record.type === "MTEXT") {
    builder.writing(where, mapped(setting.map, inserted(record)), paragraphOf(record));
    return false;
  }
  const strokes =
    record.type === "POLYLINE"
      ? polylineStrokes(record, vertices, builder.spend)
      : entityStrokes(record, builder.spend);
  if (strokes === null) return false;
  const look = { ...where, colour: pen.colour, dash: pen.dash, width: widthOf(pen, reader.unit) };
  drawStrokes(strokes, look, setting.map, builder);
  return strokes.length > 0;
}

function drawStrokes(strokes: readonly Stroke[], look: Look, map: Affine, builder: DrawingBuilder): void {
  for (const stroke of strokes) {
    builder.spend(stroke.parts.length);
    builder.line(look, mappedStroke(map, stroke));
  }
}

const LONGEST_GROUP = 1000;
const groupOf = (blocks: readonly string[]): string => blocks.join(" / ").slice(0, LONGEST_GROUP);

/** Weights are hundredths of a mm; of a file whose unit is not known they stay mm, which tells lines apart as well. */
const widthOf = ({ weight }: Pen, unit: number | null): number => Number((weight / 100 / (unit ?? 1)).toPrecision(4));

function insert(record: DxfRecord, setting: Setting, reader: Reader): void {
  const name = blockNameIn(record);
  const block = reader.blocks.get(name.toLowerCase());
  if (block === undefined) return;
  if (setting.blocks.includes(block.name)) refuse({ code: "reading/endless", name: block.name });
  if (setting.blocks.length >= MOST_NESTED) refuse({ code: "reading/too-deep", most: MOST_NESTED });
  const [columns, rows] = [count(record, 70), count(record, 71)];
  reader.builder.spend(columns * rows * STEPS.element);
  const { x, y } = inserted(record);
  const base = inserted(block.head);
  const placed = after(
    after(setting.map, planeOf(record, numberAt(record, 30))),
    after(moving(x, y), turning(numberAt(record, 50))),
  );
  const scaled = after(scaling(numberAt(record, 41, 1), numberAt(record, 42, 1)), moving(-base.x, -base.y));
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const step = moving(column * numberAt(record, 44), row * numberAt(record, 45));
      drawBlock(block, { ...setting, map: after(after(placed, step), scaled) }, reader);
    }
  }
}

const count = (record: DxfRecord, code: number): number =>
  textAt(record, code) === undefined ? 1 : Math.max(1, Math.floor(numberAt(record, code)));

const drawBlock = (block: Block, setting: Setting, reader: Reader): boolean =>
  drawAll(block.entities, { ...setting, blocks: [...setting.blocks, block.name] }, reader);
