//! Plain line drawings with a size in millimetres.

use papers::Drawing;

fn svg(width: f64, height: f64, body: &str) -> Drawing {
    let text = format!(
        r#"<svg xmlns="http://www.w3.org/2000/svg" width="{width:.2}mm" height="{height:.2}mm" viewBox="0 0 {width:.2} {height:.2}">{body}</svg>"#
    );
    Drawing::from_svg(text, "a sample drawing").expect("the sample states its size")
}

/// A pair of straight jeans at 1:`n`.
pub fn garment(back: bool, n: f64) -> Drawing {
    let k = 1.0 / n;
    let at = |x: f64, y: f64| format!("{:.2} {:.2}", x * k, y * k);
    let outline = format!(
        "M{} L{} L{} L{} L{} L{} L{} L{} Z",
        at(60.0, 0.0),
        at(490.0, 0.0),
        at(540.0, 260.0),
        at(520.0, 1085.0),
        at(310.0, 1085.0),
        at(278.0, 285.0),
        at(240.0, 1085.0),
        at(30.0, 1085.0),
    );
    let left = format!(
        "M{} L{} L{}",
        at(30.0, 1085.0),
        at(10.0, 260.0),
        at(60.0, 0.0)
    );
    let band = format!("M{} L{}", at(54.0, 38.0), at(496.0, 38.0));
    let inner = if back {
        format!(
            "M{} L{} L{} M{} h{w:.2} v{h:.2} l-{d:.2} {e:.2} l-{d:.2} -{e:.2} z M{} h{w:.2} v{h:.2} l-{d:.2} {e:.2} l-{d:.2} -{e:.2} z",
            at(48.0, 76.0),
            at(276.0, 103.0),
            at(502.0, 76.0),
            at(85.0, 130.0),
            at(310.0, 130.0),
            w = 155.0 * k,
            h = 140.0 * k,
            d = 77.5 * k,
            e = 30.0 * k,
        )
    } else {
        format!(
            "M{} Q{} {} M{} Q{} {} M{} L{} Q{} {}",
            at(160.0, 38.0),
            at(150.0, 105.0),
            at(40.0, 108.0),
            at(390.0, 38.0),
            at(400.0, 105.0),
            at(510.0, 108.0),
            at(314.0, 38.0),
            at(314.0, 170.0),
            at(310.0, 205.0),
            at(278.0, 215.0),
        )
    };
    let body = format!(
        r##"<path d="{outline}" fill="#e9ebee" stroke="none"/><path d="{outline}" fill="none" stroke="#1c1a17" stroke-width="0.25"/><path d="{left} {band} {inner}" fill="none" stroke="#1c1a17" stroke-width="0.25"/><path d="{inner}" fill="none" stroke="#c0813a" stroke-width="0.2" stroke-dasharray="0.6 0.25" transform="translate(0.4 0.4)"/>{}"##,
        centre_line(back, k)
    );
    svg(550.0 * k, 1090.0 * k, &body)
}

fn centre_line(back: bool, k: f64) -> String {
    let top = if back { 103.0 } else { 38.0 };
    format!(
        r##"<path d="M{:.2} {:.2} L{:.2} {:.2}" stroke="#1c1a17" stroke-width="0.25" fill="none"/>"##,
        276.0 * k,
        top * k,
        278.0 * k,
        285.0 * k
    )
}

/// A tapered piece of the given size in mm, at 1:`n`, with a grain line.
pub fn leg(width: f64, height: f64, n: f64) -> Drawing {
    let (w, h) = (width / n, height / n);
    let body = format!(
        r##"<path d="M{:.2} 0.3 L{:.2} 0.3 L{:.2} {:.2} L0.3 {:.2} Z" fill="#f4f2ec" stroke="#1c1a17" stroke-width="0.3"/><path d="M{:.2} {:.2} V{:.2}" stroke="#1c1a17" stroke-width="0.2"/>"##,
        w * 0.12,
        w * 0.9,
        w - 0.3,
        h - 0.3,
        h - 0.3,
        w / 2.0,
        h * 0.15,
        h * 0.85
    );
    svg(w, h, &body)
}

/// A section through a lapped seam.
pub fn section() -> Drawing {
    let body = r##"<g fill="none" stroke="#27324a" stroke-width="0.9" stroke-linecap="round">
        <path d="M2 14 H26 a2.4 2.4 0 0 0 0 -4.8 H16"/><path d="M44 4.4 H20 a2.4 2.4 0 0 0 0 4.8 H30" stroke="#5a6478"/></g>
        <g stroke="#c0813a" stroke-width="0.5"><path d="M19.5 2 V17"/><path d="M26.5 2 V17"/></g>
        <g font-size="3" fill="#6b665d"><text x="1" y="18">back</text><text x="38" y="2.6">front</text></g>"##;
    svg(46.0, 19.0, body)
}
