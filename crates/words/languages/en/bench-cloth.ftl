### The room of cloths: crates/bench/src/part/cloth.rs.

cloth-title = Cloth
cloth-lead = Cloths are the collection’s, and shared by its styles. What a pair takes is for size { $size }, as it is cut before the wash.

## What a style uses cloth for

cloth-shell = Shell
cloth-shell-how = What the panels are cut from.
cloth-pocketing = Pocketing
cloth-pocketing-how = What the pocket bags are cut from.
cloth-lining = Lining
cloth-lining-how = What back pockets are lined with, where a pocket does not say otherwise.
cloth-lining-none = none
# A use of cloth, such as Shell.
cloth-of-use = { $title } cloth
cloth-not-used = No piece of this style is cut from it.

## What is known of a cloth

cloth-weight = Weight
cloth-ply = Ply
cloth-width = Width
cloth-width-edge = { $width }, with its own edge
cloth-weave = Weave
cloth-fibre = Fibre
cloth-shrinks = Shrinks
cloth-shrinks-by = warp { $warp }, weft { $weft }
cloth-shrinks-measured = warp { $warp }, weft { $weft }, as its wash test measured
cloth-skew = Skew
cloth-pair = A pair
cloth-pair-takes = { $area } in { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
}, { $mass }; at full width { $length }

## Shells beside each other, and cutting on skewed cloth

cloth-compared = Shells compared
cloth-skew-group = Cutting on skewed cloth
cloth-skew-title = Against skew
cloth-skew-how = Where the weft lies askew after the wash: pieces are cut straight all the same, sheared along the warp, or with their grain turned.
cloth-skew-cut = Pieces are cut
cloth-skew-choice = Cut on skewed cloth

## The collection's cloths

cloth-collection = Cloths of the collection
cloth-new = A new cloth
cloth-new-like = as this one, until it is changed
cloth-add = Add
cloth-undo = Take the last change of cloths back
