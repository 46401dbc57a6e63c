//! Cut pieces as JSON, for the checks in Python.

use cutting::{CutPiece, CutSize, Lie};
use geometry::Point;
use serde_json::{Value, json};

fn line(points: &[Point]) -> Value {
    points.iter().map(|p| json!([p.x, p.y])).collect()
}

/// One size: its pieces, the seams walked before the wash, and the findings.
pub fn size_json(all: &CutSize) -> Value {
    let seams: Vec<Value> = all
        .walked
        .iter()
        .map(|w| {
            json!({
                "seam": w.join.seam, "leg": format!("{:?}", w.leg),
                "a": w.a.to_mm(), "b": w.b.to_mm(), "ease": w.ease.to_mm(), "gap": w.gap().to_mm(),
                "settled": format!("{:?}", w.settled),
            })
        })
        .collect();
    let findings: Vec<Value> = all.findings.iter().map(|f| json!(f.code)).collect();
    json!({
        "size": all.size.to_string(),
        "pieces": all.pieces.iter().map(piece_json).collect::<Vec<_>>(),
        "seams": seams,
        "findings": findings,
    })
}

fn piece_json(piece: &CutPiece) -> Value {
    let edges: Vec<Value> = piece
        .edges
        .iter()
        .map(|e| {
            let (lie, fold) = match e.lie {
                Lie::None => ("none", None),
                Lie::Opened => ("opened", None),
                Lie::Turned => ("turned", None),
                Lie::Across => ("across", None),
                Lie::Felled { lap } => ("felled", Some(lap.to_mm())),
                Lie::Hemmed { first } => ("hemmed", Some(first.to_mm())),
            };
            json!({
                "name": e.id, "seam": e.seam, "lie": lie, "fold": fold,
                "allowance": e.allowance.to_mm(), "sewn": line(&e.sewn), "cut": line(&e.cut),
            })
        })
        .collect();
    let corners: Vec<Value> = piece
        .corners
        .iter()
        .map(|c| {
            json!({
                "at": [c.at.x, c.at.y], "before": c.before, "after": c.after,
                "rule": c.rule.key, "kind": c.kind().code(), "shaped": c.shaped, "line": line(&c.line),
            })
        })
        .collect();
    let notches: Vec<Value> = piece
        .notches
        .iter()
        .map(|n| {
            let cuts: Vec<Value> = n.cuts().iter().map(|(a, b)| line(&[*a, *b])).collect();
            json!({ "name": n.id.code(), "edge": n.edge, "at": [n.at.x, n.at.y], "cuts": cuts })
        })
        .collect();
    let drills: Vec<Value> = piece
        .drills
        .iter()
        .map(|d| json!({ "name": d.name, "on": format!("{:?}", d.on), "at": [d.at.x, d.at.y] }))
        .collect();
    json!({
        "code": piece.code(), "name": words::Words::english().say(piece.said()), "on": format!("{:?}", piece.on),
        "as_drawn": piece.as_drawn, "mirrored": piece.mirrored, "cloth": piece.cloth_name,
        "area": piece.area().to_mm2(), "cut": line(&piece.cut), "sewn": line(&piece.sewn()),
        "edges": edges, "corners": corners, "notches": notches, "drills": drills,
        "inner": piece.inner.iter().map(|l| json!({ "name": l.code(), "line": line(&l.line) })).collect::<Vec<_>>(),
        "grain": line(&[piece.grain.0, piece.grain.1]),
        "cloth_edge": piece.cloth_edge.as_ref().map(|c| json!({
            "edge": c.edge, "from": [c.from.x, c.from.y], "to": [c.to.x, c.to.y],
            "narrowest": c.narrowest.to_mm(), "widest": c.widest.to_mm(),
        })),
        "label": piece.label.lines(words::Words::english()),
    })
}
