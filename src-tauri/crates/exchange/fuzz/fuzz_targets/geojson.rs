//! Any text as GeoJSON: a refusal or parts that hold what they promise, and what is given out of them is read again.

#![no_main]

use evensward_core::lawn::{Plane, Ring, ValidOutline};
use evensward_exchange::geojson::{Piece, Role, read, write};
use libfuzzer_sys::fuzz_target;

fuzz_target!(|text: &str| {
    let imported = match read(text) {
        Ok(imported) => imported,
        Err(said) => {
            assert!(!said.is_empty(), "a refusal says why");
            return;
        }
    };
    assert!(imported.parts.first().is_some_and(|part| part.taken_out.is_none()), "grass comes first");
    let plane = Plane::north_up(imported.origin);
    for part in &imported.parts {
        let ring = Ring { outer: part.ring.clone(), holes: Vec::new() };
        let outline = ValidOutline::from_rings(&[ring]).expect("what was read is an outline");
        let again = read(&write(&plane, &[Piece { role: Role::Outline, outline: &outline }])).expect("it is read again");
        let area_m2 = outline.area().m2();
        let ring = Ring { outer: again.parts[0].ring.clone(), holes: Vec::new() };
        let again_m2 = ValidOutline::from_rings(&[ring]).expect("it is an outline again").area().m2();
        assert!((area_m2 - again_m2).abs() < 1e-3 + 1e-6 * area_m2, "{area_m2} and {again_m2}");
    }
});
