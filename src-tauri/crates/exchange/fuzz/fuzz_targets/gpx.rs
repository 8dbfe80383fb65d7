//! Any bytes as GPX: a refusal or tracks, and of every track a round or a refusal.

#![no_main]

use evensward_core::lawn::{WalkRules, first_crossing, walked_round};
use evensward_exchange::gpx::read;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    let tracks = match read(bytes) {
        Ok(tracks) => tracks,
        Err(said) => {
            assert!(!said.is_empty(), "a refusal says why");
            return;
        }
    };
    assert!(tracks.iter().all(|track| !track.fixes.is_empty() && track.length_m.is_finite()));
    for track in &tracks {
        match walked_round(&track.fixes, &WalkRules::default()) {
            Ok(walked) => {
                assert!(walked.area.m2() > 0.0 && walked.area_sd.m2().is_finite());
                assert_eq!(first_crossing(&walked.ring), None);
            }
            Err(said) => assert!(!said.is_empty(), "a refusal says why"),
        }
    }
});
