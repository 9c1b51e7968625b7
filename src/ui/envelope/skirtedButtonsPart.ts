/** Buttons that go on down a skirt: only a dress with one knows how far. */
import { createLater } from "../parts/later";

export const SKIRTED_BUTTONS = createLater(async () => (await import("./SkirtedButtons")).SkirtedButtons);
