//! Every port answered from memory, for tests.
