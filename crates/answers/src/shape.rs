//! The shapes of answers, their versions and their schemas.

/// A shape of answer. Its version is part of the answer, under `format`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shape {
    /// `check` of a style.
    Check,
    /// `check` of an order.
    CheckOrder,
    /// `check` of a file that cannot be read.
    Unread,
    /// `pieces`.
    Pieces,
    /// `sew`.
    SewingOrder,
    /// `lay`.
    Lay,
    /// `plan`.
    Plan,
    /// `patterns` on paper.
    Patterns,
    /// `bring --list`.
    Bring,
    /// `history` of one file.
    History,
    /// `history` of a collection.
    HistoryOfCollection,
    /// `compare`.
    Compare,
}

impl Shape {
    /// Every shape.
    pub const ALL: [Self; 12] = [
        Self::Check,
        Self::CheckOrder,
        Self::Unread,
        Self::Pieces,
        Self::SewingOrder,
        Self::Lay,
        Self::Plan,
        Self::Patterns,
        Self::Bring,
        Self::History,
        Self::HistoryOfCollection,
        Self::Compare,
    ];

    /// What its schema's file is called by, before the version.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Check => "check",
            Self::CheckOrder => "check-order",
            Self::Unread => "unread",
            Self::Pieces => "pieces",
            Self::SewingOrder => "sewing-order",
            Self::Lay => "lay",
            Self::Plan => "plan",
            Self::Patterns => "patterns",
            Self::Bring => "bring",
            Self::History => "history",
            Self::HistoryOfCollection => "history-of-collection",
            Self::Compare => "compare",
        }
    }

    /// Which version of the shape is written.
    #[must_use]
    pub const fn version(self) -> u32 {
        match self {
            Self::Check => 2,
            Self::CheckOrder
            | Self::Unread
            | Self::Pieces
            | Self::SewingOrder
            | Self::Lay
            | Self::Plan
            | Self::Patterns
            | Self::Bring
            | Self::History
            | Self::HistoryOfCollection
            | Self::Compare => 1,
        }
    }

    /// Its schema, JSON Schema of draft 2020-12.
    #[must_use]
    pub const fn schema(self) -> &'static str {
        match self {
            Self::Check => include_str!("../schemas/check-2.json"),
            Self::CheckOrder => include_str!("../schemas/check-order-1.json"),
            Self::Unread => include_str!("../schemas/unread-1.json"),
            Self::Pieces => include_str!("../schemas/pieces-1.json"),
            Self::SewingOrder => include_str!("../schemas/sewing-order-1.json"),
            Self::Lay => include_str!("../schemas/lay-1.json"),
            Self::Plan => include_str!("../schemas/plan-1.json"),
            Self::Patterns => include_str!("../schemas/patterns-1.json"),
            Self::Bring => include_str!("../schemas/bring-1.json"),
            Self::History => include_str!("../schemas/history-1.json"),
            Self::HistoryOfCollection => {
                include_str!("../schemas/history-of-collection-1.json")
            }
            Self::Compare => include_str!("../schemas/compare-1.json"),
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use std::path::Path;

    use serde_json::Value;

    use super::*;

    #[test]
    fn every_schema_is_of_its_shape_and_version() {
        for shape in Shape::ALL {
            let schema: Value = serde_json::from_str(shape.schema()).unwrap();
            let called = format!("{}-{}", shape.name(), shape.version());
            assert_eq!(schema["$id"], format!("urn:fellwork:{called}"));
            assert_eq!(
                schema["$schema"],
                "https://json-schema.org/draft/2020-12/schema"
            );
            assert_eq!(schema["properties"]["format"]["const"], shape.version());
            let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("schemas");
            let file = folder.join(format!("{called}.json"));
            assert_eq!(std::fs::read_to_string(file).unwrap(), shape.schema());
        }
    }
}
