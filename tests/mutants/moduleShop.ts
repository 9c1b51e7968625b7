/**
 * Modules of the project as functions that can be run again and again: a mutant is a run of the modules that depend on
 * the file it is planted in, all others standing as they are. So a mutant costs the tests that are asked of it, and not the
 * start of a test runner.
 */
import { createHash } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { Script } from "node:vm";
import { transformSync } from "esbuild";
import { markFunctions } from "./markFunctions";

type Exports = Record<string, unknown>;
type Require = (specifier: string) => unknown;
type Factory = (module: { exports: Exports }, exports: Exports, require: Require) => void;

/** A file with another text. */
export interface Planted {
  readonly file: string;
  readonly text: string;
}

export interface Source {
  /** Path from the root. */
  readonly file: string;
  readonly text: string;
  /** What it imports: files of the project by their path, packages by their name. */
  readonly files: ReadonlyMap<string, string>;
  readonly packages: readonly string[];
}

/** Imports of values: those of types alone are gone when the file runs. */
const IMPORTED =
  /(?:^import\s+(?!type\s)(?:[^"';]*?\sfrom\s+)?|^export\s+(?:\*|\{[^}]*\})[^"';]*?from\s+|\bimport\(\s*)"([^"]+)"/gm;

/** How source text becomes a function of its imports. */
function factoryOf(root: string, file: string, text: string): Factory {
  const url = pathToFileURL(join(root, file)).href;
  const { code } = transformSync(text.replaceAll("import.meta.url", JSON.stringify(url)), {
    loader: file.endsWith(".json") ? "json" : file.endsWith("x") ? "tsx" : "ts",
    format: "cjs",
    target: "node20",
    sourcefile: file,
  });
  const made: unknown = new Script(`(function (module, exports, require) {${code}\n})`, {
    filename: join(root, file),
  }).runInThisContext();
  if (typeof made !== "function") throw new Error(`${file} is no module`);
  return (module, exports, require) => {
    Reflect.apply(made, undefined, [module, exports, require]);
  };
}

export class ModuleShop {
  private readonly sources = new Map<string, Source>();
  private readonly factories = new Map<string, Factory>();
  private readonly packages = new Map<string, unknown>();
  private readonly users = new Map<string, Set<string>>();
  private readonly deeps = new Map<string, ReadonlySet<string>>();
  private readonly hashes = new Map<string, string>();
  /** What stands from one run to the next. */
  private standing = new Map<string, Exports>();

  constructor(
    private readonly root: string,
    /** Whether functions of the core note that they were reached. */
    private readonly marked: boolean,
    /** What stands in for a package. */
    private readonly standIns: ReadonlyMap<string, unknown>,
  ) {}

  source(file: string): Source {
    const known = this.sources.get(file);
    if (known !== undefined) return known;
    const text = readFileSync(join(this.root, file), "utf8");
    const files = new Map<string, string>();
    const packages: string[] = [];
    if (!file.endsWith(".json"))
      for (const [, specifier] of text.matchAll(IMPORTED)) {
        if (specifier === undefined) continue;
        if (!specifier.startsWith(".")) packages.push(specifier);
        else {
          const path = join(dirname(file), specifier);
          const found = [path, `${path}.ts`, `${path}.tsx`].find(
            (one) => /\.(tsx?|json)$/.test(one) && existsSync(join(this.root, one)),
          );
          if (found !== undefined) files.set(specifier, found);
        }
      }
    const source = { file, text, files, packages };
    this.sources.set(file, source);
    return source;
  }

  /** A file and all that it imports, through others too. */
  deep(file: string): ReadonlySet<string> {
    const known = this.deeps.get(file);
    if (known !== undefined) return known;
    const all = new Set([file]);
    // A set goes on with what is added to it on the way.
    for (const one of all) for (const next of this.source(one).files.values()) all.add(next);
    for (const one of all)
      for (const next of this.source(one).files.values()) {
        const users = this.users.get(next) ?? new Set();
        this.users.set(next, users.add(one));
      }
    this.deeps.set(file, all);
    return all;
  }

  /** Of its own text alone. */
  digest(file: string): string {
    return createHash("sha256").update(this.source(file).text).digest("base64").slice(0, 12);
  }

  /** Changes with anything that a file depends on. */
  hash(file: string): string {
    const known = this.hashes.get(file);
    if (known !== undefined) return known;
    const hash = createHash("sha256");
    for (const one of [...this.deep(file)].toSorted()) hash.update(one).update("\0").update(this.source(one).text);
    const digest = hash.digest("hex");
    this.hashes.set(file, digest);
    return digest;
  }

  /** Loads the packages that a file needs; `load` needs them there. */
  async bringPackages(file: string): Promise<void> {
    const wanted = new Set([...this.deep(file)].flatMap((one) => this.source(one).packages));
    for (const name of wanted)
      if (!this.packages.has(name) && !this.standIns.has(name)) {
        // One after another: none of them is there twice.
        // oxlint-disable-next-line no-await-in-loop
        const namespace: unknown = await import(name);
        if (typeof namespace === "object") this.packages.set(name, { __esModule: true, ...namespace });
      }
  }

  private factory(file: string): Factory {
    const known = this.factories.get(file);
    if (known !== undefined) return known;
    const { text } = this.source(file);
    const isCore = file.startsWith("src/core/");
    const made = factoryOf(this.root, file, this.marked && isCore ? markFunctions(file, text) : text);
    this.factories.set(file, made);
    return made;
  }

  /** All that has a file in it, through others too, of what was looked at so far. */
  private dependents(file: string): Set<string> {
    const all = new Set([file]);
    for (const one of all) for (const user of this.users.get(one) ?? []) all.add(user);
    return all;
  }

  /** Lets nothing stand: after a run that was broken off. */
  forget(): void {
    this.standing = new Map();
  }

  /** Runs a file anew, with nothing planted: what it imports stands as it did. */
  load(file: string): Exports {
    return this.loadInto(new Map(), file);
  }

  /**
   * Puts another text in the place of a file's.
   *
   * @returns what runs a file with it: that file anew each time, and whatever else depends on the fault once
   */
  plant(planted: Planted): (file: string) => Exports {
    const make = factoryOf(this.root, planted.file, planted.text);
    const fresh = new Map<string, Exports>();
    return (file) => {
      fresh.delete(file);
      return this.loadInto(fresh, file, { file: planted.file, make });
    };
  }

  private loadInto(
    fresh: Map<string, Exports>,
    file: string,
    planted?: { readonly file: string; readonly make: Factory },
  ): Exports {
    this.deep(file);
    const anew = planted === undefined ? new Set<string>() : this.dependents(planted.file);
    anew.add(file);
    const load = (one: string): Exports => {
      const shelf = anew.has(one) ? fresh : this.standing;
      const known = shelf.get(one);
      if (known !== undefined) return known;
      const module = { exports: {} as Exports };
      shelf.set(one, module.exports);
      const { files } = this.source(one);
      const make = one === planted?.file ? planted.make : this.factory(one);
      make(module, module.exports, (specifier) => {
        const target = files.get(specifier);
        if (target !== undefined) return load(target);
        const found = this.standIns.get(specifier) ?? this.packages.get(specifier);
        if (found === undefined) throw new Error(`${one} asks for ${specifier}, which is not there`);
        return found;
      });
      // Plain values, read at once: what is exported in the project never changes.
      const exports = { ...module.exports };
      shelf.set(one, exports);
      return exports;
    };
    return load(file);
  }
}
