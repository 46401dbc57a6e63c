//! The drawings of the pack of the demo style: legible, and saying what its lists say.
#![allow(clippy::unwrap_used)]

use std::sync::OnceLock;

use papers::{Assembly, Pack, assemble};

fn pack() -> &'static Pack {
    static PACK: OnceLock<Pack> = OnceLock::new();
    PACK.get_or_init(|| {
        let folder = tempfile::tempdir().unwrap();
        let path = style::write_demo(&folder.path().join("demo")).unwrap();
        let loaded = style::load(&path).unwrap();
        let run = sewing::make_run(&loaded.style, &loaded.collection);
        let asked = Assembly {
            revision: 1,
            ..Assembly::default()
        };
        assemble(&loaded, &run, &asked).unwrap()
    })
}

/// The size of a drawing's smallest letters as they are printed, millimetres; none where it has no words.
fn smallest_letters(svg: &str, printed_wide: f64) -> Option<f64> {
    let number = |text: &str| text.parse::<f64>().unwrap();
    let after = |name: &str| {
        let start = svg.find(name).unwrap() + name.len();
        svg[start..].split('"').next().unwrap()
    };
    let wide = number(after("viewBox=\"").split(' ').nth(2).unwrap());
    let sizes = svg.split("font-size=\"").skip(1);
    let sizes = sizes.map(|rest| number(rest.split('"').next().unwrap()));
    sizes
        .min_by(f64::total_cmp)
        .map(|size| size * printed_wide / wide)
}

/// Six and a half points: the least that is read at a sewing machine without a glass (common practice).
const LEAST_LETTERS_MM: f64 = 6.5 * 25.4 / 72.0;

#[test]
fn no_lettering_of_a_drawing_is_too_small_to_read() {
    fn walk(value: &serde_json::Value, place: &str, seen: &mut usize) {
        match value {
            serde_json::Value::Object(fields) => {
                if let Some(svg) = fields.get("$svg").and_then(|svg| svg.as_str()) {
                    let wide = fields["width"].as_f64().unwrap();
                    if let Some(size) = smallest_letters(svg, wide) {
                        let title = svg.split("<title>").nth(1).unwrap_or_default();
                        let title = title.split('<').next().unwrap_or_default();
                        assert!(size > LEAST_LETTERS_MM, "{place}, {title}: {size} mm");
                        *seen += 1;
                    }
                }
                for (name, field) in fields {
                    walk(field, &format!("{place}/{name}"), seen);
                }
            }
            serde_json::Value::Array(items) => {
                items.iter().for_each(|item| walk(item, place, seen));
            }
            _ => {}
        }
    }
    let mut seen = 0;
    let mut pack = serde_json::to_value(pack()).unwrap();
    // The drawings of the cover are fitted to it and carry no words.
    pack["cover"] = serde_json::Value::Null;
    walk(&pack, "", &mut seen);
    assert!(seen > 60, "{seen} drawings with words");
}

/// What the cutter lays on cloth is told in the same words by its sheet, its list and its lay.
#[test]
fn a_piece_is_called_alike_on_its_sheet_in_its_list_and_in_its_lay() {
    let pack = pack();
    let rows: Vec<_> = pack.cutting.cloths.iter().flat_map(|c| &c.rows).collect();
    for row in &rows {
        let title = format!("{}  {}", row.number, row.piece);
        let sheet = pack
            .piece_sheets
            .iter()
            .find(|figure| figure.title == title);
        let sheet = sheet.unwrap_or_else(|| panic!("no sheet of {title}"));
        let cut = match (row.as_drawn.as_str(), row.mirrored.as_str()) {
            (n, "0") => format!("Cut {n} as drawn"),
            ("1", "1") => "Cut 1 pair, mirrored".to_owned(),
            (n, m) => format!("Cut {n} as drawn, {m} mirrored"),
        };
        assert!(
            sheet.caption.starts_with(&cut),
            "{title}: {}",
            sheet.caption
        );
    }
    assert!(rows.iter().any(|row| row.piece == "Yoke, mirrored copy"));
    assert!(
        pack.pieces
            .iter()
            .all(|piece| !piece.notes.contains("mirrored"))
    );
}

/// One figure has one source: the list by size and the plate of the drawn size say the same.
#[test]
fn buttons_stand_as_far_apart_in_the_list_as_on_their_plate() {
    let pack = pack();
    let rows = || {
        pack.by_size
            .iter()
            .flat_map(|table| table.rows.iter().map(move |row| (table, row)))
    };
    let (table, row) = rows()
        .find(|(_, row)| row.what.starts_with("Fly buttons"))
        .unwrap();
    let size = table.sizes.iter().position(|size| size == "32x32").unwrap();
    let apart = row.values[size].parse::<f64>().unwrap();
    let plates = serde_json::to_value(&pack.plates).unwrap();
    let fly = plates
        .as_array()
        .unwrap()
        .iter()
        .find(|plate| plate["title"] == "Fly")
        .unwrap();
    let svg = fly["drawing"]["$svg"].as_str().unwrap();
    let told = format!(">{:.2} cm<", apart / 10.0);
    assert!(svg.contains(&told), "{told}");
}
