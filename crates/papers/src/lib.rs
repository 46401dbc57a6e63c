//! What leaves the house: the production pack as PDF.
