// Opens a page in a real browser as a reader does: wide, on a telephone, in the
// dark, without scripts, on paper. Prints what was seen as one line of JSON:
// messages of the console, requests, whether it scrolls sideways, what axe-core
// finds, what the filters and the choice of two options do, and blocks that a printed page would cut.
// Usage: node browse.mjs CHROMIUM FILE [PDF]
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

const [executablePath, file, pdf] = process.argv.slice(2);
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const url = pathToFileURL(file).href;
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] });
const seen = { console: [], requests: [], sideways: {}, violations: [], filtered: [], cut: [], plain: 0, looks: 0, buttons: 0, printed: 0, idle: [], pair: null };

const open = async (options) => {
  // axe-core is put in beside the page, which its policy would refuse.
  const context = await browser.newContext({ bypassCSP: false, ...options });
  const page = await context.newPage();
  page.on('console', (m) => seen.console.push(m.text()));
  page.on('pageerror', (e) => seen.console.push(String(e)));
  page.on('request', (r) => { if (r.url() !== url) seen.requests.push(r.url()); });
  await page.goto(url, { timeout: 120_000 }); // a busy machine takes its time
  return page;
};
const wider = (page) => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
const judge = async (page, where) => {
  const { violations } = await page.evaluate(`${axe}; axe.run({ resultTypes: ["violations"], elementRef: false })`);
  for (const v of violations) {
    seen.violations.push({ where, id: v.id, impact: v.impact, at: v.nodes.slice(0, 3).map((n) => n.html.slice(0, 160)) });
  }
};
const judged = async (options, where) => {
  const page = await open({ ...options, bypassCSP: true });
  await judge(page, where);
  await page.context().close();
};

// By the keyboard alone: chooses the first and the last option, leaves by Escape, and
// chooses and leaves again by the mouse and by the button that closes.
const paired = async () => {
  const page = await open({ viewport: { width: 1280, height: 900 }, bypassCSP: true });
  const buttons = page.locator('.look > button');
  const dialog = page.locator('#pair');
  const last = await buttons.count() - 1;
  if (last < 1) return page.context().close();
  const tabTo = async (which) => {
    for (let i = 0; i < 200; i++) {
      if (await which.evaluate((e) => e === document.activeElement)) return true;
      await page.keyboard.press('Tab');
    }
    return false;
  };
  const pressed = () => page.evaluate(() => [...document.querySelectorAll('.look > button[aria-pressed="true"]')].map((b) => b.value));
  const state = async () => ({
    open: await dialog.evaluate((d) => d.open),
    title: await dialog.locator('h2').textContent(),
    widths: await dialog.locator('svg').evaluateAll((all) => all.map((e) => Math.round(e.getBoundingClientRect().width))),
    pressed: await pressed(),
    focused: await page.evaluate(() => document.activeElement.textContent),
  });
  // The event of a dialog that closes comes after the key that closes it.
  const left = async () => {
    await page.waitForFunction(() => document.querySelector('.look > button[aria-pressed="true"]') === null, null, { timeout: 10000 }).catch(() => {});
    return state();
  };
  const out = { reached: await tabTo(buttons.first()), apart: await page.evaluate(() => {
    const widths = [...document.querySelectorAll('.look > svg')].map((e) => e.getBoundingClientRect().width);
    return Math.max(...widths) - Math.min(...widths);
  }) };
  await page.keyboard.press('Enter');
  out.one = { ...(await state()), said: await page.locator('#chosen').textContent() };
  out.reached = out.reached && await tabTo(buttons.nth(last));
  await page.keyboard.press('Space');
  out.two = await state();
  await judge(page, 'side by side');
  await page.emulateMedia({ media: 'print' });
  out.onPaper = [await page.locator('main').isVisible(), await page.locator('#pair svg:visible').count()];
  await page.emulateMedia({ media: 'screen' });
  await page.keyboard.press('Escape');
  out.left = await left();
  await page.locator('.look > svg').nth(0).click();
  await page.locator('.look > svg').nth(1).click();
  out.clicked = await state();
  out.reached = out.reached && await tabTo(dialog.locator('button'));
  await page.keyboard.press('Enter');
  out.closed = await left();
  await buttons.first().click();
  await buttons.first().click();
  out.taken = await pressed();
  seen.pair = out;
  await page.context().close();
};

for (const width of [1280, 390]) {
  const page = await open({ viewport: { width, height: 900 } });
  seen.sideways[width] = await wider(page);
  if (width === 1280) {
    seen.idle = await page.evaluate(() => [...document.querySelectorAll('[tabindex="0"]')].filter((e) => e.scrollWidth <= e.clientWidth).map((e) => e.outerHTML.slice(0, 80)));
    const shown = () => page.evaluate(() => [...document.querySelectorAll('article')].filter((a) => !a.hidden).length);
    const box = page.locator('fieldset input[type=checkbox]').first();
    if (await box.count()) {
      seen.filtered.push(await shown());
      await box.focus();
      await page.keyboard.press('Space');
      seen.filtered.push(await shown());
      await page.keyboard.press('Space');
      await page.locator('fieldset input[type=search]').fill('no such words anywhere');
      seen.filtered.push(await shown());
    }
  }
  await page.context().close();
}
const plain = await open({ javaScriptEnabled: false });
seen.plain = await plain.locator('article:visible').count();
seen.looks = await plain.locator('.look:visible').count();
seen.buttons = await plain.locator('button:visible').count();
await plain.context().close();
await paired();
await judged({ colorScheme: 'light' }, 'light');
await judged({ colorScheme: 'dark' }, 'dark');

// On paper no row is higher than a page, so that none has to be cut.
const paper = await open({ viewport: { width: 690, height: 1000 } }); // A4 less its margins, at 96 to the inch
await paper.emulateMedia({ media: 'print' });
seen.cut = await paper.evaluate(() => [...document.querySelectorAll('tr, article, li, .signed, figure.drawing')]
  // a figure has the page that it is for: the lower of A4 and Letter, upright and lying
  .filter((e) => e.getBoundingClientRect().height > (e.matches('.lying') ? 691 : e.matches('.upright') ? 952 : 1000)).map((e) => e.tagName + ' ' + e.textContent.slice(0, 60)));
seen.printed = await paper.locator('button:visible').count();
if (pdf) {
  for (const [format, landscape, to] of [['A4', false, pdf], ['A4', true, pdf + '.lying'], ['Letter', false, pdf + '.letter'], ['Letter', true, pdf + '.letter.lying']]) {
    await paper.pdf({ path: to, format, landscape, preferCSSPageSize: true });
  }
}
await browser.close();
console.log(JSON.stringify(seen));
