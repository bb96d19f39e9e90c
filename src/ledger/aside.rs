//! Lines beside the road: what a reader is told and nothing else is worked out from.
//!
//! Method: lines that stand apart are entered in groups. The search leaves a group out where no rule of the axis names a line of
//! it; a sheet for a reader holds all. Limits: no line outside a group may be worked out from one inside it; a test compares every other
//! line with and without them.

/// A group of lines that only a reader asks for, and rules that name one of them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[repr(u8)]
pub enum Aside {
    /// Gain, lag, contour, swinging and settling of the position loop.
    PositionLoop,
    /// Coming to rest by the drive, the buffer or friction, and what a brake is tested with.
    Stopping,
    /// The two sides against each other while they speed up, and when one is lost.
    Sides,
    /// Errors on a stretch of the travel.
    Section,
    /// What ratio, lead or travel would suit, and other comparisons.
    Comparing,
}

impl Aside {
    /// All groups.
    pub const ALL: [Aside; 5] = [Aside::PositionLoop, Aside::Stopping, Aside::Sides, Aside::Section, Aside::Comparing];
}

/// Some of the groups.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Asides(u8);

impl Asides {
    /// Those of all groups for which this is said.
    pub fn such(that: impl Fn(Aside) -> bool) -> Asides {
        Asides(Aside::ALL.into_iter().filter(|&aside| that(aside)).fold(0, |some, aside| some | 1 << aside as u8))
    }

    /// Whether a group is among them.
    #[inline(always)]
    pub fn hold(self, aside: Aside) -> bool {
        self.0 & 1 << aside as u8 != 0
    }
}
