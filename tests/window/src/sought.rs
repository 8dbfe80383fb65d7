//! How a person would point at something: by what it is, what it is called, and what it lies in.

use std::fmt;

use serde_json::{Value, json};

/// Something to look for on the screen.
#[derive(Clone, Copy, Debug)]
pub struct Sought<'a> {
    role: &'a str,
    name: &'a str,
    is_exact: bool,
    within: Option<(&'a str, &'a str)>,
}

/// Something with this role whose name is exactly this.
#[must_use]
pub fn the<'a>(role: &'a str, name: &'a str) -> Sought<'a> {
    Sought { role, name, is_exact: true, within: None }
}

/// Something with this role whose name holds these words.
#[must_use]
pub fn like<'a>(role: &'a str, words: &'a str) -> Sought<'a> {
    Sought { role, name: words, is_exact: false, within: None }
}

impl<'a> Sought<'a> {
    /// Only inside something with this role whose name holds these words.
    #[must_use]
    pub fn within(self, role: &'a str, words: &'a str) -> Self {
        Self { within: Some((role, words)), ..self }
    }

    /// The role it has.
    pub(crate) fn role(&self) -> &'a str {
        self.role
    }

    /// What `locate.js` is called with; `ready` leaves out what cannot be used just now.
    pub(crate) fn arguments(&self, ready: bool) -> Value {
        let within = self.within.map(|(role, words)| json!([role, words]));
        json!([self.role, self.name, self.is_exact, within, ready])
    }
}

impl fmt::Display for Sought<'_> {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(to, "{} \"{}\"", self.role, self.name)?;
        match self.within {
            Some((role, words)) => write!(to, " within {role} \"{words}\""),
            None => Ok(()),
        }
    }
}
