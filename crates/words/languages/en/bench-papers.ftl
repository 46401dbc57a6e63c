### The papers room: crates/bench/src/page/papers.

## The production pack

papers-pack-title = Production pack
papers-pack-lead = One document a workroom sews from: chart and how it is measured, sewing order, every seam and row, yarn plan, plates, pieces, lays, materials and cautions.
papers-no-script = Making papers needs the bench’s scripts, which this browser does not run.
papers-pack-size = Size that is drawn and counted
papers-pack-date = Date on every page
papers-pack-make = Make the pack
papers-pack-none = The pack is made in the background; you may go on working. It takes some seconds.
papers-date-wrong = a date is written year, month, day, such as 2026-03-01
papers-pack-busy = a pack of this style is being made; cancel that one first

## A pack being made

papers-pack-progress = The pack
papers-pack-begins = Beginning.
papers-pack-sews = Sewing size { $size } of { $sizes }.
papers-pack-lays = Laying cloth { $cloth } of { $cloths }.
papers-pack-sets = Drawing and setting the pages.
papers-pack-ending = Ending; the pages being set are finished first.
papers-so-far = { $time } so far.
papers-waits = It waits
papers-cancel = Cancel

## A pack that was made, or not

papers-pack-failed = The pack could not be made
papers-pack-cancelled = The pack was cancelled.
papers-download = Download
papers-open = Open in a new tab
papers-pages = Pages
# $bytes is the size of the file with its unit.
papers-pages-size = { $pages }, { $bytes }
papers-version = Version
papers-version-date = { $revision }, of { $date }
papers-size = Drawn and counted in
papers-errors = Findings of grade error
papers-errors-none = none
papers-errors-see = see them
papers-cover = Front of { $style }, as in the pack
papers-contents = What is in it

## The patterns

papers-patterns-title = Patterns
papers-patterns-lead = The pieces as they are cut, in true millimetres.
papers-kind = Kind of file
papers-kind-dxf = DXF
papers-kind-dxf-for = for pattern and cutting programs, all sizes in one file
papers-kind-svg = SVG
papers-kind-svg-for = for drawing programs, true to scale, a file a size
papers-kind-hpgl = HPGL
papers-kind-hpgl-for = for a plotter or cutting table, a file a size
papers-kind-a4 = PDF on A4
papers-kind-a4-for = at true size, to be taped together
papers-kind-a3 = PDF on A3
papers-kind-a3-for = at true size, to be taped together
papers-kind-roll = PDF on a roll
papers-kind-roll-for = at true size, one page as wide as a plotter’s roll
papers-sizes = Sizes: none chosen makes all of them
papers-width = Width of the roll, for HPGL and roll
papers-nested = On PDF: all sizes on each other, in one file
papers-make = Make the files
papers-patterns-none = Files are made in the background and stand here until the bench is ended or others are made.
papers-kind-wrong = the kinds of files are { $kinds }
papers-width-wrong = a roll is from 20 cm to 5 m wide; write it with its unit, such as 150 cm
papers-patterns-busy = patterns of this style are being made; cancel those first

## Patterns being made, and made

papers-patterns-progress = The files
papers-patterns-ending = Ending.
papers-patterns-made = { $made } of { $sizes ->
    [one] 1 size
   *[other] { $sizes } sizes
}.
papers-patterns-failed = The files could not be made
papers-patterns-cancelled = The files were cancelled.
papers-files = { $files ->
    [one] 1 file
   *[other] { $files } files
}
# $pieces is a list of pieces.
papers-left-out = Left out, for not every size has it alike: { $pieces }. Print these size by size.
# $bytes is the size of the file with its unit.
papers-file-pages = { $pages ->
    [one] 1 page
   *[other] { $pages } pages
}, { $bytes }
# Followed by a list of changes.
papers-earlier = Made of an earlier state of the style. Since then changed:

## What is read out

papers-said-pack-making = The pack: being made
papers-said-pack-made = The pack: made
papers-said-pack-failed = The pack: not made, for a reason said on the page
papers-said-pack-cancelled = The pack: cancelled
papers-said-patterns-making = The patterns: being made
papers-said-patterns-made = The patterns: made
papers-said-patterns-failed = The patterns: not made, for a reason said on the page
papers-said-patterns-cancelled = The patterns: cancelled
