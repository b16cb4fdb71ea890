// The desk in a real browser. Needs DESK, the service's address, and CHROMIUM, the browser's path.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { DESK, assertUsable, offences, withPage } from './browser.mjs';

const QUESTION = 'The band rides up at the back and the straps dig in.';

const PHONE = { width: 360, height: 740 };

async function ask(page, question) {
  await page.goto(DESK + '/desk');
  await page.getByLabel('The question, as it was written').fill(question);
  await page.locator('#post').waitFor();
  await page.waitForFunction(() => document.getElementById('answer').getAttribute('aria-busy') === 'false');
}

async function until(holds) {
  for (const end = Date.now() + 20000; !holds();) {
    assert.ok(Date.now() < end, 'waited in vain');
    await new Promise(again => setTimeout(again, 20));
  }
}

// Whether some of it is seen in the window, under nothing else.
function inSight(locator) {
  return locator.evaluate(one => {
    const box = one.getBoundingClientRect();
    const there = document.elementFromPoint(box.left + box.width / 2, box.top + Math.min(box.height / 2, 30));
    return box.top >= 0 && box.top < innerHeight && one.contains(there);
  });
}

async function probability(page) {
  await page.waitForLoadState(); // without scripts the answer is the end of a whole page
  await page.locator('#causes-title').waitFor();
  return page.locator('#causes-title ~ details summary').allTextContents();
}

describe('with scripts', () => {
  test('a pasted question is answered as one types, asked on by a button, and its reply copied', () =>
    withPage({ permissions: ['clipboard-read', 'clipboard-write'] }, async page => {
      await page.goto(DESK);
      assert.equal(page.url(), DESK + '/desk');
      await page.getByLabel('The question, as it was written').fill(QUESTION);
      await page.getByRole('heading', { name: 'How the words were read' }).waitFor();
      assert.deepEqual(
        (await page.locator('.post mark').allTextContents()).map(words => words.replace(/\d+$/, '')),
        ['rides up at the back', 'straps dig in']
      );
      const first = await probability(page);
      const asked = await page.locator('#question').textContent();
      await page.getByRole('button', { name: 'Yes', exact: true }).first().click();
      await page.waitForFunction(before => document.getElementById('question')?.textContent !== before, asked);
      assert.notDeepEqual(await probability(page), first);

      await page.getByRole('radio', { name: 'long' }).check();
      await page.waitForFunction(() => document.getElementById('post').value.includes('### How I got there'));
      await page.getByRole('radio', { name: 'plain text' }).check();
      await page.waitForFunction(() => !document.getElementById('post').value.includes('**'));
      await page.getByRole('button', { name: 'Copy the reply' }).click();
      await page.getByText('Copied.').waitFor();
      assert.equal(
        (await page.evaluate(() => navigator.clipboard.readText())).replaceAll('\r\n', '\n'),
        await page.locator('#post').inputValue()
      );
    }));

  test('what cannot be told is asked no more, and can be taken back', () =>
    withPage({}, async page => {
      await page.goto(DESK + '/desk');
      await page.getByLabel('The question, as it was written').fill(QUESTION);
      await page.locator('#question').waitFor();
      const asked = await page.locator('#question').textContent();
      await page.locator('.ask > .buttons').getByRole('button', { name: 'Can’t tell' }).click();
      await page.locator('#moved', { hasText: 'can’t tell' }).waitFor();
      assert.notEqual(await page.locator('#question').textContent(), asked);
      await page.getByRole('button', { name: 'Take it back' }).click();
      await page.locator('#moved').waitFor({ state: 'detached' });
      assert.equal(await page.locator('#question').textContent(), asked);
    }));

  test('a reply says what it changed, in sight, and taken back leaves no trace', () =>
    withPage({ viewport: PHONE }, async page => {
      await ask(page, QUESTION);
      const first = await probability(page);
      for (const reply of ['Yes', 'No']) {
        await page.locator('.ask > .buttons').getByRole('button', { name: reply, exact: true }).click();
        const moved = page.locator('#moved', { hasText: reply.toLowerCase() });
        await moved.waitFor();
        assert.match(await moved.textContent(), /: (\d+ % → \d+ %|now \d+ %|was \d+ %, now unlikely)\./);
        assert.ok(await inSight(moved), 'what changed is out of sight');
        assert.equal(await page.evaluate(() => document.activeElement.id), 'moved');
        assert.notDeepEqual(await probability(page), first);
        await page.getByRole('button', { name: 'Take it back' }).click();
        await moved.waitFor({ state: 'detached' });
        assert.deepEqual(await probability(page), first);
      }
      assert.equal(await page.locator('#fitting input[name=seen]:checked, #fitting input[name=notSeen]:checked').count(), 0);
    }));

  test('on a phone the answer’s first line stays in sight under the box, and leads to the answer', () =>
    withPage({ viewport: PHONE }, async page => {
      await page.goto(DESK + '/desk');
      assert.ok(await page.locator('#verdict').isHidden());
      await ask(page, QUESTION);
      assert.ok(await inSight(page.locator('#text')));
      assert.ok(await inSight(page.locator('#said')));
      assert.match(await page.locator('#said').textContent(), /^(Most likely: |Not clear yet; )/);
      await page.getByRole('link', { name: 'See the answer' }).click();
      await page.waitForFunction(() => document.getElementById('answer-title').getBoundingClientRect().top < 200);
    }));

  test('the strip with the verdict shows only while the answer is out of sight', () =>
    withPage({ viewport: { width: 1280, height: 800 } }, async page => {
      await ask(page, QUESTION);
      const shrunk = () => document.getElementById('verdict').getBoundingClientRect().height <= 1;
      await page.waitForFunction(shrunk);
      assert.match(await page.locator('#said').textContent(), /Most likely|Not clear yet/);
      await page.setViewportSize(PHONE);
      await page.evaluate(() => scrollTo(0, 0));
      await page.waitForFunction(() => document.getElementById('verdict').getBoundingClientRect().height > 20);
      await page.locator('#answer-title').evaluate(one => one.scrollIntoView());
      await page.waitForFunction(shrunk);
    }));

  test('what the post says of a field stands in it, and gives way to what is typed', () =>
    withPage({}, async page => {
      await ask(page, QUESTION + ' Bust 94 cm, underbust 77 cm. I cut 75C of the Quillmere top.');
      const bust = page.locator('#body-bust');
      assert.equal(await bust.getAttribute('placeholder'), '94 cm (from the post)');
      assert.equal(await bust.inputValue(), '');
      assert.match(await page.locator('#garment option').first().textContent(), /^Quillmere top, 75C \(from the post\)$/);
      await bust.fill('96');
      await page.locator('.read', { hasText: 'the form counts' }).waitFor();
      await page.locator('#text').fill('The straps dig in.');
      await page.waitForFunction(() => document.getElementById('body-underbust').placeholder === '');
      assert.equal(await bust.inputValue(), '96');
    }));

  test('a misreading is struck where it stands, and put back; a danger is not', () =>
    withPage({ viewport: PHONE }, async page => {
      await ask(page, QUESTION + ' My fingers go numb.');
      assert.equal(await page.getByRole('button', { name: /^Misread: .*numb/ }).count(), 0);
      await page.locator('#text').fill(QUESTION + ' Bust 94 cm.');
      await page.locator('.marks', { hasText: '94 cm' }).waitFor();
      const first = await probability(page);
      await page.getByRole('button', { name: 'Misread: straps dig in' }).click();
      await page.locator('mark.struck', { hasText: 'straps dig in' }).waitFor();
      assert.notDeepEqual(await probability(page), first);
      await page.getByRole('button', { name: 'Count it again' }).click();
      await page.locator('mark.struck').waitFor({ state: 'detached' });
      assert.deepEqual(await probability(page), first);
      await page.locator('.marks').getByRole('link', { name: 'Correct it' }).click();
      await page.waitForFunction(() => location.hash === '#body-bust');
    }));

  test('an old answer is marked while a new one is made, and a late one is dropped', () =>
    withPage({ failing: true }, async page => {
      await ask(page, QUESTION);
      const held = [];
      await page.route('**/desk/answer', route => held.push(route));
      await page.locator('#text').fill(QUESTION + ' The neckline gapes.');
      assert.equal(await page.locator('#answer').getAttribute('aria-busy'), 'true');
      await page.getByText('Working on your latest words').waitFor();
      await until(() => held.length === 1);
      await page.locator('#text').fill('The straps slip off my shoulders.');
      await until(() => held.length === 2);
      await held[1].continue();
      await page.locator('#answer .post', { hasText: 'slip off' }).waitFor();
      await held[0].fulfill({ contentType: 'text/html', body: '<p>late</p>' }).catch(() => {});
      assert.equal(await page.locator('#answer').getAttribute('aria-busy'), 'false');
      assert.match(await page.locator('#answer .post').textContent(), /slip off/);
    }));

  test('a failure is said in words with its remedy, keeps what was typed, and mends itself', () =>
    withPage({ failing: true, viewport: PHONE }, async (page, context) => {
      await ask(page, QUESTION);
      for (const [status, words] of [[503, /Too many people/], [429, /Wait a minute/], [500, /whoever runs this service/]]) {
        await page.route('**/desk/answer', route => route.fulfill({ status, body: '' }));
        await page.locator('#text').fill(QUESTION + ' It gapes. ' + status);
        await page.locator('.verdict.failed', { hasText: words }).waitFor();
        assert.ok(await inSight(page.locator('#said')));
        assert.ok(await page.locator('#answer').evaluate(one => one.classList.contains('stale')));
        assert.equal(await page.locator('#text').inputValue(), QUESTION + ' It gapes. ' + status);
        await page.unroute('**/desk/answer');
        await page.getByRole('button', { name: 'Try again' }).click();
        await page.locator('#answer .post', { hasText: String(status) }).waitFor();
        assert.ok(await page.locator('#answer').evaluate(one => !one.classList.contains('stale')));
      }
      await context.setOffline(true);
      await page.locator('.ask > .buttons').getByRole('button', { name: 'Yes' }).click();
      await page.locator('.verdict.failed', { hasText: 'You are offline' }).waitFor();
      await context.setOffline(false);
      await page.locator('#moved', { hasText: 'yes' }).waitFor();
    }));

  test('an example is tried with one click, and gives way to a question', () =>
    withPage({ viewport: PHONE }, async page => {
      await page.goto(DESK + '/desk');
      await page.getByRole('button', { name: 'Fingers go numb' }).click();
      await page.locator('#said', { hasText: 'stop and read the warning' }).waitFor();
      assert.match(await page.locator('#text').inputValue(), /numb/);
      assert.ok(await page.locator('#examples').isHidden());
      await page.locator('#text').fill('');
      assert.ok(await page.locator('#examples').isVisible());
    }));

  test('a part of the garment is pointed at, and its sign ticked, by keyboard alone', () =>
    withPage({}, async page => {
      await page.goto(DESK + '/desk');
      const link = page.locator('.views a[href="#at-underband"]').first();
      for (let tabs = 0; !(await link.evaluate(one => one === document.activeElement)); tabs++) {
        assert.ok(tabs < 60, 'the word on the drawing is not reached by the tab key');
        await page.keyboard.press('Tab');
      }
      await page.keyboard.press('Enter');
      await page.waitForFunction(() => document.activeElement?.textContent.startsWith('Underband'));
      const box = page.locator('#at-underband input[name=seen][value=band-digs-in]');
      for (let tabs = 0; !(await box.evaluate(one => one === document.activeElement)); tabs++) {
        assert.ok(tabs < 90, 'the box is not reached by the tab key');
        await page.keyboard.press('Tab');
      }
      await page.keyboard.press('Space');
      await page.locator('#post').waitFor();
      assert.ok(await page.locator('#at-side input[name=seen][value=band-digs-in]').isChecked());
    }));

  test('how much of a sign was seen, and on which side, can be told once it is ticked', () =>
    withPage({}, async page => {
      await page.goto(DESK + '/desk#at-strap');
      const sign = page.locator('#at-strap .sign', { has: page.locator('input[name=seen][value=straps-dig-in]') });
      assert.ok(await sign.getByLabel('How much').isHidden());
      await sign.getByLabel('seen', { exact: true }).check();
      await page.locator('#post').waitFor();
      const answered = page.waitForRequest(request => request.url().endsWith('/desk/answer') && /straps-dig-in%2Fside=left/.test(request.postData()));
      await sign.getByLabel('How much').selectOption('strong');
      await sign.getByLabel('Side').selectOption('left');
      await answered;
      const next = page.waitForEvent('load');
      await page.getByRole('button', { name: 'Go on with' }).click();
      await next;
      const soFar = JSON.parse(await page.locator('input[name=soFar]').inputValue());
      assert.deepEqual(soFar.signs, [{ sign: 'straps-dig-in', seen: 'present', side: 'left', degree: 'strong' }]);
    }));

  test('what was measured and pinned is told in its own groups, by names that are offered', () =>
    withPage({}, async page => {
      await page.goto(DESK + '/desk');
      await page.getByLabel('The question, as it was written').fill('The neckline gapes.');
      const amount = page.locator('#trials-0-amount');
      assert.ok(await amount.isHidden());
      await page.getByText('What was tried, and earlier toiles').click();
      const change = page.locator('#trials-0-adjustment');
      assert.ok((await page.locator('#changes option').count()) > 20);
      await change.fill('wedge out of the neckline');
      await amount.fill('1');
      await page.locator('#trials-0-how').selectOption('pinned');
      const answered = page.waitForResponse(response => response.url().endsWith('/desk/answer') && /outcome=right/.test(decodeURIComponent(response.request().postData())));
      await page.locator('#trials-0-outcome').selectOption('right');
      await answered;
      await page.waitForFunction(() => document.getElementById('answer').textContent.includes('as it was tried and sat right, 10 mm'));
      await page.getByText('The toile, measured flat').click();
      await page.getByLabel('Underband, all round').fill('much');
      await page.locator('#answer .caution', { hasText: 'does not start with a number' }).waitFor();
      await page.getByLabel('Underband, all round').fill('68');
      await page.locator('#post').waitFor();
      const next = page.waitForEvent('load');
      await page.getByRole('button', { name: 'Go on with' }).click();
      await next;
      const soFar = JSON.parse(await page.locator('input[name=soFar]').inputValue());
      assert.deepEqual(soFar.trials, [{ adjustment: 'wedge-out-of-the-neckline', amount: '1 cm', how: 'pinned', outcome: 'right' }]);
      assert.equal(await page.getByLabel('Underband, all round').inputValue(), '68 cm');
      assert.equal(await page.locator('#trials-0-amount').inputValue(), '');
    }));

  test('a red flag stands first and no change that tightens is shown', () =>
    withPage({}, async page => {
      await page.goto(DESK + '/desk');
      await page.getByLabel('The question, as it was written').fill('The band rides up and my fingers go numb when I wear it.');
      await page.locator('#answer .caution').first().waitFor();
      assert.match(await page.locator('#answer .answer > *').first().textContent(), /stop and read this first/);
      assert.doesNotMatch(await page.locator('.change').allTextContents().then(all => all.join()), /take .* in|shorten/i);
    }));

  test('a hostile post stays text', () =>
    withPage({}, async page => {
      await page.goto(DESK + '/desk');
      const hostile = '</textarea><img src=x onerror="document.title=1"><script>document.title=2</script> the band rides up at the back {form.id}';
      await page.getByLabel('The question, as it was written').fill(hostile);
      await page.locator('.post').waitFor();
      assert.match(await page.locator('.post').textContent(), /<script>document\.title=2<\/script>/);
      const posted = page.waitForEvent('load');
      await page.evaluate(() => HTMLFormElement.prototype.submit.call(document.getElementById('fitting')));
      await posted;
      assert.equal(await page.locator('#text').inputValue(), hostile);
      assert.equal(await page.locator('.bench img:not(.marked):not([src^="/drawings/"]), .bench script').count(), 0);
      assert.match(await page.title(), /Answer a question/);
    }));
});

describe('without scripts', () => {
  const still = { javaScriptEnabled: false };

  test('a question is answered, asked on, and gone on from with the next message', () =>
    withPage(still, async page => {
      await page.goto(DESK + '/desk');
      await page.getByLabel('The question, as it was written').fill(QUESTION);
      await page.getByRole('button', { name: 'Answer' }).first().click();
      const first = await probability(page);
      await page.locator('.ask > .buttons').getByRole('button', { name: 'No' }).click();
      assert.notDeepEqual(await probability(page), first);
      const second = await probability(page);
      await page.getByRole('button', { name: 'Go on with' }).click();
      assert.equal(await page.locator('#text').inputValue(), '');
      await page.getByLabel('next message').fill('It is loose everywhere too.');
      await page.getByRole('button', { name: 'Answer' }).first().click();
      assert.notDeepEqual(await probability(page), second);
      assert.ok(await page.locator('input[name=seen][value=straps-dig-in]').first().isChecked());
    }));

  test('an example is answered, and a reply to its question taken back', () =>
    withPage(still, async page => {
      await page.goto(DESK + '/desk');
      await page.getByRole('button', { name: 'The band rides up' }).click();
      const first = await probability(page);
      assert.match(await page.locator('#said').textContent(), /Most likely|Not clear yet/);
      await page.locator('.ask > .buttons').getByRole('button', { name: 'Yes' }).click();
      assert.match(await page.locator('#moved').textContent(), /yes.*%/s);
      assert.notDeepEqual(await probability(page), first);
      await page.getByRole('button', { name: 'Take it back' }).click();
      assert.deepEqual(await probability(page), first);
    }));

  test('a sign is ticked at its part', () =>
    withPage(still, async page => {
      await page.goto(DESK + '/desk');
      await page.locator('summary', { hasText: 'Back (' }).click();
      await page.locator('#at-back input[name=seen][value=band-rides-up-at-the-back]').check();
      await page.getByRole('button', { name: 'Answer' }).first().click();
      assert.match((await probability(page))[0], /^Band/);
    }));

  test('a size is checked by filling in two girths', () =>
    withPage(still, async page => {
      await page.goto(DESK + '/desk/size');
      await page.locator('#body-bust').fill('91');
      await page.locator('#body-underbust').fill('76.5');
      await page.getByLabel('Pattern').selectOption('quillmere-top');
      await page.getByRole('button', { name: 'Which size' }).click();
      assert.match(await page.locator('#result').textContent(), /(Cut size|Likeliest size:) \d\d[A-E]/);
    }));

  test('a cloth is checked by filling in three readings', () =>
    withPage(still, async page => {
      await page.goto(DESK + '/desk/cloth');
      for (const [name, value] of [['marked', '10'], ['stretched', '17.5'], ['relaxed', '10.3']]) {
        await page.locator('#cloth-main-around-' + name).fill(value);
      }
      await page.getByRole('button', { name: 'What is it fit for' }).click();
      // (17.5 - 10) / 10
      assert.match(await page.locator('#result').textContent(), /75 %/);
    }));

  test('what to cut is planned by choosing, and a cloth half told is asked for by name', () =>
    withPage({ ...still, refused: true }, async page => {
      await page.goto(DESK + '/desk/cut');
      await page.getByRole('link', { name: 'Quillmere top' }).click();
      await page.getByLabel('Size to cut').selectOption('75C');
      await page.locator('#cloths-main-width').fill('150');
      await page.getByRole('button', { name: 'What to cut' }).click();
      assert.equal(await page.locator('#cloths-main-stretch-faults .fault').count(), 1);
      await page.locator('#cloths-main-stretch').selectOption('crosswise');
      await page.getByRole('button', { name: 'What to cut' }).click();
      assert.match(await page.locator('#result').textContent(), /To buy/);
    }));
});

describe('WCAG 2.2 AA', () => {
  test('the check tells pale words and a field without a name', () =>
    withPage({}, async page => {
      await page.goto(DESK + '/desk/size');
      await page.evaluate(() => {
        document.querySelector('h1').style.color = '#eee';
        document.querySelector('label[for=body-bust]').remove();
      });
      const told = (await offences(page)).join();
      assert.match(told, /color-contrast/);
      assert.match(told, /label: /);
    }));

  for (const colorScheme of ['light', 'dark']) {
    for (const width of [360, 1280]) {
      const options = { colorScheme, viewport: { width, height: 900 } };
      for (const path of ['/desk', '/desk/size', '/desk/cloth', '/desk/cut', '/desk/cut?sheet=quillmere-top']) {
        test(`${path} at ${width} px, ${colorScheme}`, () =>
          withPage(options, async page => {
            await page.goto(DESK + path);
            await assertUsable(page, width);
          }));
      }
      test(`an answered question at ${width} px, ${colorScheme}, everything opened`, () =>
        withPage(options, async page => {
          await page.goto(DESK + '/desk');
          await page.getByLabel('The question, as it was written').fill(QUESTION + ' Something is strange around the cups. My fingers go numb.');
          await page.locator('#post').waitFor();
          await page.evaluate(() => document.querySelectorAll('details').forEach(one => { one.open = true; }));
          await assertUsable(page, width);
        }));
      test(`a reply and a failure at ${width} px, ${colorScheme}`, () =>
        withPage({ ...options, failing: true }, async page => {
          await ask(page, QUESTION);
          await page.locator('.ask > .buttons').getByRole('button', { name: 'Yes' }).click();
          await page.locator('#moved').waitFor();
          await assertUsable(page, width);
          await page.route('**/desk/answer', route => route.fulfill({ status: 503, body: '' }));
          await page.locator('#length-long').check();
          await page.locator('.verdict.failed').waitFor();
          await page.evaluate(() => document.getElementById('answer').classList.remove('stale')); // pale on purpose
          await assertUsable(page, width);
        }));
      test(`results at ${width} px, ${colorScheme}`, () =>
        withPage(options, async page => {
          await page.goto(DESK + '/desk/size');
          await page.locator('#body-bust').fill('91');
          await page.locator('#body-underbust').fill('76.5');
          await page.getByRole('button', { name: 'Which size' }).click();
          assert.deepEqual(await offences(page), []);
          await page.goto(DESK + '/desk/cut?sheet=quillmere-top');
          for (const layer of ['main', 'lining', 'support']) {
            await page.locator(`#cloths-${layer}-width`).fill('150');
            await page.locator(`#cloths-${layer}-stretch`).selectOption('crosswise');
          }
          await page.getByRole('button', { name: 'What to cut' }).click();
          await page.locator('.plan svg').first().waitFor();
          await assertUsable(page, width);
        }));
    }
  }
});
