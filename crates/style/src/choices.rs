//! Choices of a style: enums each member of which is written as one word.

/// One of several, as a file writes it.
pub trait Choice: Copy {
    /// The word a file uses for it.
    fn written(self) -> &'static str;
}

/// Declares the words a choice is written with in a file, in both directions.
macro_rules! choices {
    ($kind:ident: $($variant:ident = $word:literal),+ $(,)?) => {
        impl $kind {
            /// Every choice with the word it is written as, in the order to offer them.
            pub const WORDS: &'static [(&'static str, Self)] = &[$(($word, Self::$variant)),+];

            /// The word a file uses for this choice.
            #[must_use]
            pub const fn word(self) -> &'static str {
                match self { $(Self::$variant => $word),+ }
            }
        }
        impl ::std::fmt::Display for $kind {
            fn fmt(&self, f: &mut ::std::fmt::Formatter<'_>) -> ::std::fmt::Result {
                f.pad(self.word())
            }
        }
        impl ::serde::Serialize for $kind {
            fn serialize<S: ::serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                to.serialize_str(self.word())
            }
        }
        impl ::std::convert::From<$kind> for ::words::Given {
            fn from(choice: $kind) -> Self {
                choice.word().into()
            }
        }
        impl $crate::choices::Choice for $kind {
            fn written(self) -> &'static str {
                self.word()
            }
        }
    };
}
pub(crate) use choices;
