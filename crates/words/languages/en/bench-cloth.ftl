### The room of cloths: crates/bench/src/part/cloth.rs, compare.rs, stated.rs.

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
cloth-compared-none = Add a second shell, and the two are compared here: what a pair would take of each.
cloth-compared-length = A pair, at full width
cloth-compared-mass = Its cloth weighs
cloth-compared-lead = In size { $size }: the shell’s length were its whole width used, and what all cloths of the pair weigh together.
# Beside the shell that the style is cut from.
cloth-compared-now = now
# In place of what a pair would take of a shell.
cloth-compared-not = cannot be worked out
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

## What the collection states of a cloth

stated-title = What it states, and its wash test
stated-saved = Saved to cloths.toml; every style that is cut from it follows.
# Stands in an empty field.
stated-not = not stated
# In an empty field: the shrinkage or skew that a test measured.
stated-by-test = { $percent } by its test
stated-name = Name
stated-bought = Bought for
stated-colour = Colour of the face
stated-thickness = Thickness of a ply
stated-width = Usable width
stated-edge = Its own edge to show
stated-warp = Shrinks along the warp
stated-weft = Along the weft
stated-skew = Skew after the wash

## The same fields for somebody who hears them: the cloth by its name, and what is stated of it

stated-name-label = { $cloth }: name
stated-bought-label = { $cloth }: bought for
stated-colour-label = { $cloth }: colour of the face
stated-weight-label = { $cloth }: weight
stated-thickness-label = { $cloth }: thickness of a ply
stated-width-label = { $cloth }: usable width
stated-weave-label = { $cloth }: weave
stated-fibre-label = { $cloth }: fibre
stated-edge-label = { $cloth }: has an edge of its own
stated-warp-label = { $cloth }: shrinkage along the warp
stated-weft-label = { $cloth }: shrinkage along the weft
stated-skew-label = { $cloth }: skew after the wash

## The wash test

stated-wash = Wash test
stated-wash-none = Mark a specimen along warp and weft, better three times each, wash and dry it as the pair will be, and measure again.
stated-wash-begin = Begin a wash test
# Heads the column that says whether a distance was marked along the warp or the weft.
stated-wash-along = Along
# The distance before the wash.
stated-wash-before = Before
# The distance after the wash.
stated-wash-after = After
stated-wash-out = Take out
stated-wash-add-warp = Add a distance along the warp
stated-wash-add-weft = Add a distance along the weft
stated-wash-remove = Take the test out
# $distance is the number of a marked distance, from 1.
stated-wash-along-label = { $cloth }, distance { $distance }: along
stated-wash-before-label = { $cloth }, distance { $distance }: before the wash
stated-wash-after-label = { $cloth }, distance { $distance }: after the wash
stated-wash-out-label = { $cloth }, distance { $distance }: take out
stated-found-warp = Along the warp
stated-found-weft = Along the weft
# Shrinkage in percent: the mean of all distances, the least and the most.
stated-found = { $mean }, from { $least } to { $most }
# The same, where the cloth states another shrinkage ($stated).
stated-found-stated = { $mean }, from { $least } to { $most }; stated, and cut for: { $stated }

## The skew test

stated-square = Skew test
stated-square-none = A square of 25 cm marked before the wash: its diagonals after it, face up, warp upright.
stated-square-begin = Begin a skew test
stated-square-rising = Diagonal rising
stated-square-falling = Diagonal falling
stated-square-rising-label = { $cloth }, skew test: rising diagonal
stated-square-falling-label = { $cloth }, skew test: falling diagonal
stated-square-skew = Skew { $percent }
stated-square-not = These diagonals are of no square.
stated-square-remove = Take the test out
