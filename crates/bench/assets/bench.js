// The style page comes alive: views change without leaving it, and history has its keys.

import { answered, ask, asking } from './swap.js';
import { underWay, unsaved } from './fields.js';
import { isAway } from './gone.js';
import { showAll } from './drawing.js';
import './art.js';
import './marks.js';
import './grips.js';
import './dims.js';
import './keys.js';

/** How often a page that is seen asks whether the files were changed elsewhere. */
const EVERY_MS = 2000;
const bench = document.getElementById('bench');
let told = null;

if (bench) {
  document.addEventListener('click', (event) => {
    const link = event.target.closest('a[href]');
    if (link && !(event.defaultPrevented || event.ctrlKey || event.metaKey || event.shiftKey)) {
      if ('swap' in link.dataset) {
        event.preventDefault();
        // One key soon after another: what the first changes, the second's link has to hold.
        answered().then(() => go(new URL(link.href)));
      } else if (underWay() && !link.getAttribute('href').startsWith('#') && !link.hasAttribute('download')) {
        event.preventDefault();
        // The page is left when what was typed on it is answered.
        answered().then(() => location.assign(link.href));
      }
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
  // Whoever comes back from an editor or from another tab sees at once that the file is another now.
  window.addEventListener('focus', () => ask('fragments'));
  document.addEventListener('visibilitychange', look);
  window.addEventListener('pageshow', ({ persisted }) => persisted && ask('fragments'));
  setInterval(look, EVERY_MS);
}

/** Asks whether the files are others than the page shows, while the page is to be seen. */
async function look() {
  if (document.hidden || asking() || isAway()) return;
  const { path, stand } = bench.dataset;
  try {
    const response = await fetch(`${path}/stand`, { headers: { 'x-bench': '1' } });
    const now = response.ok ? await response.text() : String(response.status);
    // The page may show something else by now. What it cannot be shown, as a file that cannot be read, is told of once.
    if (now === stand || now === told || stand !== bench.dataset.stand) return;
    told = now;
  } catch {
    // That nobody answers is found once more, and said.
  }
  if (!asking()) ask('fragments');
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
