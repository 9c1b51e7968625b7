/** A page of ink as an SVG file: one unit is 1 mm, and so is its printed size. */
import type { EdgeCurve } from "../core/geometry/edgeCurve";
import type { Point } from "../core/geometry/point";
import { invariant } from "../core/result";
import type { Mm } from "../core/units";
import type { Ink, InkGroup, InkLine, InkPage, InkRole, InkText } from "../drawing/ink";
import { INK_LOOK } from "../drawing/inkLook";
import { dashOf, inkInView } from "./inkBounds";

/** Steps per mm. */
const STEPS = 1000;

const FAMILY = "'Source Sans 3', 'Source Sans Pro', 'Noto Sans', Arial, Helvetica, sans-serif";

/**
 * The page as SVG 1.1. Each group of ink is a `<g>` with its id and its label as `<title>`; in it each role has a `<g>` of
 * its own with the role as class and "group-role" as id, in the order in which the roles first come. Looks are plain
 * attributes, coordinates are those of the page (no transforms but the turn of writing), rounded to 0.001 mm.
 */
export function writeSvg(page: InkPage, options: { readonly title: string }): string {
  const [width, height] = [written(page.width), written(page.height)];
  const lines = [
    `<?xml version="1.0" encoding="UTF-8"?>`,
    `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `<title>${escaped(options.title)}</title>`,
    ...page.groups.flatMap((group) => groupLines(group)),
    `</svg>`,
  ];
  return `${lines.join("\n")}\n`;
}

function groupLines(group: InkGroup): string[] {
  const { id, label, clip } = group;
  const shown = inkInView(group);
  if (shown.length === 0) return [];

  const window = `${id}-window`;
  const clipped = clip === null ? "" : ` clip-path="url(#${window})"`;
  const rect =
    clip === null
      ? []
      : [
          `<clipPath id="${window}"><rect x="${written(clip.x)}" y="${written(clip.y)}" width="${written(clip.width)}" height="${written(clip.height)}"/></clipPath>`,
        ];
  const roles = [...new Set(shown.map(({ role }) => role))];
  return [
    ...rect,
    `<g id="${id}"${clipped}>`,
    `<title>${escaped(label)}</title>`,
    ...roles.flatMap((role) =>
      roleLines(
        group,
        role,
        shown.filter((ink) => ink.role === role),
      ),
    ),
    `</g>`,
  ];
}

function roleLines({ id, dx, dy }: InkGroup, role: InkRole, inks: readonly Ink<"sheet">[]): string[] {
  const { width, dash, colour } = INK_LOOK[role];
  const look = `fill="none" stroke="${colour}" stroke-width="${width}" stroke-linejoin="round"${dashed(dash)}`;
  return [
    `<g id="${id}-${role}" class="${role}" ${look}>`,
    ...inks.map((ink) => (ink.kind === "line" ? pathLine(ink, dx, dy) : textLine(ink, dx, dy))),
    `</g>`,
  ];
}

const dashed = (dash: readonly Mm[]): string => (dash.length === 0 ? "" : ` stroke-dasharray="${dash.join(" ")}"`);

function pathLine(ink: InkLine<"sheet">, dx: Mm, dy: Mm): string {
  const filled = ink.filled === true ? ` fill="${INK_LOOK[ink.role].colour}"` : "";
  const dash = ink.size === undefined ? "" : dashed(dashOf(ink));
  return `<path d="${pathData(ink, dx, dy)}"${filled}${dash}/>`;
}

function pathData({ edges, closed }: InkLine<"sheet">, dx: Mm, dy: Mm): string {
  if (edges.length === 0) return "";
  const start = `M${place(invariant(edges[0], "a first edge").a, dx, dy)}`;
  return start + edges.map((edge) => step(edge, dx, dy)).join("") + (closed ? "Z" : "");
}

const step = ({ b, curve }: EdgeCurve<"sheet">, dx: Mm, dy: Mm): string =>
  curve === null
    ? `L${place(b, dx, dy)}`
    : `C${place(curve.c1, dx, dy)} ${place(curve.c2, dx, dy)} ${place(b, dx, dy)}`;

function textLine({ role, at, anchor, text, size, turn, bold }: InkText<"sheet">, dx: Mm, dy: Mm): string {
  const [x, y] = [written(at.x + dx), written(at.y + dy)];
  const turned = turn === 0 ? "" : ` transform="rotate(${written((turn * 180) / Math.PI)} ${x} ${y})"`;
  const weight = bold === true ? ` font-weight="700"` : "";
  const type = `font-family="${FAMILY}" font-size="${written(size)}"${weight} text-anchor="${anchor}"`;
  return `<text x="${x}" y="${y}"${turned} ${type} fill="${INK_LOOK[role].colour}" stroke="none">${escaped(text)}</text>`;
}

const place = ({ x, y }: Point<"sheet">, dx: Mm, dy: Mm): string => `${written(x + dx)} ${written(y + dy)}`;

// A multiple of 0.001 rounded this way is the double nearest to its decimal text, without an exponent; -0 is written 0.
const written = (value: number): string => String(Math.round(value * STEPS) / STEPS);

const MEANINGS: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

/** The text with XML's own signs escaped; what XML does not allow at all becomes a space or a question mark. */
const escaped = (text: string): string =>
  text
    .replaceAll(/\p{Cc}/gu, " ")
    .replaceAll(/[\p{Cs}\uFFFD-\uFFFF]/gu, "?")
    .replaceAll(/[&<>"]/g, (sign) => invariant(MEANINGS[sign], "an escape"));
