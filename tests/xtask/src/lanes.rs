//! Runs checks one lane after the other, with the seconds each took, and sums them up at the end.
//!
//! A lane that cannot run has failed: there is no third outcome. Later lanes still run, so that one
//! look at the summary shows everything that is wrong.

use std::time::Instant;

use crate::counts::Count;

/// What a lane found: the tests it counted, and why it failed if it did.
pub struct Outcome {
    /// The tests counted; none for a lane that is one check as a whole.
    pub count: Option<Count>,
    /// Whether the lane passed.
    pub end: Result<(), String>,
}

impl From<Result<(), String>> for Outcome {
    fn from(end: Result<(), String>) -> Self {
        Self { count: None, end }
    }
}

struct Lane {
    name: &'static str,
    seconds: f64,
    outcome: Outcome,
}

/// The lanes run so far.
#[derive(Default)]
pub struct Lanes {
    lanes: Vec<Lane>,
}

impl Lanes {
    /// Runs one lane and says so before and after. Answers whether it passed.
    pub fn lane<O: Into<Outcome>>(&mut self, name: &'static str, work: impl FnOnce() -> O) -> bool {
        println!("\n== {name}");
        let started_at = Instant::now();
        let outcome: Outcome = work().into();
        let seconds = started_at.elapsed().as_secs_f64();
        let passed = outcome.end.is_ok();
        match &outcome.end {
            Ok(()) => println!("== {name}: passed in {seconds:.1} s"),
            Err(why) => println!("== {name}: FAILED in {seconds:.1} s\n{why}"),
        }
        self.lanes.push(Lane { name, seconds, outcome });
        passed
    }

    /// Prints the summary, its last line the count of tests. A failed lane that counted no failed
    /// test counts as one, so that the line cannot look green when something is red.
    ///
    /// # Errors
    ///
    /// Names the lanes that failed.
    pub fn sum_up(self) -> Result<(), String> {
        let mut total = Count::default();
        let mut red = Vec::new();
        println!("\n{:<22} {:>8}  {:>7} {:>7}", "lane", "seconds", "passed", "failed");
        for lane in &self.lanes {
            let mut count = lane.outcome.count.unwrap_or_default();
            if lane.outcome.end.is_err() {
                count.n_failed = count.n_failed.max(1);
                red.push(lane.name);
            } else if count.n_failed > 0 {
                red.push(lane.name);
            }
            total += count;
            println!("{:<22} {:>8.1}  {:>7} {:>7}", lane.name, lane.seconds, count.n_passed, count.n_failed);
        }
        let seconds: f64 = self.lanes.iter().map(|lane| lane.seconds).sum();
        println!("{:<22} {seconds:>8.1}\n", "together");
        if !red.is_empty() {
            println!("failed: {}", red.join(", "));
        }
        println!("{} passed, {} failed", total.n_passed, total.n_failed);
        if red.is_empty() { Ok(()) } else { Err(format!("Not all is well: {}.", red.join(", "))) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_lane_that_fails_makes_the_whole_fail() {
        let mut lanes = Lanes::default();
        assert!(lanes.lane("good", || Ok(())));
        assert!(!lanes.lane("bad", || Err("it is broken".to_owned())));
        assert_eq!(lanes.sum_up(), Err("Not all is well: bad.".to_owned()));
    }

    #[test]
    fn a_failed_test_fails_its_lane_whatever_the_runner_s_exit_code() {
        let mut lanes = Lanes::default();
        lanes.lane("odd", || Outcome { count: Some(Count { n_passed: 1, n_failed: 1 }), end: Ok(()) });
        assert!(lanes.sum_up().is_err());
    }
}
