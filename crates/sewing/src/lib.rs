//! Seams, stitch rows, allowances and findings.
