/** What the page says of working without a network, of its newer versions and of being installed. */
export const OFFLINE_WORDS = {
  /** Said once, where it stands that the work is saved. */
  fromNowOn: "Works without a network from now on",
  works: "Bodicewright works without a network on this device.",
  install: "Install on this device",
  installed: "It then opens from your other programs, in a window of its own. Your works stay where they are.",
} as const;

export const VERSION_WORDS = {
  ready: "A new version of Bodicewright is ready. Your work is saved before it is taken.",
  take: "Take it now",
  takeFromMenu: "Take the new version",
  /** Another tab has taken it, and this one goes on by what it began with. */
  elsewhere:
    "A new version of Bodicewright was taken in another tab. This one goes on with the old one until you load it again.",
  load: "Load it here too",
  unsaved:
    "The last changes to the open work could not be saved, so the new version waits. Download the work first, or take it all the same.",
  download: "Download this work",
  allTheSame: "Take it all the same",
} as const;

/**
 * Why a part of the page may not have come, and what helps.
 *
 * @param isKept whether all of the page should lie on the device
 */
export const notLoadedRemedy = (isKept: boolean): string =>
  isKept
    ? "Your work is kept, and the rest of the page works. This part was kept on the device and is not there any more, as where a browser makes room. Connect, and load the whole page again."
    : "Your work is kept, and the rest of the page works. See whether you are connected.";
