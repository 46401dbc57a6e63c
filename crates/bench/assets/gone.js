// When the bench does not answer: that is said in words, and it is asked again until it does.

import { say } from './words.js';

const AGAIN_MS = 2000;

let waiting = 0;
let away = false;

/** Says that the bench is gone, and calls a function in a while. @param {() => void} again */
export function gone(again) {
  tell(say('gone'));
  away = true;
  clearTimeout(waiting);
  waiting = setTimeout(again, AGAIN_MS);
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
  return was;
}

function tell(words) {
  const place = document.getElementById('notice');
  if (!place || place.textContent === words) return;
  place.className = 'notice asks';
  place.textContent = words;
}
