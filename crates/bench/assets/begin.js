// The questions before a style: pictures follow the answers, and the cloth says whether it has an edge to show.

import './forms.js';

const form = document.getElementById('begin');
const ANSWERS = ['figure', 'fit', 'leg', 'outseam', 'shell', 'taste'];

/** Draws every picture anew that the answers change. */
function follow() {
  const given = new FormData(form);
  for (const image of document.querySelectorAll('img[data-of]')) {
    const address = new URLSearchParams({ of: image.dataset.of });
    for (const name of ANSWERS) if (given.get(name)) address.set(name, given.get(name));
    for (const [name, value] of new URLSearchParams(image.dataset.own ?? '')) address.set(name, value);
    const src = `/new/picture.svg?${address}`;
    if (image.getAttribute('src') !== src) image.src = src;
  }
}

/** Only a cloth with an edge of its own can have the outseam on it. */
function edge() {
  const shell = form.querySelector('[name=shell]:checked');
  const has = !shell || 'edge' in shell.dataset;
  const straight = form.querySelector('[name=outseam][value=straight]');
  const was = straight.disabled;
  straight.disabled = !has;
  document.querySelector('[data-no-edge]').hidden = has;
  if (has && was) straight.checked = true;
  if (!has && straight.checked) form.querySelector('[name=outseam][value=shaped]').checked = true;
}

form.addEventListener('change', ({ target }) => {
  if (!ANSWERS.includes(target.name)) return;
  if (target.name === 'shell') edge();
  follow();
});
