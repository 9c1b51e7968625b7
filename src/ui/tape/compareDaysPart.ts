/** What has changed since an earlier set: only where there are several. */
import { createLater } from "../parts/later";

export const COMPARE_DAYS = createLater(async () => (await import("./CompareDays")).CompareDays);
