// Keeps the answer beside the form as one types. Without it the form's own button does the same.
(function () {
  'use strict';
  const form = document.getElementById('fitting');
  const answer = document.getElementById('answer');
  const said = document.getElementById('said');
  document.documentElement.classList.add('scripted');

  function openTarget() {
    const place = location.hash.length > 1 && document.getElementById(location.hash.slice(1));
    const details = place && place.closest('details');
    if (details) {
      details.open = true;
      details.querySelector('summary').focus();
      details.scrollIntoView({ block: 'start' });
    }
  }
  window.addEventListener('hashchange', openTarget);
  // A part pointed at twice changes no address.
  document.addEventListener('click', function (event) {
    const link = event.target.closest('a[href^="#at-"]');
    if (link && link.getAttribute('href') === location.hash) openTarget();
  });
  openTarget();

  document.addEventListener('click', function (event) {
    if (event.target.closest('[data-print]')) window.print();
  });

  document.addEventListener('click', async function (event) {
    const button = event.target.closest('[data-copy]');
    if (!button) return;
    const box = document.getElementById(button.dataset.copy);
    const words = 'value' in box ? box.value : box.textContent;
    try {
      await navigator.clipboard.writeText(words);
    } catch (refused) {
      if (box.select) box.select();
      else getSelection().selectAllChildren(box);
      document.execCommand('copy');
    }
    button.parentElement.querySelector('[role="status"]').textContent = button.dataset.done;
  });

  // A smaller copy is sent, so that a telephone on the move sends it fast and the place never leaves it.
  document.addEventListener('change', async function (event) {
    const input = event.target;
    const file = input.matches('[data-photo]') && input.files[0];
    if (!file) return;
    try {
      const picture = await createImageBitmap(file, { imageOrientation: 'from-image' });
      const scale = Math.min(1, 1600 / Math.max(picture.width, picture.height));
      const canvas = document.createElement('canvas');
      canvas.width = Math.round(picture.width * scale);
      canvas.height = Math.round(picture.height * scale);
      canvas.getContext('2d').drawImage(picture, 0, 0, canvas.width, canvas.height);
      const copy = await new Promise(function (done) { canvas.toBlob(done, 'image/jpeg', 0.85); });
      if (!copy || input.files[0] !== file) return;
      const chosen = new DataTransfer();
      chosen.items.add(new File([copy], 'photo.jpg', { type: 'image/jpeg' }));
      input.files = chosen.files;
    } catch (unread) {
      // The server says what is wrong with the file.
    }
  });

  if (!form) return;
  const verdict = document.getElementById('verdict');
  const working = document.getElementById('working');
  const see = document.getElementById('see');
  const again = document.getElementById('again');
  const examples = document.getElementById('examples');
  const text = document.getElementById('text');
  let timer;
  let running;
  let offline = false;

  function boxes(name, sign) {
    return Array.from(form.elements).filter(function (box) {
      return box.name === name && box.value === sign && box.type === 'checkbox';
    });
  }

  // A sign stands at every place it is seen at, and is seen, not seen or could not be told.
  function tell(name, sign, on) {
    boxes(name, sign).forEach(function (box) { box.checked = on; });
    if (!on) return;
    ['seen', 'notSeen', 'couldNotTell'].forEach(function (other) {
      if (other !== name) boxes(other, sign).forEach(function (box) { box.checked = false; });
    });
    if (!boxes(name, sign).length) add(name, sign);
  }

  // Until the server has answered: then the answer holds it, where it can be taken back.
  function add(name, value) {
    const hidden = document.createElement('input');
    Object.assign(hidden, { type: 'hidden', name: name, value: value });
    hidden.dataset.added = '';
    form.append(hidden);
  }

  function added() {
    return Array.from(form.querySelectorAll('[data-added]'));
  }

  // The last of several replies to one question counts.
  function press(button) {
    if (button.name === 'strike' || button.name === 'putBack') return add(button.name, button.value);
    const sign = button.value.split('/').pop();
    added().forEach(function (hidden) {
      if (hidden.value.split('/').pop() === sign) hidden.remove();
    });
    answer.querySelectorAll('input[type="hidden"]').forEach(function (hidden) {
      if (hidden.value === sign) hidden.remove();
    });
    ['seen', 'notSeen', 'couldNotTell'].forEach(function (name) { tell(name, sign, false); });
    if (button.name === 'reply') {
      boxes(button.value.split('/')[0], sign).forEach(function (box) { box.checked = true; });
    }
    add(button.name, button.value);
  }

  // The strip tells the answer only while the answer itself is out of sight; it is still read out.
  if ('IntersectionObserver' in window) {
    new IntersectionObserver(function (seen) {
      verdict.classList.toggle('beside', seen[seen.length - 1].isIntersecting);
    }, { rootMargin: '0px 0px -25% 0px' }).observe(answer);
  }

  // An old answer is dimmed at once and never passes for the new one.
  function showWork(on) {
    answer.classList.toggle('stale', on);
    answer.setAttribute('aria-busy', String(on));
    working.hidden = !on;
    said.hidden = on;
    verdict.hidden = false;
    if (on) {
      verdict.classList.remove('failed');
      again.hidden = true;
      see.hidden = false;
    }
  }

  function fail(reason) {
    working.hidden = true;
    said.hidden = false;
    said.textContent = said.dataset[reason];
    answer.setAttribute('aria-busy', 'false');
    verdict.classList.add('failed');
    verdict.hidden = false;
    again.hidden = false;
    see.hidden = true;
    offline = reason === 'offline';
  }

  function reason(status) {
    const named = { 401: 'signedOut', 403: 'signedOut', 413: 'long', 422: 'long', 429: 'many', 503: 'full' };
    return named[status] || 'failed';
  }

  // What the post says of a field stands in it, paler, until somebody writes there.
  function fill() {
    const told = {};
    answer.querySelectorAll('.told').forEach(function (one) { told[one.dataset.field] = one.value; });
    Array.from(form.elements).forEach(function (field) {
      const value = told[field.name];
      if (field.tagName === 'SELECT' && field.options[0].value === '') {
        const blank = field.options[0];
        if (!blank.dataset.own) blank.dataset.own = blank.text;
        const option = Array.from(field.options).find(function (one) { return one.value === value; });
        blank.text = option && value ? option.text + ' (' + said.dataset.from + ')' : blank.dataset.own;
      } else if (field.type === 'text') {
        field.placeholder = value ? value + ' (' + said.dataset.from + ')' : '';
      }
    });
  }

  async function refresh(after) {
    clearTimeout(timer);
    if (running) running.abort();
    running = new AbortController();
    const own = running;
    showWork(true);
    try {
      const response = await fetch('/desk/answer', {
        method: 'POST',
        body: new URLSearchParams(new FormData(form)),
        signal: own.signal
      });
      if (own.signal.aborted) return;
      if (!response.ok) return fail(reason(response.status));
      const page = new DOMParser().parseFromString(await response.text(), 'text/html');
      if (own.signal.aborted) return;
      const focused = document.activeElement && document.activeElement.id;
      answer.replaceChildren.apply(answer, Array.from(page.body.childNodes));
      added().forEach(function (hidden) { hidden.remove(); });
      const same = focused && document.activeElement === document.body && document.getElementById(focused);
      if (same) same.focus();
      showWork(false);
      offline = false;
      const summary = document.getElementById('summary');
      said.textContent = summary ? summary.textContent.trim() : '';
      verdict.hidden = !said.textContent;
      fill();
      if (after) after();
    } catch (failed) {
      if (!own.signal.aborted) fail(navigator.onLine && failed.name !== 'TypeError' ? 'failed' : 'offline');
    }
  }

  function showReplies() {
    const warned = document.querySelector('#answer-title[data-first]');
    (warned || document.getElementById('moved') || document.getElementById('question') || document.getElementById('answer-title')).focus();
  }

  function showReading() {
    document.getElementById('read-title').focus({ preventScroll: true });
  }

  function showExamples() {
    if (examples) examples.hidden = text.value !== '';
  }

  document.addEventListener('input', function (event) {
    const field = event.target;
    if (field.form !== form) return;
    if (field.type === 'checkbox') tell(field.name, field.value, field.checked);
    showExamples();
    clearTimeout(timer);
    if (running) running.abort();
    showWork(true);
    timer = setTimeout(refresh, field.type === 'checkbox' || field.type === 'radio' ? 0 : 400);
  });

  document.addEventListener('submit', function (event) {
    if (!examples || !examples.contains(event.target)) return;
    event.preventDefault();
    text.value = event.target.elements.text.value;
    text.focus();
    showExamples();
    refresh();
  });

  form.addEventListener('submit', function (event) {
    const button = event.submitter;
    // What is kept, or gone on from, is a page of its own.
    if (button && (button.name === 'goOn' || button.hasAttribute('formaction'))) {
      if (!navigator.onLine) {
        event.preventDefault();
        fail('offline');
      }
      return;
    }
    event.preventDefault();
    if (button && button.name) {
      const place = button.closest('.marks');
      press(button);
      refresh(place ? showReading : showReplies);
    } else {
      refresh(function () { document.getElementById('answer-title').focus(); });
    }
  });

  again.addEventListener('click', function () { refresh(); });
  window.addEventListener('online', function () {
    if (offline) refresh();
  });

  // Whoever types before this script has come is answered all the same.
  const typed = Array.from(form.elements).some(function (field) {
    return field.type === 'textarea' && field.value !== field.defaultValue;
  });
  showExamples();
  fill();
  if (typed) refresh();
})();
