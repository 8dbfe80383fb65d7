//! The water that a product is mixed with, what dissolves in it, and what may share one tank.
//!
//! Invariant: what was not looked at is never Go. What cannot dissolve is held against the water that is present at the
//! step where it dissolves, never against the full tank.
//! Sources: iron in water above pH 7 oxidises and drops out
//! (<https://th.simplot.com/resources/programs-and-articles/Getting-the-Most-Out-of-Ferrous-Sulfate-Why-Spray-Solution-pH-Matters>);
//! at most three partners in one tank (<https://sprayers101.com/tankmix/>); heat, clumps or layers after 15 minutes in the
//! jar mean that the products do not go together
//! (<http://utahpests.usu.edu/htm/utah-pests-news/up-winter-2012/using-a-jar-test/>).

use super::{Check, Verdict};
use crate::product::{Dissolving, Phase, Protective, Tag};
use crate::quantity::{Acidity, Arg, Hardness, Mass, Temperature, Unit, Volume, is_above};

/// Above this pH iron drops out of the water.
pub const NEUTRAL_PH: f64 = 7.0;
/// Water with more lime than this is called hard, in milligrams of calcium carbonate in a litre (from memory).
pub const HARD_MG_PER_L: f64 = 120.0;
/// From this share of what can dissolve on it goes slowly and a cold tank brings crystals back (common practice, no source).
pub const NEARLY_FULL: f64 = 0.8;
/// The most products that are advised in one tank.
pub const MOST_PRODUCTS: u32 = 3;

/// The pH of the water against iron in the product.
#[must_use]
pub fn water_and_iron(ph: Option<Acidity>) -> Check {
    let check = |verdict, code| Check::new("mix-water", verdict, Tag::Advisory, "iron-and-water-ph", code);
    let figure = |value: f64| Arg::number(value, Unit::Ph, 1);
    let Some(ph) = ph.map(Acidity::ph) else { return check(Verdict::Caution, "water-ph-unknown") };
    let (verdict, code) =
        if is_above(ph, NEUTRAL_PH) { (Verdict::Caution, "water-alkaline") } else { (Verdict::Go, "water-ph-fine") };
    check(verdict, code).with_value(figure(ph)).with_limit(figure(NEUTRAL_PH))
}

/// The hardness of the water against iron in the product.
#[must_use]
pub fn water_hardness(hardness: Option<Hardness>) -> Check {
    let check = |verdict, code| Check::new("water-hardness", verdict, Tag::Own, "from-memory", code);
    let figure = |value: f64| Arg::number(value, Unit::MilligramPerLitre, 0);
    let Some(mg_per_l) = hardness.map(Hardness::mg_per_l) else {
        return check(Verdict::Caution, "water-hardness-unknown");
    };
    let (verdict, code) =
        if is_above(mg_per_l, HARD_MG_PER_L) { (Verdict::Caution, "water-hard") } else { (Verdict::Go, "water-soft") };
    check(verdict, code).with_value(figure(mg_per_l)).with_limit(figure(HARD_MG_PER_L))
}

/// The mix water was not looked at, although the product asks for it.
#[must_use]
pub fn water_not_seen() -> Check {
    Check::new("mix-water", Verdict::Caution, Tag::Advisory, "iron-and-water-ph", "water-not-seen")
}

/// Whether so much of a product dissolves in the water that is there when it goes in.
#[must_use]
pub fn dissolving(
    product: &str,
    amount: Mass,
    table: Option<&Dissolving>,
    temperature: Option<Temperature>,
    water: Volume,
) -> Check {
    let rule = "dissolving";
    let source = table.map_or("own", Dissolving::source);
    let grams = |value: f64| Arg::number(value, Unit::Gram, 0);
    let check = |verdict, code| {
        Check::new(rule, verdict, Tag::Advisory, source, code)
            .with("product", Arg::Text(product.to_owned()))
            .with("water", Arg::number(water.l(), Unit::Litre, 1))
            .with_value(grams(amount.g()))
    };
    let Some(table) = table else { return check(Verdict::Caution, "solubility-not-known") };
    let Some(temperature) = temperature else { return check(Verdict::Caution, "water-temperature-unknown") };
    let degrees = Arg::number(temperature.deg_c(), Unit::Celsius, 1);
    let Some(most) = table.most_in(water, temperature) else {
        let (coldest, warmest) = table.range_deg_c();
        return check(Verdict::Caution, "temperature-outside-table")
            .with("temperature", degrees)
            .with("coldest", Arg::number(coldest, Unit::Celsius, 0))
            .with("warmest", Arg::number(warmest, Unit::Celsius, 0));
    };
    let (verdict, code) = if is_above(amount.g(), most.g()) {
        (Verdict::Stop, "does-not-dissolve")
    } else if is_above(amount.g(), most.g() * NEARLY_FULL) {
        (Verdict::Caution, "dissolves-barely")
    } else {
        (Verdict::Go, "dissolves")
    };
    let percent = if most.g() > 0.0 { amount.g() / most.g() * 100.0 } else { f64::MAX };
    check(verdict, code)
        .with_limit(grams(most.g()))
        .with("temperature", degrees)
        .with("percent", Arg::number(percent.min(1e6), Unit::Percent, 0))
}

/// How many products share the tank.
#[must_use]
pub fn number_of_products(n_products: u32) -> Check {
    let (verdict, code) = if n_products > MOST_PRODUCTS {
        (Verdict::Stop, "too-many-products")
    } else {
        (Verdict::Go, "number-of-products-fine")
    };
    Check::new("partners", verdict, Tag::Advisory, "tank-mix-guidance", code)
        .with_value(Arg::Count(n_products))
        .with_limit(Arg::Count(MOST_PRODUCTS))
}

/// Whether a label allows its product to be mixed with another one. `allowed` is the label's own word.
#[must_use]
pub fn partner_allowed(product: &str, allowed: Option<bool>, tag: Tag, source: &'static str) -> Check {
    let (verdict, code) = match allowed {
        Some(true) => (Verdict::Go, "partners-allowed"),
        Some(false) => (Verdict::Stop, "partners-forbidden"),
        None => (Verdict::Caution, "partners-not-stated"),
    };
    Check::new("partner-label", verdict, tag, source, code).with("product", Arg::Text(product.to_owned()))
}

/// Two products in one tank hold the same active substance: what their labels allow of it counts together.
#[must_use]
pub fn shared_active(active: &str, product: &str, other: &str) -> Check {
    Check::new("partners-active", Verdict::Caution, Tag::Advisory, "label", "partners-share-an-active")
        .with("active", Arg::Text(active.to_owned()))
        .with("product", Arg::Text(product.to_owned()))
        .with("other", Arg::Text(other.to_owned()))
}

/// What the jar showed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum JarOutcome {
    /// Nothing: it stayed even.
    Fine,
    /// It grew warm.
    Heat,
    /// Clumps, gel or grit.
    Clumps,
    /// Layers, scum or oil on top.
    Layers,
}

impl JarOutcome {
    /// The code of the outcome.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Fine => "fine",
            Self::Heat => "heat",
            Self::Clumps => "clumps",
            Self::Layers => "layers",
        }
    }
}

/// What the jar test says of the partners.
#[must_use]
pub fn jar_test(outcome: Option<JarOutcome>) -> Check {
    let (verdict, code) = match outcome {
        None => (Verdict::Caution, "jar-not-tested"),
        Some(JarOutcome::Fine) => (Verdict::Go, "jar-fine"),
        Some(JarOutcome::Heat) => (Verdict::Stop, "jar-heat"),
        Some(JarOutcome::Clumps) => (Verdict::Stop, "jar-clumps"),
        Some(JarOutcome::Layers) => (Verdict::Stop, "jar-layers"),
    };
    Check::new("jar-test", verdict, Tag::Advisory, "jar-test-guidance", code)
}

/// The concentrate is the strongest that is ever handled: a piece that the label wants for the walk is worn at it too.
///
/// One check for each piece of the walk that the label's list for mixing lacks.
#[must_use]
pub fn concentrate_is_strictest(mixing: &[Protective], spraying: &[Protective]) -> Vec<Check> {
    spraying
        .iter()
        .filter(|piece| !mixing.contains(piece))
        .map(|piece| {
            Check::new(
                "protective-mixing",
                Verdict::Caution,
                Tag::Advisory,
                "concentrate-guidance",
                "mixing-lacks-piece",
            )
            .with("piece", Arg::Code(piece.code().into()))
            .with("phase", Arg::Code(Phase::Mixing.code().into()))
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::product::solubility::{OwnTable, SolubilityPoint};

    #[track_caller]
    fn says(check: &Check, verdict: Verdict, code: &str) {
        assert_eq!((check.verdict, check.said.code.as_ref()), (verdict, code));
    }

    #[test]
    fn neutral_water_is_fine_and_what_lies_above_is_alkaline() {
        let ph = |value| water_and_iron(Some(Acidity::from_ph(value).unwrap()));
        says(&ph(7.0), Verdict::Go, "water-ph-fine");
        says(&ph(7.1), Verdict::Caution, "water-alkaline");
        says(&water_and_iron(None), Verdict::Caution, "water-ph-unknown");
        let hardness = |value| water_hardness(Some(Hardness::from_mg_per_l(value).unwrap()));
        says(&hardness(120.0), Verdict::Go, "water-soft");
        says(&hardness(121.0), Verdict::Caution, "water-hard");
        says(&water_hardness(None), Verdict::Caution, "water-hardness-unknown");
    }

    #[test]
    fn what_dissolves_is_near_from_four_fifths_and_stops_beyond_all_of_it() {
        let at = Temperature::from_deg_c(10.0).unwrap();
        let own = Dissolving::Own(OwnTable::new(vec![SolubilityPoint { temperature: at, g_per_l: 100.0 }]).unwrap());
        let water = Volume::from_l(5.0).unwrap();
        let check = |grams| dissolving("Demo", Mass::from_g(grams).unwrap(), Some(&own), Some(at), water);
        says(&check(400.0), Verdict::Go, "dissolves");
        says(&check(401.0), Verdict::Caution, "dissolves-barely");
        says(&check(500.0), Verdict::Caution, "dissolves-barely");
        says(&check(501.0), Verdict::Stop, "does-not-dissolve");
        assert!(check(501.0).can_be_passed(), "arithmetic advises, and a person may know better");
        let none = dissolving("Demo", Mass::from_g(1.0).unwrap(), None, Some(at), water);
        says(&none, Verdict::Caution, "solubility-not-known");
        let no_water = dissolving("Demo", Mass::from_g(1.0).unwrap(), Some(&own), Some(at), Volume::ZERO);
        says(&no_water, Verdict::Stop, "does-not-dissolve");
    }

    #[test]
    fn the_fourth_product_is_one_too_many() {
        says(&number_of_products(3), Verdict::Go, "number-of-products-fine");
        says(&number_of_products(4), Verdict::Stop, "too-many-products");
    }
}
