/** Keys of the entries of what the pattern says of lengths, size by size: they go with the rows of the chart. */
import { PRINTED_LENGTHS, type PrintedLength } from "../../core/decisions/pattern";

export const lengthField = (at: number, measure: PrintedLength): string => `chart.${at}.lengths.${measure}`;

export const lengthFieldsOf = (at: number): readonly string[] =>
  PRINTED_LENGTHS.map((measure) => lengthField(at, measure));
