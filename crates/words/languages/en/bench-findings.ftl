### The findings: crates/bench/src/part/findings.rs.

finding-title = Findings in size { $size }
finding-none = Nothing was found that would keep this from being sewn as charted.
finding-lead = Numbers lie on the drawing where a finding has a place.
finding-show = Show finding { $number } on the drawing

## Where a finding lies that the drawing does not show, and the way there

finding-on-pair = on the drawing of the pair
finding-on-front = lies on the front
finding-on-back = lies on the back

## What would put it right

# A button: does what the remedy says.
finding-remedy = Make it so
finding-remedy-label = Make it so: { $remedy }

# Opens the list of what goes away with a conflict of the chart.
finding-followers = { $count ->
    [one] One more finding goes with it
   *[other] { $count } more findings go with it
}

## A finding that the maker lives with

# Not to count a finding, for a reason.
finding-mute = Mute
finding-reason = Why you live with it
finding-reason-label = Why you live with finding { $number }
# Heads the findings that are muted.
finding-muted = Muted
finding-unmute = Count it again
