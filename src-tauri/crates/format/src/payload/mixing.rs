//! How a product is made up and how it dissolves, as a frozen label writes it.

use evensward_core::product::Formulation;
use evensward_core::product::solubility::{Dissolving, OwnTable, SolubilityPoint};
use evensward_core::quantity::Temperature;
use serde::{Deserialize, Serialize};

use super::frozen::{Frozen, Unreadable, frozen_struct};

impl Frozen for Formulation {
    type Json = String;
    fn freeze(&self) -> String {
        self.code().to_owned()
    }
    fn thaw(json: String) -> Result<Self, Unreadable> {
        Self::from_code(&json).ok_or(Unreadable::UnknownCode { what: "formulation", code: json })
    }
}

/// How a product dissolves: a published table by its name, or the operator's own.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum DissolvingJson {
    /// Iron(II) sulphate heptahydrate.
    #[serde(rename = "iron_sulphate_7")]
    IronSulphateHeptahydrate,
    /// The operator's own table.
    Own(Vec<SolubilityPointJson>),
}

impl Frozen for Dissolving {
    type Json = DissolvingJson;
    fn freeze(&self) -> DissolvingJson {
        match self {
            Self::IronSulphateHeptahydrate => DissolvingJson::IronSulphateHeptahydrate,
            Self::Own(table) => DissolvingJson::Own(table.points().to_vec().freeze()),
        }
    }
    fn thaw(json: DissolvingJson) -> Result<Self, Unreadable> {
        Ok(match json {
            DissolvingJson::IronSulphateHeptahydrate => Self::IronSulphateHeptahydrate,
            DissolvingJson::Own(points) => Self::Own(
                OwnTable::new(Frozen::thaw(points)?)
                    .map_err(|why| Unreadable::Refused { what: "solubility", why: why.code.to_string() })?,
            ),
        })
    }
}

frozen_struct! {
    /// One line of a table: grams of the product as it is weighed in a litre of added water.
    SolubilityPointJson for SolubilityPoint { temperature_deg_c = temperature: Temperature, g_per_l = g_per_l: f64 }
}
