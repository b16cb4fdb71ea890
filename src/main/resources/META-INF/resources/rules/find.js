// Narrows the list while somebody types; the form finds more, by everyday words.
(function () {
  const box = document.getElementById('q');
  const items = Array.from(document.querySelectorAll('main li'));
  const found = new Map();
  items.forEach(function (item) {
    if (item.dataset.find) found.set(item.querySelector('a').getAttribute('href'), item.dataset.find);
  });
  box.addEventListener('input', function () {
    const words = box.value.toLowerCase().split(/\s+/).filter(Boolean);
    let left = 0;
    items.forEach(function (item) {
      const text = found.get(item.querySelector('a').getAttribute('href')) || '';
      item.hidden = !words.every(function (word) { return text.includes(word); });
      if (!item.hidden) left++;
    });
    document.querySelectorAll('main ul, main .group, main .part').forEach(function (part) {
      part.hidden = !part.querySelector('li:not([hidden])');
    });
    document.querySelectorAll('main .place .tag').forEach(function (tag) {
      tag.hidden = tag.nextElementSibling.hidden;
    });
    document.getElementById('nothing').hidden = left > 0;
  });
})();
