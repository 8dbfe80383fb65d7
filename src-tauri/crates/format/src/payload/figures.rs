//! Quantities, codes, messages and checks as they are written into payloads.

use std::fmt;

use evensward_core::checks::{Check, Verdict};
use evensward_core::product::{Source, Tag, Tagged};
use evensward_core::quantity::{
    Arg, Concentration, Figure, ProductAmount, ProductDose, ProductKind, Said, Unit, Volume,
};
use serde::de::{MapAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::frozen::{FiniteJson, Frozen, Unreadable, frozen_code, frozen_quantity, frozen_struct};

frozen_quantity! {
    Length, from_m, m;
    Swath, from_m, m;
    Area, from_m2, m2;
    Volume, from_l, l;
    Mass, from_g, g;
    Span, from_s, s;
    Pace, from_m_per_s, m_per_s;
    FlowRate, from_l_per_min, l_per_min;
    VolumePerArea, from_ml_per_m2, ml_per_m2;
    Weight, from_kg, kg;
    WindSpeed, from_m_per_s, m_per_s;
    Temperature, from_deg_c, deg_c;
    Acidity, from_ph, ph;
    Hardness, from_mg_per_l, mg_per_l;
    Density, from_g_per_ml, g_per_ml;
    Angle, from_deg, deg;
    Pressure, from_bar, bar;
    Doubt, from_percent, percent;
    Humidity, from_percent, percent;
}

frozen_code! {
    ProductKind { Volume = "volume", Mass = "mass" }
    Verdict { Go = "go", Caution = "caution", Stop = "stop" }
    Tag { Own = "own", Advisory = "advisory", Statutory = "statutory" }
    Source {
        Label = "label", SafetySheet = "safety-sheet", Law = "law", CodeOfPractice = "code-of-practice", Own = "own",
        HighestDoseOverLeastWater = "highest-dose-over-least-water",
    }
}

/// An amount of product: litres of a liquid or grams of a solid, as core holds them. Millilitres would be rounded once
/// on the way out and once on the way back, and product is not to change by a last bit.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ProductAmountJson {
    /// A liquid, in litres.
    L(f64),
    /// A solid, in grams.
    G(f64),
}

impl Frozen for ProductAmount {
    type Json = ProductAmountJson;
    fn freeze(&self) -> ProductAmountJson {
        match self {
            Self::Volume(volume) => ProductAmountJson::L(volume.l()),
            Self::Mass(mass) => ProductAmountJson::G(mass.g()),
        }
    }
    fn thaw(json: ProductAmountJson) -> Result<Self, Unreadable> {
        Ok(match json {
            ProductAmountJson::L(l) => Self::Volume(Volume::thaw(l)?),
            ProductAmountJson::G(g) => Self::Mass(Frozen::thaw(g)?),
        })
    }
}

/// A dose: millilitres or grams per square metre.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ProductDoseJson {
    /// A liquid.
    MlPerM2(f64),
    /// A solid.
    GPerM2(f64),
}

impl Frozen for ProductDose {
    type Json = ProductDoseJson;
    fn freeze(&self) -> ProductDoseJson {
        match self.kind() {
            ProductKind::Volume => ProductDoseJson::MlPerM2(self.base()),
            ProductKind::Mass => ProductDoseJson::GPerM2(self.base()),
        }
    }
    fn thaw(json: ProductDoseJson) -> Result<Self, Unreadable> {
        let (kind, base) = match json {
            ProductDoseJson::MlPerM2(base) => (ProductKind::Volume, base),
            ProductDoseJson::GPerM2(base) => (ProductKind::Mass, base),
        };
        Self::of(kind, base).map_err(|why| refused("dose", &why))
    }
}

/// A concentration: millilitres or grams per litre of mixture.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ConcentrationJson {
    /// A liquid.
    MlPerL(f64),
    /// A solid.
    GPerL(f64),
}

impl Frozen for Concentration {
    type Json = ConcentrationJson;
    fn freeze(&self) -> ConcentrationJson {
        match self.kind() {
            ProductKind::Volume => ConcentrationJson::MlPerL(self.per_l()),
            ProductKind::Mass => ConcentrationJson::GPerL(self.per_l()),
        }
    }
    fn thaw(json: ConcentrationJson) -> Result<Self, Unreadable> {
        let (kind, per_l) = match json {
            ConcentrationJson::MlPerL(per_l) => (ProductKind::Volume, per_l),
            ConcentrationJson::GPerL(per_l) => (ProductKind::Mass, per_l),
        };
        Self::of(kind, per_l).map_err(|why| refused("concentration", &why))
    }
}

impl Frozen for Unit {
    type Json = String;
    fn freeze(&self) -> String {
        self.code().to_owned()
    }
    fn thaw(json: String) -> Result<Self, Unreadable> {
        Self::from_code(&json).ok_or(Unreadable::UnknownCode { what: "unit", code: json })
    }
}

/// A limit with its tag and source.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct TaggedJson<T> {
    /// The limit.
    pub value: T,
    /// Its force.
    pub tag: String,
    /// Where it stands.
    pub source: String,
}

impl<T: Frozen> Frozen for Tagged<T> {
    type Json = TaggedJson<T::Json>;
    fn freeze(&self) -> Self::Json {
        TaggedJson { value: self.value.freeze(), tag: self.tag.freeze(), source: self.source.freeze() }
    }
    fn thaw(json: Self::Json) -> Result<Self, Unreadable> {
        Ok(Self { value: T::thaw(json.value)?, tag: Frozen::thaw(json.tag)?, source: Frozen::thaw(json.source)? })
    }
}

/// One argument of a message.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ArgJson {
    /// A figure.
    Number {
        /// In `unit`.
        value: FiniteJson,
        /// Code of the unit.
        unit: String,
        /// Decimals worth showing.
        decimals: u8,
    },
    /// Words from a label or a list, never a person's.
    Text(String),
    /// A count.
    Count(u32),
    /// A code.
    Code(String),
    /// A local date.
    Date(String),
}

impl Frozen for Arg {
    type Json = ArgJson;
    fn freeze(&self) -> ArgJson {
        match self {
            Self::Number { value, unit, decimals } => {
                ArgJson::Number { value: value.freeze(), unit: unit.freeze(), decimals: *decimals }
            }
            Self::Text(text) => ArgJson::Text(text.clone()),
            Self::Count(count) => ArgJson::Count(*count),
            Self::Code(code) => ArgJson::Code(code.to_string()),
            Self::Date(date) => ArgJson::Date(date.freeze()),
        }
    }
    fn thaw(json: ArgJson) -> Result<Self, Unreadable> {
        Ok(match json {
            ArgJson::Number { value, unit, decimals } => {
                Self::Number { value: Frozen::thaw(value)?, unit: Frozen::thaw(unit)?, decimals }
            }
            ArgJson::Text(text) => Self::Text(text),
            ArgJson::Count(count) => Self::Count(count),
            ArgJson::Code(code) => Self::Code(code.into()),
            ArgJson::Date(date) => Self::Date(Frozen::thaw(date)?),
        })
    }
}

/// A message's arguments by name: a JSON object, in the order in which they were given.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct ArgsJson(Vec<(String, ArgJson)>);

impl Serialize for ArgsJson {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter().map(|(name, arg)| (name, arg)))
    }
}

impl<'de> Deserialize<'de> for ArgsJson {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct InOrder;
        impl<'de> Visitor<'de> for InOrder {
            type Value = ArgsJson;
            fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
                formatter.write_str("arguments by name")
            }
            fn visit_map<M: MapAccess<'de>>(self, mut map: M) -> Result<ArgsJson, M::Error> {
                let mut args = Vec::new();
                while let Some(entry) = map.next_entry()? {
                    args.push(entry);
                }
                Ok(ArgsJson(args))
            }
        }
        deserializer.deserialize_map(InOrder)
    }
}

/// A message.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct SaidJson {
    /// Its code.
    pub code: String,
    /// Its arguments.
    #[serde(default, skip_serializing_if = "ArgsJson::is_empty")]
    pub args: ArgsJson,
}

impl ArgsJson {
    fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
}

impl Frozen for Said {
    type Json = SaidJson;
    fn freeze(&self) -> SaidJson {
        let args = self.args.iter().map(|(name, arg)| (name.to_string(), arg.freeze())).collect();
        SaidJson { code: self.code.to_string(), args: ArgsJson(args) }
    }
    fn thaw(json: SaidJson) -> Result<Self, Unreadable> {
        let args = json.args.0.into_iter().map(|(name, arg)| Ok((name.into(), Arg::thaw(arg)?)));
        Ok(Self { code: json.code.into(), args: args.collect::<Result<_, Unreadable>>()? })
    }
}

frozen_struct! {
    /// A check as it stood.
    CheckJson for Check {
        rule = rule: evensward_core::quantity::Code,
        verdict = verdict: Verdict,
        value = value: Option<Arg>,
        limit = limit: Option<Arg>,
        tag = tag: Tag,
        source = source: evensward_core::quantity::Code,
        said = said: Said,
    }
    /// A figure as typed.
    FigureJson for Figure {
        text = text: String,
        unit = unit: Unit,
    }
}

/// A refusal of one of core's constructors.
pub(super) fn refused(what: &'static str, why: &dyn fmt::Display) -> Unreadable {
    Unreadable::Refused { what, why: why.to_string() }
}
