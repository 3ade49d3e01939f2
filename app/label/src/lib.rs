//! Lines in, frames and PDF bytes out.
