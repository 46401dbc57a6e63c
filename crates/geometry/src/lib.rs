//! Points, paths, offsets and lengths in millimetres.
