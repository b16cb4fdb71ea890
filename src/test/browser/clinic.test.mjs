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
  await page.getByText('A new case', { exact: true }).click();
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
        await page.getByLabel('Name', { exact: true }).fill(name);
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
        assert.equal(await late.getByRole('button', { name: 'Save as posted' }).count(), 0);
      })));

  test('answers it with an edited reply, and gives the wearer her link', () =>
    withPage({ signsIn: true }, async page => {
      await signIn(page, clinic[clinic.holder]);
      await page.goto(clinic.case);
      const reply = page.getByLabel('Edit it until it says what you mean');
      assert.match(await reply.inputValue(), /the band is a bit too long/);
      await reply.fill('Pin the band in by 2 cm at the side seam first, Wrenna.\nThen walk about.');
      await page.getByRole('button', { name: 'Save as posted' }).click();
      assert.match(await round(page, 1).textContent(), /Pin the band in by 2 cm at the side seam first, Wrenna\.\nThen walk about\./);
      await round(page, 1).getByText('Correct or withdraw it').click();
      await round(page, 1).getByLabel('The reply to round 1, corrected').fill('Nothing yet.');
      await page.getByRole('button', { name: 'Save the correction' }).click();
      assert.match(await round(page, 1).textContent(), /Nothing yet\./);
      await round(page, 1).getByText('Correct or withdraw it').click();
      await page.getByRole('button', { name: 'Withdraw the reply' }).click();
      assert.match(await page.textContent('.standing'), /Waiting for a reply/);
      await reply.fill('Pin the band in by 2 cm at the side seam first, Wrenna.\nThen walk about.');
      await page.getByRole('button', { name: 'Save as posted' }).click();
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
      await page.getByRole('button', { name: 'Save this' }).click();
      assert.match(await round(page, 1).textContent(), /Better, not solved\. It stays down now\./);
      await page.getByLabel('What you see and feel now').fill('Now the straps slip off my shoulders.');
      await page.getByRole('button', { name: 'Send it' }).click();
      assert.match(await round(page, 2).textContent(), /straps slip off/);
      assert.match(await page.textContent('.standing'), /We have your message/);
    }));

  test('takes a photo from her telephone, made smaller before it is sent, and shows it to the helpers', () =>
    withPage({ viewport: { width: 390, height: 844 } }, async page => {
      await page.goto(clinic.link);
      const drawn = await page.evaluate(() => {
        const canvas = document.createElement('canvas');
        canvas.width = 3000;
        canvas.height = 2000;
        canvas.getContext('2d').fillRect(0, 0, 900, 900);
        return canvas.toDataURL('image/jpeg').split(',')[1];
      });
      const file = round(page, 2).getByLabel('A photo of the garment on the body');
      await file.setInputFiles({ name: 'me.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(drawn, 'base64') });
      await page.waitForFunction(() => document.querySelector('#photo-2').files[0].name === 'photo.jpg');
      await round(page, 2).getByLabel('What it shows, in a line').fill('Left strap from the front');
      await round(page, 2).getByRole('button', { name: 'Add this photo' }).click();
      const photo = round(page, 2).getByRole('img', { name: 'Left strap from the front' });
      await photo.scrollIntoViewIfNeeded();
      await page.waitForFunction(() => document.querySelector('#round-2 .photos img').naturalWidth === 360);
      await assertUsable(page, 390);
    }));

  test('tells by feed who waits, and shares one reply by a link, without scripts', () =>
    withPage(still, async (page, context) => {
      await signIn(page, clinic.organiser);
      await page.goto(clinic.home + '/organise');
      await page.getByRole('button', { name: 'Make the feed’s address' }).click();
      const feed = await context.request.get(await page.getByLabel('The feed’s address').inputValue());
      assert.match(await feed.text(), /Wrenna is waiting for a reply/);
      await page.goto(clinic.case);
      assert.ok(await round(page, 2).getByRole('img', { name: 'Left strap from the front' }).isVisible());
      await round(page, 1).getByText('Share it by a link').click();
      await round(page, 1).getByRole('button', { name: 'Make a link to this reply' }).click();
      clinic.shared = await page.getByLabel('The link').inputValue();
      await page.goto(clinic.shared);
      assert.match(await page.textContent('main'), /Pin the band in by 2 cm/);
      assert.doesNotMatch(await page.textContent('main'), /rides up|94/);
    }));

  test('answers the second round, adds a third at the desk within the case, and closes it', () =>
    withPage({ signsIn: true }, async page => {
      await signIn(page, clinic[clinic.holder]);
      await page.getByRole('link', { name: 'Wrenna', exact: true }).click();
      assert.match(await round(page, 2).textContent(), /Changed before it: take in the band \(better\)/);
      assert.match(await round(page, 2).textContent(), /Bust 94/);
      await page.getByRole('button', { name: 'Save as posted' }).click();
      await page.getByRole('link', { name: 'Add the next round' }).click();
      await page.getByLabel('The wearer’s next message').fill('The straps stay on. It gapes a little at the neckline.');
      await page.locator('#answer .post mark').first().waitFor();
      await page.getByRole('button', { name: 'Keep this round' }).click();
      await page.waitForURL(clinic.case);
      assert.match(await round(page, 3).textContent(), /gap/);
      await round(page, 3).getByText('Say whether it helped').click();
      await round(page, 3).getByLabel('it fits now').check();
      await round(page, 3).getByRole('button', { name: 'Save this' }).click();
      assert.match(await round(page, 3).textContent(), /Solved/);
      await page.getByRole('button', { name: 'Close the case' }).click();
      assert.match(await page.textContent('.standing'), /Closed\./);
      await page.goto(clinic.home);
      await page.getByRole('link', { name: /^Closed/ }).click();
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
      await page.getByRole('button', { name: 'Save the note' }).click();
      assert.match(await page.textContent('.notes'), /Ask about the elastic\./);
      await page.getByRole('button', { name: 'Give it back' }).click();
      assert.match(await page.textContent('.standing'), /Nobody is on it yet/);
    }));

  test('shows red flags first, and answers the same question once for all who ask it', () =>
    withPage(still, async page => {
      await signIn(page, clinic.Perrin);
      const alike = [];
      for (const name of ['Tamsel', 'Ivolde']) alike.push(await openCase(page, name, SLACK));
      await openCase(page, 'Marrowby', 'The band digs in and my fingers go numb.');
      await page.goto(clinic.home);
      assert.match(await page.locator('ol.cases .case').first().textContent(), /Marrowby\s+Red flag/);
      await page.getByText('Asked more than once').click();
      await page.getByRole('link', { name: 'Answer all of these with one reply' }).click();
      for (const words of await page.locator('.untold .post').allTextContents()) assert.equal(words, SLACK);
      await page.getByLabel('The reply').fill('Pin the band in.');
      await page.getByRole('button', { name: 'Save as posted for all of these' }).click();
      assert.match(await page.textContent('main'), /Pin the band in\..*Tamsel: answered\.\s+Ivolde: answered\./s);
      await page.getByRole('button', { name: 'Undo: they all wait again' }).click();
      for (const name of ['Tamsel', 'Ivolde']) await page.getByRole('listitem').filter({ has: page.getByRole('link', { name, exact: true }), hasText: 'waiting for' }).first().waitFor();
      await page.getByText('Asked more than once').click();
      await page.getByRole('link', { name: 'Answer all of these with one reply' }).click();
      await page.getByLabel('The reply').fill('Pin the band in.');
      await page.getByRole('button', { name: 'Save as posted for all of these' }).click();
      for (const url of alike) {
        await page.goto(url);
        assert.match(await round(page, 1).textContent(), /Pin the band in\./);
      }
    }));

  test('finds a case by its words, and shows one state at a time, without scripts', () =>
    withPage(still, async page => {
      await signIn(page, clinic.Perrin);
      await page.getByLabel('Find by nickname or words').fill('fingers NUMB');
      await page.getByRole('button', { name: 'Find' }).click();
      assert.deepEqual(await page.locator('ol.cases .who a').allTextContents(), ['Marrowby']);
      assert.match(await page.locator('ol.cases .asked').textContent(), /my fingers go numb/);
      await page.getByRole('link', { name: /^Answered/ }).click();
      assert.deepEqual((await page.locator('ol.cases .who a').allTextContents()).filter(name => name === 'Marrowby'), []);
      await page.getByRole('link', { name: /^Red flags \(1\)/ }).click();
      assert.deepEqual(await page.locator('ol.cases .who a').allTextContents(), ['Marrowby']);
      await page.goto(clinic.home + '?state=%3Cb%3E&q=%3Cb%3E&from=-9');
      await page.getByText('No case here has these words').waitFor();
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
      for (const [name, file, begins] of [['Download as a table (CSV)', 'insight.csv', 'by,group,kind,'], ['Download the causes as a drawing (SVG)', 'insight.svg', '<svg']]) {
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
            DESK + '/desk/sign-in', DESK + '/desk/clinics/new', clinic.link, clinic.link + '/delete', clinic.shared
          ];
          for (const path of paths) {
            await page.goto(path);
            await assertUsable(page, width);
          }
          await signIn(page, clinic.organiser);
          await openCase(page, 'Quill', SLACK);
          await openCase(page, 'A nickname as long as a nickname may well be, without any-break-in-the-last-word', SLACK);
          await page.goto(clinic.home);
          await page.getByText('Asked more than once').click();
          const same = await page.getByRole('link', { name: 'Answer all of these with one reply' }).getAttribute('href');
          for (const path of [
            clinic.home, clinic.home + '?state=all&q=the%20band', clinic.home + '?state=closed&q=zzz', clinic.home + '/insight', clinic.home + '/insight?cloth=rib', DESK + same, clinic.case, clinic.case + '/round', clinic.case + '/delete', clinic.home + '/organise',
            clinic.home + '/organise/audit', clinic.home + '/organise/delete', clinic.home + '/cases/nothing', DESK + '/desk'
          ]) {
            await page.goto(path);
            await page.evaluate(() => document.querySelectorAll('details:not(.place)').forEach(one => { one.open = true; }));
            await assertUsable(page, width);
          }
          await page.goto(DESK + same);
          await page.getByRole('button', { name: 'Save as posted for all of these' }).click();
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
      await page.getByRole('heading', { name: 'Waiting for a reply' }).waitFor(); // no key: it is for this machine alone
      const home = page.url();
      assert.ok(await page.getByRole('link', { name: 'All (40)' }).isVisible());
      assert.equal(await page.locator('ol.cases > li').count(), 12);
      await page.getByRole('button', { name: 'Remove the sample' }).click();
      await page.getByRole('heading', { name: 'Sign in to a clinic' }).waitFor();
      assert.equal((await page.goto(home)).status(), 401);
    }));
});
