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
        /// Bore through the screw; 0 for a solid one.
        bore: Length, "mm", NotNegative;
        /// How the balls get back to the start of their turns.
        recirculation: String, "text", OneOf(&["tube", "deflector", "end-cap", "high-speed"]);
        /// Highest acceleration at which the balls still roll.
        acceleration_limit: Acceleration, "m/s²", Positive;
        /// Loaded turns of balls in one nut.
        turns: Ratio, "1", Positive;
        /// Basic dynamic axial load rating C_a, before the grade's factors; left out it is estimated from geometry.
        dynamic_rating: Option<Force>, "kN", Positive;
        /// Basic static axial load rating C_0a, before the grade's factors; left out it is estimated from geometry.
        static_rating: Option<Force>, "kN", Positive;
        /// Outside diameter of the nut body.
        nut_diameter: Length, "mm", Positive;
        /// Length of one nut.
        nut_length: Length, "mm", Positive;
        /// Mass of one nut.
        nut_mass: Mass, "kg", Positive;
        /// Stiffness of the preloaded nut at a preload of 5 % of C_a, manufacturing deviations included.
        nut_stiffness: Stiffness, "N/µm", Positive;
        /// Price against a solid screw of this size with ordinary recirculation.
        price_factor: Ratio, "1", Positive;
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
        /// Factor on both load ratings of the screw for its accuracy.
        rating_factor: Ratio, "1", Share;
        /// Vickers hardness HV 10 of the grooves.
        surface_hardness: Ratio, "1", Positive;
        /// Factor on the dynamic rating for the melt of the steel: 1 melted in air.
        melt_factor: Ratio, "1", Positive;
        /// Factor on the dynamic rating for the temperature in service: 1 up to 100 °C.
        temperature_factor: Ratio, "1", Share;
        /// Highest nominal diameter times speed of rotation with outer return tubes.
        circulation_tube: CirculationSpeed, "mm/min", Positive;
        /// The same with inner deflectors.
        circulation_deflector: CirculationSpeed, "mm/min", Positive;
        /// The same with end caps.
        circulation_end_cap: CirculationSpeed, "mm/min", Positive;
        /// The same with returns made for high speed.
        circulation_high_speed: CirculationSpeed, "mm/min", Positive;
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
        /// Ends that take axial force.
        thrust_ends: Ratio, "1", Positive;
        /// Bearing sets at each end that takes axial force.
        fixed_bearings: u32, "count", Positive;
        /// Radial bearings at the other end.
        supports: u32, "count", NotNegative;
        /// Stretch between the ends when mounted, as the warming that would undo it.
        stretch: TemperatureInterval, "K", NotNegative;
    }

    /// What holds a long screw up between nut and ends: nothing, or supports that travel with the nut.
    ScrewSupport, "screw-support", screw_supports {
        /// Pairs of linked supports, one on each side of the nut, each kept midway between nut and end.
        pairs: u32, "count", NotNegative;
        /// Highest speed of the axis.
        speed_limit: Velocity, "m/min", Positive;
        /// Mass of the supports of a screw of 32 mm; grows with the diameter.
        mass: Mass, "kg", NotNegative;
        /// Length of screw that they take up, in nominal diameters.
        room: Ratio, "1", NotNegative;
        /// Price of the supports of a screw of 32 mm; grows as its diameter to the power 0.8.
        price: Money, "nu", NotNegative;
    }

    /// A set of preloaded angular contact bearings that holds one end of a screw.
    ScrewBearing, "screw-bearing", screw_bearings {
        /// Bore.
        bore: Length, "mm", Positive;
        /// How many bearings work together: pair, triple or quad.
        set: String, "text", Words;
        /// Basic dynamic axial load rating of the set, against the side with more rows.
        rating: Force, "kN", Positive;
        /// The same against the side with fewer rows; as `rating` if left out.
        lesser_rating: Option<Force>, "kN", Positive;
        /// Basic static axial load rating of the set, against the side with fewer rows.
        static_rating: Force, "kN", Positive;
        /// Preload of the set.
        preload: Force, "kN", Positive;
        /// Axial stiffness of the preloaded set.
        stiffness: Stiffness, "N/µm", Positive;
        /// Stiffness of the set against tilting, seat and housing included.
        tilt_stiffness: TorsionalStiffness, "kN·m/rad", Positive;
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
        /// Basic dynamic axial load rating of the bearing, in one direction.
        rating: Force, "kN", Positive;
        /// Basic static axial load rating of the bearing, in one direction.
        static_rating: Force, "kN", Positive;
        /// Preload of the bearing.
        preload: Force, "kN", Positive;
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
