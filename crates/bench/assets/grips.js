// Taking hold of what is drawn: a light outline follows the hand, and the file is changed once, when it is let go.

import { inches } from './nudge.js';
import { announce, ask, whenSwapped } from './swap.js';
import { isPanning, millimetres, pixels, whenMoved } from './drawing.js';
import { openPart, pointAt } from './parts.js';
import { say } from './words.js';

/** Screen pixels: until here a press is a click; from here on a grip is near, or meant by a finger; to here a value lines up with another. */
const STILL = 4;
const NEAR = 44;
const FINGER = 28;
const PULL = 7;
/** Millimetres a step: whole ones, or sixteenths of an inch. */
const STEP = { mm: 1, cm: 1, in: 25.4 / 16 };
const PER = { mm: 1, cm: 10, in: 25.4 };

const bench = document.getElementById('bench');
const figure = document.getElementById('drawing');
const label = document.getElementById('holding');
let hold = null;
/** Where the hand was seen last. */
let hand = null;

const grips = () => [...figure.querySelectorAll('[data-grip]')];
const screen = (x, y) => new DOMPoint(x, y).matrixTransform(figure.querySelector('svg').getScreenCTM());

if (bench && figure) {
  figure.addEventListener('pointerdown', press, { capture: true });
  figure.addEventListener('pointermove', drag, { capture: true });
  figure.addEventListener('pointerup', release, { capture: true });
  figure.addEventListener('pointercancel', giveUp);
  figure.addEventListener('pointermove', near);
  figure.addEventListener('keydown', keys, { capture: true });
  figure.addEventListener('focusout', ({ target }) => {
    if (hold?.byKeys && hold.grip === target) drop();
  });
  whenSwapped(() => {
    // Another drawing is no longer what is held.
    if (!hold?.grip.isConnected) clear();
    // Its grips are new; the hand is where it was.
    if (hand) near(hand);
  });
  whenMoved(show);
}

/** Grips appear when the hand comes near. */
function near(event) {
  hand = event;
  for (const grip of grips()) {
    const at = screen(grip.dataset.x, grip.dataset.y);
    grip.classList.toggle('at-hand', Math.hypot(at.x - event.clientX, at.y - event.clientY) < NEAR);
  }
}

/** The thing at a place that is a grip as a whole. Rows lie on it and belong to it; another piece hides it. */
function bodyAt(x, y) {
  for (const hit of document.elementsFromPoint(x, y)) {
    const part = hit.closest('#drawing [data-part]')?.dataset.part ?? '';
    const body = part && figure.querySelector(`[data-body="${CSS.escape(part)}"]`);
    if (body) return body;
    if (part.startsWith('piece:')) return null;
  }
  return null;
}

/** The grip a finger means, which covers what it points at. */
function underFinger({ clientX, clientY }) {
  const far = (grip) => {
    const at = screen(grip.dataset.x, grip.dataset.y);
    return Math.hypot(at.x - clientX, at.y - clientY);
  };
  const [nearest] = grips().map((grip) => [far(grip), grip]).filter(([by]) => by < FINGER).sort(([a], [b]) => a - b);
  return nearest?.[1] ?? null;
}

function press(event) {
  if (hold && !hold.byKeys && hold.pointer !== event.pointerId) {
    // Another finger neither takes hold of something else nor moves the drawing under the first.
    event.stopImmediatePropagation();
    return;
  }
  const meant = () =>
    event.target.closest('[data-grip]') ?? (event.pointerType === 'touch' ? underFinger(event) : null) ?? bodyAt(event.clientX, event.clientY);
  const grip = event.button === 0 && event.isPrimary && !isPanning() && meant();
  if (!grip) return;
  event.stopImmediatePropagation();
  const part = event.target.closest('[data-part]')?.dataset.part ?? grip.dataset.of;
  begin(grip, { pointer: event.pointerId, part, from: [event.clientX, event.clientY], to: [event.clientX, event.clientY] });
}

/** Takes hold; what the hand did until the answer is here is made up for then. */
function begin(grip, how) {
  hold = { grip, moved: false, values: null, ...how };
  const mine = hold;
  const { grip: key } = grip.dataset;
  return fetch(`${bench.dataset.path}/grip/${key}${location.search}`, { headers: { 'x-bench': '1' } })
    .then((response) => (response.ok ? response.json() : null))
    .then((held) => {
      if (hold !== mine) return;
      if (!held || held.values.length === 0) {
        clear();
        announce(say('cannot-be-moved'));
        return;
      }
      hold.held = held;
      hold.values = held.values.map((value) => value.mm);
      if (hold.byKeys) show();
      else if (hold.moved) follow();
      if (hold.dropped) drop();
    })
    .catch(() => {
      clear();
      // If nobody answers, that is found and said.
      ask('fragments');
    });
}

function drag(event) {
  if (!hold || hold.pointer !== event.pointerId) return;
  event.stopImmediatePropagation();
  hold.to = [event.clientX, event.clientY];
  hold.free = event.altKey;
  if (!hold.moved && Math.hypot(hold.to[0] - hold.from[0], hold.to[1] - hold.from[1]) < STILL) return;
  if (!hold.moved) pointAt(null);
  hold.moved = true;
  figure.setPointerCapture(event.pointerId);
  follow();
}

function release(event) {
  if (!hold || hold.pointer !== event.pointerId) return;
  event.stopImmediatePropagation();
  if (hold.moved) {
    if (hold.held) drop();
    else hold.dropped = true;
    return;
  }
  const { part, grip } = hold;
  clear();
  grip.focus({ preventScroll: true });
  openPart(part);
}

/** The values that bring the grip nearest to the hand. */
function follow() {
  if (!hold?.held) return;
  const [from, to] = [millimetres(...hold.from), millimetres(...hold.to)];
  const way = [to.x - from.x, to.y - from.y];
  const axes = hold.held.values.map((value) => value.at);
  const by = nearest(axes, way);
  hold.said = '';
  hold.values = hold.held.values.map((value, index) => settled(value, value.mm + by[index]));
  show();
}

/** Least squares for one or two axes. */
function nearest([a, b], [x, y]) {
  const dot = (p, q) => p[0] * q[0] + p[1] * q[1];
  const way = [x, y];
  const alone = (axis) => dot(axis, way) / dot(axis, axis);
  if (!b) return [alone(a)];
  const [aa, ab, bb] = [dot(a, a), dot(a, b), dot(b, b)];
  const det = aa * bb - ab * ab;
  // Two axes that run alike are one: the first takes it all.
  if (det < 0.02 * aa * bb) return [alone(a), 0];
  const [aw, bw] = [dot(a, way), dot(b, way)];
  return [(aw * bb - bw * ab) / det, (bw * aa - aw * ab) / det];
}

/** Whole steps, or what it lines up with; with Alt just where the hand is. */
function settled(value, mm) {
  const least = value.least ?? -Infinity;
  if (hold.free) return Math.max(Math.round(mm * 10) / 10, least);
  const reach = PULL * pixels();
  const beside = value.beside.find((each) => Math.abs(each.mm - mm) < reach);
  if (beside) {
    hold.said = beside.words;
    return beside.mm;
  }
  const step = STEP[value.unit];
  // A step that comes to nothing keeps the value as it was written.
  return Math.max(value.mm + Math.round((mm - value.mm) / step) * step === value.mm ? value.mm : Math.round(mm / step) * step, least);
}

function written(mm, unit) {
  const value = mm / PER[unit];
  const text = unit === 'in' ? inches(Math.abs(value)) : String(Math.round(Math.abs(value) * 1000) / 1000);
  return `${value < 0 && Number(text) !== 0 ? '-' : ''}${text} ${unit}`;
}

/** The outline, the grip and the values, where they would be now. */
function show() {
  if (!hold?.held || !hold.grip.isConnected) return;
  const { held, values, grip } = hold;
  const by = held.values.map((value, index) => values[index] - value.mm);
  const moved = (point, along) => held.values.reduce(
    ([x, y], value, index) => {
      const [dx, dy] = along(value);
      return [x + dx * by[index], y + dy * by[index]];
    },
    point,
  );
  const lines = held.lines.map((line, l) => line.map((point, p) => moved(point, (value) => value.lines[l][p])));
  figure.querySelector('.ghost')?.setAttribute('d', lines.map((line) => `M${line.map((p) => p.join(' ')).join('L')}`).join(''));
  const [x, y] = moved(held.at, (value) => value.at);
  grip.setAttribute('transform', `translate(${x} ${y}) scale(${pixels()})`);
  grip.classList.add('held');
  const words = held.values.map((value, index) => {
    const change = by[index];
    const far = Math.abs(change) < 0.005 ? '' : ` (${change > 0 ? '+' : '−'}${written(Math.abs(change), value.unit)})`;
    return `${value.words} ${written(values[index], value.unit)}${far}`;
  });
  if (hold.said) words.push(hold.said);
  label.replaceChildren(...words.map((line) => Object.assign(document.createElement('span'), { textContent: line })));
  beside(lines.flat(), [x, y]);
}

/** The values stand beside what moves, never on it. */
function beside(points, [, y]) {
  const board = figure.getBoundingClientRect();
  const xs = points.map(([px, py]) => screen(px, py).x - board.left);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const { width, height } = label.getBoundingClientRect();
  const gap = 14;
  const x = right + gap + width < board.width ? right + gap : Math.max(left - gap - width, 4);
  const at = screen(0, y).y - board.top - height / 2;
  label.style.left = `${x}px`;
  label.style.top = `${Math.min(Math.max(at, 4), board.height - height - 4)}px`;
}

/** One change for all values that are other than they were. */
function drop() {
  const { held, values } = hold;
  const edits = (held?.values ?? [])
    .map((value, index) => ({ edit: 'set', path: value.path, value: written(values[index], value.unit), same: Math.abs(values[index] - value.mm) < 1e-6 }))
    .filter((edit) => !edit.same)
    .map(({ same, ...edit }) => edit);
  if (edits.length === 0) {
    clear();
    return;
  }
  hold.grip.classList.add('waiting');
  const mine = hold;
  hold = null;
  ask('edit', { edits }).finally(() => {
    mine.grip.classList.remove('waiting');
    if (!hold) clear();
  });
}

/** As it was before it was taken hold of. */
function giveUp() {
  if (!hold) return;
  const { grip } = hold;
  clear();
  announce(say('left-as-it-was'));
  if (grip.isConnected) grip.focus({ preventScroll: true });
}

function clear() {
  hold = null;
  label.replaceChildren();
  figure.querySelector('.ghost')?.removeAttribute('d');
  for (const grip of figure.querySelectorAll('.grip.held')) {
    grip.classList.remove('held');
    grip.setAttribute('transform', `translate(${grip.dataset.x} ${grip.dataset.y}) scale(${pixels()})`);
  }
}

const WAYS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

function keys(event) {
  if (event.key === 'Escape' && hold) {
    event.stopImmediatePropagation();
    event.preventDefault();
    giveUp();
    return;
  }
  const grip = event.target.closest('[data-grip]');
  if (!grip || event.ctrlKey || event.metaKey) return;
  const way = WAYS[event.key];
  if (event.key !== 'Enter' && event.key !== ' ' && !way) return;
  event.stopImmediatePropagation();
  event.preventDefault();
  if (!hold) {
    begin(grip, { byKeys: true }).then(() => way && step(way, event.shiftKey));
    return;
  }
  if (way) step(way, event.shiftKey);
  else drop();
}

/** The value that moves most in the way of the key goes one step, or ten with Shift. */
function step([x, y], far) {
  if (!hold?.held) return;
  const along = hold.held.values.map(({ at }) => (at[0] * x + at[1] * y) / Math.hypot(...at));
  const best = along.reduce((most, each, index) => (Math.abs(each) > Math.abs(along[most]) ? index : most), 0);
  if (Math.abs(along[best]) < 0.3) return;
  const value = hold.held.values[best];
  const by = Math.sign(along[best]) * STEP[value.unit] * (far ? 10 : 1);
  hold.said = '';
  hold.values[best] = Math.max(hold.values[best] + by, value.least ?? -Infinity);
  show();
}
