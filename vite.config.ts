import { fileURLToPath } from "node:url";
import react from "@vitejs/plugin-react";
import type { Plugin } from "vite";
import { VitePWA } from "vite-plugin-pwa";
import { defineConfig } from "vitest/config";
import { quickModules } from "./tests/tools/quickModules.mjs";
import { alone, inPage, inPageAlone, LongestFirst } from "./tests/tools/testFiles.mjs";

/** What the writer of PDF files would load for pictures and web pages in them: we draw neither. */
const ABSENT = ["canvg", "dompurify", "fast-png", "html2canvas"];
const absent = fileURLToPath(new URL("src/paper/absent.ts", import.meta.url));
const fileOf = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const entry = fileOf("src/main.tsx");
/** What looks at the whole dress. */
const DRESSED = [
  "trial/TrialStep.tsx",
  "dress/DressStep.tsx",
  "paper/PaperStep.tsx",
  "envelope/SkirtedButtons.tsx",
].map((path) => fileOf(`src/ui/${path}`));

interface Graph {
  getModuleInfo(
    id: string,
  ): { readonly importedIds: readonly string[]; readonly dynamicallyImportedIds: readonly string[] } | null;
}

/** What the page's entry brings along, by itself or through others, and what any part but the steps of the dress does. */
interface Reached {
  readonly byEntry: ReadonlySet<string>;
  readonly undressed: ReadonlySet<string>;
}

const found = new WeakMap<Graph, Reached>();

function reachedIn(graph: Graph): Reached {
  const known = found.get(graph);
  if (known !== undefined) return known;
  const byEntry = new Set([entry]);
  const undressed = new Set([entry]);
  // A set goes on with what is added to it on the way.
  for (const from of byEntry) for (const to of graph.getModuleInfo(from)?.importedIds ?? []) byEntry.add(to);
  for (const from of undressed) {
    const info = graph.getModuleInfo(from);
    for (const to of [...(info?.importedIds ?? []), ...(info?.dynamicallyImportedIds ?? [])])
      if (!DRESSED.includes(to)) undressed.add(to);
  }
  const reached = { byEntry, undressed };
  found.set(graph, reached);
  return reached;
}

/** What the built page may do: load its own files, and nothing else. No connection, no script or style written in the page. */
const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  // Photographs of trials are shown from the browser's own store, never from a server.
  "img-src 'self' blob:",
  "font-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "connect-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "object-src 'none'",
].join("; ");

/**
 * The policy first of all in the built page, and its script and stylesheet at its end: what stands there from the beginning
 * is then seen while they are on their way, and its own small script is there before they can fail.
 */
function builtPage(): Plugin {
  return {
    name: "built-page",
    apply: "build",
    transformIndexHtml: {
      order: "post",
      handler: (html) => {
        const late = html.match(
          / *<(?:script type="module"|link rel="stylesheet") crossorigin[^>]*>(?:<\/script>)?\n/g,
        );
        if (late === null || late.length < 2) throw new Error("the built page has not the tags it should have");
        const early = late.reduce((rest, tag) => rest.replace(tag, ""), html);
        return early
          .replace("<head>", `<head>\n    <meta http-equiv="Content-Security-Policy" content="${POLICY}" />`)
          .replace(/ *<\/body>/, `${late.join("")}  </body>`);
      },
    },
  };
}

/** Builds the service worker, with the list of all that the page is made of; who registers it is `src/ui/offline/keepHere.ts`. */
const offline = VitePWA({
  strategies: "injectManifest",
  srcDir: "src/ui/offline",
  filename: "offlineWorker.ts",
  registerType: "prompt",
  injectRegister: false,
  // It lies in public/, where it can be read.
  manifest: false,
  injectManifest: {
    rollupFormat: "iife",
    // All that the page can ask for. What README shows lies in public/ too, and is no part of the page.
    globPatterns: ["**/*.{html,js,css,woff2,svg,webmanifest}", "icons/*.png"],
    globIgnores: ["floors.svg"],
    maximumFileSizeToCacheInBytes: 2_000_000,
  },
});

const NODE_SETUP = ["tests/support/random.setup.ts"];
const PAGE_SETUP = [...NODE_SETUP, "tests/support/page.setup.ts"];

export default defineConfig({
  // Relative addresses, so that the built site works from any folder of any server.
  base: "./",
  plugins: [react(), builtPage(), offline, quickModules()],
  resolve: { alias: ABSENT.map((name) => ({ find: new RegExp(`^${name}$`), replacement: absent })) },
  worker: { format: "es" },
  build: {
    sourcemap: false,
    // The policy lets no picture be written into the page, and the fetch of the polyfill is refused; no browser that can run
    // the page wants it.
    assetsInlineLimit: 0,
    // The small runtime is a script of the page's own: Firefox calls it an error to be told once more to fetch it early.
    modulePreload: {
      polyfill: false,
      resolveDependencies: (_file, files) => files.filter((file) => !file.includes("rolldown-runtime")),
    },
    manifest: true,
    rolldownOptions: {
      output: {
        // Else every module that the entry shares with a part loaded later becomes a file of its own.
        codeSplitting: {
          groups: [
            { debugName: "first", name: (id, graph) => (reachedIn(graph).byEntry.has(id) ? "first" : null) },
            // Demonstrations are looked at by few: nor does anybody wait for them.
            { name: "demos", minShareCount: 2, test: /\/document\/demo\.ts$/ },
            {
              debugName: "shared",
              name: (id, graph) => (reachedIn(graph).undressed.has(id) ? "shared" : null),
              minShareCount: 2,
              test: /\.[jt]sx?$/,
            },
            // What is left is of the dress: nobody waits for skirts, linings and lays who looks at none of them.
            { name: "dress", minShareCount: 2, test: /\.[jt]sx?$/ },
          ],
        },
      },
    },
  },
  server: { host: "127.0.0.1", port: 5173, strictPort: false },
  preview: { host: "127.0.0.1", port: 4173, strictPort: true },
  test: {
    globals: false,
    // By itself the runner leaves one processor idle.
    maxWorkers: "100%",
    sequence: { sequencer: LongestFirst },
    // A machine that has more to do is no fault of a test.
    testTimeout: 120_000,
    hookTimeout: 120_000,
    projects: [
      {
        extends: true,
        test: {
          name: "node",
          environment: "node",
          isolate: false,
          include: ["tests/**/*.test.{ts,tsx}"],
          exclude: [...inPage, ...alone, "tests/e2e/**"],
          setupFiles: NODE_SETUP,
        },
      },
      {
        extends: true,
        test: {
          name: "page",
          environment: "happy-dom",
          isolate: false,
          include: inPage,
          exclude: inPageAlone,
          setupFiles: [...PAGE_SETUP, "tests/support/pageParts.setup.ts"],
        },
      },
      {
        extends: true,
        test: { name: "node, alone", environment: "node", include: alone, setupFiles: NODE_SETUP },
      },
      {
        extends: true,
        test: { name: "page, alone", environment: "happy-dom", include: inPageAlone, setupFiles: PAGE_SETUP },
      },
    ],
  },
});
