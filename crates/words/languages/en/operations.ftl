### What is said of the operations of the sewing order.

## Parts of the workroom's course

stage-small-parts = small parts
stage-fronts = fronts
stage-backs = backs
stage-legs = legs
stage-band = waistband
stage-hems = hems
stage-finish = finish

## What is put on a machine, or used beside it

attachment-edge-guide = edge guide, { $at }
attachment-edge-guide-band = edge guide, { $at } from the band's edges
attachment-edge-guide-fold = edge guide, { $at } from the fold
attachment-lap-folder = lap folder for a lap of { $lap }
attachment-binding-folder = binding folder
attachment-turning-in-folder = turning-in folder, { $turned }
attachment-strip-folder = strip folder, { $width } finished
attachment-hem-folder = hem folder turning { $depth } twice
attachment-band-folder = band folder for a band of { $height }, puller behind the foot
attachment-fly-template = template of the fly's curve
attachment-decoration-template = template with the lines cut out, to trace
attachment-shape-template = template of the finished shape
attachment-place-template = template for the place
attachment-place-template-guide = template for the place, edge guide { $at }
attachment-needle-bar = needle bar that stops one needle at the corners
attachment-tack-clamp = clamp of the tack's length
attachment-buttonhole-knife = knife and clamp of the hole's length
attachment-loop-marks = marks for the places, clamp of the loop's width
attachment-length-stop = length stop
attachment-zip-foot = zip foot
attachment-height-mark = notch or mark for the height

## Machines and tables, within a sentence. Each key ends in the code of the machine

machine-lockstitch = lockstitch
machine-two-needle-lockstitch = two-needle lockstitch
machine-cylinder-bed-lockstitch = cylinder-bed lockstitch
machine-cylinder-arm-lockstitch = cylinder-arm lockstitch
machine-zigzag-lockstitch = zigzag lockstitch
machine-flatbed-chainstitch = flatbed chainstitch
machine-two-needle-chainstitch = two-needle flatbed chainstitch
machine-cylinder-bed-chainstitch = cylinder-bed chainstitch
machine-feed-off-the-arm = feed-off-the-arm
machine-waistband = waistband machine
machine-coverstitch = flatbed coverstitch
machine-overedge = overedge
machine-safety-overedge = safety overedge
machine-bartacker = bartacker
machine-eyelet-buttonhole = eyelet buttonhole
machine-rivet-press = rivet press
machine-button-press = button press
machine-iron = iron
machine-washing-machine = washing machine
machine-laundry = laundry
machine-by-hand = by hand

## What is done that is no pass of a seam. Each key ends in the code of the task, but for one that is called otherwise

task-loops-cut = Belt loops: cut to length
task-coin-pocket-press = Coin pocket: turn in and press
task-coin-pocket-bartacks = Coin pocket: bartacks
task-coin-pocket-rivets = Coin pocket: rivets
task-back-pockets-line = Back pockets: lay in the linings
task-back-pockets-press = Back pockets: turn in and press
task-extra-pocket-press = Extra pocket: turn in and press
task-fly-buttonholes = Fly buttonhole strip: buttonholes
task-zip-left = Zip: sew its left tape on the facing
task-fly-shield-close = Fly shield: fold and close its foot
task-fly-strip-close = Fly buttonhole strip: close its front edge
task-band-mark = Waistband: mark
task-band-mark-and-press = Waistband: mark and press
task-facing-press = Hip pocket facings: turn in and press
task-bags-baste = Pocket bags: baste to waist and outseam
task-fly-shield-join = Fly shield: join to the right front
task-fly-shield-neaten = Fly shield: overedge the joined edges
task-back-pockets-rivets = Back pockets: hidden rivets
task-labels-seam = Labels in the outseam: hold in the allowance
task-band-ends = Waistband: close its ends
task-band-ends-turn = Waistband: turn in its ends
task-loops-set = Belt loops: set and tack
task-hem-tie = Hems: tie the thread ends
task-bartacks-back-pockets = Back pockets: bartacks
task-bartacks-mouths = Pocket mouths: bartacks
task-bartacks-fly = Fly: bartacks
task-bartacks-crotch = Crotch: bartack
task-band-buttonhole = Waistband: buttonhole
task-band-button = Waistband: button
task-fly-buttons = Fly: buttons
task-mouth-rivets = Pocket mouths: rivets
task-set-rest = Whatever else is set
task-trim-threads = Trim threads
task-wash = First wash
task-look-over = Trim threads and look over

## What is done to a seam

seam-work-done = { $seam }: { $work }
seam-work-row = { $seam }: { $work }, row { $row }
seam-work-rows = { $seam }: { $work }, rows { $rows } and { $last }
seam-work-neaten = overedge the raw edges
seam-work-neaten-fly-edge = overedge the curved edge
seam-work-join = join
seam-work-join-band = join to the body
seam-work-join-band-join = join its halves at the centre back
seam-work-join-mouth = join the bags to the fronts
seam-work-join-fly = join the facing to the left front
seam-work-join-bag-close = close
seam-work-fell = fell
seam-work-topstitch = topstitch
seam-work-topstitch-band = sew down from outside
seam-work-topstitch-fly-edge = sew along the curved edge
seam-work-hem = hem
seam-work-hem-hem = sew
seam-work-set = sew on
seam-work-set-band = set on the body
seam-work-set-coin-set = set on its facing
seam-work-set-back-pocket-set = set on the backs
seam-work-set-facing-set = set on the bags
seam-work-set-extra-set = set on the bag
seam-work-round = sew round ends and top
seam-work-bind = bind the raw edge
seam-work-turn-in = turn in the curved edge
seam-work-enclose = turn and enclose the edges
seam-work-strip = fold and sew
seam-work-decorate = sew the decoration
seam-work-sew = sew
seam-work-thin = cut away turned-in edges at the crossing
seam-work-press-open = press open
seam-work-press-aside = press to one side
seam-work-turn-and-press = turn and press
seam-work-fold-and-press = fold and press

## What a style does not state of an operation

not-stated-every-row = every row of this seam
not-stated-band-join = row that joins the two halves of the band
not-stated-fly-strip = row that closes the front edge of the buttonhole strip
not-stated-overedge = overedge of the raw edges
not-stated-joining = joining row below the topstitching
not-stated-bags-baste = basting of the bags along waist and outseam
not-stated-fly-shield-overedge = overedge of the joined edges of shield and right front
not-stated-fly-shield-join = row that joins the shield to the right front
not-stated-fly-shield-close = closing row at the foot of the shield
not-stated-zip-left = rows along the left tape of the zip
not-stated-band-ends = closing rows at the ends of the band
not-stated-patch = row that sews the patch on
not-stated-label = rows that sew the labels on
not-stated-labels-seam = row that holds the label in the allowance
not-stated-loops = how the loops are held

## What the yarn list says of the same

unstated-joining = { $seam }, joining row below the topstitching
unstated-overedge = { $seam }, overedge of raw edges
unstated-patch = { $trim }, patch sewn on
unstated-label = { $trim }, label sewn in

## Needles

needle-sizes = needle Nm { $finest } to { $heaviest }

## What holds of the whole order, said once

order-note-rows = rows are numbered as the style states them; where a row lies is told with it
order-note-needles = needle sizes are those usual for the yarn, from memory: confirm; the needle system is that of the machine
order-note-needles-ask = neither the system nor the point of the needles is stated: ask (round points, R, are usual for denim, from memory)
order-note-backtacked = backtacked: 3 to 4 stitches back over the row's own end, about 10 mm (common practice)
order-note-overlapped = overlaps its start: the row runs on over its own first stitches, as far as its operation says (common practice)
order-note-tied = tied by hand: both threads drawn to the inside and knotted twice, their ends hidden in a fold (common practice)
order-note-chained-off = chained off: the chain runs on 30 to 50 mm beyond the edge and is sewn into the next seam (common practice)
order-note-edges = a raw edge that no operation names lies inside a fold, between plies or in the band
