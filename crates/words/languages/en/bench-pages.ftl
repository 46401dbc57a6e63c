### What every page has: crates/bench/src/page/layout.rs, room.rs and the row of rooms.

# The title of a page in the browser.
page-title = { $title } · Fellwork

## The list of keys

keys-title = Keys
keys-this-list = This list
keys-close = Close
# A tooltip: the key that does the same.
keys-key = Key { $key }

## The head of every page of a style: part/head.rs, bar.rs, room.rs

# What the row of rooms, and the groups beside it, are called.
head-rooms = Rooms
head-shown = What is shown
head-units = Units
head-history = History
room-fit = Fit
room-cloth = Cloth
room-construction = Construction
room-cutting = Cutting
room-papers = Papers
room-history = History
bar-size = Size
step-undo = Undo
# $change is the change that would be taken back, or done again.
step-undo-what = Undo: { $change }
step-redo = Redo
step-redo-what = Redo: { $change }

## The panels beside the drawing: part/tabs.rs, see.rs

tabs-label = Panels
tabs-fit = Chart
tabs-cloth = Cloth
tabs-details = Details
tabs-construction = Seams
tabs-yarn = Yarn
tabs-order = Sewing order
tabs-findings = Findings
tabs-errors = { $errors ->
    [one] 1 error
   *[other] { $errors } errors
}

## What has to be said of the file: part/notice.rs

notice-changed = The file was changed outside the bench. Nothing of that was overwritten; load it again before going back or forward.
notice-taken-over = The file was changed outside the bench and has been read again. What was there before is kept in the history.
notice-broken = The file was changed outside the bench and cannot be read now. The last sound version is shown; put the file right, then load it again.
# After a list of changes: how many more there are.
notice-more = { $more ->
    [one] and 1 more
   *[other] and { $more } more
}
notice-reload = Load again

## The foot of the page, with every change of the session: part/history.rs

foot-none = Every change is saved to its file as it is made.
foot-saved = { $change }. Saved.
foot-no-changes = No changes in this session
foot-changes = { $changes ->
    [one] 1 change in this session
   *[other] { $changes } changes in this session
}

## What a change led to: consequence.rs. Each begins in small letters, several stand in a row

# $change begins with + or −.
followed-yarn = yarn { $change }, now { $total } a pair
followed-allowance = { $seam } allowance { $was } → { $now }
followed-allowance-none = none
followed-allowances = { $seams ->
    [one] allowances of 1 more seam
   *[other] allowances of { $seams } more seams
}
followed-errors-more = { $errors ->
    [one] 1 new error
   *[other] { $errors } new errors
}
followed-errors-fewer = { $errors ->
    [one] 1 error fewer
   *[other] { $errors } errors fewer
}
followed-warnings-more = { $warnings ->
    [one] 1 new warning
   *[other] { $warnings } new warnings
}
followed-warnings-fewer = { $warnings ->
    [one] 1 warning fewer
   *[other] { $warnings } warnings fewer
}
followed-notes-more = { $notes ->
    [one] 1 new note
   *[other] { $notes } new notes
}
followed-notes-fewer = { $notes ->
    [one] 1 note fewer
   *[other] { $notes } notes fewer
}

## Fields and lists: field.rs, choice.rs

# A tooltip: how the file itself writes the value.
field-kept = in the file: { $words }
# A choice that cannot be made now, and why.
choice-barred = { $choice } ({ $why })
choice-stitch = { $code } { $name }
choice-yarn = { $yarn }, { $colour }
# No drawing of the maker's own.
choice-no-art = none
