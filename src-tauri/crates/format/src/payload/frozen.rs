//! How a value of the trade is written into a payload and read back.
//!
//! Core's types know no serialisation; each that is ever written gets a JSON shape here, knowingly. A key carries the unit
//! of its bare number. Reading goes through core's own constructors, so that nothing unvalidated comes back to life.
//! Invariant: a key or a code, once released, keeps its meaning; a change needs a new version of the event kind.

use serde::Serialize;
use serde::de::DeserializeOwned;

/// Why a payload cannot be read by this version.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Unreadable {
    /// The event kind or its version is not known: it was written by a newer version.
    #[error("event kind {kind} version {version} is not known")]
    UnknownKind {
        /// The kind.
        kind: String,
        /// Its version.
        version: u16,
    },
    /// The text is not what this kind holds.
    #[error("the payload is not a {kind}: {why}")]
    Malformed {
        /// The kind.
        kind: String,
        /// What the parser said.
        why: String,
    },
    /// A code that this version does not know.
    #[error("{what} has no {code}")]
    UnknownCode {
        /// What the code belongs to.
        what: &'static str,
        /// The code.
        code: String,
    },
    /// A number or a shape that core refuses.
    #[error("{what} cannot be: {why}")]
    Refused {
        /// What was refused.
        what: &'static str,
        /// Why.
        why: String,
    },
}

/// A value that can be written into a payload.
pub trait Frozen: Sized {
    /// Its shape in JSON.
    type Json: Serialize + DeserializeOwned;
    /// Writes it.
    fn freeze(&self) -> Self::Json;
    /// Reads it.
    ///
    /// # Errors
    /// Says why it cannot be read.
    fn thaw(json: Self::Json) -> Result<Self, Unreadable>;
}

impl<T: Frozen> Frozen for Vec<T> {
    type Json = Vec<T::Json>;
    fn freeze(&self) -> Self::Json {
        self.iter().map(T::freeze).collect()
    }
    fn thaw(json: Self::Json) -> Result<Self, Unreadable> {
        json.into_iter().map(T::thaw).collect()
    }
}

impl<T: Frozen> Frozen for Option<T> {
    type Json = Option<T::Json>;
    fn freeze(&self) -> Self::Json {
        self.as_ref().map(T::freeze)
    }
    fn thaw(json: Self::Json) -> Result<Self, Unreadable> {
        json.map(T::thaw).transpose()
    }
}

impl<T: Frozen> Frozen for std::sync::Arc<T> {
    type Json = T::Json;
    fn freeze(&self) -> Self::Json {
        T::freeze(self)
    }
    fn thaw(json: Self::Json) -> Result<Self, Unreadable> {
        T::thaw(json).map(Self::new)
    }
}

impl<A: Frozen, B: Frozen> Frozen for (A, B) {
    type Json = (A::Json, B::Json);
    fn freeze(&self) -> Self::Json {
        (self.0.freeze(), self.1.freeze())
    }
    fn thaw(json: Self::Json) -> Result<Self, Unreadable> {
        Ok((A::thaw(json.0)?, B::thaw(json.1)?))
    }
}

impl<T: Frozen> Frozen for [T; 2] {
    type Json = (T::Json, T::Json);
    fn freeze(&self) -> Self::Json {
        let [a, b] = self;
        (a.freeze(), b.freeze())
    }
    fn thaw(json: Self::Json) -> Result<Self, Unreadable> {
        Ok([T::thaw(json.0)?, T::thaw(json.1)?])
    }
}

macro_rules! as_they_are {
    ($($plain:ty),*) => {$(
        impl Frozen for $plain {
            type Json = Self;
            fn freeze(&self) -> Self {
                self.clone()
            }
            fn thaw(json: Self) -> Result<Self, Unreadable> {
                Ok(json)
            }
        }
    )*};
}
as_they_are!(bool, u8, u16, u32, i32, i64, String, uuid::Uuid);

/// A bare number. JSON has no infinity: it would be written as null, and the event could never be read again.
#[derive(Debug, Clone, Copy, PartialEq, serde::Deserialize)]
#[serde(transparent)]
pub struct FiniteJson(f64);

impl Serialize for FiniteJson {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        if self.0.is_finite() {
            serializer.serialize_f64(self.0)
        } else {
            Err(serde::ser::Error::custom("a number is not finite"))
        }
    }
}

impl Frozen for f64 {
    type Json = FiniteJson;
    fn freeze(&self) -> FiniteJson {
        FiniteJson(*self)
    }
    fn thaw(json: FiniteJson) -> Result<Self, Unreadable> {
        Ok(json.0)
    }
}

impl Frozen for usize {
    type Json = u32;
    fn freeze(&self) -> u32 {
        u32::try_from(*self).unwrap_or(u32::MAX)
    }
    fn thaw(json: u32) -> Result<Self, Unreadable> {
        Self::try_from(json).map_err(|why| Unreadable::Refused { what: "count", why: why.to_string() })
    }
}

impl Frozen for std::borrow::Cow<'static, str> {
    type Json = String;
    fn freeze(&self) -> String {
        self.to_string()
    }
    fn thaw(json: String) -> Result<Self, Unreadable> {
        Ok(Self::Owned(json))
    }
}

impl Frozen for chrono::NaiveDate {
    type Json = String;
    fn freeze(&self) -> String {
        self.format("%Y-%m-%d").to_string()
    }
    fn thaw(json: String) -> Result<Self, Unreadable> {
        Self::parse_from_str(&json, "%Y-%m-%d")
            .map_err(|why| Unreadable::Refused { what: "date", why: why.to_string() })
    }
}

/// Quantities: a number in the unit that the key names.
macro_rules! frozen_quantity {
    ($($name:ident, $from:ident, $get:ident);* $(;)?) => {$(
        impl $crate::payload::frozen::Frozen for evensward_core::quantity::$name {
            type Json = f64;
            fn freeze(&self) -> f64 {
                self.$get()
            }
            fn thaw(json: f64) -> Result<Self, $crate::payload::frozen::Unreadable> {
                Self::$from(json).map_err(|why| $crate::payload::frozen::Unreadable::Refused {
                    what: stringify!($name),
                    why: why.to_string(),
                })
            }
        }
    )*};
}

/// Plain enums: one code a variant, exhaustive in both directions.
macro_rules! frozen_code {
    ($($name:ty { $($variant:ident = $code:literal),* $(,)? })*) => {$(
        impl $crate::payload::frozen::Frozen for $name {
            type Json = String;
            fn freeze(&self) -> String {
                match self { $(Self::$variant => $code),* }.to_owned()
            }
            fn thaw(json: String) -> Result<Self, $crate::payload::frozen::Unreadable> {
                match json.as_str() {
                    $($code => Ok(Self::$variant),)*
                    _ => Err($crate::payload::frozen::Unreadable::UnknownCode { what: stringify!($name), code: json }),
                }
            }
        }
    )*};
}

/// Whether a value is what an absent key means, so that it is not written.
pub fn is_absent<T: Default + PartialEq>(value: &T) -> bool {
    *value == T::default()
}

/// Structs: one key a field, each with the field's type; the key carries the unit. Keys after `later` came once the
/// shape was published: an absent one means its default, which is what it meant before, and a default is not written.
macro_rules! frozen_struct {
    ($($(#[$doc:meta])* $json:ident for $name:ty {
        $($key:ident = $field:ident : $kind:ty),* $(,)?
        $(; later $($late_key:ident = $late_field:ident : $late_kind:ty),* $(,)?)?
    })*) => {$(
        $(#[$doc])*
        #[derive(Debug, Clone, PartialEq, serde::Serialize, serde::Deserialize)]
        #[allow(missing_docs, reason = "a key says its field and unit")]
        pub struct $json {
            $(pub $key: <$kind as $crate::payload::frozen::Frozen>::Json,)*
            $($(
                #[serde(default, skip_serializing_if = "crate::payload::frozen::is_absent")]
                pub $late_key: <$late_kind as $crate::payload::frozen::Frozen>::Json,
            )*)?
        }
        impl $crate::payload::frozen::Frozen for $name {
            type Json = $json;
            fn freeze(&self) -> $json {
                $json { $($key: self.$field.freeze(),)* $($($late_key: self.$late_field.freeze(),)*)? }
            }
            fn thaw(json: $json) -> Result<Self, $crate::payload::frozen::Unreadable> {
                Ok(Self {
                    $($field: <$kind as $crate::payload::frozen::Frozen>::thaw(json.$key)?,)*
                    $($($late_field: <$late_kind as $crate::payload::frozen::Frozen>::thaw(json.$late_key)?,)*)?
                })
            }
        }
    )*};
}

pub(crate) use {frozen_code, frozen_quantity, frozen_struct};
