// Fields: what is typed or chosen becomes an edit when it is done, not before; at rest a field shows what the file holds.

import { Entry } from './entry.js';
import { announce, ask, whenSwapped } from './swap.js';
import { nudged } from './nudge.js';
import { say } from './words.js';

/** How long after the last arrow key a nudged value is sent. */
const PAUSE_MS = 120;
const FIELDS = 'input[data-path], select[data-path]';
const bench = document.getElementById('bench');
const waiting = new Map();
/** Every field that is or was the maker's, by its key. @type {Map<string, Entry>} */
const entries = new Map();

/** The fields of one value: ticks of a list and pictures of a choice are several. */
const isMany = (field) => field.type === 'radio' || field.dataset.kind === 'list';
const keyOf = (field) => (isMany(field) ? `${field.type} ${field.dataset.path}` : field.id);

function fieldsOf(key) {
  const [type, path] = key.split(' ');
  if (path === undefined) return [document.getElementById(key)].filter(Boolean);
  return [...document.querySelectorAll(`input[type="${type}"][data-path="${CSS.escape(path)}"]`)];
}

function entryOf(field) {
  const key = keyOf(field);
  if (!entries.has(key)) entries.set(key, new Entry());
  return entries.get(key);
}

function isTyped(field) {
  return field instanceof HTMLInputElement && field.type === 'text' && 'path' in field.dataset;
}

/** What a value is by the ticks, options or words that `on` and `words` tell of. */
function valueOf([field, ...more], words, on) {
  if (field.tagName === 'SELECT') return ([...field.options].find(on) ?? field.options[0])?.value ?? '';
  if (field.type === 'radio') return [field, ...more].find(on)?.value ?? '';
  if (field.dataset.kind === 'list') return JSON.stringify([field, ...more].filter(on).map((each) => each.value));
  return field.type === 'checkbox' ? String(on(field)) : words(field);
}

/** What the file holds, as the page has it: its attributes. */
const heldIn = (fields) => valueOf(fields, (field) => field.getAttribute('value') ?? '', (one) => one.hasAttribute('checked') || one.hasAttribute('selected'));
/** What is to be seen. */
const shownIn = (fields) => valueOf(fields, (field) => field.value, (one) => (one instanceof HTMLOptionElement ? one.selected : one.checked));

function show(fields, value) {
  if (shownIn(fields) === value) return;
  for (const field of fields) {
    if (isTyped(field) || field.tagName === 'SELECT') field.value = value;
    else if (field.type === 'radio') field.checked = field.value === value;
    else field.checked = field.dataset.kind === 'list' ? JSON.parse(value).includes(field.value) : value === 'true';
    // The next letter takes the place of words that came from elsewhere; among them it would make a third text.
    if (isTyped(field) && field === document.activeElement) field.select();
  }
}

/** The versions of the files that the page shows. */
function versions() {
  return { revision: bench.dataset.revision, held: document.getElementById('cloth')?.dataset.held };
}

function put(field) {
  const fields = fieldsOf(keyOf(field));
  entryOf(field).put(shownIn(fields), heldIn(fields), versions());
}

/** Sends what a field shows, when that is not what the file holds. */
function commit(field) {
  clearTimeout(waiting.get(field.id));
  const key = keyOf(field);
  const fields = fieldsOf(key);
  const entry = entries.get(key);
  if (!entry) return;
  const { edits } = (field.selectedOptions?.[0] ?? field).dataset;
  const value = isTyped(field) ? field.value.trim() : shownIn(fields);
  if (isTyped(field) && entry.own && entry.shown !== value) {
    entry.shown = value;
    field.value = value;
  }
  const wanted = { value, edits: edits ? JSON.parse(edits) : [editOf(field, value)] };
  send(key, entry.commit(wanted, heldIn(fields)));
  mark(key);
}

/** Sends something, and what is typed meanwhile after its answer. */
function send(key, wanted) {
  if (!wanted) return;
  const entry = entries.get(key);
  const after = (next) => {
    for (const [other, { own }] of entries) {
      // What one field said is known in the other field of the same value.
      if (own && other !== key && fieldsOf(other)[0]?.dataset.path === fieldsOf(key)[0]?.dataset.path) {
        Object.assign(entries.get(other), { seen: heldIn(fieldsOf(other)), versions: versions() });
      }
    }
    send(key, next);
  };
  const held = () => (fieldsOf(key).length > 0 ? heldIn(fieldsOf(key)) : wanted.value);
  ask('edit', () => ({ edits: wanted.edits, meant: entry.versions }), {
    done: (problems) => {
      if (problems.length === 0) after(entry.taken(held(), versions()));
      else {
        send(key, entry.turned(problems, held(), versions()));
        announce(say('not-changed', { problems: problems.map(capital).join('. ') }));
      }
    },
    lost: () => {
      const [field] = fieldsOf(key);
      entry.unanswered([isTyped(field) ? say('not-answered') : say('choose-again')], isTyped(field));
      if (field && !entry.own) show(fieldsOf(key), heldIn(fieldsOf(key)));
      mark(key);
    },
  });
}

/** The one change a field stands for. */
function editOf(field, value) {
  const { path, kind } = field.dataset;
  if (kind === 'flag') return { edit: 'set', path, value: value === 'true' };
  if (kind === 'list') {
    const all = JSON.parse(value);
    return all.length > 0 ? { edit: 'set', path, value: all } : { edit: 'remove', path };
  }
  const may = field.tagName === 'SELECT' || 'optional' in field.dataset;
  if (value === '' && may) return { edit: 'remove', path };
  return { edit: 'set', path, value: kind === 'whole' && /^\d{1,9}$/.test(value) ? Number(value) : value };
}

/** Every field as it stands: the file's own words at rest, the maker's while they are not answered. */
function settle(answer) {
  const keys = new Set([...document.querySelectorAll(FIELDS)].map(keyOf));
  for (const key of keys) {
    const fields = fieldsOf(key);
    const entry = entries.get(key);
    // What was taken back or made again is no longer what was refused.
    if (answer?.reset && entry && !entry.own) entry.rest();
    entry?.follow(heldIn(fields), versions());
    show(fields, entry?.own ? entry.shown : heldIn(fields));
    if (entry) mark(key);
  }
  for (const [key, entry] of entries) {
    if (keys.has(key) || entry.busy) continue;
    if (entry.own && entry.shown) announce(say('field-gone', { typed: entry.shown }));
    entries.delete(key);
  }
}

function placeOf(field) {
  return field?.closest('.measure, .seam, .group, .dim')?.querySelector('.problem[data-keep]') ?? null;
}

/** Marks a field as busy or refused, and says beside it what is in the way. */
function mark(key) {
  const entry = entries.get(key);
  const fields = fieldsOf(key);
  const lines = entry.lost && entry.own ? [say('not-in-the-file')] : [];
  if (entry.refused) lines.push(refusal(fields, entry.refused));
  for (const field of fields) {
    if (entry.busy) field.setAttribute('aria-busy', 'true');
    else field.removeAttribute('aria-busy');
  }
  write(fields, key, lines, entry.refused);
}

/** What was not taken, and why. */
function refusal([field], { value, why }) {
  const problems = why.map((line) => `${capital(line).replace(/\.$/, '')}.`).join(' ');
  return isTyped(field) && value !== '' ? `${say('not-taken', { typed: value })} ${problems}` : problems;
}

/** Writes beside fields what there is to say of them, in place of what was said of them before. */
function write(fields, key, lines, refused) {
  const place = placeOf(fields[0]);
  if (!place) return;
  const old = [...place.children].find((line) => line.dataset.of === key);
  const words = lines.map(capital).join(' ');
  if ((old?.firstChild?.textContent ?? '') === words) return;
  old?.remove();
  if (words) {
    const line = document.createElement('span');
    line.dataset.of = key;
    line.id = `said-${key.replace(' ', '-')}`;
    line.append(words);
    if (isTyped(fields[0]) && refused?.value) line.append(' ', Object.assign(document.createElement('button'), { type: 'button', className: 'plain', textContent: say('take-up-again') }));
    place.append(line);
  }
  place.hidden = place.children.length === 0;
  for (const field of fields) {
    for (const [name, value] of [['aria-invalid', 'true'], ['aria-describedby', `said-${key.replace(' ', '-')}`]]) {
      if (words) field.setAttribute(name, value);
      else field.removeAttribute(name);
    }
  }
  if (words) place.scrollIntoView({ block: 'nearest' });
}

/** Says beside a field what kept something from becoming its value. @param {HTMLElement} field @param {string[]} problems */
export function complain(field, problems) {
  if (field) write([field], keyOf(field), problems, null);
  if (problems.length > 0) announce(say('not-changed', { problems: problems.map(capital).join('. ') }));
}

function capital(words) {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Shows what the file holds again. */
function revert(field) {
  const entry = entries.get(keyOf(field));
  if (!entry) return;
  entry.revert();
  show([field], entry.own ? entry.shown : heldIn([field]));
  mark(keyOf(field));
}

/** Whether something that was typed or chosen is not answered yet. */
export function underWay() {
  return [...entries.values()].some(({ busy }) => busy);
}

/** Whether a field holds text that the file does not. @param {Element|null} field */
export function unsaved(field) {
  return isTyped(field) && ['typed', 'again'].includes(entries.get(keyOf(field))?.state);
}

if (bench) {
  // What was typed before this was heard is the maker's; what the browser put back from an earlier visit is not.
  if (isTyped(document.activeElement) && document.activeElement.value !== document.activeElement.getAttribute('value')) put(document.activeElement);
  whenSwapped(settle);

  document.addEventListener('input', ({ target }) => {
    if (isTyped(target)) put(target);
  });

  document.addEventListener('change', ({ target }) => {
    if (!target.matches(FIELDS)) return;
    if (!isTyped(target)) put(target);
    commit(target);
  });

  // Left as it was before, or typed back, it makes no change that is heard.
  document.addEventListener('focusout', ({ target }) => {
    if (isTyped(target) && target.isConnected && !entries.get(keyOf(target))?.lost) commit(target);
  });

  document.addEventListener('keydown', (event) => {
    const field = event.target;
    if (!isTyped(field)) return;
    if (event.key === 'Enter') {
      commit(field);
      // Whoever types on means another value, not more letters of this one.
      field.select();
    } else if (event.key === 'Escape') revert(field);
    else if (event.key === 'ArrowUp' || event.key === 'ArrowDown') nudge(event, field);
  });

  document.addEventListener('click', ({ target }) => {
    const button = target.closest('button[data-edits]');
    if (button) press(button);
    const line = target.closest('.problem [data-of]');
    if (line && target.closest('button')) takeUp(line.dataset.of);
  });

  window.addEventListener('beforeunload', (event) => {
    if ([...entries.values()].some(({ own }) => own)) event.preventDefault();
  });
}

function nudge(event, field) {
  const text = field.value || field.placeholder;
  // A bare number is one to step only where a whole number is meant.
  if (!/[a-z%]/i.test(text) && field.dataset.kind !== 'whole') return;
  const next = nudged(text, event.key === 'ArrowUp' ? 1 : -1, event.shiftKey);
  if (next === null) return;
  event.preventDefault();
  field.value = next;
  put(field);
  clearTimeout(waiting.get(field.id));
  waiting.set(field.id, setTimeout(() => commit(field), PAUSE_MS));
}

/** Makes the changes a button stands for, once. */
function press(button) {
  if (button.hasAttribute('aria-busy')) return;
  button.setAttribute('aria-busy', 'true');
  const section = button.closest('details, .group')?.querySelector('summary, h3');
  ask('edit', { edits: JSON.parse(button.dataset.edits) }).then(() => {
    button.removeAttribute('aria-busy');
    if (!button.isConnected) section?.focus();
  });
}

/** What was not taken is in its field again, to be mended. */
function takeUp(key) {
  const [field] = fieldsOf(key);
  const { refused } = entries.get(key) ?? {};
  if (!field || !refused) return;
  field.focus();
  field.value = refused.value;
  put(field);
}
