/** An SVG file as plain lines: every transform, symbol and copied part carried out. Nothing is fetched and nothing runs. */
import type { FileDrawing } from "../core/decisions/fileDrawing";
import { LIMITS } from "../core/decisions/limits";
import type { Result } from "../core/result";
import { after, growthOf, mapped, moving, type Affine, type Place } from "./affine";
import { BLACK, webColour } from "./colours";
import { drawingBuilder, STEPS, type DrawingBuilder, type Look } from "./drawingBuilder";
import { refusable, refuse, type ReadingFailure } from "./readingFailure";
import { mappedStroke } from "./stroke";
import { pxOf, transformOf } from "./svgNumbers";
import { shapeStrokes } from "./svgShapes";
import { styleOf, styleSheetOf, type Style, type StyleSheet } from "./svgStyle";
import { intoViewport, rootViewport, viewBoxOf, type Size } from "./svgViewport";
import { MOST_DEPTH, readXml, textIn, type XmlElement } from "./xmlTree";

/** Elements that hold others and are drawn. All that stands in no list here draws nothing by itself. */
const GROUPS = new Set(["g", "a", "switch", "svg"]);

/** What looks of lines are told apart by: so many digits of a width or a dash, so many dashes. */
const LOOK_DIGITS = 4;
const MOST_DASHES = 16;

/** What the groups around an element are called. */
interface Named {
  /** The name of the nearest layer, where the program that wrote the file says which groups are layers. */
  readonly layer: string | null;
  readonly nearest: string;
  readonly all: string;
}

const UNNAMED: Named = { layer: null, nearest: "", all: "" };

/** All that comes from around an element. */
interface Setting {
  readonly map: Affine;
  readonly style: Style;
  readonly view: Size;
  readonly around: readonly XmlElement[];
  readonly named: Named;
  readonly off: boolean;
  /** Parts that are being copied, by id. */
  readonly copying: readonly string[];
}

interface Reader {
  readonly builder: DrawingBuilder;
  readonly sheet: StyleSheet;
  readonly byId: ReadonlyMap<string, XmlElement>;
}

/**
 * The drawing in the units of its outermost viewBox (`rootViewport`), y down. What is clipped or masked is read whole; an
 * area without an edge line counts as a line of its own colour. Groups, layers and elements that are switched off are read
 * too, and listed.
 */
export const readSvg = (text: string): Result<FileDrawing, ReadingFailure> =>
  refusable(() => {
    const root = readXml(text);
    if (root.name !== "svg") refuse({ code: "reading/other-format", format: "unknown" });
    const { map, unit, size } = rootViewport(root);
    const builder = drawingBuilder();
    const byId = new Map<string, XmlElement>();
    const styles: string[] = [];
    lookThrough(root, (element) => {
      const id = element.attributes.get("id");
      if (id !== undefined && !byId.has(id)) byId.set(id, element);
      if (element.name === "style") styles.push(textIn(element));
    });
    const reader = { builder, sheet: styleSheetOf(styles.join("\n")), byId };
    const outer = { map, style: {}, view: size, around: [], named: UNNAMED, off: false, copying: [] };
    const style = styleOf(root, [], {}, reader.sheet, builder.spend);
    visitAll(root.children, { ...outer, style, around: [root] }, reader);
    return builder.drawing("svg", unit);
  });

function lookThrough(element: XmlElement, see: (element: XmlElement) => void): void {
  see(element);
  for (const child of element.children) if (typeof child !== "string") lookThrough(child, see);
}

function visitAll(children: XmlElement["children"], setting: Setting, reader: Reader): void {
  for (const child of children) if (typeof child !== "string") visit(child, setting, reader);
}

function visit(element: XmlElement, outer: Setting, reader: Reader): void {
  const { builder, sheet } = reader;
  builder.spend(STEPS.element);
  // Elements of other programs, which are nobody's drawing.
  if (element.prefix !== "" && element.prefix !== "svg") return;
  if (outer.around.length > MOST_DEPTH) refuse({ code: "reading/too-deep", most: MOST_DEPTH });
  const isGroup = GROUPS.has(element.name);
  const isCopy = element.name === "use";
  const isText = element.name === "text";
  const strokes = isGroup || isCopy || isText ? null : shapeStrokes(element, outer.view, builder.spend);
  if (!isGroup && !isCopy && !isText && strokes === null) return;

  const style = styleOf(element, outer.around, outer.style, sheet, builder.spend);
  const named = isGroup || isCopy ? namedWith(outer.named, element) : outer.named;
  const setting = {
    ...outer,
    style,
    named,
    map: after(outer.map, transformOf(element.attributes.get("transform"), builder.spend)),
    around: [...outer.around, element],
    off: outer.off || style.display === "none",
  };
  if (strokes !== null) {
    const look = lookOf(setting);
    if (look !== null) for (const stroke of strokes) builder.line(look, mappedStroke(setting.map, stroke));
  } else if (isText) {
    writingsOf(element, setting, reader);
  } else if (isCopy) {
    visitCopied(element, setting, reader);
  } else {
    const inside = element.name === "svg" ? inViewport(element, setting, element) : setting;
    visitAll(element.children, inside, reader);
  }
}

/** @param place says where it lies and how large it is: itself, or the element that copies it */
function inViewport(element: XmlElement, setting: Setting, place: XmlElement): Setting {
  const { view } = setting;
  const said = (key: string): string | undefined => place.attributes.get(key) ?? element.attributes.get(key);
  const size = {
    width: pxOf(said("width"), view.width, view.width),
    height: pxOf(said("height"), view.height, view.height),
  };
  // A copied symbol was moved already by what copies it.
  const isSelf = place === element;
  const at = isSelf
    ? { x: pxOf(element.attributes.get("x"), view.width, 0), y: pxOf(element.attributes.get("y"), view.height, 0) }
    : { x: 0, y: 0 };
  const moved = after(setting.map, moving(at.x, at.y));
  const box = viewBoxOf(element);
  return box === null
    ? { ...setting, map: moved, view: size }
    : {
        ...setting,
        map: after(moved, intoViewport(box, size, element.attributes.get("preserveAspectRatio"))),
        view: { width: box.width, height: box.height },
      };
}

function visitCopied(element: XmlElement, setting: Setting, reader: Reader): void {
  const href = (element.attributes.get("href") ?? element.attributes.get("xlink:href") ?? "").trim();
  const id = href.slice(1);
  // What lies in another file is not fetched.
  const target = href.startsWith("#") ? reader.byId.get(id) : undefined;
  if (target === undefined) return;
  if (setting.copying.includes(id)) refuse({ code: "reading/endless", name: id.slice(0, LIMITS.text) });
  const { view } = setting;
  const at = {
    x: pxOf(element.attributes.get("x"), view.width, 0),
    y: pxOf(element.attributes.get("y"), view.height, 0),
  };
  const inside = {
    ...setting,
    map: after(setting.map, moving(at.x, at.y)),
    copying: [...setting.copying, id],
  };
  if (target.name !== "symbol" && target.name !== "svg") return visit(target, inside, reader);
  reader.builder.spend(STEPS.element);
  const style = styleOf(target, setting.around, setting.style, reader.sheet, reader.builder.spend);
  const symbol = {
    ...inside,
    style,
    map: after(inside.map, transformOf(target.attributes.get("transform"), reader.builder.spend)),
    named: namedWith(setting.named, target),
    around: [...setting.around, target],
    off: setting.off || style.display === "none",
  };
  if (symbol.around.length > MOST_DEPTH) refuse({ code: "reading/too-deep", most: MOST_DEPTH });
  visitAll(target.children, inViewport(target, symbol, element), reader);
}

const LONGEST_GROUP = 1000;

/** As programs number groups that nobody named. */
const NUMBERED = /^(?:g|svg|svgg|use|path|surface|page|id|_?group_?)[-_]?\d+(?:[-_]\d+)*$/iu;

/** By its label, its title or, where it has neither, its id. */
function namedWith(named: Named, element: XmlElement): Named {
  const { attributes } = element;
  const local = (key: string): string | undefined => {
    for (const [name, value] of attributes) if (name.slice(name.indexOf(":") + 1) === key) return value;
    return undefined;
  };
  const title = element.children.find((child) => typeof child !== "string" && child.name === "title");
  const id = attributes.get("id") ?? "";
  const isLayer = local("groupmode") === "layer";
  const told = [local("label"), attributes.get("data-name"), plainIn(title), isLayer || !NUMBERED.test(id) ? id : ""];
  const name = told.map((one) => one?.trim().slice(0, LIMITS.text) ?? "").find((one) => one !== "");
  return name === undefined
    ? named
    : {
        layer: isLayer ? name : named.layer,
        nearest: name,
        all: (named.all === "" ? name : `${named.all} / ${name}`).slice(0, LONGEST_GROUP),
      };
}

const plainIn = (element: XmlElement | string | undefined): string =>
  element === undefined || typeof element === "string" ? "" : textIn(element).replaceAll(/\s+/gu, " ");

const whereOf = ({ named, off, style }: Setting): Pick<Look, "layer" | "group" | "off"> => ({
  layer: named.layer ?? named.nearest,
  group: named.all,
  off: off || style.visibility === "hidden" || style.visibility === "collapse",
});

const shortened = (value: number): number => Number(value.toPrecision(LOOK_DIGITS));

/** null: neither its line nor its area is drawn. */
function lookOf(setting: Setting): Look | null {
  const { style, map, view } = setting;
  const current = webColour(style.color ?? BLACK, BLACK) ?? BLACK;
  const where = whereOf(setting);
  const stroke = webColour(style.stroke ?? "none", current);
  if (stroke === null) {
    const fill = webColour(style.fill ?? BLACK, current);
    return fill === null ? null : { ...where, colour: fill, dash: "", width: 0 };
  }
  const whole = Math.hypot(view.width, view.height) / Math.SQRT2;
  const growth = style["vector-effect"] === "non-scaling-stroke" ? 1 : growthOf(map);
  const width = shortened(Math.max(0, pxOf(style["stroke-width"], whole, 1)) * growth);
  return {
    ...where,
    colour: stroke,
    dash: dashOf(style["stroke-dasharray"] ?? "", whole, growth),
    width: finite(width),
  };
}

const finite = (width: number): number => (width <= LIMITS.fileCoordinate ? width : 0);

function dashOf(text: string, whole: number, growth: number): string {
  const dashes = text
    .split(/[\s,]+/u, MOST_DASHES + 1)
    .slice(0, MOST_DASHES)
    .filter((one) => one !== "")
    .map((one) => pxOf(one, whole, NaN) * growth);
  const isWhole = dashes.every((one) => one === 0) || !dashes.every((one) => one >= 0 && one <= LIMITS.fileCoordinate);
  return isWhole ? "" : dashes.map((one) => String(shortened(one))).join(" ");
}

/** The first of the places in an attribute: letters may have one each. */
function firstOf(element: XmlElement, key: string, whole: number): number | null {
  const said = (element.attributes.get(key) ?? "").slice(0, LIMITS.text).trim();
  const [first] = said.split(/[\s,]+/u, 1);
  const value = pxOf(first, whole, NaN);
  return Number.isNaN(value) ? null : value;
}

/** Each run of letters with a place of its own is a writing. */
function writingsOf(text: XmlElement, setting: Setting, { builder }: Reader): void {
  const where = whereOf(setting);
  const { view } = setting;
  let at: Place = { x: firstOf(text, "x", view.width) ?? 0, y: firstOf(text, "y", view.height) ?? 0 };
  let said: string[] = [];
  const end = (): void => {
    builder.writing(where, mapped(setting.map, at), said.join("").replaceAll(/\s+/gu, " "));
    said = [];
  };
  const run = (element: XmlElement): void => {
    for (const child of element.children) {
      builder.spend(STEPS.element);
      if (typeof child === "string") {
        said.push(child);
      } else if (["tspan", "textPath", "a"].includes(child.name)) {
        const [x, y] = [firstOf(child, "x", view.width), firstOf(child, "y", view.height)];
        if (x !== null || y !== null) {
          end();
          at = { x: x ?? at.x, y: y ?? at.y };
        }
        run(child);
      }
    }
  };
  run(text);
  end();
}
