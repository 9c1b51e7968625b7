/** Layers of a DXF file, and how their lines look. */
import { LIMITS } from "../core/decisions/limits";
import { BLACK, numberedColour, trueColour } from "./colours";
import { numberAt, textAt, type DxfRecord } from "./dxfRecords";

export interface DxfLayer {
  readonly name: string;
  readonly off: boolean;
  /** Blocks inserted on it are off too. */
  readonly frozen: boolean;
  readonly pen: Pen;
}

/** How a line is drawn. */
export interface Pen {
  readonly colour: string;
  /** "" for a whole line. */
  readonly dash: string;
  /** Hundredths of a mm; 0: not said. */
  readonly weight: number;
}

export const PLAIN_PEN: Pen = { colour: BLACK, dash: "", weight: 0 };

const BY_BLOCK = 0;
const BY_LAYER = 256;
const WEIGHT_BY_BLOCK = -2;
const WEIGHT_BY_LAYER = -1;
const FROZEN = 1;

const nameIn = (record: DxfRecord, code: number): string => (textAt(record, code) ?? "").trim().slice(0, LIMITS.text);

/** By their names in small letters: DXF makes no difference. */
export function layersIn(tables: readonly DxfRecord[]): ReadonlyMap<string, DxfLayer> {
  const layers = new Map<string, DxfLayer>();
  for (const record of tables) {
    if (record.type !== "LAYER") continue;
    const name = nameIn(record, 2);
    const number = numberAt(record, 62, 7);
    layers.set(name.toLowerCase(), {
      name,
      off: number < 0,
      frozen: (numberAt(record, 70) & FROZEN) !== 0,
      pen: {
        colour: colourIn(record, Math.abs(number)),
        dash: dashNamed(nameIn(record, 6)),
        weight: Math.max(0, numberAt(record, 370)),
      },
    });
  }
  return layers;
}

function colourIn(record: DxfRecord, number: number): string {
  const bits = textAt(record, 420);
  return bits === undefined ? numberedColour(number) : trueColour(numberAt(record, 420));
}

const dashNamed = (name: string): string => (/^continuous$/iu.test(name) ? "" : name);

/** @param block the pen of what inserts it */
export function penOf(record: DxfRecord, layer: Pen, block: Pen): Pen {
  const number = Math.abs(numberAt(record, 62, BY_LAYER));
  const isSaid = textAt(record, 420) !== undefined || (number !== BY_LAYER && number !== BY_BLOCK);
  const line = nameIn(record, 6);
  const weight = numberAt(record, 370, WEIGHT_BY_LAYER);
  return {
    colour: isSaid ? colourIn(record, number) : number === BY_BLOCK ? block.colour : layer.colour,
    dash: /^byblock$/iu.test(line)
      ? block.dash
      : line === "" || /^bylayer$/iu.test(line)
        ? layer.dash
        : dashNamed(line),
    weight: weight === WEIGHT_BY_BLOCK ? block.weight : weight === WEIGHT_BY_LAYER ? layer.weight : Math.max(0, weight),
  };
}

export const layerNameIn = (record: DxfRecord): string => nameIn(record, 8);
export const blockNameIn = (record: DxfRecord): string => nameIn(record, 2);
