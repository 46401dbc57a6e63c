//! A draft worked by an independent script, made larger for the wash: what its seam pairs come to was
//! worked out there as well.

use cutting::{Follows, Scale, Shrinkage};
use geometry::{Path, Point, Vec2};
use serde_json::Value;
use trade::Share;

const DRAFT: &str = include_str!("data/worked_example.json");

/// A point of the file, in millimetres.
fn point(panel: &Value, name: &str) -> Point {
    let at = |k: usize| panel[name][k].as_f64().unwrap() * 10.0;
    Point::new(at(0), at(1))
}

fn unit(v: Vec2) -> Vec2 {
    v / v.hypot()
}

/// Outseam and inseam of a panel, by the curves of the script; lengths of handles in millimetres.
fn seams(panel: &Value, hip: f64, top: Vec2, crotch: Vec2) -> (Path, Path) {
    let p = |name| point(panel, name);
    let (inner, outer) = (unit(p("Ki") - p("Hi")), unit(p("Ko") - p("Ho")));
    let hip = Point::new(hip, 80.0);
    let up = Path::cubic(
        p("sw"),
        p("sw") + unit(top) * 50.0,
        hip + Vec2::new(0.0, 50.0),
        hip,
    );
    let low = Path::cubic(
        hip,
        hip - Vec2::new(0.0, 120.0),
        p("Ko") + outer * 120.0,
        p("Ko"),
    );
    let side = up.then(&low).then(&Path::line(p("Ko"), p("Ho")));
    let inseam = Path::cubic(p("CP"), p("CP") + crotch, p("Ki") + inner * 120.0, p("Ki"))
        .then(&Path::line(p("Ki"), p("Hi")));
    (side, inseam)
}

#[test]
fn seam_pairs_of_a_worked_draft_before_the_wash() {
    let draft: Value = serde_json::from_str(DRAFT).unwrap();
    let front = seams(
        &draft["front"],
        245.0,
        Vec2::new(1.0, -5.0),
        Vec2::new(14.0, -100.0),
    );
    let back = seams(
        &draft["back"],
        265.0,
        Vec2::new(0.9, -5.0),
        Vec2::new(32.0, -100.0),
    );
    let near = |found: f64, wanted: f64, what: &str| {
        // The file rounds points to 0.01 mm.
        assert!(
            (found - wanted).abs() < 0.06,
            "{what}: {found} is not {wanted}"
        );
    };
    let long = |path: &Path| path.length().to_mm();
    near(long(&front.0), 1068.18, "front outseam, finished");
    near(long(&back.0), 1068.18, "back outseam, finished");
    near(long(&front.1) - long(&back.1), 4.0, "inseams, finished");
    // Warp and weft; what the outseams come to, and by how much the inseams then differ.
    for (warp, weft, sides, inseams) in [
        (3.0, 12.0, Some((1102.48, 1102.38)), 3.4),
        (1.0, 15.0, None, 2.9),
    ] {
        let shrinkage = Shrinkage {
            warp: Share::percent(warp),
            weft: Share::percent(weft),
        };
        let grain = (Point::ORIGIN, Point::new(0.0, 100.0));
        let scale = Scale::new(grain, shrinkage, shrinkage, Follows::OwnCloth, Share::ZERO);
        let cut = |path: &Path| long(&path.transformed(scale.map));
        if let Some((a, b)) = sides {
            near(cut(&front.0), a, "front outseam before the wash");
            near(cut(&back.0), b, "back outseam before the wash");
        }
        let apart = cut(&front.1) - cut(&back.1);
        assert!((apart - inseams).abs() < 0.1, "{warp}/{weft}: {apart}");
    }
}
