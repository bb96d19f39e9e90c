//! The catalogue: which components there are to choose from, with their data and prices.
//!
//! Method: YAML files, one kind of part each, become plain structs; every list is sorted by designation, so
//! the order of files changes nothing. The files built into the program are generic and invented. They
//! stand for no maker's product and are to be replaced by a supplier's data before anything is ordered.
//! Limits: the catalogue knows kinds of parts, not families of drives.

mod check;
pub mod import;
mod kinds;
mod load;
mod motor;
mod mounting;
mod part;
mod rack;
mod reading;
mod screw;

pub use check::{Remark, check, check_some};
pub use kinds::{KINDS, Kind, Row, list, reference, show};
pub use load::{built_in, load, load_layers, load_texts, load_with};
pub use motor::{ErrorTable, LinearScale, PriceBasis, ServoMotor};
pub use mounting::{
    BedMaterial, Exchange, ExchangePhrase, Lubrication, Surroundings, Upkeep, WorkshopLine, says_absent,
};
pub use part::{Accept, Field, Part, Value};
pub use rack::{Gearbox, Pinion, PinionBias, Rack, RackGrade, Steel};
pub use reading::{Reading, Variant};
pub use screw::{
    BallScrew, EndArrangement, NutUnit, PreloadClass, ScrewBearing, ScrewGrade, ScrewReduction, ScrewSupport,
};

/// Everything there is to choose from; every list is sorted by designation and none is empty.
#[derive(Debug, Clone, PartialEq)]
pub struct Catalog {
    /// Ball screws.
    pub ball_screws: Vec<BallScrew>,
    /// Ways of making screws.
    pub screw_grades: Vec<ScrewGrade>,
    /// Preloads of the nut.
    pub preload_classes: Vec<PreloadClass>,
    /// Ways to hold the ends of a screw.
    pub end_arrangements: Vec<EndArrangement>,
    /// Screw bearings.
    pub screw_bearings: Vec<ScrewBearing>,
    /// Supports that travel with the nut.
    pub screw_supports: Vec<ScrewSupport>,
    /// Bearings and housings of driven nuts.
    pub nut_units: Vec<NutUnit>,
    /// Couplings and belts between motor and screw or nut.
    pub screw_reductions: Vec<ScrewReduction>,
    /// Racks.
    pub racks: Vec<Rack>,
    /// Ways of making racks and pinions.
    pub rack_grades: Vec<RackGrade>,
    /// Pinions.
    pub pinions: Vec<Pinion>,
    /// Gearboxes.
    pub gearboxes: Vec<Gearbox>,
    /// Biases of two pinions.
    pub pinion_biases: Vec<PinionBias>,
    /// Gear steels.
    pub steels: Vec<Steel>,
    /// Servo motors.
    pub servo_motors: Vec<ServoMotor>,
    /// Linear scales.
    pub linear_scales: Vec<LinearScale>,
    /// Tables of corrections.
    pub error_tables: Vec<ErrorTable>,
    /// Materials of bed and beams.
    pub bed_materials: Vec<BedMaterial>,
    /// How kinds of drives are lubricated.
    pub lubrications: Vec<Lubrication>,
    /// Surroundings and what they ask.
    pub surroundings: Vec<Surroundings>,
    /// Running in and inspection.
    pub upkeeps: Vec<Upkeep>,
    /// Exchange of parts.
    pub exchanges: Vec<Exchange>,
    /// Lines of the lists for the workshop.
    pub workshop_lines: Vec<WorkshopLine>,
    /// What is said of exchanges.
    pub exchange_phrases: Vec<ExchangePhrase>,
    /// Prices and hours that belong to no single part.
    pub prices: PriceBasis,
    /// The files that were read, as name and text, in the order they were read.
    pub files: Vec<(String, String)>,
    /// How many of the files belong to each layer: the built-in one, then one a folder.
    pub layers: Vec<usize>,
}

/// The parts of every kind while files are being read.
#[derive(Debug, Clone, Default)]
#[allow(missing_docs)]
pub struct Lists {
    pub ball_screws: Vec<BallScrew>,
    pub screw_grades: Vec<ScrewGrade>,
    pub preload_classes: Vec<PreloadClass>,
    pub end_arrangements: Vec<EndArrangement>,
    pub screw_bearings: Vec<ScrewBearing>,
    pub screw_supports: Vec<ScrewSupport>,
    pub nut_units: Vec<NutUnit>,
    pub screw_reductions: Vec<ScrewReduction>,
    pub racks: Vec<Rack>,
    pub rack_grades: Vec<RackGrade>,
    pub pinions: Vec<Pinion>,
    pub gearboxes: Vec<Gearbox>,
    pub pinion_biases: Vec<PinionBias>,
    pub steels: Vec<Steel>,
    pub servo_motors: Vec<ServoMotor>,
    pub linear_scales: Vec<LinearScale>,
    pub error_tables: Vec<ErrorTable>,
    pub bed_materials: Vec<BedMaterial>,
    pub lubrications: Vec<Lubrication>,
    pub surroundings: Vec<Surroundings>,
    pub upkeeps: Vec<Upkeep>,
    pub exchanges: Vec<Exchange>,
    pub workshop_lines: Vec<WorkshopLine>,
    pub exchange_phrases: Vec<ExchangePhrase>,
    pub prices: Vec<PriceBasis>,
}

impl Lists {
    fn into_catalog(self, prices: PriceBasis, layers: Vec<Vec<(String, String)>>) -> Catalog {
        Catalog {
            ball_screws: self.ball_screws,
            screw_grades: self.screw_grades,
            preload_classes: self.preload_classes,
            end_arrangements: self.end_arrangements,
            screw_bearings: self.screw_bearings,
            screw_supports: self.screw_supports,
            nut_units: self.nut_units,
            screw_reductions: self.screw_reductions,
            racks: self.racks,
            rack_grades: self.rack_grades,
            pinions: self.pinions,
            gearboxes: self.gearboxes,
            pinion_biases: self.pinion_biases,
            steels: self.steels,
            servo_motors: self.servo_motors,
            linear_scales: self.linear_scales,
            error_tables: self.error_tables,
            bed_materials: self.bed_materials,
            lubrications: self.lubrications,
            surroundings: self.surroundings,
            upkeeps: self.upkeeps,
            exchanges: self.exchanges,
            workshop_lines: self.workshop_lines,
            exchange_phrases: self.exchange_phrases,
            prices,
            layers: layers.iter().map(Vec::len).collect(),
            files: layers.into_iter().flatten().collect(),
        }
    }
}

impl BallScrew {
    /// Whether a rating of the nut is not stated, so that it has to be estimated from geometry.
    pub fn rating_is_estimated(&self) -> bool {
        self.dynamic_rating.is_none() || self.static_rating.is_none()
    }
}

impl ScrewGrade {
    /// Highest ball circulation speed of a screw made this way, by its recirculation.
    pub fn circulation_limit(&self, screw: &BallScrew) -> crate::units::CirculationSpeed {
        match screw.recirculation.as_str() {
            "tube" => self.circulation_tube,
            "end-cap" => self.circulation_end_cap,
            "high-speed" => self.circulation_high_speed,
            _ => self.circulation_deflector,
        }
    }
}

impl Catalog {
    /// The steel with this designation.
    pub fn steel(&self, designation: &str) -> Option<&Steel> {
        self.steels.iter().find(|steel| steel.designation == designation)
    }
}
