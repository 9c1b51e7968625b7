/** What a place that she points at means on the outline of a piece in one size. Places in the file's own units. */
import type { FilePlace } from "../decisions/fileDrawing";
import { sheetPoint, type SheetPoint } from "../geometry/point";
import type { EdgeCurve } from "../geometry/edgeCurve";
import type { OutlineGroup, OutlineReading } from "../outlines/outlineReading";
import type { Mm } from "../units";
import { mmOf } from "./drawingPlaces";
import { movedAlong, nearestOnOutline } from "./nearestOnOutline";

/** The outline of a group in a size; of one that is in no size, the only one. */
function outlineIn(reading: OutlineReading, group: OutlineGroup, size: string): readonly EdgeCurve<"sheet">[] {
  const id = group.outlines[size] ?? Object.values(group.outlines)[0];
  return reading.outlines.find((outline) => outline.id === id)?.edges ?? [];
}

/** The place on the outline nearest to where she points; the very place where there is no outline. */
export const onOutline = (reading: OutlineReading, group: OutlineGroup, size: string, place: FilePlace): FilePlace => {
  const mm = mmOf(reading.scale);
  return inFile(nearestOnOutline(outlineIn(reading, group, size), onSheet(place, mm)), mm) ?? place;
};

/** The place so many mm further along the outline. */
export const alongOutline = (
  reading: OutlineReading,
  group: OutlineGroup,
  size: string,
  place: FilePlace,
  by: Mm,
): FilePlace => {
  const mm = mmOf(reading.scale);
  return inFile(movedAlong(outlineIn(reading, group, size), onSheet(place, mm), by), mm) ?? place;
};

const onSheet = ({ x, y }: FilePlace, mm: Mm): SheetPoint => sheetPoint(x * mm, y * mm);
const inFile = (point: SheetPoint | null, mm: Mm): FilePlace | null =>
  point === null ? null : { x: point.x / mm, y: point.y / mm };
