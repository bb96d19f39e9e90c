//! Looks for rows of the catalogue that load without a fault but are hardly right.
//!
//! Method: a part is held against simple relations between its own values (a rated power is a torque times a
//! speed, a rack weighs what its section weighs) and against trends over the size, with wide bounds.
//! Limits: a remark is a question, not a fault. The trends are common practice without a source; they come from
//! the generic series and leave room for half to twice its values.

use super::*;
use crate::units::Measure;
use std::fmt;

/// A value that is hardly right, or missing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Remark {
    /// The kind of the part.
    pub kind: &'static str,
    /// The part.
    pub designation: String,
    /// What is odd about it, with numbers.
    pub message: String,
}

impl fmt::Display for Remark {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}: {}", self.kind, self.designation, self.message)
    }
}

/// Collects remarks on one part.
struct Doubts<'a> {
    kind: &'static str,
    designation: &'a str,
    remarks: &'a mut Vec<Remark>,
}

impl Doubts<'_> {
    fn say(&mut self, message: String) {
        self.remarks.push(Remark { kind: self.kind, designation: self.designation.into(), message });
    }

    /// Remarks on a value outside its usual bounds.
    fn within(&mut self, what: &str, value: f64, least: f64, most: f64) {
        if !(least..=most).contains(&value) {
            let number = crate::units::significant(value, 3);
            self.say(format!("{what} is {number}; {least} to {most} is usual"));
        }
    }

    /// Remarks on something that ought to hold.
    fn holds(&mut self, truth: bool, otherwise: &str) {
        if !truth {
            self.say(otherwise.into());
        }
    }
}

/// Everything odd about the catalogue, in the order of kinds and designations.
pub fn check(catalog: &Catalog) -> Vec<Remark> {
    check_some(catalog, &|_, _, _| true)
}

/// Everything odd about the parts that are asked about, by kind, designation and whether the part is generic.
pub fn check_some(catalog: &Catalog, wanted: &dyn Fn(&str, &str, bool) -> bool) -> Vec<Remark> {
    let mut asked = Asked { wanted, remarks: Vec::new() };
    each(catalog, &mut asked, ball_screw);
    each(catalog, &mut asked, screw_grade);
    each(catalog, &mut asked, preload_class);
    each(catalog, &mut asked, end_arrangement);
    each(catalog, &mut asked, screw_bearing);
    each(catalog, &mut asked, screw_support);
    each(catalog, &mut asked, nut_unit);
    each(catalog, &mut asked, screw_reduction);
    each(catalog, &mut asked, rack);
    each(catalog, &mut asked, rack_grade);
    each(catalog, &mut asked, pinion);
    each(catalog, &mut asked, gearbox);
    each(catalog, &mut asked, |bias: &PinionBias, doubts| {
        doubts.within("bias over the acceleration torque", bias.share.si(), 0.05, 0.4);
    });
    each(catalog, &mut asked, steel);
    each(catalog, &mut asked, servo_motor);
    each(catalog, &mut asked, linear_scale);
    each(catalog, &mut asked, error_table);
    each(catalog, &mut asked, |bed: &BedMaterial, doubts| {
        doubts.within("depth of thread over the diameter", bed.thread_depth_factor.si(), 0.8, 3.0);
    });
    each(catalog, &mut asked, |_: &Lubrication, _| {});
    each(catalog, &mut asked, |_: &Surroundings, _| {});
    each(catalog, &mut asked, |_: &PriceBasis, _| {});
    asked.remarks
}

/// Which parts are asked about, and what is odd about them.
struct Asked<'w> {
    wanted: &'w dyn Fn(&str, &str, bool) -> bool,
    remarks: Vec<Remark>,
}

fn each<P: Part>(catalog: &Catalog, asked: &mut Asked<'_>, judge: fn(&P, &mut Doubts<'_>)) {
    let wanted = asked.wanted;
    for part in P::rows(catalog).iter().filter(|part| wanted(P::KIND, part.designation(), part.generic())) {
        let mut doubts = Doubts { kind: P::KIND, designation: part.designation(), remarks: &mut asked.remarks };
        judge(part, &mut doubts);
        for (field, value) in P::FIELDS.iter().zip(part.shown()) {
            if field.accept == Accept::Price && value.is_none() {
                doubts.say(format!("{} is missing; the cost of a drive with this part is not known", field.key()));
            }
        }
        if part.lead_time().si() > 2.0 * 31_557_600.0 {
            doubts.say("the delivery time is longer than two years".into());
        }
    }
}

/// A value in millimetres, and so on: SI to the unit a trend is written in.
fn mm(length: crate::units::Length) -> f64 {
    length.si() * 1e3
}

fn ball_screw(screw: &BallScrew, doubts: &mut Doubts<'_>) {
    let (ball, circle, nominal) = (mm(screw.ball_diameter), mm(screw.ball_circle_diameter), mm(screw.nominal_diameter));
    let pitch = mm(screw.lead) / f64::from(screw.starts);
    doubts.within("ball diameter over pitch", ball / pitch, 0.3, 0.75);
    doubts.within("ball circle over nominal diameter", circle / nominal, 0.98, 1.08);
    let root = circle - 1.02 * ball;
    doubts.within("root diameter over (ball circle - 1.02 ball diameters)", mm(screw.root_diameter) / root, 0.95, 1.05);
    if let (Some(fixed), Some(dynamic)) = (screw.static_rating, screw.dynamic_rating) {
        doubts.within("static over dynamic rating", fixed.si() / dynamic.si(), 1.2, 6.0);
    }
    // C_a grows as D_w^1.8 Z^(2/3) i^0.86 with Z = π D_pw / D_w balls a turn; the factor is 41 to 47 N in the series
    let geometry =
        ball.powf(1.8) * (std::f64::consts::PI * circle / ball).powf(2.0 / 3.0) * screw.turns.si().powf(0.86);
    if let Some(dynamic) = screw.dynamic_rating {
        doubts.within("dynamic rating in N over its trend with geometry", dynamic.si() / geometry, 22.0, 90.0);
    }
    doubts.within("bore over root diameter", mm(screw.bore) / mm(screw.root_diameter), 0.0, 0.6);
    doubts.within("highest acceleration of the nut, m/s²,", screw.acceleration_limit.si(), 5.0, 40.0);
    doubts.within("price factor", screw.price_factor.si(), 0.5, 3.0);
    doubts.within(
        "nut stiffness over nominal diameter, N/µm a mm,",
        screw.nut_stiffness.si() / 1e6 / nominal,
        8.0,
        45.0,
    );
    let walls = (mm(screw.nut_diameter).powi(2) - nominal.powi(2)) * mm(screw.nut_length);
    let solid = 7.85e-6 * std::f64::consts::FRAC_PI_4 * walls;
    doubts.within("nut mass over that of its body", screw.nut_mass.si() / solid, 0.7, 4.0);
}

fn screw_grade(grade: &ScrewGrade, doubts: &mut Doubts<'_>) {
    doubts.holds([0, 1, 2, 3, 4, 5, 7, 10].contains(&grade.grade), "ISO 3408-3 has the grades 0, 1, 3, 5, 7 and 10");
    doubts.holds(!grade.positioning || grade.grade <= 5, "positioning grades end at 5");
    doubts.holds(grade.turn_variation <= grade.variation_300, "one turn varies more than 300 mm of travel");
    let circulations =
        [grade.circulation_tube, grade.circulation_deflector, grade.circulation_end_cap, grade.circulation_high_speed];
    for limit in circulations {
        doubts.within("circulation limit, m·rev/s,", limit.si(), 0.5, 4.2);
    }
    doubts.within("hardness of the grooves, HV 10,", grade.surface_hardness.si(), 500.0, 900.0);
    doubts.within("factor of the melt", grade.melt_factor.si(), 1.0, 1.8);
    doubts.within("longest screw over its diameter", grade.length_per_diameter.si(), 20.0, 200.0);
    doubts.within("apparent friction coefficient", grade.friction.si(), 0.002, 0.02);
}

fn preload_class(class: &PreloadClass, doubts: &mut Doubts<'_>) {
    doubts.within("preload over dynamic rating", class.share.si(), 0.0, 0.1);
    doubts.holds(class.share.si() == 0.0 || class.clearance.si() == 0.0, "a preloaded nut has no clearance");
}

fn end_arrangement(ends: &EndArrangement, doubts: &mut Doubts<'_>) {
    doubts.holds([1.0, 2.0].contains(&ends.thrust_ends.si()), "a screw has one or two ends that take force");
    doubts.within("stretch, K,", ends.stretch.si(), 0.0, 5.0);
    doubts.holds(ends.stretch.si() == 0.0 || ends.thrust_ends.si() == 2.0, "one end that takes force holds no stretch");
}

fn screw_bearing(bearing: &ScrewBearing, doubts: &mut Doubts<'_>) {
    let bore = mm(bearing.bore);
    let lesser = bearing.lesser_rating.unwrap_or(bearing.rating);
    doubts.within("preload over rating", bearing.preload.si() / bearing.rating.si(), 0.02, 0.25);
    doubts.within("static over dynamic rating", bearing.static_rating.si() / lesser.si(), 1.0, 5.0);
    doubts.within("rating of the side with fewer rows over the other", lesser.si() / bearing.rating.si(), 0.3, 1.0);
    // a ring of springs of the axial stiffness tilts with k·d_m²/8
    let ring = bearing.stiffness.si() * (1.6e-3 * bore + 3e-3).powi(2) / 8.0;
    doubts.within("tilt stiffness over that of a ring of springs", bearing.tilt_stiffness.si() / ring, 0.2, 2.0);
    doubts.within("stiffness over bore, N/µm a mm,", bearing.stiffness.si() / 1e6 / bore, 10.0, 120.0);
    let mean_speed = bore * 1.4 * bearing.speed_limit.si() * 60.0 / std::f64::consts::TAU;
    doubts.within("speed limit times 1.4 bores, mm/min,", mean_speed, 5e4, 6e5);
}

fn screw_support(support: &ScrewSupport, doubts: &mut Doubts<'_>) {
    doubts.within("pairs", f64::from(support.pairs), 0.0, 2.0);
    doubts.holds(support.pairs == 0 || support.price.0 > 0.0, "supports have a price");
    doubts.holds(support.pairs == 0 || support.mass.si() > 0.0, "supports have a mass");
}

fn nut_unit(unit: &NutUnit, doubts: &mut Doubts<'_>) {
    let nominal = mm(unit.nominal_diameter);
    // what turns sits a little outside the screw: near 0.65 nominal diameters in the series
    let gyration = (unit.inertia.si() / unit.mass.si()).sqrt() * 1e3;
    doubts.within("radius of gyration over nominal diameter", gyration / nominal, 0.35, 1.2);
    doubts.within("stiffness over nominal diameter, N/µm a mm,", unit.stiffness.si() / 1e6 / nominal, 7.0, 30.0);
    doubts.within("preload over rating", unit.preload.si() / unit.rating.si(), 0.02, 0.25);
    doubts.within("static over dynamic rating", unit.static_rating.si() / unit.rating.si(), 1.0, 5.0);
    let circumference = nominal * unit.speed_limit.si() * 60.0 / std::f64::consts::TAU;
    doubts.within("speed limit times nominal diameter, mm/min,", circumference, 4e4, 2.5e5);
}

fn screw_reduction(reduction: &ScrewReduction, doubts: &mut Doubts<'_>) {
    doubts.holds(reduction.kind != "direct" || reduction.ratio.si() == 1.0, "a coupling has the ratio 1");
    doubts.within("ratio", reduction.ratio.si(), 0.5, 5.0);
    doubts.within("efficiency", reduction.efficiency.si(), 0.85, 1.0);
    if reduction.kind == "direct" {
        doubts.holds(reduction.belt_pitch.is_none() && reduction.driving_teeth.is_none(), "a coupling has no pulley");
        match (reduction.rated_torque, reduction.torsional_stiffness) {
            (Some(torque), Some(stiffness)) => {
                doubts.within("twist at rated torque, rad,", torque.si() / stiffness.si(), 1e-4, 0.03);
            }
            (None, _) | (_, None) => doubts.say("a coupling needs its rated torque and its torsional stiffness".into()),
        }
        return;
    }
    doubts.holds(
        reduction.rated_torque.is_none() && reduction.torsional_stiffness.is_none(),
        "torque and stiffness of a belt are worked out and not stated",
    );
    let (Some(pitch), Some(width), Some(teeth)) = (reduction.belt_pitch, reduction.belt_width, reduction.driving_teeth)
    else {
        return doubts.say("a belt needs its pitch, width and teeth".into());
    };
    let driven = teeth.si() * reduction.ratio.si();
    doubts.holds((driven - driven.round()).abs() < 1e-6, "the pulley on the screw has no whole number of teeth");
    doubts.within("teeth of the pulley on the motor", teeth.si(), 10.0, 80.0);
    doubts.within("width of the belt in pitches", width.si() / pitch.si(), 1.5, 12.0);
    let known = [
        reduction.centre_distance.map(|distance| {
            let reach = pitch.si() * (teeth.si() + driven) / std::f64::consts::TAU;
            doubts.within("distance of the shafts over the sum of the pulley radii", distance.si() / reach, 1.05, 12.0);
        }),
        reduction.specific_stiffness.map(|specific| {
            doubts.within("stretch at unit strain, kN a mm of width,", specific.si() / 1e6, 3.0, 100.0);
        }),
        reduction.pull_per_width.map(|pull| {
            doubts.within("pull a mm of width over pitch in mm, N,", pull.si() / pitch.si() / 1e6, 1.0, 20.0);
        }),
        reduction.belt_mass.map(|mass| {
            doubts.within(
                "mass of the belt, kg/m a mm of width and pitch,",
                mass.si() / (mm(width) * mm(pitch)),
                2e-4,
                2e-3,
            );
        }),
        reduction
            .belt_speed_limit
            .map(|limit| doubts.within("highest speed of the belt, m/s,", limit.si(), 5.0, 100.0)),
    ];
    doubts
        .holds(known.iter().all(Option::is_some), "a belt needs its distance, stiffness, pull, mass and highest speed");
}

fn rack(rack: &Rack, doubts: &mut Doubts<'_>) {
    let module = mm(rack.module);
    let bar = 7850.0 * (rack.section_height - rack.module).si() * rack.section_width.si();
    doubts.within("mass over that of its section", rack.mass_per_length.si() / bar, 0.9, 1.1);
    doubts.within("section height in modules", mm(rack.section_height) / module, 5.0, 20.0);
    doubts.within("face width in modules", mm(rack.face_width) / module, 5.0, 20.0);
    doubts.holds(rack.face_width <= rack.section_width, "the teeth are wider than the section");
    doubts.holds(
        rack.fastener_diameter.si() < 0.5 * rack.section_width.si(),
        "the fasteners are too thick for the section",
    );
    doubts.within("play in µm a mm of module", rack.play.si() * 1e6 / module, 3.0, 40.0);
    doubts.within("proof strength of the fasteners, MPa,", rack.fastener_strength.si() / 1e6, 400.0, 1200.0);
}

fn rack_grade(grade: &RackGrade, doubts: &mut Doubts<'_>) {
    let trend = 25.0 * 1.41_f64.powi(grade.quality as i32 - 5);
    doubts.within("pitch error over its trend with quality", grade.pitch_error_per_metre.si() * 1e6 / trend, 0.5, 2.0);
    doubts
        .holds(grade.speed_limit_straight <= grade.speed_limit_helical, "straight teeth run faster than helical ones");
    doubts.within("face load factor", grade.face_load_factor.si(), 1.0, 2.5);
}

fn pinion(pinion: &Pinion, doubts: &mut Doubts<'_>) {
    doubts.within("number of teeth", f64::from(pinion.teeth), 10.0, 60.0);
    doubts.within("profile shift", pinion.profile_shift.si(), -0.5, 0.7);
}

fn gearbox(gearbox: &Gearbox, doubts: &mut Doubts<'_>) {
    let torque = gearbox.acceleration_torque;
    doubts.holds(gearbox.continuous_torque <= torque, "the continuous torque is above the acceleration torque");
    doubts.holds(torque <= gearbox.stop_torque, "the acceleration torque is above the stop torque");
    doubts.holds(gearbox.nominal_speed <= gearbox.speed_limit, "the nominal speed is above the highest");
    doubts.within("ratio", gearbox.ratio.si(), 2.0, 200.0);
    doubts.within("efficiency", gearbox.efficiency.si(), 0.85, 1.0);
    doubts.within("twist at acceleration torque, rad,", torque.si() / gearbox.torsional_stiffness.si(), 5e-4, 0.012);
    doubts.within("no-load over acceleration torque", gearbox.no_load_torque.si() / torque.si(), 0.0, 0.05);
    doubts.within("overhang over shaft diameter", gearbox.overhang.si() / gearbox.shaft_diameter.si(), 0.4, 2.5);
    // inertia follows T^1.4 in the series: 0.15 kg·cm² at 42 N·m, 60 kg·cm² at 2900 N·m
    let trend = 0.8e-3 * torque.si().powf(1.4);
    doubts.within("inertia over its trend with torque", gearbox.inertia.si() * 1e4 / trend, 0.2, 6.0);
}

fn steel(steel: &Steel, doubts: &mut Doubts<'_>) {
    let (contact, bending) = (steel.contact_limit.si() / 1e6, steel.bending_limit.si() / 1e6);
    doubts.within("contact limit, MPa,", contact, 300.0, 1650.0);
    doubts.within("bending limit, MPa,", bending, 100.0, 530.0);
    doubts.within("contact over bending limit", contact / bending, 2.0, 5.0);
}

fn servo_motor(motor: &ServoMotor, doubts: &mut Doubts<'_>) {
    let power = motor.rated_torque.si() * motor.rated_speed.si();
    doubts.within("rated power over torque times speed", motor.rated_power.si() / power, 0.97, 1.03);
    doubts.within("peak over rated torque", motor.peak_torque.si() / motor.rated_torque.si(), 1.5, 6.0);
    doubts.holds(motor.rated_torque <= motor.standstill_torque, "the rated torque is above that at standstill");
    doubts.holds(motor.rated_speed <= motor.speed_limit, "the rated speed is above the highest");
    doubts.holds(motor.knee_speed < motor.speed_limit, "the knee speed is not below the highest speed");
    doubts.holds(motor.rated_voltage <= motor.voltage_limit, "the rated voltage is above that of the electronics");
    doubts.within("temperature of the winding, °C,", motor.winding_temperature.si(), 100.0, 180.0);
    doubts.within("time constant of the winding, s,", motor.winding_time.si(), 10.0, 300.0);
    doubts.within("time constant of the frame, min,", motor.frame_time.si() / 60.0, 5.0, 120.0);
    // radial limit follows T_0^0.65 in the series, 300 N at 1 N·m
    let watts = motor.rated_power.si();
    doubts.within("energy of the bus over rated power, ms,", motor.bus_energy.si() / watts * 1e3, 3.0, 500.0);
    doubts.within("power of the brake resistor over rated power", motor.resistor_power.si() / watts, 0.0, 1.0);
    let radial = motor.radial_limit.si() / motor.standstill_torque.si().powf(0.65);
    doubts.within("radial limit over its trend with torque, N,", radial, 80.0, 1000.0);
    doubts.holds(
        motor.brake_torque.is_some() == (motor.brake_energy.is_some() && motor.brake_life_energy.is_some()),
        "brake torque, brake energy and brake life energy belong together",
    );
    // inertia follows T^1.4 in the series, about 0.4 kg·cm² at 1 N·m; slim and stout rotors differ sevenfold
    let trend = 0.4 * motor.rated_torque.si().powf(1.4);
    doubts.within("inertia over its trend with torque", motor.inertia.si() * 1e4 / trend, 0.15, 7.0);
    if let Some(brake) = motor.brake_torque {
        doubts.within("brake over rated torque", brake.si() / motor.rated_torque.si(), 0.5, 4.0);
    }
    doubts.within("encoder counts a turn", motor.encoder_counts.si(), 1e3, 1e9);
}

fn linear_scale(scale: &LinearScale, doubts: &mut Doubts<'_>) {
    doubts.within("error band, µm a metre,", scale.error_per_metre.si() * 1e6, 1.0, 200.0);
    doubts.within("expansion, µm/(m·K),", scale.expansion.si() * 1e6, 0.0, 25.0);
    doubts.holds(scale.resolution <= scale.least_error, "the resolution is coarser than the least error");
}

fn error_table(table: &ErrorTable, doubts: &mut Doubts<'_>) {
    doubts.within("part of an error that is left", table.residual_share.si(), 0.02, 0.5);
    doubts.within("uncertainty, µm,", table.uncertainty.si() * 1e6, 0.1, 20.0);
    doubts.within("uncertainty, µm a metre,", table.uncertainty_per_metre.si() * 1e6, 0.1, 20.0);
    doubts.within("distance of its points, mm,", table.spacing.si() * 1e3, 1.0, 500.0);
}
