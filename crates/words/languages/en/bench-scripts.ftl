### What the scripts of a page say: crates/bench/assets, by way of crates/bench/src/page/layout/script_words.rs.

## Where the bench does not answer

script-no-answer = The bench does not answer. Is it still running?
script-no-answer-unchanged = The bench does not answer. Is it still running? Nothing was changed.
script-no-answer-unmade = The bench does not answer. Is it still running? Nothing was made.
script-gone = The bench does not answer. Everything up to the last change that was said to be saved is in the file. This page asks again by itself; start the bench with the same --port and key, and it goes on from here.
script-other-key = The bench runs again, but with another key. Open the address that it printed; everything that was saved is there.
script-answers-again = The bench answers again.

## What was not done

# Beside a field whose text was sent and not answered.
script-not-in-the-file = This is not in the file yet. Press Enter to send it again.
# Of a text that was sent before the one the field shows.
script-not-answered = it was sent and not answered
# Beside a choice that was sent and not answered.
script-choose-again = This was not answered. The field shows what the file holds; choose again where it has to be another.
# $typed is what was typed; why it was not taken comes after it.
script-not-taken = “{ $typed }” was not taken.
# A button after it.
script-take-up-again = Go on with it
# $typed is what was typed into a field that others took out of the page before it was sent.
script-field-gone = “{ $typed }” was not saved: others took its field out meanwhile.
script-art-not-sent = The drawing did not arrive. Choose it once more.

# $problems are sentences that end with no stop.
script-not-changed = Not changed. { $problems }
# $problems are sentences that end with no stop.
script-version-not-changed = Not changed: { $problems }.
script-cannot-be-moved = This cannot be moved as it is now.
script-left-as-it-was = Left as it was.
# Asked of somebody who mutes a finding and gives no reason.
script-why-so = Write why it is so: one or two sentences.
script-why-muted = Say why you live with it: whoever sews from this file will ask.

## Keys, as they are called in the list of keys

script-key-control = Ctrl
script-key-shift = Shift
