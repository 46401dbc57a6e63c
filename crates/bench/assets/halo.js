// What is open or pointed at is marked by a line beside it, on both sides or all round: never over yarn, and never over
// what is to be judged. The line lies on the cloth, under every stitch, and leaves free what it stands for.

const SPACE = 'http://www.w3.org/2000/svg';
/** Far beyond any drawing, in millimetres. */
const FAR = 5000;

const make = (name, attributes) => {
  const node = document.createElementNS(SPACE, name);
  for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, value);
  return node;
};

/** The same line, as wide as its own yarn and so much more as the style sheet says. */
function beside(mark, name) {
  const line = make('path', { d: mark.getAttribute('d'), class: name });
  if (mark.hasAttribute('transform')) line.setAttribute('transform', mark.getAttribute('transform'));
  line.style.setProperty('--yarn', mark.getAttribute('stroke-width') ?? 0);
  if (mark.getAttribute('fill') !== 'none') line.classList.add('solid');
  return line;
}

/** Draws the lines beside these marks, and no others. @param {Element} figure @param {Element[]} marks */
export function halo(figure, marks) {
  for (const old of figure.querySelectorAll('.halo')) old.remove();
  const paths = marks.filter(({ tagName }) => tagName === 'path');
  if (paths.length === 0) return;
  const all = { x: -FAR, y: -FAR, width: 2 * FAR, height: 2 * FAR };
  const mask = make('mask', { id: 'halo', class: 'halo', maskUnits: 'userSpaceOnUse', ...all });
  // A fixing is drawn after the rows near it, which are not to be covered either.
  const rows = figure.querySelectorAll('path[data-part^="seam:"]:not(.reach)');
  mask.append(make('rect', { ...all, class: 'shown' }), ...paths.map((mark) => beside(mark, 'free')), ...[...rows].map((row) => beside(row, 'yarn')));
  paths[0].ownerSVGElement.prepend(mask);
  const own = new Set(paths);
  for (const group of new Set(paths.map(({ parentNode }) => parentNode))) {
    let lines = null;
    for (const mark of [...group.children]) {
      // Cloth that lies over what was drawn before it lies over its line too.
      if (mark.dataset.part?.startsWith('piece:')) lines = null;
      if (!own.has(mark)) continue;
      if (!lines) {
        lines = make('g', { class: 'halo', mask: 'url(#halo)' });
        mark.before(lines);
      }
      lines.append(beside(mark, 'line'));
    }
  }
}
