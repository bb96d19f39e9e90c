//! Every formula of the library, for `calc` and `explain`.
//!
//! Method: one line a formula; a test compares the list with the source files. Limits: none.

use super::generic::Plain;
use crate::formula::*;

/// Every formula, filed as the source files are.
pub(super) static FORMULAS: &[&dyn Plain] = &[
    &bolt::BOLT_PRELOAD,
    &bolt::TIGHTENING_TORQUE,
    &brake::HOLDING_TORQUE,
    &brake::REDUCED_MASS,
    &brake::FALL_ACCELERATION,
    &brake::BRAKE_DECELERATION,
    &brake::STOPPING_DISTANCE,
    &brake::BRAKE_WORK,
    &brake::BRAKE_HOLDING_TORQUE,
    &brake::BUFFER_STROKE,
    &budget::ROOT_SUM_SQUARE_2,
    &budget::ROOT_SUM_SQUARE_3,
    &budget::ROOT_SUM_SQUARE_4,
    &budget::LOST_MOTION,
    &budget::REVERSAL_ERROR,
    &budget::REPEATABILITY,
    &budget::BIDIRECTIONAL_ACCURACY,
    &budget::SYSTEMATIC_DEVIATION,
    &budget::TOOL_ERROR,
    &budget::SCATTER,
    &budget::SCALE_ERROR,
    &column::COLUMN_LOAD,
    &column::CLAMPED_COLUMN_LOAD,
    &cost::SCREW_PRICE,
    &cost::SUM_5,
    &cost::TIMES,
    &cost::LENGTH_PRICE,
    &cost::FITTING_PRICE,
    &cost::ENERGY_COST,
    &cost::ANNUITY,
    &cost::WHOLE_LIFE_COST,
    &duty::MOVING_MASS,
    &duty::LOAD_SHARE,
    &duty::DRIVEN_MASS,
    &duty::AXIAL_FORCE,
    &duty::FRICTION_FORCE,
    &duty::GRAVITY_FORCE,
    &duty::PEAK_FORCE,
    &duty::MEAN_LOAD,
    &duty::MEAN_FORCE,
    &duty::PER_DRIVE_FORCE,
    &dynamics::GAIN_LIMIT,
    &dynamics::CIRCLE_ERROR,
    &envelope::WEAKENED_PEAK_TORQUE,
    &envelope::WEAKENED_TORQUE_USE,
    &envelope::UNWEAKENED_CONTINUOUS_TORQUE,
    &gantry::NEAR_SHARE,
    &gantry::FAR_MASS,
    &gantry::SIDE_FORCE,
    &gantry::SIDE_DIFFERENCE,
    &gantry::RACKING_FORCE,
    &gantry::YAW_ANGLE,
    &gantry::YAW_AT_TOOL,
    &gantry::FORCE_SUM,
    &gantry::LOST_SIDE_FORCE,
    &gantry::LOST_SIDE_MOMENT,
    &gantry::LOST_SIDE_LEAD,
    &gantry::LOST_SIDE_YAW,
    &gantry::RACKING_TORQUE,
    &gantry::RACKED_TORQUE,
    &gantry::RACKED_RMS_TORQUE,
    &gear_accuracy::TOTAL_PITCH_DEVIATION,
    &gear_accuracy::SINGLE_PITCH_DEVIATION,
    &gear_accuracy::BACKLASH_AT_RACK,
    &gear_geometry::PINION_DIAMETER,
    &gear_geometry::TRAVEL_PER_TURN,
    &gear_geometry::LEAST_PROFILE_SHIFT,
    &gear_geometry::LEAST_TEETH,
    &gear_geometry::TRANSVERSE_CONTACT_RATIO,
    &gear_geometry::OVERLAP_RATIO,
    &gear_geometry::TOTAL_CONTACT_RATIO,
    &gear_geometry::TIP_THICKNESS,
    &gear_geometry::RADIAL_LOAD,
    &gearbox::GEARBOX_LINEAR_STIFFNESS,
    &gearbox::OUTPUT_TORQUE,
    &gearbox::OUTPUT_SHAFT_STIFFNESS,
    &gearbox::STOP_TORQUE,
    &gearbox::RADIAL_CAPACITY,
    &gearbox::MESH_EFFICIENCY,
    &inertia::MASS_INERTIA,
    &inertia::SCREW_INERTIA,
    &inertia::DISC_INERTIA,
    &inertia::ROTATING_INERTIA,
    &inertia::LOAD_INERTIA,
    &inertia::INERTIA_RATIO,
    &stop::SET_TORQUE,
    &stop::STOP_TORQUE_WITH_WEIGHT,
    &stop::REDUCTION_STOP_TORQUE,
    &stop::STOP_FORCE,
    &stop::SEAT_DIAMETER,
    &stop::SEAT_STRESS,
    &stop::SEAT_STIFFNESS,
    &stop::SERIES_2,
    &stop::GEARBOX_DRAG,
    &stop::NUT_HEAT,
    &stop::SUPPLY_POWER,
    &layout::JOURNAL_LENGTH,
    &layout::RIDING_NUTS,
    &layout::RIDING_UNITS,
    &layout::RIDING_NUT_DRIVES,
    &layout::NUT_UNIT_MISFIT,
    &layout::CUTTING_SHARE,
    &layout::SHARED_FORCE,
    &layout::RATED_FORCE,
    &layout::LENGTH_LIMIT,
    &layout::PRODUCT,
    &layout::SETS_DRAG,
    &layout::TORQUE_SUM,
    &layout::SHAFT_TORQUE,
    &layout::ENCODER_STEP,
    &layout::TEMPERATURE_SUM,
    &layout::LESSER_LENGTH,
    &layout::LENGTH_SUM,
    &layout::SCREW_DRIVE_MASS,
    &layout::RIDING_DRIVE_MASS,
    &layout::FORCE_TORQUE,
    &layout::SERVICE_HOURS,
    &layout::SAME_LENGTH,
    &layout::SAME_TEMPERATURE,
    &lead_accuracy::MEAN_TRAVEL_DEVIATION,
    &lead_accuracy::TRAVEL_VARIATION,
    &matching::LOAD_RMS_TORQUE,
    &matching::LOAD_RMS_ACCELERATION,
    &matching::OPTIMUM_RATIO,
    &matching::OPTIMUM_LEAD,
    &matching::INERTIA_RATIO_TARGET,
    &matching::FIRST_MODE_TARGET,
    &mesh::MESH_STIFFNESS,
    &mesh::CONTACT_LINE_MINIMUM,
    &mesh::CONTACT_LINE_MAXIMUM,
    &mesh::MESH_RIPPLE,
    &motion::TRAPEZOID_TIME,
    &motion::MOVE_TIME,
    &motion::MEAN_SPEED,
    &motion::SERVICE_DISTANCE,
    &motion::SHAFT_SPEED,
    &motion::GEARED_SPEED,
    &motor::PHASE_TORQUE,
    &motor::PEAK_TORQUE,
    &motor::AVAILABLE_PEAK_TORQUE,
    &motor::PEAK_TORQUE_USE,
    &motor::RMS_TORQUE,
    &motor::RMS_SPEED,
    &motor::CONTINUOUS_TORQUE,
    &motor::PEAK_POWER,
    &motor::MEAN_POWER,
    &moves::MEAN_STROKE,
    &moves::MOVES_PER_HOUR,
    &overload::OVERLOAD_TIME,
    &overload::WINDING_HEAT,
    &overload::STANDING_TORQUE,
    &overload::SHORT_TIME_FACTOR,
    &overload::INTERMITTENT_FACTOR,
    &pricing::SUPPORT_PRICE,
    &pricing::CLAMPS_PRICE,
    &pricing::RACK_LINE_PRICE,
    &pricing::PINION_PRICE,
    &pricing::PRICE_SUM,
    &pricing::FASTENING_PRICE,
    &pricing::SCALE_PRICE,
    &pricing::UPKEEP_PRICE,
    &pricing::PURCHASE_COST,
    &site::VOLTAGE_FACTOR,
    &site::SPEED_AT_VOLTAGE,
    &site::SITE_FACTOR,
    &site::TORQUE_AT_SITE,
    &rack::RACK_LENGTH,
    &rack::SEGMENTS,
    &rack::FASTENERS,
    &rack::CUMULATIVE_PITCH_ERROR,
    &rack::MOUNT_STIFFNESS,
    &rack::SLIP_FORCE,
    &rack::RACK_MASS,
    &rack::SEGMENT_PITCH_ERROR,
    &rack::PINION_MASS,
    &rating::DYNAMIC_RATING,
    &rating::STATIC_RATING,
    &rolling_life::NUT_LIFE,
    &rolling_life::HALF_LOAD,
    &rolling_life::PAIR_LIFE,
    &rolling_life::PRELOADED_NUT_LIFE,
    &rolling_life::LIFE_HOURS,
    &rolling_life::STATIC_SAFETY,
    &rolling_life::BEARING_PAIR_LIFE,
    &screw::FREE_LENGTH,
    &screw::SCREW_LENGTH,
    &screw::CIRCULATION_SPEED,
    &screw::LEAD_ANGLE,
    &screw::SCREW_EFFICIENCY,
    &screw::BACK_DRIVING_EFFICIENCY,
    &screw::PRELOAD,
    &screw::PRELOAD_DRAG,
    &screw::SCREW_TORQUE,
    &screw::SCREW_MASS,
    &shaft::WHIP_SPEED,
    &shaft::HOLLOW_WHIP_SPEED,
    &shaft::TENSION_WHIP_FACTOR,
    &shaft::SCREW_SAG,
    &shaft::WEIGHT_ON_NUT,
    &shaft::WHIP_DISTANCE,
    &shaft::BOW_AMPLIFICATION,
    &stiffness::CORE_DIAMETER,
    &stiffness::SCREW_STIFFNESS,
    &stiffness::SCREW_END_STIFFNESS,
    &stiffness::SCREW_TORSION,
    &stiffness::LINEAR_OF_TORSIONAL,
    &stiffness::NUT_STIFFNESS,
    &stiffness::SERIES_4,
    &stiffness::SERIES_5,
    &stiffness::NATURAL_FREQUENCY,
    &stiffness::DEFLECTION,
    &thermal::THERMAL_GROWTH,
    &thermal::HEAT_FLOW,
    &thermal::SCREW_WARMING,
    &tooth_strength::TIP_FORM_FACTOR,
    &tooth_strength::TIP_STRESS_CORRECTION,
    &tooth_strength::PINION_CYCLES,
    &tooth_strength::RACK_CYCLES,
    &tooth_strength::PINION_PITTING_FORCE,
    &tooth_strength::RACK_PITTING_FORCE,
    &tooth_strength::PINION_ROOT_FORCE,
    &tooth_strength::RACK_ROOT_FORCE,
    &tooth_strength::LEAST_4,
];

#[cfg(test)]
mod tests {
    use super::FORMULAS;

    /// Arguments that the equation does not read in every case, by id and name.
    const NOT_ALWAYS_READ: &[(&str, &str)] = &[
        // one drive shares with nobody
        ("cutting-share", "drives"),
        ("cutting-share", "carriage-reach"),
        // the grade speaks for positioning screws, the variation within 300 mm for transport screws
        ("mean-travel-deviation", "grade-number"),
        ("mean-travel-deviation", "variation-300"),
        ("travel-variation", "grade-number"),
        ("travel-variation", "variation-300"),
        // only where the load drives
        ("phase-torque", "back-efficiency"),
        // a motor beyond its speed limit gives nothing, whatever its torque
        ("peak-torque-use", "peak-torque"),
        ("peak-torque-use", "knee-speed"),
        // one segment has no joint
        ("cumulative-pitch-error", "joint-step"),
        // one thrust end
        ("screw-stiffness", "length"),
    ];

    #[test]
    fn the_note_of_a_formula_names_each_of_its_arguments_once() {
        for formula in FORMULAS {
            let inputs = formula.note().inputs;
            assert_eq!(inputs.len(), formula.arguments().len(), "{}", formula.note().id);
            for (place, (_, name)) in inputs.iter().enumerate() {
                assert!(inputs[..place].iter().all(|(_, other)| other != name), "{}: {name} twice", formula.note().id);
            }
        }
    }

    #[test]
    fn a_missing_value_never_becomes_a_number() {
        let mut hidden = Vec::new();
        for formula in FORMULAS {
            let note = formula.note();
            let count = formula.arguments().len();
            for missing in 0..count {
                for base in [0.3, 1.0, 3.0, 20.0] {
                    let values: Vec<[f64; 1]> = (0..count).map(|index| [base * (1.0 + 0.01 * index as f64)]).collect();
                    let mut slices: Vec<&[f64]> = values.iter().map(|value| &value[..]).collect();
                    slices[missing] = &[f64::NAN];
                    if !formula.apply(&slices).is_nan() {
                        hidden.push((note.id, note.inputs[missing].1));
                        break;
                    }
                }
            }
        }
        hidden.retain(|pair| !NOT_ALWAYS_READ.contains(pair));
        assert!(hidden.is_empty(), "a missing value is hidden: {hidden:#?}");
    }
}
