//! Solved garment to sheets of marks in millimetres.
