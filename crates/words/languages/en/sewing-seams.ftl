### What is said of seams when they are sewn. Each key ends in the code of its seam.

## What a seam joins, as a construction list says it

seam-joins-outseam = front and back, band to hem
seam-joins-inseam = front and back, crotch to hem
seam-joins-seat = left and right back with their yokes, band to crotch
seam-joins-yoke = yoke and back, seat seam to outseam
seam-joins-front-rise = left and right front, fly to crotch
seam-joins-band = waistband and body, all round
seam-joins-band-join = the two halves of the waistband, at the centre back
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
seam-head-band-join = Waistband
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

## Its class, plies and allowances, as a construction list says them

seam-class = ISO 4916 { $iso } · ASTM D6193 { $astm }
seam-lies-on-lining = { $lies }, over the upper edge of the lining
seam-lies-with-lining = { $lies }; the lining turned in with it
seam-plies = { $plies ->
    [one] { $plies } ply
   *[other] { $plies } plies
    }
seam-plies-thick = { $plies ->
    [one] { $plies } ply, { $thickness }
   *[other] { $plies } plies, { $thickness }
    }
seam-plies-mixed = { $plies } plies ({ $cloths }), { $thickness }
seam-plies-of-cloth = { $plies } of { $cloth ->
    [shell] shell
    [pocketing] pocketing
   *[lining] lining
    }
seam-plies-and-patch = { $plies ->
    [one] { $plies } ply and the patch, { $thickness }
   *[other] { $plies } plies and the patch, { $thickness }
    }
seam-width = { $width }
seam-width-each = { $width } on each ply
seam-widths = { $over } { $over-width }, { $under } { $under-width }

## Which ply is on top, and which way an allowance lies inside

seam-ply-front = front
seam-ply-back = back
seam-ply-left = left
seam-ply-right = right
seam-ply-yoke = yoke
seam-lies-lapped = { $over } over { $under }; { $lies }
seam-lies-roped = { $lies }; diagonal roping wanted
seam-lies-pressed-open = allowances pressed apart
seam-lies-lap-felled = both edges turned into each other
seam-lies-mock-felled = both allowances towards the ply on top
seam-lies-one-side = both allowances to one side
seam-lies-french-seam = both edges enclosed, to one side
seam-lies-bound-edge = raw edge inside the strip
seam-lies-clean-finished = turned once to the inside
seam-lies-band-over-edge = body edge inside the band
seam-lies-band-turned = all allowances up into the band, its inner edge turned in
seam-lies-turned-twice = turned twice to the inside
seam-lies-folded-hem = turned under, then up to the inside
seam-lies-turned-edge = turned to the inside between the plies
seam-lies-patch-set = edges turned in under the patch
seam-lies-laid-on = laid on top, its edges cut, folded or turned as it came
seam-lies-strip = edges meet in the middle of the underside
seam-lies-surface = joins nothing

## Where seams cross, and how much lies there

crossing-words = { $plies }, { $thickness }, { $place }
crossing-plies = { $number } { $plies ->
    [one] ply
   *[other] plies
    } of { $thickness }
crossing-plies-mixed = { $number } { $plies ->
    [one] ply
   *[other] plies
    } ({ $cloths })
crossing-number = { $plies ->
    [0] no
    [1] one
    [2] two
    [3] three
    [4] four
    [5] five
    [6] six
    [7] seven
    [8] eight
    [9] nine
    [10] ten
    [11] eleven
    [12] twelve
    [13] thirteen
    [14] fourteen
    [15] fifteen
    [16] sixteen
    [17] seventeen
    [18] eighteen
    [19] nineteen
    [20] twenty
   *[other] { $plies }
    }
crossing-seat-yoke = where the seat seam crosses the yoke seam
crossing-crotch = at the crotch, where the inseam crosses front rise and seat seam
crossing-outseam-yoke = where the outseam crosses the yoke seam
crossing-hem = where the hem crosses the { $seam }
crossing-band-seat = where the band crosses the seat seam
crossing-band-outseam-left = where the band crosses the left outseam
crossing-band-outseam-right = where the band crosses the right outseam
crossing-band-mouth = where the band crosses the end of the pocket mouth
crossing-outseam-mouth = where the outseam crosses the end of the pocket mouth
crossing-back-pocket-left-inner = at the inner top corner of the left back pocket
crossing-back-pocket-left-outer = at the outer top corner of the left back pocket
crossing-back-pocket-right-inner = at the inner top corner of the right back pocket
crossing-back-pocket-right-outer = at the outer top corner of the right back pocket
crossing-coin-inner = at the inner top corner of the coin pocket
crossing-coin-outer = at the outer top corner of the coin pocket
crossing-loop-top = under the top of the loop { $spot }
crossing-loop-seam = where the loop { $spot } crosses the band seam
crossing-loop-foot = under the foot of the loop { $spot }
crossing-loop-at-centre-back = at the centre back
crossing-loop-at-left-outseam = at the left outseam
crossing-loop-at-right-outseam = at the right outseam
crossing-loop-on-left-back = on the left back
crossing-loop-on-right-back = on the right back
crossing-loop-on-left-front = on the left front
crossing-loop-on-right-front = on the right front

## The machine that sews a crossing

crossing-machine-lockstitch = a lockstitch machine
crossing-machine-feed-off-the-arm = a feed-off-the-arm machine
crossing-machine-chainstitch = a chainstitch machine
crossing-machine-waistband = a waistband machine
crossing-machine-hemmer = a chainstitch hemmer
crossing-machine-overlock = an overlock machine
crossing-machine-coverstitch = a coverstitch machine
crossing-machine-bartacker = a bartacker

## How the needles stand that sew its rows

gauge-needles = { $needles ->
    [1] single needle
    [2] two needles
    [3] three needles
    [4] four needles
   *[other] { $needles } needles
    }
gauge-apart = { $needles }, { $gauges } mm
gauge-bite = { $needles }, bite { $bite }
gauge-from-row = { $needles }, { $apart } from row { $row }

## How a row begins and ends

row-end-backtacked = backtacked
row-end-caught = caught in the next seam
row-end-tucked-in = threads tucked into the fold
row-end-overlapped = overlaps its start
row-end-tied = threads tied by hand
row-end-runs-on = runs on over the seam
row-end-chained-off = chained off, tail sewn in
row-end-cut = threads cut
row-ends-both = both ends: { $ends }
row-ends-begin = begins: { $begins }
row-ends-end = ends: { $ends }
row-ends-differ = begins: { $begins }; ends: { $ends }
row-ends-locked = both ends: locked by the machine

## Which machines sew it, one after the other

seam-machines = { $first }, { $next }

## What a figure of yarn is of, and where it comes from

yarn-item = { $parts } → { $needle } needle, { $under } under
yarn-item-not-counted = { $parts } → not counted
yarn-item-of = { $of } { $construction }
yarn-item-row = row { $row }
yarn-item-density = { $stitches } stitches/cm
yarn-item-times = { $count } × { $size }
yarn-item-times-by = { $count } × { $size } by { $width }
yarn-item-bartack = bartack of { $stitches } stitches
yarn-item-buttonhole = keyhole buttonhole
yarn-item-thickness = T { $thickness }
yarn-item-width = W { $width }
yarn-item-pass = 1/{ $share } of a pass
yarn-source-layer = { $plies ->
    [one] { $plies } ply
   *[other] { $plies } plies
    } { $cloth }
yarn-source-plies = T: { $plies }
yarn-source-width = W: { $source }
yarn-source-yarn = yarn: { $basis }
yarn-source-sharing = sharing: { $source }
yarn-basis-formula = geometric formula ({ $source })
yarn-basis-ratio = ratio table, no formula being published for this stitch ({ $source })
yarn-basis-path = { $source }
yarn-basis-unknown = nothing is published for this stitch, so it is left out
