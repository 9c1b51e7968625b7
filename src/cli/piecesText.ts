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
import * as say from "../words/doors/piecesDoor";
import { upToDecimals } from "../words/terms/language";

const heading = (title: string): readonly string[] => ["", title.toUpperCase(), "-".repeat(widthOf(title))];

/** Kinds of lines that are told one by one. */
const MOST_TOLD = 40;

/** In one place behind the point; of a file whose scale is not known it is the file's own unit. */
const number = (value: Mm): string => `${value < 0 ? "-" : ""}${upToDecimals(Math.abs(value), 1)}`;

export function piecesText(name: string, drawing: FileDrawing, reading: OutlineReading, unit: LengthUnit): string {
  const lines = [
    say.whatIsInTheFile,
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
  const per = found.mm === null ? say.scaleNotKnown : `${found.mm} mm`;
  return [
    ...heading("Scale"),
    ...hanging(say.oneUnit, per),
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
        look.layer === "" ? say.noLayer : `layer ${look.layer}`,
        ...(look.group === "" || look.group === look.layer ? [] : [`in ${look.group}`]),
        look.colour,
        look.dash === "" ? "whole" : `dash ${look.dash}`,
        ...(look.width === 0 ? [] : [`width ${look.width}`]),
      ];
      return hanging(`${String(paths.length).padStart(6)}  `, parts.join(", "));
    }),
    ...(more === 0 ? [] : hanging("        ", say.andMoreKinds(more))),
    ...(drawing.hiddenLayers.length === 0 ? [] : wrap(hiddenSentence(drawing.hiddenLayers), COLUMNS)),
  ];
}

/** Files often call their sizes so themselves. */
const sizeWords = (size: string): string => (/^size\b/iu.test(size) ? size : `size ${size}`);

const MEANINGS = { all: say.ofAllSizes, inner: say.marksInsideAPiece, nothing: say.notPartOfIt } as const;

const meaningOf = ({ meaning }: SortedLines): string =>
  meaning.of === "size" ? sizeWords(meaning.size) : MEANINGS[meaning.of];

function sizes({ sortedBy, features, lines }: OutlineReading): readonly string[] {
  return [
    ...heading("Sizes"),
    ...wrap(say.toldApartBy(sortedBy), COLUMNS),
    ...(features.length === 0
      ? []
      : hanging(say.orBy, features.map(({ feature, values }) => featureWords(feature, values)).join("; "))),
    ...lines
      .slice(0, MOST_TOLD)
      .flatMap((one) => hanging("  - ", `${kindWords(one, sortedBy)}: ${meaningOf(one)}, ${saidByWords(one.saidBy)}`)),
  ];
}

function pieces({ groups, outlines }: OutlineReading): readonly string[] {
  const byId = new Map(outlines.map((outline) => [outline.id, outline]));
  if (groups.length === 0) return [...heading("Outlines"), say.noOutlineCloses];
  return groups.flatMap((group, i) => [
    ...heading(`Outline ${i + 1}: ${oneLine(titleOf(group))}`),
    ...Object.entries(group.outlines).flatMap(([size, id]) => {
      const outline = byId.get(id);
      return outline === undefined ? [] : outlineLines(size, outline);
    }),
    ...(group.inner.length === 0 ? [] : [say.linesInside(group.inner.length)]),
    ...(group.marks.length === 0 ? [] : [say.marksInside(group.marks.length)]),
    ...group.writings.flatMap(({ text }) => hanging("  “ ", text)),
  ]);
}

const titleOf = ({ nameInFile, isSquare, isFrame }: OutlineGroup): string =>
  isSquare ? say.testSquare : isFrame === true ? "frame" : nameInFile === "" ? say.withoutAName : nameInFile;

function outlineLines(size: string, { edges, widestGap }: ClosedOutline): readonly string[] {
  const { min, max } = outlineBounds(edges);
  const corners = sharpCorners(edges);
  const places = corners.map(({ x, y }) => `${number(x)},${number(y)}`).join("  ");
  const gap = widestGap > 0 ? say.gapsJoined(widestGap) : "";
  const label = size === "" ? say.ofNoSize : sizeWords(size);
  return [
    ...hanging("  - ", `${label}: ${number(max.x - min.x)} × ${number(max.y - min.y)}${gap}`),
    ...hanging("    corners: ", places === "" ? "none" : places),
  ];
}

const unclosed = ({ unclosed: left }: OutlineReading): readonly string[] =>
  left.length === 0
    ? []
    : [
        ...heading(say.linesThatCloseNothing),
        ...left
          .slice(0, MOST_TOLD)
          .flatMap(({ line, gap }) =>
            hanging("  ! ", say.leftOpen(line.size === null ? say.ofNoSize : sizeWords(line.size), number(gap))),
          ),
      ];
