### Edges, points, lines and notches of the pieces of a pattern, within a sentence. Each key ends in the code that
### files and programs write.

## Edges

edge-fly = fly
edge-crotch = crotch
edge-inseam = inseam
edge-hem = hem
edge-side = side
edge-mouth = mouth
edge-waist = waist
edge-seat = seat
edge-top = top
edge-centre = centre
edge-lower = lower
edge-join = join
edge-overlap = overlap
edge-end-right = end right
edge-inner = inner
edge-end-left = end left
edge-edge = edge
edge-foot = foot
edge-back = back
edge-left = left
edge-right = right
edge-waist-under = waist under
edge-side-under = side under
edge-waist-upper = waist upper
edge-side-upper = side upper
edge-foot-upper = foot upper
edge-foot-under = foot under
edge-foot-inner = foot inner
edge-foot-outer = foot outer
edge-outer = outer
edge-end-foot = end foot
edge-end-top = end top
edge-centre-back = centre back

## Points

point-waist-centre = waist centre
point-fly-foot = fly foot
point-crotch = crotch
point-knee-in = knee in
point-hem-in = hem in
point-hem-middle = hem middle
point-hem-top = hem top
point-hem-out = hem out
point-knee-out = knee out
point-hip = hip
point-mouth-side = mouth side
point-mouth-waist = mouth waist
point-side-waist = side waist
point-yoke-centre = yoke centre
point-yoke-side = yoke side
point-pocket-inner = pocket inner
point-pocket-outer = pocket outer
point-pocket-inner-on-yoke = pocket inner on yoke
point-pocket-inner-on-seat = pocket inner on seat
point-seam-centre = seam centre
point-seam-side = seam side
point-centre-front-left = centre front left
point-end-right = end right
point-side-left = side left
point-centre-back = centre back
point-side-right = side right
point-centre-front-right = centre front right
point-loop-1 = loop 1
point-loop-2 = loop 2
point-loop-3 = loop 3
point-loop-4 = loop 4
point-loop-5 = loop 5
point-loop-6 = loop 6
point-loop-7 = loop 7
point-loop-8 = loop 8
point-loop-9 = loop 9
point-fold-left = fold left
point-fold-right = fold right
point-loop-foot = loop foot
point-loop-top = loop top
point-top = top
point-foot = foot
point-shoulder = shoulder
point-fold-top = fold top
point-fold-foot = fold foot
point-top-inner = top inner
point-top-middle = top middle
point-top-outer = top outer
point-foot-inner = foot inner
point-point = point
point-foot-outer = foot outer
point-foot-middle = foot middle

## Lines inside a piece

line-fly-stitch = fly stitch
line-extra-pocket = extra pocket
line-pocket-left = pocket left
line-pocket-right = pocket right
line-coin-pocket = coin pocket
line-fold = fold
line-fold-left = fold left
line-fold-right = fold right

## Notches

notch-inseam-knee = inseam knee
notch-outseam-knee = outseam knee
notch-hip = hip
notch-fly-foot = fly foot
notch-yoke-middle = yoke middle
notch-mouth-at-outseam = mouth at outseam
notch-mouth-at-waist = mouth at waist
notch-side-left = side left
notch-centre-back = centre back
notch-side-right = side right
notch-centre-front-right = centre front right
notch-hem-fold = hem fold

## A notch as a place at which sizes are laid on each other

notch-place = notch { $notch } on { $edge }
