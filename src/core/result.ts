/** A value, or a failure that carries its code and the numbers that explain it. Throwing is kept for our own bugs. */
export type Result<T, F> = Ok<T> | Fail<F>;

export interface Ok<T> {
  readonly ok: true;
  readonly value: T;
}

export interface Fail<F> {
  readonly ok: false;
  readonly failure: F;
}

export const ok = <T>(value: T): Ok<T> => ({ ok: true, value });
export const fail = <F>(failure: F): Fail<F> => ({ ok: false, failure });

/** For what cannot happen unless the core itself is wrong. */
export class CoreBug extends Error {
  override readonly name = "CoreBug";
}

/** Returns the value, or throws a CoreBug: for places where a missing value means that our own code is wrong. */
export function invariant<T>(value: T | undefined | null, what: string): T {
  if (value === undefined || value === null) throw new CoreBug(`missing: ${what}`);
  return value;
}
