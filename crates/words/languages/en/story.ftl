### The story sheet: what a customer may be told. Whys are the maker's own words, figures are worked out, and nothing stands here
### that a file does not state.

story-title = { $name }, { $collection }
story-front = The front of the pair
story-back = The back of the pair
story-close-up = A close look: { $about }
story-details = Why it is so
story-facts = What it is
story-drawn = Every picture is drawn by computation from the style as it is sewn, in size { $size }. It is a drawing, not a photograph: a pair may differ.
story-drawn-worn = Every picture is drawn by computation from the style as it is sewn, in size { $size }, as a model of wear expects it to look once worn. It is a drawing and a forecast, not a photograph and no promise.
story-cloth = Cloth
story-pockets = Pockets
story-yarn = Sewing yarn
story-sewn = Sewn
story-sewn-how = { $seams } of stitching in a pair of size { $size }, with { $yarn } of yarn
story-metal = Metal
story-patch = Patch
story-wash = Wash
story-wash-raw = Raw: not washed before it is sold
story-wash-rinsed = Rinsed once before it is sold
story-wash-washed = Washed before it is sold
story-place = Sewn in
story-sizes = Sizes
story-sizes-run = Waist { $waists }, length { $lengths }
story-weight = { $weight } as bought
