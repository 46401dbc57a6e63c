### What constructions, plies, stitches and labels are called. Each key ends in the code that files and programs write.

## Constructions, by name

sewn-pressed-open = pressed-open
sewn-lap-felled = lap-felled
sewn-mock-felled = mock-felled
sewn-safety-stitched = safety-stitched
sewn-overlocked = overlocked
sewn-french-seam = french-seam
sewn-bound-edge = bound-edge
sewn-clean-finished = clean-finished
sewn-band-over-edge = band-over-edge
sewn-band-turned = band-turned
sewn-rolled-hem = rolled-hem
sewn-folded-hem = folded-hem
sewn-turned-hem = turned-hem
sewn-turned-edge = turned-edge
sewn-patch-set = patch-set
sewn-laid-on = laid-on
sewn-strip = strip
sewn-surface = surface

## The plies of a seam, by the panel each belongs to

ply-front = front
ply-back = back
ply-left = left
ply-right = right
ply-yoke = yoke

## Stitches of ISO 4915

stitch-101 = single-thread chainstitch
stitch-301 = lockstitch
stitch-304 = zigzag lockstitch
stitch-401 = two-thread chainstitch
stitch-404 = zigzag two-thread chainstitch
stitch-406 = two-needle bottom coverstitch
stitch-503 = two-thread overedge
stitch-504 = three-thread overedge
stitch-505 = three-thread overedge, box edge
stitch-512 = four-thread mock safety stitch
stitch-514 = four-thread overedge
stitch-515 = four-thread safety stitch
stitch-516 = five-thread safety stitch
stitch-602 = two-needle top and bottom coverstitch
stitch-605 = three-needle top and bottom coverstitch
stitch-607 = four-needle flatseam

## What labels tell, and how they are folded

label-tells-brand = brand
label-tells-size = size
label-tells-fibre = fibre
label-tells-care = care
label-tells-origin = origin
label-tells-run = run
label-fold-flat = flat
label-fold-end = end fold
label-fold-centre = centre fold
label-fold-mitre = mitre fold
