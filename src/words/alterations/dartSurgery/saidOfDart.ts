/** What all operations on a dart are told by, and what several of them say alike. */
import type { AlterationTrace } from "../../../core/alterations/outcome/trace";
import type { Dart, DartName, Piece } from "../../../core/pattern/piece";
import { dartWords, seamWords } from "../../terms/names";

/** What a dart operation is told by. */
export interface Told {
  readonly trace: AlterationTrace;
  /** The piece and the dart before. */
  readonly piece: Piece;
  readonly dart: Dart;
  /** A value of the trace as it is marked on paper, and as it is measured along a seam. */
  readonly amount: (name: string) => string;
  readonly length: (name: string) => string;
  /** A length of the trade's own choosing. */
  readonly round: (name: string) => string;
}

export const seamOf = ({ dart, piece }: Told): string => seamWords(dart.seam, piece.name);

/** What the dart is turned about. */
export const pivotWords = ({ aimsAt, name }: Dart): string =>
  aimsAt === null ? `the end of the ${dartWords(name)}` : "the bust point";

/** The legs drawn on to what the dart serves; nothing where it serves no bust. */
export const legsDrawnOn = ({ dart }: Told, ...names: readonly DartName[]): string[] =>
  dart.aimsAt === null
    ? []
    : names.map(
        (name) =>
          `Draw both legs of the ${dartWords(name)} on to the bust point. If one is longer than the other, move each mouth end along its leg by half the difference.`,
      );
