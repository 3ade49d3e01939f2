//! Numbers of vials and envelopes.
