// One small protocol: a request answers with the fragments of the page that are now different, by id.

import { back, gone, locked } from './gone.js';
import { say } from './words.js';

const bench = document.getElementById('bench');
/** The mark of each part as the page has it, so that it is not sent again. */
const shown = new Map();
const after = [];
let queue = Promise.resolve();
let asked = 0;

/** Calls a function now and after every swap, then with the answer. @param {(answer?: object) => void} call */
export function whenSwapped(call) {
  after.push(call);
  call();
}

/** Tells everybody who asked that parts of the page are new. */
export function swapped(answer) {
  for (const call of after) call(answer);
}

/**
 * Who asked, told before others are: `done` with what is in the way, nothing where all is well; `lost` where nobody answered.
 * @typedef {{done?: (problems: string[]) => void, lost?: () => void}} Told
 */

/**
 * Asks the bench for something, after everything asked before, and puts the answer into the page.
 * @param {'fragments'|'edit'|'undo'|'redo'|'reload'|'mark'} action
 * @param {object|(() => object)} [body] what a change carries, made when its turn comes; `meant` are the versions it is meant
 *   for, those the page then shows where it says none
 * @param {Told} [told]
 */
export function ask(action, body, told = {}) {
  asked += 1;
  queue = queue.then(() => send(action, typeof body === 'function' ? body() : body, told)).catch(() => lost(told)).finally(() => {
    asked -= 1;
  });
  return queue;
}

/** Done when everything asked so far is answered: links then say what they mean for the page as it is. */
export function answered() {
  return queue;
}

/** Whether something asked is not answered yet. */
export function asking() {
  return asked > 0;
}

async function send(action, body, told) {
  bench.setAttribute('aria-busy', 'true');
  // Cloths are the collection's: their changes are meant for another file than the style's.
  const ofCloths = body?.edits?.length > 0 && body.edits.every(({ path }) => path.startsWith('cloths.'));
  if (ofCloths) action = 'cloths';
  try {
    const address = `${bench.dataset.path}/${action}${location.search}`;
    const have = [...shown].map(([id, mark]) => `${id}=${mark}`).join(',');
    const headers = { 'x-bench': '1', 'x-have': have };
    let request = { headers };
    if (action !== 'fragments') {
      headers['content-type'] = 'application/json';
      const { meant, ...change } = body ?? {};
      const carried = ofCloths ? { held: meant?.held ?? document.getElementById('cloth').dataset.held } : { revision: meant?.revision ?? bench.dataset.revision };
      request = { method: 'POST', headers, body: JSON.stringify({ ...carried, ...change }) };
    }
    const response = await fetch(address, request);
    if (response.status === 403 && locked()) {
      told.lost?.();
      return;
    }
    const kind = response.headers.get('content-type') ?? '';
    if (!kind.startsWith('application/json')) {
      const page = new DOMParser().parseFromString(await response.text(), 'text/html');
      const problems = [...page.querySelectorAll('h1, .words')].map((e) => e.textContent);
      told.done?.(problems);
      announce(problems.join('. '));
      return;
    }
    take(await response.json(), told);
  } finally {
    bench.removeAttribute('aria-busy');
  }
}

function take(answer, told) {
  bench.dataset.revision = answer.revision;
  bench.dataset.stand = answer.stand;
  const held = document.activeElement;
  for (const { id, mark, html } of answer.fragments) {
    shown.set(id, mark);
    const holder = document.createElement('template');
    holder.innerHTML = html;
    const old = document.getElementById(id);
    const fresh = holder.content.firstElementChild;
    if (old && fresh) morph(old, fresh);
  }
  if (told.done) told.done(answer.problems);
  else if (answer.problems.length > 0) announce(answer.problems.join('. '));
  swapped(answer);
  if (!held?.isConnected) again(held)?.focus({ preventScroll: true });
  if (back()) announce(say('answers-again'));
}

/** What takes the place of something that was replaced. @param {Element|null} gone */
function again(gone) {
  const { grip, mark } = gone?.dataset ?? {};
  if (grip) return document.querySelector(`[data-grip="${CSS.escape(grip)}"]`);
  if (mark) return document.querySelector(`[data-mark="${CSS.escape(mark)}"]`);
  return gone?.id ? document.getElementById(gone.id) : null;
}

/** The bench is not there: that is said, and it is asked again until it is. */
function lost(told) {
  told.lost?.();
  shown.delete('notice');
  gone(() => ask('fragments'));
}

/** Says something at the foot of the page, where it is read out. @param {string} words */
export function announce(words) {
  const place = document.querySelector('#history [role=status]');
  if (place) place.textContent = words;
  shown.delete('history');
}

// What belongs to the reader of the page, not to the file.
const OWN = new Set(['aria-invalid', 'aria-describedby', 'aria-busy']);

/**
 * Makes a part of the page like a fresh one, node by node. What a field shows is left to whoever knows whose words they are:
 * fields.js for those of the file; a text that is asked for besides is the maker's until it is used.
 */
export function morph(old, fresh) {
  if (old.nodeType !== Node.ELEMENT_NODE) {
    if (old.nodeValue !== fresh.nodeValue) old.nodeValue = fresh.nodeValue;
    return;
  }
  if ('keep' in (old.dataset ?? {})) return;
  const same = 'same' in (old.dataset ?? {}) && old.dataset.same === fresh.dataset.same;
  const kept = (name) => OWN.has(name) || (name === 'open' && old.tagName === 'DETAILS');
  for (const { name } of [...old.attributes]) {
    if (!fresh.hasAttribute(name) && !kept(name)) old.removeAttribute(name);
  }
  for (const { name, value } of fresh.attributes) {
    if (old.getAttribute(name) !== value && !kept(name)) old.setAttribute(name, value);
  }
  if (same) return;
  if ('whole' in (old.dataset ?? {})) whole(old, fresh);
  else children(old, fresh);
  if (old.tagName === 'SELECT' && 'see' in old.dataset) {
    const chosen = [...old.options].findIndex((option) => option.hasAttribute('selected'));
    old.selectedIndex = Math.max(chosen, 0);
  }
}

/** A drawing is put in as a whole, but for what has a name of its own in it: fields that may be typed into. */
function whole(old, fresh) {
  let at = old.firstChild;
  for (const want of [...fresh.childNodes]) {
    const match = want.id ? [...old.childNodes].find(({ id }) => id === want.id) : null;
    if (match) {
      clear(at, match);
      morph(match, want);
      at = match.nextSibling;
    } else old.insertBefore(want, at);
  }
  clear(at, null);
}

/** Takes out everything from one node up to another. */
function clear(at, end) {
  while (at && at !== end) {
    const gone = at;
    at = at.nextSibling;
    gone.remove();
  }
}

function children(old, fresh) {
  let at = old.firstChild;
  for (const want of [...fresh.childNodes]) {
    const match = partner(at, want);
    if (!match) {
      old.insertBefore(want, at);
      continue;
    }
    clear(at, match);
    morph(match, want);
    at = match.nextSibling;
  }
  clear(at, null);
}

/** The node that becomes like another: of the same name, where it has one, or the same finding, whatever its number is now. */
function partner(at, want) {
  const name = (node) => node.dataset?.key ?? node.id;
  if (name(want)) {
    for (let node = at; node; node = node.nextSibling) if (name(node) === name(want)) return node;
    return null;
  }
  return at && at.nodeName === want.nodeName && !name(at) ? at : null;
}
