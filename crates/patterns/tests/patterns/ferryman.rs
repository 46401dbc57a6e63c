//! The demo style as pattern files, and read again.

use geometry::polyline_length;
use patterns::{dxf, from_cut, svg};

use crate::common::{cut_sizes, ferryman, keep};

#[test]
fn lines_stay_within_a_hundredth() {
    for (cut, piece) in cut_sizes().iter().flat_map(|size| {
        size.pieces
            .iter()
            .zip(from_cut(size, words::Words::english()))
    }) {
        let tolerance = 0.01 * cut.cut.len().max(1) as f64;
        assert!((cut.area().to_mm2() - piece.area().to_mm2()).abs() < tolerance.max(20.0));
        for edge in &cut.edges {
            let Some(sewn) = piece.sew_line(edge.id.code()) else {
                assert!(polyline_length(&edge.sewn).to_mm() < 0.001);
                continue;
            };
            let off = (polyline_length(&edge.sewn) - polyline_length(&sewn.line)).to_mm();
            assert!(
                off.abs() < 0.05,
                "{} {}: {off}",
                piece.title(),
                edge.id.code()
            );
        }
    }
}

#[test]
fn dxf_written_and_read_is_the_same() {
    let pattern = ferryman();
    let text = dxf::write(&pattern);
    keep("ferryman.dxf", &text);
    let read = dxf::read(text.as_bytes(), None).unwrap();
    assert_eq!(read.passed_over, Vec::<String>::new());
    for (a, b) in pattern.pieces.iter().zip(&read.pattern.pieces) {
        assert_eq!(a, b, "{}", a.title());
    }
    assert_eq!(read.pattern, pattern);
    assert_eq!(dxf::write(&read.pattern), text);
}

#[test]
fn svg_written_and_read_is_the_same() {
    for size in ["32x32", "38x34"] {
        let pattern = ferryman().of_size(size);
        let text = svg::write(&pattern);
        keep(&format!("ferryman-{size}.svg"), &text);
        let read = svg::read(text.as_bytes()).unwrap();
        for (a, b) in pattern.pieces.iter().zip(&read.pattern.pieces) {
            assert_eq!(a, b, "{}", a.title());
        }
        assert_eq!(read.pattern, pattern);
        assert_eq!(svg::write(&read.pattern), text);
    }
}

/// Out as one kind and in again, then out as the other: nothing is lost on the way.
#[test]
fn both_kinds_of_file_hold_the_same() {
    let pattern = ferryman().of_size("32x32");
    let by_dxf = dxf::read(dxf::write(&pattern).as_bytes(), None)
        .unwrap()
        .pattern;
    let by_svg = svg::read(svg::write(&by_dxf).as_bytes()).unwrap().pattern;
    assert_eq!(by_svg, pattern);
}
