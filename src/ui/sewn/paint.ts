/** Paints a scene on a canvas, the furthest first, in the tones of paper and ink. */
import type { Extent, Mark } from "./scene";

export interface Tones {
  readonly lit: string;
  readonly shade: string;
  readonly ink: string;
  readonly inside: string;
  readonly seam: string;
  readonly faint: string;
}

const TONES = 40;
/** How much of its shade the darkest cloth takes. */
const DARKEST = 0.92;

/** The tones of the page that an element is on. */
export function tonesOf(element: Element): Tones {
  const style = getComputedStyle(element);
  const token = (name: string): string => style.getPropertyValue(name).trim();
  return {
    lit: token("--paper-lit"),
    shade: token("--edge"),
    inside: token("--ink-soft"),
    ink: token("--ink"),
    seam: token("--carbon"),
    faint: token("--edge"),
  };
}

/** From mm to CSS pixels, the same for all fronts that are shown side by side. */
export interface Fit {
  readonly scale: number;
  readonly middle: number;
}

const MARGIN = 0.94;

export function fitInto(width: number, height: number, extents: readonly Extent[]): Fit {
  const across = Math.max(1, ...extents.map((extent) => extent.across));
  const top = Math.min(...extents.map((extent) => extent.top));
  const bottom = Math.max(...extents.map((extent) => extent.bottom));
  return {
    scale: MARGIN * Math.min(width / (2 * across), height / Math.max(1, bottom - top)),
    middle: (top + bottom) / 2,
  };
}

export function paint(
  canvas: HTMLCanvasElement,
  marks: readonly Mark[],
  fit: Fit,
  tones: Tones,
  sharpness: number,
): void {
  const context = canvas.getContext("2d");
  if (context === null) return;
  const [width, height] = [canvas.width / sharpness, canvas.height / sharpness];
  context.setTransform(sharpness, 0, 0, sharpness, 0, 0);
  context.clearRect(0, 0, width, height);
  context.lineJoin = "round";
  context.lineCap = "butt";
  const across = (x: number): number => width / 2 + x * fit.scale;
  const down = (y: number): number => height / 2 + (y - fit.middle) * fit.scale;
  const cloth = scaleOf(tones.shade, tones.lit);
  const inside = scaleOf(tones.inside, tones.shade);
  for (const mark of marks) {
    switch (mark.kind) {
      case "face": {
        const tone = (mark.wrongSide ? inside : cloth)[Math.round(Math.min(1, mark.light) * (TONES - 1))] ?? tones.lit;
        const [p, q, r] = mark.corners;
        context.beginPath();
        context.moveTo(across(p.x), down(p.y));
        context.lineTo(across(q.x), down(q.y));
        context.lineTo(across(r.x), down(r.y));
        context.closePath();
        context.fillStyle = tone;
        context.fill();
        // The seam between two faces would show as a hair of the ground.
        context.strokeStyle = tone;
        context.lineWidth = 0.8;
        context.setLineDash([]);
        context.stroke();
        break;
      }
      case "line": {
        const { colour, size, dash } = strokeOf(mark.line, tones);
        context.beginPath();
        context.moveTo(across(mark.from.x), down(mark.from.y));
        context.lineTo(across(mark.to.x), down(mark.to.y));
        context.strokeStyle = colour;
        context.lineWidth = size;
        context.setLineDash(dash);
        // Stitches run on from one part of the line to the next.
        context.lineDashOffset = mark.along * fit.scale;
        context.stroke();
        break;
      }
      case "tip":
        context.beginPath();
        context.arc(across(mark.at.x), down(mark.at.y), 3.2, 0, 2 * Math.PI);
        context.fillStyle = tones.lit;
        context.fill();
        context.strokeStyle = tones.seam;
        context.lineWidth = 1.6;
        context.setLineDash([]);
        context.stroke();
        break;
    }
  }
}

interface Stroke {
  readonly colour: string;
  readonly size: number;
  readonly dash: number[];
}

function strokeOf(line: (Mark & { kind: "line" })["line"], tones: Tones): Stroke {
  switch (line) {
    case "dart":
      return { colour: tones.seam, size: 1.8, dash: [5, 3] };
    case "princess":
      return { colour: tones.seam, size: 1.5, dash: [5, 3] };
    case "edge":
      return { colour: tones.ink, size: 1.3, dash: [] };
    case "centre":
      return { colour: tones.faint, size: 1, dash: [8, 3, 2, 3] };
    case "bust":
      return { colour: tones.faint, size: 1, dash: [2, 3] };
  }
}

/** From the darkest to the lightest tone of cloth. */
function scaleOf(shade: string, lit: string): readonly string[] {
  const [dark, light] = [partsOf(shade), partsOf(lit)];
  return Array.from({ length: TONES }, (_, index) => {
    const ink = DARKEST * (1 - index / (TONES - 1));
    return `rgb(${light.map((part, place) => Math.round(part + ((dark[place] ?? 0) - part) * ink)).join(" ")})`;
  });
}

/** Red, green and blue of a colour written #rrggbb, as the tokens are; the paper's where it is written otherwise. */
function partsOf(colour: string): readonly number[] {
  const written = /^#([\da-f]{2})([\da-f]{2})([\da-f]{2})$/i.exec(colour);
  return written === null ? [251, 247, 239] : written.slice(1).map((part) => Number.parseInt(part, 16));
}
