/**
 * The one way of remembering what was worked out. Documents, and all that follows from them, never change in place: the
 * very same inputs give the same answer, so that a drag, which changes one alteration, need not draft the nest again.
 */
import { CoreBug } from "./result";

type Inputs = readonly [string, ...string[]];

/** No other field than those named can be read; one that is not named does not compile. */
type Named<K extends Inputs, In> = Exclude<keyof In, K[number]> extends never ? K : never;

interface Answer<R> {
  readonly values: readonly unknown[];
  readonly result: R;
}

/** Answers kept for each first input: the last ones worked out. */
const KEPT = 4;

/**
 * The same function, asked again only where an input is another one.
 *
 * @param inputs names of all the fields that `derive` reads. The value of the first is an object: what is remembered goes
 *               with it. All are compared by identity
 * @param derive pure
 * @param kept   how many answers are kept for one first input
 */
export function remember<
  const K extends Inputs,
  In extends Readonly<Record<K[0], object>> & Readonly<Partial<Record<K[number], unknown>>>,
  R,
>(inputs: Named<K, In>, derive: (from: In) => R, kept = KEPT): (from: In) => R {
  const answers = new WeakMap<object, Answer<R>[]>();
  const [first]: Inputs = inputs;
  const names: readonly K[number][] = inputs;
  const isNamed: ReadonlySet<string> = new Set(inputs);
  return (from) => {
    const values = names.map((name): unknown => from[name]);
    const [home] = values;
    if (typeof home !== "object" || home === null) throw new CoreBug(`remembered by ${first}, which is no object`);
    const known = answers.get(home) ?? [];
    for (const answer of known) if (areSame(answer.values, values)) return answer.result;
    // It is given what is named and nothing else: nor can what it hands on be read by another.
    const named = Object.keys(from).every((name) => isNamed.has(name)) ? from : { ...from };
    if (named !== from)
      for (const name of Object.keys(named)) if (!isNamed.has(name)) Reflect.deleteProperty(named, name);
    const result = derive(named);
    answers.set(home, [{ values, result }, ...known].slice(0, kept));
    return result;
  };
}

/** A loop of its own: it is asked for everything that is remembered, at every move of a drag. */
function areSame(one: readonly unknown[], other: readonly unknown[]): boolean {
  for (let at = 0; at < one.length; at += 1) if (!Object.is(one[at], other[at])) return false;
  return true;
}
