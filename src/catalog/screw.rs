//! The parts of a ball screw axis: screw with nut, lead grade, preload, ends and bearings.
//!
//! Sizes and leads follow ISO 3408-2, grades ISO 3408-3. A screw is described as one half of the nut; what
//! grade and preload do to it stands with the grade and the preload class, so that they combine freely.

use super::part::{Accept::*, parts};
use crate::units::*;

parts! {
    /// A ball screw with its nut, one size of nominal diameter and lead.
    BallScrew, "ball-screw", ball_screws {
        /// Nominal diameter d₀.
        nominal_diameter: Length, "mm", Positive;
        /// Lead: travel for one turn.
        lead: Length, "mm", Positive;
        /// Starts of the thread.
        starts: u32, "count", Positive;
        /// Ball diameter D_w.
        ball_diameter: Length, "mm", Positive;
        /// Ball circle diameter D_pw.
        ball_circle_diameter: Length, "mm", Positive;
        /// Root diameter of the screw.
        root_diameter: Length, "mm", Positive;
        /// Loaded turns of balls in one nut.
        turns: Ratio, "1", Positive;
        /// Basic dynamic axial load rating C_a, before the grade's rating factor.
        dynamic_rating: Force, "kN", Positive;
        /// Basic static axial load rating C_0a, before the grade's rating factor.
        static_rating: Force, "kN", Positive;
        /// Outside diameter of the nut body.
        nut_diameter: Length, "mm", Positive;
        /// Length of one nut.
        nut_length: Length, "mm", Positive;
        /// Mass of one nut.
        nut_mass: Mass, "kg", Positive;
        /// Stiffness of the preloaded nut at a preload of 5 % of C_a, manufacturing deviations included.
        nut_stiffness: Stiffness, "N/µm", Positive;
    }

    /// A way of making screws and the lead accuracy that it gives.
    ScrewGrade, "screw-grade", screw_grades {
        /// How the thread is made: rolled or ground.
        manufacture: String, "text", Words;
        /// Lead accuracy grade by ISO 3408-3.
        grade: u32, "count", NotNegative;
        /// True for a positioning screw (P), false for a transport screw (T).
        positioning: bool, "flag", Any;
        /// Permissible travel variation within 300 mm, v_300p.
        variation_300: Length, "µm", Positive;
        /// Permissible travel variation within one turn, v_2πp.
        turn_variation: Length, "µm", Positive;
        /// Factor on both load ratings of the screw.
        rating_factor: Ratio, "1", Share;
        /// Highest ball circulation speed: nominal diameter times speed of rotation.
        circulation_limit: CirculationSpeed, "mm/min", Positive;
        /// Longest screw, in nominal diameters.
        length_per_diameter: Ratio, "1", Positive;
        /// Longest screw whatever the diameter.
        length_limit: Length, "m", Positive;
        /// Largest nominal diameter made.
        diameter_limit: Length, "mm", Positive;
        /// Apparent friction coefficient of the loaded nut.
        friction: Ratio, "1", Positive;
        /// Price against a rolled screw of grade 7.
        price_factor: Ratio, "1", Positive;
        /// Factor on the nut stiffness of the screw.
        rigidity_factor: Ratio, "1", Positive;
        /// Parallelism of screw and guide, over the travel.
        guide_parallelism: Option<Length>, "µm", Positive;
        /// How far bearing seats and nut seat may lie off one line.
        seat_alignment: Option<Length>, "µm", Positive;
        /// Squareness of the seats of nut and bearings with the screw, on 100 mm.
        seat_squareness: Option<Length>, "µm", Positive;
    }

    /// A preload of the nut.
    PreloadClass, "preload-class", preload_classes {
        /// Preload over the dynamic rating.
        share: Ratio, "1", ShareOrZero;
        /// Axial clearance of the nut.
        clearance: Length, "µm", NotNegative;
        /// Price of the nut against a single nut.
        nut_price_factor: Ratio, "1", Positive;
    }

    /// How the two ends of a screw are held.
    EndArrangement, "end-arrangement", end_arrangements {
        /// Bending eigenvalue squared, λ², for the whip speed.
        eigenvalue_squared: Ratio, "1", Positive;
        /// Buckling factor N: Euler load over that of a column with both ends supported.
        buckling_factor: Ratio, "1", Positive;
        /// Ends that take axial force.
        thrust_ends: Ratio, "1", Positive;
        /// Bearing sets at each end that takes axial force.
        fixed_bearings: u32, "count", Positive;
        /// Radial bearings at the other end.
        supports: u32, "count", NotNegative;
    }

    /// A set of preloaded angular contact bearings that holds one end of a screw.
    ScrewBearing, "screw-bearing", screw_bearings {
        /// Bore.
        bore: Length, "mm", Positive;
        /// How many bearings work together: pair, triple or quad.
        set: String, "text", Words;
        /// Basic dynamic axial load rating of the set, in one direction.
        rating: Force, "kN", Positive;
        /// Preload of the set.
        preload: Force, "kN", Positive;
        /// Axial stiffness of the preloaded set.
        stiffness: Stiffness, "N/µm", Positive;
        /// Highest speed with grease.
        speed_limit: AngularVelocity, "1/min", Positive;
        /// Drag of the preloaded set with its seals.
        drag: Torque, "N·m", NotNegative;
        /// Price of the set.
        price: Money, "nu", Price;
        /// Mass of the set with its locknut.
        mass: Mass, "kg", Positive;
    }

    /// What turns the nut of a standing screw: the nut's own bearing in a housing, with the seat of the belt pulley.
    NutUnit, "nut-unit", nut_units {
        /// Nominal diameter of the screws whose nuts it takes.
        nominal_diameter: Length, "mm", Positive;
        /// Moment of inertia of all that turns, the nut included, without the pulley.
        inertia: MomentOfInertia, "kg·cm²", Positive;
        /// Highest speed of the nut.
        speed_limit: AngularVelocity, "1/min", Positive;
        /// Axial stiffness of bearing and housing.
        stiffness: Stiffness, "N/µm", Positive;
        /// Drag of the preloaded bearing with its seals.
        drag: Torque, "N·m", NotNegative;
        /// Mass without the nut.
        mass: Mass, "kg", Positive;
        /// Price without the nut.
        price: Money, "nu", Price;
    }

    /// What joins the motor and the screw or the driven nut: a coupling (ratio 1) or a toothed belt.
    ScrewReduction, "screw-reduction", screw_reductions {
        /// A coupling between the shafts (direct) or a toothed belt (belt).
        kind: String, "text", OneOf(&["direct", "belt"]);
        /// Turns of the motor for one turn of screw or nut.
        ratio: Ratio, "1", Positive;
        /// Efficiency.
        efficiency: Ratio, "1", Share;
        /// Moment of inertia, at the motor.
        inertia: MomentOfInertia, "kg·cm²", Positive;
        /// Torsional stiffness of a coupling; that of a belt is worked out.
        torsional_stiffness: Option<TorsionalStiffness>, "kN·m/rad", Positive;
        /// Rated torque of a coupling; that of a belt is worked out.
        rated_torque: Option<Torque>, "N·m", Positive;
        /// Pitch of a belt; this and the next seven are left out for a coupling.
        belt_pitch: Option<Length>, "mm", Positive;
        /// Width of a belt.
        belt_width: Option<Length>, "mm", Positive;
        /// Teeth of the pulley on the motor.
        driving_teeth: Option<Ratio>, "1", Positive;
        /// Distance of the shafts.
        centre_distance: Option<Length>, "mm", Positive;
        /// Force of a belt at unit strain, for each width.
        specific_stiffness: Option<LineLoad>, "kN/mm", Positive;
        /// Permissible pull of a belt with six teeth or more in mesh, for each width.
        pull_per_width: Option<LineLoad>, "N/mm", Positive;
        /// Mass of a belt, for each length.
        belt_mass: Option<LinearMassDensity>, "kg/m", Positive;
        /// Highest speed of a belt.
        belt_speed_limit: Option<Velocity>, "m/s", Positive;
        /// Highest speed, at the motor.
        speed_limit: AngularVelocity, "1/min", Positive;
        /// Mass.
        mass: Mass, "kg", Positive;
        /// Price.
        price: Money, "nu", Price;
    }
}
