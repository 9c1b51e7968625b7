/** What was found in a file of outlines, as plain text of 80 columns. */
import type { FileDrawing } from "../core/decisions/fileDrawing";
import type { LengthUnit } from "../core/decisions/work";
import { outlineBounds } from "../core/geometry/outline";
import type { ClosedOutline, OutlineGroup, OutlineReading, SortedLines } from "../core/outlines/outlineReading";
import { sharpCorners } from "../core/outlines/sharpCorners";
import type { Mm } from "../core/units";
import {
  disagreeSentence,
  featureWords,
  hiddenSentence,
  kindWords,
  saidByWords,
  scaleSentence,
} from "../words/ownPattern";
import { COLUMNS, hanging, oneLine, widthOf, wrap } from "./layout";

const heading = (title: string): readonly string[] => ["", title.toUpperCase(), "-".repeat(widthOf(title))];

/** Kinds of lines that are told one by one. */
const MOST_TOLD = 40;

/** In one place behind the point; of a file whose scale is not known it is the file's own unit. */
const number = (value: Mm): string => String(Number(value.toFixed(1)));

export function piecesText(name: string, drawing: FileDrawing, reading: OutlineReading, unit: LengthUnit): string {
  const lines = [
    "WHAT IS IN THE FILE",
    ...wrap(oneLine(name), COLUMNS),
    ...scale(reading, unit),
    ...looks(drawing),
    ...sizes(reading),
    ...pieces(reading),
    ...unclosed(reading),
  ];
  return `${lines.map((line) => oneLineKept(line)).join("\n")}\n`;
}

// Names come from a file of anybody's making: nothing in them may steer a terminal.
const oneLineKept = (line: string): string => line.replaceAll(/[\p{Cc}\p{Cf}]/gu, "").trimEnd();

function scale({ scale: found }: OutlineReading, unit: LengthUnit): readonly string[] {
  const per = found.mm === null ? "not known: lengths below are in the file's own unit" : `${found.mm} mm`;
  return [
    ...heading("Scale"),
    ...hanging("One unit  ", per),
    ...hanging("Proof     ", scaleSentence(found, unit)),
    ...(found.disagree ? hanging("        ! ", disagreeSentence(found.by)) : []),
    ...found.squares.flatMap(({ width, height }) => hanging("Square    ", `${number(width)} × ${number(height)}`)),
  ];
}

function looks(drawing: FileDrawing): readonly string[] {
  const told = drawing.lines.slice(0, MOST_TOLD);
  const more = drawing.lines.length - told.length;
  return [
    ...heading("Lines"),
    ...told.flatMap(({ look, paths }) => {
      const parts = [
        look.layer === "" ? "no layer" : `layer ${look.layer}`,
        ...(look.group === "" || look.group === look.layer ? [] : [`in ${look.group}`]),
        look.colour,
        look.dash === "" ? "whole" : `dash ${look.dash}`,
        ...(look.width === 0 ? [] : [`width ${look.width}`]),
      ];
      return hanging(`${String(paths.length).padStart(6)}  `, parts.join(", "));
    }),
    ...(more === 0 ? [] : hanging("        ", `and ${more} more kinds`)),
    ...(drawing.hiddenLayers.length === 0 ? [] : wrap(hiddenSentence(drawing.hiddenLayers), COLUMNS)),
  ];
}

/** Files often call their sizes so themselves. */
const sizeWords = (size: string): string => (/^size\b/iu.test(size) ? size : `size ${size}`);

const MEANINGS = { all: "of all sizes", inner: "marks inside a piece", nothing: "not part of it" } as const;

const meaningOf = ({ meaning }: SortedLines): string =>
  meaning.of === "size" ? sizeWords(meaning.size) : MEANINGS[meaning.of];

function sizes({ sortedBy, features, lines }: OutlineReading): readonly string[] {
  return [
    ...heading("Sizes"),
    ...wrap(`Told apart by ${sortedBy}.`, COLUMNS),
    ...(features.length === 0
      ? []
      : hanging("Or by  ", features.map(({ feature, values }) => featureWords(feature, values)).join("; "))),
    ...lines
      .slice(0, MOST_TOLD)
      .flatMap((one) => hanging("  - ", `${kindWords(one, sortedBy)}: ${meaningOf(one)}, ${saidByWords(one.saidBy)}`)),
  ];
}

function pieces({ groups, outlines }: OutlineReading): readonly string[] {
  const byId = new Map(outlines.map((outline) => [outline.id, outline]));
  if (groups.length === 0) return [...heading("Outlines"), "No outline closes."];
  return groups.flatMap((group, i) => [
    ...heading(`Outline ${i + 1}: ${oneLine(titleOf(group))}`),
    ...Object.entries(group.outlines).flatMap(([size, id]) => {
      const outline = byId.get(id);
      return outline === undefined ? [] : outlineLines(size, outline);
    }),
    ...(group.inner.length === 0 ? [] : [`Lines inside: ${group.inner.length}`]),
    ...(group.marks.length === 0 ? [] : [`Marks inside: ${group.marks.length}`]),
    ...group.writings.flatMap(({ text }) => hanging("  “ ", text)),
  ]);
}

const titleOf = ({ nameInFile, isSquare, isFrame }: OutlineGroup): string =>
  isSquare ? "test square" : isFrame === true ? "frame" : nameInFile === "" ? "without a name" : nameInFile;

function outlineLines(size: string, { edges, widestGap }: ClosedOutline): readonly string[] {
  const { min, max } = outlineBounds(edges);
  const corners = sharpCorners(edges);
  const places = corners.map(({ x, y }) => `${number(x)},${number(y)}`).join("  ");
  const gap = widestGap > 0 ? `, gaps of up to ${Number(widestGap.toFixed(3))} joined` : "";
  const label = size === "" ? "of no size" : sizeWords(size);
  return [
    ...hanging("  - ", `${label}: ${number(max.x - min.x)} × ${number(max.y - min.y)}${gap}`),
    ...hanging("    corners: ", places === "" ? "none" : places),
  ];
}

const unclosed = ({ unclosed: left }: OutlineReading): readonly string[] =>
  left.length === 0
    ? []
    : [
        ...heading("Lines that close nothing"),
        ...left
          .slice(0, MOST_TOLD)
          .flatMap(({ line, gap }) =>
            hanging("  ! ", `${line.size === null ? "of no size" : sizeWords(line.size)}: ${number(gap)} left open`),
          ),
      ];
