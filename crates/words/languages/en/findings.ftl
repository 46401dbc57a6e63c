### What is said of every finding.

## Where it was found

finding-in-every-size = in every size
finding-in-sizes = in { $sizes }
finding-in-some = in { $found } of { $of } sizes
finding-found = { $message } ({ $sizes })
finding-found-first = { $message } ({ $sizes }; the numbers are those of { $first })

## Where a rule comes from

source-common-practice = common practice
