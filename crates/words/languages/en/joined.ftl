### How what is said in a row is joined.

## One after the other

joined-and = { $first } and { $next }
joined-also = { $first }; { $next }
joined-or-else = { $first }; or { $next }
