// The history: versions are named and put back, and the list is fetched anew after each.

import { silent } from './gone.js';
import './keys.js';
import { say } from './words.js';

let busy = false;

document.addEventListener('submit', (event) => {
  const form = event.target.closest('form[data-send]');
  if (!form) return;
  event.preventDefault();
  if (!busy) send(form, event.submitter);
});

/** Sends what a form stands for and shows what came of it. */
async function send(form, button) {
  const list = document.getElementById('versions');
  const { send: action, number } = form.dataset;
  const carried = { number: Number(number) };
  if (action === 'put-back') carried.revision = list.dataset.revision;
  else if (action === 'put-file-back') carried.file = form.dataset.file;
  else carried.name = button && 'away' in button.dataset ? null : form.elements.name.value;
  busy = true;
  list.setAttribute('aria-busy', 'true');
  try {
    const response = await fetch(`${list.dataset.path}/${action}${location.search}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(carried),
    });
    if (!(response.headers.get('content-type') ?? '').startsWith('application/json')) {
      const page = new DOMParser().parseFromString(await response.text(), 'text/html');
      announce([...page.querySelectorAll('h1, .words')].map((e) => e.textContent).join('. '));
      return;
    }
    const { problems, said, outcome } = await response.json();
    if (problems.length > 0 && outcome !== 'behind') {
      complain(form, problems);
      return;
    }
    await anew(form);
    announce(problems.length > 0 ? say('version-not-changed', { problems: problems.join('. ') }) : `${capital(said)}.`);
  } catch {
    silent(document.getElementById('told'), say('no-answer-unchanged'));
  } finally {
    busy = false;
    document.getElementById('versions')?.removeAttribute('aria-busy');
  }
}

/** Puts the page as it is now in place of the list; the focus stays with the version. */
async function anew(form) {
  const response = await fetch(location.href);
  const page = new DOMParser().parseFromString(await response.text(), 'text/html');
  const [old, fresh] = [document, page].map((each) => each.getElementById('versions'));
  if (!fresh) {
    location.reload();
    return;
  }
  const row = form.closest('li')?.id;
  old.replaceWith(document.adoptNode(fresh));
  const there = document.querySelector(`#${row} summary, #${row} a`) ?? document.querySelector('.opening a');
  there?.focus();
}

function complain(form, problems) {
  const words = problems.map(capital).join('. ');
  const place = form.querySelector('.problem');
  if (!place) {
    announce(say('version-not-changed', { problems: words }));
    return;
  }
  place.textContent = words;
  place.hidden = false;
  const field = form.elements.name;
  if (!field) {
    announce(words);
    return;
  }
  place.id = `problem-${field.id}`;
  field.setAttribute('aria-invalid', 'true');
  field.setAttribute('aria-describedby', place.id);
  field.focus();
  announce(words);
}

function capital(words) {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function announce(words) {
  const place = document.getElementById('told');
  if (place) place.textContent = words;
}
