//! Whole-job tests, architecture rules and outside checkers (development only).
