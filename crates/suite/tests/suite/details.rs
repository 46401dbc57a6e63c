//! Where the V puts the button, how long each side of a back pocket is and what a belt hides of the
//! concealed pocket, worked out again by Python from the style file alone.

use std::fs;
use std::path::Path;
use std::process::{Command, Output};

use serde_json::Value;
use style::{Edit, EditValue};
use suite::fellwork::succeed;
use suite::outside;
use suite::source::root;

const SIZES: [&str; 3] = ["28x30", "32x32", "38x34"];

fn judge(python: &Path, style: &Path, folder: &Path, spoil: impl Fn(&mut Value)) -> Output {
    let files = SIZES.map(|size| {
        let file = folder.join(format!("{size}.json"));
        let answer = succeed(["pieces", style.to_str().unwrap(), "--size", size, "--json"]);
        let mut answer: Value = serde_json::from_str(&answer).unwrap();
        spoil(&mut answer);
        fs::write(&file, answer.to_string()).unwrap();
        file
    });
    Command::new(python)
        .arg(root().join("crates/suite/checks/details.py"))
        .arg(style)
        .args(files)
        .output()
        .unwrap()
}

/// The demo, and the demo with another band, other pockets and another place of the concealed one.
#[test]
fn button_pockets_and_concealed_pocket_agree() {
    let Some(python) = outside::python() else {
        return;
    };
    let folder = tempfile::tempdir().unwrap();
    let style = style::write_demo(&folder.path().join("demo")).unwrap();
    let other = [
        ("chart.band_height.value", "4.4 cm"),
        ("band.v_angle", "80 deg"),
        ("band.start_below", "14 mm"),
        ("seams.band.rows[0].offset", "2.4 mm"),
        ("seams.band.rows[1].offset", "3 mm"),
        ("pockets.back.left.outer_drop", "11 mm"),
        ("pockets.back.right.outer_drop", "-4 mm"),
        ("pockets.back.right.foot_width", "12 cm"),
        ("pockets.extra.from_centre", "6.5 cm"),
        ("pockets.extra.width", "9.5 cm"),
    ];
    for changes in [&[][..], &other[..]] {
        let mut text = fs::read_to_string(&style).unwrap();
        for (path, value) in changes {
            let edit = Edit::Set {
                path: path.parse().unwrap(),
                value: EditValue::Text((*value).to_owned()),
            };
            text = style::apply(&text, &edit).unwrap();
        }
        fs::write(&style, text).unwrap();
        let output = judge(&python, &style, folder.path(), |_| ());
        let words = String::from_utf8_lossy(&output.stderr);
        assert!(output.status.success(), "{words}");
        let summary: Value = serde_json::from_slice(&output.stdout).unwrap();
        assert_eq!(summary["compared"].as_u64().unwrap(), 25 * 3);
    }
}

/// Each kind of mistake has to be noticed.
#[test]
fn a_detail_out_of_place_is_noticed() {
    let Some(python) = outside::python() else {
        return;
    };
    let folder = tempfile::tempdir().unwrap();
    let style = style::write_demo(&folder.path().join("demo")).unwrap();
    let by = |value: &mut Value, more: f64| *value = (value.as_f64().unwrap() + more).into();
    let first = |list: &Value, is: &dyn Fn(&Value) -> bool| {
        list.as_array().unwrap().iter().position(is).unwrap()
    };
    let band_row = |row: &Value| row["seam"] == "band" && row["number"] == 2;
    type Spoil<'a> = (&'a str, &'a dyn Fn(&mut Value));
    let spoils: &[Spoil<'_>] = &[
        ("v_mm", &|all| {
            let row = first(&all["rows"], &band_row);
            by(&mut all["rows"][row]["corners"][4][0], 0.1);
        }),
        ("v_deg", &|all| {
            let row = first(&all["rows"], &band_row);
            by(&mut all["rows"][row]["corners"][3][0], 0.5);
        }),
        ("button_mm", &|all| {
            let button = first(&all["fixings"], &|f| {
                f["kind"] == "button" && f["piece"] == "band"
            });
            by(&mut all["fixings"][button]["at"][1], 0.1);
        }),
        ("pocket_mm", &|all| {
            let pocket = first(&all["pieces"], &|p| p["id"] == "back_pocket_right");
            let edges = &mut all["pieces"][pocket]["edges"];
            let outer = first(edges, &|e| e["name"] == "outer");
            by(&mut edges[outer]["points"][0][1], 0.5);
        }),
        ("extra pocket", &|all| {
            let bag = first(&all["pieces"], &|p| p["id"] == "pocket_bag");
            let lines = &mut all["pieces"][bag]["lines"];
            let line = first(lines, &|l| l["name"] == "extra_pocket");
            for point in lines[line]["points"].as_array_mut().unwrap() {
                by(&mut point[1], -6.0);
            }
        }),
    ];
    for (kind, spoil) in spoils {
        let output = judge(&python, &style, folder.path(), spoil);
        let words = String::from_utf8_lossy(&output.stderr);
        assert_eq!(output.status.code(), Some(1), "{kind} goes unnoticed");
        assert!(words.contains(kind), "{kind} is not named: {words}");
    }
}
