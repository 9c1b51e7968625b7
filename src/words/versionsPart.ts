/** What the page calls the versions of a work until they are loaded. */

export const theVersions = "The versions";
