// Pictures of all main pages, to be looked at: narrow and wide, light and dark.
// DESK is the service's address, CHROMIUM the browser's path; node looks.mjs FOLDER
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';

const [folder = 'looks'] = process.argv.slice(2);
const { DESK, CHROMIUM } = process.env;
const QUESTION = 'Second toile, size 80C. The band still rides up about 3 cm at the back, no digging under the arms and the straps are fine. I can pull it 4 cm off my ribs. Underbust 77 cm, bust 94.';
const VARIANTS = [360, 1280].flatMap(width => ['light', 'dark'].map(colorScheme => ({ width, colorScheme })));

const filled = (path, fields, button) => async page => {
  await page.goto(DESK + path);
  for (const [id, value] of Object.entries(fields)) {
    const field = page.locator('#' + id);
    if (await field.evaluate(one => one.tagName === 'SELECT')) await field.selectOption(value);
    else await field.fill(value);
  }
  await page.getByRole('button', { name: button }).click();
  await page.locator('#result').waitFor();
};

const open = path => page => page.goto(DESK + path);

const PAGES = {
  desk: open('/desk'),
  'desk-answered': async page => {
    await page.goto(DESK + '/desk');
    await page.getByLabel('The question, as it was written').fill(QUESTION);
    await page.locator('#post').waitFor();
  },
  size: open('/desk/size'),
  'size-answered': filled('/desk/size', { 'body-bust': '91', 'body-underbust': '76.5' }, 'Which size'),
  cloth: open('/desk/cloth'),
  'cloth-answered': filled('/desk/cloth', { 'cloth-main-around-marked': '10', 'cloth-main-around-stretched': '17.5', 'cloth-main-around-relaxed': '10.3' }, 'What is it fit for'),
  cut: open('/desk/cut'),
  'cut-one': open('/desk/cut?sheet=quillmere-top'),
  'cut-planned': filled('/desk/cut?sheet=quillmere-top', {
    'cloths-main-width': '150', 'cloths-main-stretch': 'crosswise', 'cloths-lining-width': '150', 'cloths-lining-stretch': 'crosswise',
    'cloths-support-width': '150', 'cloths-support-stretch': 'crosswise'
  }, 'What to cut'),
  handbook: open('/rules'),
  'handbook-search': open('/rules?q=my%20band%20rides%20up'),
  cause: open('/rules/band-too-long'),
  sign: open('/rules/signs/band-rides-up-at-the-back'),
  'measuring-sheet': open('/v1/check-sheets/measuring'),
  'cloth-sheet': open('/v1/check-sheets/cloth'),
  'sign-in': open('/desk/sign-in'),
  'new-clinic': open('/desk/clinics/new')
};

function clinicPages(home, about) {
  const inside = path => page => page.goto(home + path);
  return {
    queue: inside(''),
    case: page => page.goto(about.case),
    round: page => page.goto(about.case + '/round'),
    'delete-case': page => page.goto(about.case + '/delete'),
    'same-question': page => page.goto(about.same),
    insight: inside('/insight'),
    organise: inside('/organise'),
    audit: inside('/organise/audit'),
    'delete-clinic': inside('/organise/delete'),
    'not-found': inside('/cases/nothing'),
    wearer: page => page.goto(about.link),
    shared: page => page.goto(about.shared)
  };
}

async function picture(page, name, { width, colorScheme }) {
  await page.screenshot({ path: join(folder, `${name}-${width}-${colorScheme}.png`), fullPage: true });
}

mkdirSync(folder, { recursive: true });
const browser = await chromium.launch({ executablePath: CHROMIUM, args: ['--no-sandbox', '--disable-gpu'] });
const visitor = async (variant, visit) => {
  const context = await browser.newContext({ viewport: { width: variant.width, height: 800 }, colorScheme: variant.colorScheme });
  const page = await context.newPage();
  page.setDefaultTimeout(15000);
  await visit(page);
  await context.close();
};

let home;
let key;
const about = {};
await visitor(VARIANTS[2], async page => {
  await page.goto(DESK + '/desk/clinics/new');
  await page.getByRole('button', { name: 'Open the sample clinic' }).click();
  await page.getByRole('heading', { name: 'Waiting for a reply' }).waitFor();
  home = page.url();
  await page.goto(home + '/organise');
  await page.getByLabel('Name', { exact: true }).fill('Odile');
  await page.getByLabel('look after the clinic too').check();
  await page.getByRole('button', { name: 'Issue a key' }).click();
  key = await page.getByLabel('Key', { exact: true }).inputValue();
  await picture(page, 'opened-clinic', VARIANTS[2]);
  await page.goto(home);
  await page.getByText('Asked more than once').click();
  about.same = DESK + await page.getByRole('link', { name: 'Answer all of these' }).first().getAttribute('href');
  about.case = DESK + await page.locator('li.case a[href*="/cases/"]').first().getAttribute('href');
  await page.goto(about.case);
  await page.getByRole('button', { name: 'Make the wearer’s link' }).click();
  about.link = await page.getByLabel('Her link').inputValue();
  await picture(page, 'wearers-link', VARIANTS[2]);
  await page.goto(home + '?state=answered');
  await page.locator('li.case a[href*="/cases/"]').first().click();
  await page.getByText('Share it by a link').first().click();
  await page.getByRole('button', { name: 'Make a link to this reply' }).first().click();
  about.shared = await page.getByLabel('The link').inputValue();
  await page.goto(home + '/organise');
  await page.getByRole('button', { name: 'Make the feed’s address' }).click();
  await picture(page, 'feed', VARIANTS[2]);
});
for (const variant of VARIANTS) {
  await visitor(variant, async page => {
    await page.goto(DESK + '/desk/sign-in');
    await page.getByLabel('Your key').fill(key);
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.waitForURL(home);
    for (const [name, visit] of Object.entries({ ...PAGES, ...clinicPages(home, about) })) {
      try {
        await visit(page);
        await picture(page, name, variant);
      } catch (error) {
        console.error(`${name}: ${error.message.split('\n')[0]}`);
        process.exitCode = 1;
      }
    }
  });
}
await browser.close();
