//! The four garment views as a browser paints them, against pictures a person has looked at.
//!
//! `FELLWORK_BLESS=1 cargo test -p suite views` keeps what is painted now as the pictures to compare with;
//! look at them before committing.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use suite::fellwork::succeed;
use suite::outside;
use suite::picture::Picture;
use suite::source::root;
use tempfile::TempDir;

/// Painted pixels for each millimetre of the garment; the pictures kept have half as many.
const PIXELS_A_MM: f64 = 2.0;
/// The share of pixels, some 290, that may be other than in the picture kept: label lettering differs with the
/// fonts of a machine, and covers less than this.
const MAY_DIFFER: f64 = 0.0004;

/// A size of the drawing in millimetres, from the first attributes of the SVG.
fn millimetres(svg: &str, name: &str) -> f64 {
    let start = svg.find(&format!(" {name}=\"")).unwrap() + name.len() + 3;
    let end = svg[start..].find("mm\"").unwrap();
    svg[start..start + end].parse().unwrap()
}

fn painted(chromium: &Path, svg: &str, folder: &Path) -> Picture {
    let [width, height] = ["width", "height"].map(|side| millimetres(svg, side) * PIXELS_A_MM);
    let (wide, high) = (width.round() as usize, height.round() as usize);
    fs::write(folder.join("view.svg"), svg).unwrap();
    let page = format!(
        "<!doctype html><style>html,body{{margin:0;background:#fff}}\
         img{{display:block;width:{wide}px;height:{high}px}}</style><img src=\"view.svg\">"
    );
    fs::write(folder.join("view.html"), page).unwrap();
    let shot = folder.join("view.png");
    let output = Command::new(chromium)
        .args([
            "--headless",
            "--no-sandbox",
            "--disable-gpu",
            "--hide-scrollbars",
        ])
        .args([
            "--force-device-scale-factor=1",
            "--force-color-profile=srgb",
        ])
        .arg(format!(
            "--user-data-dir={}",
            folder.join("profile").display()
        ))
        // Room to spare: some versions count their own frame as part of the window.
        .arg(format!("--window-size={},{}", wide + 40, high + 200))
        .arg(format!("--screenshot={}", shot.display()))
        .arg(format!("file://{}", folder.join("view.html").display()))
        .output()
        .unwrap();
    assert!(
        shot.is_file(),
        "nothing is painted: {}",
        String::from_utf8_lossy(&output.stderr)
    );
    Picture::read(&shot).cut_to(wide, high).smaller(2)
}

/// The browser that paints, and the demo's style file in a folder that goes when it is dropped.
fn scene() -> Option<(PathBuf, TempDir, PathBuf)> {
    let chromium = outside::tool(&["chromium", "chromium-browser", "google-chrome"])?;
    let folder = tempfile::tempdir().unwrap();
    let style = style::write_demo(&folder.path().join("demo")).unwrap();
    Some((chromium, folder, style))
}

fn drawn(style: &Path, view: &str, face: &str) -> String {
    let style = style.to_str().unwrap();
    succeed(["draw", style, "--view", view, "--face", face, "-o", "-"])
}

fn compare(view: &str, face: &str) {
    let Some((chromium, folder, style)) = scene() else {
        return;
    };
    let now = painted(&chromium, &drawn(&style, view, face), folder.path());
    let kept: PathBuf = root().join(format!("crates/suite/pictures/{view}-{face}.png"));
    if std::env::var_os("FELLWORK_BLESS").is_some() {
        now.write(&kept);
        return;
    }
    let place = Path::new(env!("CARGO_TARGET_TMPDIR")).join("views");
    let shown = place.join(format!("{view}-{face}.now.png"));
    let Some((apart, map)) = Picture::read(&kept).apart(&now) else {
        now.write(&shown);
        panic!(
            "the {view} {face} has another size; see {}",
            shown.display()
        );
    };
    if apart.share > MAY_DIFFER {
        now.write(&shown);
        let differs = place.join(format!("{view}-{face}.differs.png"));
        map.write(&differs);
        panic!(
            "the {view} {face} differs in {:.2} % of its pixels; see {} and {}",
            apart.share * 100.0,
            shown.display(),
            differs.display()
        );
    }
}

/// An eye that lets small things pass still has to see these.
#[test]
fn what_a_person_would_see_is_noticed() {
    let Some((chromium, folder, style)) = scene() else {
        return;
    };
    let text = fs::read_to_string(&style).unwrap();
    let before = painted(&chromium, &drawn(&style, "back", "outside"), folder.path());
    let changes = [
        ("chart.back_pocket_from_yoke.value", "3.8 cm"),
        ("pockets.back.left.side_length", "12.8 cm"),
        ("seams.seat.rows[1].yarn", "night-80"),
    ];
    for (path, value) in changes {
        let edit = style::Edit::set(path, value).unwrap();
        fs::write(&style, style::apply(&text, &edit).unwrap()).unwrap();
        let now = painted(&chromium, &drawn(&style, "back", "outside"), folder.path());
        let (apart, _) = before.apart(&now).unwrap();
        assert!(
            apart.share > MAY_DIFFER,
            "{path}: {apart:?} passes for the same"
        );
    }
}

#[test]
fn front_outside() {
    compare("front", "outside");
}

#[test]
fn front_inside() {
    compare("front", "inside");
}

#[test]
fn back_outside() {
    compare("back", "outside");
}

#[test]
fn back_inside() {
    compare("back", "inside");
}
