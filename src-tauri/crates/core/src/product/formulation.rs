//! How a product is made up, and so when it goes into the tank.
//!
//! The two letters are those of the international coding system of pesticide formulations (CropLife International,
//! technical monograph 2; FAO/WHO manual on specifications), which labels print behind the name.
//! Invariant: the label's own order comes first; the order here is the trade's W-A-L-E-S: wettables and whatever else is
//! dry, agitate, liquid flowables and suspensions, emulsions (<https://www.country-guide.ca/production/pest-patrol/>), and
//! solutions and surfactants last (<https://www.realagriculture.com/2018/07/avert-a-spray-disaster-by-using-the-proper-mixing-order/>).

/// The type of a formulation.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Formulation {
    /// WP, a powder to be made into a paste first.
    WettablePowder,
    /// WG, granules that fall apart in water.
    DispersibleGranules,
    /// WT, tablets that fall apart in water.
    DispersibleTablets,
    /// SP, a powder that dissolves.
    SolublePowder,
    /// SG, granules or crystals that dissolve.
    SolubleGranules,
    /// ST, tablets that dissolve.
    SolubleTablets,
    /// SC, a suspension of fine solids.
    SuspensionConcentrate,
    /// CS, capsules in water.
    CapsuleSuspension,
    /// SE, a suspension and an emulsion in one.
    SuspoEmulsion,
    /// OD, a suspension in oil.
    OilDispersion,
    /// EC, an oil that makes an emulsion.
    EmulsifiableConcentrate,
    /// EW, an emulsion of oil in water.
    EmulsionInWater,
    /// ME, a clear emulsion.
    MicroEmulsion,
    /// SL, a liquid that dissolves.
    SolubleConcentrate,
    /// GR, granules to be strewn: nothing for a sprayer.
    Granules,
}

/// The place of a formulation in the order of adding: the letters of W-A-L-E-S that stand for products (`A` is for agitating).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum AddingGroup {
    /// Whatever is dry: wettable powders, dispersible granules, and what dissolves.
    Dry,
    /// Flowables and suspensions.
    Flowable,
    /// What makes an emulsion.
    Emulsion,
    /// Solutions.
    Solution,
}

impl AddingGroup {
    /// The code of the group.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Dry => "adding-dry",
            Self::Flowable => "adding-flowable",
            Self::Emulsion => "adding-emulsion",
            Self::Solution => "adding-solution",
        }
    }
}

impl Formulation {
    /// Every type, in the order of adding.
    pub const ALL: &'static [Self] = &[
        Self::WettablePowder,
        Self::DispersibleGranules,
        Self::DispersibleTablets,
        Self::SolublePowder,
        Self::SolubleGranules,
        Self::SolubleTablets,
        Self::SuspensionConcentrate,
        Self::CapsuleSuspension,
        Self::SuspoEmulsion,
        Self::OilDispersion,
        Self::EmulsifiableConcentrate,
        Self::EmulsionInWater,
        Self::MicroEmulsion,
        Self::SolubleConcentrate,
        Self::Granules,
    ];

    /// The two letters of the international coding system.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::WettablePowder => "WP",
            Self::DispersibleGranules => "WG",
            Self::DispersibleTablets => "WT",
            Self::SuspensionConcentrate => "SC",
            Self::CapsuleSuspension => "CS",
            Self::SuspoEmulsion => "SE",
            Self::OilDispersion => "OD",
            Self::EmulsifiableConcentrate => "EC",
            Self::EmulsionInWater => "EW",
            Self::MicroEmulsion => "ME",
            Self::SolublePowder => "SP",
            Self::SolubleGranules => "SG",
            Self::SolubleTablets => "ST",
            Self::SolubleConcentrate => "SL",
            Self::Granules => "GR",
        }
    }

    /// The type of two letters, in large or small print; nothing for letters that are none of them.
    ///
    /// ```
    /// use evensward_core::product::formulation::Formulation;
    /// assert_eq!(Formulation::from_code("sc"), Some(Formulation::SuspensionConcentrate));
    /// assert_eq!(Formulation::from_code("XX"), None);
    /// ```
    #[must_use]
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|kind| kind.code().eq_ignore_ascii_case(code.trim()))
    }

    /// When it goes into the tank; nothing for what never goes into one.
    #[must_use]
    pub const fn adding_group(self) -> Option<AddingGroup> {
        match self {
            Self::WettablePowder
            | Self::DispersibleGranules
            | Self::DispersibleTablets
            | Self::SolublePowder
            | Self::SolubleGranules
            | Self::SolubleTablets => Some(AddingGroup::Dry),
            Self::SuspensionConcentrate | Self::CapsuleSuspension | Self::SuspoEmulsion | Self::OilDispersion => {
                Some(AddingGroup::Flowable)
            }
            Self::EmulsifiableConcentrate | Self::EmulsionInWater | Self::MicroEmulsion => Some(AddingGroup::Emulsion),
            Self::SolubleConcentrate => Some(AddingGroup::Solution),
            Self::Granules => None,
        }
    }
}
