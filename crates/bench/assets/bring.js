// A pattern of the maker's own: the file is sent with every question about it and kept nowhere else.

import { complain, submit } from './forms.js';
import { silent } from './gone.js';
import { say } from './words.js';

const form = document.getElementById('bring');
const chosen = document.getElementById('pattern');
const PAUSE_MS = 250;
let asking = 0;
let waiting;

/** What the page says about the file and the style. */
function fields() {
  const said = new URLSearchParams();
  for (const [name, value] of new FormData(form)) if (typeof value === 'string') said.append(name, value);
  said.set('file', chosen.files[0]?.name ?? '');
  for (const which of document.querySelectorAll('#found [data-which]')) {
    if (which.value) said.append('piece', `${which.value}=${which.closest('[data-piece]').dataset.piece}`);
  }
  for (const corners of document.querySelectorAll('#found [data-corners]')) {
    if (corners.value.trim()) said.append('corners', `${corners.dataset.corners}=${corners.value}`);
  }
  return said;
}

async function sent(action) {
  return fetch(`/bring/${action}?${fields()}`, {
    method: 'POST',
    headers: { 'content-type': 'application/octet-stream' },
    body: chosen.files[0],
  });
}

/** Looks at the file again with what is said now. */
async function look() {
  if (!chosen.files[0]) return;
  asking += 1;
  const mine = asking;
  const opened = new Set([...document.querySelectorAll('#found details[open]')].map((e) => e.closest('[data-piece]').dataset.piece));
  const held = document.activeElement?.closest('#found [data-piece]')?.dataset.piece;
  let html;
  try {
    const response = await sent('look');
    html = await response.text();
  } catch {
    silent(form.querySelector('.sending .problem'), say('no-answer'));
    return;
  }
  if (mine !== asking) return;
  complain(form, []);
  const page = new DOMParser().parseFromString(html, 'text/html');
  const found = page.getElementById('found');
  if (!found) {
    complain(form, [...page.querySelectorAll('h1, .words')].map((e) => e.textContent));
    return;
  }
  document.getElementById('found').replaceWith(found);
  for (const piece of found.querySelectorAll('[data-piece]')) {
    if (opened.has(piece.dataset.piece)) piece.querySelector('details')?.setAttribute('open', '');
    if (piece.dataset.piece === held) piece.querySelector('[data-which]')?.focus();
  }
}

document.addEventListener('change', ({ target }) => {
  if (!target.closest('#bring, #found') || ['name', 'code', 'label', 'figure', 'fit'].includes(target.name)) return;
  // What was said of another file's pieces says nothing of this one's.
  if (target === chosen) document.getElementById('found').replaceChildren();
  clearTimeout(waiting);
  waiting = setTimeout(look, target === chosen ? 0 : PAUSE_MS);
});

// Enter in what is said of the file looks at it again; only the style's own fields make the style.
document.addEventListener('keydown', (event) => {
  const { target } = event;
  if (event.key !== 'Enter' || !target.matches('input[type=text]') || ['name', 'code', 'label'].includes(target.name)) return;
  event.preventDefault();
  look();
});

form.addEventListener('submit', (event) => {
  event.preventDefault();
  submit(form, () => sent('make'));
});
