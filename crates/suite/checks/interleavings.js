// Run in a style's page: typing, leaving, choosing, answers that come late or never, and another page that changes the
// same values, in orders drawn by chance. `arguments` are a seed, how many runs, and who is told: every fault in words,
// and counts of what happened, so that a test can see that it all did.

const [seed, runs, done] = arguments;
const FIELDS = ['f-chart.hem.value', 'd-chart.hem.value', 'f-chart.knee.value', 'f-chart.thigh.value'];
const bench = document.getElementById('bench');
const select = [...document.querySelectorAll('#details select[data-path]')]
  .find(({ options }) => options.length > 2 && ![...options].some((option) => option.disabled || option.dataset.edits)).id;
const tick = document.querySelector('#details input[data-kind=flag]').id;
const element = (id) => document.getElementById(id);
const pathOf = (id) => element(id).dataset.path;

// Chance from a seed (the generator known as mulberry32), so that a fault can be had again.
let state = seed;
const chance = () => {
  state = (state + 0x6d2b79f5) | 0;
  let t = Math.imul(state ^ (state >>> 15), 1 | state);
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
  return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
};
const one = (list) => list[Math.floor(chance() * list.length)];

// Time goes on when it is told to.
const timers = new Map();
let timer = 1e6;
const clearReal = window.clearTimeout;
window.setTimeout = (call) => {
  timer += 1;
  timers.set(timer, call);
  return timer;
};
window.clearTimeout = (id) => timers.delete(id) || clearReal(id);
const channel = new MessageChannel();
const flush = () => new Promise((go) => {
  channel.port1.onmessage = go;
  channel.port2.postMessage(0);
});

// The file, all it ever was, and a bench that keeps it as ours does: an edit meant for an earlier text is made where
// nothing changed what it touches.
const faults = [];
const counts = {};
const count = (what) => { counts[what] = (counts[what] ?? 0) + 1; };
let run = 0;
const fault = (words) => faults.length < 20 && faults.push(`run ${run}: ${words}`);
const held = (id) => {
  const field = element(id);
  if (field.tagName === 'SELECT') return [...field.options].find((option) => option.hasAttribute('selected')).value;
  return field.type === 'checkbox' ? String(field.hasAttribute('checked')) : field.getAttribute('value');
};
const shown = (id) => {
  const field = element(id);
  return field.type === 'checkbox' ? String(field.checked) : field.value;
};
const saidOf = (id) => document.getElementById(element(id).getAttribute('aria-describedby'))?.textContent ?? '';
const all = [...FIELDS, select, tick];
let file = Object.fromEntries(all.map((id) => [pathOf(id), held(id)]));
const kept = new Map([[bench.dataset.revision, file]]);
let revision = bench.dataset.revision;
const change = (path, value) => {
  file = { ...file, [path]: value };
  revision = `after ${kept.size}`;
  kept.set(revision, file);
};
const intents = [];
const accepted = new Map();
// A page of few fields and a drawing of no marks, so that many answers cost little.
for (const panel of document.querySelectorAll('#panel .scroll > section:not(#fit, #details, #cloth)')) panel.remove();
const templates = ['fit', 'drawing', 'details'].map((id) => [id, element(id).cloneNode(true)]);
for (const [, template] of templates) {
  const without = (each) => !all.some((id) => each.querySelector(`[id="${id}"]`));
  for (const each of template.querySelectorAll('.measure, .dim, .group')) if (without(each)) each.remove();
  for (const svg of template.querySelectorAll('svg')) svg.replaceChildren();
  for (const each of template.querySelectorAll('[style]')) each.removeAttribute('style');
}
const sent = new Map();

/** The parts of the page that are other than those sent last. */
function fragments() {
  const now = templates.map(([id, template]) => {
    for (const each of all) {
      const field = template.querySelector(`[id="${each}"]`);
      const value = file[pathOf(each)];
      if (!field) continue;
      if (field.tagName === 'SELECT') for (const option of field.options) option.toggleAttribute('selected', option.value === value);
      else if (field.type === 'checkbox') field.toggleAttribute('checked', value === 'true');
      else field.setAttribute('value', value);
    }
    return { id, mark: `${id} ${revision}`, html: template.outerHTML };
  });
  const other = now.filter(({ id, html }) => sent.get(id) !== html);
  for (const { id, html } of other) sent.set(id, html);
  return other;
}

function answer(address, request) {
  const problems = [];
  if (/\/edit(\?|$)/.test(address)) {
    const { edits: [{ path, value = '' }], revision: meant } = JSON.parse(request.body);
    const text = String(value);
    if (kept.get(meant)[path] !== file[path]) problems.push(`changed elsewhere to ${file[path]}`);
    else if (text.includes('x')) problems.push('this is no length');
    else {
      const intent = intents.findLast((each) => each.path === path && each.text === text);
      if (!intent) fault(`nobody meant ${path} = ${text}`);
      else if (file[path] !== intent.seen && file[path] !== accepted.get(path)) fault(`${text} was written over ${file[path]}, which was not seen`);
      accepted.set(path, text);
      for (const each of intents) if (each.path === path && each.text === text) each.taken = true;
      change(path, text);
    }
    count(problems.length > 0 ? 'refused' : 'taken');
  }
  return { outcome: 'done', revision, stand: revision, fragments: fragments(), problems, said: '', reset: false };
}

// At most one request is under way; it arrives, and it is answered, when chance says so.
let flight = null;
window.fetch = (address, request = {}) => {
  const text = String(address);
  if (/\/stand$/.test(text)) return Promise.resolve({ ok: true, status: 200, text: async () => bench.dataset.stand });
  return new Promise((go, fail) => { flight = { text, request, go, fail, answer: null }; });
};
function arrive() {
  if (flight && !flight.answer) flight.answer = answer(flight.text, flight.request);
}
function deliver() {
  if (!flight?.answer) return;
  const { go, answer: told } = flight;
  flight = null;
  go({ ok: true, status: 200, headers: new Headers({ 'content-type': 'application/json' }), json: async () => told });
}
function lose() {
  if (!flight) return;
  const { fail } = flight;
  flight = null;
  count('lost');
  // What a page was sent it may not have.
  sent.clear();
  fail(new TypeError('nobody answers'));
}

// A hand: it types letter by letter, and what stands in its field is what it typed.
let hand = null;
let number = 0;
function begin(id, chosen) {
  number += 1;
  const text = `${20 + (number % 40)}.${number}${chance() < 0.15 ? 'x' : ''} cm`;
  const field = element(id);
  if (chosen) {
    field.focus();
    // As the Tab key does, or a hand that chooses all.
    field.select();
  }
  hand = { id, text, typed: '', seen: held(id) };
}
function letter() {
  if (!hand) return;
  const field = element(hand.id);
  if (hand.typed === hand.text) return;
  if (document.activeElement !== field) fault(`${hand.id} lost the focus`);
  if (hand.typed === '') hand.seen = held(hand.id);
  hand.typed += hand.text[hand.typed.length];
  document.execCommand('insertText', false, hand.typed.at(-1));
  if (field.value !== hand.typed) fault(`“${hand.typed}” was typed and ${hand.id} shows “${field.value}”`);
}
function meant() {
  if (!hand || hand.typed === '') return;
  if (element(hand.id).value !== hand.typed) fault(`“${hand.typed}” was meant and ${hand.id} shows “${element(hand.id).value}”`);
  intents.push({ id: hand.id, path: pathOf(hand.id), text: hand.typed.trim(), seen: hand.seen });
  count('meant');
}
const press = (id, key) => element(id).dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
function enter() {
  if (!hand) return;
  const { id } = hand;
  meant();
  press(id, 'Enter');
  // It types on in the same field, choosing nothing.
  if (chance() < 0.5) begin(id, false);
  else hand = null;
}
function leave() {
  meant();
  hand = null;
  document.activeElement.blur();
}
function escape() {
  if (!hand) return;
  const told = saidOf(hand.id);
  press(hand.id, 'Escape');
  // What is said of a field is done with for whoever presses Escape there.
  for (const intent of intents) if (intent.id === hand.id && told.includes(intent.text)) intent.taken = true;
  hand = null;
  count('given up');
}
function choose() {
  const id = one([select, tick]);
  const field = element(id);
  if (field.tagName === 'SELECT') field.selectedIndex = Math.floor(chance() * field.options.length);
  else field.checked = !field.checked;
  intents.push({ id, path: pathOf(id), text: shown(id), seen: held(id), choice: true });
  field.dispatchEvent(new Event('change', { bubbles: true }));
}
function other() {
  number += 1;
  change(pathOf(one(FIELDS)), `${20 + (number % 40)}.${number} in`);
  count('elsewhere');
}
const STEPS = [
  [14, () => (hand ? letter() : begin(one(FIELDS), true))], [30, letter], [4, enter], [3, leave], [1, escape], [3, choose], [4, other],
  [14, arrive], [14, deliver], [1, lose], [3, () => [...timers].slice(0, 1).forEach(([id, call]) => timers.delete(id) && call())],
  [2, () => window.dispatchEvent(new Event('focus'))],
];
const weight = STEPS.reduce((sum, [each]) => sum + each, 0);
function step() {
  let at = chance() * weight;
  for (const [each, act] of STEPS) {
    at -= each;
    if (at < 0) return act();
  }
  return null;
}

async function quiet() {
  for (let i = 0; i < 200; i += 1) {
    arrive();
    deliver();
    for (const [id, call] of [...timers]) if (timers.delete(id)) call();
    await flush();
    await flush();
    if (!flight && timers.size === 0) return;
  }
  fault('it never comes to rest');
}

function account() {
  for (const id of all) {
    if (shown(id) !== file[pathOf(id)]) fault(`${id} shows “${shown(id)}”, the file holds “${file[pathOf(id)]}”`);
    if (element(id).hasAttribute('aria-busy')) fault(`${id} is busy`);
  }
  for (const [index, intent] of intents.entries()) {
    const { id, text, taken, choice, seen } = intent;
    const later = intents.slice(index + 1).some((each) => each.id === id);
    if (taken || later || text === seen || text === file[pathOf(id)]) continue;
    const told = saidOf(id);
    if (choice ? told === '' : !told.includes(text)) fault(`“${text}” was typed into ${id} and is gone: “${told}”`);
    else count('told');
  }
  intents.length = 0;
}

(async () => {
  for (run = 1; run <= runs; run += 1) {
    const steps = 20 + Math.floor(chance() * 60);
    for (let i = 0; i < steps; i += 1) {
      step();
      await flush();
    }
    leave();
    await quiet();
    // What was sent and not answered is sent again, as the page says.
    for (const id of FIELDS) {
      if (shown(id) === file[pathOf(id)] || saidOf(id) === '') continue;
      element(id).focus();
      press(id, 'Enter');
      await quiet();
    }
    document.activeElement.blur();
    window.dispatchEvent(new Event('focus'));
    await quiet();
    account();
    if (faults.length >= 20) break;
  }
  done({ faults, counts, runs: run - 1 });
})().catch((error) => done({ faults: [`${error.stack}`], counts, runs: run }));
