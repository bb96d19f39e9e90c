//! Text becomes a quantity and back: exact factors, the trade's spellings, and what is refused.
//!
//! Sources, both from memory: the SI Brochure of the BIPM, 9th edition (prefixes, minute, hour, day, degree,
//! tonne), and NIST Special Publication 811, 2008, appendix B, which defines exactly: inch 0.0254 m,
//! avoirdupois pound 0.453 592 37 kg, standard gravity 9.806 65 m/s², hence pound-force 4.448 221 615 260 5 N;
//! horsepower 550 ft·lbf/s; degree Fahrenheit (interval) 5/9 K. Year: the Julian year of 365.25 days (IAU).

use axiswright::units::*;
use proptest::prelude::*;

fn ulps_apart(a: f64, b: f64) -> f64 {
    let size = a.abs().max(b.abs());
    (a - b).abs() / (f64::from_bits(size.to_bits() + 1) - size)
}

/// Every unit with its size in SI units: the decimals follow from the exact definitions above.
#[rustfmt::skip]
const SIZES: &[(Dimension, &str, f64)] = &[
    (Dimension::Length, "mm", 0.001), (Dimension::Length, "m", 1.0), (Dimension::Length, "µm", 0.000_001),
    (Dimension::Length, "nm", 0.000_000_001), (Dimension::Length, "cm", 0.01), (Dimension::Length, "km", 1000.0),
    (Dimension::Length, "in", 0.0254), (Dimension::Length, "ft", 0.3048), (Dimension::Length, "mil", 0.000_025_4),
    (Dimension::Area, "mm²", 0.000_001), (Dimension::Area, "m²", 1.0), (Dimension::Area, "in²", 0.000_645_16),
    (Dimension::Angle, "deg", 0.017_453_292_519_943_295), (Dimension::Angle, "rad", 1.0),
    (Dimension::Angle, "mrad", 0.001), (Dimension::Angle, "arcmin", 2.908_882_086_657_216e-4),
    (Dimension::Angle, "arcsec", 4.848_136_811_095_36e-6),
    (Dimension::Ratio, "1", 1.0), (Dimension::Ratio, "%", 0.01), (Dimension::Ratio, "µm/m", 0.000_001),
    (Dimension::Ratio, "mm/m", 0.001),
    (Dimension::Time, "s", 1.0), (Dimension::Time, "ms", 0.001), (Dimension::Time, "min", 60.0),
    (Dimension::Time, "h", 3600.0), (Dimension::Time, "days", 86_400.0), (Dimension::Time, "weeks", 604_800.0),
    (Dimension::Time, "years", 31_557_600.0),
    (Dimension::Mass, "kg", 1.0), (Dimension::Mass, "t", 1000.0), (Dimension::Mass, "lb", 0.453_592_37),
    (Dimension::Velocity, "m/min", 0.016_666_666_666_666_666), (Dimension::Velocity, "m/s", 1.0),
    (Dimension::Velocity, "mm/s", 0.001), (Dimension::Velocity, "mm/min", 1.666_666_666_666_666_7e-5),
    (Dimension::Velocity, "in/min", 4.233_333_333_333_333e-4), (Dimension::Velocity, "in/s", 0.0254),
    (Dimension::Velocity, "ft/min", 0.005_08),
    (Dimension::Acceleration, "m/s²", 1.0), (Dimension::Acceleration, "mm/s²", 0.001),
    (Dimension::Acceleration, "g", 9.806_65), (Dimension::Acceleration, "in/s²", 0.0254),
    (Dimension::Acceleration, "ft/s²", 0.3048),
    (Dimension::Jerk, "m/s³", 1.0), (Dimension::Jerk, "mm/s³", 0.001), (Dimension::Jerk, "in/s³", 0.0254),
    (Dimension::Jerk, "g/s", 9.806_65),
    (Dimension::AngularVelocity, "1/min", 0.104_719_755_119_659_77),
    (Dimension::AngularVelocity, "1/s", 2.0 * std::f64::consts::PI), (Dimension::AngularVelocity, "rad/s", 1.0),
    (Dimension::AngularVelocity, "deg/s", 0.017_453_292_519_943_295),
    (Dimension::AngularAcceleration, "rad/s²", 1.0),
    (Dimension::Force, "N", 1.0), (Dimension::Force, "kN", 1000.0), (Dimension::Force, "lbf", 4.448_221_615_260_5),
    (Dimension::Force, "kgf", 9.806_65),
    (Dimension::Torque, "N·m", 1.0), (Dimension::Torque, "kN·m", 1000.0), (Dimension::Torque, "N·mm", 0.001),
    (Dimension::Torque, "lbf·in", 0.112_984_829_027_616_7), (Dimension::Torque, "lbf·ft", 1.355_817_948_331_400_4),
    (Dimension::Energy, "J", 1.0), (Dimension::Energy, "kJ", 1000.0), (Dimension::Energy, "kWh", 3_600_000.0),
    (Dimension::Energy, "Wh", 3600.0),
    (Dimension::Power, "kW", 1000.0), (Dimension::Power, "W", 1.0), (Dimension::Power, "hp", 745.699_871_582_270_2),
    (Dimension::Pressure, "MPa", 1e6), (Dimension::Pressure, "GPa", 1e9), (Dimension::Pressure, "Pa", 1.0),
    (Dimension::Pressure, "bar", 100_000.0), (Dimension::Pressure, "psi", 6_894.757_293_168_361),
    (Dimension::Pressure, "ksi", 6_894_757.293_168_361),
    (Dimension::MomentOfInertia, "kg·m²", 1.0), (Dimension::MomentOfInertia, "kg·cm²", 0.0001),
    (Dimension::MomentOfInertia, "g·m²", 0.001), (Dimension::MomentOfInertia, "lb·in²", 2.926_396_534_292e-4),
    (Dimension::LinearMassDensity, "kg/m", 1.0), (Dimension::LinearMassDensity, "g/km", 1e-6), (Dimension::LinearMassDensity, "lb/ft", 1.488_163_943_569_553_8),
    (Dimension::Frequency, "Hz", 1.0), (Dimension::Frequency, "kHz", 1000.0),
    (Dimension::Temperature, "K", 1.0), (Dimension::Temperature, "°F", 0.555_555_555_555_555_6),
    (Dimension::Stiffness, "N/µm", 1e6), (Dimension::Stiffness, "N/m", 1.0), (Dimension::Stiffness, "N/mm", 1000.0),
    (Dimension::Stiffness, "kN/mm", 1e6), (Dimension::Stiffness, "lbf/in", 175.126_835_246_476_36),
    (Dimension::TorsionalStiffness, "N·m/rad", 1.0), (Dimension::TorsionalStiffness, "kN·m/rad", 1000.0),
    (Dimension::TorsionalStiffness, "N·m/arcmin", 3_437.746_770_784_939),
    (Dimension::Revolutions, "Mrev", 1e6), (Dimension::Revolutions, "rev", 1.0), (Dimension::Revolutions, "krev", 1000.0),
    (Dimension::CirculationSpeed, "mm/min", 1.666_666_666_666_666_7e-5),
    (Dimension::LoopGain, "1/s", 1.0), (Dimension::LoopGain, "(m/min)/mm", 16.666_666_666_666_668),
    (Dimension::Expansion, "µm/(m·K)", 0.000_001), (Dimension::Expansion, "1/K", 1.0),
    (Dimension::Voltage, "V", 1.0), (Dimension::Voltage, "kV", 1000.0),
    (Dimension::Celsius, "°C", 1.0),
    (Dimension::LineLoad, "N/mm", 1000.0), (Dimension::LineLoad, "kN/mm", 1e6),
    (Dimension::LineLoad, "N/m", 1.0),
    (Dimension::LineLoad, "lbf/in", 175.126_835_246_476_36),
    (Dimension::HeatTransfer, "W/(m²·K)", 1.0),
    (Dimension::Money, "", 1.0),
];

#[test]
fn every_unit_has_its_exact_size() {
    let known: Vec<(Dimension, &str)> = UNITS.iter().map(|unit| (unit.dimension, unit.name)).collect();
    let wanted: Vec<(Dimension, &str)> = SIZES.iter().map(|(dimension, name, _)| (*dimension, *name)).collect();
    assert_eq!(known, wanted, "a unit without its size in this test");
    for (unit, (_, name, size)) in UNITS.iter().zip(SIZES) {
        // the product of two or three rounded factors may miss the decimals by an ulp each
        assert!(ulps_apart(unit.si, *size) <= 3.0, "{name}: {} against {size}", unit.si);
    }
}

#[test]
fn sizes_agree_with_the_seven_digits_that_nist_prints() {
    // NIST SP 811 (2008), appendix B.8, from memory; half the last printed digit
    let printed: &[(Dimension, &str, f64, f64)] = &[
        (Dimension::Torque, "lbf·in", 1.129_848e-1, 5e-8),
        (Dimension::Torque, "lbf·ft", 1.355_818, 5e-7),
        (Dimension::Pressure, "psi", 6.894_757e3, 5e-4),
        (Dimension::Pressure, "ksi", 6.894_757e6, 0.5),
        (Dimension::Power, "hp", 7.456_999e2, 5e-5),
        (Dimension::Stiffness, "lbf/in", 1.751_268e2, 5e-5),
        (Dimension::LinearMassDensity, "lb/ft", 1.488_164, 5e-7),
        (Dimension::MomentOfInertia, "lb·in²", 2.926_397e-4, 5e-11),
        (Dimension::Velocity, "in/min", 4.233_333e-4, 5e-11),
        (Dimension::AngularVelocity, "1/min", 1.047_198e-1, 5e-8),
        (Dimension::Angle, "arcmin", 2.908_882e-4, 5e-11),
        (Dimension::Angle, "arcsec", 4.848_137e-6, 5e-13),
        (Dimension::Force, "lbf", 4.448_222, 5e-7),
    ];
    for (dimension, name, value, half_digit) in printed {
        let unit = dimension.units().find(|unit| unit.name == *name).unwrap();
        assert!((unit.si - value).abs() <= *half_digit, "{name}: {}", unit.si);
    }
}

#[test]
fn every_name_and_every_spelling_reads_as_its_own_unit() {
    for unit in UNITS {
        for spelling in unit.spellings.iter().chain([&unit.name]) {
            // "2" and "1/min" without a blank are 21/min
            let close = if spelling.starts_with('1') { "2 " } else { "2" };
            for text in [format!("{close}{spelling}"), format!("2 {spelling}"), format!("  +2.0e0  {spelling} ")] {
                assert_eq!(parse_as(unit.dimension, &text), Ok(2.0 * unit.si), "{text:?} as {:?}", unit.dimension);
            }
        }
    }
}

#[track_caller]
fn reads<Q: Measure>(text: &str, si: f64) {
    let value = parse::<Q>(text).unwrap_or_else(|error| panic!("{text}: {error}")).si();
    assert!((value - si).abs() <= 1e-14 * si.abs(), "{text}: {value} against {si}");
}

#[test]
fn the_trades_spellings_are_read() {
    reads::<Length>("11 m", 11.0);
    reads::<Length>("0.02 mm", 2e-5);
    for micro in ["20 µm", "20 \u{3bc}m", "20 um", "20µm", "20 micron"] {
        reads::<Length>(micro, 2e-5);
    }
    reads::<Length>("0.0005 in", 1.27e-5);
    reads::<Length>("0.5\"", 0.0127);
    reads::<Length>("-3 mil", -7.62e-5);
    reads::<Velocity>("40 m/min", 40.0 / 60.0);
    reads::<Velocity>("1000 in/min", 25.4 / 60.0);
    reads::<Velocity>("1000 ipm", 25.4 / 60.0);
    reads::<Acceleration>("0.3 g", 2.941_995);
    for squared in ["2 m/s^2", "2 m/s²", "2 m/s2", "2 m/s/s", "2m/s²"] {
        reads::<Acceleration>(squared, 2.0);
    }
    for cubed in ["40 m/s³", "40 m/s^3", "40 m/s3"] {
        reads::<Jerk>(cubed, 40.0);
    }
    reads::<Force>("12 kN", 12_000.0);
    reads::<Force>("450 lbf", 2_001.699_726_867_225);
    reads::<Force>("450 lb", 2_001.699_726_867_225);
    reads::<Mass>("450 lb", 204.116_566_5);
    for turning in
        ["3000 1/min", "3000 rpm", "3000/min", "3000 rev/min", "3000 min⁻¹", "3000 min^-1", "50 1/s", "50 rev/s"]
    {
        reads::<AngularVelocity>(turning, 100.0 * std::f64::consts::PI);
    }
    reads::<TemperatureInterval>("6 K", 6.0);
    reads::<TemperatureInterval>("6 °C", 6.0);
    reads::<TemperatureInterval>("9 °F", 5.0);
    reads::<Angle>("5 arcmin", std::f64::consts::PI / 2160.0);
    reads::<Angle>("5'", std::f64::consts::PI / 2160.0);
    reads::<Angle>("30 deg", std::f64::consts::FRAC_PI_6);
    reads::<Angle>("30°", std::f64::consts::FRAC_PI_6);
    for share in ["35 %", "35%", "0.35"] {
        reads::<Ratio>(share, 0.35);
    }
    for stiffness in ["80 N/µm", "80 N/um", "80 kN/mm", "80e3 N/mm", "8e7 N/m"] {
        reads::<Stiffness>(stiffness, 8e7);
    }
    for stiffness in ["10 N·m/arcmin", "10 Nm/arcmin", "10 N m/arcmin", "10 N*m/arcmin"] {
        reads::<TorsionalStiffness>(stiffness, 108_000.0 / std::f64::consts::PI);
    }
    for inertia in ["3 kg·m²", "3 kg m²", "3 kgm^2", "3 kg*m2", "3e4 kg cm2", "30000 kg·cm²"] {
        reads::<MomentOfInertia>(inertia, 3.0);
    }
    for torque in ["2 N·m", "2 Nm", "2 N m", "2000 Nmm"] {
        reads::<Torque>(torque, 2.0);
    }
    for torque in ["10 lbf·in", "10 in-lb", "10 in·lbf", "10 lb-in"] {
        reads::<Torque>(torque, 1.129_848_290_276_167);
    }
    reads::<LoopGain>("40/s", 40.0);
    reads::<LoopGain>("1 (m/min)/mm", 1000.0 / 60.0);
    reads::<CirculationSpeed>("120000 mm/min", 2.0);
    reads::<Expansion>("11.5 µm/(m·K)", 1.15e-5);
    reads::<Expansion>("11.5e-6 1/K", 1.15e-5);
    reads::<Revolutions>("1.5 Mrev", 1.5e6);
    reads::<Time>("12 weeks", 7_257_600.0);
    reads::<Money>("60000", 60_000.0);
}

/// The message of a text that is refused.
#[track_caller]
fn refused<Q: Measure>(text: &str) -> String {
    match parse::<Q>(text) {
        Ok(value) => panic!("{text} was read as {}", value.si()),
        Err(error) => error.to_string(),
    }
}

const LENGTHS: &str = "in mm, m, µm, nm, cm, km, in, ft or mil";

#[test]
fn a_bare_number_is_refused_with_the_units_that_fit() {
    assert_eq!(refused::<Length>("11"), format!("`11` has no unit; a length is needed here, {LENGTHS}"));
    assert_eq!(refused::<Frequency>("20"), "`20` has no unit; a frequency is needed here, in Hz or kHz");
}

#[test]
fn a_unit_of_another_dimension_is_refused_by_name() {
    assert_eq!(refused::<Length>("11 kg"), format!("`kg` is a unit of mass, but a length is needed here, {LENGTHS}"));
    assert_eq!(refused::<Mass>("5 g"), "`g` is a unit of acceleration, but a mass is needed here, in kg, t or lb");
    assert_eq!(refused::<Force>("5 kg"), "`kg` is a unit of mass, but a force is needed here, in N, kN, lbf or kgf");
    assert!(refused::<Ratio>("5 mm").starts_with("`mm` is a unit of length, but a plain number or share is needed"));
    assert!(refused::<Money>("5 kg").contains("the currency of the brief, as a plain number"));
}

#[test]
fn an_unknown_unit_is_refused_with_the_nearest() {
    let hint = |text: &str| {
        let message = refused::<Velocity>(text);
        assert!(message.starts_with("unknown unit"), "{message}");
        message.split_once("did you mean ").map(|(_, hint)| hint.to_string())
    };
    assert_eq!(hint("40 m/mn").as_deref(), Some("`m/min`?"));
    assert_eq!(hint("40 M/MIN").as_deref(), Some("`m/min`?"));
    assert_eq!(hint("40 mm/sek").as_deref(), Some("`mm/s`?"));
    assert_eq!(hint("40 furlongs per fortnight"), None);
    assert_eq!(
        refused::<Force>("12 KN"),
        "unknown unit `KN`; a force is needed here, in N, kN, lbf or kgf; did you mean `kN`?"
    );
    // one letter for another is no spelling mistake
    assert!(!refused::<Length>("3 q").contains("did you mean"));
}

#[test]
fn a_decimal_comma_is_refused_with_the_right_spelling() {
    assert_eq!(refused::<Length>("1,5 mm"), "`1,5 mm` has a decimal comma; write a decimal point: `1.5 mm`");
    assert_eq!(
        refused::<Length>("±0.05 mm"),
        "`±0.05 mm` says how far to either side; write `0.1 mm` where a whole width is asked for, `0.05 mm` where half of it is"
    );
    assert!(refused::<Length>("+/- 0.3 mm").contains("write `0.6 mm` where"));
    assert!(refused::<Length>("± x").contains("is not a length"));
    assert_eq!(refused::<Money>("24 000 EUR"), "`24 000 EUR` has blanks between thousands; write `24000`");
    assert_eq!(refused::<Length>("1\u{202f}234 567.5 mm").split("; ").last(), Some("write `1234567.5 mm`"));
    assert!(refused::<Length>("450 mm stroke").starts_with("unknown unit"));
    for (written, meant) in [("45.000,00 N", "45000.00 N"), ("45,000.00 N", "45000.00 N"), ("1,000,000 N", "1000000 N")]
    {
        let told = refused::<Force>(written);
        assert!(told.ends_with(&format!("no mark between thousands: write `{meant}`")), "{told}");
        assert!(parse::<Force>(meant).is_ok(), "what is proposed can be read");
    }
    let dotted = refused::<Torque>("1,5 N.m");
    assert!(dotted.ends_with("`1.5 N.m`"), "{dotted}");
    assert!(refused::<Ratio>("0,35").contains("`0.35`"));
}

#[test]
fn what_is_not_finite_is_refused() {
    for text in ["nan mm", "NaN", "inf", "-inf m", "+Infinity mm", ".inf", ".nan mm", "1e400 m", "-1e400 m", "1e308 km"]
    {
        let message = refused::<Length>(text);
        assert_eq!(message, format!("`{text}` is not a finite number"));
    }
    assert!(refused::<Ratio>("nan").contains("not a finite number"));
    assert!(refused::<Money>("1e999").contains("not a finite number"));
}

#[test]
fn what_is_no_number_is_refused_with_an_example() {
    for text in ["", "mm", "about 5 mm", "-", ".", "+.", "1.2.3 m", "e5 m", "--5 mm"] {
        let message = refused::<Length>(text);
        assert_eq!(message, format!("`{text}` is not a length; write a number and a unit, such as `1.5 mm`"));
    }
    // blanks or apostrophes between thousands are not read as something else
    for text in ["1 000 mm", "1'000 mm", "1_000 mm", "5 mm 3", "1 ft 3 in", "2*3 mm"] {
        refused::<Length>(text);
    }
}

#[test]
fn rounding_keeps_so_many_digits() {
    let cases = [
        (1234.5678, 3, "1230"),
        (1234.5678, 6, "1234.57"),
        (0.001_234_5, 2, "0.0012"),
        (0.5, 3, "0.5"),
        (9.999, 3, "10"),
        (-0.099_96, 3, "-0.1"),
        (1_234_567.0, 3, "1.23e6"),
        (1_000_000.0, 6, "1e6"),
        (0.000_012_4, 2, "1.2e-5"),
        (0.0, 3, "0"),
        (-0.0, 3, "0"),
        (f64::NAN, 3, "not known"),
        (f64::INFINITY, 3, "not known"),
    ];
    for (value, digits, text) in cases {
        assert_eq!(significant(value, digits), text, "{value} to {digits}");
    }
}

#[test]
fn print_names_the_unit_and_nothing_for_plain_numbers() {
    let unit = |dimension: Dimension, name: &str| dimension.units().find(|unit| unit.name == name).unwrap();
    assert_eq!(print(0.25, unit(Dimension::Length, "mm")), "250 mm");
    assert_eq!(print(0.25, unit(Dimension::Ratio, "1")), "0.25");
    assert_eq!(print(0.25, unit(Dimension::Ratio, "%")), "25 %");
    assert_eq!(print(5.0, unit(Dimension::Money, "")), "5");
    assert_eq!(print_rounded(1.0 / 3.0, unit(Dimension::Velocity, "m/min"), 4), "20 m/min");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    #[test]
    fn what_is_printed_is_read_back(
        at in 0..UNITS.len(), mantissa in 1.0..10.0_f64, exponent in -200..200_i32, negative: bool,
    ) {
        let unit = &UNITS[at];
        let value = mantissa * 10.0_f64.powi(exponent) * if negative { -1.0 } else { 1.0 };
        let text = print(value, unit);
        let back = parse_as(unit.dimension, &text).map_err(|error| TestCaseError::fail(format!("{text}: {error}")))?;
        prop_assert!(ulps_apart(value, back) <= 4.0, "{value:e} as {text} is {back:e}");
    }

    #[test]
    fn a_rounded_print_is_within_half_its_last_digit(
        at in 0..UNITS.len(), mantissa in 1.0..10.0_f64, exponent in -9..12_i32, digits in 1..9_usize,
    ) {
        let unit = &UNITS[at];
        let value = mantissa * 10.0_f64.powi(exponent) * unit.si;
        let back = parse_as(unit.dimension, &print_rounded(value, unit, digits)).unwrap();
        let half = 0.5 * 10.0_f64.powi(1 - digits as i32) * 10.0_f64.powi(exponent) * unit.si;
        // a mantissa just below 10 rounds up to it; the digit itself is exact to a few ulp
        prop_assert!((value - back).abs() <= half * (1.0 + 1e-6), "{value:e} to {digits} digits is {back:e}");
    }

    #[test]
    fn no_text_brings_the_parser_down(text in r"\PC{0,24}", at in 0..UNITS.len()) {
        let dimension = UNITS[at].dimension;
        for text in [text.clone(), format!("1.5 {text}"), format!("1e{text}")] {
            match parse_as(dimension, &text) {
                Ok(value) => prop_assert!(value.is_finite()),
                Err(error) => prop_assert!(!error.to_string().is_empty()),
            }
        }
    }
}
