// What scripts say: the page brings the words along, in its own language.

const words = JSON.parse(document.body.dataset.words);

/**
 * @param {string} key which words
 * @param {object} [given] what is put into them, by name
 */
export function say(key, given = {}) {
  return words[key].replace(/\{(\w+)\}/g, (place, name) => given[name] ?? place);
}
