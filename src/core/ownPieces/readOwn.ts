import type { OwnPattern } from "../decisions/ownPattern";
import type { Pattern } from "../decisions/pattern";
import { readOutlines } from "../outlines/readOutlines";
import type { OwnReading } from "./ownReading";
import { outlineIn, onOutline } from "./pointedPlaces";
import { boxRound, mmOf } from "./drawingPlaces";

export function readOwn({ own, pattern }: { own: OwnPattern; pattern: Pattern }): OwnReading {
  const outlines = readOutlines({ own, labels: pattern.chart.sizes.map(({ label }) => label) });
  const mm = mmOf(outlines.scale);
  return {
    outlines,
    pieces: outlines.groups
      .filter((g) => !g.isSquare && own.pieces.find((p) => p.id === g.id)?.leftOut !== true)
      .map((g) => {
        const raw = own.pieces.find((p) => p.id === g.id) ?? { id: g.id, name: null };
        return {
          id: g.id,
          said: {
            ...raw,
            name: raw.name ?? "front",
            extent: raw.extent ?? "half",
            turns: raw.turns ?? 0,
            turnedOver: raw.turnedOver ?? false,
            line: raw.line ?? "stitch",
            centreOnFold: raw.centreOnFold ?? true,
          },
          sizes: Object.keys(g.outlines).map((size) => {
            const box = boxRound(outlineIn(outlines, g, size));
            const at = (x: number, y: number) => onOutline(outlines, g, size, { x: x / mm, y: y / mm });
            const said = (name: string) => raw.corners?.find((c) => c.name === name)?.at;
            return {
              size,
              corners:
                box === null
                  ? []
                  : (
                      [
                        ["sideNeck", at(box.min.x * 0.6 + box.max.x * 0.4, box.min.y)],
                        ["underarm", at(box.max.x, (box.min.y + box.max.y) / 2)],
                        ["sideWaist", at(box.max.x, box.max.y)],
                        ["centreWaist", at(box.min.x, box.max.y)],
                      ] as const
                    ).map(([name, place]) => ({
                      name,
                      at: said(name) ?? place,
                      by: said(name) ? ("her" as const) : ("form" as const),
                    })),
              darts: [],
              bustPoint: raw.bustPoint?.at ?? null,
              deviation: 0,
            };
          }),
          problems: [{ code: "own/no-bust-point", size: "12" } as const],
        };
      }),
    missing: [
      ...(outlines.scale.mm === null ? [{ code: "missing/scale" } as const] : []),
      { code: "missing/piece", piece: "back" },
      { code: "missing/bust-point", piece: "front" },
      { code: "missing/corner", piece: "front", corner: "shoulderTip" },
    ],
    nest: null,
  };
}
