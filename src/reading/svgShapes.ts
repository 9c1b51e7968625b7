/** The plain shapes of SVG as lines. */
import { after, moving, scaling, type Place } from "./affine";
import { STEPS } from "./drawingBuilder";
import { numbersIn, pxOf } from "./svgNumbers";
import { pathStrokes } from "./svgPathData";
import type { Size } from "./svgViewport";
import { arcParts, ellipse, straight, type Stroke } from "./stroke";
import type { XmlElement } from "./xmlTree";

/** null: an element that draws no line. */
export function shapeStrokes(
  element: XmlElement,
  view: Size,
  spend: (steps: number) => void,
): readonly Stroke[] | null {
  const { name, attributes } = element;
  const across = (key: string, absent = 0): number => pxOf(attributes.get(key), view.width, absent);
  const down = (key: string, absent = 0): number => pxOf(attributes.get(key), view.height, absent);
  const slanted = Math.hypot(view.width, view.height) / Math.SQRT2;
  switch (name) {
    case "path":
      return pathStrokes(attributes.get("d") ?? "", spend);
    case "line":
      return [
        {
          from: { x: across("x1"), y: down("y1") },
          parts: [{ to: { x: across("x2"), y: down("y2") } }],
          closed: false,
        },
      ];
    case "polyline":
    case "polygon": {
      const numbers = numbersIn(attributes.get("points") ?? "");
      spend(numbers.length * STEPS.part);
      const places: Place[] = [];
      for (let i = 0; i + 1 < numbers.length; i += 2) places.push({ x: numbers[i] ?? 0, y: numbers[i + 1] ?? 0 });
      const stroke = straight(places, name === "polygon");
      return stroke === null ? [] : [stroke];
    }
    case "circle":
    case "ellipse": {
      const round = pxOf(attributes.get("r"), slanted, 0);
      // Where one radius of an ellipse is left out it is as long as the other.
      const [rx, ry] = [across("rx", down("ry")), down("ry", across("rx"))];
      const [x, y] = name === "circle" ? [round, round] : [rx, ry];
      return x > 0 && y > 0 ? [ellipse(after(moving(across("cx"), down("cy")), scaling(x, y)))] : [];
    }
    case "rect": {
      const [width, height] = [across("width"), down("height")];
      if (!(width > 0) || !(height > 0)) return [];
      const rx = Math.min(width / 2, Math.max(0, across("rx", down("ry"))));
      const ry = Math.min(height / 2, Math.max(0, down("ry", across("rx"))));
      return [rectangle({ x: across("x"), y: down("y") }, width, height, rx, ry)];
    }
    default:
      return null;
  }
}

function rectangle({ x, y }: Place, width: number, height: number, rx: number, ry: number): Stroke {
  const [right, below] = [x + width, y + height];
  if (rx === 0 || ry === 0) {
    const others = [
      { x: right, y },
      { x: right, y: below },
      { x, y: below },
    ];
    return { from: { x, y }, parts: others.map((to) => ({ to })), closed: true };
  }
  const corner = (cx: number, cy: number, quarters: number) =>
    arcParts(after(moving(cx, cy), scaling(rx, ry)), (quarters * Math.PI) / 2, ((quarters + 1) * Math.PI) / 2);
  return {
    from: { x: x + rx, y },
    parts: [
      { to: { x: right - rx, y } },
      ...corner(right - rx, y + ry, 3),
      { to: { x: right, y: below - ry } },
      ...corner(right - rx, below - ry, 0),
      { to: { x: x + rx, y: below } },
      ...corner(x + rx, below - ry, 1),
      { to: { x, y: y + ry } },
      ...corner(x + rx, y + ry, 2),
    ],
    closed: true,
  };
}
