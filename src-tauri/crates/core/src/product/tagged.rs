//! A limit with how binding it is and where it stands: the tag decides whether a Stop can be passed.

/// How binding a limit is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Tag {
    /// The firm's or the operator's own setting.
    Own,
    /// The label's advice, or a code of practice.
    Advisory,
    /// The label's legal part, or the law.
    Statutory,
}

impl Tag {
    /// The code of the tag.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Own => "own",
            Self::Advisory => "advisory",
            Self::Statutory => "statutory",
        }
    }
}

/// Where a limit stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Source {
    /// On the product's label.
    Label,
    /// On the product's safety sheet.
    SafetySheet,
    /// In the law where the work is done.
    Law,
    /// In a code of practice.
    CodeOfPractice,
    /// Set by the firm or the operator.
    Own,
    /// Worked out: the highest dose over the least water.
    HighestDoseOverLeastWater,
}

impl Source {
    /// The code of the place.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Label => "label",
            Self::SafetySheet => "safety-sheet",
            Self::Law => "law",
            Self::CodeOfPractice => "code-of-practice",
            Self::Own => "own",
            Self::HighestDoseOverLeastWater => "highest-dose-over-least-water",
        }
    }
}

/// A limit with its tag and where it stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tagged<T> {
    /// The limit itself.
    pub value: T,
    /// How binding it is.
    pub tag: Tag,
    /// Where it stands.
    pub source: Source,
}

impl<T> Tagged<T> {
    /// A limit from the label's legal part.
    pub const fn statutory(value: T) -> Self {
        Self { value, tag: Tag::Statutory, source: Source::Label }
    }

    /// A limit from the label's advice.
    pub const fn advisory(value: T) -> Self {
        Self { value, tag: Tag::Advisory, source: Source::Label }
    }

    /// The firm's or the operator's own limit.
    pub const fn own(value: T) -> Self {
        Self { value, tag: Tag::Own, source: Source::Own }
    }
}
