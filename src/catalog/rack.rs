//! The parts of a rack and pinion axis: rack, tooth quality, pinion, gearbox and the steels of the teeth.
//!
//! Modules follow ISO 54, tooth form ISO 53 profile A. Helical teeth have the metric helix: a transverse
//! pitch of 10/3 modules, so that the travel for one turn is a round number.

use super::part::{Accept::*, parts};
use crate::units::*;

parts! {
    /// A rack of one module with its fasteners; price at quality 6, hardened and ground.
    Rack, "rack", racks {
        /// Normal module.
        module: Length, "mm", Positive;
        /// True for helical teeth at the metric helix, false for straight teeth.
        helical: bool, "flag", Any;
        /// Height of the section over the tooth tips.
        section_height: Length, "mm", Positive;
        /// Width of the section.
        section_width: Length, "mm", Positive;
        /// Width of the teeth that carry.
        face_width: Length, "mm", Positive;
        /// Mass of the toothed bar.
        mass_per_length: LinearMassDensity, "kg/m", Positive;
        /// Thread of the fasteners.
        fastener_thread: String, "text", Words;
        /// Distance of the fasteners along the rack.
        fastener_pitch: Length, "mm", Positive;
        /// Nominal diameter of the fastener thread.
        fastener_diameter: Length, "mm", Positive;
        /// Pitch of the fastener thread.
        fastener_thread_pitch: Length, "mm", Positive;
        /// Proof strength R_p0.2 of the fasteners.
        fastener_strength: Pressure, "MPa", Positive;
        /// Stiffness along the rack of the joint at one fastener.
        fastener_stiffness: Stiffness, "N/µm", Positive;
        /// Price of one fastener.
        fastener_price: Money, "nu", Price;
        /// Locating pins in each segment.
        pins_per_segment: u32, "count", NotNegative;
        /// Diameter of a locating pin; pins of unknown diameter hold nothing.
        pin_diameter: Option<Length>, "mm", Positive;
        /// Shear stress that a pin in its bore bears.
        pin_strength: Option<Pressure>, "MPa", Positive;
        /// Price of a metre at quality 6, hardened and ground.
        price_per_metre: Money, "nu", Price;
        /// Price of one joint with its pins.
        joint_price: Money, "nu", Price;
        /// Price of the counter-rack gauge that sets the joints, once for an axis.
        counter_gauge_price: Money, "nu", Price;
        /// Play set between pinion and rack at the tightest place.
        play: Length, "µm", Positive;
    }

    /// How rack and pinion are made: quality, finish, steels and what they allow.
    RackGrade, "rack-grade", rack_grades {
        /// Tooth quality number, the smaller the finer (5 to 10).
        quality: u32, "count", Positive;
        /// How the teeth are finished.
        finish: String, "text", Words;
        /// Designation of the steel of the rack.
        steel: String, "text", Words;
        /// Designation of the steel of the pinion.
        pinion_steel: String, "text", Words;
        /// Full band of the cumulative pitch error of one metre.
        pitch_error_per_metre: Length, "µm", Positive;
        /// Full band of the pitch step at a joint set with a gauge.
        joint_step: Length, "µm", Positive;
        /// Nominal length of a segment.
        segment_length: Length, "m", Positive;
        /// Flatness of the seat and straightness of the shoulder, on a metre.
        seat_straightness: Option<Length>, "µm", Positive;
        /// Parallelism of the shoulder with the guide, over the whole length.
        guide_parallelism: Option<Length>, "µm", Positive;
        /// Squareness of the pinion axis with the rack, on 100 mm.
        pinion_squareness: Option<Length>, "µm", Positive;
        /// By how much the height of the line over its datum varies, once mounted.
        height_waviness: Length, "µm", Positive;
        /// Highest speed of open greased helical teeth.
        speed_limit_helical: Velocity, "m/s", Positive;
        /// Highest speed of open greased straight teeth.
        speed_limit_straight: Velocity, "m/s", Positive;
        /// Price against quality 6, hardened and ground.
        price_factor: Ratio, "1", Positive;
        /// Face load factor K_Hβ that is counted at least: crowning and what no alignment takes away.
        face_load_factor: Ratio, "1", Positive;
        /// Part B_2 of the misalignment that the teeth feel: 1 plain, 0.5 crowned with a checked contact pattern.
        misalignment_share: Ratio, "1", Share;
        /// Film factor Z_L·Z_v·Z_R of the flanks: 0.92 if one side is ground, 0.85 if both are milled.
        film_factor: Ratio, "1", Share;
        /// Mean roughness depth Rz of the roots.
        root_roughness: Length, "µm", Positive;
    }

    /// The teeth of a pinion, for any module.
    Pinion, "pinion", pinions {
        /// Number of teeth.
        teeth: u32, "count", Positive;
        /// True for helical teeth at the metric helix, false for straight teeth.
        helical: bool, "flag", Any;
        /// Profile shift factor x.
        profile_shift: Ratio, "1", Any;
    }

    /// A planetary gearbox of one frame, ratio and play.
    Gearbox, "gearbox", gearboxes {
        /// Name of the frame size.
        frame: String, "text", Words;
        /// Stages.
        stages: u32, "count", Positive;
        /// Turns of the input for one turn of the output.
        ratio: Ratio, "1", Positive;
        /// Acceleration torque, at the output, up to 1000 starts an hour.
        acceleration_torque: Torque, "N·m", Positive;
        /// Continuous torque, at the output.
        continuous_torque: Torque, "N·m", Positive;
        /// Emergency stop torque, at the output, up to 1000 times in its life.
        stop_torque: Torque, "N·m", Positive;
        /// Nominal input speed.
        nominal_speed: AngularVelocity, "1/min", Positive;
        /// Highest input speed.
        speed_limit: AngularVelocity, "1/min", Positive;
        /// Play at the output.
        play: Angle, "arcmin", NotNegative;
        /// Torsional stiffness at the output.
        torsional_stiffness: TorsionalStiffness, "N·m/arcmin", Positive;
        /// Moment of inertia at the input.
        inertia: MomentOfInertia, "kg·cm²", Positive;
        /// Radial force that the output bears at the pinion for 1.2·10⁸ turns (20 000 h at 100 1/min).
        radial_limit: Force, "N", Positive;
        /// Axial force that the output bears.
        axial_limit: Force, "N", Positive;
        /// Side of the flange.
        frame_size: Length, "mm", Positive;
        /// Distance of the two output bearings.
        bearing_span: Length, "mm", Positive;
        /// Distance from the front bearing to the middle of the pinion.
        overhang: Length, "mm", Positive;
        /// Diameter of the output shaft.
        shaft_diameter: Length, "mm", Positive;
        /// Stiffness of the output bearings against tilting.
        tilt_stiffness: TorsionalStiffness, "N·m/arcmin", Positive;
        /// Mass.
        mass: Mass, "kg", Positive;
        /// Efficiency at rated load.
        efficiency: Ratio, "1", Share;
        /// Torque that turns the unloaded gearbox, at the input and at nominal speed.
        no_load_torque: Torque, "N·m", NotNegative;
        /// Price.
        price: Money, "nu", Price;
    }

    /// By how much two pinions press against each other.
    PinionBias, "pinion-bias", pinion_biases {
        /// Bias over the acceleration torque of the gearbox.
        share: Ratio, "1", Share;
    }

    /// A gear steel with its treatment and the stress limits of ISO 6336-5.
    Steel, "steel", steels {
        /// Treatment, which picks life, notch, size and surface factors of the root; quenched and tempered is `through-hardened`, normalised `soft`.
        kind: String, "text", OneOf(&["case-hardened", "induction-hardened", "through-hardened", "soft"]);
        /// Hardness at the tooth surface.
        surface_hardness: String, "text", Words;
        /// Allowable contact stress number σ_Hlim.
        contact_limit: Pressure, "MPa", Positive;
        /// Nominal bending stress number σ_Flim.
        bending_limit: Pressure, "MPa", Positive;
    }
}
