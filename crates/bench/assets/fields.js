// Fields: what is typed or chosen becomes an edit when it is done, not before.

import { ask, settle, typing } from './swap.js';
import { nudged } from './nudge.js';

/** How long after the last arrow key a nudged value is sent. */
const PAUSE_MS = 120;
const waiting = new Map();

// A field that already holds something else than the file says: it was typed into before this was heard, or the browser
// put back what stood there on an earlier visit.
for (const field of document.querySelectorAll('input[type=text][data-path]')) {
  if (field.value === (field.getAttribute('value') ?? '')) continue;
  if (field === document.activeElement) typing.add(field);
  else field.value = field.getAttribute('value') ?? '';
}

document.addEventListener('input', ({ target }) => {
  if (target.matches('input[data-path]') && isTyped(target)) typing.add(target);
});

document.addEventListener('change', ({ target }) => {
  if (target.matches('[data-path]')) commit(target);
});

document.addEventListener('keydown', (event) => {
  const field = event.target;
  if (!(field instanceof HTMLInputElement) || !field.dataset.path || !isTyped(field)) return;
  if (event.key === 'Enter') commit(field);
  else if (event.key === 'Escape') revert(field);
  else if (event.key === 'ArrowUp' || event.key === 'ArrowDown') {
    const text = field.value || field.placeholder;
    // A bare number is one to step only where a whole number is meant.
    if (!/[a-z%]/i.test(text) && field.dataset.kind !== 'whole') return;
    const next = nudged(text, event.key === 'ArrowUp' ? 1 : -1, event.shiftKey);
    if (next === null) return;
    event.preventDefault();
    field.value = next;
    typing.add(field);
    clearTimeout(waiting.get(field));
    waiting.set(field, setTimeout(() => commit(field), PAUSE_MS));
  }
});

document.addEventListener('click', ({ target }) => {
  const button = target.closest('button[data-edits]');
  if (!button) return;
  const section = button.closest('details, .group')?.querySelector('summary, h3');
  ask('edit', { edits: JSON.parse(button.dataset.edits) }, button).then(() => {
    if (!button.isConnected) section?.focus();
  });
});

/** Sends what a field holds, when that is not what the file says. */
function commit(field) {
  clearTimeout(waiting.get(field));
  waiting.delete(field);
  if (isTyped(field)) {
    if (!typing.has(field)) return;
    typing.delete(field);
    if (field.value.trim() === field.getAttribute('value')) {
      revert(field);
      return;
    }
  }
  const { edits } = (field.selectedOptions?.[0] ?? field).dataset;
  ask('edit', { edits: edits ? JSON.parse(edits) : [editOf(field)] }, field);
}

/** The one change a field stands for. */
function editOf(field) {
  const { path, kind } = field.dataset;
  if (kind === 'flag') return { edit: 'set', path, value: field.checked };
  if (kind === 'list') {
    const all = [...field.closest('[role=group]').querySelectorAll('[data-kind=list]')];
    const value = all.filter((each) => each.checked).map((each) => each.value);
    return value.length > 0 ? { edit: 'set', path, value } : { edit: 'remove', path };
  }
  const value = field.value.trim();
  const may = field.tagName === 'SELECT' || 'optional' in field.dataset;
  if (value === '' && may) return { edit: 'remove', path };
  return { edit: 'set', path, value: kind === 'whole' && /^\d{1,9}$/.test(value) ? Number(value) : value };
}

function isTyped(field) {
  return field.tagName === 'INPUT' && field.type === 'text';
}

/** Shows what the file says again. */
function revert(field) {
  if (!isTyped(field)) return;
  field.value = field.getAttribute('value') ?? '';
  settle(field);
}

/** Whether a field holds text that the file does not. @param {Element|null} field */
export function unsaved(field) {
  return field instanceof HTMLInputElement && typing.has(field);
}
