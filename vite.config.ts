import { fileURLToPath } from "node:url";
import react from "@vitejs/plugin-react";
import { defineConfig } from "vitest/config";

/** Test folders that need a document; every other test folder runs in plain Node. */
const inPage = ["ui", "store", "print"].map((folder) => `tests/${folder}/**/*.test.{ts,tsx}`);

/** What the writer of PDF files would load for pictures and web pages in them: we draw neither. */
const ABSENT = ["canvg", "dompurify", "fast-png", "html2canvas"];
const absent = fileURLToPath(new URL("src/paper/absent.ts", import.meta.url));

export default defineConfig({
  // Relative addresses, so that the built site works from any folder of any server.
  base: "./",
  plugins: [react()],
  resolve: { alias: ABSENT.map((name) => ({ find: new RegExp(`^${name}$`), replacement: absent })) },
  worker: { format: "es" },
  build: { sourcemap: false },
  server: { host: "127.0.0.1", port: 5173, strictPort: false },
  preview: { host: "127.0.0.1", port: 4173, strictPort: true },
  test: {
    globals: false,
    projects: [
      {
        extends: true,
        test: {
          name: "node",
          environment: "node",
          include: ["tests/**/*.test.{ts,tsx}"],
          exclude: [...inPage, "tests/e2e/**"],
          setupFiles: ["tests/support/random.setup.ts"],
        },
      },
      {
        extends: true,
        test: {
          name: "page",
          environment: "happy-dom",
          include: inPage,
          setupFiles: ["tests/support/random.setup.ts", "tests/support/page.setup.ts"],
        },
      },
    ],
  },
});
