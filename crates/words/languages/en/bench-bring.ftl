### Bringing a pattern of the maker's own: crates/bench/src/page/begin/pattern.

bring-title = A pattern of your own
bring-skip = To the file
bring-lead = Panels you drafted yourself, as DXF or as SVG with its size in millimetres. Front, back and yoke have to be in it; what else it holds is taken too, and the rest is laid out on your panels.

## The file

bring-file = File
bring-size = Size, if it says none
bring-unit = Unit
bring-unit-usual = as the file says
bring-allowance = Allowance, of cut lines only
bring-sewn = Outlines are what is sewn along
bring-grain-up = The grain runs up the page
bring-before-wash = Larger by what the first wash takes

## The style

bring-style = Style
bring-figure = Figure
bring-fit = Fit
bring-chart = The chart says what your pattern measures; what is not on it begins as is usual for the fit.
bring-make = Make the style

## What is found in the file: found.rs

bring-found = What is in the file
bring-nothing-yet = What is found in the file is drawn here: each piece with its corners, what it is taken for and why. Nothing is kept until you make the style.
bring-pieces = { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
}
# The sizes as one of the next message says them, or as they are.
bring-pieces-in-sizes = { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
} in { $sizes }
bring-many-sizes = { $sizes ->
    [one] 1 size
   *[other] { $sizes } sizes
}, { $first } to { $last }
bring-made-out = Front, back and yoke are made out. Look whether each piece is what it is taken for, then make the style; guessed edges are marked in its file, to be confirmed there.
bring-more-pieces = { $pieces ->
    [one] and 1 more piece
   *[other] and { $pieces } more pieces
}
# Names of things in the file.
bring-passed-over = Passed over: { $names }.

## A piece

bring-piece-sewn = { $width } × { $height }, sewn line
bring-piece-sewn-no-grain = { $width } × { $height }, sewn line, no grain line
bring-piece-cut = { $width } × { $height }, cut line
bring-piece-cut-no-grain = { $width } × { $height }, cut line, no grain line
bring-outline = Outline of { $piece }
bring-it-is = It is the
# The name of a piece in the file; what it is is chosen.
bring-what-is = What { $piece } is
# Which piece of a pair, and what speaks for it.
bring-taken-for = { $piece }, by { $reason }
bring-left-aside = left aside
bring-edges = { $edges ->
    [one] 1 edge
   *[other] { $edges } edges
}
bring-edges-guessed = { $edges ->
    [one] 1 edge
   *[other] { $edges } edges
}, guessed
# The names of the corners an edge is between.
bring-edge-between = { $from } to { $to }
bring-corners = Corners where edges begin: { $edges }
bring-corners-usual = as guessed

## What is in the way: mod.rs

bring-allowance-wrong = the allowance: { $problem }
bring-too-large = the file is larger than { $megabytes } MB and was not read; bring fewer sizes at a time, or use fellwork bring
bring-no-file = choose a file first
# What is wrong, and what to do.
bring-problem = { $what }; { $instead }
# Where a size is to be written: in the field of that name.
bring-under-size = under Size:
bring-as-drawn = as they are drawn
