### What is found of the words that the papers print.

papers-letter = the letter { $letter } of “{ $text }” cannot be printed: no typeface of the papers has it
papers-letters = the letters { $letters } of “{ $text }” cannot be printed: no typeface of the papers has them
papers-letters-more = the letters { $letters } and { $more } more of “{ $text }” cannot be printed: no typeface of the papers has them
papers-letters-help = write it in Latin, Greek, Cyrillic or Japanese letters; empty boxes stand in the pack until then
papers-right-to-left = “{ $text }” is written from right to left, and the papers cannot be set so yet: beside other words and figures its order may be false
papers-right-to-left-help = write it in Latin, Greek, Cyrillic or Japanese letters
papers-letters-source = the typefaces carried in the program
