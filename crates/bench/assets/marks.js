// Findings and their numbers on the drawing: each finds the other.

import { announce, ask, whenSwapped } from './swap.js';
import { pointAt, showPanel } from './parts.js';
import { say } from './words.js';

const panel = document.getElementById('panel');
const figure = document.getElementById('drawing');
let pointed = null;

const markOf = (number) => figure.querySelector(`[data-mark="${number}"]`);
const findingOf = (number) => document.getElementById(`finding-${number}`);

/** Lights a finding and its number. @param {string|null} number */
function point(number) {
  if (number === pointed) return;
  for (const [each, on] of [[pointed, false], [number, true]]) {
    if (!each) continue;
    markOf(each)?.classList.toggle('on', on);
    findingOf(each)?.classList.toggle('on', on);
  }
  pointed = number;
  // The number that is meant lies on top.
  const mark = number && markOf(number);
  if (mark && document.activeElement !== mark) mark.parentNode.append(mark);
}

/** Puts a member into a list of the file with the words beside the button: why a finding is muted, or why a thing is so. */
function tell(button) {
  const field = button.parentNode.querySelector('[data-told]');
  const about = button.parentNode.querySelector('[data-told-of]');
  const told = field.value.trim();
  if (told === '') {
    announce(field.dataset.told === 'says' ? say('why-so') : say('why-muted'));
    field.focus();
    return;
  }
  const edit = JSON.parse(button.dataset.tell);
  const member = [edit.value].flat()[0];
  member[field.dataset.told] = told;
  if (about) member.about = about.value;
  const done = (problems) => {
    if (problems.length > 0) announce(problems.join('. '));
    // The words are in the file now, and not those of another.
    else field.value = '';
  };
  ask('edit', { edits: [edit] }, { done }).then(() => document.getElementById(button.dataset.then)?.focus());
}

/** Goes to a finding in its list. */
function open(number) {
  showPanel('findings');
  const finding = findingOf(number);
  finding?.scrollIntoView({ block: 'nearest', behavior: 'smooth' });
  finding?.focus({ preventScroll: true });
  point(number);
}

if (panel && figure) {
  whenSwapped(() => {
    pointed = null;
  });
  const over = ({ target }) => {
    point(target.closest('[data-finding]')?.dataset.finding ?? null);
    pointAt(target.closest('[data-about]')?.dataset.about || null);
  };
  panel.addEventListener('pointerover', over);
  panel.addEventListener('focusin', over);
  panel.addEventListener('pointerleave', () => {
    point(null);
    pointAt(null);
  });
  panel.addEventListener('click', ({ target }) => {
    const button = target.closest('[data-tell]');
    if (button) tell(button);
    const number = target.closest('[data-show]')?.dataset.show;
    if (number) markOf(number)?.focus();
  });
  panel.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter' || !event.target.matches('[data-told]')) return;
    event.preventDefault();
    tell(event.target.parentNode.querySelector('[data-tell]'));
  });
  figure.addEventListener('pointerover', ({ target }) => point(target.closest('[data-mark]')?.dataset.mark ?? null));
  figure.addEventListener('focusin', ({ target }) => point(target.closest('[data-mark]')?.dataset.mark ?? null));
  // Before the drawing takes the pointer to move itself.
  figure.addEventListener('pointerdown', (event) => {
    const mark = event.target.closest('[data-mark]');
    if (!mark || event.button !== 0) return;
    event.stopImmediatePropagation();
  }, { capture: true });
  figure.addEventListener('click', ({ target }) => {
    const mark = target.closest('[data-mark]');
    if (mark) open(mark.dataset.mark);
  });
  figure.addEventListener('keydown', (event) => {
    const mark = event.target.closest('[data-mark]');
    if (!mark || (event.key !== 'Enter' && event.key !== ' ')) return;
    event.preventDefault();
    open(mark.dataset.mark);
  });
}
