### A chart that cannot be drafted: what goes wrong, and what would end it.

## What would go wrong

conflict-crotch-narrow = the crotch would have no width
conflict-crotch-wide = the crotch would be far too wide
conflict-crotch-height = the back crotch point would lie at the wrong height
conflict-waist-low = the waist would lie below the seat level
conflict-side-low = the side seam would end below the seat level
conflict-waist-steep = the waist would climb or fall too steeply towards the side
conflict-waist-thin = the waist would have no width
conflict-waist-big = the waist would be wider than the seat
conflict-hem-high = the hem would lie above the knee
conflict-waist-tipped = the waist would lie lower behind than in front
conflict-yoke-turned = the yoke would turn too sharply
conflict-fly-long = the fly would reach down to the inseam
conflict-fly-wide = the fly would be wider than the front
conflict-mouth-wide = the pocket mouth would be wider than the front
conflict-mouth-deep = the pocket mouth would reach below the seat level
conflict-misses = the closest pattern misses a measure by { $off }

## What does not go together, and what would

conflict-no-way = these measures do not go together ({ $reason }), and no change of a few of them was found that puts it right
conflict-asked = { $name } { $value }
conflict-asked-at = { $asked } at { $size }
conflict-one = { $asked } does not go with the rest of the chart ({ $reason }): it would have to be { $bound }
conflict-several = { $asked } do not go with the rest of the chart ({ $reason }): what drafts is { $drafts }
conflict-drafts = { $name } { $value } ({ $change })
conflict-or = { $said }, or { $name } { $bound }
conflict-at-least = at least { $value } ({ $change })
conflict-at-most = at most { $value } ({ $change })
conflict-more = +{ $by }
conflict-less = −{ $by }
conflict-set = set { $name } to { $value }

## What can be changed, within a sentence

conflict-level = { $measure } level
conflict-grade = grade of the { $measure }
conflict-yoke-centre = yoke height (centre back)
conflict-yoke-side = yoke height (side)
conflict-mouth-width = pocket mouth (width)
conflict-mouth-depth = pocket mouth (depth)
conflict-seat-split = seat split
conflict-thigh-split = thigh split
conflict-knee-split = knee split
conflict-hem-split = hem split
conflict-waist-split = waist split
conflict-front-tilt = front tilt
conflict-seat-dart = seat dart
conflict-inseam-stretch = inseam stretch
conflict-band-ease = band ease
conflict-seat-angle = seat angle
