//! What somebody else may try with the bench: other pages in the same browser, other programs of this machine, a file
//! that came by post.

mod addresses;
mod bodies;
mod doors;
mod floods;
mod table;
mod words;
