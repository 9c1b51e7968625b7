/** What the page said and wrote is the same in every engine: figures, words, drawings and files. */
import { readFileSync } from "node:fs";
import { expect, test } from "@playwright/test";
import { z } from "zod";
import { engines } from "../tools/browser.mjs";
import { saidFile } from "./said";

const said = (folder: string, engine: string): Readonly<Record<string, string>> =>
  z.record(z.string(), z.string()).parse(JSON.parse(readFileSync(saidFile(folder, engine), "utf8")));

const [first, ...others] = (["chromium", "firefox", "webkit"] as const).filter((name) => engines()[name] !== undefined);

if (first !== undefined)
  for (const other of others)
    test(`${other} says and writes what ${first} does`, () => {
      const { project } = test.info();
      const expected = said(project.outputDir, first);
      expect(Object.keys(expected).length).toBeGreaterThanOrEqual(8);
      expect(said(project.outputDir, other)).toEqual(expected);
    });
