// A drawing of the maker's own: sent, read and written anew by the bench, then chosen where it was brought.

import { answered } from './forms.js';
import { complain } from './fields.js';
import { ask } from './swap.js';
import { say } from './words.js';

document.addEventListener('change', async ({ target }) => {
  if (!target.matches('input[type=file][data-art]')) return;
  const file = target.files[0];
  const bench = document.getElementById('bench');
  const choice = document.getElementById(`f-${target.dataset.art}`);
  if (!file || !bench) return;
  let told;
  try {
    const headers = { 'content-type': 'image/svg+xml' };
    const address = `${bench.dataset.path}/art?${new URLSearchParams({ file: file.name })}`;
    told = await answered(await fetch(address, { method: 'POST', headers, body: file }));
  } catch {
    told = { problems: [say('art-not-sent')] };
    // If nobody answers, that is found and said.
    ask('fragments');
  }
  target.value = '';
  const done = (problems) => complain(choice, problems);
  if (told.to) ask('edit', { edits: [{ edit: 'set', path: target.dataset.art, value: told.to }] }, { done });
  else done(told.problems);
});
