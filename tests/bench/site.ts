/** The page as it is built, served for the bench. */
import { build, preview } from "vite";

export const SITE = "node_modules/.cache/bodicewright-bench";
const HOST = "127.0.0.1";

export interface Site {
  readonly address: string;
  readonly close: () => Promise<void>;
}

/** Builds the page, or takes it as it was last built, and serves it on any port that is free. */
export async function serveSite(isBuilt = false): Promise<Site> {
  if (!isBuilt) await build({ logLevel: "error", build: { outDir: SITE, emptyOutDir: true } });
  const server = await preview({
    logLevel: "error",
    build: { outDir: SITE },
    preview: { port: 0, host: HOST, strictPort: false },
  });
  const [address] = server.resolvedUrls?.local ?? [];
  if (address === undefined) throw new Error("the page is not served");
  return { address, close: () => server.close() };
}
