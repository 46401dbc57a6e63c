### What the bench answers, and what it says where something is in the way: crates/bench/src/answer.rs, guard.rs,
### outcome.rs, router.rs, serve.rs, session.rs, state.rs, trouble.rs, versions.rs and work.

## Changes, and what came of them

# After some problems or reasons that are told one by one.
answer-more = and { $count } more
# $change is what changed.
answer-undone = Undone: { $change }
answer-made-again = Made again: { $change }
answer-read-again = The file was read again
answer-unreadable-now = the file was changed outside the bench and cannot be read now
answer-being-changed = the file is being changed outside the bench at this moment; try again
answer-load-again = the file was changed outside the bench; load it again first
answer-earlier-state = this page showed an earlier state; it now shows the file as it is
answer-same-moment = the file was changed outside the bench at the same moment
answer-state-not-kept = this page showed a state that is not kept; it now shows the file as it is: make the change again
answer-nothing-to-step = there is nothing to take back or make again

## What others changed meanwhile

# $changes are sentences, with semicolons between them.
answer-meanwhile = changed meanwhile: { $changes }
answer-also-meanwhile = { $change }; also changed meanwhile: { $changes }
# One of the changes, after others that are told.
answer-meanwhile-more = { $count } more
answer-clash = changed meanwhile: { $change }; yours, { $wanted }, was not written; make the change again to put it in place of that
answer-clash-kept = changed meanwhile: { $change }; it was not taken out; make the change again to put it in place of that
# $path is where in the file, $was and $is what stood and stands there.
answer-clash-value = { $path }: { $was } → { $is }
answer-clash-no-value = nothing

## Changes in words

answer-same = the same in other words
answer-first-of = { $change } (and { $count } more)
answer-outside = changes made outside the bench
answer-outside-what = { $change }, outside the bench
# A change of another file than that of the style the page shows
answer-elsewhere = { $file }: { $change }
answer-version-unreadable = a version that cannot be read now
answer-no-version = there is no version { $number }
answer-put-back = version { $number } put back: { $change }
answer-before-unreadable = the version before it cannot be read, so what changed is not known

## Work in the background

work-waits = It begins as soon as there is room: two jobs go on at once.
work-no-room = the system has no room for another job now: { $why }
work-fault = the bench could not work this out; the style file is as it was
# One of several things that changed.
work-collection-changed = the collection’s cloths, yarns or trims

## Requests that are refused

refusal-title = This page stays closed
refusal-host = The request names another host. The bench answers only to 127.0.0.1 and localhost, at its own port.
refusal-change = A change can only be made from one of the bench's own pages.
refusal-elsewhere = Another page asked for this. What the bench holds is for its own pages; open its address yourself.
refusal-key = This needs the key of the session. Open the full address that was printed when the bench was started.
refusal-too-much = This is more than the bench takes at once
refusal-too-much-kept = Nothing was read of it and nothing was changed.
refusal-no-end = The request never came to its end
refusal-no-end-waited = The bench waited for the rest of it in vain. Nothing was changed.
refusal-not-understood = The request was not understood
refusal-address = Something in its address cannot be read, or is there twice.
refusal-too-many-changes = It holds too many changes at once.
refusal-not-for-opening = This address is not for opening
refusal-takes-changes = It takes changes from the bench's own pages.

## What cannot be shown

trouble-no-page = There is no such page
trouble-no-page-why = The address names nothing in this collection. A style may have been renamed or taken away.
trouble-inside = The bench could not work this out
trouble-inside-what-now = The style file is as it was. Undo the last change by hand, or tell us which change led here.
trouble-style = This style cannot be opened yet
trouble-collection = The collection cannot be read
trouble-collection-why = { $folder }: { $why }
trouble-back = Back to the collection

## Words of the terminal

start-key = the key has to be 16 to 128 letters and digits
start-random = the system gave no random key: { $why }; give one of your own
start-port = port { $port } on this machine cannot be used: { $why }; choose another port, or 0 for any free one
start-system = the bench cannot run: { $why }

## A style file that cannot be read, and the way back

mend-offer = The last version that can be read can be put in place of each file that cannot. What is in the file now is kept as a version.
mend-put-in = Put the last sound version in its place
mend-nothing = the file can be read, or no earlier version can be; nothing was changed
