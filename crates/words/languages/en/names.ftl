### What things are called: measures, seams, pieces and plates. Each key ends in the code that files and programs write.

## Measures of the chart, as papers head them

measure-waist = Waist
measure-seat = Seat
measure-front-rise = Front rise
measure-back-rise = Back rise
measure-thigh = Thigh
measure-knee = Knee
measure-hem = Hem
measure-inseam = Inseam
measure-outseam = Outseam
measure-band-height = Band height
measure-band-overlap = Band overlap
measure-fly-length = Fly length
measure-fly-width = Fly width
measure-yoke-centre = Yoke height, centre back
measure-yoke-side = Yoke height, side
measure-mouth-width = Pocket mouth, width
measure-mouth-depth = Pocket mouth, depth
measure-coin-width = Coin pocket, width
measure-coin-depth = Coin pocket, depth
measure-back-pocket-width = Back pocket, width
measure-back-pocket-length = Back pocket, length
measure-back-pocket-from-yoke = Back pocket below yoke
measure-back-pocket-from-centre = Back pocket from centre back
measure-loop-length = Belt loop, length
measure-loop-width = Belt loop, width
measure-hem-depth = Hem depth

## Seams, within a sentence

seam-outseam = outseam
seam-inseam = inseam
seam-seat = seat seam
seam-yoke = yoke seam
seam-front-rise = front rise seam
seam-band = waistband set on
seam-band-join = waistband join, centre back
seam-hem = hem
seam-mouth = pocket mouth
seam-fly = fly
seam-fly-edge = fly facing edge
seam-coin-hem = coin pocket hem
seam-coin-set = coin pocket set on
seam-back-pocket-hem = back pocket hem
seam-back-pocket-set = back pockets set on
seam-facing-set = pocket facing set on the bag
seam-bag-close = pocket bag closed
seam-extra-hem = extra pocket hem
seam-extra-set = extra pocket set on
seam-loop-edge = belt loop strip
seam-decoration = back pocket stitching
seam-patch-set = patch sewn on
seam-label-set = labels sewn on

## Pieces of the pattern

piece-front = Front
piece-back = Back
piece-yoke = Yoke
piece-band = Waistband
piece-fly-facing = Fly facing
piece-fly-shield = Fly shield
piece-pocket-facing = Hip pocket facing
piece-coin-pocket = Coin pocket
piece-pocket-bag = Pocket bag
piece-back-pocket-left = Back pocket, left
piece-back-pocket-right = Back pocket, right
piece-back-lining-left = Back pocket lining, left
piece-back-lining-right = Back pocket lining, right
piece-loop-strip = Belt loop strip
piece-fly-facing-and-strip = Fly facing, and buttonhole strip of two plies
piece-extra-pocket = Extra inner pocket

## Measures within a sentence, as papers name them

measure-within-waist = waist
measure-within-seat = seat
measure-within-front-rise = front rise
measure-within-back-rise = back rise
measure-within-thigh = thigh
measure-within-knee = knee
measure-within-hem = hem
measure-within-inseam = inseam
measure-within-outseam = outseam
measure-within-band-height = band height
measure-within-band-overlap = band overlap
measure-within-fly-length = fly length
measure-within-fly-width = fly width
measure-within-yoke-centre = yoke height, centre back
measure-within-yoke-side = yoke height, side
measure-within-mouth-width = pocket mouth, width
measure-within-mouth-depth = pocket mouth, depth
measure-within-coin-width = coin pocket, width
measure-within-coin-depth = coin pocket, depth
measure-within-back-pocket-width = back pocket, width
measure-within-back-pocket-length = back pocket, length
measure-within-back-pocket-from-yoke = back pocket below yoke
measure-within-back-pocket-from-centre = back pocket from centre back
measure-within-loop-length = belt loop, length
measure-within-loop-width = belt loop, width
measure-within-hem-depth = hem depth

## Measures within a sentence, as the chart names them

measure-title-waist = waist
measure-title-seat = seat
measure-title-front-rise = front rise
measure-title-back-rise = back rise
measure-title-thigh = thigh
measure-title-knee = knee
measure-title-hem = hem
measure-title-inseam = inseam
measure-title-outseam = outseam
measure-title-band-height = band height
measure-title-band-overlap = band overlap
measure-title-fly-length = fly length
measure-title-fly-width = fly width
measure-title-yoke-centre = yoke at centre back
measure-title-yoke-side = yoke at the side
measure-title-mouth-width = pocket mouth width
measure-title-mouth-depth = pocket mouth depth
measure-title-coin-width = coin pocket width
measure-title-coin-depth = coin pocket depth
measure-title-back-pocket-width = back pocket width
measure-title-back-pocket-length = back pocket length
measure-title-back-pocket-from-yoke = back pocket from yoke
measure-title-back-pocket-from-centre = back pocket from centre back
measure-title-loop-length = belt loop length
measure-title-loop-width = belt loop width
measure-title-hem-depth = hem depth

## Pieces within a sentence

piece-within-front = front
piece-within-back = back
piece-within-yoke = yoke
piece-within-band = waistband
piece-within-fly-facing = fly facing
piece-within-fly-shield = fly shield
piece-within-pocket-facing = hip pocket facing
piece-within-coin-pocket = coin pocket
piece-within-pocket-bag = pocket bag
piece-within-back-pocket-left = back pocket, left
piece-within-back-pocket-right = back pocket, right
piece-within-back-lining-left = back pocket lining, left
piece-within-back-lining-right = back pocket lining, right
piece-within-loop-strip = belt loop strip
piece-within-extra-pocket = extra inner pocket

## Detail plates, within a sentence

plate-coin-pocket = coin pocket
plate-hip-pocket-mouth = hip pocket mouth
plate-pocket-bag = pocket bag
plate-extra-pocket = extra pocket
plate-back-pocket-left = left back pocket
plate-back-pocket-right = right back pocket
plate-back-pockets-inside = back pockets inside
plate-pocket-corners = pocket corners
plate-waistband-ends = waistband ends
plate-waistband-outside = waistband outside
plate-waistband-inside = waistband inside
plate-fly = fly
plate-belt-loop = belt loop
plate-hem = hem
plate-patch = patch
plate-labels-on-band = labels on the band
plate-labels-in-seam = labels in a seam

## What a piece is cut from

cloth-use-shell = shell
cloth-use-pocketing = pocketing
cloth-use-lining = lining
