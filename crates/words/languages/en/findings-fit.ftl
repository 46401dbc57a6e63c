### What rules of fit say of the pieces of a size, and of its chart.

## Chart

fit-conflict = no pattern meets this chart: { $reason }
fit-measure-missed = the pattern measures { $pattern }, the chart says { $chart }
fit-rises = the back rise is { $more } longer than the front rise; { $least } to { $most } is usual
fit-rises-share = the back rise is { $share } of both rises together; 55 to 60 % is usual
fit-rises-help = change front rise or back rise in the chart
fit-foot-none = the hem is { $hem } round; in cloth that does not stretch hardly any foot passes below { $least }
fit-foot-half = the hem is { $hem } round; in cloth that does not stretch about half of all feet need { $least } or more
fit-foot-help = widen the hem, or open it with a slit or a zip
fit-seat-larger = the seat is { $off } larger than that of a mean body with a { $waist } in waist ({ $body }); a { $fit } fit in cloth that does not stretch usually has { $low } to { $high } cm more
fit-seat-smaller = the seat is { $off } smaller than that of a mean body with a { $waist } in waist ({ $body }); a { $fit } fit in cloth that does not stretch usually has { $low } to { $high } cm more
fit-waist-tag = the waist is { $waist } round ({ $inches }) and the label says { $label }; { $least } to { $most } is usual for it
fit-waist-half = the chart takes the whole waist round: this looks like half of it, measured flat
fit-waist-was-inches = this looks like inches written as centimetres
fit-waist-was-cm = this looks like centimetres written as inches
fit-waist-help = change the waist in the chart, its grade, or the sizes
fit-inseam-tag = the inseam is { $inseam } ({ $inches }) and the label says { $label }
fit-inseam-help = change the inseam in the chart, its grade for length, or the lengths

## Crotch

fit-crotch-below = the back crotch point lies { $by } below the front one; 0 to 1.5 cm below is usual
fit-crotch-above = the back crotch point lies { $by } above the front one; 0 to 1.5 cm below is usual
fit-crotch-drop-help = check thigh and inseam against each other, and the inseam stretch
fit-crotch-level = the lowest points of front and back lie { $apart } apart in height; up to { $most } is usual
fit-crotch-bend = the crotch line bends by { $bend } where it crosses the inseam; up to 5° can be smoothed
fit-crotch-both-ways = the curve turns first one way, then the other
fit-crotch-sharp = the curve turns as sharply as a circle of { $radius } radius; { $least } or more sews easily
fit-balance = inward of the crease the back is { $more } wider than the front; { $wanted } would follow from the crotch extensions
fit-seat-slope = the seat seam slopes by { $slope } against the grain; 12° to 16° is usual for jeans
fit-seat-slope-help = change the seat angle of the shape
fit-reach = { $crotch } reaches { $reach } or { $share } of the seat; { $low } to { $high } ({ $least } to { $most }) is usual
fit-reach-small = the thigh is small for the seat: enlarge the thigh or take the seat in
fit-reach-large = the thigh is large for the seat: take the thigh in or enlarge the seat

## Lines

fit-line-bends = the line bends by { $bend }; up to 2° can be smoothed
fit-corner = the corner is { $angle }; it should be 90° within 2°
fit-hem-grain = the hem crosses the grain at { $angle }; it should be 90° within 2°
fit-crease-knee = the grain runs { $off } beside the middle of the knee; within { $most } the leg hangs straight
fit-crease-hem = the grain runs { $off } beside the middle of the hem; within { $most } the leg hangs straight
fit-outseam-strays = between hip and hem the outseam strays { $off } from the grain; it should be straight
fit-crease-outseam = at the crotch the crease lies { $off } from the middle towards the outseam; usual is the middle or up to 1 cm towards the outseam
fit-crease-inseam = at the crotch the crease lies { $off } from the middle towards the inseam; usual is the middle or up to 1 cm towards the outseam
fit-taper = the { $most } tapers by { $by }, the { $least } by { $less }; within 0.5° the leg hangs straight
fit-taper-help = give knee and hem the same split between front and back

## Pieces and notches

fit-outline-open = the outline is open by { $gap } between { $edge } and { $next }
fit-outline-crosses = the outline crosses itself
fit-outline-reversed = the outline runs the wrong way round
fit-notch-stray = the notch “{ $notch }” does not lie on its edge
fit-notch-alone = a notch has no partner to meet
fit-notches-apart = the two notches lie { $apart } apart; up to { $most } is usual

## Seams

fit-longer = { $longer } is { $by } longer than { $shorter } ({ $long } and { $short }); they may differ by { $most }
fit-side-front = the front
fit-side-back = the back
fit-side-back-yoke = the back with its yoke
fit-side-yoke = the yoke
fit-side-body = the body
fit-side-band = the band with its stated ease
fit-side-inner = its inner edge
fit-side-overlap = its seam with the overlap
fit-side-bag = the bag
fit-stretch-unlike = the back is { $shorter } shorter than the front, but the style says { $stated }
fit-stretch-unusual = the back is stretched on by { $by }; 0 to 1 cm is usual
fit-stretch-unusual-help = set the inseam stretch of the shape to 3 to 6 mm
fit-stretch-best = the back is stretched on by { $by }; 0.3 to 0.6 cm is best, less for stiff cloth
fit-band-ease = the body is { $ease } longer than the band; 0 to { $most } can be eased on
fit-band-ease-help = lower the band ease of the shape
fit-band-overlap = the band overlaps by { $overlap }; 3.5 to 4.5 cm is usual
fit-band-overlap-help = change the band overlap in the chart
fit-facing-apart = front and facing lie { $apart } apart; they should meet within { $most }

## The maker's own pattern

fit-own-more = the pattern measures { $pattern }, the chart says { $chart }: { $off } more, with { $allowed } either way allowed
fit-own-less = the pattern measures { $pattern }, the chart says { $chart }: { $off } less, with { $allowed } either way allowed
fit-own-measure-help = change the chart to what the pattern measures, or correct the pattern and bring it again
fit-own-laid-out = { $file } holds no { $missing }; they are laid out on its panels by the chart
fit-own-unused = the maker's own pattern could not be used, and the pieces are drafted from the chart: { $reason }
fit-own-unused-help = check corners and edges in [pattern], correct the pattern and bring it again

## What each rule demands

fit-rule-outseam-walk = front and back outseam are equally long, in all and between notches
fit-rule-inseam-below-knee = front and back inseam are equally long from hem to knee
fit-rule-inseam-stretch = above the knee the back inseam is a little shorter and stretched on
fit-rule-crotch-drop = the back crotch point lies a little lower than the front one
fit-rule-crotch-level = the lowest points of both crotch curves lie level
fit-rule-crotch-smooth = the crotch line runs through the inseam without a corner
fit-rule-line-smooth = lines run on through the seams they cross
fit-rule-corner-square = waist, hem and band meet their seams squarely
fit-rule-crotch-curve = the crotch curve turns one way and not too sharply
fit-rule-yoke-walk = the yoke's lower edge is as long as the back's upper edge
fit-rule-band-walk = the band seam of the body is as long as the band, plus the stated ease
fit-rule-band-overlap = the band is longer than the waist by its overlap
fit-rule-crease = the grain runs down the crease, in the middle of knee and hem
fit-rule-leg-taper = inner and outer leg line taper alike, front and back
fit-rule-balance = the back reaches further inward of the crease than the front, by half the difference of the crotch extensions
fit-rule-seat-slope = the seat seam slopes as jeans do
fit-rule-rise-difference = the back rise is longer than the front rise by a usual amount
fit-rule-seat-share = the back rise is a usual share of the whole crotch length
fit-rule-pocket-facing = front and pocket facing together make the uncut front
fit-rule-outline = pieces are closed, do not cross themselves, and their notches meet
fit-rule-front-extension = the front crotch reaches a usual share of the seat
fit-rule-back-extension = the back crotch reaches a usual share of the seat
fit-rule-fork = front and back crotch together reach a usual share of the seat
fit-rule-foot-passage = the closed hem lets the heel through
fit-rule-seat-ease = the seat has the ease of its kind of fit
fit-rule-waist-for-size = the waist suits the number on the label
fit-rule-inseam-for-size = the inseam suits the number on the label

## Where each rule comes from

fit-source-outseam-walk = drafting books draw both side seams equally long; 1 mm in all and 0.5 mm between notches are common practice
fit-source-inseam-below-knee = drafting books draw both equally long; 0.5 mm is common practice
fit-source-inseam-stretch = 0.1 cm in the classic metric block, 0.4 cm in a proportional men's draft (both computed for this project); up to 1 cm in the trade, from memory
fit-source-crotch-drop = 0.5 cm in the classic metric block, 1 cm in a proportional men's draft; 0 to 1.5 cm accepted for this project
fit-source-crotch-level = half an inch in published fitting advice
fit-source-crotch-curve = common practice: radius of at least 3 cm in front and 5 cm behind
fit-source-band-walk = common practice: ease of at most 0.5 % or 1 cm
fit-source-band-overlap = common practice: overlap of 3.5 to 4.5 cm
fit-source-crease = published advice on balancing a leg: symmetrical about the grain below the knee; 1 mm is common practice
fit-source-balance = computed for this project
fit-source-seat-slope = 7 to 10 degrees in trouser drafts, 15 in tailoring of the 1890s; 12 to 16 for jeans, from memory
fit-source-rise-difference = published charts: 2 3/4 to 4 in, up to 14 cm when the front rise is low
fit-source-seat-share = back share of the body's crotch length, men 0.573 and women 0.551, computed from the ANSUR II survey for this project; 0.55 to 0.60 accepted
fit-source-pocket-facing = common practice: 0.5 mm
fit-source-outline = common practice: notches within 1 mm
fit-source-front-extension = 0.041 to 0.071 of the seat over the charts solved for this project; 0.035 to 0.075 accepted
fit-source-back-extension = 0.070 to 0.107 of the seat over the charts solved for this project; 0.065 to 0.125 accepted
fit-source-fork = 0.110 to 0.178 of the seat over the charts solved for this project; 0.105 to 0.185 accepted
fit-source-foot-passage = heel and ankle girth of the ANSUR II survey, men 34.4 cm and women 31.0 cm on average; limits computed for this project
fit-source-seat-ease = charts of this project against the mean body of the ANSUR II survey; common practice
fit-source-waist-for-size = published charts: as the label says to 2 in more; 2 in less to 5 in more accepted, from memory
fit-source-inseam-for-size = published charts: as the label says; 2 in either way accepted, from memory
fit-source-contract = the chart is the contract with the workroom
fit-source-own = the maker's own pattern
fit-source-beside = the maker's own pattern beside the maker's own chart

## Lines of the leg, within a sentence

fit-front-inseam = front inseam
fit-back-inseam = back inseam
fit-front-outseam = front outseam
fit-back-outseam = back outseam
