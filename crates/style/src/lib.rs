//! The style document: types, parsing, validation, revisions, differences.
