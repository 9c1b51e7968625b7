/**
 * Stylesheets of parts that could not be loaded. The build's own loader asks for each but once, and would show a part without
 * its style the second time.
 */
const failed = new Set<HTMLLinkElement>();

// An error of a link does not bubble, but is heard on its way down.
document.addEventListener(
  "error",
  ({ target }) => {
    if (target instanceof HTMLLinkElement && target.rel === "stylesheet") failed.add(target);
  },
  true,
);

/**
 * Asks once more for every stylesheet that failed; rejects while one of them still does. One that has been taken out of the
 * page since is nobody's: put back out of the page it would neither come nor fail, and the part would be waited for for ever.
 */
export async function restoreStyles(): Promise<void> {
  for (const link of failed) if (!link.isConnected) failed.delete(link);
  await Promise.all([...failed].map(again));
}

function again(link: HTMLLinkElement): Promise<void> {
  return new Promise((resolve, reject) => {
    const fresh = document.createElement("link");
    fresh.rel = "stylesheet";
    fresh.crossOrigin = link.crossOrigin;
    fresh.href = link.href;
    fresh.addEventListener("load", () => resolve());
    fresh.addEventListener("error", () => reject(new Error(`no stylesheet: ${link.href}`)));
    failed.delete(link);
    link.replaceWith(fresh);
  });
}
