/** What a page in a browser says went wrong. */
import type { Page } from "@playwright/test";

/** All that a page says went wrong, gathered while it is open. */
export function errorsOf(page: Page): string[] {
  const errors: string[] = [];
  page.on("pageerror", (error) => errors.push(`page error: ${error.message}`));
  page.on("console", (message) => {
    if (message.type() === "error") errors.push(`console: ${message.text()}`);
  });
  return errors;
}
