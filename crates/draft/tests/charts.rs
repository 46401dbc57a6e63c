#![allow(clippy::unwrap_used)]
mod common;
use common::*;
use draft::{draft, findings, Spec};
use trade::Length;
fn cm(x: f64) -> Length { Length::cm(x) }
#[test]
fn probe() {
    let doc = ferryman();
    for size in doc.sizes.all() {
        for f in findings(&draft(&Spec::of(&doc, size)), size, &doc) {
            println!("FERRY {size} {:?} {} {}: {}", f.severity, f.code, f.about, f.message);
        }
    }
    for c in table_rows() {
        let d = draft(&c.spec());
        if false {println!("ROW {} {} {} worst {} {:?}", c.figure, c.fit, c.size, d.pattern.worst_measure(), d.pattern.proportions);}
        for f in findings(&d, c.size, &c.doc()) {
            println!("   {:?} {} {}: {}", f.severity, f.code, f.about, f.message);
        }
    }
    let s = Chart::straight();
    let list: Vec<(&str, Chart)> = vec![
        ("thigh", Chart { thigh: cm(48.0), ..s.clone() }),
        ("back rise", Chart { back_rise: cm(25.0), ..s.clone() }),
        ("waist", Chart { waist: cm(120.0), ..s.clone() }),
        ("knee", Chart { knee: cm(75.0), ..s.clone() }),
        ("seat", Chart { seat: cm(140.0), ..s.clone() }),
        ("thigh big", Chart { thigh: cm(90.0), ..s.clone() }),
    ];
    for (n, c) in list {
        let t = std::time::Instant::now();
        let d = draft(&c.spec());
        println!("CONFLICT {n} {:?} {}", t.elapsed(), d.conflict.as_ref().map_or("-".into(), |c| c.to_string()));
        if let Some(c) = &d.conflict { for r in &c.remedies { println!("      {} {} -> {}", r.measure.key, r.charted, r.nearest); } }
    }
    let mut specs = vec![];
    let mut sp = s.spec(); sp.outseam = Some(cm(75.0)); specs.push(("outseam short", sp));
    let mut sp = s.spec(); sp.yoke_centre = cm(35.0); specs.push(("yoke deep", sp));
    let mut sp = s.spec(); sp.yoke_side = cm(20.0); specs.push(("yoke side deep", sp));
    let mut sp = s.spec(); sp.inseam = cm(36.0); specs.push(("hem above knee", sp));
    let mut sp = s.spec(); sp.outseam = Some(cm(200.0)); specs.push(("outseam long", sp));
    let mut sp = s.spec(); sp.back_rise = cm(20.0); specs.push(("back rise 20", sp));
    let mut sp = s.spec(); sp.front_rise = cm(50.0); specs.push(("front rise 50", sp));
    let mut sp = s.spec(); sp.knee = cm(120.0); specs.push(("knee 120", sp));
    let mut sp = s.spec(); sp.knee = cm(5.0); specs.push(("knee 5", sp));
    let mut sp = s.spec(); sp.hem = cm(1.0); specs.push(("hem 1", sp));
    let mut sp = s.spec(); sp.waist = cm(40.0); specs.push(("waist 40", sp));
    let mut sp = s.spec(); sp.waist = cm(0.0); specs.push(("waist 0", sp));
    let mut sp = s.spec(); sp.waist = cm(1000000.0); specs.push(("waist 1e6", sp));
    let mut sp = s.spec(); sp.thigh = cm(48.0); sp.outseam = Some(cm(75.0)); specs.push(("thigh+outseam", sp));
    for (n, sp) in specs {
        let t = std::time::Instant::now();
        let d = draft(&sp);
        println!("CONFLICT {n} {:?} {}", t.elapsed(), d.conflict.as_ref().map_or("-".into(), |c| c.to_string()));
        if let Some(c) = &d.conflict { for r in &c.remedies { println!("      {} {} -> {}", r.measure.key, r.charted, r.nearest); } }
    }
}
