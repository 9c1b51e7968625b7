/** The files of the typefaces that a PDF carries in it, as they are installed. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Typefaces } from "../paper/makePaper";

const installed = createRequire(import.meta.url);

const fontFile = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(installed.resolve(`@expo-google-fonts/source-sans-3/${name}`)));

export const readTypefaces = (): Typefaces => ({
  regular: fontFile("400Regular/SourceSans3_400Regular.ttf"),
  bold: fontFile("700Bold/SourceSans3_700Bold.ttf"),
});
