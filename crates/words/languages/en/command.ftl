### What the command line prints.

## The sewing order

sew-head = { $code } { $name }, size { $size }: the sewing order. The pair is sewn before its wash, and so are its figures.
sew-not-stated = not stated: { $what }
