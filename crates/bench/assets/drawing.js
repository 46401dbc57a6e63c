// Looking closer: the drawing's viewBox moves, nothing is drawn again.

import { whenSwapped } from './swap.js';
import { openPart, partAt, pointAt } from './parts.js';

const figure = document.getElementById('drawing');
/** What is seen, in millimetres; null shows everything. */
let box = null;
let all = null;
const pointers = new Map();
let moved = false;
/** Whether the space bar turns every drag into one of the whole drawing. */
let space = false;
const movedTo = [];
/** The least width that is seen, in millimetres: a single stitch fills it. */
const CLOSEST = 5;

const svg = () => figure.querySelector('svg');

if (figure) {
  whenSwapped(dress);
  figure.addEventListener('wheel', wheel, { passive: false });
  figure.addEventListener('pointerdown', down);
  figure.addEventListener('pointermove', move);
  figure.addEventListener('pointerup', up);
  figure.addEventListener('pointercancel', (event) => pointers.delete(event.pointerId));
  figure.addEventListener('pointerleave', () => pointAt(null));
  figure.addEventListener('keydown', key);
  document.addEventListener('keydown', (event) => {
    if (event.key !== ' ' || event.target.closest('input, select, textarea, button, a, summary, [role=button]')) return;
    event.preventDefault();
    grasp(true);
  });
  document.addEventListener('keyup', ({ key: released }) => released === ' ' && grasp(false));
  window.addEventListener('blur', () => grasp(false));
  document.addEventListener('click', ({ target }) => {
    const way = target.closest('[data-zoom]')?.dataset.zoom;
    if (way === 'fit') showAll();
    else if (way) zoom(way === 'in' ? 1.4 : 1 / 1.4);
  });
}

function grasp(on) {
  space = on;
  figure.classList.toggle('panning', on);
}

/** Whether a drag moves the whole drawing, whatever lies under the pointer. */
export function isPanning() {
  return space || pointers.size > 0;
}

/** Calls a function whenever something else of the drawing is seen. @param {() => void} call */
export function whenMoved(call) {
  movedTo.push(call);
}

/** How many millimetres a pixel of the screen is. */
export function pixels() {
  return 1 / (svg()?.getScreenCTM()?.a || 1);
}

/** Everything is seen. */
export function showAll() {
  box = null;
  apply();
}

/** After a swap: the drawing fills its place, and what was looked at is still looked at. */
function dress() {
  const drawing = svg();
  if (!drawing || 'dressed' in drawing.dataset) return;
  new ResizeObserver(apply).observe(drawing);
  drawing.dataset.dressed = '';
  drawing.removeAttribute('width');
  drawing.removeAttribute('height');
  const { x, y, width, height } = drawing.viewBox.baseVal;
  all = { x, y, width, height };
  apply();
}

function apply() {
  const { x, y, width, height } = box ?? all;
  for (const drawing of figure.querySelectorAll('svg:not(.leaders)')) {
    drawing.setAttribute('viewBox', `${x} ${y} ${width} ${height}`);
  }
  // Marks over the drawing stay as large as they are, however close one looks.
  const scale = pixels();
  figure.style.setProperty('--pixel', scale);
  for (const mark of figure.querySelectorAll('[data-x]')) {
    mark.setAttribute('transform', `translate(${mark.dataset.x} ${mark.dataset.y}) scale(${scale})`);
  }
  for (const call of movedTo) call();
}

/** A place on the screen, in millimetres of the drawing. */
export function millimetres(clientX, clientY) {
  return new DOMPoint(clientX, clientY).matrixTransform(svg().getScreenCTM().inverse());
}

function zoom(factor, at) {
  if (!all) return;
  // Its name stood beside it where it was.
  pointAt(null);
  const now = box ?? all;
  const centre = at ?? { x: now.x + now.width / 2, y: now.y + now.height / 2 };
  const width = Math.min(Math.max(now.width / factor, CLOSEST), all.width * 2);
  const scale = width / now.width;
  box = {
    x: centre.x - (centre.x - now.x) * scale,
    y: centre.y - (centre.y - now.y) * scale,
    width,
    height: now.height * scale,
  };
  apply();
}

function pan(dx, dy) {
  if (!all) return;
  const now = box ?? all;
  box = { ...now, x: now.x - dx, y: now.y - dy };
  apply();
}

function wheel(event) {
  event.preventDefault();
  const lines = event.deltaMode === 1 ? 24 : 1;
  // Two fingers on a pad slide the drawing and pinch it; a wheel, whose steps are coarse and upright, zooms.
  const wheeled = event.deltaMode === 1 || (event.deltaX === 0 && Math.abs(event.deltaY) >= 50);
  if (!event.ctrlKey && !wheeled) {
    pan(-event.deltaX * pixels(), -event.deltaY * pixels());
    return;
  }
  const pinched = event.ctrlKey && !wheeled ? 5 : 1;
  zoom(Math.exp((-event.deltaY * lines * pinched) / 500), millimetres(event.clientX, event.clientY));
}

function down(event) {
  if (event.button > 1 || event.target.closest('.dim')) return;
  pointers.set(event.pointerId, { x: event.clientX, y: event.clientY, from: [event.clientX, event.clientY] });
  if (pointers.size === 1) moved = false;
}

function move(event) {
  const pointer = pointers.get(event.pointerId);
  if (!pointer) {
    if (event.buttons === 0) pointAt(partAt(event.clientX, event.clientY));
    return;
  }
  const before = spread();
  const last = { ...pointer };
  Object.assign(pointer, { x: event.clientX, y: event.clientY });
  if (!moved && Math.hypot(event.clientX - pointer.from[0], event.clientY - pointer.from[1]) < 4) return;
  moved = true;
  figure.setPointerCapture(event.pointerId);
  if (pointers.size === 2) {
    const now = spread();
    if (before.apart > 0) zoom(now.apart / before.apart, millimetres(now.x, now.y));
    return;
  }
  const scale = svg().getScreenCTM().a;
  pan((event.clientX - last.x) / scale, (event.clientY - last.y) / scale);
}

function up(event) {
  if (!pointers.delete(event.pointerId) || moved) return;
  const part = partAt(event.clientX, event.clientY);
  if (part) openPart(part);
}

/** The middle of all fingers and how far the first two are apart. */
function spread() {
  const [a, b = a] = [...pointers.values()];
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, apart: Math.hypot(a.x - b.x, a.y - b.y) };
}

function key(event) {
  if (event.ctrlKey || event.metaKey || event.altKey || !all || event.target.closest('input')) return;
  const step = (box ?? all).width / 12;
  const act = {
    '+': () => zoom(1.4),
    '=': () => zoom(1.4),
    '-': () => zoom(1 / 1.4),
    0: showAll,
    ArrowLeft: () => pan(step, 0),
    ArrowRight: () => pan(-step, 0),
    ArrowUp: () => pan(0, step),
    ArrowDown: () => pan(0, -step),
  }[event.key];
  if (!act) return;
  event.preventDefault();
  act();
}
