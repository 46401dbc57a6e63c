// A quantity one step up or down, in the unit and the manner it is written in: "33 1/2 in", "26.5 cm", "8 /in", "5".

const STEPS = { in: 1 / 8, cm: 0.1, mm: 0.5, '/in': 1, '/cm': 0.1, deg: 1, '%': 1, '': 1 };
const WRITTEN = /^\s*(-?)\s*(\d+(?:\.\d+)?)?(?:\s*(\d+)\/(\d+))?\s*(\/?[a-z]+|%|)\s*$/i;

/**
 * @param {string} text as written
 * @param {1|-1} way up or down
 * @param {boolean} far eight steps at once
 * @returns {string|null} the same a step further; null when the text is no quantity
 */
export function nudged(text, way, far) {
  const [, sign, whole, over, under, unit] = WRITTEN.exec(text) ?? [];
  const step = STEPS[unit?.toLowerCase()];
  if (!step || (whole === undefined && over === undefined)) return null;
  const size = Number(whole ?? 0) + (over ? Number(over) / Number(under) : 0);
  const value = (sign ? -size : size) + way * step * (far ? 8 : 1);
  if (!Number.isFinite(value) || value < 0) return null;
  return `${unit.toLowerCase() === 'in' ? inches(value) : decimals(value)} ${unit}`.trim();
}

function decimals(value) {
  return String(Math.round(value * 1000) / 1000);
}

/** Inches in sixteenths where they are some, as a tape has them. @param {number} value */
export function inches(value) {
  const sixteenths = value * 16;
  if (Math.abs(sixteenths - Math.round(sixteenths)) > 1e-6) return decimals(value);
  let [above, below] = [Math.round(sixteenths) % 16, 16];
  const whole = Math.floor(Math.round(sixteenths) / 16);
  while (above > 0 && above % 2 === 0) [above, below] = [above / 2, below / 2];
  if (above === 0) return String(whole);
  return whole === 0 ? `${above}/${below}` : `${whole} ${above}/${below}`;
}
