/** What an SVG file's viewBox does, and what its size says of its units. */
import type { FileUnit } from "../core/decisions/fileDrawing";
import { SCALED_ALIKE } from "../core/tolerance";
import { IDENTITY, scaling, type Affine } from "./affine";
import { MM_PER_PX, numbersIn, pxOf, realLength } from "./svgNumbers";
import type { XmlElement } from "./xmlTree";

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Of a file without size or viewBox; only per cents need it. */
const USUAL: Size = { width: 300, height: 150 };

export function viewBoxOf({ attributes }: XmlElement): Box | null {
  const [x, y, width, height] = numbersIn(attributes.get("viewBox") ?? "");
  return x === undefined ||
    y === undefined ||
    !(width !== undefined && width > 0) ||
    !(height !== undefined && height > 0)
    ? null
    : { x, y, width, height };
}

const share = (at: string): number => (at === "Min" ? 0 : at === "Max" ? 1 : 0.5);

/** Takes the box into a viewport of that size, which begins at 0, 0. */
export function intoViewport(box: Box, size: Size, aspect: string | undefined): Affine {
  const [align = "xMidYMid", meet = "meet"] = (aspect ?? "")
    .trim()
    .split(/\s+/u)
    .filter((word) => word !== "" && word !== "defer");
  const [across, down] = [size.width / box.width, size.height / box.height];
  if (align === "none") return { ...scaling(across, down), e: -box.x * across, f: -box.y * down };
  const scale = meet === "slice" ? Math.max(across, down) : Math.min(across, down);
  return {
    ...scaling(scale, scale),
    e: -box.x * scale + share(align.slice(1, 4)) * (size.width - box.width * scale),
    f: -box.y * scale + share(align.slice(5, 8)) * (size.height - box.height * scale),
  };
}

export interface RootViewport {
  /** To the units in which the drawing is kept. */
  readonly map: Affine;
  readonly unit: FileUnit | null;
  readonly size: Size;
}

/**
 * The drawing is kept in the units of the outermost viewBox, or, where there is none, in px. Only a size in units of the real
 * world says how long they are: px and bare numbers were a 72nd, a 90th or a 96th of an inch in different programs, and are
 * often none of these.
 */
export function rootViewport(root: XmlElement): RootViewport {
  const box = viewBoxOf(root);
  const [width, height] = [root.attributes.get("width"), root.attributes.get("height")].map(realLength);
  const real = [width, height].filter((one) => one !== null && one !== undefined);
  if (box === null) {
    const size = {
      width: pxOf(root.attributes.get("width"), USUAL.width, USUAL.width),
      height: pxOf(root.attributes.get("height"), USUAL.height, USUAL.height),
    };
    return { map: IDENTITY, unit: real.length === 0 ? null : { mm: MM_PER_PX, saidBy: "size" }, size };
  }
  const across = width === null || width === undefined ? null : width / box.width;
  const down = height === null || height === undefined ? null : height / box.height;
  const aspect = root.attributes.get("preserveAspectRatio") ?? "";
  if (across === null || down === null) {
    const mm = across ?? down;
    return { map: IDENTITY, unit: mm === null ? null : { mm, saidBy: "size" }, size: box };
  }
  if (/\bnone\b/u.test(aspect) && Math.abs(down / across - 1) > SCALED_ALIKE)
    return { map: scaling(1, down / across), unit: { mm: across, saidBy: "size" }, size: box };
  const mm = /\bslice\b/u.test(aspect) ? Math.max(across, down) : Math.min(across, down);
  // Widths and heights written with few digits say less well what the longer of the two says best.
  const alike = Math.abs(down / across - 1) <= SCALED_ALIKE;
  const best = box.width >= box.height ? across : down;
  return { map: IDENTITY, unit: { mm: alike ? best : mm, saidBy: "size" }, size: box };
}
