### What rules of sewing say of the sewn pair.

## Bulk

sewing-bulk-too-thick = { $words }, the plies not pressed; { $machine } lifts its foot { $lift } and sews about { $sews }
sewing-bulk-left = cut away the turned-in edges inside the crossing, which leaves { $plies ->
    [one] { $plies } ply
   *[other] { $plies } plies
    } and { $thickness }, and flatten it before sewing across
sewing-bulk-left-thick = cut away the turned-in edges inside the crossing, which leaves { $plies ->
    [one] { $plies } ply
   *[other] { $plies } plies
    } and { $thickness }, still more than the { $sews } that are sewn: hammer that flat, sew a sample first, or choose a construction of fewer plies
sewing-bulk-hem-help = flatten the seam with a hammer before hemming, and hem slowly across it
sewing-bulk-machine = a lighter cloth, a construction of fewer plies, or move one of the seams
sewing-bulk-felled = choose a construction of fewer plies for one of the seams

## Closing

sewing-closing-band-button = the overlap of { $band-overlap } is too short for a button of { $size } set { $band-hole-from-end } beyond the centre front
sewing-closing-band-button-help = at least { $needs }
sewing-closing-band-button-2 = a band of { $band-height } leaves no room above and below a button of { $size }
sewing-closing-holes-in-stitching = a row at { $nearest } leaves its buttonholes, which end { $end } from the fly edge, less than the { $wanted } they need beside it
sewing-closing-buttons-crowded = 1 button of { $size } stands only { $gap } from each end
sewing-closing-buttons-crowded-2 = { $buttons } buttons of { $size } stand only { $gap } apart
sewing-closing-zip = the zip is { $value } long and the fly { $fly }
sewing-closing-zip-2 = the zip is { $value } long and leaves { $fly } of the fly closed
sewing-closing-zip-help = about { $inches }: half an inch less than the fly
sewing-closing-hole-near-end = it ends { $room } from the edge and tears out
sewing-closing-hole-near-end-help = leave at least { $hole-from-edge }
sewing-closing-hole-for-button = a button of { $button } does not go through a hole of { $hole }
sewing-closing-hole-for-button-help = a hole of { $button }
sewing-closing-band-button-help-2 = a smaller button, or a higher band
sewing-closing-holes-in-stitching-help = move the row outward, widen the fly, or choose a smaller button
sewing-closing-buttons-crowded-help = fewer buttons, or a longer fly

## Cloths

sewing-cloths-unfit-use = { $cloth } is bought as { $use-of } and used as { $asked }
sewing-cloths-unfit-use-help = another cloth, or "{ $asked }" as its use in cloths.toml
sewing-cloths-needs-stretch = ({ $words }) has no fibre that stretches
sewing-cloths-needs-stretch-2 = it is { $to-cm } cm smaller than that of a mean body with a { $tag } in waist ({ $to-cm-2 } cm): the cloth has to stretch by { $chart } % when it is put on, and { $cloth } { $fibre }
sewing-cloths-needs-stretch-help = a larger measure, or a cloth with stretch, whose `fibre` says so
sewing-cloths-needs-stretch-3 = does not say what it is made of

## Hems

sewing-hems-roping = roping is wanted, and { $why }
sewing-hems-roping-help = a rolled hem in one row of 401, through a folder
sewing-hems-roping-2 = a hem folded and pressed by hand takes none
sewing-hems-roping-3 = a lockstitch feeds both layers alike and gives little of it

## Inner

sewing-inner-extra-on-bag = it lies { $near } from a seam or the fold of the bag it is set on; { $from_seam } are wanted
sewing-inner-extra-on-bag-help = set it nearer to or further from the centre front, or make it smaller, so that it lies clear of the bag's seams in every size
sewing-inner-extra-below-band = its top edge lies { $far } below the band seam; a belt of { $belt } on a band of { $band } leaves it in view
sewing-inner-bag-short = it reaches { $below } below the mouth; a hand needs about { $hand }
sewing-inner-bag-short-help = a depth of { $hand }
sewing-inner-bag-facing = the facing reaches { $depth } below the band and the bag { $bag-depth }
sewing-inner-bag-facing-2 = the facing is { $width } wide along the band and the bag { $across } to its fold
sewing-inner-extra-below-band-help = let its top edge run up to the band seam
sewing-inner-bag-facing-help = a larger bag, or a facing that reaches less far beyond the mouth

## Loops

sewing-loops-short = between its tacks a loop is { $inside } high; a belt of { $belt } needs { $needs }
sewing-loops-short-help = a length of { $width }
sewing-loops-loose = between its tacks a loop is { $inside } high and the belt { $belt }, which lies loose in it
sewing-loops-foot = their feet end only { $below } below the band seam
sewing-loops-foot-2 = a loop of { $loop-length } does not reach below a band of { $band-height }
sewing-loops-foot-3 = { $said }, and pull on the band alone
sewing-loops-foot-help = at least { $below-seam }
sewing-loops-spacing = { $count } are few to hold a belt; { $least } to 7 are usual
sewing-loops-spacing-2 = two neighbours stand { $gap } apart, which is { $said }
sewing-loops-spacing-far = far
sewing-loops-spacing-near = near
sewing-loops-spacing-help = between { $nearest } and { $farthest }
sewing-loops-spacing-3 = the two beside the fly stand { $gap } apart
sewing-loops-spacing-help-2 = at most { $farthest-front }
sewing-loops-loose-help = a shorter loop, or the width of the belt they are made for as `belt`
sewing-loops-under-patch-help = move the patch, or let its edge be caught under the loop on purpose
sewing-loops-under-patch = a belt loop crosses the patch

## Open

sewing-open-workroom = write workroom = "{ $room }" under [style], or another of collection.toml
sewing-open-patch-help = write `text` under [trims.{ $trim }] in trims.toml, or name a drawing as `art` under [patch]
sewing-open-label = it is open what the label says
sewing-open-label-tells = it is open what the label says; it is to tell { $purposes }
sewing-open-labels-help = write its `text` in its [[labels]], or under [trims.{ $trim }] in trims.toml
sewing-open-workroom-2 = write a section such as [workrooms.first] with name and place into collection.toml, and workroom = "first" under [style]
sewing-open-workroom-3 = it is open which workroom sews it
sewing-open-patch = it is open what the patch says or shows

## Pockets

sewing-pockets-outside = the pocket reaches { $beyond } beyond the back panel, across { $seam }
sewing-pockets-near-seam = the pocket comes within { $nearest } of { $seam }
sewing-pockets-near-seam-help = leave { $near-seam } to sew round it
sewing-pockets-seam-outseam = the outseam
sewing-pockets-seam-yoke = the yoke seam
sewing-pockets-seam-seat = the seat seam
sewing-pockets-seam-inseam = the inseam
sewing-pockets-seam-hem = the hem
sewing-pockets-levels-inner = inner
sewing-pockets-levels-outer = outer
sewing-pockets-levels = the { $end } top corners of left and right lie { $off } apart when laid on one another; nothing states such a difference
sewing-pockets-levels-help = within { $level }
sewing-pockets-coin-beyond = a corner of the coin pocket reaches { $beyond } beyond the facing it is set on and would be sewn through the bag
sewing-pockets-coin-wide = it reaches { $reaches } from the outseam and the mouth is { $mouth-width } wide, so its inner corner disappears behind the front
sewing-pockets-coin-wide-help = at most { $zero } wide
sewing-pockets-outside-help = make it smaller, or move it away from the seam it crosses
sewing-pockets-coin-beyond-help = make it shallower, move it, or let the facing reach further behind the mouth
sewing-pockets-coin-hidden-help = set it nearer to the band or to the outseam
sewing-pockets-coin-foot-help = make it deeper, so that its foot lies behind the front
sewing-pockets-coin-hidden = the front covers the middle of the coin pocket's top edge
sewing-pockets-coin-foot = its foot lies in the pocket mouth: the front does not cover and catch it

## Rivets

sewing-rivets-thin = it goes through { $plies ->
    [one] { $plies } ply
   *[other] { $plies } plies
    }, { $thickness } in all, and will not close tightly
sewing-rivets-thin-help = at least { $least-plies } plies and { $least }: lay a scrap of cloth below, or leave it out
sewing-rivets-thick = it goes through { $plies ->
    [one] { $plies } ply
   *[other] { $plies } plies
    }, { $thickness } in all; a nail of usual length closes on { $most }
sewing-rivets-near-edge = its middle lies { $to-edge } from the edge, so a cap of { $cap } stands { $over } over it
sewing-rivets-tack-on-rivet = a bartack of { $where-of } lies { $zero } from its cap
sewing-rivets-thick-help = set it clear of the folded edges, or ask for a longer nail
sewing-rivets-near-edge-help = a smaller cap, or the rows beside it further apart
sewing-rivets-tack-on-rivet-help = move one of the two, or leave the tack out where the rivet holds

## Rows

sewing-rows-near-edge = runs { $offset } from the edge and may slip off the fold
sewing-rows-beyond = runs { $offset } from the seam line, past what it should catch ({ $what }: { $reach })
sewing-rows-beyond-help = at most { $inside }
sewing-rows-crowded = a stitch of { $pitch } is too short for a yarn of { $diameter } mm
sewing-rows-crowded-help = make it at least { $least-pitch }, which is { $most } stitches to the inch at most, or sew it with a finer yarn
sewing-rows-per-inch = { $stitches } stitches to the inch
sewing-rows-open = { $density } are few for a seam that is pulled
sewing-rows-hem-density = { $density } are unusual for a hem
sewing-rows-gauge = run { $gap } apart; two needles stand at least { $least-gauge } apart
sewing-rows-chain-end = a { $stitch } ends where no other seam catches it and runs back from its last loop
sewing-rows-no-reverse = a { $stitch } cannot be sewn back and forth
sewing-rows-no-reverse-help = end = "chained off": the tail is sewn in; or let the next seam catch it
sewing-rows-under-yarn = the bobbin yarn of { $under } is { $how } the needle yarn of { $needle }
sewing-rows-misplaced = a { $stitch } wraps a cut edge, and { $construction } has none within reach
sewing-rows-near-edge-help = 1.6 mm is usual for a row along an edge
sewing-rows-open-help = 7 to 9 to the inch are usual, 8 to 10 in joining rows; a buyer may ask for more, one asks for 5 to the centimetre
sewing-rows-hem-density-help = 6 to 8 to the inch; fewer stitches stand out more and pull the hem into ridges
sewing-rows-gauge-help = 6.4 mm (1/4 in) is the usual gauge
sewing-rows-chain-end-help = a lockstitch, 301, or carry the row into the next seam
sewing-rows-under-yarn-help = a bobbin yarn of half to all of the needle yarn's size
sewing-rows-misplaced-help = 301 or 401
sewing-rows-reach = the facing is this wide
sewing-rows-reach-2 = the facing is this wide
sewing-rows-reach-3 = the band is this high
sewing-rows-reach-4 = the hem is this deep
sewing-rows-reach-5 = the loop is this wide
sewing-rows-reach-6 = a lap is at most this wide
sewing-rows-reach-7 = the allowance reaches this far
sewing-rows-reach-8 = half of what is laid on
sewing-rows-under-yarn-2 = less than half as heavy as
sewing-rows-under-yarn-3 = heavier than

## Seams

sewing-seams-fell-width = its rows end { $far } from the fold; a felled lap narrower than { $fell-width } cannot be turned in
sewing-seams-facing-edge = it is laid flat on the bag and no row overedges or covers its edge
sewing-seams-facing-edge-help = a row of 504 with offset 0 before the row that sets it, or a coverstitch, 406 or 602, along its edge
sewing-seams-hem-narrow = a hem of { $depth } is too narrow to turn twice in a cloth of { $ply } mm
sewing-seams-hem-narrow-help = at least { $least }
sewing-seams-fell-width-help = 8 mm from the fold is usual for the second row
sewing-seams-no-joining-row-help = add a row with offset 0 to fix its stitch and yarn
sewing-seams-no-rows-help = give it at least one row
sewing-seams-band-join = the cloth is too narrow for the band in one, so it is cut in two; no row says how the halves are joined at the centre back
sewing-seams-band-join-help = state [seams.band_halves]; until then it is cut for a seam pressed open, { $allowance } on each half (common practice)
sewing-seams-overedge-help = add a row of 504 with offset 0, or choose a felled seam, which hides its edges
sewing-seams-no-joining-row = only its topstitching is stated; the row that joins the plies is left to the workroom
sewing-seams-no-rows = has no row of stitches, so nothing holds it
sewing-seams-overedge-beside = beside the cloth's own edge it is raw (pocket facing, yoke, and a panel above the hip notch where its side line leaves that edge); no row states the overedge and its yarn
sewing-seams-overedge = its allowance is overedged and seen inside; no row states the stitch and the yarn

## Selvedge

sewing-selvedge-curve = between hem and hip the outseam strays { $strays } from straight; the cloth's own edge is straight, so the allowance cannot keep its width along it
sewing-selvedge-dart = what the yoke takes out between seat and waist is { $taken } a leg here and not { $stated }: with more the back's outseam would run out over the cloth's own edge above the hip
sewing-selvedge-dart-help = state { $taken } or less to have one dart in every size, or a shaped outseam, which is cut anywhere
sewing-selvedge-missing = it is to run along the cloth's own edge, and { $c } is not woven with one to show
sewing-selvedge-curve-help = place the piece so that the cloth's edge touches the narrowest allowance
sewing-selvedge-missing-help = a cloth with a selvedge, or a shaped outseam with its allowances overedged

## Trims

sewing-trims-label-over-seam = it is { $height } high and covers the row at { $offset } from the band seam
sewing-trims-labels-overlap = it lies on the label { $code }
sewing-trims-leather = { $trim }: leather that touches the skin may hold less than 3 mg/kg of chromium VI, and { $how }
sewing-trims-nickel = { $trim }: buttons, rivets and zips that touch the skin may release at most 0.5 µg of nickel a square centimetre and week; its material does not say that it is free of nickel
sewing-trims-tack-density = { $stitches } stitches on { $tack } are { $density } to a quarter inch and { $said }
sewing-trims-tack-open = leave it open
sewing-trims-tack-cuts = cut the cloth
sewing-trims-tack-density-help = { $ceil } to { $floor } stitches
sewing-trims-fibre-differs = it says "{ $words }", and { $shell } does not say what it is made of
sewing-trims-fibre-differs-2 = it is to tell the fibre content, and "{ $words }" gives no shares
sewing-trims-fibre-differs-3 = it says "{ $words }" and { $shell } is "{ $fibre }": look whether both mean the same
sewing-trims-fibre-differs-4 = it says "{ $words }" and { $shell } is "{ $fibre }"
sewing-trims-patch-off-band = set { $from-centre } from centre back it runs { $past } past the end of the band
sewing-trims-art-beyond = its drawing runs beyond its { $width } by { $height }
sewing-trims-label-over-seam-help = a lower label, or sew it in with the band
sewing-trims-labels-overlap-help = place one beside the other
sewing-trims-patch-on-label-help = place it clear of the patch
sewing-trims-leather-help = ask for a test to EN ISO 17075, or for leather tanned without chromium, and state it as `tanning`
sewing-trims-nickel-help = ask for a test to EN 1811, and write "nickel-free" in the material
sewing-trims-fibre-label-help = add "fibre" to the purpose of the label that tells it, and check the rules where it is sold
sewing-trims-fibre-differs-help = state the cloth's `fibre` as its mill does
sewing-trims-fibre-differs-help-2 = add them to its text, in the words of the law where it is sold
sewing-trims-fibre-differs-help-3 = change the label's text, or the cloth's `fibre`; the law where it is sold says how it is worded
sewing-trims-patch-off-band-help = set it nearer to centre back
sewing-trims-art-beyond-help = draw it smaller, from the upper left corner, one unit a millimetre
sewing-trims-patch-on-label = it lies behind the patch, whose stitching goes through it
sewing-trims-leather-2 = it is tanned with chromium
sewing-trims-leather-3 = how it is tanned is not stated
sewing-trims-fibre-label = no label is stated to tell the fibre content, which has to be on textiles when they are sold

## What labels have to say

sewing-labels-nowhere = no label is stated to tell { $what }
sewing-labels-nowhere-help = add what is asked for to the `purpose` of the label that tells it, and check the rules where it is sold
sewing-labels-lack = it says "{ $words }", which tells nothing of { $what }
sewing-labels-lack-help = add it to the label's `text`, or show it in its drawing, in the words of the law where it is sold
sewing-labels-ask-brand = whose make it is
sewing-labels-ask-size = its size
sewing-labels-ask-care = how it is cared for
sewing-labels-ask-origin = where it was made
sewing-labels-ask-animal = parts of animal origin, which the leather patch is

## Values

sewing-values-reason = { $reason }
sewing-values-unusual = it is { $amount }; { $from } to { $to } is usual
sewing-values-tolerance-wide = it may be off by { $tolerance } either way and is { $value } itself
sewing-values-unusual-help = check number and unit, or mute this with your reason
sewing-values-unusual-help-2 = check number, unit and grade
sewing-values-tolerance-wide-help = a tolerance of a tenth or less of the measure

## Yarns

sewing-yarns-unusual-one = { $size } is { $word } than is usual for { $weight } denim: { $finest } to { $heaviest }
sewing-yarns-fine = thinner
sewing-yarns-heavy = thicker
sewing-yarns-unknown-yarn = yarn
sewing-yarns-unknown-trim = trim
sewing-yarns-unknown = the collection has no { $what } named "{ $key }"
sewing-yarns-unknown-help = add it to { $file }, or name one that is there
sewing-yarns-unlike-needles = { $first } wants a needle of { $one } to { $one-2 }, { $second } one of { $other } to { $other-2 }; both rows are sewn in one pass
sewing-yarns-heavy-needle = { $size } needs a needle of { $needs } at least; more than { $takes } cuts a cloth of { $weight }
sewing-yarns-heavy-needle-help = a yarn of { $heaviest } or finer
sewing-yarns-unlike-needles-help = yarns nearer to one another in size, or sew the rows one after the other

## Mod

sewing-mod-rows = row { $index } at { $offset } finds no place on the piece
sewing-mod-rows-2 = bring the row nearer to the seam line

## Notes

sewing-notes-band-rows = row { $index } runs round the band { $offset } from its edges, and the band is { $height } high
sewing-notes-band-rows-2 = row { $index } lies on another row of the band
sewing-notes-button = the V puts the buttonhole's eye { $eye } from the end of the band
sewing-notes-hem-ends = the hem is chain-stitched and its threads are { $how }: the row can run back
sewing-notes-coin-foot = the coin pocket's foot drops { $coin-drop } on a depth of { $coindepth }; { $most } is drawn
sewing-notes-band-rows-3 = the offset of a row round the band is measured from the band's edges: 2 mm is usual
sewing-notes-band-rows-4 = measure its offset from the band seam, up to just below the top edge
sewing-notes-button-2 = make the band overlap longer or the V wider
sewing-notes-hem-ends-2 = held by the overlap alone
sewing-notes-hem-ends-4 = cut off
sewing-notes-hem-ends-3 = write ends = "tied by hand" in [hem], or secure the row's begin and end
sewing-notes-coin-foot-2 = make the drop smaller or the pocket deeper

## Decoration

sewing-decoration-notes = no line of the drawing lies inside the rows that set the pocket
sewing-decoration-notes-2 = draw from the pocket's inner top corner, one unit a millimetre, y down

## Labels

sewing-labels-patch = the patch is { $height } high and the band { $band }: it hangs { $hangs } below the band seam, over the yoke
sewing-labels-laid = "{ $place }" is not a place known here; the label is not drawn
sewing-labels-too-high = the label is { $height } high and the band { $band }: it hangs below the band inside
sewing-labels-laid-2 = write "band inside, centre back", "band inside, right of main label" or "left side seam inside"

## Grown pieces

sewing-grown-pieces-reason = { $reason }
sewing-grown-pieces-grown = no cut line can be drawn: { $reason }; the finished outline is shown instead
sewing-grown-pieces-grown-2 = check the measures and seams that shape this piece
sewing-grown-pieces-outline = the piece has no finite shape

## Clashes

clash-operation = { $number } ({ $name })
clash-where = on the { $piece }, { $first } from its edge { $first-edge } and { $second } from its edge { $second-edge }
clash-tack = the bartack of { $seam }
clash-loop-tack = the tack at the foot of a belt loop
clash-needle-on-metal = it sits { $where-of }, and { $sewn } runs over it, { $inside } inside its rim: it is set in operation { $set } and this is sewn later, in operation { $now }
clash-needle-beside-metal = it sits { $where-of }, and { $sewn } passes { $gap } from its rim, within what a needle strays: it is set in operation { $set } and this is sewn later, in operation { $now }
clash-needle-on-metal-help = set it after that operation, or move one of the two
clash-hidden-rivet-help = leave hidden rivets out, and bartacks hold these corners; or move the setting rows clear of the caps
clash-foot-on-metal = it sits { $where-of }, { $sewn } passes { $gap } from its rim, and the foot takes up { $foot } beside the stitches: it is set in operation { $set } and this is sewn later, in operation { $now }
clash-foot-on-metal-help = set it after that operation, move one of the two, or sew with a narrow foot
clash-closes-extra = { $sewn } goes through it and sews it shut, { $below } below its opening, { $where-of }: it is set in operation { $set } and this is sewn in operation { $now }
clash-closes-extra-help = move the pocket aside or lower, or keep it out of the way of that operation
clash-closes-mouth = { $sewn } sews the edge of the mouth to what lies behind it, { $where-of }, in operation { $now }
clash-closes-mouth-help = move it beside the mouth, or to one of its ends
clash-through-trim = { $sewn } goes through it, { $where-of }: it is sewn on in operation { $set } and this is sewn later, in operation { $now }
clash-through-trim-help = a smaller one, or another place for one of the two
clash-patch-through-band = its row { $row } is sewn in operation { $now }, through the band that is finished in operation { $finished }, and runs { $below } below the band seam, over the edge of the band onto what lies below
clash-patch-before-band = its row { $row } is sewn on the band in operation { $now }, before the band is set on in operation { $finished }, and runs { $below } below the band seam, where there is nothing yet to sew it to
clash-patch-through-band-help = a patch that lies within the band, which is { $band } high
clash-hole-bite = it ends { $gap } from { $sewn }, { $where-of }, and needs a bite of { $bite }: it is cut in operation { $cut }, the row is sewn in operation { $now }
clash-hole-bite-help = at least { $bite }: move the row outward, or choose a smaller button
clash-button-bite = its nail stands { $room } from the edge, { $where-of }, in operation { $now }, and pulls out
clash-button-bite-help = at least { $least }
clash-rows-cross = it crosses { $other }, { $where-of }, away from the ends of both: that row is sewn in operation { $set }, this one in operation { $now }
clash-rows-cross-help = move one of the two, or end it where they meet
clash-rows-together = it runs { $gap } beside { $other }, { $where-of }, nearer than a needle of { $needle } is wide: that row is sewn in operation { $set }, this one in operation { $now }
clash-rows-together-help = let one of the two do for both, or move them apart
clash-closed = it is sewn through one ply in operation { $now }, and what lies round that ply is closed since operation { $closed }: no machine reaches in
clash-closed-help = sew it on before, or through every ply
clash-no-arm = it is sewn in operation { $now }, when the legs are tubes since operation { $closed }, and stitch { $stitch } is made on a flat bed, which does not reach into a tube
clash-no-arm-help = a lockstitch or chainstitch, which machines with an arm make

## The first wash

sewing-why-of-nothing = { $about } is told about, and this style has none
sewing-why-of-nothing-help = take its [[why]] out, or tell it of what took its place; the story leaves it out meanwhile
sewing-wash-patch = { $trim } is of leather and goes through the wash of the sewn pair
sewing-wash-patch-help = set it after the wash, stated as `set_after`, or try it on a sample
sewing-wash-raw = the pair is sold raw, and the wearer's first wash will shrink { $cloth } by { $warp } along the warp and { $weft } along the weft
sewing-wash-raw-help = a shell shrunk at the mill, a rinse before it is sold, or a chart large enough for it
