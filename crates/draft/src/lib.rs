//! From measurement chart to pieces.
