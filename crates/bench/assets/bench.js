// The style page comes alive: views change without leaving it, and history has its keys.

import { answered, ask } from './swap.js';
import { unsaved } from './fields.js';
import { showAll } from './drawing.js';
import './art.js';
import './marks.js';
import './grips.js';
import './dims.js';
import './keys.js';

if (document.getElementById('bench')) {
  document.addEventListener('click', (event) => {
    const link = event.target.closest('a[data-swap]');
    if (link && !(event.ctrlKey || event.metaKey || event.shiftKey)) {
      event.preventDefault();
      // One key soon after another: what the first changes, the second's link has to hold.
      answered().then(() => go(new URL(link.href)));
    }
    const step = event.target.closest('button[data-step]')?.dataset.step;
    if (step === 'reload' || step === 'mark') ask(step);
    else if (step) stepTo(step);
  });

  document.addEventListener('change', ({ target }) => {
    if (!target.dataset.see) return;
    const address = new URL(location.href);
    address.searchParams.set(target.dataset.see, target.value);
    go(address);
  });

  document.addEventListener('keydown', (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    if ((key !== 'z' && key !== 'y') || unsaved(document.activeElement)) return;
    event.preventDefault();
    stepTo(key === 'y' || event.shiftKey ? 'redo' : 'undo');
  });

  window.addEventListener('popstate', () => ask('fragments'));
  // Whoever comes back from an editor sees at once that the file is another now.
  window.addEventListener('focus', () => ask('fragments'));
}

/** Takes back or makes again the change that the page shows by then. @param {'undo'|'redo'} step */
function stepTo(step) {
  ask(step, () => {
    const { next } = document.getElementById(step).dataset;
    return next ? { next } : {};
  });
}

/** Shows another view; the panel stays. */
function go(address) {
  const now = new URLSearchParams(location.search);
  for (const name of ['panel', 'room', 'part']) {
    if (now.has(name)) address.searchParams.set(name, now.get(name));
  }
  if (picture(address.searchParams) !== picture(now)) showAll();
  history.pushState(null, '', address);
  ask('fragments');
}

/** Which picture an address shows; another one is seen whole at first. */
function picture(query) {
  return query.get('plate') || query.get('view') || 'front';
}
