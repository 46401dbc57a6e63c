### The measurement chart: crates/bench/src/part/fit.rs.

fit-title = Measurement chart
fit-before-wash = before the wash
fit-after-wash = once washed
fit-lead-raw = The finished garment as it is sold, raw, flat and closed. A grade is added for each inch of waist.
fit-lead = The finished garment after its first wash, flat and closed. A grade is added for each inch of waist.

## The heads of its columns

fit-measure = Measure
# A measure in this size.
fit-at-size = At { $size }
fit-grade = Grade
# Tolerance either way, shortened.
fit-tolerance = Tol. ±
# What the pattern measures.
fit-pattern = Pattern

## Measures that belong together

fit-group-body = Body and legs
fit-group-band = Band and fly
fit-group-yoke = Yoke
fit-group-front-pockets = Front pockets
fit-group-coin-pocket = Coin pocket
fit-group-back-pockets = Back pockets
fit-group-loops = Belt loops

## The fields of a measure

# In an empty field: the measure is whatever the pattern comes to.
fit-drafted = drafted
# $field is a field: the grade for each inch of length.
fit-per-length = length { $field }
# $field is a field: the grade for sizes above that waist.
fit-above = above { $waist } { $field }
fit-value-label = { $measure } at { $size }
fit-grade-label = { $measure }: grade for each inch of waist
fit-tolerance-label = { $measure }: tolerance either way
# The level at which a measure is taken; $from says from where it is counted, such as “below the crotch”.
fit-level-label = { $measure }: taken { $from }
fit-per-length-label = { $measure }: grade for each inch of length
fit-above-label = { $measure }: grade above waist { $waist }
