/** Who imports whom in src, types included, and the circles in that. */
import { posix } from "node:path";
import { importsOf } from "./importRules";
import { readProjectFile } from "./source";

/** From each file or folder to what it imports. */
export type Graph = ReadonlyMap<string, readonly string[]>;

/** The imports of some files among themselves. `isWhole`: the files are all there are, so that each import must end in one. */
export function importGraph(files: readonly string[], isWhole = false): Graph {
  const known = new Set(files);
  const find = (path: string): string | undefined =>
    [path, `${path}.ts`, `${path}.tsx`].find((candidate) => known.has(candidate));
  return new Map(
    files.map((file) => {
      const targets = importsOf(file, readProjectFile(file)).flatMap((specifier) => {
        if (specifier === undefined || !specifier.startsWith(".")) return [];
        const path = posix.join(posix.dirname(file), specifier.replace(/\?.*$/, ""));
        if (/^demo-data\/|\.css$/.test(path)) return [];
        const target = find(path);
        // An import that leads nowhere here would be an arrow that is not drawn.
        if (target === undefined && isWhole) throw new Error(`${file} imports ${specifier}, which is no file of src`);
        return target ?? [];
      });
      return [file, [...new Set(targets)]];
    }),
  );
}

/** The same among folders; what a folder imports from itself is left out. */
export function folderGraph(graph: Graph): Graph {
  const folders = new Map<string, Set<string>>();
  for (const [file, targets] of graph) {
    const from = posix.dirname(file);
    const reached = folders.get(from) ?? new Set();
    folders.set(from, reached);
    for (const target of targets) if (posix.dirname(target) !== from) reached.add(posix.dirname(target));
  }
  return new Map([...folders].map(([folder, reached]) => [folder, [...reached]]));
}

/** Everything that can be reached, by one step or more. */
function reach(graph: Graph, start: string): ReadonlySet<string> {
  const seen = new Set<string>();
  const open = [...(graph.get(start) ?? [])];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (seen.has(next)) continue;
    seen.add(next);
    open.push(...(graph.get(next) ?? []));
  }
  return seen;
}

/** The groups whose members all reach each other, each sorted. */
export function circlesOf(graph: Graph): readonly (readonly string[])[] {
  const reached = new Map([...graph.keys()].map((name) => [name, reach(graph, name)]));
  const inCircle = [...graph.keys()].filter((name) => reached.get(name)?.has(name) === true).toSorted();
  const groups = inCircle.map((name) =>
    inCircle.filter((other) => reached.get(name)?.has(other) === true && reached.get(other)?.has(name) === true),
  );
  return groups.filter((group, index) => groups.findIndex((other) => other[0] === group[0]) === index);
}
