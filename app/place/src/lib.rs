//! Positions on the Earth and how sure we are of them.
