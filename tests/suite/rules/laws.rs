//! Laws of any list of checks: another check never makes it milder, and no reason passes a statutory Stop.

use evensward_core::checks::{Check, RULES, Verdict, is_barred, strictest};
use evensward_core::product::Tag;
use proptest::prelude::*;
use proptest::sample::select;

use crate::properties::cases;

fn checks() -> impl Strategy<Value = Check> {
    let verdict = select(vec![Verdict::Go, Verdict::Caution, Verdict::Stop]);
    let tag = select(vec![Tag::Statutory, Tag::Advisory, Tag::Own]);
    (select(RULES), verdict, tag).prop_map(|(rule, verdict, tag)| Check::new(rule, verdict, tag, "label", "any"))
}

fn passed() -> impl Strategy<Value = Vec<&'static str>> {
    prop_oneof![Just(RULES.to_vec()), proptest::collection::vec(select(RULES), 0..12)]
}

proptest! {
    #![proptest_config(cases(256))]

    #[test]
    fn another_check_never_makes_a_list_milder(
        list in proptest::collection::vec(checks(), 0..12), more in checks(), at in 0..13_usize, passed in passed(),
    ) {
        let mut longer = list.clone();
        longer.insert(at.min(list.len()), more.clone());
        prop_assert_eq!(strictest(&longer), strictest(&list).max(more.verdict));
        prop_assert_eq!(is_barred(&longer, &passed), is_barred(&list, &passed) || more.bars(&passed));
    }

    #[test]
    fn only_a_reason_for_its_own_rule_passes_a_stop_and_none_a_statutory_one(
        list in proptest::collection::vec(checks(), 0..12), passed in passed(),
    ) {
        let stops = || list.iter().filter(|check| check.verdict == Verdict::Stop);
        let still = |check: &Check| check.tag == Tag::Statutory || !passed.iter().any(|rule| check.rule == *rule);
        prop_assert_eq!(is_barred(&list, &passed), stops().any(still));
        for check in &list {
            prop_assert_eq!(check.can_be_passed(), check.bars(&[]) && !check.bars(RULES));
        }
    }
}
