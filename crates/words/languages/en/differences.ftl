### What is different between two versions of a file: what each change is about, and how it went.

## How it went

difference-changed = { $about }: { $was } → { $is }
difference-grew = { $is } ({ $by })
difference-within = { $about } changed
difference-new = { $about }: { $is }, new
difference-added = { $about } added
difference-added-as = { $about } added: { $is }
difference-added-on-side = { $about } added on the { $side }: { $width } x { $depth }
difference-added-to-chart = { $about } added to the chart: { $value } at size { $size }
difference-taken-out-of-chart = { $about } taken out of the chart
difference-taken-out = { $about } taken out
difference-removed = { $about } removed
difference-follows = { $about } changes with { $like }
difference-edges-named = { $about }: its edges are named otherwise
difference-muted = { $about } muted: { $reason }
difference-counted-again = { $about } counted again

## What a value was or is, where it has no name of its own

difference-none = none
difference-yes = yes
difference-no = no
difference-open = open
difference-as-usual = as usual
difference-drafted = drafted from the chart
difference-break = { $grade } above { $waist }
difference-lap-order = { $over } over { $under }
difference-list = a list of { $count }
difference-section = a section

## A row of stitches

difference-row-sewn = stitch { $stitch }, { $density }, { $yarn } with { $under }, { $offset } from the seam line
difference-row-begins = { $row }, begins { $ending }
difference-row-ends = { $row }, ends { $ending }

## What a seam or a row had before

difference-had-construction = construction { $was }
difference-had-stitch = stitch: { $was }
difference-had-density = density: { $was }
difference-had-yarn = yarn: { $was }
difference-had-under = under yarn: { $was }
difference-had-offset = offset: { $was }
difference-had-begin = begins: { $was }
difference-had-end = ends: { $was }

## Places in a file that is no style

difference-number = no. { $number }

## The style, its sizes and its cloths

difference-style-name = name
difference-style-code = code
difference-style-figure = figure
difference-style-fit = fit
difference-style-summary = summary
difference-style-workroom = workroom
difference-waists = waists
difference-lengths = lengths
difference-base-size = base size
difference-shell = shell cloth
difference-pocketing = pocketing
difference-lining = lining cloth

## The chart

difference-measure-value = { $measure } at size { $size }
difference-measure-grade = { $measure } grade for an inch of waist
difference-measure-per-length = { $measure } grade for an inch of length
difference-measure-breaks = { $measure } grade breaks
difference-measure-level = level of { $measure }
difference-measure-tolerance = { $measure } tolerance

## Shape

difference-seat-split = seat split
difference-thigh-split = thigh split
difference-knee-split = knee split
difference-hem-split = hem split
difference-waist-split = waist split
difference-front-tilt = centre front tilt
difference-seat-angle = seat angle
difference-seat-dart = seat dart
difference-inseam-stretch = inseam stretch
difference-band-ease = band ease
difference-outseam-line = outseam line

## Fly, band and hem

difference-fly = fly
difference-fly-buttons = fly buttons
difference-fly-button = fly button
difference-fly-zip = fly zip
difference-fly-topstitch = when the fly is topstitched
difference-band-button = band button
difference-band-rows = band rows
difference-band-start = band row begins below the band
difference-band-v = band V
difference-hem-join = hem begins at
difference-hem-ends = hem thread ends
difference-hem-roping = roping at the hem

## Pockets

difference-coin-side = coin pocket side
difference-coin-below-band = coin pocket below band
difference-coin-from-side = coin pocket from side
difference-coin-narrowing = coin pocket lower narrowing
difference-coin-shape = coin pocket shape
difference-coin-drop = coin pocket drop
difference-coin-outline = coin pocket outline
difference-bag-depth = pocket bag depth
difference-bag-width = pocket bag width
difference-bag-facing = pocket facing
difference-mouth-fullness = pocket mouth fullness
difference-back-pocket-left = left back pocket
difference-back-pocket-right = right back pocket
difference-back-foot-width = { $pocket } foot width
difference-back-side-length = { $pocket } side length
difference-back-outer-drop = { $pocket } outer drop
difference-back-lining = { $pocket } lining
difference-back-lining-cloth = { $pocket } lining cloth
difference-back-stitching = { $pocket } stitching
difference-back-waves = { $pocket } half waves
difference-back-crest = { $pocket } wave height
difference-back-rise = { $pocket } rise of the waves
difference-back-turned = { $pocket } stitching turned over
difference-back-drawing = { $pocket } drawing
difference-extra = extra pocket
difference-extra-side = extra pocket side
difference-extra-width = extra pocket width
difference-extra-depth = extra pocket depth
difference-extra-from-centre = extra pocket from centre front

## Loops, rivets, patch and labels

difference-loops = belt loops
difference-belt = width of the belt
difference-rivets = rivets
difference-rivet = rivet
difference-rivets-mouth = rivets at the pocket mouths
difference-rivets-coin = rivets at the coin pocket
difference-rivets-hidden = hidden rivets at the back pockets
difference-patch = patch
difference-patch-from-centre = patch from centre back
difference-patch-through = plies the patch is sewn through
difference-patch-letters = letters of the patch
difference-patch-drawing = patch drawing
difference-label = label { $number }
difference-label-named = label { $number } ({ $trim })
difference-label-of = label { $trim }
difference-label-place = place of { $label }
difference-label-purpose = purpose of { $label }
difference-label-fold = fold of { $label }
difference-label-text = text of { $label }
difference-label-drawing = drawing of { $label }

## Seams and bartacks

difference-seam-lap = { $seam } lap
difference-seam-like = { $seam } sewn like
difference-row = row { $number } of { $seam }
difference-bartack-yarn = bartack yarn
difference-bartack-under = bartack under yarn
difference-bartack-length = bartack length
difference-bartack-width = bartack width
difference-bartack-stitches = bartack stitches
difference-bartacks-mouth = bartacks at the pocket mouths
difference-bartacks-coin = bartacks at the coin pocket
difference-bartacks-back = bartacks at the back pockets
difference-bartacks-fly = bartacks at the fly
difference-bartacks-crotch = bartack at the crotch

## The maker's own pattern

difference-pattern = own pattern
difference-pattern-drawn = own pattern drawn
difference-pattern-allowance = allowance of the own pattern
difference-pattern-edge-allowance = allowance of the own pattern, { $edge }
difference-pattern-piece = { $piece } of the own pattern

## Cutting

difference-cutting-band = waistband cut
difference-residual-warp = band cloth still shrinks along the warp
difference-residual-weft = band cloth still shrinks along the weft
difference-cutting-skew = cut on skewed cloth
difference-wash-finish = finish
difference-wash-by = washed by
difference-wash-set-after = set after the wash
difference-wash-steps = wash recipe

## Why things are as they are

difference-why = why { $about } is so
difference-why-in-pack = whether the workroom reads why { $about } is so

## Findings that are no longer counted

difference-finding = finding on { $about }
difference-muted-code = code of the muted finding { $code }
difference-muted-about = subject of the muted finding { $code }
difference-muted-reason = reason of the muted finding { $code }
