// Opens a page in a real browser as a reader does: wide, on a telephone, in the
// dark, without scripts, on paper. Prints what was seen as one line of JSON:
// messages of the console, requests, whether it scrolls sideways, what axe-core
// finds, what the filters do, and blocks that a printed page would cut.
// Usage: node browse.mjs CHROMIUM FILE [PDF]
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

const [executablePath, file, pdf] = process.argv.slice(2);
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const url = pathToFileURL(file).href;
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] });
const seen = { console: [], requests: [], sideways: {}, violations: [], filtered: [], cut: [], plain: 0, idle: [] };

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
const judged = async (options, where) => {
  const page = await open({ ...options, bypassCSP: true });
  const { violations } = await page.evaluate(`${axe}; axe.run({ resultTypes: ["violations"], elementRef: false })`);
  for (const v of violations) {
    seen.violations.push({ where, id: v.id, impact: v.impact, at: v.nodes.slice(0, 3).map((n) => n.html.slice(0, 160)) });
  }
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
await plain.context().close();
await judged({ colorScheme: 'light' }, 'light');
await judged({ colorScheme: 'dark' }, 'dark');

// On paper no row is higher than a page, so that none has to be cut.
const paper = await open({ viewport: { width: 690, height: 1000 } }); // A4 less its margins, at 96 to the inch
await paper.emulateMedia({ media: 'print' });
seen.cut = await paper.evaluate(() => [...document.querySelectorAll('tr, article, li, .signed, figure.drawing')]
  .filter((e) => e.getBoundingClientRect().height > 1000).map((e) => e.tagName + ' ' + e.textContent.slice(0, 60)));
if (pdf) await paper.pdf({ path: pdf, format: 'A4', preferCSSPageSize: true });
await browser.close();
console.log(JSON.stringify(seen));
