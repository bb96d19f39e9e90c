//! The list of characteristics: name, quantity, id, symbol, unit and words, in working order.

use crate::formula::MOST_PHASES;
use crate::ledger::{About, Characteristic, PhaseCharacteristic};
use crate::units::*;

macro_rules! characteristics {
    (
        single { $($name:ident: $quantity:ident, $id:literal, $symbol:literal, $unit:literal, $words:literal;)* }
        phased { $($phased:ident: $phased_quantity:ident, $phased_id:literal, $phased_symbol:literal, $phased_unit:literal, $phased_words:literal;)* }
    ) => {
        #[allow(non_camel_case_types, clippy::upper_case_acronyms)]
        enum Single { $($name,)* COUNT }
        #[allow(non_camel_case_types, clippy::upper_case_acronyms)]
        enum Phased { $($phased,)* COUNT }
        pub(super) const SINGLES: usize = Single::COUNT as usize;
        /// How many slots the ledger has.
        pub const SLOTS: usize = SINGLES + Phased::COUNT as usize * MOST_PHASES;
        $(
            #[doc = $words]
            pub const $name: Characteristic<$quantity> = Characteristic::at_slot(Single::$name as usize);
        )*
        $(
            #[doc = $phased_words]
            pub const $phased: PhaseCharacteristic<$phased_quantity> =
                PhaseCharacteristic::at_slot(SINGLES + Phased::$phased as usize * MOST_PHASES);
        )*
        pub(super) static ABOUT: &[About] = &[
            $(About { id: $id, symbol: $symbol, unit: $unit, words: $words, phased: false, dimension: <$quantity as Measure>::DIMENSION },)*
            $(About { id: $phased_id, symbol: $phased_symbol, unit: $phased_unit, words: $phased_words, phased: true, dimension: <$phased_quantity as Measure>::DIMENSION },)*
        ];
    };
}

characteristics! {
    single {
        // what the brief asks of the axis
        TRAVEL: Length, "travel", "s", "mm", "travel of the axis";
        OVERTRAVEL: Length, "overtravel", "s_o", "mm", "overtravel at each end";
        SPEED: Velocity, "speed", "v", "m/min", "highest speed of the axis";
        ACCELERATION: Acceleration, "acceleration", "a", "m/s²", "acceleration of the axis";
        JERK: Jerk, "jerk", "j_a", "m/s³", "jerk of the axis";
        INCLINATION: Angle, "inclination", "θ", "deg", "angle of the axis above the horizontal";
        MOVED_MASS: Mass, "moved-mass", "m_0", "kg", "mass of the slide without its drive and what it carries";
        CARRIED_MASS: Mass, "carried-mass", "m_c", "kg", "mass of the axes carried, with their drives";
        DRIVES: Ratio, "drives", "n_d", "1", "number of drives that move the axis together";
        CARRIAGE_REACH: Ratio, "carriage-reach", "y/B", "1", "farthest place of the carried axis from the middle, over the distance of the drives";
        GUIDE_FRICTION: Ratio, "guide-friction", "µ", "1", "friction coefficient of the guides";
        WIPER_FORCE: Force, "wiper-force", "F_w", "N", "drag of seals, wipers and covers together";
        COUNTERBALANCE_SHARE: Ratio, "counterbalance-share", "c_b", "1", "share of the weight that a counterbalance carries";
        PEOPLE_BELOW: Ratio, "people-below", "n_pe", "1", "one if people may be under the axis, zero if not";
        CUTTING_FORCE: Force, "cutting-force", "F_c", "N", "cutting force along the axis";
        CUTTING_SPEED: Velocity, "cutting-speed", "v_c", "m/min", "speed of the axis while cutting";
        SERVICE_HOURS: Time, "service-hours", "t_s", "h", "working hours over the service life";
        SERVICE_YEARS: Time, "service-years", "t_y", "years", "years of service";
        USUAL_STROKE: Length, "usual-stroke", "s_u", "mm", "stroke of a usual move";
        TEMPERATURE_SWING: TemperatureInterval, "temperature-swing", "ΔT", "K", "how far the surroundings stray from the reference temperature";
        REQUIRED_ACCURACY: Length, "required-accuracy", "A_req", "mm", "accuracy that the brief asks over the full travel";
        REQUIRED_SECTION_ACCURACY: Length, "required-section-accuracy", "A2_req", "mm", "accuracy that the brief asks on any 2 m section";
        REQUIRED_REPEATABILITY: Length, "required-repeatability", "R_req", "mm", "repeatability that the brief asks";
        REQUIRED_REVERSAL: Length, "required-reversal", "B_req", "mm", "reversal error that the brief allows";
        REQUIRED_DEFLECTION: Length, "required-deflection", "u_req", "mm", "give under the cutting force that the brief allows";
        REQUIRED_FIRST_MODE: Frequency, "required-first-mode", "f_req", "Hz", "first resonance that the brief asks";
        REQUIRED_RIPPLE: Length, "required-ripple", "w_req", "µm", "ripple within one tooth or turn that the brief allows";
        BRACKET_STIFFNESS: Stiffness, "bracket-stiffness", "k_br", "N/µm", "stiffness of the bracket and housing that take the drive force";
        LEAD_TIME_LIMIT: Time, "lead-time-limit", "t_L,lim", "weeks", "longest delivery time that the brief allows";
        END_GAP: Length, "end-gap", "s_g", "mm", "gap from the end of overtravel to the bearing, each end";
        SCALE_MOUNT_STIFFNESS: Stiffness, "scale-mount-stiffness", "k_sc", "N/µm", "stiffness between a linear scale and the slide it measures";

        // masses and forces, one drive
        RIDING_MASS: Mass, "riding-mass", "m_r", "kg", "parts of the drive that ride on the slide";
        MOVING_MASS: Mass, "moving-mass", "m", "kg", "all mass that the axis moves";
        LOAD_SHARE: Ratio, "load-share", "x_d", "1", "share of the moving mass on the most loaded drive";
        DRIVEN_MASS: Mass, "driven-mass", "m_d", "kg", "moving mass on the most loaded drive";
        CUTTING_SHARE: Ratio, "cutting-share", "x_c", "1", "share of the cutting force on the most loaded drive";
        DRIVE_WIPER_FORCE: Force, "drive-wiper-force", "F_w,d", "N", "drag of seals, wipers and covers on one drive";
        DRIVE_CUTTING_FORCE: Force, "drive-cutting-force", "F_c,d", "N", "cutting force on the most loaded drive";
        FRICTION_FORCE: Force, "friction-force", "F_f", "N", "friction of guides and wipers on one drive";
        PEAK_FORCE: Force, "peak-force", "F_max", "N", "largest force on one drive";
        MEAN_FORCE: Force, "mean-force", "F_m", "N", "cubic mean force on one drive, weighted by travel";
        GRAVITY_FORCE: Force, "gravity-force", "F_g", "N", "weight along the axis on one drive, no friction credited, no counterbalance";
        MEAN_SPEED: Velocity, "mean-speed", "v_m", "m/min", "mean speed over the working time";
        SERVICE_DISTANCE: Length, "service-distance", "s_t", "km", "distance travelled over the service life";
        MOVE_TIME: Time, "move-time", "t_m", "s", "time of a usual move at top speed";
        TRAVEL_PER_TURN: Length, "travel-per-turn", "p", "mm", "travel of the axis for one turn of screw or pinion";

        // ball screw
        NOMINAL_DIAMETER: Length, "nominal-diameter", "d_0", "mm", "nominal diameter of the screw";
        LEAD: Length, "lead", "P_h", "mm", "lead of the screw";
        BALL_CIRCLE_DIAMETER: Length, "ball-circle-diameter", "D_pw", "mm", "ball circle diameter";
        BALL_DIAMETER: Length, "ball-diameter", "D_w", "mm", "ball diameter";
        ROOT_DIAMETER: Length, "root-diameter", "d_r", "mm", "root diameter of the screw";
        CORE_DIAMETER: Length, "core-diameter", "d_c", "mm", "diameter of the screw that carries axial load";
        NUT_LENGTH: Length, "nut-length", "L_n", "mm", "length of the nut";
        NUT_MASS: Mass, "nut-mass", "m_nut", "kg", "mass of the nut";
        DYNAMIC_RATING: Force, "dynamic-rating", "C_a", "kN", "basic dynamic axial load rating of the nut";
        STATIC_RATING: Force, "static-rating", "C_0a", "kN", "basic static axial load rating of the nut";
        SIZE_DYNAMIC_RATING: Force, "size-dynamic-rating", "C_a,g", "kN", "dynamic rating of the size when ground";
        SIZE_STATIC_RATING: Force, "size-static-rating", "C_0a,g", "kN", "static rating of the size when ground";
        RATING_FACTOR: Ratio, "rating-factor", "f_C", "1", "rating of this manufacture over that of a ground screw";
        LENGTH_PER_DIAMETER: Ratio, "length-per-diameter", "L/d_0", "1", "longest screw of this grade over its diameter";
        BLANK_LENGTH: Length, "blank-length", "L_b", "mm", "longest blank of this manufacture";
        DIAMETER_LIMIT: Length, "diameter-limit", "d_lim", "mm", "largest nominal diameter of this manufacture";
        SCREW_YIELD_STRENGTH: Pressure, "screw-yield-strength", "S_y", "MPa", "yield strength of the screw core";
        RATED_NUT_STIFFNESS: Stiffness, "rated-nut-stiffness", "R_n", "N/µm", "stiffness of the nut at its reference preload of 5 % of the dynamic rating";
        PRELOAD_SHARE: Ratio, "preload-share", "x_pr", "1", "preload over dynamic rating";
        NUT_CLEARANCE: Length, "nut-clearance", "s_n", "µm", "axial clearance of the nut";
        CIRCULATION_LIMIT: CirculationSpeed, "circulation-limit", "DN_lim", "mm/min", "permissible ball circulation speed";
        SCREW_LENGTH_LIMIT: Length, "screw-length-limit", "L_max", "mm", "longest screw made in this size and grade";
        SCREW_FRICTION: Ratio, "screw-friction", "µ_s", "1", "apparent friction coefficient of the nut";
        GRADE_NUMBER: Ratio, "grade-number", "Gr", "1", "lead accuracy grade";
        POSITIONING: Ratio, "positioning-grade", "Pos", "1", "one for a positioning screw, zero for a transport screw";
        VARIATION_300: Length, "variation-300", "v_300p", "µm", "permissible travel variation within 300 mm";
        TURN_VARIATION: Length, "turn-variation", "v_2πp", "µm", "permissible travel variation within one turn";
        JOURNAL_LENGTH: Length, "journal-length", "L_j", "mm", "both journals of the screw together";
        FREE_LENGTH: Length, "free-length", "L_f", "mm", "free length of the screw, bearing to bearing";
        SCREW_LENGTH: Length, "screw-length", "L_s", "mm", "length of the screw";
        SCREW_SPEED: AngularVelocity, "screw-speed", "n_scr", "1/min", "speed of the screw at top speed of the axis";
        MEAN_SCREW_SPEED: AngularVelocity, "mean-screw-speed", "n_sm", "1/min", "mean speed of the screw over the working time";
        CIRCULATION_SPEED: CirculationSpeed, "circulation-speed", "DN", "mm/min", "ball circulation speed at top speed of the axis";
        LEAD_ANGLE: Angle, "lead-angle", "β", "deg", "lead angle of the screw";
        SCREW_EFFICIENCY: Ratio, "screw-efficiency", "η_1", "1", "efficiency of the nut, turning into thrust";
        BACK_DRIVING_EFFICIENCY: Ratio, "back-driving-efficiency", "η_2", "1", "efficiency of the nut, thrust into turning";
        PRELOAD: Force, "preload", "F_pr", "N", "preload of the nut";
        PRELOAD_DRAG: Torque, "preload-drag-torque", "T_p", "N·m", "drag torque of the preload";
        SCREW_LIFE: Revolutions, "screw-life", "L_10", "Mrev", "nominal life of the nut, 90 % survive";
        SCREW_LIFE_HOURS: Time, "screw-life-hours", "L_10h", "h", "nominal life of the nut in working hours";
        LOADED_HALF_PEAK: Force, "loaded-half-peak", "F_1", "N", "largest load on one half of the preloaded nut";
        STATIC_SAFETY: Ratio, "static-safety", "s_0", "1", "static safety of the nut";
        NUT_STIFFNESS: Stiffness, "nut-stiffness", "k_n", "N/µm", "stiffness of the nut at its preload";
        SCREW_INERTIA: MomentOfInertia, "screw-inertia", "J_s", "kg·cm²", "moment of inertia of the screw";
        SCREW_MASS: Mass, "screw-mass", "m_s", "kg", "mass of the screw";
        NUT_HEAT: Power, "nut-heat", "P_n", "W", "mean heat that goes into the screw";
        SCREW_WARMING: TemperatureInterval, "screw-warming", "ΔT_s", "K", "warming of the screw over its surroundings";
        TEMPERATURE_RISE: TemperatureInterval, "temperature-rise", "ΔT_m", "K", "temperature of the measuring element over the reference temperature";
        EXPANSION: Expansion, "expansion", "α", "µm/(m·K)", "coefficient of thermal expansion of the measuring element";
        SCREW_WEIGHT_ON_NUT: Force, "screw-weight-on-nut", "G_s", "N", "weight of the screw that the nut carries sideways";
        MEAN_TRAVEL_DEVIATION: Length, "mean-travel-deviation", "e_p", "µm", "tolerance of the mean travel over the full travel";
        TRAVEL_VARIATION: Length, "travel-variation", "v_up", "µm", "permissible travel variation over the full travel";
        SECTION_TRAVEL_DEVIATION: Length, "section-travel-deviation", "e_2m", "µm", "tolerance of the mean travel over 2 m";

        // ends of the screw
        EIGENVALUE_SQUARED: Ratio, "eigenvalue-squared", "λ²", "1", "bending eigenvalue of the end fixity, squared";
        BUCKLING_FACTOR: Ratio, "buckling-factor", "N", "1", "buckling factor of the end fixity";
        THRUST_ENDS: Ratio, "thrust-ends", "n_t", "1", "ends that take axial force";
        SUPPORT_ENDS: Ratio, "support-ends", "n_u", "1", "ends that are only supported radially";
        BEARING_BORE: Length, "bearing-bore", "d_b", "mm", "bore of the screw bearing";
        BEARING_RATING: Force, "bearing-rating", "C_b", "kN", "dynamic axial rating of the screw bearing";
        BEARING_PRELOAD: Force, "bearing-preload", "F_vb", "kN", "preload of the screw bearing";
        BEARING_STIFFNESS: Stiffness, "bearing-stiffness", "k_ax", "N/µm", "axial stiffness of the screw bearing";
        BEARING_SPEED_LIMIT: AngularVelocity, "bearing-speed-limit", "n_b", "1/min", "highest speed of the screw bearing";
        BEARING_SET_DRAG: Torque, "bearing-set-drag", "T_b1", "N·m", "drag of one set of screw bearings";
        BEARING_MASS: Mass, "bearing-mass", "m_b", "kg", "mass of one set of screw bearings";
        BEARING_DRAG: Torque, "bearing-drag-torque", "T_b", "N·m", "drag of all screw bearings together";
        WHIP_SPEED: AngularVelocity, "whip-speed", "n_cr", "1/min", "first bending critical speed of the screw";
        COLUMN_LOAD: Force, "column-load", "F_cr", "kN", "load at which the screw buckles";
        BEARING_LIFE_HOURS: Time, "bearing-life-hours", "L_bh", "h", "nominal life of the screw bearing in working hours";
        SCREW_STIFFNESS: Stiffness, "screw-stiffness", "k_s", "N/µm", "axial stiffness of screw and bearings at the worst nut position";
        SCREW_TORSION: Stiffness, "screw-torsional-stiffness-linear", "k_t", "N/µm", "torsional stiffness of the screw, seen along the travel";
        COUPLING_LINEAR_STIFFNESS: Stiffness, "coupling-linear-stiffness", "k_cl", "N/µm", "stiffness of coupling or belt, seen along the travel";
        SCREW_SAG: Length, "screw-sag", "f_s", "mm", "sag of the screw under its own weight";

        // coupling, belt or gearbox
        REDUCTION: Ratio, "reduction", "i", "1", "turns of the motor for one turn of screw or pinion";
        REDUCTION_EFFICIENCY: Ratio, "reduction-efficiency", "η_g", "1", "efficiency of coupling, belt or gearbox";
        TOTAL_EFFICIENCY: Ratio, "total-efficiency", "η", "1", "efficiency from motor to slide, motor driving";
        TOTAL_BACK_EFFICIENCY: Ratio, "total-back-efficiency", "η_b", "1", "efficiency from slide to motor, load driving";
        REDUCTION_INERTIA: MomentOfInertia, "reduction-inertia", "J_g", "kg·cm²", "inertia of coupling, belt or gearbox at the motor";
        REDUCTION_STIFFNESS: TorsionalStiffness, "reduction-stiffness", "c_g", "N·m/arcmin", "torsional stiffness of coupling, belt or gearbox at screw or pinion";
        REDUCTION_TORQUE_LIMIT: Torque, "reduction-torque-limit", "T_Kn", "N·m", "rated torque of coupling or belt at the screw";
        REDUCTION_SPEED_LIMIT: AngularVelocity, "reduction-speed-limit", "n_Kn", "1/min", "highest motor speed of coupling or belt";
        BELTS: Ratio, "belts", "n_B", "1", "belts between the motor with its brake and the load";
        REDUCTION_STOP_TORQUE: Torque, "reduction-stop-torque", "T_1s", "N·m", "torque through coupling or belt in an emergency stop, at the screw";
        REDUCTION_MASS: Mass, "reduction-mass", "m_red", "kg", "mass of coupling or belt reduction";
        SHAFT_TORQUE: Torque, "shaft-torque", "T_1", "N·m", "largest torque at screw or pinion";

        // rack and pinion
        MODULE: Length, "module", "m_n", "mm", "normal module";
        TEETH: Ratio, "teeth", "z", "1", "teeth of the pinion";
        HELIX_ANGLE: Angle, "helix-angle", "β_h", "deg", "helix angle; straight teeth have none";
        PROFILE_SHIFT: Ratio, "profile-shift", "x", "1", "profile shift factor of the pinion";
        LEAST_TEETH: Ratio, "least-teeth", "z_min", "1", "fewest pinion teeth without undercut at this profile shift";
        FACE_WIDTH: Length, "face-width", "b", "mm", "common face width";
        QUALITY: Ratio, "quality", "Q", "1", "tooth quality of rack and pinion";
        PINION_CONTACT_LIMIT: Pressure, "pinion-contact-limit", "σ_Hlim1", "MPa", "allowable contact stress number of the pinion";
        PINION_BENDING_LIMIT: Pressure, "pinion-bending-limit", "σ_Flim1", "MPa", "nominal bending stress number of the pinion";
        RACK_CONTACT_LIMIT: Pressure, "rack-contact-limit", "σ_Hlim2", "MPa", "allowable contact stress number of the rack";
        RACK_BENDING_LIMIT: Pressure, "rack-bending-limit", "σ_Flim2", "MPa", "nominal bending stress number of the rack";
        FACE_LOAD_FACTOR: Ratio, "face-load-factor", "K_Hβ", "1", "face load factor of contact stress";
        REVERSAL_FACTOR: Ratio, "reversal-factor", "Y_M", "1", "mean stress factor for teeth loaded on both flanks";
        PINION_DIAMETER: Length, "pinion-diameter", "d", "mm", "reference diameter of the pinion";
        PINION_MASS: Mass, "pinion-mass", "m_p", "kg", "mass of the pinion";
        PINION_INERTIA: MomentOfInertia, "pinion-inertia", "J_p", "kg·cm²", "moment of inertia of the pinion";
        MESH_EFFICIENCY: Ratio, "mesh-efficiency", "η_m", "1", "efficiency of the mesh";
        MESH_FRICTION: Ratio, "mesh-friction", "µ_m", "1", "friction coefficient of the greased mesh";
        SECTION_AREA: Area, "section-area", "A_r", "mm²", "cross section of the rack below the teeth";
        FASTENER_STIFFNESS: Stiffness, "fastener-stiffness", "k_f", "N/µm", "shear stiffness of one rack fastener";
        FASTENER_DIAMETER: Length, "fastener-diameter", "d_f", "mm", "nominal diameter of the rack fastener";
        FASTENER_THREAD_PITCH: Length, "fastener-thread-pitch", "P_f", "mm", "pitch of the fastener thread";
        FASTENER_STRENGTH: Pressure, "fastener-strength", "R_p0.2", "MPa", "0.2 % proof stress of the fastener";
        THREAD_FRICTION: Ratio, "thread-friction", "µ_G", "1", "friction coefficient of fastener thread and head";
        SEAT_FRICTION: Ratio, "seat-friction", "µ_T", "1", "friction coefficient between rack and seat";
        TIGHTENING_FACTOR: Ratio, "tightening-factor", "α_A", "1", "scatter of the tightening method";
        EMBEDDING_LOSS: Ratio, "embedding-loss", "f_Z", "1", "preload lost by embedding";
        SHARING_FASTENERS: Ratio, "sharing-fasteners", "n_e", "1", "fasteners that share the force at a segment end";
        SLIP_SAFETY: Ratio, "slip-safety", "S_G", "1", "safety against micro-slip under reversing force";
        PINION_SPEED: AngularVelocity, "pinion-speed", "n_p", "1/min", "speed of the pinion at top speed of the axis";
        MEAN_PINION_SPEED: AngularVelocity, "mean-pinion-speed", "n_pm", "1/min", "mean speed of the pinion over the working time";
        TRANSVERSE_CONTACT_RATIO: Ratio, "transverse-contact-ratio", "ε_α", "1", "transverse contact ratio";
        OVERLAP_RATIO: Ratio, "overlap-ratio", "ε_β", "1", "overlap ratio";
        TOTAL_CONTACT_RATIO: Ratio, "total-contact-ratio", "ε_γ", "1", "total contact ratio: teeth engaged on average";
        TIP_THICKNESS: Ratio, "tip-thickness", "s_an/m_n", "1", "tooth thickness at the tip of the pinion, in modules";
        PINION_CYCLES: Ratio, "pinion-cycles", "N_1", "1", "load cycles of a pinion tooth over the service life";
        RACK_CYCLES: Ratio, "rack-cycles", "N_2", "1", "load cycles of the most used rack tooth over the service life";
        PINION_PITTING_FORCE: Force, "pinion-pitting-force", "F_H1", "kN", "tooth force that the pinion flanks bear";
        PINION_ROOT_FORCE: Force, "pinion-root-force", "F_F1", "kN", "tooth force that the pinion roots bear";
        RACK_PITTING_FORCE: Force, "rack-pitting-force", "F_H2", "kN", "tooth force that the rack flanks bear";
        RACK_ROOT_FORCE: Force, "rack-root-force", "F_F2", "kN", "tooth force that the rack roots bear";
        RACK_SPEED_LIMIT: Velocity, "rack-speed-limit", "v_lim", "m/min", "highest speed of an open greased rack of this quality";
        SEGMENT_LENGTH: Length, "segment-length", "l_s", "mm", "length of a rack segment";
        RACK_LENGTH: Length, "rack-length", "L_r", "mm", "length of the rack line";
        RACK_MASS: Mass, "rack-mass", "m_r2", "kg", "mass of the rack line";
        RACK_MASS_PER_LENGTH: LinearMassDensity, "rack-mass-per-length", "m'_r", "kg/m", "mass of the rack a metre";
        SEGMENTS: Ratio, "segments", "n_seg", "1", "rack segments in the line";
        PITCH_ERROR_PER_METRE: Length, "pitch-error-per-metre", "e_m", "µm", "cumulative pitch error of the quality within one metre";
        SEGMENT_PITCH_ERROR: Length, "segment-pitch-error", "e_s", "µm", "cumulative pitch error of one segment";
        JOINT_STEP: Length, "joint-step", "e_j", "µm", "pitch step at a joint of segments";
        CUMULATIVE_PITCH_ERROR: Length, "cumulative-pitch-error", "F_pk", "µm", "pitch error of the rack line over the full travel";
        SECTION_PITCH_ERROR: Length, "section-pitch-error", "F_p2", "µm", "pitch error of the rack line over 2 m";
        PINION_PITCH_DEVIATION: Length, "pinion-total-pitch-deviation", "F_p", "µm", "total pitch deviation of the pinion";
        SINGLE_PITCH_DEVIATION: Length, "single-pitch-deviation", "f_p", "µm", "single pitch deviation of the pinion";
        PITCH_STEP: Length, "pitch-step", "u_p", "µm", "difference of neighbouring pitches of pinion and rack together";
        MESH_PLAY: Length, "mesh-play", "j_t", "µm", "play set between pinion and rack";
        MESH_STIFFNESS: Stiffness, "mesh-stiffness", "k_m", "N/µm", "stiffness of the mesh along the travel";
        MOUNT_STIFFNESS: Stiffness, "mount-stiffness", "k_r", "N/µm", "stiffness of the rack on its fasteners";
        FASTENER_PITCH: Length, "fastener-pitch", "p_f", "mm", "distance of the rack fasteners";
        FASTENERS: Ratio, "fasteners", "n_f", "1", "fasteners of the rack line";
        FASTENER_PRELOAD: Force, "fastener-preload", "F_M", "kN", "assembly preload of one fastener";
        SLIP_FORCE: Force, "slip-force", "F_S", "kN", "force at which the rack slips on its seat, worst at a segment end";
        GEARBOX_ACCELERATION_TORQUE: Torque, "gearbox-acceleration-torque", "T_acc", "N·m", "acceleration torque of the gearbox";
        GEARBOX_CONTINUOUS_TORQUE: Torque, "gearbox-continuous-torque", "T_cont", "N·m", "continuous torque of the gearbox";
        GEARBOX_STOP_TORQUE: Torque, "gearbox-stop-torque", "T_stop", "N·m", "emergency stop torque of the gearbox";
        GEARBOX_NOMINAL_SPEED: AngularVelocity, "gearbox-nominal-speed", "n_nom", "1/min", "nominal input speed of the gearbox";
        GEARBOX_SPEED_LIMIT: AngularVelocity, "gearbox-speed-limit", "n_1max", "1/min", "highest input speed of the gearbox";
        GEARBOX_PLAY: Angle, "gearbox-play", "φ_g", "arcmin", "play of the gearbox at its output";
        GEARBOX_RADIAL_LIMIT: Force, "gearbox-radial-limit", "F_rad,lim", "kN", "radial force that the gearbox output bears at the pinion, at its reference speed and life";
        GEARBOX_MASS: Mass, "gearbox-mass", "m_g", "kg", "mass of the gearbox";
        NO_LOAD_TORQUE: Torque, "no-load-torque", "T_02", "N·m", "no-load torque of the gearbox at its input";
        OVERHANG: Length, "overhang", "l", "mm", "pinion middle to the front bearing of the gearbox";
        OUTPUT_SHAFT_DIAMETER: Length, "output-shaft-diameter", "d_sh", "mm", "diameter of the gearbox output shaft";
        TILT_STIFFNESS: TorsionalStiffness, "tilt-stiffness", "c_t", "N·m/arcmin", "tilting stiffness of the gearbox output bearing";
        OUTPUT_SHAFT_STIFFNESS: Stiffness, "output-shaft-stiffness", "k_sh", "N/µm", "stiffness of the gearbox output shaft at the pinion, along the travel";
        SEAT_DIAMETER: Length, "seat-diameter", "d_se", "mm", "diameter of the shaft under the pinion";
        SEAT_STIFFNESS: Stiffness, "seat-stiffness", "k_se", "N/µm", "stiffness of the shaft under the pinion, along the travel";
        PINION_SHAFT_STIFFNESS: Stiffness, "pinion-shaft-stiffness", "k_ps", "N/µm", "stiffness of gearbox shaft and pinion seat together";
        SEAT_STRESS: Pressure, "seat-stress", "σ_se", "MPa", "stress in the shaft under the pinion at the largest force";
        GEARBOX_LINEAR_STIFFNESS: Stiffness, "gearbox-linear-stiffness", "k_g", "N/µm", "stiffness of the gearbox, seen along the travel";
        PLAY_AT_RACK: Length, "backlash-at-rack", "j_g", "µm", "play of the gearbox, seen at the rack";
        OUTPUT_TORQUE: Torque, "output-torque", "T_2", "N·m", "largest torque at the gearbox output";
        MEAN_OUTPUT_TORQUE: Torque, "mean-output-torque", "T_2m", "N·m", "cubic mean torque at the gearbox output";
        MEAN_INPUT_SPEED: AngularVelocity, "mean-input-speed", "n_1m", "1/min", "mean input speed of the gearbox";
        RADIAL_LOAD: Force, "radial-load", "F_rad", "kN", "mean radial force of the pinion on the gearbox output";
        RADIAL_CAPACITY: Force, "radial-capacity", "F_rad,perm", "kN", "radial force that the gearbox output bears over the service life";
        STOP_TORQUE: Torque, "stop-torque", "T_2s", "N·m", "torque at the gearbox output in an emergency stop at the set torque of the drive";
        STOP_FORCE: Force, "stop-force", "F_s", "kN", "tooth force in an emergency stop at the set torque of the drive";
        RIPPLE: Length, "ripple", "w", "µm", "position ripple within one tooth or one turn at cutting speed";

        // stiffness and dynamics
        TOTAL_STIFFNESS: Stiffness, "total-stiffness", "k", "N/µm", "stiffness of one drive from motor to slide at the worst place";
        FIRST_MODE: Frequency, "first-mode", "f_1", "Hz", "first resonance of the axis on its drive, motor held";
        CUTTING_DEFLECTION: Length, "cutting-deflection", "u_c", "mm", "give of the drive under the cutting force";

        // motor
        RATED_TORQUE: Torque, "rated-torque", "T_N", "N·m", "rated torque of the motor";
        STANDSTILL_TORQUE: Torque, "standstill-torque", "T_0", "N·m", "continuous torque of the motor at standstill";
        RATED_SPEED: AngularVelocity, "rated-speed", "n_N", "1/min", "rated speed of the motor";
        MOTOR_PEAK_TORQUE: Torque, "motor-peak-torque", "T_pk", "N·m", "peak torque of the motor";
        KNEE_SPEED: AngularVelocity, "knee-speed", "n_k", "1/min", "speed up to which the peak torque is there";
        MOTOR_SPEED_LIMIT: AngularVelocity, "motor-speed-limit", "n_max", "1/min", "highest speed of the motor";
        ROTOR_INERTIA: MomentOfInertia, "rotor-inertia", "J_M", "kg·cm²", "inertia of the motor, with its brake if any";
        BRAKE_TORQUE: Torque, "brake-torque", "T_B", "N·m", "rated torque of the motor brake; zero without one";
        MOTOR_MASS: Mass, "motor-mass", "m_M", "kg", "mass of the motor";
        ENCODER_COUNTS: Ratio, "encoder-counts", "N_e", "1", "steps of the motor encoder in one turn";
        SUPPLY_EFFICIENCY: Ratio, "supply-efficiency", "η_s", "1", "efficiency of motor and drive electronics";
        MOTOR_SPEED: AngularVelocity, "motor-speed", "n_M", "1/min", "speed of the motor at top speed of the axis";
        MASS_INERTIA: MomentOfInertia, "mass-inertia", "J_m", "kg·cm²", "driven mass as inertia at the motor";
        LOAD_INERTIA: MomentOfInertia, "load-inertia", "J_L", "kg·cm²", "all inertia beyond the motor, at the motor";
        ROTATING_INERTIA: MomentOfInertia, "rotating-inertia", "J_rot", "kg·cm²", "all turning parts, at the motor";
        INERTIA_RATIO: Ratio, "inertia-ratio", "λ_J", "1", "load inertia over motor inertia";
        DRAG_TORQUE: Torque, "drag-torque", "T_d", "N·m", "drag of nut, bearings or gearbox at screw or pinion";
        PEAK_TORQUE: Torque, "peak-torque", "T_max", "N·m", "largest motor torque of any phase";
        PEAK_TORQUE_USE: Ratio, "peak-torque-use", "x_T", "1", "largest motor torque over what the motor gives at that speed, worst phase";
        TORQUE_MARGIN: Ratio, "torque-margin", "x_m", "1", "torque limit set in the drive over the largest torque of the duty";
        SET_TORQUE: Torque, "set-torque", "T_set", "N·m", "torque limit to set in the drive electronics";
        RMS_TORQUE: Torque, "rms-torque", "T_rms", "N·m", "root mean square motor torque over the duty";
        RMS_SPEED: AngularVelocity, "rms-speed", "n_rms", "1/min", "root mean square motor speed over the duty";
        CONTINUOUS_TORQUE: Torque, "continuous-torque", "T_S1", "N·m", "continuous torque of the motor at its mean duty speed";
        HOLDING_TORQUE: Torque, "holding-torque", "T_hold", "N·m", "torque at the motor that holds the load, no friction credited";
        BRAKE_DELAY: Time, "brake-delay", "t_B", "ms", "time from loss of power to the grip of the brake";
        BRAKE_SHARE: Ratio, "brake-share", "x_B", "1", "part of the rated brake torque that a warm or worn brake still gives";
        REDUCED_MASS: Mass, "reduced-mass", "m_red,r", "kg", "all turning parts as mass on the slide";
        FALL_ACCELERATION: Acceleration, "fall-acceleration", "g'", "m/s²", "acceleration of the load while nothing holds it";
        BRAKE_DECELERATION: Acceleration, "brake-deceleration", "a_b", "m/s²", "deceleration of the falling load by the brake";
        STOPPING_DISTANCE: Length, "stopping-distance", "s_b", "mm", "way from loss of power at full downward speed to standstill";
        BRAKE_WORK: Energy, "brake-work", "W_b", "J", "work of the brake in one stop from full downward speed";
        PEAK_POWER: Power, "peak-power", "P_max", "kW", "largest mechanical power of all drives of the axis";
        SUPPLY_POWER: Power, "supply-power", "P_s", "kW", "largest power that all drives of the axis take from the supply";
        MEAN_POWER: Power, "mean-power", "P_m", "kW", "mean electrical power of all drives of the axis while working";

        // accuracy
        SCALE_ERROR_RATE: Ratio, "scale-error-rate", "e_r", "µm/m", "error band of the linear scale a metre";
        SCALE_LEAST_ERROR: Length, "scale-least-error", "e_0", "µm", "error band of a short linear scale";
        SECTION_LIMIT: Length, "section-limit", "2 m", "mm", "longest travel on which accuracy is stated as one figure";
        SECTION_LENGTH: Length, "section-length", "s_2", "mm", "length of the section on which accuracy is stated: 2 m, or the travel where shorter";
        SECTION_TRAVEL_VARIATION: Length, "section-travel-variation", "v_u2", "µm", "permissible travel variation over the section";
        SCALE_LENGTH_LIMIT: Length, "scale-length-limit", "L_sc", "mm", "longest travel that the feedback measures";
        SCALE_SPEED_LIMIT: Velocity, "scale-speed-limit", "v_sc", "m/min", "highest speed that the feedback follows";
        MEASURING_STEP: Length, "measuring-step", "q_s", "nm", "measuring step of the feedback at the slide";
        FRICTION_SCATTER: Ratio, "friction-scatter", "x_s", "1", "part of the friction that varies from approach to approach";
        COMPENSATED_PLAY: Ratio, "compensated-play", "x_j", "1", "part of the play that the controller compensates";
        POSITION_ERROR: Length, "position-error", "M", "µm", "range of the mean position deviation over the full travel";
        SECTION_POSITION_ERROR: Length, "section-position-error", "M_2", "µm", "range of the mean position deviation over 2 m";
        PLAY: Length, "play", "j_p", "µm", "play of the drive along the travel";
        LOOP_PLAY: Length, "loop-play", "j_L", "µm", "play of the drive inside the loop of a linear scale; not there without a scale";
        LOST_MOTION: Length, "lost-motion", "u_f", "µm", "friction lost motion";
        REVERSAL_ERROR: Length, "reversal-error", "B", "µm", "reversal error";
        SCATTER: Length, "scatter", "s_x", "µm", "standard deviation of a position";
        DRIVE_SCATTER: Length, "drive-scatter", "s_d", "µm", "scatter from measuring step and friction";
        LEAST_SCATTER: Length, "least-scatter", "s_0m", "µm", "scatter that no drive of its kind falls below";
        REPEATABILITY: Length, "repeatability", "R", "µm", "bidirectional repeatability";
        ACCURACY: Length, "accuracy", "A", "µm", "bidirectional accuracy: A up to 2 m of travel, systematic deviation E above";
        SECTION_ACCURACY: Length, "section-accuracy", "A_2", "µm", "bidirectional accuracy on any 2 m section";
        TOOL_ERROR: Length, "tool-error", "e_t", "µm", "half band that the axis adds at the tool";
        THERMAL_GROWTH: Length, "thermal-growth", "ΔL", "µm", "growth of the measuring element over the travel in service";

        // money, mass and time, all drives of the axis
        DRIVE_MASS: Mass, "drive-mass", "m_dr", "kg", "complete mass of all drives of the axis";
        LEAD_TIME: Time, "lead-time", "t_L", "weeks", "longest delivery time of any part";
        ELEMENT_PRICE: Money, "element-price", "k_e", "", "one screw with nut, or one rack line with pinion";
        SUPPORT_PRICE: Money, "support-price", "k_b", "", "bearings of one screw, or fasteners and joints of one rack line";
        REDUCTION_PRICE: Money, "reduction-price", "k_red", "", "one coupling, belt or gearbox";
        MOTOR_PRICE: Money, "motor-price", "k_M", "", "one motor with its drive electronics";
        GRADE_PRICE_FACTOR: Ratio, "grade-price-factor", "K_gr", "1", "price of the grade over that of the base grade";
        NUT_PRICE_FACTOR: Ratio, "nut-price-factor", "K_nut", "1", "price of the nut with this preload over that of a single nut";
        SCREW_BASE_PRICE: Money, "screw-base-price", "k_0", "", "base price of a 32 mm screw with nut";
        SCREW_METRE_PRICE: Money, "screw-metre-price", "k_1", "", "price a metre of a 32 mm screw";
        ENDS_PRICE: Money, "ends-price", "k_2", "", "machining of the screw ends, 32 mm screw";
        BEARING_PRICE: Money, "bearing-price", "k_3", "", "one set of screw bearings";
        SUPPORT_PRICE_SHARE: Ratio, "support-price-share", "x_u", "1", "price of a radial support over that of a bearing set";
        RACK_METRE_PRICE: Money, "rack-metre-price", "k_4", "", "price a metre of rack in the base quality";
        RACK_PRICE_FACTOR: Ratio, "rack-price-factor", "K_q", "1", "price of the quality over that of the base quality";
        PINION_BASE_PRICE: Money, "pinion-base-price", "k_5", "", "fixed part of the pinion price";
        PINION_SIZE_PRICE: Money, "pinion-size-price", "k_6", "", "size part of the pinion price, module 1 mm and 20 teeth";
        PINION_PRICE: Money, "pinion-price", "k_p", "", "one pinion";
        RACK_LINE_PRICE: Money, "rack-line-price", "k_rl", "", "one rack line";
        JOINT_PRICE: Money, "joint-price", "k_7", "", "one joint with its pins";
        FASTENER_PRICE: Money, "fastener-price", "k_8", "", "one fastener";
        GAUGE_PRICE: Money, "gauge-price", "k_9", "", "mating gauge piece for the joints";
        FITTING_HOURS: Time, "fitting-hours", "h_0", "h", "fitting and alignment, fixed part";
        FITTING_HOURS_PER_METRE: Time, "fitting-hours-per-metre", "h_1", "h", "fitting and alignment for each metre of travel";
        LABOUR_RATE: Money, "labour-rate", "k_L", "", "price of an hour of fitting";
        DATUM_PRICE: Money, "datum-price", "k_D", "", "machining of the datum for each metre of travel";
        UPKEEP_HOURS: Time, "upkeep-hours", "h_2", "h", "upkeep a year, fixed part";
        UPKEEP_HOURS_PER_METRE: Time, "upkeep-hours-per-metre", "h_3", "h", "upkeep a year for each metre of travel";
        LUBRICANT_PRICE: Money, "lubricant-price", "k_S", "", "lubricant of one drive a year";
        SCALE_FIXED_PRICE: Money, "scale-fixed-price", "k_10", "", "fixed part of the scale price; zero without a scale";
        SCALE_METRE_PRICE: Money, "scale-metre-price", "k_11", "", "scale price for each metre of travel; zero without a scale";
        FEEDBACK_PRICE: Money, "feedback-price", "k_F", "", "one linear scale, fitted length";
        FITTING_PRICE: Money, "fitting-price", "k_h", "", "datum, fitting and alignment of one drive";
        ANNUITY: Ratio, "annuity", "b_a", "1", "present value of one unit a year over the years of service";
        HOURS_PER_YEAR: Time, "hours-per-year", "t_a", "h", "working hours a year";
        ENERGY_PRICE: Money, "energy-price", "k_E", "", "price of a kilowatt hour";
        DISCOUNT_RATE: Ratio, "discount-rate", "r", "%", "discount rate a year";
        UPKEEP_PRICE: Money, "upkeep-price", "k_U", "", "lubrication and inspection of one drive a year";
        ELEMENT_COST: Money, "element-cost", "K_e", "", "screws with nuts, or racks with pinions";
        SUPPORT_COST: Money, "support-cost", "K_b", "", "screw bearings, or rack fasteners and pins";
        REDUCTION_COST: Money, "reduction-cost", "K_g", "", "couplings, belts or gearboxes";
        MOTOR_COST: Money, "motor-cost", "K_M", "", "motors with their drive electronics";
        FEEDBACK_COST: Money, "feedback-cost", "K_f", "", "linear scales";
        FITTING_COST: Money, "fitting-cost", "K_h", "", "machining of datums, fitting and alignment";
        PURCHASE_COST: Money, "purchase-cost", "K_0", "", "price to buy and fit";
        ENERGY_COST: Money, "energy-cost", "K_E", "", "energy a year";
        UPKEEP_COST: Money, "upkeep-cost", "K_U", "", "lubrication and inspection a year";
        WHOLE_LIFE_COST: Money, "whole-life-cost", "K_L", "", "price, energy and upkeep over the years of service, discounted";
    }
    phased {
        PHASE_SHARE: Ratio, "phase-share", "q_k", "1", "share of working time in this phase";
        PHASE_DIRECTION: Ratio, "phase-direction", "σ_k", "1", "direction of motion in this phase: 1, -1, or 0 standing";
        PHASE_SPEED: Velocity, "phase-speed", "v_k", "m/min", "mean speed in this phase, positive upward or forward";
        PHASE_TOP_SPEED: Velocity, "phase-top-speed", "v̂_k", "m/min", "top speed in this phase";
        PHASE_ACCELERATION: Acceleration, "phase-acceleration", "a_k", "m/s²", "acceleration in this phase, positive upward or forward";
        PHASE_PROCESS_FORCE: Force, "phase-process-force", "F_p,k", "N", "cutting force in this phase, positive against upward or forward motion";
        PHASE_DRIVE_PROCESS_FORCE: Force, "phase-drive-process-force", "F_pd,k", "N", "cutting force on the most loaded drive in this phase";
        PHASE_FORCE: Force, "phase-force", "F_k", "N", "force on one drive in this phase";
        PHASE_TORQUE: Torque, "phase-torque", "T_k", "N·m", "motor torque in this phase";
    }
}
