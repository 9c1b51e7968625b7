/**
 * The whole story of two trial garments as she lives it: a toile with two answers to one dart, what was seen, the answer taken,
 * "the left is right", a second toile that is clean, kept as her base, and the next dress begun from it. Once with the mouse, once
 * by keys alone, once in inches, once on a phone.
 */
import { expect, test, type Locator, type Page } from "@playwright/test";
import { expectNoAxeViolations, goTo } from "./support";

/** How she does it: with a pointer or by keys. Every press, tap and text counts as one. */
interface Hand {
  readonly press: (target: Locator) => Promise<void>;
  readonly write: (field: Locator, text: string) => Promise<void>;
  readonly choose: (list: Locator, label: string) => Promise<void>;
  readonly tick: (choice: Locator) => Promise<void>;
  readonly count: () => number;
}

function pointer(): Hand {
  let count = 0;
  return {
    press: async (target) => {
      count += 1;
      await target.click();
    },
    write: async (field, text) => {
      count += 2;
      await field.fill(text);
      await field.press("Tab");
    },
    choose: async (list, label) => {
      count += 2;
      await list.selectOption({ label });
    },
    tick: async (choice) => {
      count += 1;
      await choice.check();
    },
    count: () => count,
  };
}

/** Nothing but Tab, letters, arrows, Space and Enter. */
function keys(page: Page): Hand {
  let count = 0;
  const goal = async (target: Locator): Promise<void> => {
    await expect(target).toBeVisible();
    for (let step = 0; step < 600; step += 1) {
      // oxlint-disable-next-line no-await-in-loop -- one key after the other, as she presses them
      const where = await target.evaluate((element) => {
        const now = document.activeElement;
        if (now === element) return 0;
        return now !== null && (now.compareDocumentPosition(element) & Node.DOCUMENT_POSITION_PRECEDING) !== 0 ? -1 : 1;
      });
      if (where === 0) return;
      // oxlint-disable-next-line no-await-in-loop
      await page.keyboard.press(where < 0 ? "Shift+Tab" : "Tab");
    }
    throw new Error("keys do not get there");
  };
  return {
    press: async (target) => {
      count += 1;
      await goal(target);
      await page.keyboard.press("Enter");
    },
    write: async (field, text) => {
      count += 2;
      await goal(field);
      await page.keyboard.press("ControlOrMeta+a");
      await page.keyboard.type(text);
      await page.keyboard.press("Tab");
    },
    choose: async (list, label) => {
      count += 2;
      await goal(list);
      await page.keyboard.type(label);
      await expect(list.locator("option:checked")).toHaveText(label);
    },
    tick: async (choice) => {
      count += 1;
      // Of a group Tab comes to the one that is chosen, or to the first: arrows go on from there.
      const group = choice.locator("xpath=ancestor::fieldset[1]");
      const chosen = group.locator("input:checked");
      await goal((await chosen.count()) > 0 ? chosen : group.locator("input").first());
      for (let step = 0; step < 5 && !(await choice.isChecked()); step += 1) {
        // oxlint-disable-next-line no-await-in-loop
        await page.keyboard.press(step === 0 && (await chosen.count()) === 0 ? "Space" : "ArrowDown");
      }
      await expect(choice).toBeChecked();
    },
    count: () => count,
  };
}
