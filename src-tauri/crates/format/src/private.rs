//! Personal texts: names, addresses and notes that a client may ask to have forgotten.
//!
//! The journal holds only the id of such a text, and a record is bound to its words by a salted hash. To
//! forget is to erase the words; the hash stays, so that the chain of closed records still holds. The salt
//! keeps a short text, such as a surname, from being guessed from its hash while the salt is unknown: so it
//! is erased with the words.

use serde::{Deserialize, Serialize};
use sha2::{Digest as _, Sha256};
use uuid::Uuid;

use crate::chain::{Digest, NotHex, from_hex, to_hex};

/// Sixteen random bytes that go before a text when it is hashed; in JSON their 32 hexadecimal digits.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Salt(pub [u8; 16]);

impl From<Salt> for String {
    fn from(salt: Salt) -> Self {
        to_hex(&salt.0)
    }
}

impl TryFrom<String> for Salt {
    type Error = NotHex;

    fn try_from(text: String) -> Result<Self, NotHex> {
        from_hex(&text).map(Self)
    }
}

/// A text about a person, or what is left of it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PrivateText {
    /// What the journal and the register hold in the text's place.
    pub id: Uuid,
    /// The hash of salt and words. It stays.
    pub sha256: Digest,
    /// The salt and the words; none once they were erased.
    pub words: Option<SaltedWords>,
}

/// The part of a personal text that can be erased.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SaltedWords {
    /// The salt.
    pub salt: Salt,
    /// The text itself.
    pub body: String,
}

impl PrivateText {
    /// A new text. The id and the salt's random bytes come from the caller.
    ///
    /// ```
    /// use evensward_format::private::{PrivateText, Salt};
    /// let text = PrivateText::new(uuid::Uuid::from_u128(1), Salt([7; 16]), "gate code on the hut".into());
    /// assert!(text.holds());
    /// ```
    #[must_use]
    pub fn new(id: Uuid, salt: Salt, body: String) -> Self {
        let sha256 = hash(salt, &body);
        Self { id, sha256, words: Some(SaltedWords { salt, body }) }
    }

    /// Whether the words are still those that were hashed. Erased words can't be wrong.
    #[must_use]
    pub fn holds(&self) -> bool {
        self.words.as_ref().is_none_or(|words| hash(words.salt, &words.body) == self.sha256)
    }
}

fn hash(salt: Salt, body: &str) -> Digest {
    let mut sha = Sha256::new();
    sha.update(salt.0);
    sha.update(body.as_bytes());
    Digest(sha.finalize().into())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_changed_word_is_noticed_and_an_erased_one_is_not_held_against_the_text() {
        let mut text = PrivateText::new(Uuid::from_u128(1), Salt([3; 16]), "Larch Cottage".into());
        if let Some(words) = &mut text.words {
            words.body.push('s');
        }
        assert!(!text.holds());
        text.words = None;
        assert!(text.holds());
    }

    #[test]
    fn a_salt_goes_through_json_as_hexadecimal() {
        let salt = Salt([0xa5; 16]);
        let json = serde_json::to_string(&salt).unwrap();
        assert_eq!(json, format!("\"{}\"", "a5".repeat(16)));
        assert_eq!(serde_json::from_str::<Salt>(&json).unwrap(), salt);
        assert!(serde_json::from_str::<Salt>("\"a5\"").is_err());
    }
}
