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

  document.addEventListener('click', async function (event) {
    const button = event.target.closest('[data-copy]');
    if (!button) return;
    const box = document.getElementById(button.dataset.copy);
    try {
      await navigator.clipboard.writeText(box.value);
    } catch (refused) {
      box.select();
      document.execCommand('copy');
    }
    document.getElementById('copied').textContent = button.dataset.done;
  });

  if (!form) return;
  let timer;
  let running;

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
    if (!boxes(name, sign).length) {
      const hidden = document.createElement('input');
      Object.assign(hidden, { type: 'hidden', name: name, value: sign });
      hidden.dataset.added = '';
      form.append(hidden);
    }
  }

  async function refresh(after) {
    clearTimeout(timer);
    if (running) running.abort();
    running = new AbortController();
    const own = running;
    try {
      const response = await fetch('/desk/answer', {
        method: 'POST',
        body: new URLSearchParams(new FormData(form)),
        signal: own.signal
      });
      if (!response.ok) throw new Error(response.status);
      const page = new DOMParser().parseFromString(await response.text(), 'text/html');
      if (own.signal.aborted) return;
      const focused = document.activeElement && document.activeElement.id;
      answer.replaceChildren.apply(answer, Array.from(page.body.childNodes));
      // Told in the answer from now on, where it can be taken back.
      form.querySelectorAll('[data-added]').forEach(function (hidden) { hidden.remove(); });
      const same = focused && document.activeElement === document.body && document.getElementById(focused);
      if (same) same.focus();
      const summary = document.getElementById('summary');
      said.textContent = summary ? summary.textContent : '';
      if (after) after();
    } catch (failed) {
      if (failed.name !== 'AbortError') said.textContent = said.dataset.failed;
    }
  }

  document.addEventListener('input', function (event) {
    const field = event.target;
    if (field.form !== form) return;
    if (field.type === 'checkbox') tell(field.name, field.value, field.checked);
    clearTimeout(timer);
    timer = setTimeout(refresh, field.type === 'checkbox' || field.type === 'radio' ? 0 : 400);
  });

  form.addEventListener('submit', function (event) {
    const button = event.submitter;
    // What is kept, or gone on from, is a page of its own.
    if (button && (button.name === 'goOn' || button.hasAttribute('formaction'))) return;
    event.preventDefault();
    const answered = button && button.name;
    if (answered) tell(button.name, button.value, true);
    refresh(function () {
      const next = document.getElementById(answered ? 'question' : 'answer-title');
      (next || document.getElementById('answer-title')).focus();
    });
  });
})();
