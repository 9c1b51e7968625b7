import { createLater } from "../parts/later";

export const VERSIONS = createLater(async () => (await import("./VersionsView")).VersionsView);
