//! What a case of the rule table gives: figures whose keys end in their unit, codes, answers and dates.
//!
//! Invariant: every figure that stands in the table is used; one that no question reads fails its case.

use std::cell::RefCell;
use std::collections::BTreeSet;

use chrono::NaiveDate;
use toml::Value;

pub struct Given<'a> {
    table: &'a toml::Table,
    read: RefCell<BTreeSet<String>>,
}

impl<'a> Given<'a> {
    pub fn new(table: &'a toml::Table) -> Self {
        Self { table, read: RefCell::default() }
    }

    fn get(&self, key: &str) -> Option<&'a Value> {
        self.read.borrow_mut().insert(key.to_owned());
        self.table.get(key)
    }

    #[track_caller]
    pub fn number(&self, key: &str) -> f64 {
        self.maybe_number(key).unwrap_or_else(|| panic!("the case lacks {key}"))
    }

    #[track_caller]
    pub fn maybe_number(&self, key: &str) -> Option<f64> {
        self.get(key).map(|value| match value {
            Value::Float(value) => *value,
            Value::Integer(value) => *value as f64,
            other => panic!("{key} is no number: {other}"),
        })
    }

    #[track_caller]
    pub fn count(&self, key: &str) -> u16 {
        self.maybe_count(key).unwrap_or_else(|| panic!("the case lacks {key}"))
    }

    #[track_caller]
    pub fn maybe_count(&self, key: &str) -> Option<u16> {
        self.get(key).map(|value| u16::try_from(value.as_integer().unwrap()).unwrap())
    }

    #[track_caller]
    pub fn text(&self, key: &str) -> &'a str {
        self.maybe_text(key).unwrap_or_else(|| panic!("the case lacks {key}"))
    }

    #[track_caller]
    pub fn maybe_text(&self, key: &str) -> Option<&'a str> {
        self.get(key).map(|value| value.as_str().unwrap_or_else(|| panic!("{key} is no text")))
    }

    /// Whether it is so; what is not given is not.
    #[track_caller]
    pub fn is(&self, key: &str) -> bool {
        self.maybe(key).unwrap_or(false)
    }

    #[track_caller]
    pub fn maybe(&self, key: &str) -> Option<bool> {
        self.get(key).map(|value| value.as_bool().unwrap_or_else(|| panic!("{key} is neither true nor false")))
    }

    #[track_caller]
    pub fn day(&self, key: &str) -> NaiveDate {
        self.maybe_day(key).unwrap_or_else(|| panic!("the case lacks {key}"))
    }

    #[track_caller]
    pub fn maybe_day(&self, key: &str) -> Option<NaiveDate> {
        self.maybe_text(key).map(|text| text.parse().unwrap_or_else(|_| panic!("{key} is no date: {text}")))
    }

    #[track_caller]
    pub fn days(&self, key: &str) -> Vec<NaiveDate> {
        self.words(key).into_iter().map(|text| text.parse().unwrap()).collect()
    }

    #[track_caller]
    pub fn words(&self, key: &str) -> Vec<&'a str> {
        let list = self.get(key).unwrap_or_else(|| panic!("the case lacks {key}"));
        list.as_array().unwrap().iter().map(|word| word.as_str().unwrap()).collect()
    }

    /// What stands in the case and was never asked for.
    pub fn unread(&self) -> Vec<&'a str> {
        let read = self.read.borrow();
        self.table.keys().filter(|key| !read.contains(*key)).map(String::as_str).collect()
    }
}
