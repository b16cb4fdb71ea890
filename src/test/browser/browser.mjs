// What every test in a real browser needs. DESK is the service's address, CHROMIUM the browser's path.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { after, before } from 'node:test';
import { chromium } from 'playwright-core';

export const DESK = process.env.DESK;
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
// WCAG 2.2 level A and AA as axe-core names them; 2.2 contains 2.0 and 2.1.
const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22a', 'wcag22aa'];
let browser;

before(async () => {
  browser = await chromium.launch({
    executablePath: process.env.CHROMIUM,
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync']
  });
});
after(() => browser?.close());

// A page that fails the test when anything goes wrong in it or leaves for elsewhere.
// refused: the page may name a fault. failing: requests may fail on purpose.
export async function withPage({ refused, failing, signsIn, ...options }, story) {
  const context = await browser.newContext(options);
  const wrong = [];
  context.on('request', request => {
    if (!request.url().startsWith(DESK)) wrong.push('asked elsewhere: ' + request.url());
  });
  const page = await context.newPage();
  page.setDefaultTimeout(20000);
  page.on('pageerror', error => wrong.push('failed: ' + error.message));
  page.on('console', message => {
    // A page that names a fault is no success to HTTP, and the browser says so.
    if (message.type() === 'error' && !(refused && /status of 4\d\d/.test(message.text())) && !(failing && /^Failed to load resource/.test(message.text()))) wrong.push('complained: ' + message.text());
  });
  try {
    await story(page, context);
    assert.deepEqual(wrong, []);
    if (!signsIn) assert.deepEqual(await context.cookies(), []);
  } finally {
    await context.close();
  }
}

export async function offences(page) {
  await page.evaluate(AXE);
  const found = await page.evaluate(tags => axe.run(document, { runOnly: tags }), WCAG);
  return found.violations.flatMap(one => one.nodes.map(node => `${one.id}: ${node.html.slice(0, 160)}`));
}

// Accessible, and no wider than the window.
export async function assertUsable(page, width) {
  assert.deepEqual(await offences(page), []);
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  assert.ok(wide <= width, `the page is ${wide} px wide`);
}
