//! Published tables, formulas and the units of the trade.
