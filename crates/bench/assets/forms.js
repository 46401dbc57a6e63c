// Forms of a page of their own: what is filled in is sent as one piece, and the answer says where to go on or what is in the way.

import { silent } from './gone.js';
import { say } from './words.js';

/** What a form holds: a text by each name, a list where a name may be there several times. @param {HTMLFormElement} form */
function filled(form) {
  const told = {};
  for (const field of form.querySelectorAll('input[data-list]')) told[field.name] ??= [];
  for (const [name, value] of new FormData(form)) {
    if (typeof value !== 'string') continue;
    if (Array.isArray(told[name])) told[name].push(value);
    else told[name] = value;
  }
  return told;
}

/** Says in a form what is in the way. @param {HTMLFormElement} form @param {string[]} lines */
export function complain(form, lines) {
  const place = form.querySelector('.sending .problem');
  place.textContent = lines.map((line) => line.charAt(0).toUpperCase() + line.slice(1)).join('. ');
  place.hidden = lines.length === 0;
  if (lines.length > 0) place.scrollIntoView({ block: 'nearest' });
}

/**
 * Reads an answer: `to` says where to go on, `problems` what is in the way.
 * @param {Response} response
 */
export async function answered(response) {
  const kind = response.headers.get('content-type') ?? '';
  if (kind.startsWith('application/json')) return response.json();
  const page = new DOMParser().parseFromString(await response.text(), 'text/html');
  return { problems: [...page.querySelectorAll('h1, .words')].map((e) => e.textContent) };
}

/**
 * Sends a form once, goes on where the answer says, or says in the form what is in the way.
 * @param {HTMLFormElement} form
 * @param {() => Promise<Response>} sent
 */
export async function submit(form, sent) {
  const button = form.querySelector('button[type=submit]');
  button.disabled = true;
  complain(form, []);
  try {
    const told = await answered(await sent());
    if (told.to) location.assign(told.to);
    complain(form, told.problems ?? []);
  } catch {
    silent(form.querySelector('.sending .problem'), say('no-answer-unmade'));
  }
  button.disabled = false;
}

document.addEventListener('submit', (event) => {
  const form = event.target.closest('form[data-send]');
  if (!form) return;
  event.preventDefault();
  const headers = { 'content-type': 'application/json' };
  submit(form, () => fetch(form.dataset.send, { method: 'POST', headers, body: JSON.stringify(filled(form)) }));
});
