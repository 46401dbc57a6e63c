### What stands on the section of a seam: its title, its plies, what becomes of their edges, widths and rows.

## Title

section-title = Section of { $seam }, { $construction }

## Plies

section-ply-back = back
section-ply-back-pocket = back pocket
section-ply-fly-strip = buttonhole strip
section-ply-left-half = left half
section-ply-right-half = right half
section-ply-belt-loop = belt loop
section-ply-body = body
section-ply-coin-pocket = coin pocket
section-ply-extra-pocket = extra pocket
section-ply-facing = facing
section-ply-fly-facing = fly facing
section-ply-front = front
section-ply-inner-half = inner half
section-ply-label = label
section-ply-leg = leg
section-ply-lining = lining
section-ply-lining-half = lining, upper half
section-ply-lower = lower ply
section-ply-patch = patch
section-ply-patch-unstated = patch, thickness not stated
section-ply-pocket-bag = pocket bag
section-ply-strip = strip
section-ply-upper = upper ply
section-ply-waistband = waistband

## What becomes of the edge of a ply

section-edge-as-fly-edge = far edge as the section of the fly facing edge shows
section-edge-both-turned = both edges turned in; cloth not stated
section-edge-covered = cut edge covered
section-edge-in-strip = cut edge in the strip
section-edge-in-strip-each = cut edge in the strip, each ply by itself
section-edge-meet = cut edges meet
section-edge-overedged = edge overedged
section-edge-selvedge = ends in the selvedge
section-edge-showing = cut edge showing
section-edge-turned-each = cut edge turned in, on each ply by itself
section-edge-turned-under = end turned under

## Widths

section-width = { $name } { $length }
section-width-allowance = allowance
section-width-band = band
section-width-binding = binding
section-width-depth = depth
section-width-enclosed = enclosed
section-width-facing = facing
section-width-first-row = first row to cut edges
section-width-lap = lap
section-width-loop = loop
section-width-turned-in = turned in

## Beside the drawing

section-inside = inside
section-outside = outside
section-overedged = overedged
section-selvedge = selvedge
section-bar-face = { $length }; dark line: the face of the cloth

## The list below: rows, plies, how large everything is drawn

section-row-of-one-yarn = { $stitch } · { $density } · { $yarn }
section-row-of-two-yarns = { $stitch } · { $density } · { $needle }, under { $under }
section-row = row { $number }: { $row } · { $plies ->
    [one] { $plies } ply
   *[other] { $plies } plies
}
section-row-trim = row { $number }: { $row } · { $trim } and { $plies ->
    [one] { $plies } ply
   *[other] { $plies } plies
}
section-joining-row = grey: joining row, { $plies ->
    [one] { $plies } ply
   *[other] { $plies } plies
}
section-ply-with-allowance = { $ply }, allowance { $allowance }
section-ply-with-edge = { $ply }, { $edge }
section-cloth-true = cloth at its true thickness
section-cloth-thickened = cloth { $times } times as thick as it is
section-drawn = drawn { $times }:1, { $cloth }
section-drawn-broken = drawn { $times }:1, { $cloth }; a plain stretch left out
