/** The whole job, from the first look to paper, as it is done in every engine. What is expected is known from outside. */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { DOMParser } from "@xmldom/xmldom";
import { expect } from "@playwright/test";
import DxfReader from "dxf-parser";
import { STEPS } from "../e2e/support";
import { linesOf, pageSizes, textOf } from "../support/poppler";
import type { Seen } from "./engine";
import { button, choice, text, type Hand } from "./hand";
import { saidFile } from "./said";
import { fixture, test, textOfFile } from "./window";

/** What was said, to be held beside what other engines say. */
const said: Record<string, string> = {};

/** Where a line or a paragraph ends each engine writes in its own way. */
const joined = ({ text: told }: Seen): string => told.replaceAll(/\s+/gu, "");

test.describe.configure({ mode: "serial" });

const pictures = process.env["ENGINE_PICTURES"];

/** Keeps a picture, where they are asked for, after a look at what went wrong until then. */
async function picture(hand: Hand, title: string): Promise<void> {
  if (pictures === undefined) return;
  // First, since Firefox's driver writes a style into the page for a picture, which the page forbids.
  expect(await hand.faults()).toEqual([]);
  mkdirSync(pictures, { recursive: true });
  const name = `${title.replaceAll(/\W+/g, "-").slice(0, 60)}-${hand.engine.name}.png`;
  writeFileSync(join(pictures, name), await hand.engine.screenshot());
  await hand.forgive();
}

test.afterEach(async ({ window: { hand } }, info) => {
  const faults = await hand.faults();
  if (info.status !== info.expectedStatus) writeFileSync(info.outputPath("page.png"), await hand.engine.screenshot());
  else if (faults.length === 0) await picture(hand, info.title);
  expect(faults).toEqual([]);
});

test.afterAll(({ window: { hand } }, { project }) => {
  mkdirSync(project.outputDir, { recursive: true });
  writeFileSync(saidFile(project.outputDir, hand.engine.name), JSON.stringify(said));
  for (const told of hand.missed) console.log(`${hand.engine.name}: a press went elsewhere: ${told}`);
});

const CHART = [
  "Body measurements in cm",
  "UK Size 8 10 12 14 16 18",
  "Bust 80 84 88 92 97 102",
  "Waist 62 66 70 74 79 84",
  'Hip - 9" below waist 86 90 94 98 103 108',
  "Finished bust 87 91 95 99 104 109",
];

test("a first visit opens the demonstration, and her own work begins from it", async ({
  window: { hand, address },
}) => {
  await hand.engine.resize(1280, 800);
  await hand.load(address);
  await hand.see(text("This is a demonstration,"));
  await hand.press(button("Start with my own measures"));
  await expect.poll(() => hand.count(text("This is a demonstration,"))).toBe(0);
});

test("Tape: inches with fractions, centimetres where she says so", async ({ window: { hand } }) => {
  await hand.press(choice("in"));
  // 35 5/8 in = 904.9 mm, 33 1/2 in = 850.9 mm, 30 in = 762 mm: converted by hand.
  await hand.write({ label: /^Bust girth/ }, "35 5/8");
  await hand.write({ label: /^Upper chest girth/ }, "33½");
  await hand.write({ label: /^Waist girth/ }, "76.2cm");
  await hand.write({ label: /^Hip girth/ }, "39-1/2");
  expect((await hand.see({ label: /^Waist girth/ })).value).toBe("30");
  await hand.press(choice("cm"));
  expect((await hand.see({ label: /^Waist girth/ })).value).toBe("76.2");
  // 33.5 × 2.54.
  expect((await hand.see({ label: /^Upper chest girth/ })).value).toBe("85.09");
  // 35.625 × 2.54 = 90.4875, told to the tenth of a millimetre.
  expect((await hand.see({ label: /^Bust girth/ })).value).toBe("90.49");
});

test("Envelope: a chart is pasted, taken back, and another is picked", async ({ window: { hand } }) => {
  await hand.goTo("Envelope");
  await hand.press(button("Paste a chart"));
  await hand.press({ label: "Paste the chart here" });
  for (const line of CHART) {
    // oxlint-disable-next-line no-await-in-loop -- line after line, as she types them
    await hand.type(line);
    // oxlint-disable-next-line no-await-in-loop
    await hand.keys("Enter");
  }
  await hand.press(button("Use these 6 sizes"));
  await hand.see({ css: '[value="102"]' });
  await hand.press(button(/^Undo/));
  await hand.press(button("Wren bodice (invented)"));
});

test("Blend: size, cup and the lines between two sizes", async ({ window: { hand } }) => {
  await hand.goTo("Blend");
  // By hand in tests/e2e/job.e2e.ts.
  await hand.see(text("Size 12"));
  await hand.see({ role: "heading", name: "Waist 55 % from 14 to 16" });
  await hand.see({ role: "heading", name: "Hip 58 % from 14 to 16" });
});

const APEX = { css: '[data-testid="handle-front-waistDart-apex"]' };

/** The figures a handle says: mouth in mm, angle in degrees, fullness in mm. */
function figuresOf({ value }: Seen) {
  const found = /Mouth (\d+) mm, angle ([\d.]+)°, fullness (\d+) mm/.exec(value);
  if (found === null) throw new Error(`no figures in “${value}”`);
  return { mouth: Number(found[1]), angle: Number(found[2]), fullness: Number(found[3]) };
}

test("Tissue: lengths by tape, on the stand-in", async ({ window: { hand } }) => {
  await hand.goTo("Tissue");
  await hand.press(text("By tape on the tissue"));
  await hand.press(text("More lengths"));
  const field = { role: "textbox", name: "Front: Width at the bust" };
  await hand.write(field, "24.1");
  await hand.see(text(/1 measured along size/));
  await hand.press(button(/^Undo/));
  await expect.poll(() => hand.count(text(/1 measured along size/))).toBe(0);
});

test("Darts: an end is drawn by the pointer and moved by keys, undone and done again", async ({ window: { hand } }) => {
  await hand.goTo("Darts");
  const before = figuresOf(await hand.see(APEX));
  await hand.draw(APEX, 0, 30);
  await expect.poll(async () => figuresOf(await hand.see(APEX)).angle).toBeGreaterThan(before.angle + 2);
  const drawn = figuresOf(await hand.see(APEX));
  // A shorter dart of the same mouth is wider in angle, and fuller.
  expect(drawn.mouth).toBe(before.mouth);
  expect(drawn.fullness).toBeGreaterThan(before.fullness);
  await hand.keys("Control+z");
  await expect.poll(async () => figuresOf(await hand.see(APEX))).toEqual(before);
  await hand.keys("Control+Shift+z");
  await expect.poll(async () => figuresOf(await hand.see(APEX))).toEqual(drawn);
  await hand.keys("Control+z");
  await hand.focus(APEX);
  await hand.keys("Shift+ArrowDown");
  await expect.poll(async () => (await hand.see({ role: "textbox", name: "Shorten by" })).value).toBe("10");
  await hand.keys("Tab");
  await hand.see(text("Shorten the waist dart by 10 mm, its mouth held"));
  said["darts"] = (await hand.see(APEX)).value;
});

test("Fit: what her measures ask for is taken", async ({ window: { hand } }) => {
  await hand.goTo("Tape");
  await hand.press(text("More measures"));
  await hand.write({ label: /^Back waist length/ }, "39");
  await hand.goTo("Fit");
  await hand.press({ ...button(/^Take: /), at: 0 });
  const ledger = await hand.see({ css: ".ledger-place" });
  said["ledger"] = joined(ledger);
});

test("Trial: a toile is read, an answer taken, a verdict given", async ({ window: { hand } }) => {
  await hand.goTo("Trial");
  await hand.press(button("I have sewn this"));
  await hand.write({ label: "Cloth" }, "calico");
  await hand.write({ label: "Line 1: Place" }, "21");
  await hand.choose({ label: "Line 1: What is seen" }, "fold across");
  await hand.write({ label: "Line 1: How much" }, "6");
  const answers = { role: "region", name: "What it comes to" };
  await hand.see({ within: answers, text: /^Sway back/ });
  await hand.press({ ...button(/^Take it: /), at: 0 });
  await hand.see({ within: answers, text: /^Taken/ });
  said["trial"] = joined(await hand.see(answers));
  await hand.press(button("Try again"));
});

test("Dress: a skirt and a lining, cloth to buy", async ({ window: { hand } }) => {
  await hand.goTo("Dress");
  await hand.press(choice("Tiers"));
  await hand.press({ role: "heading", name: "Lining" });
  await hand.press(choice("bodice and skirt"));
  await hand.press({ role: "heading", name: "Cloth to buy" });
  await hand.see(text(/^\d\.\d\d m of 140\.0 cm$/));
  said["dress"] = joined(await hand.see({ css: ".dress-measures" }));
  said["cloth"] = (await hand.see({ ...text(/^\d\.\d\d m of 140\.0 cm$/), at: 0 })).text;
});

test("Paper: the checklist comes out of the printer", async ({ window: { hand } }) => {
  await hand.goTo("Paper");
  await hand.see(button("Print the checklist"));
  const { print } = hand.engine;
  test.skip(print === null, "the driver cannot print");
  const sheet = (await print?.()) ?? new Uint8Array();
  // Firefox draws the letters of a typeface of many weights as outlines: they are marks too.
  expect(linesOf(sheet).length + textOf(sheet).length).toBeGreaterThan(150);
  for (const size of pageSizes(sheet)) expect(size.map(Math.round)).toEqual([210, 297]);
});

test("Paper: true-scale pieces in three kinds of file", async ({ window: { hand } }) => {
  await hand.press(choice("True-scale pieces"));
  const told = await hand.see(text(/pages with pieces, and a first page with this map/));
  const pages = Number(/^\d+/.exec(told.text)?.[0]);
  const pdf = await hand.download(button("Make the PDF"));
  const sizes = pageSizes(pdf.bytes);
  expect(sizes).toHaveLength(pages + 1);
  // ISO 216: A4 is 210 × 297 mm.
  for (const size of sizes) expect(size.map(Math.round)).toEqual([210, 297]);
  expect(textOf(pdf.bytes)).toContain("FRONT");
  const svg = await hand.download(button("Make the SVG"));
  const root = new DOMParser().parseFromString(textOfFile(svg.file), "image/svg+xml").documentElement;
  expect(root?.getAttribute("width")).toMatch(/mm$/u);
  const dxf = await hand.download(button("Make the DXF"));
  const read = new DxfReader().parseSync(textOfFile(dxf.file));
  expect(Object.keys(read?.blocks ?? {}).length).toBeGreaterThanOrEqual(2);
  said["pages"] = told.text;
  said["svg"] = textOfFile(svg.file);
  said["dxf"] = textOfFile(dxf.file);
});

test("the work goes out to a file, is found after a reload, and comes in again", async ({
  window: { hand, address },
}) => {
  await hand.press(button("Works"));
  const { file, name } = await hand.download(button("Download this work"));
  expect(name).toBe("my-bodice.bodice.json");
  expect(JSON.parse(textOfFile(file))).toMatchObject({
    bodicewright: "work",
    work: { unit: "cm", tapes: [{ readings: { waistGirth: [762], backWaistLength: [390] } }] },
  });
  await hand.goTo("Tape");
  await hand.write({ label: /^Waist girth/ }, "77.7");
  await hand.saved();
  await hand.load(address);
  await expect.poll(async () => (await hand.see({ label: /^Waist girth/ })).value).toBe("77.7");
  await hand.press(button("Works"));
  await hand.see(button("Download this work"));
  await hand.upload('input[type="file"][aria-label="Work file"]', file);
  await expect.poll(async () => (await hand.look({ label: /^Waist girth/ }))?.value).toBe("76.2");
});

test("her own pattern is read from a file, and the plan made on it", async ({ window: { hand, address } }) => {
  await hand.goTo("Envelope");
  await hand.press(choice("To the waist"));
  await hand.goTo("Tissue");
  await hand.press(text("From a file"));
  await hand.upload('#step input[type="file"]', fixture("thornfield.svg"));
  await hand.press(button("Cup B"));
  await hand.see(text("Your own pieces: front and back, in sizes 10 to 14."));
  await hand.press(button("Make the plan on these pieces"));
  await hand.see(text(/As they were drawn in your file\./));
  await hand.saved();
  await hand.load(`${address}#tissue`);
  await hand.see(text(/As they were drawn in your file\./));
});

test("on a phone's screen nothing is wider than the page, and a dart is drawn, by a finger where there is one", async ({
  window: { hand },
}) => {
  await hand.engine.resize(390, 844);
  for (const step of STEPS)
    // oxlint-disable-next-line no-await-in-loop -- one step after the other
    await test.step(step, async () => {
      await hand.goTo(step);
      await expect.poll(hand.tooWide).toEqual([]);
      await picture(hand, `phone ${step}`);
    });
  await hand.goTo("Darts");
  const before = (await hand.see(APEX)).value;
  await hand.draw(APEX, 0, 20, hand.engine.hasFinger ? "touch" : "mouse");
  await expect.poll(async () => (await hand.see(APEX)).value).not.toBe(before);
});
