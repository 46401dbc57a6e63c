// One small protocol: a request answers with the fragments of the page that are now different, by id.

import { back, gone, locked } from './gone.js';
import { say } from './words.js';

const bench = document.getElementById('bench');
/** The mark of each part as the page has it, so that it is not sent again. */
const shown = new Map();
const after = [];
let queue = Promise.resolve();

/** Fields being typed into, whose text is not the file's yet. */
export const typing = new WeakSet();

/** Calls a function now and after every swap. @param {() => void} call */
export function whenSwapped(call) {
  after.push(call);
  call();
}

/** Tells everybody who asked that parts of the page are new. */
export function swapped() {
  for (const call of after) call();
}

/**
 * Asks the bench for something, after everything asked before, and puts the answer into the page.
 * @param {'fragments'|'edit'|'undo'|'redo'|'reload'|'mark'} action
 * @param {object|(() => object)} [body] what a change carries besides the revision; a function tells it when its turn comes
 * @param {HTMLElement} [about] the field or button it came from
 */
export function ask(action, body, about) {
  const sent = about?.value;
  queue = queue.then(() => send(action, body, about, sent)).catch(() => lost(about));
  return queue;
}

/** Done when everything asked so far is answered: links then say what they mean for the page as it is. */
export function answered() {
  return queue;
}

async function send(action, body, about, sent) {
  bench.setAttribute('aria-busy', 'true');
  // Cloths are the collection's: their changes are meant for another file than the style's.
  if (typeof body === 'function') body = body();
  const ofCloths = body?.edits?.length > 0 && body.edits.every(({ path }) => path.startsWith('cloths.'));
  if (ofCloths) action = 'cloths';
  try {
    const address = `${bench.dataset.path}/${action}${location.search}`;
    const have = [...shown].map(([id, mark]) => `${id}=${mark}`).join(',');
    const headers = { 'x-bench': '1', 'x-have': have };
    let request = { headers };
    if (action !== 'fragments') {
      headers['content-type'] = 'application/json';
      const meant = ofCloths ? { held: document.getElementById('cloth').dataset.held } : { revision: bench.dataset.revision };
      const carried = { ...meant, ...body };
      request = { method: 'POST', headers, body: JSON.stringify(carried) };
    }
    const response = await fetch(address, request);
    if (response.status === 403 && locked()) return;
    const kind = response.headers.get('content-type') ?? '';
    if (!kind.startsWith('application/json')) {
      const page = new DOMParser().parseFromString(await response.text(), 'text/html');
      announce([...page.querySelectorAll('h1, .words')].map((e) => e.textContent).join('. '));
      return;
    }
    take(await response.json(), about, sent);
  } finally {
    bench.removeAttribute('aria-busy');
  }
}

function take(answer, about, sent) {
  bench.dataset.revision = answer.revision;
  if (about && answer.problems.length === 0) settle(about);
  // What was typed and not written stays in its field, also where the file says something else by now.
  if (isTyped(about) && (answer.problems.length > 0 || about.value !== sent)) typing.add(about);
  if (answer.reset) {
    for (const field of document.querySelectorAll('[aria-invalid]')) settle(field);
  }
  const held = document.activeElement;
  for (const { id, mark, html } of answer.fragments) {
    shown.set(id, mark);
    const holder = document.createElement('template');
    holder.innerHTML = html;
    const old = document.getElementById(id);
    const fresh = holder.content.firstElementChild;
    if (old && fresh) morph(old, fresh, answer.reset);
  }
  if (answer.problems.length > 0) complain(about, answer.problems);
  swapped();
  if (!held?.isConnected) again(held)?.focus({ preventScroll: true });
  if (back()) announce(say('answers-again'));
}

/** Whether something is a field that words are typed into. */
function isTyped(about) {
  return Boolean(about?.dataset.path) && about.matches('input[type=text]');
}

/** What takes the place of something that was replaced. @param {Element|null} gone */
function again(gone) {
  const { grip, mark } = gone?.dataset ?? {};
  if (grip) return document.querySelector(`[data-grip="${CSS.escape(grip)}"]`);
  if (mark) return document.querySelector(`[data-mark="${CSS.escape(mark)}"]`);
  return gone?.id ? document.getElementById(gone.id) : null;
}

/** The bench is not there; a field keeps what was typed. */
function lost(about) {
  if (isTyped(about)) {
    typing.add(about);
    complain(about, [say('press-enter-again')]);
  }
  shown.delete('notice');
  gone(() => ask('fragments'));
}

/** Says something at the foot of the page, where it is read out. @param {string} words */
export function announce(words) {
  const place = document.querySelector('#history [role=status]');
  if (place) place.textContent = words;
  shown.delete('history');
}

function problemPlace(field) {
  return field.closest('.measure, .seam, .group, .dim')?.querySelector('.problem') ?? null;
}

/** A field is as the file says again. @param {HTMLElement} field */
export function settle(field) {
  typing.delete(field);
  const place = problemPlace(field);
  const told = place ? document.querySelectorAll(`[aria-describedby="${CSS.escape(place.id)}"]`) : [];
  for (const each of [field, ...told]) {
    each.removeAttribute('aria-invalid');
    each.removeAttribute('aria-describedby');
  }
  if (place) {
    place.hidden = true;
    place.textContent = '';
  }
}

/** Says beside a field what is in the way. @param {HTMLElement} field @param {string[]} problems */
export function complain(field, problems) {
  const place = field && problemPlace(field);
  if (!place || !field.dataset.path) {
    announce(problems.join('. '));
    return;
  }
  place.textContent = problems.map((line) => line.charAt(0).toUpperCase() + line.slice(1)).join('. ');
  place.hidden = false;
  place.scrollIntoView({ block: 'nearest' });
  field.setAttribute('aria-invalid', 'true');
  field.setAttribute('aria-describedby', place.id);
  announce(say('not-changed', { problems: place.textContent }));
}

// What belongs to the reader of the page, not to the file.
const OWN = new Set(['aria-invalid', 'aria-describedby']);

/** Makes a part of the page like a fresh one, node by node. */
export function morph(old, fresh, reset) {
  if (old.nodeType !== Node.ELEMENT_NODE) {
    if (old.nodeValue !== fresh.nodeValue) old.nodeValue = fresh.nodeValue;
    return;
  }
  if ('keep' in (old.dataset ?? {})) return;
  const same = !reset && 'same' in (old.dataset ?? {}) && old.dataset.same === fresh.dataset.same;
  const kept = (name) => OWN.has(name) || (name === 'open' && old.tagName === 'DETAILS');
  for (const { name } of [...old.attributes]) {
    if (!fresh.hasAttribute(name) && !kept(name)) old.removeAttribute(name);
  }
  for (const { name, value } of fresh.attributes) {
    if (old.getAttribute(name) !== value && !kept(name)) old.setAttribute(name, value);
  }
  if ('whole' in (old.dataset ?? {})) {
    old.replaceChildren(...fresh.childNodes);
    return;
  }
  if (same) return;
  children(old, fresh, reset);
  const busy = typing.has(old) || old.hasAttribute('aria-invalid');
  if (old.tagName === 'INPUT' && (reset || !busy)) {
    if (old.type === 'text') old.value = old.getAttribute('value') ?? '';
    else old.checked = old.hasAttribute('checked');
  }
  if (old.tagName === 'SELECT' && (reset || !busy)) {
    const chosen = [...old.options].findIndex((option) => option.hasAttribute('selected'));
    old.selectedIndex = Math.max(chosen, 0);
  }
}

function children(old, fresh, reset) {
  let at = old.firstChild;
  for (const want of [...fresh.childNodes]) {
    const match = partner(at, want);
    if (!match) {
      old.insertBefore(want, at);
      continue;
    }
    while (at !== match) {
      const gone = at;
      at = at.nextSibling;
      gone.remove();
    }
    morph(match, want, reset);
    at = match.nextSibling;
  }
  while (at) {
    const gone = at;
    at = at.nextSibling;
    gone.remove();
  }
}

function partner(at, want) {
  if (want.id) {
    for (let node = at; node; node = node.nextSibling) if (node.id === want.id) return node;
    return null;
  }
  return at && at.nodeName === want.nodeName && !at.id ? at : null;
}
