//! Draws windows of the demo as plain bytes (PPM) for whoever looks at what changed: `plates OUT VIEW FACE X Y WIDTH PIXELS WEAR`.

use std::error::Error;
use std::io::Write;
use std::path::Path;

use flat::View;
use geometry::Point;
use look::{Light, Scene, Wear, Window, picture};
use sewing::Face;
use trade::{Length, Share};

fn main() -> Result<(), Box<dyn Error>> {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let demo =
        Path::new(env!("CARGO_MANIFEST_DIR")).join("../style/demo/saltmarsh/styles/ferryman");
    let loaded = style::load(&demo)?;
    let garment = sewing::make(&loaded.style, &loaded.collection, loaded.style.sizes.base);
    let [out, view, face, x, y, width, pixels, wear] = &args[..] else {
        return Err("plates OUT VIEW FACE X Y WIDTH PIXELSxPIXELS WEAR".into());
    };
    let view = if view == "back" {
        View::Back
    } else {
        View::Front
    };
    let face = if face == "inside" {
        Face::Inside
    } else {
        Face::Outside
    };
    let start = std::time::Instant::now();
    let scene = Scene::of(&garment, view, face).ok_or("no panels")?;
    let laid = start.elapsed();
    let (wide, high) = pixels.split_once('x').ok_or("pixels")?;
    let window = Window {
        middle: Point::new(x.parse()?, y.parse()?),
        width: Length::mm(width.parse()?),
        wide: wide.parse()?,
        high: high.parse()?,
    };
    let start = std::time::Instant::now();
    let drawn = picture(
        &scene,
        &window,
        &Light::default(),
        Wear::of(Share::ratio(wear.parse()?)),
        2,
    );
    writeln!(
        std::io::stderr(),
        "scene {laid:?}, picture {:?}",
        start.elapsed()
    )?;
    let mut bytes = format!("P6\n{} {}\n255\n", drawn.wide, drawn.high).into_bytes();
    bytes.extend(drawn.rgb);
    std::fs::write(out, bytes)?;
    Ok(())
}
