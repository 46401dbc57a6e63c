// The parts of the drawing and their sections beside it: each finds the other.

import { halo } from './halo.js';
import { ask, whenSwapped } from './swap.js';

/** How far from a line a pointer may be, in screen pixels, to mean it, where it has no wider line of its own. */
const REACH = [0, 4];
const panel = document.getElementById('panel');
const how = document.getElementById('how');
const usualHow = how?.textContent ?? '';
const pointed = document.getElementById('pointed');
let hovered = null;
let besideNow = [];
/** The panel and the seam that the page was last filled for. */
const asked = new URLSearchParams(location.search);
let fetched = { name: asked.get('panel') ?? 'fit', seam: seamOf(asked.get('part')) };

/** A part where it is a seam, whose section is drawn when it is open. */
function seamOf(part) {
  return part?.startsWith('seam:') ? part : null;
}

/** The section that says something about a part: in the open panel, else where it is decided. */
function sectionOf(part) {
  const all = [...(panel?.querySelectorAll(`[data-for~="${CSS.escape(part)}"]`) ?? [])];
  const where = (name) => all.find((section) => section.closest('.scroll > section').id === name);
  const open = panel?.querySelector('.scroll > section:not([hidden])')?.id;
  return where(open) ?? where(seamOf(part) ? 'construction' : 'details') ?? all[0] ?? null;
}

/** What a group of details is about; any other part is about itself. */
function partsOf(part) {
  return (part?.startsWith('group:') && sectionOf(part)?.dataset.for.split(' ')) || [part];
}

function nameOf(part) {
  const names = JSON.parse(document.getElementById('drawing').dataset.names);
  return names[part] ?? sectionOf(part)?.dataset.name ?? part.replace(/^\w+:/, '').replaceAll(/[_-]/g, ' ');
}

/**
 * The part at a place on the screen: the nearest line or fixing within reach, else the piece it lies on.
 * @returns {string|null}
 */
export function partAt(x, y) {
  let piece = null;
  for (const reach of REACH) {
    const around = reach === 0 ? 1 : 8;
    for (let i = 0; i < around; i += 1) {
      const angle = (2 * Math.PI * i) / around;
      const hit = document.elementFromPoint(x + reach * Math.cos(angle), y + reach * Math.sin(angle));
      const grip = hit?.closest('#drawing [data-grip]');
    if (grip) return grip.dataset.of;
    const part = hit?.closest('#drawing [data-part]')?.dataset.part;
      if (part && !part.startsWith('piece:')) return part;
      piece ??= part ?? null;
    }
  }
  return piece;
}

/** Gives every seam a wider, unseen line, so that a pointer need not meet a thread's width. */
function widen() {
  for (const mark of document.querySelectorAll('#drawing path[data-part^="seam:"]:not(.reach)')) {
    if (mark.nextElementSibling?.classList.contains('reach')) continue;
    const reach = mark.cloneNode();
    reach.setAttribute('class', 'reach');
    mark.after(reach);
  }
}

/** Names what is pointed at and marks it in the drawing. @param {string|null} parts one, or several with spaces */
export function pointAt(parts) {
  if (parts === hovered) return;
  hovered = parts;
  const drawn = parts?.split(' ').find((part) => document.querySelector(`#drawing [data-part="${CSS.escape(part)}"]`));
  if (pointed) pointed.textContent = drawn ? nameOf(drawn) : '';
  if (drawn) besidePart(drawn);
  light();
}

/** The name stands above or below its part, never on it; of a part that fills the board, in the corner. */
function besidePart(part) {
  const board = pointed.parentNode.getBoundingClientRect();
  const boxes = [...document.querySelectorAll(`#drawing [data-part="${CSS.escape(part)}"]:not(.reach)`)].map((mark) => mark.getBoundingClientRect());
  const [left, right] = [Math.min(...boxes.map((box) => box.left)), Math.max(...boxes.map((box) => box.right))];
  const [top, bottom] = [Math.min(...boxes.map((box) => box.top)), Math.max(...boxes.map((box) => box.bottom))];
  const { width, height } = pointed.getBoundingClientRect();
  const x = Math.min(Math.max((left + right - width) / 2 - board.left, 8), board.width - width - 8);
  const [above, below] = [top - board.top - height - 8, bottom - board.top + 8];
  const y = above >= 8 ? above : below + height + 48 <= board.height ? below : null;
  pointed.style.left = y === null ? '' : `${x}px`;
  pointed.style.top = y === null ? '' : `${y}px`;
}

/**
 * Opens the section of a part and marks both.
 * @param {string} part
 * @param {boolean} follow whether a field may take the focus, so that keys change it
 */
export function openPart(part, follow = false) {
  const section = sectionOf(part);
  if (!section) return;
  showPanel(section.closest('.scroll > section').id, part);
  if (section.tagName === 'DETAILS') section.open = true;
  section.scrollIntoView({ block: 'nearest', behavior: 'smooth' });
  const first = section.querySelector(follow ? 'summary, h3, input, select' : 'summary, h3');
  first?.focus({ preventScroll: true });
}

/** Opens one of the panels; the address remembers it. */
export function showPanel(name, part) {
  const address = new URL(location.href);
  address.searchParams.set('panel', name);
  // Findings are looked at from any room and lead back to it.
  const room = document.getElementById('tabs').dataset.room;
  if (name === 'findings' && room !== 'fit') address.searchParams.set('room', room);
  else address.searchParams.delete('room');
  if (part) address.searchParams.set('part', part);
  else address.searchParams.delete('part');
  history.replaceState(null, '', address);
  for (const section of panel.querySelectorAll('.scroll > section')) section.hidden = section.id !== name;
  for (const link of panel.querySelectorAll('#tabs [data-panel]')) {
    if (link.dataset.panel === name) link.setAttribute('aria-current', 'true');
    else link.removeAttribute('aria-current');
  }
  light();
  // What is only worked out for an open panel or seam, and what lies over the drawing.
  const seam = name === 'construction' ? seamOf(part) : null;
  if (name !== fetched.name || seam !== fetched.seam) {
    fetched = { name, seam };
    ask('fragments');
  }
}

/** A line beside each mark of the pair that is pointed at or open; a plate says itself what it shows. */
function besideMarks(marks) {
  const figure = document.getElementById('drawing');
  if (figure.matches('.plate, .lay') || (marks.length === besideNow.length && marks.every((mark, at) => mark === besideNow[at]))) return;
  besideNow = marks;
  halo(figure, marks);
}

/** Marks what is pointed at and what is open. */
function light() {
  const opened = new URLSearchParams(location.search).get('part');
  const focused = document.activeElement?.closest('#panel [data-for]')?.dataset.for.split(' ') ?? [];
  const meant = [...(hovered?.split(' ') ?? []), opened, ...focused].flatMap(partsOf);
  const lit = new Set(meant.filter((part) => part && !part.startsWith('piece:')));
  const marks = [...document.querySelectorAll('#drawing [data-part]:not(.reach)')];
  for (const mark of marks) mark.classList.toggle('lit', lit.has(mark.dataset.part));
  besideMarks(marks.filter((mark) => lit.has(mark.dataset.part)));
  for (const grip of document.querySelectorAll('#drawing [data-of]')) {
    grip.classList.toggle('near', meant.includes(grip.dataset.of));
  }
  for (const section of panel.querySelectorAll('[data-for]')) {
    const parts = section.dataset.for.split(' ');
    section.classList.toggle('lit', parts.includes(opened));
  }
  const group = panel.querySelector('.group.lit')?.id;
  for (const link of panel.querySelectorAll('.jump a')) {
    if (link.hash === `#${group}`) link.setAttribute('aria-current', 'true');
    else link.removeAttribute('aria-current');
  }
}

if (panel) {
  whenSwapped(() => {
    widen();
    light();
  });
  const part = asked.get('part');
  if (part) sectionOf(part)?.scrollIntoView({ block: 'start' });
  panel.addEventListener('focusin', ({ target }) => {
    const section = target.closest('[data-for]');
    if (how) how.textContent = target.closest('[data-how]')?.dataset.how ?? usualHow;
    const parts = section?.dataset.for.split(' ') ?? [];
    const opened = new URLSearchParams(location.search).get('part');
    if (section && !parts.includes(opened)) showPanel(section.closest('.scroll > section').id, parts[0]);
    else light();
  });
  panel.addEventListener('click', (event) => {
    const link = event.target.closest('[data-panel]');
    if (!link || event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    const { part } = link.dataset;
    if (part && sectionOf(part)) openPart(part, true);
    else showPanel(link.dataset.panel);
  });
}
