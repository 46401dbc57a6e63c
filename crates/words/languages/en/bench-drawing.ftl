### The drawing, and what can be taken hold of on it: crates/bench/src/part/drawing.rs, garment.rs, grip.rs, see.rs.

drawing-label = { $title }. Arrow keys move, plus and minus zoom, 0 shows all.
# In the list of keys: what the keys of the drawing do.
drawing-does = Move the drawing, look closer and from farther, see all of it
drawing-conflict = This chart cannot be drafted as it stands. The drawing shows how near a pattern comes; the findings say what would be right.
drawing-measures = Measures on the drawing
# A measure in the size shown.
drawing-in-size = { $value } in { $size }
drawing-finding = Finding { $number }

## The ways to turn the pair

drawing-sides = Side of the pair
drawing-front = Front
drawing-back = Back
drawing-faces = Face of the cloth
drawing-outside = Outside
drawing-inside = Inside

## Its layers

drawing-layers = Layers
drawing-layer-stitches = Stitches
drawing-layer-fittings = Hardware and labels
drawing-layer-below = What lies below
drawing-layer-measures = Measures
drawing-layer-findings = Findings

## Zoom

drawing-zoom = Zoom
drawing-zoom-out = Zoom out
# A button: all of the drawing is seen.
drawing-zoom-all = Fit
drawing-zoom-in = Zoom in

## Plates: drawings of a detail, each a page to be printed

drawing-plate = Plate
# No plate, but the pair itself.
drawing-no-plate = The pair
drawing-plate-missing = There is no plate of the { $plate }: this style has none, or none that can be drafted.
drawing-plate-yarn-plan = yarn plan

## What can be taken hold of on the drawing

grip-label = { $grip }. Drag, or hold with Enter and use the arrow keys.
grip-at-mouth-width = Hip pocket mouth, at the band
grip-at-mouth-depth = Hip pocket mouth, at the outseam
grip-at-coin = Coin pocket, its place
grip-at-coin-width = Coin pocket, inner top corner
grip-at-coin-depth = Coin pocket, foot
grip-at-coin-foot = Coin pocket, lower corner
grip-at-fly-length = Fly, its foot
grip-at-extra = Extra pocket, its place
grip-at-extra-depth = Extra pocket, foot
grip-at-extra-width = Extra pocket, its far side
grip-at-yoke-centre = Yoke seam at centre back
grip-at-patch = Patch, its place
grip-at-loop-length = Belt loops, their foot
grip-at-loop-width = Belt loops, their side
grip-left-place = Left back pocket, its place
grip-left-width = Left back pocket, outer top corner
grip-left-inner = Left back pocket, inner lower corner
grip-left-outer = Left back pocket, outer lower corner
grip-left-point = Left back pocket, point
grip-left-rise = Left back pocket, outer end of the stitching
grip-left-crest = Left back pocket, crest of the stitching
grip-right-place = Right back pocket, its place
grip-right-width = Right back pocket, outer top corner
grip-right-inner = Right back pocket, inner lower corner
grip-right-outer = Right back pocket, outer lower corner
grip-right-point = Right back pocket, point
grip-right-rise = Right back pocket, outer end of the stitching
grip-right-crest = Right back pocket, crest of the stitching

## The values that move it: each is followed by the value

grip-back-from-centre = from centre back
grip-back-from-yoke = below the yoke
grip-back-top-width = top width
grip-back-foot-width = foot width
grip-back-inner-side = inner side
grip-back-outer-drop = outer side longer by
grip-back-length = length
grip-stitching-rise = rise
grip-stitching-crest = crest
grip-mouth-width = mouth width
grip-mouth-depth = mouth depth
grip-coin-from-side = from the outseam
grip-coin-below-band = below the band
grip-coin-width = coin pocket width
grip-coin-depth = coin pocket depth
grip-coin-narrowing = foot narrower by
grip-coin-drop = drop
grip-fly-length = fly length
grip-extra-from-centre = from centre front
grip-extra-depth = depth
grip-extra-width = width
grip-yoke-centre = yoke at centre back
grip-patch-from-centre = from centre back
grip-loop-length = loop length
grip-loop-width = loop width

## Said of a value that lines up with another

grip-coin-as-top = as wide as its top
grip-as-on-left = as on the left
grip-as-on-right = as on the right
