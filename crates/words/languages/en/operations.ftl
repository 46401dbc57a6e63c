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
