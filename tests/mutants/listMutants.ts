/** The mutants of source files: small faults planted one at a time, by the mutators of a general-purpose library. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { createInstrumenter } from "@stryker-mutator/instrumenter";
import { commonTokens } from "@stryker-mutator/api/plugin";
import type { Logger } from "@stryker-mutator/api/logging";
import { createInjector } from "typed-inject";

export interface Mutant {
  /** Path from the root of the project. */
  readonly file: string;
  readonly mutator: string;
  /** Offsets into the file's text, and what stands there instead. */
  readonly from: number;
  readonly to: number;
  readonly replacement: string;
  /** 1-based, for people. */
  readonly line: number;
}

/**
 * Texts of the core are names of kinds and places, all of them types: another text does not compile. So none is planted.
 */
const LEFT_OUT = ["StringLiteral"];

const silent = (): void => undefined;
const no = (): boolean => false;
const quiet: Logger = {
  isTraceEnabled: no,
  isDebugEnabled: no,
  isInfoEnabled: no,
  isWarnEnabled: no,
  isErrorEnabled: no,
  isFatalEnabled: no,
  trace: silent,
  debug: silent,
  info: silent,
  warn: silent,
  error: silent,
  fatal: silent,
};

/** Offsets of the beginnings of lines. */
function lineStarts(text: string): number[] {
  const starts = [0];
  for (let at = text.indexOf("\n"); at !== -1; at = text.indexOf("\n", at + 1)) starts.push(at + 1);
  return starts;
}

export async function listMutants(root: string, files: readonly string[]): Promise<Mutant[]> {
  const texts = new Map(files.map((file) => [file, readFileSync(join(root, file), "utf8")]));
  const instrumenter = createInjector().provideValue(commonTokens.logger, quiet).injectFunction(createInstrumenter);
  const { mutants } = await instrumenter.instrument(
    [...texts].map(([name, content]) => ({ name, content, mutate: true })),
    { ignorers: [], plugins: null, excludedMutations: LEFT_OUT },
  );
  const starts = new Map([...texts].map(([file, text]) => [file, lineStarts(text)]));
  return mutants.flatMap(({ fileName, mutatorName, location, replacement, status }) => {
    const lines = starts.get(fileName);
    if (status !== undefined || lines === undefined) return [];
    const from = (lines[location.start.line] ?? 0) + location.start.column;
    const to = (lines[location.end.line] ?? 0) + location.end.column;
    return [{ file: fileName, mutator: mutatorName, from, to, replacement, line: location.start.line + 1 }];
  });
}
