//! The published format, kind by kind: how it is written, that it is read back, what is refused and how.

use std::collections::BTreeSet;
use std::sync::Arc;

use evensward_core::quantity::Volume;
use evensward_core::visit::event::{Payload, UseUpKind};
use serde_json::Value;

use super::sample::{each_kind, other_variants};
use super::sample_day::with_keys_of_the_day;
use super::sample_later::with_later_keys;
use super::sample_mixing::{other_variants as mixtures, with_keys_of_mixing};
use super::sample_several::with_further_lawns;
use super::sample_stock::with_keys_of_the_shelf;
use super::sample_walk::{other_variants as walks, with_keys_of_the_walk};
use super::{KINDS, Unreadable, Written, read, write};

fn text_of(payload: &Payload) -> String {
    write(payload).unwrap().payload
}

/// The text with a line for each part, its keys in the order they are written in.
fn laid_out(json: &str) -> String {
    let (mut out, mut depth, mut is_in_text, mut is_escaped) = (String::new(), 0_usize, false, false);
    let mut letters = json.chars().peekable();
    while let Some(letter) = letters.next() {
        let is_empty = matches!(letters.peek(), Some('}' | ']'));
        let opens = !is_in_text && matches!(letter, '{' | '[') && !is_empty;
        let closes = !is_in_text && matches!(letter, '}' | ']') && !out.ends_with(['{', '[']);
        if closes {
            depth -= 1;
            out.push('\n');
            out.push_str(&"  ".repeat(depth));
        }
        out.push(letter);
        if opens {
            depth += 1;
        }
        if opens || (!is_in_text && letter == ',') {
            out.push('\n');
            out.push_str(&"  ".repeat(depth));
        }
        if letter == '"' && !is_escaped {
            is_in_text = !is_in_text;
        }
        is_escaped = letter == '\\' && !is_escaped;
    }
    out
}

#[test]
fn each_kind_is_written_as_it_was_published() {
    let written: Vec<Written> = each_kind().iter().map(|payload| write(payload).unwrap()).collect();
    let kinds: Vec<&str> = written.iter().map(|written| written.kind).collect();
    assert_eq!(kinds, KINDS, "one of each kind");
    for Written { kind, version, payload } in written {
        insta::assert_snapshot!(format!("{kind}-{version}"), laid_out(&payload));
    }
}

#[test]
fn keys_that_came_later_are_written_as_they_were_published() {
    let written: Vec<Written> = with_later_keys().iter().map(|payload| write(payload).unwrap()).collect();
    let kinds: Vec<&str> = written.iter().map(|written| written.kind).collect();
    assert_eq!(kinds, ["opened", "kit-chosen", "plan-agreed"]);
    for Written { kind, version, payload } in written {
        insta::assert_snapshot!(format!("{kind}-{version}-later"), laid_out(&payload));
    }
}

#[test]
fn keys_of_the_day_and_the_label_are_written_as_they_were_published() {
    let written: Vec<Written> = with_keys_of_the_day().iter().map(|payload| write(payload).unwrap()).collect();
    let kinds: Vec<&str> = written.iter().map(|written| written.kind).collect();
    assert_eq!(kinds, ["opened", "assessed", "product-chosen", "weather-seen"]);
    for Written { kind, version, payload } in written {
        insta::assert_snapshot!(format!("{kind}-{version}-day"), laid_out(&payload));
    }
}

#[test]
fn keys_that_came_with_the_mixture_are_written_as_they_were_published() {
    let written: Vec<Written> = with_keys_of_mixing().iter().map(|payload| write(payload).unwrap()).collect();
    let kinds: Vec<&str> = written.iter().map(|written| written.kind).collect();
    assert_eq!(kinds, ["product-chosen", "plan-agreed", "fill-made"]);
    for Written { kind, version, payload } in written {
        insta::assert_snapshot!(format!("{kind}-{version}-mixing"), laid_out(&payload));
    }
}

#[test]
fn keys_that_came_with_the_walk_are_written_as_they_were_published() {
    let written: Vec<Written> = with_keys_of_the_walk().iter().map(|payload| write(payload).unwrap()).collect();
    let kinds: Vec<&str> = written.iter().map(|written| written.kind).collect();
    assert_eq!(kinds, ["refill-called", "used-up"]);
    for Written { kind, version, payload } in written {
        insta::assert_snapshot!(format!("{kind}-{version}-walk"), laid_out(&payload));
    }
}

#[test]
fn keys_that_came_with_the_shelf_are_written_as_they_were_published() {
    let written: Vec<Written> = with_keys_of_the_shelf().iter().map(|payload| write(payload).unwrap()).collect();
    let kinds: Vec<&str> = written.iter().map(|written| written.kind).collect();
    assert_eq!(kinds, ["fill-made"]);
    for Written { kind, version, payload } in written {
        insta::assert_snapshot!(format!("{kind}-{version}-shelf"), laid_out(&payload));
    }
}

#[test]
fn further_lawns_are_written_as_they_were_published() {
    let written = with_further_lawns().first().map(|payload| write(payload).unwrap()).unwrap();
    insta::assert_snapshot!(format!("{}-{}-several", written.kind, written.version), laid_out(&written.payload));
}

/// The snapshots of the first release hold none of the later keys: they are what an older device still sends.
#[test]
fn what_was_written_before_a_key_came_is_read_with_what_it_meant_then() {
    let published = [
        include_str!("snapshots/evensward_format__payload__tests__opened-1.snap"),
        include_str!("snapshots/evensward_format__payload__tests__kit-chosen-1.snap"),
        include_str!("snapshots/evensward_format__payload__tests__plan-agreed-1.snap"),
        include_str!("snapshots/evensward_format__payload__tests__product-chosen-1.snap"),
        include_str!("snapshots/evensward_format__payload__tests__fill-made-1.snap"),
        include_str!("snapshots/evensward_format__payload__tests__refill-called-1.snap"),
        include_str!("snapshots/evensward_format__payload__tests__used-up-1.snap"),
    ];
    let kinds = ["opened", "kit-chosen", "plan-agreed", "product-chosen", "fill-made", "refill-called", "used-up"];
    for (snapshot, kind) in published.into_iter().zip(kinds) {
        let (_, text) = snapshot.split_once("\n---\n").unwrap();
        let expected = each_kind().into_iter().find(|payload| write(payload).unwrap().kind == kind).unwrap();
        assert_eq!(read(kind, 1, text).unwrap(), expected, "{kind}");
        for later in [
            "how",
            "slope",
            "origin",
            "reach_m",
            "angle_deg",
            "is_lap",
            "ends",
            "nth",
            "instrument",
            "partners",
            "formulation",
            "dissolving",
            "containers",
            "later",
        ] {
            assert!(!text.contains(&format!("\"{later}\":")), "{kind} had no {later} then");
        }
    }
}

#[test]
fn each_is_read_back_as_it_was_and_written_again_to_the_same_bytes() {
    for payload in each_kind()
        .into_iter()
        .chain(other_variants())
        .chain(mixtures())
        .chain(walks())
        .chain(with_keys_of_the_walk())
        .chain(with_later_keys())
        .chain(with_keys_of_mixing())
        .chain(with_keys_of_the_day())
        .chain(with_keys_of_the_shelf())
        .chain(with_further_lawns())
    {
        let Written { kind, version, payload: text } = write(&payload).unwrap();
        let again = read(kind, version, &text).unwrap();
        assert_eq!(again, payload);
        assert_eq!(text_of(&again), text);
    }
}

#[test]
fn what_a_newer_version_writes_is_unknown_and_never_guessed() {
    for payload in each_kind() {
        let Written { kind, payload: text, .. } = write(&payload).unwrap();
        for version in [0, 2, u16::MAX] {
            let unknown = Unreadable::UnknownKind { kind: kind.to_owned(), version };
            assert_eq!(read(kind, version, &text), Err(unknown));
        }
    }
    for kind in ["", "Opened", "strip_done", "soil-sampled"] {
        assert_eq!(read(kind, 1, "{}"), Err(Unreadable::UnknownKind { kind: kind.to_owned(), version: 1 }));
    }
}

#[test]
fn garbage_is_malformed_whatever_the_kind() {
    for kind in KINDS {
        for garbage in ["", "{", "3", "\"strip\"", "null", "{}}", "\u{0}"] {
            let answer = read(kind, 1, garbage);
            assert!(matches!(answer, Err(Unreadable::Malformed { .. })), "{kind}: {garbage:?} gave {answer:?}");
        }
    }
    for payload in each_kind() {
        let Written { kind, version, payload: text } = write(&payload).unwrap();
        let half: String = text.chars().take(text.chars().count() / 2).collect();
        assert!(matches!(read(kind, version, &half), Err(Unreadable::Malformed { .. })), "half a {kind}");
    }
}

/// The same event with one figure replaced.
fn spoilt(kind: &str, from: &str, to: &str) -> Result<Payload, Unreadable> {
    let payload = each_kind().into_iter().find(|payload| write(payload).unwrap().kind == kind).unwrap();
    let text = text_of(&payload);
    assert!(text.contains(from), "{kind} has no {from}: {text}");
    read(kind, 1, &text.replacen(from, to, 1))
}

#[test]
fn figures_that_cannot_be_are_refused_by_name() {
    let check = |kind, from, to, what| match spoilt(kind, from, to) {
        Err(Unreadable::Refused { what: found, .. }) => assert_eq!(found, what, "{kind}: {to}"),
        other => panic!("{kind}: {to} gave {other:?}"),
    };
    check("tank-measured", "\"left_l\":1.3", "\"left_l\":-1.3", "Volume");
    check("fill-made", "{\"l\":0.006}", "{\"l\":-0.006}", "Volume");
    check("fill-made", "{\"l\":0.006}", "{\"g\":-6.0}", "Mass");
    check("used-up", "\"area_m2\":12.5", "\"area_m2\":-12.5", "Area");
    check("kit-chosen", "\"swath_m\":1.0", "\"swath_m\":0.0", "Swath");
    check("kit-chosen", "\"pace_m_per_s\":1.0", "\"pace_m_per_s\":-1.0", "Pace");
    check("kit-chosen", "\"made_on\":\"2026-04-20\"", "\"made_on\":\"2026-04-31\"", "date");
    check("product-chosen", "{\"ml_per_m2\":2.0}", "{\"ml_per_m2\":-2.0}", "dose");
    check("product-chosen", "{\"ml_per_l\":80.0}", "{\"ml_per_l\":-80.0}", "concentration");
    check("weather-seen", "\"temperature_deg_c\":-3.5", "\"temperature_deg_c\":-300.0", "Temperature");
    check("opened", "\"doubt_percent\":2.0", "\"doubt_percent\":200.0", "Doubt");
    check("plan-agreed", "\"flow_l_per_min\":0.945", "\"flow_l_per_min\":0.0", "FlowRate");
}

#[test]
fn codes_that_are_not_known_are_named_and_numbers_out_of_reach_are_malformed() {
    let check = |kind, from, to, code: &str| match spoilt(kind, from, to) {
        Err(Unreadable::UnknownCode { code: found, .. }) => assert_eq!(found, code),
        other => panic!("{kind}: {to} gave {other:?}"),
    };
    check("stopped", "\"health\"", "\"boredom\"", "boredom");
    check("corrected", "\"add_water\"", "\"add_product\"", "add_product");
    check("tank-measured", "\"unit\":\"L\"", "\"unit\":\"bucket\"", "bucket");
    for (kind, from, to) in [
        ("tank-measured", "1.3", "1e999"),
        ("ran-short", "7", "-7"),
        ("ran-short", "7", "70000"),
        ("used-up", "\"area_m2\":12.5", "\"area_m2\":null"),
        ("corrected", "\"n_passes\":3", "\"n_passes\":3.5"),
    ] {
        let answer = spoilt(kind, from, to);
        assert!(matches!(answer, Err(Unreadable::Malformed { .. })), "{kind}: {to} gave {answer:?}");
    }
}

#[test]
fn a_number_that_json_has_no_word_for_is_not_written() {
    for area_m2 in [f64::NAN, f64::INFINITY] {
        let payload = Payload::UsedUp {
            kind: UseUpKind::Part,
            leftover: Volume::ZERO,
            water: Volume::ZERO,
            area_m2,
            checks: Vec::new(),
            strips: Vec::new(),
        };
        assert!(matches!(write(&payload), Err(Unreadable::Malformed { .. })));
    }
    let Some(Payload::Closed(signature)) = each_kind().into_iter().nth(23) else { panic!("the signature has moved") };
    let mut signature = Arc::unwrap_or_clone(signature);
    signature.learned_factor = Some(f64::NEG_INFINITY);
    assert!(write(&Payload::Closed(Arc::new(signature))).is_err());
}

/// Every text in a JSON value.
fn texts(json: &Value, found: &mut BTreeSet<String>) {
    match json {
        Value::String(text) => {
            found.insert(text.clone());
        }
        Value::Array(items) => items.iter().for_each(|item| texts(item, found)),
        Value::Object(entries) => entries.values().for_each(|value| texts(value, found)),
        Value::Null | Value::Bool(_) | Value::Number(_) => {}
    }
}

#[test]
fn no_free_text_stands_in_a_payload_but_the_labels_and_the_kits_own() {
    let mut found = BTreeSet::new();
    for payload in each_kind() {
        texts(&serde_json::from_str(&text_of(&payload)).unwrap(), &mut found);
    }
    // Codes are lower case without spaces, ids and hashes hexadecimal, dates and typed figures digits.
    let is_prose = |text: &&String| text.contains(' ') || text.starts_with(|letter: char| letter.is_uppercase());
    let prose: Vec<&str> = found.iter().filter(is_prose).map(String::as_str).filter(|text| *text != "L").collect();
    assert_eq!(
        prose,
        [
            "Edition 3",
            "Flat fan, blue",
            "Invented Feed",
            "Invented Iron",
            "Words of the label on a spill.",
            "Words of the label on a splash.",
            "Words of the label on mowing.",
            "Words of the label on swallowing.",
            "Words of the label on whom to call.",
        ]
    );
}
