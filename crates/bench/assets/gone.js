// When the bench does not answer: that is said in words, and it is asked again until it does.

const AGAIN_MS = 2000;
const GONE =
  'The bench does not answer. Everything up to the last change that was said to be saved is in the file. ' +
  'This page asks again by itself; start the bench with the same --port and --key, and it goes on from here.';
const OTHER_KEY =
  'The bench runs again, but with another key. Open the address that it printed; everything that was saved is there.';

let waiting = 0;
let away = false;

/** Says that the bench is gone, and calls a function in a while. @param {() => void} again */
export function gone(again) {
  tell(GONE);
  away = true;
  clearTimeout(waiting);
  waiting = setTimeout(again, AGAIN_MS);
}

/** Says that it answers but not to this page. Gives whether it was gone. */
export function locked() {
  if (away) tell(OTHER_KEY);
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
