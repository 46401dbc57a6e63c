//! The cloths that a style is cut from.

use style::Loaded;

/// The cloths that pieces of the style are cut from: the name in the collection and what people call it.
pub(super) fn cloths(loaded: &Loaded) -> Vec<(String, String)> {
    let base = loaded.style.sizes.base;
    let garment = sewing::make(&loaded.style, &loaded.collection, base);
    let cut = cutting::cut(&garment, &cutting::Plan::of(&loaded.style));
    let mut out: Vec<(String, String)> = Vec::new();
    for piece in &cut.pieces {
        let known = loaded.collection.cloths.get(&piece.cloth_name);
        if let Some(cloth) = known
            && out.iter().all(|(key, _)| *key != piece.cloth_name)
        {
            out.push((piece.cloth_name.clone(), cloth.name.clone()));
        }
    }
    out
}
