//! What mounting and upkeep ask: materials of the bed, lubrication, surroundings, exchange of parts.

use super::part::{Accept::*, parts};
use crate::units::*;

parts! {
    /// A material of bed or beam that rack, bearings and nuts are screwed to.
    BedMaterial, "bed-material", bed_materials {
        /// Length of thread that bears, over the diameter of a fastener of class 10.9 or 12.9.
        thread_depth_factor: Ratio, "1", Positive;
        /// Expansion.
        expansion: Expansion, "µm/(m·K)", Positive;
        /// How threads are made.
        threads: String, "text", Words;
    }

    /// How a kind of drive is lubricated.
    Lubrication, "lubrication", lubrications {
        /// The kind of drive.
        of: String, "text", OneOf(&["rack", "screw"]);
        /// Lubricant and how it gets there.
        lubricant: String, "text", Words;
        /// Grease for a kilometre, at the reference width; racks.
        grease_per_distance: Option<LinearMassDensity>, "g/km", Positive;
        /// Face width for which that is stated; racks.
        grease_width: Option<Length>, "mm", Positive;
        /// Highest speed at which a lubricating pinion brings grease to the teeth; racks.
        lubricator_speed_limit: Option<Velocity>, "m/s", Positive;
        /// Way between two lubrications; screws.
        relubrication_distance: Option<Length>, "km", Positive;
        /// Grease of one lubrication over the diameter of the screw; screws.
        grease_per_diameter: Option<LinearMassDensity>, "kg/m", Positive;
    }

    /// Surroundings by the words of a brief, and what they ask of covers and lubrication.
    Surroundings, "surroundings", surroundings {
        /// Words that name them, with commas between.
        words: String, "text", Words;
        /// What covers and wipers have to be.
        cover: String, "text", Words;
        /// What lubrication has to be.
        lubrication: String, "text", Words;
        /// Interval of lubrication over that in clean air.
        interval_share: Ratio, "1", Share;
        /// Covers and wipers of one drive, for each metre of travel.
        cover_per_metre: Money, "nu", Price;
    }

    /// One line of the lists for the workshop: what fitting or keeping a drive asks.
    WorkshopLine, "workshop-line", workshop_lines {
        /// The list it stands in.
        list: String, "text", OneOf(&["installation", "upkeep"]);
        /// Its place in the list.
        place: u32, "count", Positive;
        /// What a drive or brief has for it to be told.
        of: String, "text", OneOf(&["any", "screw", "held-screw", "free-screw", "turning-nut", "rack", "stretched-screw", "hung-weight", "two-drives", "plain-sides", "paired-sides", "named-surroundings", "unknown-surroundings", "no-surroundings"]);
        /// The heading it stands under.
        group: String, "text", Words;
        /// What it is about; {word} stands for the bed, or for the surroundings as the brief writes them.
        item: String, "text", Words;
        /// The characteristic whose value it tells.
        figure: Option<String>, "text", Words;
        /// The kind of part and its key whose value it tells, as `rack-grade.joint-step`.
        part: Option<String>, "text", Words;
        /// How, in words.
        how: Option<String>, "text", Words;
    }

    /// What is said of the exchange of a part; {years}, {times}, {share} and {hours} stand for what is worked out.
    ExchangePhrase, "exchange-phrase", exchange_phrases {
        /// When it is said: the part lasts, lasts by a life that has a reliability, is exchanged once or oftener in service, is sized for the service, has no stated life; or of the work.
        of: String, "text", OneOf(&["lasts", "lasts-rated", "exchanged-once", "exchanged", "sized", "unknown", "work"]);
        /// The words.
        phrase: String, "text", Words;
    }

    /// One thing to do or to look at while a drive runs in and works.
    Upkeep, "upkeep", upkeeps {
        /// What it is for.
        of: String, "text", OneOf(&["any", "screw", "turning-nut", "rack", "two-pinions", "two-drives", "belt", "coupling", "gearbox", "motor", "brake", "gas-counterbalance", "weight-counterbalance", "scale"]);
        /// When it comes: while running in, or in a cycle.
        group: String, "text", OneOf(&["run-in", "inspection"]);
        /// What is looked at or done.
        item: String, "text", Words;
        /// Working hours between two times; left out where it comes once or at the shift.
        interval: Option<Time>, "h", Positive;
        /// How, and what is in order.
        how: String, "text", Words;
    }

    /// Exchange of a part at the end of its life: work, standstill, how the end is noticed, what is kept in store.
    Exchange, "exchange", exchanges {
        /// The part.
        of: String, "text", OneOf(&["screw", "screw-bearing", "nut-unit", "belt", "coupling", "gearbox", "pinion", "rack", "motor", "scale"]);
        /// Its name in the lists.
        name: String, "text", Words;
        /// Hours of work.
        work: Time, "h", NotNegative;
        /// Working hours that the machine stands.
        standstill: Time, "h", NotNegative;
        /// Life, where it is not worked out from the load.
        life: Option<Time>, "h", Positive;
        /// What wears, and how its end is noticed.
        notice: String, "text", Words;
        /// What is kept in store.
        spare: String, "text", Words;
    }
}

/// What a text begins with that says of something that it is not there.
const ABSENT: [&str; 3] = ["no ", "without ", "free of "];
/// What ends a text, or stands behind a word, that says of something that it is not there: "dust-free".
const FREE: &str = "free";
/// What may follow a word of the catalogue: it is the same word still.
const ENDINGS: [&str; 7] = ["", "s", "es", "y", "ed", "ing", "down"];
/// Of those the first, which may follow at the end of a longer word as well.
const PLAIN_ENDINGS: usize = 2;
/// So many letters a word needs to be known at the end of a longer one, as dust is in sawdust.
const IN_COMPOUNDS: usize = 4;

/// What a text of a brief says is there, in small letters: its parts between commas but those that say what is not.
fn present(written: &str) -> impl Iterator<Item = String> {
    let parts = written.split([',', ';']).map(|part| part.trim().to_lowercase());
    parts.filter(|part| !ABSENT.iter().any(|begin| part.starts_with(begin)) && !part.ends_with(FREE))
}

/// Whether a text of a brief only says what is not there.
pub fn says_absent(written: &str) -> bool {
    present(written).next().is_none()
}

impl Surroundings {
    /// The words that name these surroundings.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.words.split(',').map(str::trim).filter(|word| !word.is_empty())
    }

    /// The first of these texts of a brief that names these surroundings.
    pub fn named_by<'w>(&self, environment: &'w [String]) -> Option<&'w String> {
        let same = |written: &str, name: &str| {
            written.match_indices(name).any(|(at, _)| {
                let (before, after) = (&written[..at], &written[at + name.len()..]);
                let endings = if before.is_empty() { &ENDINGS[..] } else { &ENDINGS[..PLAIN_ENDINGS] };
                (before.is_empty() || name.chars().count() >= IN_COMPOUNDS) && endings.contains(&after)
            })
        };
        let known: Vec<String> = self.names().map(str::to_lowercase).collect();
        let names = |word: &str| known.iter().any(|name| same(word, name));
        let holds = |part: &str| {
            let words = part.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty());
            let words: Vec<&str> = words.collect();
            let behind = |at: usize| words.get(at + 1).copied();
            words.iter().enumerate().any(|(at, word)| names(word) && behind(at) != Some(FREE))
        };
        environment.iter().find(|written| present(written).any(|part| holds(&part)))
    }
}

#[cfg(test)]
mod tests {
    #[test]
    fn surroundings_are_named_by_whole_words_their_endings_and_compounds() {
        let catalog = crate::catalog::load(&[]).expect("the built-in parts");
        let named = |written: &str| -> Vec<&str> {
            let alone = [written.to_string()];
            let all = catalog.surroundings.iter().filter(|entry| entry.named_by(&alone).is_some());
            all.map(|entry| entry.designation.trim_start_matches("surroundings-")).collect()
        };
        for (written, wanted) in [
            ("wood dust", &["dust"] as &[&str]),
            ("Sawdust", &["dust"]),
            ("stone slurry", &["coolant", "dust"]),
            ("wet", &["coolant"]),
            ("washdown with water", &["coolant"]),
            ("steel chips, oil mist", &["chips", "oil"]),
            ("carbon-dust", &["conducting-dust", "dust"]),
            ("freezer", &["cold-or-hot"]),
            ("no dust", &[]),
            ("without coolant", &[]),
            ("no dust, but chips", &["chips"]),
            ("no dust, no coolant", &[]),
            ("dust-free hall", &[]),
            ("dust-free", &[]),
            ("oil free, wood dust", &["dust"]),
            ("photo studio", &[]),
            ("hotel in Washington", &[]),
            ("integrity", &[]),
            ("Oakwood", &["dust"]),
        ] {
            assert_eq!(named(written), wanted, "{written}");
        }
    }
}
