// What every page does: the key of the session leaves the address, and what is named beside a link does as it does.

import { say } from './words.js';

// The key came in the address and is a cookie now; it need not stay in view or in the history.
const here = new URL(location.href);
if (here.searchParams.has('key') || here.searchParams.has('once')) {
  here.searchParams.delete('key');
  here.searchParams.delete('once');
  history.replaceState(null, '', here);
}

const list = document.getElementById('keys');

/** What a key is called in the list. */
const CALLED = { Control: say('key-control'), Shift: say('key-shift'), ArrowUp: '↑', ArrowDown: '↓', ArrowLeft: '←', ArrowRight: '→' };

document.addEventListener('keydown', (event) => {
  if (event.ctrlKey || event.metaKey || event.altKey || event.target.closest('input, select, textarea, dialog')) return;
  const named = document.querySelector(`[aria-keyshortcuts="${CSS.escape(event.key.toLowerCase())}"]`);
  if (named) {
    event.preventDefault();
    named.click();
  } else if (event.key === '?') {
    event.preventDefault();
    showKeys();
  }
});

document.addEventListener('click', ({ target }) => {
  if (target.closest('[data-keys]')) showKeys();
  // Beside the list is out of it.
  else if (target === list) list.close();
});

/** Lists what the page itself says of its keys: element by element, then of things that are many. */
function showKeys() {
  if (!list || list.open) return;
  const own = [...document.querySelectorAll('[aria-keyshortcuts]')].map((named) => {
    const row = document.createElement('div');
    const what = document.createElement('dt');
    what.textContent = named.dataset.does ?? (named.getAttribute('aria-label') || nameOf(named));
    const keys = document.createElement('dd');
    for (const chord of named.getAttribute('aria-keyshortcuts').split(' ')) keys.append(...chordOf(chord));
    row.append(what, keys);
    row.className = 'own';
    return row;
  });
  const rows = list.querySelector('dl');
  for (const old of rows.querySelectorAll('.own')) old.remove();
  const more = document.getElementById('more-keys')?.content.cloneNode(true);
  for (const row of more?.children ?? []) row.className = 'own';
  rows.prepend(...own, more ?? '');
  list.showModal();
  // Its button has the focus, and would scroll a long list to its end.
  list.scrollTop = 0;
}

/** The words of an element, without the key that may stand among them. */
function nameOf(named) {
  const copy = named.cloneNode(true);
  for (const key of copy.querySelectorAll('kbd')) key.remove();
  return copy.textContent.trim();
}

function chordOf(chord) {
  return (chord === '+' ? [chord] : chord.split('+')).flatMap((part, index) => {
    const key = document.createElement('kbd');
    key.textContent = CALLED[part] ?? part;
    return index === 0 ? [' ', key] : [key];
  });
}
