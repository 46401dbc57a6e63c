### What a finding is about. Each key ends in the code that files and programs write.

## The style as a whole

part-chart = chart
part-own-pattern = own pattern
part-workroom = workroom
part-labels = labels
part-bartacks = bartacks
part-sewing-thread = sewing thread
part-other-texts = other texts

## Details

part-band-button = band button
part-fly = fly
part-zip = zip
part-patch = patch
part-belt-loops = belt loops
part-extra-pocket = extra pocket
part-pocket-bag = pocket bag
part-coin-pocket = coin pocket
part-back-pockets = back pockets
part-left-back-pocket = left back pocket
part-right-back-pocket = right back pocket
part-waistband = waistband

## Where plies meet

part-seat-and-yoke = seat and yoke
part-crotch = crotch
part-outseam-and-yoke = outseam and yoke
part-band = band
part-belt-loop = belt loop
part-pocket-mouth = pocket mouth
part-back-pocket = back pocket

## Lines and levels of the draft

part-rises = rises
part-crotch-point = crotch point
part-crotch-curves = crotch curves
part-crotch-line = crotch line
part-front-crotch-curve = front crotch curve
part-back-crotch-curve = back crotch curve
part-leg-balance = balance of the leg
part-seat-seam = seat seam
part-yoke-seam = yoke seam
part-band-seam = band seam
part-front-crease = front crease
part-back-crease = back crease
part-front-outseam = front outseam
part-back-outseam = back outseam
part-leg-below-knee = leg below the knee
part-front-crotch = the front crotch
part-back-crotch = the back crotch
part-whole-crotch = the whole crotch
part-outseam-hem-to-knee = outseam, hem to knee
part-outseam-knee-to-hip = outseam, knee to hip
part-outseam-hip-to-waist = outseam, hip to waist
part-inseam-hem-to-knee = inseam, hem to knee
part-inseam-knee-to-crotch = inseam, knee to crotch
part-outseam-at-mouth = outseam at the pocket mouth
part-waist-at-mouth = waist at the pocket mouth

## Corners that have to be square

part-front-centre-at-waist = centre front at the waist
part-back-centre-at-waist = centre back at the waist
part-front-hem-at-inseam = front hem at the inseam
part-front-hem-at-outseam = front hem at the outseam
part-back-hem-at-inseam = back hem at the inseam
part-back-hem-at-outseam = back hem at the outseam
part-left-band-end-lower = left band end, lower corner
part-right-band-end-lower = right band end, lower corner
part-right-band-end-inner = right band end, inner corner
part-left-band-end-inner = left band end, inner corner
part-front-hem-at-crease = front hem at the crease
part-back-hem-at-crease = back hem at the crease

## Lines that run on through a seam

part-seat-across-yoke = seat seam across the yoke seam
part-outseam-across-yoke = outseam across the yoke seam
part-waist-across-outseam = waist across the outseam
part-hem-across-outseam = hem across the outseam
part-hem-across-inseam = hem across the inseam

## Notches that have to meet

part-knee-on-outseam = knee on the outseam
part-hip = hip
part-knee-on-inseam = knee on the inseam
part-yoke-seam-middle = middle of the yoke seam
part-mouth-on-outseam = pocket mouth on the outseam
part-left-side-on-band = left side on the band
part-back-centre-on-band = centre back on the band
part-right-side-on-band = right side on the band

## Seams as they are walked

part-join-yoke = Yoke seam
part-join-seat = Seat seam
part-join-front-rise = Front rise
part-join-inseam = Inseam
part-join-outseam = Outseam
part-join-band = Band seam
part-join-mouth = Pocket mouth
part-join-fly-edge = Fly edge
part-join-bag-foot = Pocket bag foot

## Panels

part-front-panel = front
part-back-panel = back

## With what they have of their own

subject-tolerance = { $measure }, tolerance
subject-seam = { $seam }
subject-row = { $seam }, row { $row }
subject-rows = { $seam }, rows { $first } and { $second }
subject-left-half = { $piece }, left half
subject-right-half = { $piece }, right half
subject-cloth = cloth { $cloth }
subject-wash-test = cloth { $cloth }, wash test
subject-shrinkage = cloth { $cloth }, { $along } shrinkage
subject-cloth-skew = cloth { $cloth }, skew
subject-yarn = yarn { $yarn }
subject-needle-yarn = yarn { $yarn }, on the needle
subject-under-yarn = yarn { $yarn }, on looper and bobbin
subject-trim = trim { $trim }
subject-label = label { $label }
subject-rivet = rivet { $from }
subject-rivet-on = rivet on { $piece }
subject-rivet-at-mouth = rivet at the pocket mouth
subject-buttonhole = buttonhole, { $piece }
subject-buttonhole-for = buttonhole for { $from }
subject-value = { $path }

## Values of files, as findings name them

valued-allowance = allowance
valued-band-ease = band ease
valued-band-rows-start = band rows, start
valued-band-rows-v = band rows, V
valued-bartacks = bartacks
valued-below-the-band = below the band
valued-belt-loops-belt = belt loops, belt
valued-belt-loops-count = belt loops, count
valued-centre-front-tilt = centre front tilt
valued-coin-pocket = coin pocket
valued-crest = crest
valued-depth = depth
valued-diameter = diameter
valued-drop = drop
valued-end-loss = end loss
valued-extra-pocket = extra pocket
valued-facing = facing
valued-faults = faults
valued-fewest-lays = fewest lays
valued-fly-buttons = fly buttons
valued-foot-width = foot width
valued-from-centre = from centre
valued-from-the-side = from the side
valued-gap = gap
valued-grade = grade
valued-grade-for-length = grade for length
valued-height = height
valued-height-of-plies = height of plies
valued-hem-split = hem split
valued-inseam-stretch = inseam stretch
valued-knee-split = knee split
valued-length = length
valued-level = level
valued-match-within = match within
valued-most-lap = most lap
valued-most-lays = most lays
valued-most-pairs = most pairs
valued-most-plies = most plies
valued-mouth-fullness = mouth fullness
valued-narrowing = narrowing
valued-outer-drop = outer drop
valued-own-pattern = own pattern
valued-patch-from-centre = patch, from centre
valued-pocket-bag = pocket bag
valued-put-up = put-up
valued-residual-warp-shrinkage = residual warp shrinkage
valued-residual-weft-shrinkage = residual weft shrinkage
valued-temperature = temperature
valued-time = time
valued-liquor = litres to the kilogram
valued-rise = rise
valued-seat-angle = seat angle
valued-seat-dart = seat dart
valued-seat-split = seat split
valued-side-length = side length
valued-size = size
valued-skew = skew
valued-skew-test-falling = skew test, falling
valued-skew-test-rising = skew test, rising
valued-splices = splices
valued-stitches = stitches
valued-table = table
valued-thickness = thickness
valued-thigh-split = thigh split
valued-tolerance = tolerance
valued-waist-split = waist split
valued-waistband = waistband
valued-warp-shrinkage = warp shrinkage
valued-waves = waves
valued-weft-shrinkage = weft shrinkage
valued-weight = weight
valued-width = width
valued-zones = zones
valued-limits = limits
valued-within = { $section }, { $value }
valued-wash-mark-before = wash test, { $along } { $number }, before
valued-wash-mark-after = wash test, { $along } { $number }, after
valued-grade-above = grade above { $size }
valued-allowance-at = allowance at { $edge }
valued-wash-step = wash, step { $number }
valued-row-density = row { $row }, density
valued-row-offset = row { $row }, offset
valued-pairs = pairs of { $style } in { $size }
valued-roll = roll { $roll }
valued-left-back-pocket = left back pocket
valued-right-back-pocket = right back pocket
