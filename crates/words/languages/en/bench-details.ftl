### The room of details: crates/bench/src/part/details.

details-title = Details
details-lead = What is left empty is as it says in grey. Widths and depths that the workroom measures are in the chart.
details-groups = Groups of details

## What several groups have

# One of the drawings of a part of the garment; what it shows is its name.
details-plate-of = Plate: { $plate }
details-plate = Plate
details-none = None.
# The name of a rivet or a patch as the collection has it.
details-put-in = Put in { $trim }

## Choosing a drawing of the maker's own: art.rs

details-art-how = Your own drawing, an SVG of paths; one unit is a millimetre
details-art-bring = Bring…
# What the drawing is for, such as “Patch: drawing”.
details-art-bring-file = { $field }: bring a file

## Style and sizes: identity.rs

details-style-title = Style
details-style-name = Name
details-style-name-how = The style's name.
details-style-code = Code
details-style-code-how = Your label's code for it; it stands on every paper.
details-style-workroom = Workroom
# Stands for the workroom of a style that names none.
details-style-workroom-open = open
details-style-workroom-how = Who sews it; workrooms are in collection.toml.
details-style-figure = Figure
details-style-figure-how = Whose figure it is cut for.
details-style-fit = Fit
details-style-fit-how = How it fits: the class its ease is judged by.
details-style-waists = Waists
details-style-waists-how = The run of waist sizes in inches, rising.
details-style-waists-field = Run of waist sizes
details-style-lengths = Lengths
details-style-lengths-how = The run of lengths in inches, rising.
details-style-lengths-field = Run of lengths
details-style-base = Base
details-style-base-how = The size whose measures the chart states; one of the run.
details-style-base-field = Base size
details-style-summary = Summary
details-style-summary-how = One line about it.
# Said in grey where the style has no summary.
details-style-summary-none = none

## Shape of the panels: shape.rs

details-shape-title = Shape of the panels
details-shape-waist-split = Waist split
details-shape-waist-split-field = Shape: waist split
details-shape-waist-split-how = The back waist is this much over a quarter of the waist, the front this much under.
details-shape-seat-split = Seat split
details-shape-seat-split-field = Shape: seat split
details-shape-seat-split-how = The back is this much over a quarter of the seat, the front this much under.
details-shape-thigh-split = Thigh split
details-shape-thigh-split-field = Shape: thigh split
details-shape-thigh-split-how = The back is this much over half the thigh, the front this much under.
details-shape-knee-split = Knee split
details-shape-knee-split-field = Shape: knee split
details-shape-knee-split-how = The back is this much over half the knee, the front this much under.
details-shape-hem-split = Hem split
details-shape-hem-split-field = Shape: hem split
details-shape-hem-split-how = The back is this much over half the hem, the front this much under.
details-shape-front-tilt = Front tilt
details-shape-front-tilt-field = Shape: front tilt
details-shape-front-tilt-how = Centre front leans this much towards the side at the waist.
details-shape-seat-angle = Seat angle
details-shape-seat-angle-field = Shape: slope of the seat seam
details-shape-seat-angle-how = Slope of the seat seam against the grain.
details-shape-seat-dart = Seat dart
details-shape-seat-dart-field = Shape: seat dart
details-shape-seat-dart-how = What the yoke takes out between seat and waist, a leg.
details-shape-inseam-stretch = Inseam stretch
details-shape-inseam-stretch-field = Shape: inseam stretch
details-shape-inseam-stretch-how = The back inseam is this much shorter than the front's, stretched on between knee and crotch.
details-shape-band-ease = Band ease
details-shape-band-ease-field = Shape: band ease
details-shape-band-ease-how = Body length eased onto the waistband, whole waist.
details-shape-outseam = Outseam
details-shape-outseam-field = Outseam between hip and hem
details-shape-outseam-how = Shaped like the inseam, or straight on the grain from hip to hem, along the cloth's own edge.

## Fly: closing.rs

details-closing-fly-title = Fly
details-closing-fly-closing = Closing
details-closing-fly-closing-field = Fly: closing
details-closing-fly-closing-how = Buttons down the fly, or a zip.
# Why a way of closing cannot be chosen.
details-closing-fly-none-to-choose = none in trims.toml
details-closing-fly-buttons = Buttons
details-closing-fly-buttons-field = Fly: number of buttons
details-closing-fly-buttons-how = How many on the fly, below the band button.
details-closing-fly-button = Fly button
details-closing-fly-button-how = Which button; buttons are in trims.toml.
details-closing-fly-zip = Zip
details-closing-fly-zip-how = Which zip; zips are in trims.toml.
details-closing-fly-band-button = Band button
details-closing-fly-band-button-how = The button of the waistband.

## Waistband: closing.rs

details-closing-band-title = Waistband
details-closing-band-rows = Rows
details-closing-band-rows-field = Waistband: how its rows run
details-closing-band-rows-how = Two rows from end to end; or the upper row begins below the fly, runs up one end, along the top and down the other, and finishes in a V whose point is the place of the button.
details-closing-band-two-row = two rows, end to end
details-closing-band-all-round = all round, ending in a V
details-closing-band-start-below = Start below
details-closing-band-start-below-field = Waistband: start below
details-closing-band-start-below-how = The upper row begins this far below the band seam, at the end of the fly.
details-closing-band-angle = Angle of the V
details-closing-band-angle-field = Waistband: angle of the V
details-closing-band-angle-how = Between its legs. Its point is the place of the button.
details-closing-band-cut = Cut
details-closing-band-cut-field = Waistband: how it is cut
details-closing-band-cut-how = Warp and weft shrink apart: along the weft it shrinks with the body; along the warp its cloth is washed first, or it is eased by no more than a machine takes.
details-closing-band-weft = along the weft
details-closing-band-preshrunk = along the warp, of washed cloth
details-closing-band-eased = along the warp, eased
details-closing-band-not-stated = not stated
details-closing-band-residual-warp = Still shrinks, warp
details-closing-band-residual-warp-field = Waistband: what its cloth still shrinks by along the warp
details-closing-band-residual-warp-how = What the washed cloth of the band still shrinks by along the warp.
details-closing-band-residual-weft = Still shrinks, weft
details-closing-band-residual-weft-field = Waistband: what its cloth still shrinks by along the weft
details-closing-band-residual-weft-how = What the washed cloth of the band still shrinks by along the weft.

## Coin pocket: front.rs

details-front-coin-title = Coin pocket
details-front-coin-shape = Shape
details-front-coin-shape-field = Coin pocket: shape
details-front-coin-shape-how = The outline of its foot. Its depth is always measured down its middle.
# Why a drawing cannot be chosen for the shape.
details-front-coin-no-drawing = no drawing in the style's art folder
details-front-coin-drop = Drop
details-front-coin-drop-field = Coin pocket: drop
details-front-coin-drop-pointed = How far the point hangs below the corners.
details-front-coin-drop-cut-corner = The side of the triangle taken off each corner.
details-front-coin-drop-slant = How much longer the side nearer the outseam is.
details-front-coin-drop-round = How far the lowest place hangs below the sides.
details-front-coin-art = Drawing
details-front-coin-art-field = Coin pocket: drawing of its outline
details-front-coin-art-how = One open line from the inner top corner down and round to the outer one, stretched to the chart's width and depth.
details-front-coin-side = Side
details-front-coin-side-field = Coin pocket: side
details-front-coin-side-how = The front it sits in; left and right are the wearer's.
details-front-coin-below-band = Below the band
details-front-coin-below-band-field = Coin pocket: below the band
details-front-coin-below-band-how = Band seam to its top edge, at its centre.
details-front-coin-from-side = From the side
details-front-coin-from-side-field = Coin pocket: from the side
details-front-coin-from-side-how = Outseam to its outer edge.
details-front-coin-narrowing = Narrower below
details-front-coin-narrowing-field = Coin pocket: narrower below
details-front-coin-narrowing-how = Its foot is this much narrower than its top.

## Front pockets: front.rs

details-front-bag-title = Front pockets
details-front-bag-fullness = Fullness of the mouth
details-front-bag-fullness-field = Front pockets: fullness of the mouth
details-front-bag-fullness-how = How far the curve keeps to the corner it cuts off: little is nearly a straight slant, much nearly square.
details-front-bag-depth = Depth of the bag
details-front-bag-depth-field = Front pockets: depth of the bag
details-front-bag-depth-how = Below the band seam.
details-front-bag-width = Width of the bag
details-front-bag-width-field = Front pockets: width of the bag
details-front-bag-width-how = Finished.
details-front-bag-facing = Facing
details-front-bag-facing-field = Front pockets: facing
details-front-bag-facing-how = Shell behind the mouth, measured beyond its edge.

## Extra pocket: front.rs

details-front-extra-title = Extra pocket
details-front-extra-none = None. It would be one ply on the pocket bag of the front without the coin pocket, on the side towards the body, up to the lower edge of the waistband.
details-front-extra-side = Side
details-front-extra-side-field = Extra pocket: side
details-front-extra-side-how = The front it sits behind; left and right are the wearer's.
details-front-extra-width = Width
details-front-extra-width-field = Extra pocket: width
details-front-extra-width-how = Finished.
details-front-extra-depth = Depth
details-front-extra-depth-field = Extra pocket: depth
details-front-extra-depth-how = Finished, from the lower edge of the band.
details-front-extra-from-centre = From centre
details-front-extra-from-centre-field = Extra pocket: from centre
details-front-extra-from-centre-how = Centre front to its nearer edge.
details-front-extra-take-out = Take it out
details-front-extra-take-out-label = Take the extra pocket out
details-front-extra-put-in = Put one behind the { $side ->
    [left] left
   *[right] right
} front
details-front-extra-put-in-label = Put in an extra pocket

## Back pockets: back.rs

details-back-title = Back pockets
details-back-left = Left
details-back-right = Right
# Which of the two back pockets, within the labels below.
details-back-side-left = left
details-back-side-right = right
details-back-foot-width = Foot width
details-back-foot-width-field = Back pocket, { $side }: foot width
details-back-foot-width-how = Width at the foot, above the point.
details-back-side-length = Side length
details-back-side-length-field = Back pocket, { $side }: side length
details-back-side-length-how = Length of the inner side.
details-back-outer-drop = Outer drop
details-back-outer-drop-field = Back pocket, { $side }: outer drop
details-back-outer-drop-how = The outer side is this much longer than the inner; with a minus, shorter.
details-back-lining = Lining
details-back-lining-field = Back pocket, { $side }: lining
details-back-lining-how = How far down it is lined.
details-back-lining-cloth = Lining cloth
details-back-lining-cloth-field = Back pocket, { $side }: lining cloth
details-back-lining-cloth-how = Cloths are in cloths.toml.
details-back-lining-cloth-usual = the style’s own
details-back-stitching = Stitching
details-back-stitching-field = Back pocket, { $side }: stitching
details-back-stitching-how = Its built-in stitching, where it names no drawing.
details-back-art = Drawing
details-back-art-field = Back pocket, { $side }: drawing of its stitching
details-back-art-how = Your own stitching in place of the built-in one: lines, a millimetre to a unit, from the inner top corner outwards and down.
details-back-waves = Waves
details-back-waves-field = Back pocket, { $side }: waves
details-back-waves-how = How many half waves lie across the pocket.
details-back-crest = Crest
details-back-crest-field = Back pocket, { $side }: crest
details-back-crest-how = How high the waves are.
details-back-rise = Rise
details-back-rise-field = Back pocket, { $side }: rise
details-back-rise-how = The lines end this much higher at the outer side.
details-back-mirror = Turned over
details-back-mirror-field = Back pocket, { $side }: stitching turned over
details-back-mirror-how = The stitching is turned over, left for right, about the pocket's middle.
details-back-no-stitching = No stitching. It comes with the seam “back pocket stitching” among the seams.

## Belt loops: closing.rs

details-closing-loops-title = Belt loops
details-closing-loops-count = How many
details-closing-loops-count-field = Belt loops: how many
details-closing-loops-count-how = Loops on the waistband.
details-closing-loops-belt = Belt
details-closing-loops-belt-field = Belt loops: belt
details-closing-loops-belt-how = The width of the belt they are made for; it hides what lies behind it.

## Hem: closing.rs

details-closing-fly-topstitch = Topstitched
details-closing-fly-topstitch-field = Fly: when it is topstitched
details-closing-fly-topstitch-how = On the left front while it lies flat, as is usual, the rows of the rise then begin on those of the fly; after the rise, they begin under them.
details-closing-fly-flat = flat, before the rise
details-closing-fly-after-rise = after the rise
details-closing-hem-title = Hem
details-closing-hem-join = Join
details-closing-hem-join-field = Hem: where its row joins
details-closing-hem-join-how = Where round the leg its row begins and ends.
details-closing-hem-ends = Thread ends
details-closing-hem-ends-field = Hem: thread ends
details-closing-hem-ends-how = How they are secured there.
details-closing-hem-roping = Roping
details-closing-hem-roping-field = Hem: roping
details-closing-hem-roping-how = The roll and the feed of the machine are to give the hem its diagonal ridges.

## Rivets: hardware.rs

details-hardware-rivets-title = Rivets
details-hardware-rivets-nothing = None; trims.toml has no rivet to choose.
details-hardware-rivet = Rivet
details-hardware-rivet-how = Which rivet; rivets are in trims.toml.
details-hardware-rivets-mouth = Pocket mouths
details-hardware-rivets-mouth-field = Rivets: pocket mouths
details-hardware-rivets-mouth-how = At both ends of each pocket mouth.
details-hardware-rivets-coin = Coin pocket
details-hardware-rivets-coin-field = Rivets: coin pocket
details-hardware-rivets-coin-how = At both top corners of the coin pocket.
details-hardware-rivets-back = Back pockets, hidden
details-hardware-rivets-back-field = Rivets: back pockets, hidden
details-hardware-rivets-back-how = At the top corners of the back pockets, set before the pockets are sewn and seen inside only.
details-hardware-rivets-take-out = Take them out
details-hardware-rivets-take-out-label = Take the rivets out

## Bartacks: hardware.rs

details-hardware-bartacks-title = Bartacks
details-hardware-bartacks-yarn = Needle yarn
details-hardware-bartacks-yarn-field = Bartacks: needle yarn
details-hardware-bartacks-yarn-how = Yarns are in yarns.toml.
details-hardware-bartacks-under = Under yarn
details-hardware-bartacks-under-field = Bartacks: under yarn
details-hardware-bartacks-under-how = The yarn on the bobbin.
details-hardware-bartacks-length = Length
details-hardware-bartacks-length-field = Bartacks: length
details-hardware-bartacks-length-how = Of each tack.
details-hardware-bartacks-width = Width
details-hardware-bartacks-width-field = Bartacks: width
details-hardware-bartacks-width-how = Of each tack.
details-hardware-bartacks-stitches = Stitches
details-hardware-bartacks-stitches-field = Bartacks: stitches in each
details-hardware-bartacks-stitches-how = In each tack.
details-hardware-bartacks-mouth = Pocket mouths
details-hardware-bartacks-mouth-field = Bartacks: pocket mouths
details-hardware-bartacks-mouth-how = Across both ends of each mouth; where nothing is said, unless rivets sit there.
details-hardware-bartacks-coin = Coin pocket
details-hardware-bartacks-coin-field = Bartacks: coin pocket
details-hardware-bartacks-coin-how = At both top corners; where nothing is said, unless rivets sit there.
details-hardware-bartacks-back = Back pockets
details-hardware-bartacks-back-field = Bartacks: back pockets
details-hardware-bartacks-back-how = At the top corners; where nothing is said, unless hidden rivets sit there.
details-hardware-bartacks-fly = Fly
details-hardware-bartacks-fly-field = Bartacks: fly
details-hardware-bartacks-fly-how = At its foot, and across the end of its stitching.
details-hardware-bartacks-crotch = Crotch
details-hardware-bartacks-crotch-field = Bartacks: crotch
details-hardware-bartacks-crotch-how = Where rise, seat and inseams meet.

## Patch: hardware.rs

details-hardware-patch-title = Patch
details-hardware-patch-nothing = None; trims.toml has no patch to choose.
details-hardware-patch = Patch
details-hardware-patch-how = Which patch; patches, their leather and size are in trims.toml.
# How its leather was made, such as vegetable.
details-hardware-patch-tanned = { $tanning } tanned
details-hardware-patch-from-centre = From centre
details-hardware-patch-from-centre-field = Patch: from centre
details-hardware-patch-from-centre-how = Centre back to its inner edge, on the wearer's right.
details-hardware-patch-through = Sewn through
details-hardware-patch-through-field = Patch: sewn through
details-hardware-patch-through-how = The whole band once it is finished, or its outer ply alone before it is set on.
details-hardware-patch-letters = Letters
details-hardware-patch-letters-field = Patch: letters
details-hardware-patch-letters-how = Pressed into the leather, standing up from a ground pressed down, or printed.
details-hardware-patch-art = Drawing
details-hardware-patch-art-field = Patch: drawing
details-hardware-patch-art-how = Your own drawing for it, inside the style's folder.
details-hardware-patch-take-out = Take it out
details-hardware-patch-take-out-label = Take the patch out

## Labels: labels.rs

details-labels-group = Labels
details-labels-title = Label { $number }
details-labels-take-out = Take out label { $number }
details-labels-which = Label
details-labels-which-field = Label { $number }: which
details-labels-which-how = Which label; labels and their sizes are in trims.toml.
details-labels-fold = Fold
details-labels-fold-field = Label { $number }: fold
details-labels-fold-how = How it is cut and folded.
details-labels-art = Drawing
details-labels-art-field = Label { $number }: drawing
details-labels-art-how = Your own drawing for it, inside the style's folder.
details-labels-place = Where it is sewn
details-labels-place-field = Label { $number }: where it is sewn
details-labels-place-how = In words, for the workroom.
details-labels-text = Words on it
details-labels-text-field = Label { $number }: words
details-labels-text-how = What is written on it in this style; in grey, what the label itself says.
# Said in grey where the label itself says nothing.
details-labels-no-words = no words
details-labels-purpose = Tells
details-labels-purpose-field = Label { $number }: what it tells
details-labels-purpose-how = What a wearer or an inspector finds on it.
details-labels-nothing = trims.toml has no label to choose.
# The name of a label as the collection has it.
details-labels-add = Add { $label }

## First wash

details-wash-title = First wash
details-wash-finish = Sold
details-wash-finish-field = First wash: how the pair is sold
details-wash-finish-how = What is done to the pair before it is sold. A raw pair is measured and sold as it was sewn; any other after its wash.
details-wash-not-stated = not stated
details-wash-raw = raw
details-wash-rinsed = rinsed
details-wash-washed = washed by a recipe
details-wash-by = Washed by
details-wash-by-field = First wash: who gives it
details-wash-by-how = Who gives the pair its first wash.
details-wash-mill = the mill, before it is cut
details-wash-laundry = a laundry
details-wash-workroom = the workroom
details-wash-wearer = whoever wears it
details-wash-set-after = Set after it
details-wash-set-after-field = First wash: what is set after it
details-wash-set-after-how = What would suffer in it and is put on afterwards.
details-wash-steps = Recipe
details-wash-no-steps = Open: the papers ask for it.
details-wash-does = Step
# { $number } the step's place in the recipe
details-wash-does-field = Step { $number } of the wash: what is done
details-wash-temperature = Warm
details-wash-temperature-field = Step { $number } of the wash: temperature
details-wash-time = Long
details-wash-time-field = Step { $number } of the wash: time
details-wash-liquor = Water 1:
details-wash-liquor-field = Step { $number } of the wash: litres of water to the kilogram
details-wash-out = Take out
details-wash-take-out = Take out step { $number } of the wash
details-wash-add = Add a step
# What a new step does until the maker says otherwise; it is written into the file.
details-wash-new-step = rinse

## Why things are as they are: why.rs

details-why-group = Why it is so
details-why-lead = What a customer may be told of it, in this order, in your own words. The workroom reads only what you let it.
# What the sentence is about, within the labels below.
details-why-earlier = { $about }: tell it earlier
details-why-take-out = Take out why { $about } is so
details-why-says = Why
details-why-says-field = { $about }: why it is so
details-why-says-how = One or two sentences, true of every pair of this style.
details-why-pack = For the workroom too
details-why-pack-field = { $about }: the workroom reads why it is so
details-why-pack-how = Printed in the pack beside what it is about.
details-why-about = What it is about
details-why-new = Why is it so?
details-why-add = Add
