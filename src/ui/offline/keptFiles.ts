/** The stores of the page's files on the device, one for each version. The last but one stays for pages that are still open. */

export interface KeptFile {
  readonly url: string;
  /** Changes with what is in the file; null where its name does so already. */
  readonly revision: string | null;
}

/** Stores belong to a whole server: another copy of the page, in another folder of it, has its own. */
const prefixFor = (scope: string): string => `bodicewright ${scope} `;

/** The same files have the same store. */
export function nameFor(scope: string, files: readonly KeptFile[]): string {
  let sum = 0;
  for (const sign of files.map(({ url, revision }) => `${url} ${revision ?? ""}\n`).join(""))
    sum = (Math.imul(sum, 31) + (sign.codePointAt(0) ?? 0)) | 0;
  return `${prefixFor(scope)}${(sum >>> 0).toString(36)}`;
}

/** What of the browser's stores is used. */
export interface Stores {
  /** In the order in which they were first opened. */
  keys(): Promise<readonly string[]>;
  open(name: string): Promise<{
    match(url: string): Promise<Response | undefined>;
    put(url: string, response: Response): Promise<void>;
  }>;
  delete(name: string): Promise<boolean>;
}

/** Lies in a store once its version has been at work. */
const WORN = "worn";

/**
 * The version of `own` takes over: older stores go, but for that of the version that was at work until now. Pages of it may still
 * be open in other tabs, and ask for parts.
 */
export async function dropOlder(stores: Stores, scope: string, own: string): Promise<void> {
  const names = (await stores.keys()).filter((name) => name.startsWith(prefixFor(scope)));
  const mark = new URL(WORN, scope).href;
  let isLastFound = false;
  // The youngest first. What came after this one is on its way in, and no matter of ours.
  for (const name of names.slice(0, Math.max(0, names.indexOf(own))).toReversed()) {
    const wasWorn: boolean = !isLastFound && (await (await stores.open(name)).match(mark)) !== undefined;
    if (wasWorn) isLastFound = true;
    else await stores.delete(name);
  }
  await (await stores.open(own)).put(mark, new Response());
}
