### What is said of seams when they are sewn. Each key ends in the code of its seam.

## What a seam joins, as a construction list says it

seam-joins-outseam = front and back, band to hem
seam-joins-inseam = front and back, crotch to hem
seam-joins-seat = left and right back with their yokes, band to crotch
seam-joins-yoke = yoke and back, seat seam to outseam
seam-joins-front-rise = left and right front, fly to crotch
seam-joins-band = waistband and body, all round
seam-joins-hem = lower edge of both legs
seam-joins-mouth = front and pocket bag, band to outseam
seam-joins-fly = left front and fly facing, band to fly foot
seam-joins-fly-edge = curved edge of the fly facing
seam-joins-coin-hem = top edge of the coin pocket
seam-joins-coin-set = coin pocket on the hip pocket facing
seam-joins-back-pocket-hem = top edge of both back pockets
seam-joins-back-pocket-set = back pockets on the backs
seam-joins-facing-set = hip pocket facing on the pocket bag
seam-joins-bag-close = both layers of the pocket bag, fold to outseam
seam-joins-extra-hem = top edge of the extra inner pocket
seam-joins-extra-set = extra inner pocket on the pocket bag
seam-joins-loop-edge = long edges of the belt loop strip
seam-joins-decoration = through the back pockets alone
seam-joins-patch-set = patch on the waistband
seam-joins-label-set = labels on the inner ply of the waistband

## What a seam is called at the head of an operation

seam-head-outseam = Outseams
seam-head-inseam = Inseams
seam-head-seat = Seat seam
seam-head-yoke = Yokes
seam-head-front-rise = Front rise
seam-head-band = Waistband
seam-head-hem = Hems
seam-head-mouth = Pocket mouths
seam-head-fly = Fly
seam-head-fly-edge = Fly facing
seam-head-coin-hem = Coin pocket
seam-head-coin-set = Coin pocket
seam-head-back-pocket-hem = Back pockets
seam-head-back-pocket-set = Back pockets
seam-head-facing-set = Hip pocket facings
seam-head-bag-close = Pocket bags
seam-head-extra-hem = Extra pocket
seam-head-extra-set = Extra pocket
seam-head-loop-edge = Belt loop strip
seam-head-decoration = Back pockets
seam-head-patch-set = Patch
seam-head-label-set = Labels
