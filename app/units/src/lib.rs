//! Metres, degrees, millimetres and points as types.
