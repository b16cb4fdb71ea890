// A clinic in a real browser, told as one story: what a test does, the next finds.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { describe, test } from 'node:test';
import { DESK, assertUsable, withPage } from './browser.mjs';

const SLACK = 'The band is loose, it rides up at the back and I can pull it away from my ribs a long way.';
const still = { javaScriptEnabled: false, signsIn: true };
const clinic = {};

async function signIn(page, key) {
  await page.goto(DESK + '/desk/sign-in');
  await page.getByLabel('Your key').fill(key);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.waitForURL(clinic.home);
}

async function openCase(page, nickname, question) {
  await page.goto(clinic.home);
  await page.getByLabel('A nickname for the wearer').fill(nickname);
  await page.getByLabel('The question, as it was written').fill(question);
  await page.getByRole('button', { name: 'Open the case' }).click();
  await page.waitForURL(/\/cases\/[a-z2-7]{16}$/);
  return page.url();
}

const round = (page, number) => page.locator(`#round-${number}`);

describe('a clinic', { concurrency: false }, () => {
  test('is opened, and its organiser gives two helpers their keys', () =>
    withPage({ signsIn: true }, async (page, context) => {
      await page.goto(DESK + '/desk/clinics/new');
      await page.getByLabel('What the clinic is called').fill('Thursday sewing circle');
      await page.getByLabel('Your name in it').fill('Odile');
      await page.getByRole('button', { name: 'Open the clinic' }).click();
      clinic.organiser = await page.getByLabel('Your key as its organiser').inputValue();
      assert.match(clinic.organiser, /^ewo-/);
      const [cookie] = await context.cookies(DESK + '/desk');
      assert.deepEqual([cookie.httpOnly, cookie.sameSite, cookie.path, cookie.expires], [true, 'Strict', '/desk', -1]);
      await page.getByRole('link', { name: 'To the clinic' }).click();
      clinic.home = page.url();
      for (const name of ['Perrin', 'Maren']) {
        await page.getByRole('link', { name: 'Look after the clinic' }).click();
        await page.getByLabel('For whom').fill(name);
        await page.getByRole('button', { name: 'Issue a key' }).click();
        clinic[name] = await page.getByLabel('Key', { exact: true }).inputValue();
        assert.match(clinic[name], /^ewh-/);
      }
      await page.goto(clinic.home + '/organise');
      assert.doesNotMatch(await page.content(), new RegExp(clinic.Perrin));
    }));

  test('keeps a pasted question as a case', () =>
    withPage({ signsIn: true }, async page => {
      await signIn(page, clinic.Perrin);
      await page.goto(DESK + '/desk');
      await page.getByLabel('The question, as it was written').fill(SLACK + ' Bust 94 cm, underbust 77 cm.');
      await page.locator('#post').waitFor();
      await page.getByLabel('A nickname for the wearer').fill('Wrenna');
      await page.getByRole('button', { name: 'Keep as a new case' }).click();
      await page.waitForURL(/\/cases\/[a-z2-7]{16}$/);
      clinic.case = page.url();
      assert.match(await round(page, 1).textContent(), /Most likely: band too long/);
      assert.match(await round(page, 1).textContent(), /I can pull it away from my ribs/);
    }));

  test('lets one of two helpers take a case at once, and tells the other who has it', () =>
    withPage({ signsIn: true, refused: true }, first =>
      withPage({ signsIn: true, refused: true }, async second => {
        await signIn(first, clinic.Perrin);
        await signIn(second, clinic.Maren);
        await Promise.all([first, second].map(page => page.goto(clinic.case)));
        await Promise.all([first, second].map(page => page.getByRole('button', { name: 'Take this case' }).click()));
        const won = await Promise.all([first, second].map(page => page.getByText('You have it.').count()));
        assert.equal(won[0] + won[1], 1, 'exactly one has it');
        clinic.holder = won[0] ? 'Perrin' : 'Maren';
        const late = won[0] ? second : first;
        assert.match(await late.getByRole('alert').textContent(), new RegExp(`Somebody was quicker\\. ${clinic.holder} has this case now\\.`));
        assert.equal(await late.getByRole('button', { name: 'Keep as posted' }).count(), 0);
      })));

  test('answers it with an edited reply, and gives the wearer her link', () =>
    withPage({ signsIn: true }, async page => {
      await signIn(page, clinic[clinic.holder]);
      await page.goto(clinic.case);
      const reply = page.getByLabel('Change it until it says what you mean');
      assert.match(await reply.inputValue(), /band too long/);
      await reply.fill('Pin the band in by 2 cm at the side seam first, Wrenna.\nThen walk about.');
      await page.getByRole('button', { name: 'Keep as posted' }).click();
      assert.match(await round(page, 1).textContent(), /Pin the band in by 2 cm at the side seam first, Wrenna\.\nThen walk about\./);
      await page.getByRole('button', { name: 'Make the wearer’s link' }).click();
      clinic.link = await page.getByLabel('Her link').inputValue();
      assert.ok(clinic.link.startsWith(DESK + '/desk/wearer/eww-'));
      await page.goto(clinic.case);
      assert.doesNotMatch(await page.content(), /eww-/);
    }));

  test('hears from the wearer what it did, and about her next toile, without scripts or cookies', () =>
    withPage({ javaScriptEnabled: false }, async page => {
      await page.goto(clinic.link);
      assert.match(await page.textContent('main'), /Pin the band in by 2 cm/);
      await page.getByLabel('better, not there yet').check();
      await page.getByLabel('In words, if you like').fill('It stays down now.');
      await page.getByRole('button', { name: 'Keep what it did' }).click();
      assert.match(await round(page, 1).textContent(), /Better, not solved\. It stays down now\./);
      await page.getByLabel('What you see and feel now').fill('Now the straps slip off my shoulders.');
      await page.getByRole('button', { name: 'Send it' }).click();
      assert.match(await round(page, 2).textContent(), /straps slip off/);
      assert.match(await page.textContent('.standing'), /You wait/);
    }));

  test('answers the second round, adds a third at the desk within the case, and closes it', () =>
    withPage({ signsIn: true }, async page => {
      await signIn(page, clinic[clinic.holder]);
      await page.getByRole('link', { name: 'Wrenna', exact: true }).click();
      assert.match(await round(page, 2).textContent(), /Changed before it: take in the band \(better\)/);
      assert.match(await round(page, 2).textContent(), /Bust 94/);
      await page.getByRole('button', { name: 'Keep as posted' }).click();
      await page.getByRole('link', { name: 'Add the next round' }).click();
      await page.getByLabel('The wearer’s next message').fill('The straps stay on. It gapes a little at the neckline.');
      await page.locator('#answer .post mark').first().waitFor();
      await page.getByRole('button', { name: 'Keep this round' }).click();
      await page.waitForURL(clinic.case);
      assert.match(await round(page, 3).textContent(), /gap/);
      await round(page, 3).getByText('Tell what it did').click();
      await round(page, 3).getByLabel('it fits now').check();
      await round(page, 3).getByRole('button', { name: 'Keep what it did' }).click();
      assert.match(await round(page, 3).textContent(), /Solved/);
      await page.getByRole('button', { name: 'Close the case' }).click();
      assert.match(await page.textContent('.standing'), /Closed\./);
      await page.goto(clinic.home);
      await page.getByText('Closed').click();
      assert.ok(await page.getByRole('link', { name: 'Wrenna' }).isVisible());
    }));

  test('opens a closed case again, hands it over, notes on it and puts it back, without scripts', () =>
    withPage(still, async page => {
      await signIn(page, clinic.organiser);
      await page.goto(clinic.case);
      await page.getByRole('button', { name: 'Open it again' }).click();
      await page.getByLabel('Hand over to').selectOption('Maren');
      await page.getByRole('button', { name: 'Hand over' }).click();
      assert.match(await page.textContent('.standing'), /Maren has it/);
      await page.getByLabel('A note', { exact: true }).fill('Ask about the elastic.');
      await page.getByRole('button', { name: 'Write it down' }).click();
      assert.match(await page.textContent('.notes'), /Ask about the elastic\./);
      await page.getByRole('button', { name: 'Put it back' }).click();
      assert.match(await page.textContent('.standing'), /Nobody has it/);
    }));

  test('shows red flags first, and answers the same question once for all who ask it', () =>
    withPage(still, async page => {
      await signIn(page, clinic.Perrin);
      const alike = [];
      for (const name of ['Tamsel', 'Ivolde']) alike.push(await openCase(page, name, SLACK));
      await openCase(page, 'Marrowby', 'The band digs in and my fingers go numb.');
      await page.goto(clinic.home);
      assert.match(await page.locator('ol.cases .case').first().textContent(), /Marrowby\s+Red flag/);
      await page.getByRole('link', { name: 'Answer all of these with one reply' }).click();
      await page.getByLabel('The reply').fill('Pin the band in.');
      await page.getByRole('button', { name: 'Keep as posted for all of these' }).click();
      assert.match(await page.textContent('main'), /Tamsel: answered\.\s+Ivolde: answered\./);
      for (const url of alike) {
        await page.goto(url);
        assert.match(await round(page, 1).textContent(), /Pin the band in\./);
      }
    }));

  test('counts what keeps coming back, looks closer, and gives it as a table and as a drawing, without scripts', () =>
    withPage({ ...still, acceptDownloads: true }, async page => {
      await signIn(page, clinic.Perrin);
      const alike = ['Sorrel', 'Ennis', 'Corrow', 'Hale'];
      for (const name of alike) await openCase(page, name, SLACK);
      await page.getByRole('link', { name: 'What keeps coming back' }).click();
      const causes = page.getByRole('region', { name: 'Causes' });
      // Tamsel and Ivolde asked the same before; of six and more a share is told.
      const row = causes.getByRole('row').filter({ has: page.getByRole('rowheader', { name: 'Band too long' }) });
      assert.match(await row.textContent(), /\d+ of \d+\s*\d+ % \(\d+ % to \d+ %\)/);
      assert.match(await page.textContent('main'), /1 case of the clinic had a red flag/);
      assert.doesNotMatch(await page.textContent('main'), /Sorrel|Marrowby/);
      for (const [name, file, begins] of [['Keep it as a table (CSV)', 'insight.csv', 'by,group,kind,'], ['Keep the causes as a drawing (SVG)', 'insight.svg', '<svg']]) {
        const kept = page.waitForEvent('download');
        await page.getByRole('link', { name }).click();
        assert.equal((await kept).suggestedFilename(), file);
        assert.ok(readFileSync(await (await kept).path(), 'utf8').trimStart().startsWith(begins));
      }
      await page.goto(clinic.home + '/insight?size=%3Cb%3E');
      await page.getByText('No case has all that.').waitFor();
      await page.getByRole('link', { name: 'Look at all cases' }).click();
      assert.ok(await row.isVisible());
    }));

  test('is not shown to a helper in what is the organiser’s, nor to anybody signed out', () =>
    withPage({ ...still, refused: true }, async page => {
      await signIn(page, clinic.Perrin);
      assert.equal(await page.getByRole('link', { name: 'Look after the clinic' }).count(), 0);
      assert.equal((await page.goto(clinic.home + '/organise')).status(), 403);
      await page.goto(clinic.home);
      await page.getByRole('button', { name: 'Sign out' }).click();
      assert.equal((await page.goto(clinic.case)).status(), 401);
      assert.doesNotMatch(await page.textContent('body'), /Wrenna/);
    }));

  for (const colorScheme of ['light', 'dark']) {
    for (const width of [360, 1280]) {
      test(`is accessible on every page at ${width} px, ${colorScheme}`, () =>
        withPage({ signsIn: true, refused: true, colorScheme, viewport: { width, height: 900 } }, async page => {
          const paths = [
            DESK + '/desk/sign-in', DESK + '/desk/clinics/new', clinic.link, clinic.link + '/delete'
          ];
          for (const path of paths) {
            await page.goto(path);
            await assertUsable(page, width);
          }
          await signIn(page, clinic.organiser);
          await openCase(page, 'Quill', SLACK);
          await openCase(page, 'A nickname as long as a nickname may well be, without any-break-in-the-last-word', SLACK);
          await page.goto(clinic.home);
          const same = await page.getByRole('link', { name: 'Answer all of these with one reply' }).getAttribute('href');
          for (const path of [
            clinic.home, clinic.home + '/insight', clinic.home + '/insight?cloth=rib', DESK + same, clinic.case, clinic.case + '/round', clinic.case + '/delete', clinic.home + '/organise',
            clinic.home + '/organise/audit', clinic.home + '/organise/delete', clinic.home + '/cases/nothing', DESK + '/desk'
          ]) {
            await page.goto(path);
            await page.evaluate(() => document.querySelectorAll('details:not(.place)').forEach(one => { one.open = true; }));
            await assertUsable(page, width);
          }
          await page.goto(DESK + same);
          await page.getByRole('button', { name: 'Keep as posted for all of these' }).click();
          await assertUsable(page, width);
        }));
    }
  }

  test('prints a case as its story alone', () =>
    withPage({ signsIn: true }, async page => {
      await signIn(page, clinic.organiser);
      await page.goto(clinic.case);
      await page.emulateMedia({ media: 'print' });
      for (const away of ['button', 'textarea', 'select', 'nav']) {
        for (const one of await page.locator(away).all()) assert.ok(await one.isHidden(), await one.evaluate(it => it.outerHTML));
      }
      assert.ok(await round(page, 1).isVisible());
      assert.ok((await page.pdf({ format: 'A4' })).length > 1000);
    }));

  test('forgets a case its wearer deletes, and everything when its organiser deletes it', () =>
    withPage({ signsIn: true, refused: true }, async page => {
      await page.goto(clinic.link);
      await page.getByRole('link', { name: 'Delete your case' }).click();
      await page.getByLabel('Yes, delete it for good').check();
      await page.getByRole('button', { name: 'Delete my case' }).click();
      await page.getByRole('heading', { name: 'Your case is deleted' }).waitFor();
      assert.equal((await page.goto(clinic.link)).status(), 404);
      await signIn(page, clinic.organiser);
      assert.equal((await page.goto(clinic.case)).status(), 404);
      await page.goto(clinic.home + '/organise');
      await page.getByRole('link', { name: 'Delete the clinic' }).click();
      await page.getByLabel('Yes, delete it for good').check();
      await page.getByRole('button', { name: 'Delete the clinic' }).click();
      await page.getByRole('heading', { name: 'Sign in to a clinic' }).waitFor();
      await page.getByLabel('Your key').fill(clinic.organiser);
      await page.getByRole('button', { name: 'Sign in' }).click();
      await page.getByText('This key opens nothing.').waitFor();
    }));

  test('opens the sample with one click and removes it with another, without scripts', () =>
    withPage({ ...still, refused: true }, async page => {
      await page.goto(DESK + '/desk/clinics/new');
      await page.getByRole('button', { name: 'Open the sample clinic' }).click();
      const key = await page.getByLabel('Your key as its organiser').inputValue();
      await page.getByRole('link', { name: 'To the clinic' }).click();
      const home = page.url();
      assert.equal(await page.locator('li.case a[href*="/cases/"]').count(), 40);
      await page.getByRole('button', { name: 'Remove the sample' }).click();
      await page.getByLabel('Your key').fill(key);
      await page.getByRole('button', { name: 'Sign in' }).click();
      await page.getByText('This key opens nothing.').waitFor();
      assert.equal((await page.goto(home)).status(), 401);
    }));
});
