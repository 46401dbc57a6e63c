### What things are called: measures, seams and pieces. Each key ends in the code that files and programs write.

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
piece-extra-pocket = Extra inner pocket
