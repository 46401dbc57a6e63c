// What every page does: the key of the session leaves the address, and what is named beside a link does as it does.

// The key came in the address and is a cookie now; it need not stay in view or in the history.
const here = new URL(location.href);
if (here.searchParams.has('key')) {
  here.searchParams.delete('key');
  history.replaceState(null, '', here);
}

document.addEventListener('keydown', (event) => {
  if (event.ctrlKey || event.metaKey || event.altKey || event.target.closest('input, select, textarea')) return;
  const named = document.querySelector(`[aria-keyshortcuts="${CSS.escape(event.key.toLowerCase())}"]`);
  if (!named) return;
  event.preventDefault();
  named.click();
});
