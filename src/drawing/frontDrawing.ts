/** The altered front of a work in small, both halves, to know it again by: outlines and darts, nothing else. */
import type { Plan } from "../core/plan/plan";
import type { Mm } from "../core/units";
import type { Box } from "./layout";
import { trialFigure } from "./trialFigure";

interface FrontPiece {
  /** Path data in its own frame, mm. */
  readonly outline: string;
  readonly darts: string;
  /** How far it is moved down, mm. */
  readonly down: Mm;
}

export interface FrontDrawing {
  /** Round both halves, the centre line at x = 0; mm. */
  readonly box: Box;
  /** From left to right as one looks at her front: her right half, whose x runs the other way, then her left. */
  readonly halves: readonly { readonly mirrored: boolean; readonly pieces: readonly FrontPiece[] }[];
}

export function frontDrawing(plan: Plan): FrontDrawing {
  const [{ box, halves }] = trialFigure(plan);
  return {
    box,
    halves: halves.map(({ mirrored, pieces }) => ({
      mirrored,
      pieces: pieces.map(({ outline, darts, down }) => ({ outline, darts, down })),
    })),
  };
}
