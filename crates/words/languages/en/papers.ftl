### The production pack.

## Measurement charts

papers-chart-title = Measurement chart
papers-chart-before-wash-title = Measurement chart before the wash
papers-chart-before-wash = The pair as it comes off the machine, before its first wash, flat and closed: what it has to measure so that the wash leaves the measurement chart. In { $unit }, { $rounding }, worked out from the pieces as they are cut, for a cloth that loses { $warp } along the warp and { $weft } along the weft. Levels have moved with the cloth. For the check on the line; the pair is accepted by the chart after the wash.
papers-chart-raw = The unwashed pair as it is delivered, flat and closed; { $unit }, { $rounding }. Girths are whole girths. The numbers are those of the measure diagrams.
papers-chart-washed = Finished garment after its first wash, flat and closed; { $unit }, { $rounding }. Girths are whole girths. The numbers are those of the measure diagrams. Tolerances are the style’s: published ones are 25 mm on waist and seat, 13 mm on other girths and 6 mm on the inseam, either way.
papers-chart-expected-title = Expected after the wearer's first wash
papers-chart-expected = What the unwashed pair is expected to measure after its first wash, worked out from the chart for a cloth that loses { $warp } along the warp and { $weft } along the weft. In { $unit }, { $rounding }. An expectation, not what the pair is accepted by.

## The wash

papers-wash = The wash
papers-wash-not-stated = Not stated: ask who gives the pair its first wash, when and how, and what is set only after it. The chart is of the pair after that wash.
papers-wash-raw = The pair is sold raw: it is not washed before it is delivered, pieces are cut as the chart says, and the chart is of the unwashed pair. Its first wash is given by { $by }.
papers-wash-rinsed = The pair is sewn unwashed and rinsed by { $by }; the chart is of the pair after that.
papers-wash-washed = The pair is sewn unwashed and washed by { $by }; the chart is of the pair after that.
papers-wash-mill = The cloth is washed by the mill before it is cut; what it still loses is stated of the cloth, and the chart is of the pair after its next wash.
papers-wash-steps = The recipe, in the maker's words: { $steps }.
papers-wash-no-steps = The recipe is not stated: ask.
papers-wash-set-after = Set only after the wash: { $what }.
papers-wash-nothing-after = Everything else is set before the wash; a leather patch may curl or stain in it: try it on a sample.

washed-by-mill = the mill
washed-by-laundry = a laundry
washed-by-workroom = the workroom that sews it
washed-by-wearer = whoever wears it

set-after-patch = the patch
set-after-labels = the labels
set-after-buttons = the buttons
set-after-rivets = the rivets

## The sewing order

papers-order-note = Size { $size }. The pair is sewn before its wash: every figure here is what a machine, a folder or a guide is set to then. One operation is one pass at one machine or table; an operation never comes before what it needs. Machines and attachments are the usual ones: a workroom may use its own, as long as rows, stitches and yarns stay. What they are, with their needles and gauges, is common practice or from memory: confirm it by a sample.
papers-stitch-set = { $stitch }, set to { $own } ({ $other }), { $finished } after the wash

## The state of figures, in the head of every page

papers-state-before = size { $size } · figures before the wash
papers-state-after = size { $size } · figures after the wash
papers-state-unwashed = size { $size } · figures of the unwashed pair
papers-state-annex = annex for the maker
papers-annex = Annex:
papers-ask = Not stated: ask.

## Who made it and whom to ask

papers-contact-maker = Made by
papers-contact-workroom = Sewn by
papers-contact-questions = Questions to
papers-contact-order = Order
papers-order-states = Pairs by size and the day of delivery stand in the order, not in this pack: ask for it.
papers-supply-ask = Supplier, article and colour number of none of these are stated: ask before you buy.

## Lays

papers-lay = Lay on { $cloth }, { $size }
papers-lay-caption = One pair, size { $size }, pieces head to tail. The warp runs from left to right.

## The sewing order with its seams

papers-pieces-true-size = Nothing is cut from these drawings: patterns at true size come beside this pack as files or on paper. If they did not come, ask.
papers-yarn-needles = needles { $finest } to { $heaviest } (from memory: confirm)
papers-section-at = Section and places of the rows: at operation { $number }.
papers-other-seams = Seams that are sewn with other work
papers-seam-class = class
papers-seam-rows = row

## By size

papers-by-size = By size
papers-sizes-cloth = Cloth of one pair
papers-sizes-cloth-note = Of the pieces as they are cut, before the wash. Net is the area of the pieces; laid is about what a lay of one pair takes when it uses as much of the cloth as the lay that is shown for the drawn size, without the ends of a spread (reckoned: a lay of several pairs takes less).
papers-sizes-net = { $cloth }, net
papers-sizes-laid = { $cloth }, about, laid
papers-sizes-yarn = Sewing yarn of one pair
papers-sizes-yarn-note = Needle and under yarn together, with { $waste } for waste. Reckoned from the rows as they are sewn, by published formulas: measure a sewn sample before a large order.
papers-sizes-marks = What is marked or counted
papers-sizes-marks-note = On the unwashed pieces. Stitches are counted on the row as the machine is set; placements that the chart states stand in the chart before the wash.
papers-marks-buttons = Fly buttons, from one to the next, mm
papers-marks-decoration-left = Decoration, left back pocket, stitches
papers-marks-decoration-right = Decoration, right back pocket, stitches

## Inspection and packing

papers-checks = Inspection and packing
papers-checks-note = What is looked at, when, and what passes. Where nothing is stated, ask before the first pair is cut: a limit that is guessed is a limit nobody agreed to.
papers-checks-before = On the line, before the wash
papers-checks-after = The finished pair, after the wash
papers-checks-safety = Safety
papers-checks-lot = The lot
papers-packing = Packing
papers-basis-stated = stated by the style
papers-basis-practice = common practice
papers-basis-law = law and standard: confirm
papers-basis-open = open

papers-check-cloth = Cloth
papers-check-cloth-how = Each roll: width, shade, faults, and the shrinkage of the lot both ways, before it is cut. What counts as a fault: not stated, ask.
papers-check-measures = Measures
papers-check-measures-before = The first pair of every size and then as agreed, flat and closed, against the chart before the wash, within the tolerances there.
papers-check-measures-after = Flat and closed, dry and rested, against the measurement chart, within its tolerances. How many pairs of a lot: not stated, ask.
papers-check-seams = Seams
papers-check-seams-how = Both faces, along every seam: no skipped or broken stitch, no open place, no raw edge at a felled seam, no pleat; rows at the places the sewing order states; crossings matched at fork, yoke and side.
papers-check-density = Stitch density
papers-check-density-before = Count along 5 cm of each row, away from its ends, against what the machine is set to in the sewing order. What it may differ by: not stated, ask.
papers-check-density-after = Count along 5 cm of each row against the density after the wash in the sewing order. What it may differ by: not stated, ask.
papers-check-yarn = Yarn
papers-check-yarn-how = Needle and under yarn of every row, size and colour, against the sewing order; again after every change of cone.
papers-check-shrinkage = Shrinkage
papers-check-shrinkage-how = One pair of each lot is measured before and after its wash: { $cloth } is stated to lose { $warp } along the warp and { $weft } along the weft. Tell us of any other figure before more is cut.
papers-check-shade = Shade
papers-check-shade-how = All pieces of a pair from one shade of one roll, looked at beside each other in daylight or its like. How far lots may differ: not stated, ask.
papers-check-metal-parts = Buttons and rivets
papers-check-metal-parts-how = Every button closes and opens, sits square and does not turn on its tack; no rivet is loose, split or sharp on either face. The pull they must stand: not stated, ask.
papers-check-labels = Labels and patch
papers-check-labels-how = The size label is that of the pair; words, place and fold as on the plates of labels; sewn as their plates show, nothing caught that should hang free.
papers-check-look = Look
papers-check-look-how = Inside out and right side out: threads cut, no oil, marking or drill hole seen, legs hang without a twist, pockets level and alike.
papers-check-needles = Needles
papers-check-needles-how = Needles are given out one for one against the old one. A broken one is recorded with pair, machine and hour, all its parts kept with the record; a pair whose needle is not found whole does not leave.
papers-check-metal = Metal
papers-check-metal-how = Every finished pair passes a detector that was tried with the agreed test piece before and after each lot. The size of the test piece: not stated, ask.
papers-check-reports = Reports
papers-check-reports-how = Reports of a licensed laboratory, as named under To mind, come with the lot they were made of.
papers-lot-sample = How many pairs are inspected
papers-lot-first-pair = Who approves the first pair
papers-lot-faults = How many faults pass, and what becomes of a pair that fails
papers-lot-record = What is recorded, and for how long it is kept
papers-packing-fold = How it is folded
papers-packing-tags = Tags and tickets
papers-packing-spares = Spare button and yarn
papers-packing-bag = Bag or paper
papers-packing-carton = Carton, marks and list
papers-packing-sent = Where it is sent, and by whom
papers-packing-left-over = Left-over cloth, trims and labels

## Findings with their codes

papers-codes = Findings with their codes
papers-codes-lead = All that the checks found, with what the maker has left as it is.
papers-left-so = left so
