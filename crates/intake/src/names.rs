//! What a piece is called, in the languages of the houses that make jeans.
//!
//! The words are those of the trade, from memory: English, Portuguese, Spanish, French, German, Italian and Dutch.

/// A piece by its name for the program, and the groups of words of which one has to be in the name. Words that only
/// together mean the piece stand in one group. The first row that fits decides, so the special pieces come first.
const WORDS: &[(Option<&str>, &[&[&str]])] = &[
    // Pieces that carry a word of another: never brought, always laid out.
    (
        None,
        &[
            &["fly"],
            &["braguilha"],
            &["bragueta"],
            &["braguette"],
            &["schlitz"],
            &["patta"],
            &["gulp"],
            &["shield"],
            &["forro"],
            &["saco"],
            &["bag"],
            &["bolsa"],
            &["sac"],
            &["beutel"],
            &["sacco"],
            &["zak"],
            &["lining"],
            &["doublure"],
            &["futter"],
            &["fodera"],
            &["loop"],
            &["loops"],
            &["passador"],
            &["trabilla"],
            &["passant"],
            &["schlaufe"],
            &["passante"],
            &["lus"],
            &["half"],
            &["metade"],
            &["mitad"],
            &["moitie"],
            &["halfte"],
            &["meta"],
            &["label"],
            &["etiqueta"],
            &["patch"],
        ],
    ),
    (
        Some("coin_pocket"),
        &[
            &["coin"],
            &["watch"],
            &["ticket"],
            &["relogio"],
            &["moedas"],
            &["moedeiro"],
            &["reloj"],
            &["relojera"],
            &["monnaie"],
            &["gousset"],
            &["uhrtasche"],
            &["munztasche"],
            &["monete"],
            &["taschino"],
            &["munt"],
        ],
    ),
    (
        Some("pocket_facing"),
        &[
            &["facing"],
            &["vista", "bolso"],
            &["fundo", "bolso"],
            &["vista"],
            &["parement"],
            &["besatz"],
            &["paramontura"],
            &["beleg"],
        ],
    ),
    (
        Some("back_pocket"),
        &[
            &["back", "pocket"],
            &["bk", "pkt"],
            &["bolso", "traseiro"],
            &["bolso", "tras"],
            &["bolso", "costas"],
            &["bolsillo", "trasero"],
            &["poche", "arriere"],
            &["poche", "dos"],
            &["poche", "plaquee"],
            &["gesasstasche"],
            &["tasca", "posteriore"],
            &["tasca", "dietro"],
            &["achterzak"],
        ],
    ),
    (
        Some("yoke"),
        &[
            &["yoke"],
            &["riser"],
            &["encaixe"],
            &["pala"],
            &["escapulario"],
            &["canesu"],
            &["empiecement"],
            &["sattel"],
            &["passe"],
            &["carre"],
            &["sprone"],
            &["pas"],
        ],
    ),
    (
        Some("band"),
        &[
            &["waistband"],
            &["band"],
            &["waist"],
            &["cos"],
            &["cintura"],
            &["pretina"],
            &["ceinture"],
            &["bund"],
            &["cinturino"],
            &["fascia"],
            &["tailleband"],
        ],
    ),
    (
        Some("front"),
        &[
            &["front"],
            &["fr"],
            &["frente"],
            &["dianteiro"],
            &["dianteira"],
            &["delantero"],
            &["devant"],
            &["vorderhose"],
            &["vorderteil"],
            &["vorne"],
            &["davanti"],
            &["anteriore"],
            &["voorpand"],
        ],
    ),
    (
        Some("back"),
        &[
            &["back"],
            &["bk"],
            &["costas"],
            &["traseiro"],
            &["traseira"],
            &["tras"],
            &["trasero"],
            &["espalda"],
            &["dos"],
            &["arriere"],
            &["hinterhose"],
            &["ruckteil"],
            &["hinten"],
            &["dietro"],
            &["posteriore"],
            &["achterpand"],
        ],
    ),
];

/// What a name says a piece is; `None` where it says nothing, `Some(None)` where it is a piece that is not brought.
pub(crate) fn by_name(name: &str) -> Option<Option<&'static str>> {
    let words = words(name);
    let has = |group: &[&str]| group.iter().all(|w| words.iter().any(|word| word == w));
    WORDS
        .iter()
        .find(|(_, groups)| groups.iter().any(|group| has(group)))
        .map(|(piece, _)| *piece)
}

/// Whether a name says which side a back pocket belongs to; `true` is left.
pub(crate) fn is_left(name: &str) -> Option<bool> {
    let words = words(name);
    let has = |list: &[&str]| words.iter().any(|w| list.contains(&w.as_str()));
    let left = has(&[
        "left",
        "esquerdo",
        "esquerda",
        "izquierdo",
        "gauche",
        "links",
        "sinistra",
        "sx",
    ]);
    let right = has(&[
        "right", "direito", "direita", "derecho", "droite", "droit", "rechts", "destra", "dx",
    ]);
    (left != right).then_some(left)
}

/// The words of a name in small letters, without accents and numbers.
fn words(name: &str) -> Vec<String> {
    let plain: String = name
        .to_lowercase()
        .chars()
        .map(|c| match c {
            'á' | 'à' | 'â' | 'ã' | 'ä' => 'a',
            'é' | 'è' | 'ê' | 'ë' => 'e',
            'í' | 'ì' | 'î' | 'ï' => 'i',
            'ó' | 'ò' | 'ô' | 'õ' | 'ö' => 'o',
            'ú' | 'ù' | 'û' | 'ü' => 'u',
            'ç' => 'c',
            'ñ' => 'n',
            c => c,
        })
        .collect();
    plain
        .replace('ß', "ss")
        .split(|c: char| !c.is_alphabetic())
        .filter(|w| !w.is_empty())
        .map(str::to_owned)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_understood_in_their_languages() {
        for (name, piece) in [
            ("FRONT PANEL", Some(Some("front"))),
            ("Frente 32", Some(Some("front"))),
            ("Vorderhose", Some(Some("front"))),
            ("COSTAS", Some(Some("back"))),
            ("BACK_2", Some(Some("back"))),
            ("Back pocket left", Some(Some("back_pocket"))),
            ("BOLSO TRÁS", Some(Some("back_pocket"))),
            ("Gesäßtasche", Some(Some("back_pocket"))),
            ("Empiècement dos", Some(Some("yoke"))),
            ("Canesú", Some(Some("yoke"))),
            ("CÓS", Some(Some("band"))),
            ("Waistband", Some(Some("band"))),
            ("Vista do bolso", Some(Some("pocket_facing"))),
            ("Bolso relógio", Some(Some("coin_pocket"))),
            ("Fly facing", Some(None)),
            ("Pocket bag", Some(None)),
            ("Waistband, left half", Some(None)),
            ("A17", None),
        ] {
            assert_eq!(by_name(name), piece, "{name}");
        }
        assert_eq!(is_left("Bolso trás esquerdo"), Some(true));
        assert_eq!(is_left("Back pocket"), None);
    }

    #[test]
    fn every_piece_that_is_named_can_be_brought() {
        for (piece, _) in WORDS {
            let Some(piece) = piece else { continue };
            let known = style::OWN_PIECES
                .iter()
                .any(|p| p.id.code().starts_with(piece));
            assert!(known, "{piece}");
        }
    }
}
