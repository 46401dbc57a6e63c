### What to mind at an operation of the sewing order: a short sentence each, without a full stop.

## How the plies of a seam lie when they are joined, by the seam

mind-join-uneven = right sides together, seam line { $front } from the cloth's own edge of the front and { $back } from that of the back: the two edges do not lie level
# How a crossing is passed that is thicker than its machine sews.
mind-thick-cut = { $place }: { $thick } lie there and the machine sews { $sews }; turned-in edges are cut away before, no farther than the rows of the crossing seam cover, which leaves { $left }
mind-thick-cut-hammer = { $place }: { $thick } lie there and the machine sews { $sews }; turned-in edges are cut away before, no farther than the rows of the crossing seam cover, which leaves { $left }, still more than it sews: hammer that flat and try it on a sample
mind-thick-either = { $place }: { $thick } lie there and the machine sews { $sews }; before it is sewn hammer it flat, or cut the turned-in edges away inside it, which leaves { $left }
mind-thick-hammer = { $place }: { $thick } lie there and the machine sews { $sews }; hammer it flat before it is sewn and try it on a sample
mind-thin = { $place }: { $thick } is more than the machine takes; turned-in edges cut away there leave { $left }; flatten what is left with a hammer
mind-band-join-raw = neither edge is overedged: the band encloses both
mind-meets-band-join = the fold lines of both halves meet
mind-join = right sides together, { $plain } on each ply
mind-join-inseam = right sides together, { $plain } on each ply, from hem to hem over the crossing at the crotch
mind-join-front-rise = right sides together, { $plain } on each ply, from the foot of the fly to the crotch
mind-join-band = right side of the band on the right side of the body, { $plain } from the edges; match centre back, sides and fronts
mind-join-mouth = right side of the front on the bag's upper layer, { $plain } from the edge; clip the curve
mind-join-fly = right sides together, { $plain } from the edge, from the band edge to the foot of the fly
mind-join-bag-close = right sides together, { $plain } on each layer, from the fold to the outseam
mind-join-in-tube = right sides together, { $plain } on each ply; the legs are inside out, this closes them
mind-join-french = wrong sides together, from the fold to the outseam; trim, so that nothing shows after turning

## What meets, is caught, eased or stretched

mind-meets-outseam = catch facing and bag at the top; the yoke seam keeps its height
mind-meets-inseam = front rise and seat seam meet at the crotch
mind-meets-seat = the yoke seams meet at centre back
mind-stretch-inseam = stretch the back by { $stretch } on each leg between knee and crotch
mind-ease-band = ease { $ease } of the body onto the band
mind-ease-on = ease { $by } of the { $fuller } onto the { $other }: before the wash that edge is the longer

## Which way a leg lies under the machine

mind-reach-outseam-open = the legs are open at the inseams and lie flat
mind-reach-outseam-tube = the legs are tubes now: over the arm of the machine, from the hem
mind-reach-inseam-open = from hem to hem over the crossing at the crotch; the legs are open at the outseams and lie flat
mind-reach-inseam-tube = from hem to hem over the crossing at the crotch; the legs are tubes now, over the arm of the machine
mind-press-tube = the leg is a tube now: over a sleeve board or on a leg press

## Raw edges that are neatened

mind-neaten-both = both raw edges together; cut nothing off
mind-neaten-each = each edge by itself, before the seam is joined; cut nothing off
mind-neaten-fly-edge-both = facing and buttonhole strip together, on their finished line; cut nothing off
mind-neaten-fly-edge-alone = the facing by itself, on its finished line; cut nothing off
mind-neaten-fly-edge-each = each ply by itself
mind-neaten-bag = facing and both layers of the bag together with the front, as far as they reach
mind-neaten-shield = both edges of the shield and the right front's edge together, from the band edge to the foot of the fly, then on along the shield's two edges alone to its foot, chain end sewn in; cut nothing off, then press them towards the front
mind-neaten-laid-on = the edge by itself, before it is laid on; cut nothing off
mind-neaten-selvedge = the cloth's own finished edge needs none; a panel from where its side line leaves that edge, about the hip notch, up

## Rows that hold a seam

mind-fell = allowances { $widths }; { $turn } turned in on each edge, no raw edge may show on either face
mind-topstitch-band = inner edge turned in just past the joining row, so that this row catches it
mind-topstitch-mouth = through front and upper layer of the bag only; fold the under layer away
mind-topstitch-fly-buttons = from the band edge down; fold the shield out of the way, catch the facing all along
mind-bag-away = fold the pocket bag away from under the topstitching: it is not caught
mind-topstitch-fly-zip = from the band edge down; fold shield and zip out of the way, catch the facing all along
mind-topstitch-fly-flat = on the left front alone, from the band edge down, before the rise is joined; catch the facing all along
mind-topstitch-fly-flat-zip = on the left front alone, from the band edge down, before the rise is joined; fold the zip's free tape out of the way, catch the facing all along
mind-rise-on-fly = on the left front, begun on the outer row of the fly
mind-rise-under-fly = on the left front, begun just inside the line of the fly's outer row, which then covers it
mind-hem-depth = { $depth } finished depth all round
mind-hem-at-inseam = begin and end at the inseam
mind-hem-at-outseam = begin and end at the outseam
mind-hem-at-back-of-leg = begin and end at the centre back of leg
mind-hem-roping = diagonal ridges are wanted: the feed drives the lower ply, the foot drags the upper, let them; the wash raises the ridges
mind-round-begin = begin { $below } below the band seam at the end of the fly, up the end, along the top, down the other end
mind-round-end = finish in the V: its point is the place of the button
mind-bind-strip = strip wrapped evenly; catch both its edges
mind-bind-ask = the strip is not among the pieces: ask for its cloth and width
mind-enclose = turn, push the seam out to its edge; no thread of the raw edges may show
mind-strip = { $width } finished; { $lies }
mind-strip-raw = the edges stay raw on the underside: no stitch covers them
mind-set-raw-ask = its edge stays raw: no overedge is stated; ask
mind-rows-washed = rows about { $finished } apart after the wash
mind-decorate = through the pocket alone, before it is lined and set on

## Pieces that are set on another

mind-set-band = match centre back, sides and fronts; ends of equal height
mind-set-band-round = without a stop, begun 30 mm after one end of the band and stopped 30 mm before the other, where it stays open; both ends run { $turned } beyond the edge of the fly and of the shield
mind-set-coin = on the placement line of the facing; the top edge stays open
mind-set-back-pocket = on the placement lines of the backs; the top edge stays open
mind-set-back-pocket-half-lining = the setting rows catch the sides of a half lining; its foot hangs free
mind-set-back-pocket-full-lining = the setting rows catch a full lining all round
mind-set-facing = right side up on the under layer of the bag, waist edges level and notch on notch at the outseam, where the facing is cut wider
mind-set-extra = on the side of the bag that lies towards the body, through that layer and the facing where it reaches there
mind-set-extra-open = the top edge stays open, level with the lower edge of the band
mind-set-patch = all round, through the whole band
mind-set-patch-outer = all round, through the outer ply of the band alone, before the band is set on
mind-set-label = through the inner ply of the band alone: nothing shows outside

## Ends of rows

mind-ends-tuck = tuck the thread ends into the fold at both ends while stitching
mind-ends-leave-10-cm = leave 10 cm of thread to be tied
mind-ends-leave = leave thread to be tied by hand
mind-ends-run-on = run on { $over } over the start
mind-ends-chained-off = chain off beyond the end and sew the tail in

## Pressing

mind-press-turned-edge = edge rolled a little to the inside, so that what lies behind does not show
mind-press-folded = { $lies }; { $depth } deep
mind-press-facing = { $turned } turned in along the inner edge
mind-press-corners = where plies lie double at a corner, cut them away slantwise, no nearer to the fold than 3 mm
mind-press-shape = allowances turned in under the pocket, along the template

## Small parts

mind-loops-cut = { $loops ->
    [one] { $loops } loop
   *[other] { $loops } loops
    }, { $length } long when set, and what is folded under at both ends
mind-coin-tacks = now, while the bag does not lie behind it
mind-coin-rivets = through pocket and facing, before the bag lies behind them
mind-rivet-faces = cap outside, stud inside
mind-fly-strip = of the three pieces cut alike one as drawn and one mirrored, right sides together; close them { $closed } from the raw fly edge, which is { $back } deeper than the facing is joined; turn and press
mind-fly-strip-lies = laid behind the facing, the curved edges of all three plies level: the closed front edge then stands back { $back } from the fly edge
mind-fly-holes = through both plies of the strip, before it is put behind the facing
mind-line-pockets = on the reverse of the pocket, its raw upper edge in the fold of the hem to come, its sides level with the pocket's raw sides
mind-line-pockets-half = the foot of a half lining turned in towards the pocket and pressed
mind-line-pockets-later = the rows of the hem catch its upper edge, the setting rows its sides
mind-press-lined = the lining is turned in with the pocket
mind-fly-holes-eye = the eye towards the fly edge
mind-zip-left = left tape on the facing, its teeth towards the fly edge and the tape away from it; the right tape stays free
mind-shield-close = fold right sides together, close the foot, turn and press
mind-band-mark = mark centre back, sides and centre fronts on both edges
mind-band-press = press the fold and the turned-in edge
mind-label-before-band = through the inner ply of the band alone, before the band is set on

## Fronts, backs and legs

mind-bags-baste = mouth flat on the marks of the facing; bag and facing level with waist and outseam
mind-bags-baste-clear = on the left front only as far as the outer row of the fly: from there the bag stays free to be folded away, until the band's row catches it
mind-shield-join-zip = the right tape of the zip between front and shield
mind-shield-join = on the right front, right sides together, seam line { $plain } from every edge, from the band edge to the foot of the fly
mind-shield-join-uneven = on the right front, right sides together, from the band edge to the foot of the fly; seam line { $front } from the front's edge and { $shield } from both edges of the shield, which stand { $apart } beyond it
mind-shield-foot = the foot of the shield reaches below that of the fly and hangs free there, its two edges overedged together
mind-hidden-rivets = open the pressed sides out: through the turned-in corners and the back, not through the pocket's face
mind-hidden-rivets-covered = the setting rows then cover them outside; the stud shows inside only
mind-labels-seam = on the right side of the front’s allowance, ends on the seam line, the fold pointing past the edge; held by one row within the allowance, before the outseam is closed. Once that is turned, the whole label lies towards the front

## Waistband, loops and hems

mind-band-ends-turn = while the foot of the band is open there, { $turned } turned in at both ends between the plies, level with the edge of the fly and of the shield; press
mind-round-feet = first row 1 is sewn on at both ends, on its own line, from 10 mm over its stitches across the turned-in plies to the end of the band
mind-round-closes = the row closes the turned-in ends: no ply may slip out
mind-band-ends-turned = right sides together across both ends, turn and press, before the inner edge is sewn down
mind-band-ends = unpick the rows of the band for 30 mm at both ends, turn in the ends level with the fly, close them, and sew the rows on over them
mind-loops-fold = fold the ends under; tack at the top edge of the band and at the foot below the band seam
mind-loops-room = leave room for the belt between the two tacks
mind-loops-rivet = feel for the coin pocket's rivets before a foot tack beside them: the needle keeps 3 mm clear, and the tack moves up if it has to
mind-hem-tie = draw all ends to the inside, knot them, and hide the knot in the fold
mind-hem-tie-length = no end longer than the hem is deep, { $depth }

## Finish

mind-tack = { $length } by { $width }, { $stitches } stitches
mind-tack-back-pockets = at both top corners, down along the sides, between the setting rows
mind-tack-mouths = across both ends of each mouth, through the facing behind it
mind-tack-fly = at the foot of the fly through both fronts and the shield, and across the topstitching above its end
mind-tack-crotch = where rise, seat and inseams meet, on the front
mind-hole-cut = cut { $length }
mind-hole-gimp-ask = whether gimp is laid under the stitches is not stated: ask
mind-band-hole = in the left end, the eye towards its edge, level with the button
mind-band-button = at half the height of the band, under the eye of the buttonhole when the fly is closed
mind-band-button-round = at the point of the V, under the eye of the buttonhole when the fly is closed
mind-fly-buttons = on the shield, each under the eye of its buttonhole when the fly is closed
mind-mouth-rivets = at both ends of each mouth, beside the tacks, through the facing behind it
mind-mouth-rivets-alone = at both ends of each mouth, through the facing behind it; they hold the ends, where no tack is sewn
mind-trim-threads = cut every thread end to 3 mm, inside and outside, but for knots of a hem tied by hand: loose ends tangle in the wash
mind-wash-laundry = at a laundry, all pairs of an order in one recipe; the chart after the wash holds only once it is done
mind-wash-here = all pairs of an order in one recipe; the chart after the wash holds only once it is done
mind-wash-step = { $step }
mind-wash-ask = the recipe is not stated: ask
mind-look-over = cut every thread end, turn right side out, look over seams and hardware
