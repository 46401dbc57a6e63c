### The close look: places that can be looked at, and what is said of every picture.

look-not-promised = A drawing computed from the style file, not a photograph and not a promise.
look-forecast = How it wears is a forecast by a model: strengths of wear are from memory, { $share } between raw and worn.
look-derived = The weave is derived from the cloth’s weight and construction: yarns of { $yarn }, an end each { $end }, a pick each { $pick }; crimp, cover and twist are working values from memory.

## Places

place-whole = the whole pair
place-back-pocket-right = back pocket right
place-back-pocket-left = back pocket left
place-back-pocket-corner = corner of the right back pocket
place-yoke-seam = yoke and seat seam
place-patch = patch
place-belt-loop = belt loop
place-coin-pocket = coin pocket
place-pocket-mouth = pocket mouth
place-band-button = band button
place-fly-foot = foot of the fly
place-fork = fork
place-outseam = outseam at the hip
place-knee = knee
place-hem = hem
place-label = main label
