//! Files as others write them, and files that are wrong.

use patterns::{NotchKind, dxf};

/// Groups in short: "0 SECTION | 2 BLOCKS | ...".
fn groups(short: &str) -> String {
    let mut out = String::new();
    for pair in short
        .split(['|', '\n'])
        .map(str::trim)
        .filter(|pair| !pair.is_empty())
    {
        let (code, value) = pair.split_once(' ').unwrap_or((pair, ""));
        out.push_str(code);
        out.push('\n');
        out.push_str(value);
        out.push('\n');
    }
    out
}

/// A pocket in inches by another hand: no names of edges, sides drawn as single lines and an arc, turned
/// half round where it is inserted.
const POCKET: &str = "
    0 SECTION | 2 HEADER | 9 $INSUNITS | 70 1 | 0 ENDSEC
    0 SECTION | 2 BLOCKS | 0 BLOCK | 8 1 | 2 POCKET | 70 0 | 10 0 | 20 0
    0 TEXT | 8 1 | 10 1 | 20 1 | 40 .2 | 1 PIECE NAME: Patch
    0 TEXT | 8 1 | 10 1 | 20 1 | 40 .2 | 1 SIZE: M
    0 TEXT | 8 1 | 10 1 | 20 1 | 40 .2 | 1 QUANTITY: 2
    0 LINE | 8 1 | 10 0 | 20 0 | 11 6 | 21 0
    0 LINE | 8 1 | 10 6 | 20 4 | 11 6 | 21 0
    0 ARC | 8 1 | 10 3 | 20 4 | 40 3 | 50 0 | 51 180
    0 LINE | 8 1 | 10 0 | 20 4 | 11 0 | 21 0
    0 POINT | 8 4 | 10 3 | 20 0
    0 LINE | 8 80 | 10 5.5 | 20 2 | 11 6 | 21 2
    0 CIRCLE | 8 13 | 10 3 | 20 2 | 40 .1
    0 LWPOLYLINE | 8 14 | 90 3 | 70 1 | 10 1 | 20 1 | 10 5 | 20 1 | 42 1 | 10 5 | 20 3
    0 LINE | 8 7 | 10 3 | 20 1 | 11 3 | 21 3
    0 HATCH | 8 1 | 10 0
    0 ENDBLK | 8 1 | 0 ENDSEC
    0 SECTION | 2 ENTITIES
    0 INSERT | 8 1 | 2 POCKET | 10 100 | 20 50 | 50 180
    0 TEXT | 8 1 | 10 0 | 20 0 | 40 1 | 1 STYLE NAME: Patchwork
    0 ENDSEC | 0 EOF";

#[test]
fn a_pocket_by_another_hand_comes_in() {
    let read = dxf::read(groups(POCKET).as_bytes(), None).unwrap();
    assert_eq!(read.pattern.style, "Patchwork");
    assert_eq!(read.passed_over, ["1 × HATCH"]);
    let [piece] = read.pattern.pieces.as_slice() else {
        panic!("{:?}", read.pattern.pieces);
    };
    assert_eq!((piece.name.as_str(), piece.size.as_str()), ("Patch", "M"));
    assert_eq!((piece.as_drawn, piece.mirrored), (2, 0));
    let square_inches = 24.0 + std::f64::consts::PI * 9.0 / 2.0;
    let area = piece.area().to_mm2() / 645.16;
    assert!((area - square_inches).abs() < 0.005, "{area}");
    // Turned half round: the straight side is on top, and the notch in it points down.
    let [slit, t] = piece.notches.as_slice() else {
        panic!("{:?}", piece.notches);
    };
    assert_eq!(
        (slit.kind, slit.into.to_deg().round()),
        (NotchKind::Slit, 270.0)
    );
    assert!((slit.at.x + 76.2).abs() < 1e-6 && slit.at.y.abs() < 1e-6);
    assert_eq!(
        (t.kind, t.into.to_deg().round(), t.depth.to_mm()),
        (NotchKind::T, 0.0, 12.7)
    );
    assert!((t.at.x + 152.4).abs() < 1e-6, "{:?}", t.at);
    assert!((piece.drills[0].at.x + 76.2).abs() < 1e-3);
    assert!(piece.sewn[0].closed && piece.sewn[0].line.len() > 20);
}

#[test]
fn loose_lines_are_pieces_when_there_is_no_block() {
    let text = groups(
        "0 SECTION | 2 HEADER | 9 $MEASUREMENT | 70 1 | 0 ENDSEC | 0 SECTION | 2 ENTITIES
         0 LWPOLYLINE | 8 Outline | 70 1 | 10 0 | 20 0 | 10 200 | 20 0 | 10 200 | 20 100 | 10 0 | 20 100
         0 LWPOLYLINE | 8 Outline | 70 1 | 10 50 | 20 50 | 10 80 | 20 50 | 10 80 | 20 80
         0 TEXT | 8 Words | 10 100 | 20 20 | 40 5 | 1 Flap
         0 LINE | 8 Outline | 10 300 | 20 0 | 11 400 | 21 0
         0 LINE | 8 Outline | 10 300 | 20 0 | 11 350 | 21 90
         0 LINE | 8 Outline | 10 350 | 20 90 | 11 400 | 21 0
         0 ENDSEC | 0 EOF",
    );
    let pieces = dxf::read(text.as_bytes(), None).unwrap().pattern.pieces;
    let names: Vec<_> = pieces
        .iter()
        .map(|p| (p.name.as_str(), p.inner.len()))
        .collect();
    assert_eq!(names, [("Flap", 1), ("Piece 2", 0)]);
}

/// What a wrong file is answered with.
fn answer(text: &str) -> String {
    dxf::read(text.as_bytes(), None).unwrap_err().to_string()
}

#[test]
fn what_is_wrong_is_said_with_its_line() {
    let pocket = groups(POCKET);
    let with = |from: &str, to: &str| answer(&pocket.replacen(from, to, 1));
    let answers = [
        answer("AutoCAD Binary DXF\r\n"),
        answer("AC1032"),
        answer(""),
        answer("hello\nworld\n"),
        answer(pocket.strip_suffix("0\nEOF\n").unwrap()),
        with("70\n1\n0\nENDSEC", "70\n99\n0\nENDSEC"),
        with("STYLE NAME: Patchwork", "Units: cubits"),
        with("10\n6\n20\n4", "10\nsix\n20\n4"),
        with("40\n3\n50", "40\n-3\n50"),
        with("10\n6\n20\n4", "10\n6e9\n20\n4"),
        with("QUANTITY: 2", "QUANTITY: a pair"),
        with("11\n6\n21\n0\n", "11\n5.9\n21\n0\n"),
        with("2\nPOCKET\n10\n100", "2\nFLAP\n10\n100"),
        with("ENDBLK", "ENDSEC"),
    ];
    let expected = [
        "the file: this is binary DXF; save it as ASCII DXF, release 12 or later",
        "the file: this is a DWG file, not DXF; save it as ASCII DXF, release 12 or later",
        "line 1: the file ends here, without its end mark; it seems cut short: write it again, to the lines 0 and EOF",
        "line 1: a group code should stand here, and there is `hello`; a DXF file is pairs of lines, a whole number and then its value",
        "line 218: the file ends here, without its end mark; it seems cut short: write it again, to the lines 0 and EOF",
        "the file: it does not say its units; add a text Units: METRIC (millimetres) or Units: ENGLISH (inches) among its entities",
        "line 206: the units are `cubits`; write Units: METRIC for millimetres or Units: ENGLISH for inches",
        "line 80: group 10 is `six`, not a number; write a decimal number such as 12.5",
        "line 88: this curve has no radius above zero; give its radius as group 40",
        "line 76: this reaches more than 100 m from where the piece begins; check its numbers and the units of the file",
        "line 52: the quantity is `a pair`; write how many as drawn and how many mirrored, such as Quantity: 1,1",
        "line 16: the block POCKET has no closed cut line; draw the cut line as one closed POLYLINE on layer 1",
        "line 194: there is no block FLAP; insert a block that the section BLOCKS holds",
        "line 184: ENDSEC stands here before ENDBLK; end what was begun with ENDBLK first",
    ];
    assert_eq!(answers, expected);
}
