### How each measure is taken, and where its level is measured from. Each key ends in the code that files and programs write.

## How a measure is taken on the finished garment, laid flat

measure-how-waist = Band buttoned, front and back top edges level: straight across the top edge, times two.
measure-how-seat = At the stated height above the crotch: straight across from fold to fold, times two.
measure-how-front-rise = From the crotch cross along the front seam to the top of the band.
measure-how-back-rise = From the crotch cross along the seat seam to the top of the band.
measure-how-thigh = At the stated distance below the crotch: straight across the leg from fold to fold, times two.
measure-how-knee = At the stated distance below the crotch: straight across the leg from fold to fold, times two.
measure-how-hem = Along the finished lower edge from fold to fold, times two.
measure-how-inseam = From the crotch cross along the inseam to the finished lower edge.
measure-how-outseam = From the top of the band along the outseam to the finished lower edge.
measure-how-band-height = Top edge to band seam.
measure-how-band-overlap = From the left band end to the right one underneath, band buttoned.
measure-how-fly-length = From the band seam along the centre front to the foot of the opening.
measure-how-fly-width = From the fly edge to the far edge of the facing, at the band seam.
measure-how-yoke-centre = Band seam to yoke seam along the seat seam.
measure-how-yoke-side = Band seam to yoke seam along the outseam.
measure-how-mouth-width = Along the band seam from the outseam to the mouth edge.
measure-how-mouth-depth = Along the outseam from the band seam to the mouth edge.
measure-how-coin-width = Across its top edge.
measure-how-coin-depth = Top edge to foot at its centre.
measure-how-back-pocket-width = Across the top edge.
measure-how-back-pocket-length = Middle of the top edge to the point.
measure-how-back-pocket-from-yoke = Square from the yoke seam to the inner top corner.
measure-how-back-pocket-from-centre = Along the top edge line from the seat seam to the inner top corner.
measure-how-loop-length = From fold to fold, sewn on; a belt goes through what its bartacks leave.
measure-how-loop-width = Across the finished loop.
measure-how-hem-depth = Finished lower edge to the top of the hem fold.

## How a girth is taken where its level is told

measure-at-seat = At { $level } above the crotch: straight across from fold to fold, times two.
measure-at-leg = At { $level } below the crotch: straight across the leg from fold to fold, times two.

## What the level of a girth is measured from

level-above-crotch = above the crotch
level-below-crotch = below the crotch
