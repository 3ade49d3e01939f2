//! What a person can do: event in; new view and requests out.
