### The cutting room: crates/bench/src/page/cutting.

## The room and its pages

lay-leaves = In this room
lay-title = Lay
pieces-leaf = Pieces
orders-title = Orders

## The page of the lay

lay-board = Lay
lay-panel = What is laid, and the search
lay-lead = The pieces of some pairs on one cloth, as short as is found in the time given. Pieces are drawn as they are cut, before the wash.
lay-no-script = Looking for a lay needs the bench’s scripts, which this browser does not run.

# The drawing, for somebody who cannot see it; its title is such as the one of an empty cloth.
lay-drawing = { $title }. Arrow keys move, plus and minus zoom, 0 shows all.
lay-empty-cloth = Empty cloth: { $cloth }
lay-no-drawing = No lay
lay-piece = { $piece }, { $size }
# A piece that lies the other way up.
lay-piece-mirrored = { $piece }, mirrored, { $size }

## What is asked for

lay-cloth = Cloth
lay-way = Pieces lie
lay-two-way = head to tail
lay-one-way = one way
lay-gap = Gap
lay-ends = Lost at each end
lay-seconds = Seconds to look
lay-seed = Start of chance
lay-look = Look for a lay
lay-sizes = Pairs of each size, at most { $most } together
lay-sizes-caption = Pairs of each size: waist across, length down
lay-pairs-of = Pairs of { $size }

## What is wrong with what is asked for

lay-gap-wrong = the gap is a length with its unit from nothing to { $most }, such as { $usual }
lay-ends-wrong = the loss at each end is a length with its unit from nothing to { $most }, such as { $usual }
lay-pairs-too-many = { $pairs } pairs are too many for one lay here: take at most { $most }, and part a larger order into lays
lay-seconds-wrong = a search takes a whole number of seconds from 1 to { $most }, such as { $usual }
lay-seed-wrong = the start of chance is a whole number, such as 1
# What somebody wrote for one size.
lay-size-wrong = `{ $written }` is no size and number; write 32x32=2
lay-count-wrong = size { $size }: the number of pairs is a whole number up to { $most }
lay-busy = a lay of this style is being looked for; cancel that search first

## The search

lay-search = The search
lay-looking = Looking for a lay of { $pairs }
lay-search-waits = The search waits
lay-time-gone = Time gone
lay-ending = Ending.
lay-time-left = { $left } left of { $whole }.
# $shown is the number of places as it is shown, such as “1.2 million”.
lay-places-tried = { $places ->
    [one] { $shown } place tried.
   *[other] { $shown } places tried.
}
lay-thousand = { $number } thousand
lay-million = { $number } million
lay-so-far = So far
lay-to-gain = At most to be gained
lay-style-changed = The style was changed since the search began; it goes on with the style as it was.
lay-cancel = Cancel and keep what is found
lay-cancelled = the search was cancelled before it had laid anything

## What is read out of the search

lay-said-waits = The search waits for its turn
lay-said-looking = A lay is being looked for
lay-said-ended = The search ended: { $length }

## What was found

lay-result = The lay
# $seconds is a time with its units.
lay-kept = Kept in the collection; looked for { $seconds } in all. Looking again goes on from here.
lay-cannot = These pieces cannot be laid yet
# $pairs is such as “2 pairs 32x32, 1 pair 34x32”.
lay-of = { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
} of { $pairs }
lay-pairs-of-size = { $pairs ->
    [one] 1 pair
   *[other] { $pairs } pairs
} { $size }
# Followed by files to take.
lay-take = Take it as
lay-take-dxf = DXF for a cutter
lay-take-pdf = PDF to scale
lay-take-svg = SVG
lay-file-failed = The file could not be made
lay-ended = The search ended after { $time }; it is kept in the collection. Looking again goes on from here.
lay-ended-no-shorter = The search ended after { $time }; nothing shorter than the lay found before was found.
lay-ended-at-bound = The search ended because no lay is shorter after { $time }; it is kept in the collection. Looking again goes on from here.
lay-ended-at-bound-no-shorter = The search ended because no lay is shorter after { $time }; nothing shorter than the lay found before was found.
lay-ended-cancelled = The search was cancelled after { $time }; it is kept in the collection. Looking again goes on from here.
lay-ended-cancelled-no-shorter = The search was cancelled after { $time }; nothing shorter than the lay found before was found.
lay-not-kept = The lay could not be kept: { $why }
# Followed by a list of changes.
lay-earlier = This lay is of an earlier state of the style. Since then changed:

## Figures of a lay

lay-length = Length
lay-cloth-used = Cloth used
lay-bound = No lay is shorter than
lay-decides = Decided by
lay-decides-area = the area of the pieces
lay-decides-longest = the longest piece
lay-decides-wide = pieces wider than half the cloth
lay-decides-edges = what lies on the finished edges
lay-longer-by = This one is longer by
lay-ply = A ply, with { $lost } lost at each end
lay-cloth-each = Cloth a pair
lay-cloth-each-with-ends = Cloth a pair, with { $lost } lost at each end

## Before anything was laid

lay-nothing = No lay yet
lay-nothing-of-cloth = Nothing of these pairs is cut from { $cloth }. Choose another cloth.
lay-nothing-waits = { $pieces ->
    [one] 1 piece waits beside the cloth. “{ lay-look }” puts it
   *[other] { $pieces } pieces wait beside the cloth. “{ lay-look }” puts them
} on it within a second and then shortens the lay for as long as you said; the drawing follows.
lay-nothing-advice = For one pair 20 seconds are sensible, for a dozen two minutes. You may go on working meanwhile, or cancel: what was found is kept either way, and looking again goes on from it.

## The pieces

pieces-title = Pieces of size { $size }
pieces-lead = As they are cut: larger by what the first wash takes, with their allowances.
pieces-size = Size
# The scale of the drawing: one to so many.
pieces-drawn = Drawn, 1:{ $scale }
pieces-corners = Corners
pieces-corners-lead = One for each kind, flat as it is cut and folded as it is sewn. Figures are allowances in millimetres.
pieces-nests = How they grow
pieces-nests-lead = All sizes on each other at the ringed point; the strong line is the base size.
pieces-nests-waist = All waists in the base length
pieces-nests-length = All lengths in the base waist
pieces-from = From { $cloth }
pieces-no-cloth = No cloth named
pieces-number = Number
pieces-piece = Piece
pieces-shape = Shape
pieces-cut = Cut
pieces-side = Side
pieces-allowances = Allowances
pieces-area = Area of one

## The orders

# $command is what is typed on the command line.
orders-lead = Which sizes lie together in how many plies, so that an order is cut exactly with the least cloth. Lengths are estimated here; on the command line { $command } looks for the lays and plans again with what it finds.
# $folder is the folder’s name.
orders-none = No order names this style yet. An order is a file in the collection’s folder { $folder }: how many pairs of which size, and what the cutting room can do.
orders-unreadable = The folder of orders cannot be read: { $why }
orders-pairs = { $pairs ->
    [one] 1 pair
   *[other] { $pairs } pairs
}, { $file }
# $pairs is such as “2 pairs 32x32, 1 pair 34x32”.
orders-of-style = Of this style { $pairs }.
orders-cloth-wrong = { $cloth }: { $why }
# $buy is how much of the cloth to buy, $each how much of it a pair takes.
orders-cloth = { $cloth }, { $width } wide: to buy { $buy }, { $each } a pair
orders-lay = Lay
orders-in-a-ply = In a ply
orders-plies = Plies
orders-ply = Length of a ply
orders-of-cloth = Cloth
