//! What the guides, racks and screws of an axis are fixed to.

/// What the guides and racks of an axis are screwed to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Bed {
    /// Welded steel.
    Steel,
    /// Grey cast iron.
    CastIron,
    /// Aluminium.
    Aluminium,
    /// Granite.
    Granite,
    /// Mineral casting.
    MineralCasting,
}

impl Bed {
    /// The words of a brief.
    pub const WORDS: [(&'static str, Bed); 5] = [
        ("steel", Bed::Steel),
        ("cast-iron", Bed::CastIron),
        ("aluminium", Bed::Aluminium),
        ("granite", Bed::Granite),
        ("mineral-casting", Bed::MineralCasting),
    ];

    /// Its word.
    pub fn word(self) -> &'static str {
        Bed::WORDS.iter().find(|(_, bed)| *bed == self).map_or("", |(word, _)| word)
    }
}
