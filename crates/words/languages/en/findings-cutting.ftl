### What is noticed when pieces are cut for the wash.

## Cloth that shrinks otherwise than the shell

cutting-inner = it shrinks by { $warp } and { $weft } (warp and weft), the shell by { $shell-warp } and { $shell-weft }; its pieces are cut for the shell's shrinkage, so that their edges fit when they are sewn, and after the wash they are { $along } along the warp and { $across } along the weft than drawn
cutting-inner-tight = it shrinks by { $warp } and { $weft } (warp and weft), the shell by { $shell-warp } and { $shell-weft }; its pieces are cut for the shell's shrinkage, so that their edges fit when they are sewn, and after the wash they are { $along } along the warp and { $across } along the weft than drawn, and pull the shell
cutting-inner-help = wash this cloth before cutting
cutting-shorter = { $by } shorter
cutting-longer = { $by } longer

## Skew

cutting-skew-straight = its weft lies { $skew } askew after the wash and pieces are cut straight: the seams of the legs { $turn }
cutting-skew-sheared = pieces are cut against a skew of { $skew } by shearing them, so left and right differ on the cloth; cut straight, the seams would { $turn }
cutting-skew-turned = pieces are cut against a skew of { $skew } with their grain turned, so left and right differ on the cloth; cut straight, the seams would { $turn }
cutting-turn-left = turn by about { $by } between knee and hem, the left outseam forward and the right one back
cutting-turn-right = turn by about { $by } between knee and hem, the right outseam forward and the left one back
cutting-turn-more = { $turn }, more than the { $fault } that count as a fault (an estimate from the skew of the cloth, which AATCC TM179-2023 does not hold comparable with the twist of a washed pair: wash a pair)
cutting-turn-less = { $turn }, less than the { $fault } that count as a fault (an estimate from the skew of the cloth, which AATCC TM179-2023 does not hold comparable with the twist of a washed pair: wash a pair)
cutting-skew-help = write skew = "sheared" or "grain turned" under [cutting]
cutting-skew-lay-help = lay all pieces of a pair in one direction, face up
cutting-skew-little-help = such a cloth may be cut straight

## Seams before the wash

cutting-left-leg = on the left leg, { $said }
cutting-right-leg = on the right leg, { $said }
cutting-seam-eased = before the wash the side of the { $piece } is { $by } the longer, for it lies at another angle to the warp; it is eased on evenly
cutting-seam-unequal = before the wash its two sides differ by { $by }, too much to ease
cutting-seam-help = turn the grain of the smaller piece so that both edges lie at the same angle to the warp; against a skew, write skew = "grain turned" under [cutting]

## Sewing thread

cutting-thread = a seam along the warp is { $shrinkage } shorter after the wash and its stitches that much closer: for 8 to the inch in the finished pair the machine is set to { $density }; polyester thread does not shrink with the cloth, so tensions are kept low or the seam will pucker

## The cloth's own edge

cutting-edge-none = its outseam is to lie on the cloth's own edge, and its grain does not run along that edge
cutting-edge-none-help = write skew = "sheared" under [cutting], or neaten the outseam with an overedge stitch
cutting-edge-curved = the cut runs along the cloth's own edge, which is straight, and the outseam is not: its allowance is between { $narrowest } and { $widest } wide
cutting-edge-curved-help = mark the seam line, and sew by the mark instead of by the edge
cutting-edge-runs-out = above the hip the outseam runs out by { $out }, for the slope of the seat and the dart of the yoke take out more than waist and seat differ by; the cut runs along the cloth's own edge, which is straight, so its allowance is between { $narrowest } and { $widest } wide
cutting-edge-runs-out-help = take { $out } off seat_dart under [shape] and the outseam runs straight; else mark the seam line, and sew by the mark instead of by the edge

## Cut lines and widths

cutting-mitred = its corners cannot all be shaped as their seams ask; their cut lines run on until they meet instead
cutting-finished = no cut line can be drawn: { $reason }; the finished outline is given instead
cutting-no-shape = it has no finite shape to cut
cutting-no-area = the outline has no area
cutting-crosses = the allowances are too wide for the shape: the cut line crosses itself
cutting-line-help = check the measures and seams that shape this piece
cutting-too-wide = cut for the wash it is { $across } across and { $cloth } { $width } wide: it does not lie on its cloth
cutting-too-wide-help = wider cloth, or a piece cut in two

## Shrinkage and skew that nobody believes

cutting-as-finished = { $why }; its pieces are given at their finished size
cutting-shrinks = a shrinkage of { $found } along the { $along } is more than any cloth takes; measure again, or state at most { $most }
cutting-grows = a growth of { $found } along the { $along } is more than any cloth takes; measure again, or state at most { $most }
cutting-skewed = a skew of { $found } is more than any cloth has; measure again, or state at most { $most } either way
cutting-no-shrinkage = the shrinkage is not a number; state it in percent
cutting-no-skew = the skew is not a number; state it in percent
cutting-warp = warp
cutting-weft = weft

## Wash tests

cutting-test-useless = its wash test cannot be used: { $wrong }
cutting-test-help = mark and wash another specimen, or state warp_shrinkage and weft_shrinkage and take the test out
cutting-test-doubts = its wash test leaves doubts: { $doubts }
cutting-test-contradicts = a shrinkage of { $stated } along the { $along } is stated, and its wash test came to { $found }, from { $least } to { $most }; pieces are cut for what is stated, and { $metre }
cutting-metre-short = a metre of the pair would come out { $by } too short if the test is right
cutting-metre-long = a metre of the pair would come out { $by } too long if the test is right
cutting-test-contradicts-help = write { $key } = "{ $found }", or take it out so that the test holds, or test another specimen
cutting-test-none = no distance along the { $along } was measured; mark and measure at least one, better three
cutting-test-before = distance { $number } along the { $along } is { $found } before the wash; a distance is more than nothing, measure again
cutting-test-after = distance { $number } along the { $along } is { $found } after the wash; a distance is more than nothing, measure again
cutting-test-distance = distance { $number }: { $why }
cutting-test-few = { $count ->
    [one] only { $count } distance along the { $along }; measure { $least }
   *[other] only { $count } distances along the { $along }; measure { $least }
}
cutting-test-spread = the distances along the { $along } shrank by { $least } to { $most }; mark again, and take a second specimen
cutting-test-close = some marks are less than { $apart } apart; a reading error then weighs more
cutting-skew-test-useless = its skew test cannot be used: { $why }
cutting-skew-test-help = measure both diagonals of the square again, or state skew
cutting-skew-test-contradicts = a skew of { $stated } is stated, and its skew test came to { $found }; what is stated holds
cutting-skew-test-contradicts-help = take `skew` out so that the test holds, or measure both diagonals of the square again, or state skew
cutting-source-test = ISO 5077
cutting-source-skew-test = AATCC TM179 (formula from memory)

## The waistband

cutting-band = the band is cut along the warp, which shrinks by { $warp }, and the waist of the body lies along the weft, which shrinks by { $weft }; for a finished waist seam of { $finished } the band would be cut { $band } and the body { $body }, { $apart } apart when they are sewn
cutting-band-refused = { $why }; no band is given until somebody says how it is cut
cutting-band-write = write band = "{ $word }" under [cutting] to { $way }
cutting-band-way = { $start }; cut length of the waist seam { $band }{ $against }; waist seam after the wash { $finished }{ $off }{ $more }
cutting-band-weft = cut the band along the weft: it shrinks with the body
cutting-band-washed = wash the cloth of the band before cutting it, and cut it along the warp
cutting-band-warp = cut the band along the warp
cutting-band-eased = cut the band along the warp and ease it by no more than { $most }
cutting-band-as-long = , as long as the body
cutting-band-body-longer = , the body is { $by } ({ $ease }) longer and eased onto it
cutting-band-longer = , { $by } ({ $ease }) longer than the body and eased onto it
cutting-band-too-much = { $said }, more than the { $most } a machine takes
cutting-band-over = , { $by } over the chart
cutting-band-under = , { $by } under the chart
cutting-band-not-allowed = { $said }, which allows { $tolerance }
cutting-band-in-two = ; its { $whole } are more than the cloth's width of { $width }, so it is cut in two and joined at the centre back
cutting-band-no-room = { $said }; even then one half is longer than the cloth is wide

## Marks

cutting-mark-in-sight = a drill mark of it lies { $gap } inside its edge, and { $least } are needed to cover the hole
cutting-mark-in-sight-help = a blunter corner or a wider pocket, or chalk the place in place of the hole

## Why sizes cannot be laid on one another

grade-no-piece = { $piece } is in none of the sizes given; cut the sizes of a style that has it
grade-no-point = { $piece } has no point `{ $point }` in size { $size }; its points are { $known }
grade-no-size = size { $size } is not among the sizes given; take a size of the run as base
