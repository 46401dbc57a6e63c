### The production pack.

## Measurement charts

papers-measure-at = { $name }, { $level } { $from }
papers-unit-cm = centimetres
papers-unit-in = inches
papers-rounding-cm = to the millimetre
papers-rounding-in = to the sixteenth where it is exact, else to a hundredth
papers-chart-title = Measurement chart
papers-chart-before-wash-title = Measurement chart before the wash
papers-chart-before-wash = The pair as it comes off the machine, before its first wash, flat and closed: what it has to measure so that the wash leaves the measurement chart. In { $unit }, { $rounding }, worked out from the pieces as they are cut, for a cloth that loses { $warp } along the warp and { $weft } along the weft. Levels have moved with the cloth. For the check on the line; the pair is accepted by the chart after the wash.
papers-chart-raw = The unwashed pair as it is delivered, flat and closed; { $unit }, { $rounding }. Girths are whole girths. The numbers are those of the measure diagrams.
papers-chart-washed = Finished garment after its first wash, flat and closed; { $unit }, { $rounding }. Girths are whole girths. The numbers are those of the measure diagrams.
papers-chart-size-is-a-name = A size is a name, not a measure: { $size } measures { $waist } round its waist and { $inseam } along its inseam.
papers-chart-expected-title = Expected after the wearer's first wash
papers-chart-waists = waist size, inches
papers-chart-length = length
papers-chart-expected = What the unwashed pair is expected to measure after its first wash, worked out from the chart for a cloth that loses { $warp } along the warp and { $weft } along the weft. In { $unit }, { $rounding }. An expectation, not what the pair is accepted by.

## What the figures of a chart rest on

papers-chart-stated = Every measure is stated by the style.
papers-chart-usual = The style states every measure but these, for which the usual figure stands (common practice): { $usual }.
papers-chart-drafted = The style states every measure but these, which follow from the others: { $drafted }.
papers-chart-usual-drafted = The style does not state these, for which the usual figure stands (common practice): { $usual }; nor these, which follow from the others: { $drafted }.
papers-tolerances-stated = Tolerances are stated by the style; published ones are 25 mm on waist and seat, 13 mm on other girths and 6 mm on the inseam, either way.
papers-tolerances-usual = The style states no tolerance: those printed are usual (common practice), either way; published ones are 25 mm on waist and seat, 13 mm on other girths and 6 mm on the inseam.
papers-tolerances-mixed = Tolerances are stated by the style but for these, which have the usual ones (common practice): { $usual }.

## The wash

papers-wash = The wash
papers-wash-not-stated = Not stated: ask who gives the pair its first wash, when and how, and what is set only after it.
papers-wash-asked = who gives the first wash, when and how, and what is set only after it
papers-wash-chart = The chart is of the pair after its first wash.
papers-wash-raw = The pair is sold raw: it is not washed before it is delivered, pieces are cut as the chart says, and the chart is of the unwashed pair. Its first wash is given by { $by }.
papers-wash-rinsed = The pair is sewn unwashed and rinsed by { $by }; the chart is of the pair after that.
papers-wash-washed = The pair is sewn unwashed and washed by { $by }; the chart is of the pair after that.
papers-wash-mill = The cloth is washed by the mill before it is cut; what it still loses is stated of the cloth, and the chart is of the pair after its next wash.
papers-wash-steps = The recipe, in the maker's words: { $steps }.
papers-wash-recipe = the recipe
papers-wash-which-laundry = which laundry
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

papers-order-note = Size { $size }. The pair is sewn before its wash: every figure here is what a machine, a folder or a guide is set to then. One operation is one pass at one machine or table; an operation never comes before what it needs. Machines and attachments are the usual ones: a workroom may use its own, as long as rows, stitches and yarns stay. What they are, with their needles and gauges, is common practice or from memory: confirm it by a sample. No minutes are part of this pack: declare yours.
papers-stitch-set = { $stitch }, set to { $own } ({ $other }), { $finished } after the wash

## The state of figures, in the head of every page

papers-one-size = size { $size }
papers-all-sizes = all sizes
papers-state-before = { $sizes } · figures before the wash
papers-state-after = { $sizes } · figures after the wash
papers-state-unwashed = { $sizes } · figures of the unwashed pair
papers-state-annex = annex for the maker · where a workroom needs it, that is said at its place
papers-annex = Annex:

## What is open: said at its place, and gathered in one list

papers-ask = Not stated: ask.
papers-asked = { $what }: not stated, ask.
papers-to-ask = To ask before the first pair is cut
papers-open-count = { $count ->
    [one] One question is open and to be answered before the first pair is cut.
   *[other] { $count } questions are open and to be answered before the first pair is cut.
}
papers-open-note = Everything this pack looks for that neither style nor collection states, with the place where the answer belongs. What is not answered is not to be guessed. What the checks found is a list of its own, below.
papers-open-none = Everything this pack looks for is stated by style and collection. What the checks found is a list of its own, below.
papers-open-what = What is asked
papers-open-place = Where it belongs
papers-open-answer = Answer
papers-open-about = { $about } – { $what }
papers-who-buyer = Buying and the order
papers-who-cutter = Spreading and cutting
papers-who-sewer = Sewing
papers-who-laundry = The laundry
papers-who-inspector = Inspection
papers-who-packer = Packing
papers-place-cover = Cover
papers-place-cutting = Cutting
papers-place-order = Sewing order
papers-place-operation = Sewing order, operation { $number }
papers-place-checks = Inspection and packing: { $group }

## The cover

papers-revision = Revision { $number }
papers-workroom-open = a workroom that is open
papers-cover-front = Front
papers-cover-back = Back
papers-cover-fit = Fit
papers-cover-waists = Waists
papers-cover-lengths = Lengths
papers-cover-drawn = Drawn size
papers-cover-sample = Sample size
papers-cover-closing = Closing
papers-cover-buttons = button fly, { $count } and 1 on the band
papers-cover-zip = zip fly, { $zip }, and 1 button on the band
papers-cover-shell = Shell
papers-cover-pocketing = Pocketing
papers-cover-lining = Lining
papers-cover-back-pockets = Back pockets
papers-cover-extra = Extra pocket
papers-cover-extra-on = 1, on the { $side } pocket bag, towards the body
papers-cover-loops = Belt loops
papers-cover-loops-for = { $count }, for a belt of { $belt }
papers-none = none
papers-left = left
papers-right = right
papers-unlined = unlined
papers-half-lined = upper half lined
papers-fully-lined = fully lined
papers-left-right-lined = Left { $left }, right { $right }

## In what the back pockets differ

papers-pockets-differ = The right back pocket differs from the left on purpose: { $how }
papers-pocket-measure = { $what } { $right } { $state } (left { $left })
papers-pocket-foot = foot width
papers-pocket-side = length of the inner side
papers-pocket-drop = outer drop
papers-pocket-stitching = its own stitching
papers-figure-after = after the wash
papers-figure-unwashed = unwashed

## Who made it and whom to ask

papers-contact-maker = Made by
papers-contact-workroom = Sewn by
papers-contact-questions = Questions to
papers-contact-there = Contact
papers-contact-there-asked = whom to ask at the workroom
papers-contact-order = Order
papers-order-asked = pairs by size and the day of delivery
papers-order-states = Pairs by size and the day of delivery stand in the order, not in this pack: ask for it.

## Materials

papers-materials = Materials
papers-materials-note = For one pair in size { $size }. Cloth is what the lay shown takes, without the ends of a spread; the net area is that of the cut pieces before the wash. Yarn is a geometric estimate without waste.
papers-materials-uncounted = Work the style writes no row for, about { $much }, is not in it; some of it is not even estimated, as the yarn pages tell.
papers-materials-belt = The loops are for a belt of { $belt }, which is not part of the pair.
papers-materials-basis = What each material is, is stated by the collection; numbers of trims are counted on the pair as it is stated. Who sells a material is stated with it, or is to be asked before it is bought.
papers-cloth = Cloth
papers-sewing-yarn = Sewing yarn
papers-buttons-rivets = Buttons and rivets
papers-buttons-rivets-zip = Buttons, rivets and zip
papers-patch-and-labels = Patch and labels
papers-interlining = Interlining
papers-interlining-none = none: not a part of this style
papers-quantity-laid = { $laid } laid; { $net } net
papers-quantity-net = { $net } net
papers-thick = { $thickness } thick
papers-usable-width = usable width { $width }
papers-finished-edges = finished edges
papers-to-the-cone = { $length } to the cone
papers-article = article { $article }
papers-shade = colour number { $shade }
papers-supplier = supplier
papers-article-number = article number
papers-shade-number = colour number
papers-colour = colour
papers-dye = how it is dyed
papers-what-it-loses = what the first wash takes of it
papers-bartacks = bartacks
papers-buttonholes = buttonholes
papers-other-sewn = other seams
papers-at-fly = Fly
papers-at-mouths = pocket mouths
papers-at-coin-pocket = upper corners of the coin pocket
papers-at-back-pockets = upper corners of the back pockets
papers-at-band = waistband
papers-at-fly-shield = fly shield
papers-hidden = { $name }, hidden
papers-hidden-rivets = { $places }; seen inside only, set before the pockets are sewn
papers-patch-place = On the band, right of centre back by { $away } after the wash
papers-patch-letters = letters { $letters }
papers-yarn-unreckoned = Besides that these are sewn by the workroom’s own way and their yarn is not even estimated: { $operations }. Ask, and add what they take before yarn is bought.
papers-drawn-on-plate = drawn line by line on its plate, at 1:1
papers-label-below = { $place }, its upper edge { $below } below the band seam before the wash
papers-tells = tells { $purposes }
papers-reads = reads “{ $text }”
papers-across = { $across } across
papers-flat = { $width } × { $height }
papers-finished-flat = { $width } × { $height } finished
papers-long = { $length } long
papers-tanned-vegetable = tanned with plant extracts
papers-tanned-chrome = tanned with chromium
papers-tanned-chrome-free = tanned without chromium
papers-fold-flat = cut straight, laid flat
papers-fold-ends = both ends turned under
papers-fold-centre = folded in the middle, both ends held at the seam
papers-fold-mitre = both ends turned up at 45 degrees
papers-what-it-says = what it says
papers-what-it-tells = what it tells
papers-tanning = tanning
papers-thickness = thickness
papers-turned-under = how much is turned under at each end, and so its cut size
papers-caught-in-seam = how far its ends reach past the row that holds it, and so its cut size

## What a cloth loses in its first wash, and what that rests on

papers-shrinks-stated = stated to shrink { $warp } × { $weft } (warp × weft)
papers-shrinks-measured = shrank { $warp } × { $weft } in its wash test (warp × weft)
papers-shrinks-as-stated = is stated to shrink
papers-shrinks-as-measured = was measured in its wash test to shrink
papers-shrinks-open = is reckoned to shrink
papers-shrinkage-stated = stated
papers-shrinkage-in-part = stated in part
papers-shrinkage-measured = measured in its wash test
papers-shrinkage-open = nothing is known of it

## To mind

papers-mind = To mind
papers-mind-lead = What holds whatever the style. Rules of law and standards are as generally known: confirm them.
papers-before-cut = Before you cut
papers-cut-raw = Chart, drawings and pieces are those of the unwashed garment.
papers-cut-washed = Chart and drawings are those of the garment after its first wash.
papers-cut-raw-shrinks = { $cloth } { $basis } { $warp } along the warp and { $weft } along the weft when it is washed: nothing is added for that.
papers-cut-larger = { $cloth } { $basis } { $warp } along the warp and { $weft } along the weft: its pieces are cut larger by { $warp-factor } along the warp and { $weft-factor } along the weft. Measure the shrinkage of the lot you cut before you rely on these figures.
papers-cut-no-shrinkage = The shell is stated not to shrink: measure the shrinkage of the lot you cut before you rely on that.
papers-cut-unknown = Nothing is known of what the wash takes of the shell, and nothing is added for it: measure the shrinkage of the lot before you cut.
papers-nickel = Nickel
papers-metal-buttons = Buttons
papers-metal-rivets = Buttons and rivets
papers-metal-zip = Buttons and zips
papers-metal-zip-rivets = Buttons, rivets and zips
papers-nickel-touches = { $metal } touch the skin for hours.
papers-nickel-hidden = { $metal } touch the skin for hours, the backs of hidden rivets most of all.
papers-nickel-text = In the European Union they may release at most 0.5 µg of nickel per cm² and week (REACH Annex XVII entry 27; tested by EN 1811, coated parts worn first by EN 12472). Send a licensed laboratory's report for the lot used; where your law asks more, it goes before this.
papers-nickel-asked = whether { $trim } is free of nickel
papers-nickel-unsaid = What { $trim } is made of does not say that it is free of nickel: ask before it is ordered.
papers-chromium = Chromium in leather
papers-chromium-chrome = The patch is leather tanned with chromium, of which some may turn into chromium(VI) with heat, light and age.
papers-chromium-open = The patch is leather and how it was tanned is unknown: treat it as tanned with chromium until the tanner says otherwise.
papers-chromium-vegetable = The patch is leather, stated to be tanned with plant extracts; that does not replace the test.
papers-chromium-free = The patch is leather, stated to be tanned without chromium; that does not replace the test.
papers-chromium-text = In the European Union leather that touches the skin must hold less than 3 mg/kg of chromium(VI) in its dry weight (REACH Annex XVII entry 47; tested by EN ISO 17075). Send a licensed laboratory's report for the lot used. Where your law asks more, it goes before this.
papers-dyes = Dyes and chemicals
# Entry 43 names the amines and 30 mg/kg; entry 72 names substances and limits one by one.
papers-dyes-text = In the European Union textiles and leather that touch the skin may not hold azo colourants that can release more than 30 mg/kg of a listed aromatic amine (REACH Annex XVII entry 43), and clothing may hold substances that cause cancer, change genes or harm reproduction only below the limits of entry 72. Ask mill, dyer, printer, tanner and laundry for a licensed laboratory's report for the lot used. Where your law asks more, it goes before this.
papers-needles = Needles and metal
papers-needles-text = One broken needle is one recorded case: all parts found and kept with the record, or the garment does not ship. Needles are changed and counted by one named person. Pass every finished pair through a metal detector set up with a test piece agreed with us, before and after each lot; metal trims as approved are excepted as agreed.
papers-told-by = Told by the label “{ $labels }”.
papers-label-untold = No label of this style is stated to tell { $what }: settle which one does before the labels are ordered.
papers-label-asked = which label tells { $what }
papers-told-fibres = the fibres
papers-told-care = the care
papers-told-origin = the origin, which the United States ask for
papers-fibre = Fibre and origin
papers-fibre-text = The fibre label gives the fibres by their legal names with their shares, the largest first, in the language of the country of sale: Regulation (EU) 1007/2011 in the European Union; the fibre rules of the Federal Trade Commission (16 CFR 303), with the country of origin and the maker's or seller's identity, in the United States.
papers-fibre-leather = Because of the leather patch the label also says “Contains non-textile parts of animal origin” (article 12).
papers-fibre-law = The law of the country of sale goes before this; composition is proven by a licensed laboratory.
papers-care = Care
papers-care-text = Care symbols are those of ISO 3758:2023, which replaces the edition of 2012, in the order it gives: washing, bleaching, drying, ironing, professional care. Each is the harshest treatment the pair is to bear. They are trademarks: printing them needs their owner's licence. The words follow the country of sale (a care label is required in the United States, 16 CFR 423). They must be proven on this cloth, made up and washed, by a licensed laboratory.
papers-care-symbols = Only the words of labels are stated; no symbols are drawn here. Which symbols: not stated, ask.
papers-care-symbols-asked = which care symbols, if any
papers-size-told = Size
papers-size-text = The size label says the size of the pair it is in; the drawings show { $size }. Check it against the chart before it is sewn in.
papers-safety = Safety and the maker's address
papers-safety-text = In the European Union the general product safety regulation, (EU) 2023/988, applies since 13 December 2024: the maker's name, postal and electronic address stand on the pair, its packing or a paper with it, and those of a responsible person in the Union where the maker is not there. Settle where they stand before labels are ordered. The law of the country of sale goes before this; have it looked at by someone licensed to advise on it.

## Cutting and lays

papers-cutting-note = Pieces of size { $size } as they are cut: larger by what the first wash takes, with their allowances. Measure the shrinkage of your own lot before you cut. Widths are stated by the collection, allowances are common practice for their seams, areas and lays are reckoned from the pieces.
papers-band-refused = The band is not cut yet: { $why }.
papers-laid-one-way = In the lays shown one ply lies open, face up; every piece lies the same way up, and none is turned over: left and right are cut from mirrored pieces.
papers-laid-two-ways = In the lays shown one ply lies open, face up; pieces may be turned head to tail, and none is turned over: left and right are cut from mirrored pieces.
papers-never-face-to-face = Plies are never laid face to face, for on every cloth some pieces have no mirror image.
papers-face-to-face = Plies may be laid face to face only where every piece has its mirror image: { $cloths }.
papers-ask-plies = how many plies lie on one another
papers-ask-rest = how long each cloth rests open before it is cut
papers-fact-width = Usable width
papers-fact-cut-for = Cut for a shrinkage of
papers-fact-slack = Slack after the wash
papers-fact-takes = One pair takes
papers-fact-least = No lay is shorter than
papers-fact-used = Cloth used
papers-fact-no-lay = No lay
papers-cut-for-own = { $warp } warp, { $weft } weft ({ $basis })
papers-cut-for-shells = { $warp } warp, { $weft } weft, the shell’s, to which it is sewn
papers-slack-of = { $warp } warp, { $weft } weft, for it loses less than the shell
papers-lay-on = Lay on { $cloth }, { $size }
papers-lay-note = One pair, size { $size }, one ply, face up, pieces head to tail. The warp runs from left to right.
papers-corners = Corners as they are cut
papers-corners-note = One for each kind. Figures are allowances in millimetres.
papers-nests-by-waist = Nests by waist
papers-nests-by-waist-note = Length { $length }, each size on the base { $base } at the ringed point; strong line { $base }.
papers-nests-by-length = Nests by length
papers-nests-by-length-note = Waist { $waist }, each length on the base { $base } at the ringed point; strong line { $base }.
papers-grade-waists = From waist to waist, as stated in the chart
papers-grade-lengths = From length to length, as stated in the chart

## Pieces

papers-pieces-note = Areas are of one cut piece with its allowances, size { $size }, as it is cut, before the first wash; they are reckoned from the pieces.
papers-alike = { $n } alike
papers-left-and-right = left and right
papers-lefts = { $left } left, { $right } right
papers-drawn-mirrored = { $drawn } as drawn, { $mirrored } mirrored
papers-piece-not-cut = not cut until it is settled how
papers-piece-on-edge = outseam on the cloth's finished edge
papers-piece-in-two = cut in two, joined at the centre back
papers-piece-sides-differ = left and right differ
papers-piece-folded = folded

## The sewing order with its seams

papers-not-stated = Not stated: { $what }.
papers-not-stated-sewn = Not stated: { $what }. Its yarn is estimated as { $stitch }, as counted on the finished pair.
papers-construction-note = In sections the dark side of a ply is its face. A row's place is that of its needle. Numbers of ISO 4916 are given for orientation and are not checked against the standard: words, drawings and rows decide. The number behind the letters of ASTM D6193 is that of the rows of stitches through the plies; by common practice the row that joins them counts whether or not it is stated, a safety stitch as two and a coverstitch as one, and an overedge that only neatens does not. Machines are from memory, allowances common practice; thickness is the sum of the plies, not pressed.
papers-class-unsure = { $class } (to be confirmed)
papers-edges-show = the cloth's finished edges show inside
papers-labels-lie = laid on top; { $labels }
papers-label-folded = { $label }: { $fold }
papers-row-on = on the { $from }
papers-row-from = { $away } from the { $from }
papers-over-edges = over the raw edges
papers-from-fly-edge = fly edge
papers-from-band-edges = band's ends and top edge
papers-from-band-seam = band seam
papers-from-seam-line = seam line
papers-from-fold = visible fold
papers-from-lower-edge = finished lower edge
papers-from-finished-edge = finished edge
papers-from-upper-edge = edge of the upper piece
papers-from-loop-edge = left edge of the finished loop
papers-from-drawn-line = drawn line

papers-pieces-true-size = Nothing is cut from these drawings: patterns at true size come beside this pack as files or on paper. If they did not come, ask.
papers-yarn-needles = needles { $finest } to { $heaviest } (from memory: confirm)
papers-section-at = Section and places of the rows: at operation { $number }.
papers-other-seams = Seams that are sewn with other work
papers-seam-class = class
papers-seam-rows = row

## Sewing yarn

papers-yarn-note = For one pair in size { $size }, thread ends, backtacks and overlaps not counted: they are in the waste. Lengths are reckoned from the rows as they are sewn, by published formulas; which stands behind which seam is told in the annex. A yarn measured from a sewn sample goes before any formula.
papers-yarn-pairs = { $pairs } pairs
papers-yarn-size = Size { $size }. Densities are those of the finished pair; what a machine is set to stands in the sewing order.
papers-needle-yarns = Needle yarns
papers-under-yarns = Under yarns
papers-all-yarns = All yarns
papers-yarn-basis = { $what }: { $basis }.
papers-yarn-shared = { $what }: { $basis }; sharing of needle and under yarn: { $sharing }.
papers-yarn-times = { $stitch }, { $formula } times the seam
papers-yarn-bartack = bartack, 2n √(w² + (l/n)²) + 2nT for n stitches over width w and length l
papers-yarn-buttonhole = buttonhole
papers-zigzag = zigzag
papers-keyhole = keyhole
papers-changes = What changed since the revision before
papers-changes-lead = Everything else is as it was. Where a page said otherwise in the revision before, this one goes before it.
papers-measures-basis = Where a tape is laid is common practice, and is said here so that nobody has to know it; lengths along a seam are taken along the seam.
papers-moves-basis = Reckoned from the pieces as they are cut, before the wash, on the seam line.
papers-yarn-on-cloth = Yarns on their cloth
papers-yarn-on-cloth-note = The colour difference CIEDE2000 between the colours of yarn and cloth as entered, which a screen or a dye lot may not keep: judge a sewn sample in daylight.
papers-cloth-face = face
papers-cloth-reverse = reverse

## By size

papers-by-size = By size
papers-sizes-cloth = Cloth of one pair
papers-sizes-cloth-note = Of the pieces as they are cut, before the wash. Net is the area of the pieces, reckoned; laid is what the lay of one pair takes that is shown for the size, without the ends of a spread. Of other sizes, and of several pairs together, a lay has to be planned.
papers-sizes-net = { $cloth }, net
papers-sizes-laid = { $cloth }, laid as shown
papers-sizes-yarn = Sewing yarn of one pair
papers-sizes-yarn-note = Needle and under yarn together, with { $waste } for waste. Reckoned from the rows as they are sewn, by published formulas: measure a sewn sample before a large order.
papers-sizes-marks = What is marked or counted
papers-sizes-marks-note = On the unwashed pieces. Stitches are counted on the row as the machine is set; placements that the chart states stand in the chart before the wash.
papers-marks-first-button = First fly button, below the band seam, mm
papers-marks-buttons = Fly buttons, from one to the next, mm
papers-marks-decoration-left = Decoration, left back pocket, stitches
papers-marks-decoration-right = Decoration, right back pocket, stitches
papers-marks-loop = Belt { $place }: its middle from the band's left end, mm

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
papers-check-cloth-how = Each roll: width, shade, faults, and the shrinkage of the lot both ways, before it is cut.
papers-check-measures = Measures
papers-check-measures-before = The first pair of every size and then as agreed, flat and closed, against the chart before the wash, within the tolerances there.
papers-check-measures-after = Flat and closed, dry and rested, against the measurement chart, within its tolerances.
papers-check-seams = Seams
papers-check-seams-how = Both faces, along every seam: no skipped or broken stitch, no open place, no raw edge at a felled seam, no pleat; rows at the places the sewing order states; crossings matched at fork, yoke and side.
papers-check-density = Stitch density
papers-check-density-before = Count along 5 cm of each row, away from its ends, against what the machine is set to in the sewing order.
papers-check-density-after = Count along 5 cm of each row against the density after the wash in the sewing order.
papers-check-yarn = Yarn
papers-check-yarn-how = Needle and under yarn of every row, size and colour, against the sewing order; again after every change of cone.
papers-check-shrinkage = Shrinkage
papers-check-shrinkage-how = One pair of each lot is measured before and after its wash: { $cloth } is stated to lose { $warp } along the warp and { $weft } along the weft. Tell us of any other figure before more is cut.
papers-check-shade = Shade
papers-check-shade-how = All pieces of a pair from one shade of one roll, looked at beside each other in daylight or its like.
papers-check-metal-parts = Buttons and rivets
papers-check-metal-parts-how = Every button closes and opens, sits square and does not turn on its tack; no rivet is loose, split or sharp on either face.
papers-check-labels = Labels and patch
papers-check-labels-how = The size label is that of the pair; words, place and fold as on the plates of labels; sewn as their plates show, nothing caught that should hang free.
papers-check-look = Look
papers-check-look-how = Inside out and right side out: threads cut, no oil, marking or drill hole seen, legs hang without a twist, pockets level and alike.
papers-check-shrinkage-measured = One pair of each lot is measured before and after its wash: in its wash test { $cloth } lost { $warp } along the warp and { $weft } along the weft. Tell us of any other figure before more is cut.
papers-check-repair = How a broken yarn or a skipped stitch is mended
papers-ask-fault = what counts as a fault
papers-ask-density = what it may differ by
papers-ask-how-many = how many pairs of a lot
papers-ask-shade = how far lots may differ
papers-ask-pull = the pull they must stand
papers-ask-test-piece = the size of the test piece
papers-check-needles = Needles
papers-check-needles-how = Needles are given out one for one against the old one. A broken one is recorded with pair, machine and hour, all its parts kept with the record; a pair whose needle is not found whole does not leave.
papers-check-metal = Metal
papers-check-metal-how = Every finished pair passes a detector that was tried with the agreed test piece before and after each lot.
papers-check-reports = Reports
papers-check-reports-how = Reports of a licensed laboratory, as named under To mind, come with the lot they were made of.
papers-checks-agreed = To agree before the first pair
papers-lot-sample = How many pairs are inspected
papers-lot-first-pair = Who approves the first pair
papers-lot-faults = How many faults pass, and what becomes of a pair that fails
papers-lot-record = What is recorded, and for how long it is kept
papers-agree-selvedge-line = Colour of the line in the finished edge
papers-agree-bow = How far the weft may bow or run askew in a roll
papers-agree-widths = Width over all of each cloth, and the narrowest roll that is taken
papers-agree-roll-test = How the shrinkage of each roll is tried before it is cut, and how far it may be from what is stated
papers-agree-substitutes = What may stand in for a material that cannot be had
papers-agree-spares = Spare buttons, rivets and labels, and how many size labels of each size
papers-agree-language = Words of this pack in the workroom’s language, and who answers where one is unclear
papers-agree-files = Which pattern files or papers came with this pack, and whether their square of 100 mm measures 100 mm
papers-agree-lays = Which sizes are cut together, in how many plies, face up or face to face; what cloth the order takes follows from that
papers-agree-drill = Drill marks: how thick, and whether another mark is wanted instead
papers-agree-cones = Cones for every needle and looper that sews at once, beyond the metres
papers-agree-needles = How often a needle is changed that is not broken
papers-agree-holes = Buttonholes: cut before or after they are sewn, bar or taper at their end, bite
papers-agree-uppermost = Which ply lies uppermost at the machine, where the order does not say
papers-agree-in-the-wash = In the wash: fly and band buttoned or open, and how a roped hem is spared afterwards
papers-agree-rest = How long a pair rests after the wash before it is measured
papers-agree-signs = Who signs that the goods conform, and keeps the papers
papers-agree-metal = Rivets and buttons: length of post or tack for the plies they hold, holes, dies and force
papers-agree-crotch-tack = Crotch tack: at what angle to the seams it crosses
papers-agree-recut = A faulty piece: who cuts it again, and from which ply or roll
papers-agree-fly-foot = Foot of the fly, where the rise goes on: how far the allowances are clipped, and which way they turn
papers-agree-loop-slack = Slack of a loop over the band, beyond the belt
papers-agree-pages = Which page holds where two say otherwise
papers-agree-sewn-before = Whether a pair was ever sewn from this revision, and what in it is untried
papers-agree-alike = How far left and right of a pair may differ
papers-agree-supplies = Who buys cloth, yarn, trims and labels and has them sent, with their minimums and lead times
papers-agree-price = Price of a pair, and what it covers
papers-agree-over = How many pairs over or under the order are taken
papers-agree-countries = Countries the pair is sold in, and the languages of its labels
papers-agree-heads = Heads of buttons and rivets: plain or lettered
papers-agree-patch = Lettering of the patch that its drawing does not show: height, face, depth
papers-agree-art = Drawings of patch and stitching as files beside this pack
papers-agree-rights = Who owns pattern and pack, and who has made sure that names and decoration are nobody else's
papers-agree-at-work = What is shown about safety and terms at work
papers-agree-bundles = How plies are numbered, shades kept apart and pieces bundled
papers-agree-cut-off = What a cut piece may be off, in its edges and in its grain
papers-agree-crossings = How far seams may miss each other at yoke, seat and fork
papers-agree-strip-tacks = Tacks between the fly buttonholes, strip to facing: whether any
papers-agree-iron = Heat and steam of pressing
papers-agree-creases = Creases and shape after the wash
papers-agree-sealed = A sealed sample to compare with
papers-agree-strength = Strength of seams, and how it is tried
papers-agree-twist = How far a leg may twist
papers-agree-rubbing = Fastness to rubbing, and a warning that the colour comes off
papers-agree-batch = A mark of the batch in the pair
papers-packing-fold = How it is folded
papers-packing-tags = Tags and tickets
papers-packing-spares = Spare button and yarn
papers-packing-bag = Bag or paper
papers-packing-carton = Carton, marks and list
papers-packing-sent = Where it is sent, and by whom
papers-packing-left-over = Left-over cloth, trims and labels

## Findings with their codes

papers-codes = Findings with their codes
papers-why = Why it is so
papers-why-about = About
papers-why-lead = In the maker’s words, so that whoever sews it knows what must not be lost. It states no figure: those stand where the work is told.
papers-findings = What the checks found
papers-findings-lead = What would settle a finding stands in italics; what each rule rests on is told in the annex.
papers-findings-none = Every check passed. Nothing is left to settle.
papers-codes-lead = All that the checks found, with what the maker has left as it is.
papers-left-so = left so
papers-found-at-size = { $about }, size { $size }
papers-found-left = { $found }. Left so by the maker: { $reason }
papers-found-at = { $piece }, at { $point }
papers-found-along = { $piece }, along { $edge }
