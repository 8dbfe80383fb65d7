//! The real clock, zone and randomness: the one place of this crate that reaches outside the program.
//!
//! Invariant: the monotonic clock counts from the start of this run and its run id is made with it, so that two runs'
//! milliseconds are never compared by mistake.

use std::sync::Arc;
use std::time::{Instant, SystemTime, UNIX_EPOCH};

use chrono::{Local, Offset, TimeZone};
use evensward_format::journal::Stamp;
use evensward_format::private::Salt;
use uuid::Uuid;

use crate::ports::{Clock, Ids, Ports};

/// The name of a zone that can't be found out: the offset still tells the local time.
const UNKNOWN_ZONE: &str = "Etc/Unknown";

struct SystemClock {
    started: Instant,
    run_id: Uuid,
}

struct SystemIds;

/// The ports of this machine, for one run of the program.
#[must_use]
pub fn ports() -> Ports {
    #[expect(clippy::disallowed_methods, reason = "this file is the clock port's real side")]
    let started = Instant::now();
    let ids = SystemIds;
    let run_id = ids.id();
    Ports { clock: Arc::new(SystemClock { started, run_id }), ids: Arc::new(ids) }
}

impl Clock for SystemClock {
    fn now(&self) -> Stamp {
        #[expect(clippy::disallowed_methods, reason = "this file is the clock port's real side")]
        let now = SystemTime::now();
        let utc_ms = match now.duration_since(UNIX_EPOCH) {
            Ok(since) => i64::try_from(since.as_millis()).unwrap_or(i64::MAX),
            Err(before) => i64::try_from(before.duration().as_millis()).map_or(i64::MIN, |ms| -ms),
        };
        let local = Local.timestamp_millis_opt(utc_ms).earliest();
        Stamp {
            utc_ms,
            offset_min: local.map_or(0, |local| local.offset().fix().local_minus_utc() / 60),
            zone: zone(),
            mono_ms: i64::try_from(self.started.elapsed().as_millis()).unwrap_or(i64::MAX),
            run_id: self.run_id,
        }
    }
}

/// The zone's name. `TZ` overrules the system's setting, because the local offset follows it too.
fn zone() -> String {
    match std::env::var("TZ") {
        Ok(named) if named == "UTC" || named.contains('/') => named.trim_start_matches(':').to_owned(),
        // A rule instead of a name, such as `CET-1CEST`: the offset tells the time, and no name is made up.
        Ok(rule) if !rule.is_empty() => UNKNOWN_ZONE.to_owned(),
        _ => iana_time_zone::get_timezone().unwrap_or_else(|_| UNKNOWN_ZONE.to_owned()),
    }
}

impl Ids for SystemIds {
    fn id(&self) -> Uuid {
        #[expect(clippy::disallowed_methods, reason = "this file is the id port's real side")]
        Uuid::now_v7()
    }

    fn salt(&self) -> Salt {
        let mut bytes = [0; 16];
        getrandom::fill(&mut bytes).expect("a system that can start this program has a source of randomness");
        Salt(bytes)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn time_goes_on_and_ids_and_salts_are_new_each_time() {
        let ports = ports();
        let (one, other) = (ports.clock.now(), ports.clock.now());
        assert_eq!(one.run_id, other.run_id);
        assert!(other.mono_ms >= one.mono_ms);
        assert!(one.utc_ms > 1_700_000_000_000, "the machine's clock is set to {}", one.utc_ms);
        assert!(one.offset_min.abs() <= 14 * 60);
        assert!(ports.ids.id() < ports.ids.id(), "ids of version 7 sort by time");
        assert_ne!(ports.ids.salt(), ports.ids.salt());
    }
}
