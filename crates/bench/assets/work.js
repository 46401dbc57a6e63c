// Work in the background: begun from a form, asked after while it goes on, its parts of the page kept as they are now.

import { back, silent } from './gone.js';
import { morph, swapped } from './swap.js';
import { say } from './words.js';

/** How long between two questions. */
const EVERY_MS = 500;
const room = document.querySelector('[data-work]');
const said = document.getElementById('said');
let timer = 0;
let latest = 0;

if (room) {
  document.addEventListener('submit', (event) => {
    const form = event.target.closest('form[data-start]');
    if (!form) return;
    event.preventDefault();
    // The page opened again, as after a new start of the bench, asks for the same.
    if ('follow' in form.dataset) remember(form);
    send(form.dataset.start || 'start', form, form);
  });
  document.addEventListener('click', ({ target }) => {
    const button = target.closest('button[data-cancel]');
    if (button) send(button.dataset.cancel || 'cancel', document.querySelector('form[data-follow]'), null);
  });
  // What is chosen is looked up at once: there may be a lay of it.
  document.addEventListener('change', ({ target }) => {
    const form = target.closest('form[data-follow]');
    if (!form) return;
    remember(form);
    look(form);
  });
  if ('running' in room.dataset) again();
}

document.addEventListener('change', ({ target }) => {
  if (!target.dataset.go) return;
  const address = new URL(location.href);
  address.searchParams.set(target.dataset.go, target.value);
  location.assign(address);
});

/** What a form says, by name; numbers of pairs and several ticks of one name become one text. */
function wordsOf(form) {
  const words = {};
  for (const [name, value] of new FormData(form)) words[name] = name in words ? `${words[name]} ${value}` : value;
  const sizes = [...form.querySelectorAll('[data-pairs]')].filter((field) => field.value.trim());
  if (sizes.length > 0) words.pairs = sizes.map((field) => `${field.dataset.pairs}=${field.value.trim()}`).join(' ');
  return words;
}

/** The address names what is chosen, so that the page can be opened again with it. */
function remember(form) {
  const address = new URL(location.href);
  for (const [name, value] of Object.entries(wordsOf(form))) address.searchParams.set(name, value);
  history.replaceState(null, '', address);
}

async function send(action, form, about) {
  const headers = { 'content-type': 'application/json', 'x-bench': '1' };
  const body = JSON.stringify(form ? wordsOf(form) : {});
  await ask(`${room.dataset.work}/${action}${location.search}`, { method: 'POST', headers, body }, about);
}

async function look(about) {
  const address = new URL(`${room.dataset.work}/work${location.search}`, location.href);
  const seen = document.getElementById('drawing')?.dataset.version;
  if (seen) address.searchParams.set('seen', seen);
  await ask(address, { headers: { 'x-bench': '1' } }, about);
}

async function ask(address, request, about) {
  clearTimeout(timer);
  latest += 1;
  const mine = latest;
  try {
    const response = await fetch(address, request);
    if (mine !== latest) return;
    back();
    const kind = response.headers.get('content-type') ?? '';
    if (kind.startsWith('application/json')) {
      take(await response.json(), about);
      return;
    }
    const page = new DOMParser().parseFromString(await response.text(), 'text/html');
    complain(about, [...page.querySelectorAll('h1, .words')].map((e) => e.textContent));
  } catch {
    if (mine !== latest) return;
    silent(placeIn(about), say('no-answer'));
    if ('running' in room.dataset) again();
  }
}

function again() {
  clearTimeout(timer);
  timer = setTimeout(() => look(null), EVERY_MS);
}

function take(answer, about) {
  const held = document.activeElement;
  for (const { id, html } of answer.fragments) {
    const holder = document.createElement('template');
    holder.innerHTML = html;
    const old = document.getElementById(id);
    const fresh = holder.content.firstElementChild;
    if (old && fresh) morph(old, fresh);
  }
  swapped();
  // A button that is gone leaves the keyboard where it can begin again.
  if (held && !held.isConnected) {
    const began = (held.dataset.cancel ?? '').replace('cancel-', '');
    document.querySelector(`form[data-start="${began}"] button[type=submit]`)?.focus({ preventScroll: true });
  }
  if (about) complain(about, answer.problems);
  if (said && said.textContent !== answer.said) said.textContent = answer.said;
  room.toggleAttribute('data-running', answer.running);
  if (answer.running) again();
}

function placeIn(form) {
  return (form ?? document).querySelector('.problem');
}

/** Says beside a form what is wrong with it; nothing when all is well. */
function complain(form, problems) {
  const place = placeIn(form);
  if (!place) return;
  place.textContent = problems.join('. ');
  place.hidden = problems.length === 0;
}
