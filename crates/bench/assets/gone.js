// When the bench does not answer: that is said in words, and it is asked again until it does. Then nothing says so any more.

import { say } from './words.js';

const AGAIN_MS = 2000;

let waiting = 0;
let away = false;
/** Where else it is said, and in which words. @type {Map<HTMLElement, string>} */
const said = new Map();

/** Says that the bench is gone, and calls a function in a while. @param {() => void} again */
export function gone(again) {
  tell(say('gone'));
  away = true;
  clearTimeout(waiting);
  waiting = setTimeout(again, AGAIN_MS);
}

/** Whether it did not answer when it was last asked. */
export function isAway() {
  return away;
}

/** Says at a place of a page that asks nothing by itself that nobody answered, until somebody does. */
export function silent(place, words) {
  if (!place) return;
  place.textContent = words;
  place.hidden = false;
  said.set(place, words);
  clearTimeout(waiting);
  waiting = setTimeout(look, AGAIN_MS);
}

async function look() {
  try {
    const { status } = await fetch(location.href, { method: 'HEAD' });
    if (status === 403) takeBack(say('other-key'));
    else back();
  } catch {
    waiting = setTimeout(look, AGAIN_MS);
  }
}

/** Says that it answers but not to this page. Gives whether it was gone. */
export function locked() {
  if (away) tell(say('other-key'));
  return away;
}

/** It answers. Gives whether it was gone before. */
export function back() {
  const was = away;
  away = false;
  clearTimeout(waiting);
  takeBack('');
  return was;
}

/** Wherever it is still said that nobody answers, something else is said, or nothing. */
function takeBack(words) {
  for (const [place, before] of said) {
    if (place.textContent !== before) continue;
    place.textContent = words;
    if (place.matches('.problem')) place.hidden = words === '';
  }
  said.clear();
}

function tell(words) {
  const place = document.getElementById('notice');
  if (!place || place.textContent === words) return;
  place.className = 'notice asks';
  place.textContent = words;
}
