/** What the page tells a service worker that waits: take over now. */
export const TAKE = "take over";
