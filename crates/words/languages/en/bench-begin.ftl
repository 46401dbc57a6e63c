### Beginning a style, by questions or as a copy: crates/bench/src/page/begin, without its folder pattern.

## The head of both pages and of bringing a pattern

# The way back to the collection.
begin-home-key = Key 1
# Stands for the name of a collection that is not there yet.
begin-collection = Collection
begin-new-style = New style
# Suggested as the name of a style; a number is put after it where there is one of that name.
begin-new-style-name = New style
begin-questions-skip = To the questions
begin-lead = Everything is answered as is usual and can be changed at any time afterwards. What you do not know yet can stay.
begin-begin = Begin

## What would begin, drawn

begin-foreseen = What begins
begin-foreseen-front = Front as it would begin
begin-foreseen-back = Back as it would begin
begin-not-drawn = This cannot be drawn

## The names of the style, of a copy and of a pattern that is brought

begin-name-title = Name
begin-label = Your label
# Said in grey: a label without a name is called as the style is.
begin-label-usual = as the style
begin-style = Style
begin-code = Code
# Said in grey: a style without a code gets one that is made of its name.
begin-code-usual = made of the name
begin-workroom = Workroom that sews it
begin-place = Its place
begin-origin = Made in, as the label says it
# Said in grey: what is not answered stays open, and is listed among what was noticed until it is.
begin-open = open for now

## Figure and fit

begin-figure-and-fit = Figure and fit
begin-figure = Figure
# Whose figure: the word of the style file.
begin-figure-of = { $figure ->
    [women] Women’s
   *[men] Men’s
}
begin-fit = Fit
begin-fit-slim = close all the way down
begin-fit-straight = even from the thigh down
begin-fit-tapered = easy in the thigh, narrow at the hem
begin-fit-relaxed = easy all the way down

## Leg

begin-leg-title = Leg
begin-leg-usual = As usual for the fit
begin-leg-usual-about = the hem its chart has
begin-leg-wide = Wider below the knee
begin-leg-wide-about = 2 in more round the hem

## Sizes

begin-sizes-title = Sizes
begin-sizes-lead = Waist and length on the tag, in inches. The chart grows with them; single steps can be changed in it.
begin-waist = Waist
begin-length = Length
begin-sizes-more = and
# $run is what the run is of: the waist or the length.
begin-sizes-more-label = { $run }: others, such as 31.5

## Cloth

begin-cloth-title = Cloth
begin-cloth-wide = { $weight }, { $width } wide
begin-cloth-wide-edge = { $weight }, { $width } wide, with its own edge
# Weight and width as said above, and how the cloth is woven.
begin-cloth-woven = { $cloth }; { $weave }

## Outseam

begin-outseam-title = Outseam
begin-outseam-shaped = Shaped
begin-outseam-shaped-about = curved over the hip and down to the knee; cut with an allowance
begin-outseam-straight = On the cloth’s own edge
begin-outseam-straight-about = straight from hip to hem; the inseam takes the shape of the leg
begin-outseam-no-edge = The cloth that is chosen has no edge of its own to show.

## Sewing

begin-taste-title = How it is sewn
begin-taste-drawn = Drawn: the inseam cut across.

## What is in the way

begin-no-size = the run has no size yet: choose at least one waist and one length
# A question, and the words of the style file it can be answered with.
begin-can-be = { $question ->
    [figure] the figure
    [fit] the fit
    [leg] the leg
    [outseam] the outseam
   *[taste] the taste
} can be { $words }
begin-size-wrong = a size is inches, whole or with a half after a point, such as 32 or 31.5

## A copy: copy.rs

copy-page-title = Copy
# The style that is copied.
copy-title = A copy of { $name } { $code }
copy-lead = The copy says all that this style says, comments too, and has its drawings and its pattern. Its history begins anew.
copy-copy = Copy
copy-front = Front of { $name }
