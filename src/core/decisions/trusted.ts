/** Readings that were doubted and that she said are right. */
import type { MeasureName } from "../measures/measure";
import type { Mm } from "../units";

/** By measure, the value that stood then: what was said of it lapses when it is another one. */
export type Trusted = Readonly<Partial<Record<MeasureName, Mm>>>;

export const isTrusted = (trusted: Trusted | undefined, measure: MeasureName, value: Mm): boolean =>
  trusted?.[measure] === value;
