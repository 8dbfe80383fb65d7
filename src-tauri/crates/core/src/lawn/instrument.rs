//! What lengths are taken with, and how far one length may be from the truth.
//!
//! Invariant: every number here is a standard uncertainty (JCGM 100:2008, k = 1). What differs from length to length
//! averages out over a lawn; what all lengths share (a stretched tape, a wheel's size, a pace's length) never does.

use crate::quantity::Length;

/// What the lengths of a lawn are taken with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Instrument {
    /// A tape.
    Tape,
    /// A measuring wheel.
    Wheel,
    /// Counted paces.
    Paces {
        /// How long one pace is.
        length: Length,
        /// The standard uncertainty of that length.
        sd: Length,
    },
}

/// The standard uncertainty of a length: its own part, and the part that it shares with every other length.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LengthSpread {
    /// The part of one length that does not grow with it: reading, and finding the corner again.
    pub fixed: Length,
    /// The part of one length that grows with it, as a share of the length.
    pub proportional: f64,
    /// The share by which all lengths are wrong together.
    pub scale: f64,
}

/// The standard uncertainty of a pace's length when none was given, as a share of it. Common practice, no source.
const PACE_SHARE: f64 = 0.04;

impl Instrument {
    /// Paces of a known length, with the usual doubt of it.
    #[must_use]
    pub fn paces(length: Length) -> Self {
        Self::Paces { length, sd: length.times(PACE_SHARE) }
    }

    /// The code of the instrument.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Tape => "tape",
            Self::Wheel => "wheel",
            Self::Paces { .. } => "paces",
        }
    }

    /// How far a length taken with it may be from the truth. Common practice, no source.
    #[must_use]
    pub fn spread(self) -> LengthSpread {
        match self {
            Self::Tape => LengthSpread { fixed: Length::computed(0.02), proportional: 0.001, scale: 0.000_3 },
            Self::Wheel => LengthSpread { fixed: Length::computed(0.05), proportional: 0.005, scale: 0.005 },
            // Whole paces are counted: the rest of a pace is spread evenly, which is 1/sqrt(12) of it.
            Self::Paces { length, sd } => LengthSpread {
                fixed: length.times(1.0 / 12.0_f64.sqrt()),
                proportional: 0.01,
                scale: if length.m() > 0.0 { sd.m() / length.m() } else { 0.0 },
            },
        }
    }
}

impl LengthSpread {
    /// The standard uncertainty of one length from its own part alone, in metres.
    #[must_use]
    pub fn own_m(self, length: Length) -> f64 {
        self.fixed.m().hypot(self.proportional * length.m())
    }
}
