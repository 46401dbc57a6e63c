### The seams and the sewing order: crates/bench/src/part/construction.rs, order.rs.

construction-title = Seams
construction-lead = Rows are counted from the outermost; an offset is measured from the seam line.
# What a seam of the drawing is called, where it is pointed at.
construction-seam = { $seam }, { $construction }

## What is said of a seam beside its section

construction-class = Class
construction-machine = Machine
construction-plies = Plies
construction-allowances = Allowances
# To which side the seam lies.
construction-lies = Lies

## How a seam is made

construction-how = Construction
construction-how-label = { $seam }: construction
# Opens the list of the constructions that the seam cannot have, with the reasons.
construction-refused = Why no other
# Which ply lies over which.
construction-lap = Lap
construction-lap-label = { $seam }: which ply lies on top
# Before a choice: in its own way, or as another seam.
construction-like = Sewn
construction-like-label = { $seam }: where rows and construction come from
construction-like-none = in its own way
construction-like-seam = as the { $seam }

## A row of stitches

construction-row = Row { $row }
construction-row-remove = Take out row { $row } of the { $seam }
construction-row-add = Add a row
construction-stitch = Stitch
construction-density = Density
construction-offset = Offset
construction-needle = Needle yarn
construction-under = Under yarn
construction-begin = Begins
construction-end = Ends
# How a row begins or ends.
construction-ending-usual = as usual on this seam

## The same for somebody who hears it: the seam, the number of the row, and what the field is

construction-stitch-label = { $seam }, row { $row }: stitch type
construction-density-label = { $seam }, row { $row }: density
construction-offset-label = { $seam }, row { $row }: offset from the seam line
construction-needle-label = { $seam }, row { $row }: needle yarn
construction-under-label = { $seam }, row { $row }: under yarn
construction-begin-label = { $seam }, row { $row }: how it begins
construction-end-label = { $seam }, row { $row }: how it ends

## Seams that a style may have or not

construction-remove = Take the seam out
construction-remove-label = Take out the seam { $seam }
construction-add = Add { $seam }
construction-add-label = Add the seam { $seam }

## The sewing order

order-title = Sewing order
# $sewn is the length of all rows of stitches.
order-lead = { $operations ->
    [one] 1 operation
   *[other] { $operations } operations
}, { $machines ->
    [one] 1 machine or table
   *[other] { $machines } machines and tables
}, { $sewn } sewn in a pair. The pair is sewn before its wash: figures are what the machine is set to then. One operation is one pass at one machine; what has to be done before comes earlier.
# What the style does not say of an operation; then also the stitch and the density that are usual for it.
order-density = set to { $set }, { $counted } after the wash
order-not-stated = Not stated in the style: { $what }
order-not-stated-stitch = Not stated in the style: { $what }, usually { $stitch }
order-not-stated-density = Not stated in the style: { $what }, usually { $stitch } at { $density }
# Opens what has to be done before an operation, and where the way of doing it comes from.
order-source = Before and source
# Opens the same, where there is something to mind.
order-mind = To mind
# The operations that have to be done before.
order-after = After { $operations }.
order-earlier = { $number } { $operation }
