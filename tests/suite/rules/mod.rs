//! The table of rules: each one just inside its limit and just outside it.
//!
//! Invariant: a rule that lacks a side, a case of a rule that there is not, and a figure that nothing reads fail.

mod actives;
mod air_of_day;
mod asked;
mod given;
mod laws;
mod on_shelf;
mod planned;

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use evensward_core::checks::{Check, RULES, Verdict};
use evensward_core::product::Tag;
use serde::Deserialize;

use given::Given;

#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
enum Where {
    Inside,
    Outside,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "lowercase")]
enum Said {
    Silent,
    Go,
    Caution,
    Stop,
}

#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
struct Case {
    side: Where,
    what: String,
    given: toml::Table,
    verdict: Said,
    code: Option<String>,
    tag: Option<String>,
}

#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
struct Row {
    limit: String,
    cases: Vec<Case>,
}

type Table = BTreeMap<String, Row>;

fn table() -> Table {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("rules.toml");
    toml::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

const fn tag_code(tag: Tag) -> &'static str {
    match tag {
        Tag::Statutory => "statutory",
        Tag::Advisory => "advisory",
        Tag::Own => "own",
    }
}

const fn said(check: Option<&Check>) -> Said {
    match check {
        None => Said::Silent,
        Some(check) => match check.verdict {
            Verdict::Go => Said::Go,
            Verdict::Caution => Said::Caution,
            Verdict::Stop => Said::Stop,
        },
    }
}

/// What is wrong with a case, in words.
fn wrong(rule: &str, case: &Case) -> Option<String> {
    let given = Given::new(&case.given);
    let check = asked::ask(rule, &given);
    let found = (said(check.as_ref()), check.as_ref().map(|check| check.said.code.to_string()));
    let tag = check.as_ref().map(|check| tag_code(check.tag).to_owned());
    let is_named = check.as_ref().is_none_or(|check| check.rule == rule && !check.source.is_empty());
    let unread = given.unread();
    let is_right = found == (case.verdict, case.code.clone()) && tag == case.tag && is_named && unread.is_empty();
    (!is_right).then(|| format!("{rule}, {}: said {found:?} {tag:?}, and {unread:?} was not read", case.what))
}

/// The rules that lack a case on either side, and the rows that belong to no rule.
fn gaps(table: &Table) -> Vec<String> {
    let has =
        |rule: &str, side: Where| table.get(rule).is_some_and(|row| row.cases.iter().any(|case| case.side == side));
    let lacking = RULES.iter().flat_map(|rule| {
        let sides = [Where::Inside, Where::Outside].into_iter().filter(|side| !has(rule, *side));
        sides.map(move |side| format!("{rule} has no case {side:?}"))
    });
    let strange = table.keys().filter(|rule| !RULES.contains(&rule.as_str()));
    lacking.chain(strange.map(|rule| format!("{rule} is no rule"))).collect()
}

#[test]
fn every_rule_says_what_its_table_says_on_both_sides_of_its_limit() {
    let table = table();
    let asked = table.iter().flat_map(|(rule, row)| row.cases.iter().filter_map(|case| wrong(rule, case)));
    let failed: Vec<String> = asked.collect();
    assert!(failed.is_empty(), "{}", failed.join("\n"));
}

#[test]
fn every_rule_has_a_case_on_both_sides_and_every_case_a_rule() {
    let table = table();
    assert_eq!(gaps(&table), Vec::<String>::new());
    for (rule, row) in &table {
        assert!(!row.limit.trim().is_empty(), "{rule} does not say its limit");
        let whats: BTreeSet<&str> = row.cases.iter().map(|case| case.what.as_str()).collect();
        assert_eq!(whats.len(), row.cases.len(), "{rule} says a case twice");
        let inside = row.cases.iter().filter(|case| case.side == Where::Inside).map(|case| case.verdict).min().unwrap();
        for case in row.cases.iter().filter(|case| case.side == Where::Outside) {
            assert!(case.verdict > inside.max(Said::Go), "{rule}, {}: no stricter than inside", case.what);
        }
    }
}

#[test]
fn a_table_without_a_side_or_with_a_rule_that_is_not_there_is_seen() {
    for rule in RULES {
        for side in [Where::Inside, Where::Outside] {
            let mut table = table();
            table.get_mut(*rule).unwrap().cases.retain(|case| case.side != side);
            assert_eq!(gaps(&table), [format!("{rule} has no case {side:?}")]);
        }
    }
    let mut table = table();
    let row = table["wind"].clone();
    table.insert("no-such-rule".to_owned(), row);
    assert_eq!(gaps(&table), ["no-such-rule is no rule"]);
}

#[test]
fn a_case_fails_when_its_verdict_alone_is_another() {
    for (rule, row) in table() {
        for case in row.cases {
            for verdict in [Said::Silent, Said::Go, Said::Caution, Said::Stop] {
                let moved = Case { verdict, ..case.clone() };
                let is_moved = verdict != case.verdict;
                assert_eq!(wrong(&rule, &moved).is_some(), is_moved, "{rule}, {} as {verdict:?}", case.what);
            }
        }
    }
}
