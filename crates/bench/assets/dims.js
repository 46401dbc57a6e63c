// Measures on the drawing: their fields stand in the margins, each led to its place by a hairline.

import { whenSwapped } from './swap.js';
import { whenMoved } from './drawing.js';

/** Screen pixels from one field to the next, and from the edge of the board. */
const APART = 4;
const EDGE = 12;

const figure = document.getElementById('drawing');

if (figure) {
  whenSwapped(arrange);
  whenMoved(arrange);
  for (const [event, on] of [['focusin', true], ['focusout', false], ['pointerover', true], ['pointerout', false]]) {
    figure.addEventListener(event, ({ target }) => {
      const key = target.closest('.dim')?.dataset.dim;
      if (!key) return;
      for (const each of figure.querySelectorAll(`[data-tape="${key}"], [data-leader="${key}"]`)) each.classList.toggle('on', on);
    });
  }
}

/** Puts each field into the nearer margin, as near to the height of its place as the others let it. */
function arrange() {
  const dims = [...figure.querySelectorAll('.dim')];
  const leaders = figure.querySelector('.leaders');
  if (!leaders || dims.length === 0) return;
  const board = figure.getBoundingClientRect();
  const matrix = figure.querySelector('svg').getScreenCTM();
  const placed = dims.map((dim) => {
    const at = new DOMPoint(dim.dataset.atX, dim.dataset.atY).matrixTransform(matrix);
    const [x, y] = [at.x - board.left, at.y - board.top];
    const seen = x > 0 && y > 0 && x < board.width && y < board.height;
    dim.hidden = !seen;
    return { dim, x, y, seen };
  }).filter((each) => each.seen);
  placed.sort((a, b) => a.x - b.x);
  const half = Math.ceil(placed.length / 2);
  const lines = [];
  for (const [side, column] of [['left', placed.slice(0, half)], ['right', placed.slice(half)]]) {
    column.sort((a, b) => a.y - b.y);
    const tall = column.map(({ dim }) => dim.offsetHeight);
    const room = board.height - 2 * EDGE;
    let free = EDGE;
    // What finds no room is in the chart all the same.
    while (tall.reduce((sum, height) => sum + height + APART, 0) > room && column.length > 0) {
      column.pop().dim.hidden = true;
      tall.pop();
    }
    column.forEach((each, index) => {
      // Those below need their room too.
      const below = tall.slice(index).reduce((sum, height) => sum + height + APART, 0);
      each.top = Math.max(free, Math.min(each.y - tall[index] / 2, EDGE + room - below));
      free = each.top + tall[index] + APART;
      each.dim.style.top = `${each.top}px`;
      each.dim.style[side] = `${EDGE}px`;
      each.dim.style[side === 'left' ? 'right' : 'left'] = '';
      const edge = side === 'left' ? EDGE + each.dim.offsetWidth + 4 : board.width - EDGE - each.dim.offsetWidth - 4;
      lines.push([each.dim.dataset.dim, edge, each.top + tall[index] / 2, each.x, each.y]);
    });
  }
  leaders.setAttribute('viewBox', `0 0 ${board.width} ${board.height}`);
  leaders.replaceChildren(...lines.map(([key, x1, y1, x2, y2]) => {
    const line = document.createElementNS('http://www.w3.org/2000/svg', 'path');
    line.setAttribute('d', `M${x1} ${y1}L${x2} ${y2}`);
    line.dataset.leader = key;
    return line;
  }));
}
