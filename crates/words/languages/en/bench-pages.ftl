### What every page has: crates/bench/src/page/layout.rs, room.rs and the row of rooms.

# The title of a page in the browser.
page-title = { $title } · Fellwork

## The list of keys

keys-title = Keys
keys-this-list = This list
keys-close = Close
