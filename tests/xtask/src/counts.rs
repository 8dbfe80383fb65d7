//! Reads how many tests passed and failed from what the runners say of themselves.
//!
//! A runner's closing lines are its own account; nothing is assumed when they are missing: a lane
//! that should have counted tests and shows no count is a failed lane.

use std::ops::AddAssign;

/// Tests that passed and tests that failed.
#[derive(Clone, Copy, Default, PartialEq, Eq, Debug)]
pub struct Count {
    /// Tests that passed.
    pub n_passed: u64,
    /// Tests that failed.
    pub n_failed: u64,
}

impl AddAssign for Count {
    fn add_assign(&mut self, other: Self) {
        self.n_passed += other.n_passed;
        self.n_failed += other.n_failed;
    }
}

/// Adds up the lines `test result: ok. 12 passed; 0 failed; …` of a whole `cargo test`.
#[must_use]
pub fn of_cargo(text: &str) -> Option<Count> {
    total(text.lines().filter_map(|line| {
        let (_, rest) = line.split_once("test result: ")?;
        let (_, rest) = rest.split_once(". ")?;
        let mut parts = rest.split("; ");
        Some(Count {
            n_passed: parts.next()?.strip_suffix(" passed")?.parse().ok()?,
            n_failed: parts.next()?.strip_suffix(" failed")?.parse().ok()?,
        })
    }))
}

/// Reads a plain line `12 passed, 0 failed`, which the window's driver closes with.
#[must_use]
pub fn of_plain_line(text: &str) -> Option<Count> {
    total(text.lines().filter_map(|line| {
        let (passed, failed) = line.trim().split_once(" passed, ")?;
        Some(Count { n_passed: passed.parse().ok()?, n_failed: failed.strip_suffix(" failed")?.parse().ok()? })
    }))
}

/// Reads Vitest's JSON report.
#[must_use]
pub fn of_vitest(report: &serde_json::Value) -> Option<Count> {
    Some(Count {
        n_passed: report.get("numPassedTests")?.as_u64()?,
        n_failed: report.get("numFailedTests")?.as_u64()?
            + report.get("numFailedTestSuites")?.as_u64()?.min(1)
                * u64::from(report.get("numFailedTests")?.as_u64()? == 0),
    })
}

/// Reads Playwright's JSON report; a test that passed only when tried again counts as failed.
#[must_use]
pub fn of_playwright(report: &serde_json::Value) -> Option<Count> {
    let stats = report.get("stats")?;
    Some(Count {
        n_passed: stats.get("expected")?.as_u64()?,
        n_failed: stats.get("unexpected")?.as_u64()? + stats.get("flaky")?.as_u64()?,
    })
}

fn total(counts: impl Iterator<Item = Count>) -> Option<Count> {
    counts.fold(None, |sum, count| {
        let mut sum = sum.unwrap_or_default();
        sum += count;
        Some(sum)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cargo_s_lines_are_added_up() {
        let text = "running 2 tests\n\
            test result: ok. 2 passed; 0 failed; 0 ignored; 0 measured; 0 filtered out; finished in 0.00s\n\
            \u{1b}[31mtest result: FAILED. 3 passed; 1 failed; 0 ignored; 0 measured; 0 filtered out\n";
        assert_eq!(of_cargo(text), Some(Count { n_passed: 5, n_failed: 1 }));
    }

    #[test]
    fn no_closing_line_is_no_count() {
        assert_eq!(of_cargo("error: could not compile"), None);
        assert_eq!(of_plain_line("passed, failed"), None);
    }

    #[test]
    fn a_test_file_that_does_not_load_counts_as_failed() {
        let report = serde_json::json!({
            "numPassedTests": 4, "numFailedTests": 0, "numFailedTestSuites": 1
        });
        assert_eq!(of_vitest(&report), Some(Count { n_passed: 4, n_failed: 1 }));
    }

    #[test]
    fn a_flaky_browser_test_counts_as_failed() {
        let report = serde_json::json!({"stats": {"expected": 7, "unexpected": 1, "flaky": 1}});
        assert_eq!(of_playwright(&report), Some(Count { n_passed: 7, n_failed: 2 }));
    }
}
