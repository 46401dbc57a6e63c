//! A page of the bench gathers first and is written down then, in files of their own.

use suite::source::{literals, rust_files};

/// What a file that writes pages down has nothing to do with, and what it would do with it.
const GATHERING: &[(&str, &[&str])] = &[
    (
        "reads a file",
        &[
            "fs::",
            "read_bytes",
            "read_text",
            "read_revision",
            "style::load",
            "style::list_",
            "style::history",
            "kept_files",
            "VersionedFile",
            "KeptFile",
            ".metadata()",
        ],
    ),
    (
        "plans",
        &[
            "plan_cloth",
            "CutOrder",
            "cutting::Plan",
            "Plan::of",
            "LayJob::new",
        ],
    ),
    (
        "sews or cuts",
        &[
            "sewing::make",
            "cutting::cut(",
            " cut(",
            "Worked::out",
            "garment_of(",
            "with_edit(",
        ],
    ),
    (
        "locks a session",
        &[
            ".lock()",
            "Session",
            "state::Bench",
            "&Bench",
            "State<Bench>",
        ],
    ),
];

#[test]
fn what_writes_a_page_down_gathers_nothing() {
    let mut writing = 0;
    let mut wrong = Vec::new();
    for file in rust_files("src").iter().filter(|file| file.room == "bench") {
        let code = file.code().collect::<Vec<_>>().join("\n");
        if !code.contains("html!") {
            continue;
        }
        writing += 1;
        let said: Vec<String> = literals(&code).into_iter().map(|(_, said)| said).collect();
        for (does, words) in GATHERING {
            for word in *words {
                let in_words = said.iter().map(|said| said.matches(word).count());
                if code.matches(word).count() > in_words.sum() {
                    wrong.push(format!("{} {does}: {word}", file.path));
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(writing > 30, "only {writing} files write something down");
}
