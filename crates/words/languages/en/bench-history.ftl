### The history of a style: crates/bench/src/page/history and when.rs.

## When a version was written

# $time is such as 14:05.
history-when = { $day } { $month ->
    [1] Jan
    [2] Feb
    [3] Mar
    [4] Apr
    [5] May
    [6] Jun
    [7] Jul
    [8] Aug
    [9] Sep
    [10] Oct
    [11] Nov
   *[12] Dec
} { $year }, { $time }

## The list of versions

history-title = History
history-which = Which versions
history-all = All { $count }
history-with-name = Named { $count }
# All changes of all files of the collection, and how many
history-files = All files { $count }
history-files-lead = What was changed in any file of the collection, the latest first. Undo and redo go along this list.
history-files-none = Nothing was changed yet.
history-version-of = { $file }, version { $number }
history-way-undone = Taken back
history-way-again = Made again
history-put-file-back = Back to version { $number }
history-put-file-back-named = Put version { $number } of { $file } back
history-file-is-back = version { $number } of { $file } is in it again
history-lead = Every version is kept beside the style. Putting one back is a change like any other and can be undone.
# Followed by a list of problems.
history-file-unreadable = The style file cannot be read as it is now; the last sound version is shown.
# Followed by a list of problems.
history-names-unreadable = The names cannot be read. Put the file right, or take it away to begin anew.
history-no-names = No version has a name yet. Give one a name to find it again: “sent to the workroom, first sample”.
history-unreadable = The history cannot be read
history-unreadable-why = The folder .revisions beside the style cannot be listed: { $why }.
history-undrawable = This version cannot be drawn

## The pages of the list

history-pages = Pages
history-newer = Newer
history-page-of = Page { $page } of { $pages }
history-older = Older

## A version of the list

history-version = Version { $number }
history-now = In the file now
history-as = As version { $number } was
# $number is the version that is compared, $other the one it is compared with.
history-compare = Compare with version { $other }
history-compare-named = Compare with version { $other }: version { $number }
history-compare-now = Compare with now
history-compare-now-named = Compare with now: version { $number }
history-put-back = Put back
history-put-back-named = Put version { $number } back
history-version-unreadable = This version cannot be read now.
history-first = The first version that is kept.
history-only-comments = Comments, or the way it is written.
# How many changes are folded away.
history-more = { $count } more

## The name of a version

history-rename = Rename
history-rename-named = Rename: version { $number }
history-name-it = Name it
history-name-it-named = Name it: version { $number }
history-name-of = Name of version { $number }
history-save-name = Save the name
history-take-name-away = Take the name away
history-is-called = version { $number } is called "{ $name }"
history-has-no-name = version { $number } has no name any more

## Two versions compared

compare-title = Compare
compare-all = All versions
compare-drawings = Drawings
compare-version = Version
compare-with = with
compare-size = Size
compare-go = Compare
# In the list of versions to choose from.
compare-choice-now = { $number }, now
compare-others = Other versions
compare-swap = Swap
compare-previous = Previous
compare-next = Next
compare-look = How they lie
compare-beside = Side by side
compare-over = Overlaid
compare-view = Side of the pair
compare-front = Front
compare-back = Back
compare-face = Face of the cloth
compare-outside = Outside
compare-inside = Inside
compare-no-version = There is no such version
compare-no-version-why = Versions are called by their number, by the name they were given, or “now”.

## What is compared

compare-now = Now
compare-number = Version { $number }
compare-number-name = Version { $number }, { $name }
# $version is such as “Version 3, first sample”.
compare-in-file-now = { $version }, in the file now
# $when is the day and the time it was written.
compare-written = { $version }, { $when }
# $drawing is what a drawing shows, such as its view.
compare-drawing = { $drawing }, version { $number }
# Drawings over each other: $upper is the version on top, drawn in dashes.
compare-overlaid = { $upper }, dashed, over { $under }, size { $size }
compare-unreadable = { $version } cannot be read now.
compare-no-size = The two have no size in common, so they are not drawn.

## What is different

compare-differs = What is different
compare-not-known = What differs is not known while one of them cannot be read.
compare-same = Nothing: the texts are the same.
compare-only-comments = Only comments, or the way it is written.
compare-takes = What a pair takes in size { $size }
compare-difference = Difference
