//! Drives the real window through WebKitWebDriver, as a person would.
