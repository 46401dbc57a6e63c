### What stands on cut pieces and on the sheets that show them: labels, corners, sizes on each other, lays, patterns at true size.

## Labels of cut pieces

cut-piece-left-half = { $piece }, left half
cut-piece-right-half = { $piece }, right half
cut-size = size { $size }
cut-pairs = cut { $pairs ->
    [one] { $pairs } pair, mirrored
   *[other] { $pairs } pairs, mirrored
}
cut-as-drawn = cut { $count } as drawn
cut-mirrored = cut { $count } mirrored
cut-both = cut { $as-drawn } as drawn, { $mirrored } mirrored
cut-side-drawn = drawn: { $side }
cut-side-mirrored = { $side }, cut mirrored
cut-numbered = { $number } { $piece }
cut-second-copy = { $piece }, mirrored copy
cut-only = { $copy } only
cut-copy-mirrored = mirrored copy
cut-copy-drawn = copy as drawn
cut-cloth-edge-at = cloth's own edge, { $away }
cut-cloth-edge-from = cloth's own edge, { $least } to { $most }
cut-piece-title = { $piece }, { $size }

## What the lines and marks on the sheets of pieces are

legend-title = Lines and marks on the pieces
legend-cut-line = cut line
legend-sewn-line = seam line
legend-fold = fold
legend-placement = place of what is set on
legend-grain = along the warp
legend-slit = notch: a slit { $depth } mm deep from the cut line (common practice)
legend-double = double notch: two slits { $apart } mm apart mark the back
legend-drawn = notch drawn on the wrong side: the cloth's own edge stays whole
legend-drill = drill mark, at least { $inside } mm inside the finished edges of what is set over it
legend-from-to = { $least } to { $most }

## Corners: what each kind is called, where its rules are used, and why

corners-title = Corners, { $size }
corners-flat = flat, as it is cut
corners-folded-none = sewn, the allowance lies flat
corners-folded-once = folded as sewn
corners-folded-twice = folded twice, as sewn
corners-folded-both = both edges folded, one after the other
corners-place = { $piece }, { $before } and { $after }
corners-true-size = true size
corners-times = { $times } times true size
corners-where = Where { $when }.
corners-why = Why: { $why }.
corner-full = full
corner-squared = squared
corner-stepped = stepped
corner-mirrored = mirrored
corner-when-runs-on = one edge runs smoothly on into the next with the same allowance
corner-why-runs-on = it is one cut line
corner-when-changes = one edge runs smoothly on into the next with another allowance
corner-why-changes = each seam needs its own allowance right up to where it ends, so the cut line steps squarely there
corner-when-inward = the outline turns inward
corner-why-inward = both cut lines end where they cross; there is no cloth to fold
corner-when-together = both edges are turned in or sewn in one seam
corner-why-together = the corner is folded over both edges and lies enclosed
corner-when-bare = the edge sewn first has no allowance
corner-why-bare = its line runs straight on through the allowance of the seam that crosses it
corner-when-sharp = the cut lines would meet more than three allowances away
corner-why-sharp = a long tip of cloth is of no use and catches; it is cut off square
corner-when-hem = a hem is turned up beside another edge
corner-why-hem = what lies beyond the fold is the mirror image of what lies above it, so that the turned hem is as wide as the leg or pocket there; turned twice, it is mirrored twice
corner-when-hem-on-cloth-edge = a hem is turned up beside the cloth's own edge
corner-why-hem-on-cloth-edge = the cloth's own edge runs straight on, and is square to the hem
corner-when-turned = an allowance is turned back onto its own piece before the other edge is sewn
corner-why-turned = folded, it ends flush with the cut line of its own piece
corner-when-across-mirrored = an allowance lies across the other copy of the same piece
corner-why-across-mirrored = that copy is the mirror image over the seam, so the end of the allowance is too
corner-when-across = an allowance lies across another piece before the other edge is sewn
corner-why-across = the cut line of the piece it lies on runs on over it
corner-when-felled = the lower ply of a felled seam reaches under the other and is turned back on itself
corner-why-felled = up to the fold inside it ends with the piece it lies under; from there on it is the mirror image over that fold
corner-when-opened = a seam is pressed open and crossed, at a square or blunt corner
corner-why-opened = both plies then end alike when they are sewn, and neither looks out once open
corner-when-opened-sharp = a seam is pressed open and crossed, at a sharp corner
corner-why-opened-sharp = cut square it would look out past the cut line of its own piece once open

## Sizes on each other

nest-title = { $piece }, all sizes
nest-all-sizes = all sizes
nest-waist = waist { $tags }
nest-length = length { $tags }
nest-strong-line = strong line { $size }

## Lays

lay-sheet-title = Lay on { $cloth }
lay-sheet-mirrored = { $piece }, mirrored
lay-sheet-zone = zone { $number }
lay-sheet-splice = { $number }: lap { $lap }
lay-sheet-figures = { $cloth }, { $width } wide: { $length } long, { $used } of the cloth used; no lay is shorter than { $bound }

## Patterns and pages

pattern-set-title = Patterns, size { $size }
pattern-set-nested = Patterns, all sizes on each other
pattern-set-square = This square is 100 mm wide and high.
pattern-set-measure = Measure it before you cut.
overview-pieces = Pieces, page { $page } of { $pages }, 1:{ $one-to }
overview-nests = Nests, page { $page } of { $pages }, 1:{ $one-to }
