//! The browser bench: pages, fragments and edits over loopback.
