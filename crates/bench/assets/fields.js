// Fields: what is typed or chosen becomes an edit when it is done, not before.

import { ask, settle, typing } from './swap.js';
import { nudged } from './nudge.js';

/** How long after the last arrow key a nudged value is sent. */
const PAUSE_MS = 120;
const waiting = new Map();

document.addEventListener('input', ({ target }) => {
  if (target.matches('input[data-path]')) typing.add(target);
});

document.addEventListener('change', ({ target }) => {
  if (target.matches('[data-path]')) commit(target);
});

document.addEventListener('keydown', (event) => {
  const field = event.target;
  if (!(field instanceof HTMLInputElement) || !field.dataset.path) return;
  if (event.key === 'Enter') commit(field);
  else if (event.key === 'Escape') revert(field);
  else if (event.key === 'ArrowUp' || event.key === 'ArrowDown') {
    const text = field.value || field.placeholder;
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
  const button = target.closest('button[data-remove], button[data-insert]');
  if (!button) return;
  const { remove, insert, value } = button.dataset;
  const section = button.closest('details')?.querySelector('summary');
  const edit = remove
    ? { edit: 'remove', path: remove }
    : { edit: 'insert', path: insert, value: JSON.parse(value) };
  ask('edit', { edits: [edit] }, button).then(() => {
    if (!button.isConnected) section?.focus();
  });
});

/** Sends what a field holds, when that is not what the file says. */
function commit(field) {
  clearTimeout(waiting.get(field));
  waiting.delete(field);
  const value = field.value.trim();
  if (field.tagName === 'INPUT') {
    if (!typing.has(field)) return;
    typing.delete(field);
    if (value === field.getAttribute('value')) {
      revert(field);
      return;
    }
  }
  const { path } = field.dataset;
  const empties = value === '' && 'optional' in field.dataset;
  const edit = empties ? { edit: 'remove', path } : { edit: 'set', path, value };
  ask('edit', { edits: [edit] }, field);
}

/** Shows what the file says again. */
function revert(field) {
  field.value = field.getAttribute('value') ?? '';
  settle(field);
}

/** Whether a field holds text that the file does not. @param {Element|null} field */
export function unsaved(field) {
  return field instanceof HTMLInputElement && typing.has(field);
}
