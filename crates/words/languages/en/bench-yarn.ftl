### The yarn, and the line of what a pair takes: crates/bench/src/part/yarn.rs, strip.rs.

## The panel of the yarn

yarn-title = Yarn plan
# Leads to the same as a page to be printed.
yarn-plate = Plate
yarn-lead = { $colours ->
    [one] 1 colour
   *[other] { $colours } colours
}, { $sizes ->
    [one] 1 size
   *[other] { $sizes } sizes
} and { $densities ->
    [one] 1 density
   *[other] { $densities } densities
}. Strips show the stitches { $enlarged } times enlarged on the cloth most of them lie on; ΔE is CIEDE2000 between the colours of yarn and cloth as entered.
yarn-needles = On the needles
# Yarns that lie below the cloth as it is sewn: of bobbins and loopers.
yarn-below = Below
yarn-size-unknown = size not known
# In place of a density, for a yarn that only sews tacks.
yarn-tacks = tacks
# $contrast says in words how large the difference of colours is.
yarn-contrast = ΔE { $difference }, { $contrast }, on { $cloth }
# The same, on the reverse of the cloth.
yarn-contrast-reverse = ΔE { $difference }, { $contrast }, on { $cloth }, reverse
# A row of stitches that is not seen.
yarn-unseen = ({ $row })

## How much: a table

yarn-amounts = How much
yarn-pair = A pair in { $size }
yarn-needle = Needle
yarn-under = Under
# Needle and under.
yarn-together = Together
# $field is a field in which a number of pairs stands.
yarn-pairs = { $field } pairs
yarn-pairs-label = Pairs in the order
yarn-cones = Cones
yarn-all = All yarns
# $waste is a share in percent.
yarn-order = The order counts every pair in the size shown, with { $waste } for waste. A machine needs a cone of its own on each thread stand, so a small order takes more cones than its length asks for.

## Where it goes: seam by seam

yarn-by-seam = Where it goes
yarn-by-seam-lead = A pair in size { $size }, without waste. Open a seam to see each figure and the formula it comes from.
yarn-unstated = Sewn, though the style states no row for it
yarn-about = about { $length }
# $what is the work, $stitch the number of a stitch type.
yarn-unstated-work = { $what }, { $stitch }, { $length } sewn
yarn-unstated-about = about { $length }, not in any total

## What a pair takes, in a line

strip-since-mark = since your mark
strip-since-begun = since the session began
strip-since-mark-label = What a pair takes in size { $size }, and what is different since your mark
strip-since-begun-label = What a pair takes in size { $size }, and what is different since the session began
# A button.
strip-mark = Mark
strip-mark-how = What follows is compared with the pair as it is now
strip-yarn = Yarn
strip-yarn-how = All yarns of a pair, needle and under.
strip-shell = Shell, at least
strip-shell-how = The shell's pieces as they are cut, at its whole width: a length that no lay can go below. The change is that of all cloth.
strip-mass = Cloth weight
strip-mass-how = All pieces as they are cut, at the weight of each cloth as bought; yarn and hardware are not in it.
strip-thickest = Thickest
strip-thickest-how = The thickest place to be sewn across, not pressed.
strip-findings = Findings
strip-findings-how = What a sewer would notice, without what is muted.
strip-findings-gone = { $gone ->
    [one] 1 gone
   *[other] { $gone } gone
}
strip-findings-new = { $new ->
    [one] 1 new
   *[other] { $new } new
}
strip-findings-both = { $gone ->
    [one] 1 gone
   *[other] { $gone } gone
}, { $new ->
    [one] 1 new
   *[other] { $new } new
}
