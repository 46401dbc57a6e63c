### What stands on views of the garment, on the diagrams of measures and on the plan of yarns.

## Views of the garment

view-title = { $style } { $view }, { $face }, size { $size }
view-front = front
view-back = back
view-outside = outside
view-inside = inside, turned out
view-wearers-left = wearer's left
view-wearers-right = wearer's right

## How to measure

measuring-back-pocket = Back pocket
measuring-band = Waistband, buttoned, laid flat with the front uppermost
measuring-coin-pocket = Coin pocket
measuring-leg = Left leg, front and back drawn apart: the pair lies with one on the other, from fold to fold
measuring-loop = Belt loop, sewn on
measuring-upper-back = Right back above the foot of its pocket, band left off
measuring-upper-front = Left front above the crotch, band left off
measuring-name-back = back
measuring-name-front = front
measuring-name-left = left
measuring-name-right = right

## The plan of yarns

plan-of-yarns = Yarn plan, size { $size }
plan-of-yarns-needle = Needle yarns
plan-of-yarns-under = Under yarns
plan-of-yarns-true-size = true size
plan-of-yarns-enlarged = enlarged { $times } times
plan-of-yarns-group = { $size } { $colour }, { $density }
plan-of-yarns-both-densities = { $metric } ({ $inch })
plan-of-yarns-size-unknown = size not known
plan-of-yarns-tacks = tacks
plan-of-yarns-amount = { $metres } m: { $yarns } in { $stitches }
plan-of-yarns-bartacks = bartacks
plan-of-yarns-buttonholes = buttonholes
plan-of-yarns-on-face = on { $cloth }, face: { $difference }, { $contrast }
plan-of-yarns-on-reverse = on { $cloth }, reverse: { $difference }, { $contrast }
plan-of-yarns-row = { $seam } { $numbers }
plan-of-yarns-bartacks-of = { $of } bartacks
plan-of-yarns-buttonholes-of = { $of } buttonholes
plan-of-yarns-unseen = ({ $row })
plan-of-yarns-notes-for-workroom = Metres are for one pair, without waste. Rows in brackets are not seen on the face shown; a strip shows the cloth most of the group lies on.
plan-of-yarns-notes = Metres are for one pair, without waste. Rows in brackets are not seen on the face shown. The number after each cloth is the colour difference CIEDE2000 between the entered colours of yarn and cloth; a strip shows the first cloth.

## How a yarn reads on its cloth

contrast-not-told-apart = not to be told apart
contrast-tonal = tonal
contrast-clear = clear
contrast-strong = strong contrast
