//! Coverage: how even overlapped patterns lie.
