### The page of the collection, and the frames of the pages of a style: crates/bench/src/page/collection.rs, style.rs,
### room.rs, cloths.rs and art.rs.

collection-not-opened = This collection cannot be opened yet
collection-begin = Begin
collection-new-style = New style
collection-bring = Bring a pattern

## The styles

collection-styles = Styles
collection-no-styles = There are no styles yet. A style is one pair of jeans: its chart, its cloth, how it is sewn. Pattern, drawings, yarn, lays and papers follow from it.
collection-first-style = { $begin } by a few questions; all of them are answered already. Or { $bring } of your own.
# Put into the sentence above, as links.
collection-first-style-begin = Begin the first style
collection-first-style-bring = bring a pattern
collection-front = Front of { $style }
# Whose figure and which fit, as words of the style file, and the name of the shell.
collection-what = { $figure ->
    [women] Women’s
   *[men] Men’s
} { $fit }, { $shell }
collection-sizes = Waist { $waists }, length { $lengths }
collection-copy = Copy
collection-copy-of = Copy { $style }
collection-broken = { $problems ->
    [one] Cannot be opened yet: 1 to put right
   *[other] Cannot be opened yet: { $problems } to put right
}
collection-broken-how = Put it right in the file and load this page again. Earlier versions of it lie beside it in { $folder }.

## A folder with nothing in it

collection-nothing-title = A new collection
collection-nothing = There is nothing in this folder yet. A collection is what a label’s styles share, as text files that you may edit by hand:
collection-nothing-label = { $file }, your label and the workrooms that sew for you
collection-nothing-bought = { $cloths }, { $yarns } and { $trims }, what you buy
collection-nothing-styles = { $folder }, a folder for each style
collection-nothing-first = Your first style
collection-nothing-questions = A few questions, all of them answered already. The collection is made with it: an invented label’s cloths, yarns and trims, to put your own in place of.
collection-nothing-ways = { $begin }, or { $bring } of your own.
# Put into the sentence above, as links.
collection-nothing-begin = Begin
collection-nothing-bring = bring a pattern
collection-demo = The demo
collection-demo-about = To look at and to try things on: an invented label, one style, one order. It can be thrown away like any folder.
collection-demo-put = Put the demo here

## Changes of the collection's cloths: cloths.rs

# A cloth, what of it was changed, and what it is now.
collection-cloths-set = { $cloth }, { $what }: { $value }
collection-cloths-changed = { $cloth }, { $what }
collection-cloths-taken-out = { $cloth }, { $what } taken out
collection-cloths-behind = { $problem }; this page now shows the file as it is

## The page of a style: style.rs

style-page-skip = To the chart and seams
style-page-no-scripts = Changes need the bench's scripts, which this browser does not run. Everything can be looked at.
style-page-board = Drawing
style-page-panel = Chart, details, seams, yarn, sewing order and findings
style-page-how = Up and down arrows step a value; a changed value is saved when you leave it.

# What keys do.
style-page-key-step = Step a value in its field; with Shift ten steps
style-page-key-leave = Leave a field, or what is held, as it was
style-page-key-hold = Take hold of what has the focus on the drawing, or let it go
style-page-key-move = Move what is held; with Shift ten steps

## The pages of the other rooms: room.rs

style-page-room-skip = To the room
# The title of a page in the browser: the room, and the style's name and code.
style-page-room-title = { $room } · { $name } { $code }

## A drawing that is brought into the style's folder: art.rs

art-too-large = the file is larger than a drawing may be ({ $kilobytes } kB); lines are all that is read: simplify it
art-no-text = this is not an SVG drawing: it is not UTF-8 text; save it as a plain SVG file
# Stands for the name of a file that has none.
art-unnamed = the drawing
