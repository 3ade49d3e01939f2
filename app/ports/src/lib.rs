//! Every question asked of the outside world, as traits.
