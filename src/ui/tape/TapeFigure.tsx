import type { MeasureName } from "../../core/measures/measure";
import { TapeDrawing } from "../../print/TapeDrawing";

/** A dressmaker's figure with the tape laid where this measure is taken. */
export function TapeFigure({ measure }: { readonly measure: MeasureName }) {
  return <TapeDrawing measure={measure} />;
}
