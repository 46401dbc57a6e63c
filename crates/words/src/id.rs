//! Identities: enums whose every member has a stable code for files and programs, and words in the catalogue.

/// Makes an enum of identities: for each a stable code, as files and programs write it, and the message that names it.
///
/// A member without a code or without words does not compile.
///
/// ```
/// words::identities! {
///     /// Parts of a page.
///     pub enum PartId {
///         /// Its head.
///         Head = "head" => words::key::TABS_FIT,
///     }
/// }
/// assert_eq!(PartId::of("head"), Some(PartId::Head));
/// assert_eq!(PartId::Head.words(words::Words::english()), words::Words::english().tabs_fit());
/// ```
#[macro_export]
macro_rules! identities {
    ($(#[$about:meta])* pub enum $kind:ident {
        $($(#[$told:meta])* $member:ident = $code:literal => $key:expr),+ $(,)?
    }) => {
        $(#[$about])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $kind {
            $($(#[$told])* $member),+
        }

        impl $kind {
            /// All of them, in the order in which they are listed for people.
            pub const ALL: [Self; [$(Self::$member),+].len()] = [$(Self::$member),+];

            /// Its stable code, as files and programs write it.
            #[must_use]
            pub const fn code(self) -> &'static str {
                match self { $(Self::$member => $code),+ }
            }

            /// The one with this code.
            #[must_use]
            pub fn of(code: &str) -> Option<Self> {
                match code {
                    $($code => Some(Self::$member),)+
                    _ => None,
                }
            }

            /// The message that names it.
            #[must_use]
            pub const fn key(self) -> $crate::Key {
                match self { $(Self::$member => $key),+ }
            }

            /// Its name in a language.
            #[must_use]
            pub fn words(self, words: &$crate::Words) -> &str {
                words.named(self.key())
            }
        }

        impl From<$kind> for $crate::Said {
            fn from(id: $kind) -> Self {
                id.key().into()
            }
        }

        impl From<$kind> for $crate::Given {
            fn from(id: $kind) -> Self {
                $crate::Said::from(id).into()
            }
        }
    };
}
