/** Where an engine's words and figures are kept until all have spoken. */
import { join } from "node:path";

export const saidFile = (folder: string, engine: string): string => join(folder, `said-${engine}.json`);
