/** The page opens over plain http too, connects to nothing, and does nothing that its policy refuses. */
import { describe, expect, it } from "vitest";
import { openFaults } from "./openRules";
import { readProjectFile, sourceFiles } from "./source";

const files = sourceFiles().filter((file) => !file.startsWith("src/cli/"));

describe("the page", () => {
  it("asks for nothing that is missing over plain http, and for no connection", () => {
    expect(files).toContain("src/store/freshId.ts");
    expect(files.flatMap((file) => openFaults(file, readProjectFile(file)))).toEqual([]);
  });
});

describe("the scanner", () => {
  it.each([
    "export const id = crypto.randomUUID();",
    "export const id = globalThis.crypto.randomUUID();",
    "const { randomUUID } = crypto;",
    "await navigator.clipboard.writeText(text);",
    "void navigator.locks.request('a', () => {});",
    "void window.navigator.storage.persist();",
    "if (navigator.locks === undefined) void navigator.storage.persist();",
    "await fetch(address);",
    "await window.fetch(address);",
    "new WebSocket(address);",
    "navigator.sendBeacon(address);",
    "new Function('return 1')();",
    "export const A = () => <style dangerouslySetInnerHTML={{ __html: rule }} />;",
    "element.innerHTML = text;",
  ])("refuses %s", (source) => {
    expect(openFaults("src/ui/x.tsx", source)).toHaveLength(1);
  });

  it.each([
    "crypto.getRandomValues(new Uint8Array(16));",
    "if ('locks' in navigator) void navigator.locks.request('a', () => {});",
    "if (navigator.storage !== undefined) void navigator.storage.persist();",
    "void navigator.storage?.persist();",
    "const read = { fetch: 1 };",
    "indexedDB.open('a');",
    "// fetch(address)",
    "const said = 'fetch(address)';",
  ])("lets %s be", (source) => {
    expect(openFaults("src/ui/x.tsx", source)).toEqual([]);
  });
});
