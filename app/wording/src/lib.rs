//! The parts of a record in, the lines of a label out.
