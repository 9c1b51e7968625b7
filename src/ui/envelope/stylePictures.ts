import { STYLE_NAMES, type StyleName } from "../../core/decisions/pattern";
import { useMemo } from "react";
import { demoWorks } from "../../document/demo";
import type { FrontDrawing } from "../../drawing/frontDrawing";
import { useLaterState } from "../parts/later";
import { FRONT_DRAWING } from "../works/frontDrawingPart";

/** Each style as it is drawn for one invented wearer, once the drawing is loaded. */
export function useStylePictures(): Readonly<Partial<Record<StyleName, FrontDrawing>>> {
  const part = useLaterState(FRONT_DRAWING);
  const draw = part.kind === "here" ? part.value : null;
  return useMemo(() => {
    const [demo] = demoWorks();
    if (draw === null || demo === undefined) return {};
    const plain = { ...demo, alterations: [], picks: {} };
    return Object.fromEntries(
      STYLE_NAMES.flatMap((style) => {
        const front = draw({ ...plain, pattern: { ...plain.pattern, style, length: "waist" } });
        return front === null ? [] : [[style, front]];
      }),
    );
  }, [draw]);
}
