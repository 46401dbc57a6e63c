### What is said of every finding.

finding-in-every-size = in every size
finding-in-sizes = in { $sizes }
finding-in-some = in { $found } of { $of } sizes
finding-found = { $message } ({ $sizes })
finding-found-first = { $message } ({ $sizes }; the numbers are those of { $first })
